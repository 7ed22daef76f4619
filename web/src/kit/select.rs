//! One of many words, from the browser's own list: big on a phone.

use leptos::prelude::event_target_value;

use super::pick::Word;
use super::piece::{El, el};

/// A labelled list to choose from. The name is the list's, once on a screen.
#[must_use]
pub fn select(
    name: &str,
    label: &str,
    words: impl IntoIterator<Item = Word>,
    picked: impl Fn() -> String + 'static,
    on_pick: impl Fn(String) + 'static,
) -> El {
    let options = words.into_iter().map(|word| {
        el("option")
            .attr("value", &word.id)
            .text(&word.label)
            .into()
    });
    let list = el("select")
        .attr("id", name)
        .test(&format!("select-{name}"))
        .all(options)
        .live_property("value", move || picked().into())
        .on("change", move |event| on_pick(event_target_value(&event)));
    el("div")
        .class("field")
        .with(el("label").attr("for", name).text(label))
        .with(list)
}
