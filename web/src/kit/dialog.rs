//! A question that has to be answered before anything else.

use leptos::prelude::*;
use web_sys::HtmlDialogElement;

use super::piece::{El, Piece, el};

/// A modal dialog, shown while `open` is true. Escape closes it. What is in it
/// is made when it opens.
#[must_use]
pub fn dialog(
    open: RwSignal<bool>,
    title: &str,
    test: &str,
    inside: impl Fn() -> Piece + 'static,
) -> El {
    let heading = format!("{test}-title");
    let made = el("dialog")
        .class("dialog")
        .attr("aria-labelledby", &heading)
        .test(test)
        .with(el("h2").attr("id", &heading).text(title))
        .on("close", move |_| open.set(false))
        .when(move || open.get(), inside);
    let element: HtmlDialogElement = made.element();
    Effect::new(move |_| {
        if !open.get() {
            element.close();
        } else if !element.open() {
            // Refused only when the page is being left.
            let _ = element.show_modal();
        }
    });
    made
}
