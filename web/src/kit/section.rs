//! A titled part of a screen, and one that opens and closes.

use leptos::prelude::*;

use super::piece::{El, Piece, el};

/// A part of a screen with a heading.
#[must_use]
pub fn section(title: &str) -> El {
    el("section").class("section").with(el("h2").text(title))
}

/// A part that stays shut until it is wanted.
#[must_use]
pub fn fold(title: &str, inside: impl Into<Piece>) -> El {
    el("details")
        .class("fold")
        .with(el("summary").text(title))
        .with(el("div").class("fold-inside").with(inside))
}

/// A part that stays shut until it is wanted, and is made only then: what nobody
/// looks at costs nothing when the number above it changes.
#[must_use]
pub fn fold_later(title: &str, inside: impl Fn() -> Piece + 'static) -> El {
    let wanted = RwSignal::new(false);
    fold(title, Piece::when(move || wanted.get(), inside)).on("toggle", move |_| {
        let _ = wanted.try_set(true);
    })
}

/// A list of plain sentences.
#[must_use]
pub fn sentences<T: AsRef<str>>(class: &str, lines: &[T]) -> El {
    let lines = lines.iter().map(|line| el("li").text(line.as_ref()).into());
    el("ul").class(&format!("sentences {class}")).all(lines)
}
