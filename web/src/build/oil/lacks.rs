//! What is missing, what can be shown all the same, and what is estimated.

use build_journal::fold::{Lack, OilInputs};

use super::page::Oil;
use super::place::Place;
use crate::kit::piece::{El, Piece, el, link, note, p, row};
use crate::kit::section::{fold, sentences};

/// What is needed; nothing when nothing is missing.
pub(super) fn lacks(oil: Oil, inputs: &OilInputs) -> Option<El> {
    if inputs.lacks.is_empty() {
        return None;
    }
    let words: Vec<String> = inputs.lacks.iter().map(Lack::to_string).collect();
    let stopped = inputs.lacks.iter().any(Lack::stops_the_circuit);
    let (head, kind) = if stopped {
        ("Still needed for the pressure", "notice notice-caution")
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
