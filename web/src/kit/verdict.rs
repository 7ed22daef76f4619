//! The verdict mark: a shape, a word and a colour, always together.
//!
//! Colours follow IEC 60073: green is normal, yellow is caution, red is danger.
//! The shapes differ in outline, so that they are told apart without colour,
//! from a metre away and through an oily screen.

use assembly_core::measure::Verdict;
use leptos::prelude::*;

use super::piece::{El, Piece, drawn, el, note};

/// What a mark can say.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Mark {
    /// Inside, surely enough.
    Good,
    /// The measuring can't tell.
    Close,
    /// Outside, surely enough.
    Bad,
    /// It was true until something changed.
    Stale,
    /// Not measured, or nothing to hold it against.
    None,
}

impl From<Verdict> for Mark {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Good => Self::Good,
            Verdict::TooCloseToCall => Self::Close,
            Verdict::Bad => Self::Bad,
        }
    }
}

impl Mark {
    /// The mark in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Close => "too close to call",
            Self::Bad => "bad",
            Self::Stale => "no longer counts",
            Self::None => "not measured",
        }
    }

    /// The mark's name in style sheets and tests.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Close => "close",
            Self::Bad => "bad",
            Self::Stale => "stale",
            Self::None => "not-measured",
        }
    }

    /// The outline in a square of 24, and the sign on it.
    #[must_use]
    pub const fn outline(self) -> (&'static str, &'static str) {
        match self {
            Self::Good => (
                "M12 1a11 11 0 1 1 0 22a11 11 0 1 1 0-22z",
                "M6.5 12.5l4 4 7-8.5",
            ),
            Self::Close => ("M12 1.5L23.5 22H.5z", "M7.6 15h8.8M7.6 18.6h8.8"),
            Self::Bad => (
                "M7 1h10l6 6v10l-6 6H7l-6-6V7z",
                "M7.5 7.5l9 9M16.5 7.5l-9 9",
            ),
            Self::Stale => ("M2 4h20v16H2z", "M1 21L23 3"),
            Self::None => ("M12 2a10 10 0 1 1 0 20a10 10 0 1 1 0-20z", ""),
        }
    }
}

/// The shape alone, for beside a word that says the same.
#[must_use]
pub fn shape(mark: Mark) -> El {
    let (outline, sign) = mark.outline();
    drawn("svg")
        .class(&format!("mark mark-{}", mark.name()))
        .attr("viewBox", "0 0 24 24")
        .attr("aria-hidden", "true")
        .with(drawn("path").class("mark-outline").attr("d", outline))
        .with(drawn("path").class("mark-sign").attr("d", sign))
}

/// The plate that says a verdict in full: shape, word, and what follows from it.
#[must_use]
pub fn plate(mark: Mark, word: &str, details: &[String]) -> El {
    let details = details
        .iter()
        .map(|detail| note("plate-detail", detail).into());
    let words = el("div")
        .with(el("strong").class("plate-word").text(word))
        .all(details);
    el("div")
        .class(&format!("plate plate-{}", mark.name()))
        .test("verdict")
        .attr("data-verdict", mark.name())
        .with(shape(mark))
        .with(words)
}

/// What a plate says: mark, word, and what follows from it.
pub type Said = (Mark, String, Vec<String>);

/// The plate of a verdict that changes: it stands, and what is said on it changes.
#[must_use]
pub fn live_plate(said: Memo<Said>) -> El {
    let mark = Memo::new(move |_| said.with(|(mark, ..)| *mark));
    let word = move || said.with(|(_, word, _)| word.clone());
    let details = Memo::new(move |_| said.with(|(.., details)| details.clone()));
    let words = el("div")
        .with(el("strong").class("plate-word").live_text(word))
        .live(move || {
            details.with(|details| {
                let notes = details.iter().map(|one| note("plate-detail", one).into());
                Piece::all(notes)
            })
        });
    el("div")
        .live_attr("class", move || {
            Some(format!("plate plate-{}", mark.get().name()))
        })
        .test("verdict")
        .live_attr("data-verdict", move || Some(mark.get().name().to_owned()))
        .live(move || shape(mark.get()).into())
        .with(words)
}
