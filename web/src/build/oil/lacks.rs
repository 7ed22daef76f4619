//! What is missing, what can be shown all the same, and what is estimated.

use build_journal::fold::{Lack, OilInputs};

use super::page::Oil;
use super::place::Place;
use crate::kit::piece::{El, Piece, el, link, note, p, row};
use crate::kit::section::{fold, sentences};

/// What something is to be worked out of the oil.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Wanted {
    /// The pressure at the gauge, and where the oil goes.
    Pressure,
    /// The film in a bearing, for which no pump has to be known.
    Film,
}

impl Wanted {
    fn needs(self, lack: &Lack) -> bool {
        self == Self::Pressure || !lack.is_of_the_pump()
    }

    const fn still_needed(self) -> &'static str {
        match self {
            Self::Pressure => "Still needed for the pressure",
            Self::Film => "Still needed for the film",
        }
    }
}

/// What is needed; nothing when nothing is missing.
pub(super) fn lacks(oil: Oil, inputs: &OilInputs, wanted: Wanted) -> Option<El> {
    let missing = || inputs.lacks.iter().filter(|lack| wanted.needs(lack));
    let words: Vec<String> = missing().map(Lack::to_string).collect();
    if words.is_empty() {
        return None;
    }
    let stopped = missing().any(Lack::stops_the_circuit);
    let (head, kind) = if stopped {
        (wanted.still_needed(), "notice notice-caution")
    } else {
        ("Better with", "notice notice-note")
    };
    let to = link("", &oil.route(Place::System), "Type it in").test("oil-type-in");
    let shown = (stopped && inputs.oil.is_none() || inputs.layout.is_none()).then(|| {
        p("Oils can be compared already, and the gauge and all lists work without any of this.")
    });
    Some(
        el("div")
            .class(kind)
            .test("oil-lacks")
            .with(el("strong").text(head))
            .with(sentences("", &words))
            .with(shown)
            .with(row([to.into()])),
    )
}

/// What is estimated and what no longer counts.
pub(super) fn estimated(inputs: &OilInputs) -> Piece {
    let stale = (!inputs.stale.is_empty()).then(|| {
        let words = format!(
            "Something was changed since {} {} measured: measure again before you go by this.",
            inputs.stale.join(", "),
            if inputs.stale.len() == 1 {
                "was"
            } else {
                "were"
            },
        );
        note("notice notice-caution", &words).test("oil-stale")
    });
    let words: Vec<&str> = inputs.estimated.iter().map(|one| one.0.as_str()).collect();
    let list = (!words.is_empty()).then(|| {
        Piece::from(
            el("div").test("oil-estimated").with(fold(
                "Not measured: estimated",
                Piece::all([
                    p("Common practice, from memory. Your own gauge at a known oil temperature says more.").into(),
                    sentences("", &words).into(),
                ]),
            )),
        )
    });
    Piece::all([stale.into(), list.into()])
}
