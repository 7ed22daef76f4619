//! What a step proves by measuring: where each number stands, how to get at it,
//! and where it is typed.

use build_journal::fold::ResultState;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::proof::Proof;
use build_plan::{At, Measure};
use leptos::prelude::*;

use super::checks::{concerned, state_name};
use super::waive::{Waiving, let_pass};
use crate::build::Opened;
use crate::build::round::Place as Round;
use crate::build::tonight::cause;
use crate::build::tonight::words::parts as part_words;
use crate::kit::piece::{El, Piece, el, link, note, row};
use crate::kit::section::{fold, sentences};
use crate::route::{Page, Route};

/// A measure, with where it stands.
#[must_use]
pub fn one(opened: Opened, measure: &'static Measure, targets: &[At]) -> El {
    let looked_at = targets.to_vec();
    let states = Memo::new(move |_| {
        opened.build.with(|build| {
            let proof = Proof::Measure(measure);
            concerned(build, proof, &looked_at)
                .into_iter()
                .map(|at| (at, build.result(proof, at)))
                .collect::<Vec<_>>()
        })
    });
    let open = move || {
        states.with(|states| {
            let open = states.iter().filter(|(_, state)| {
                !matches!(state, ResultState::Stands | ResultState::LetPass(_))
            });
            open.map(|(at, _)| *at).collect::<Vec<At>>()
        })
    };
    let state = Piece::live(move || states.with(|states| shown(states)));
    let how: Vec<&str> = measure
        .how
        .iter()
        .copied()
        .filter(|line| !line.is_empty())
        .collect();
    let how = (!how.is_empty()).then(|| fold("How to measure it", sentences("", &how)));
    let go = where_measured(opened, measure, targets)
        .map(|to| link("", &to, "Measure").test(&format!("measure-{}", measure.id)));
    let waiving = Waiving {
        opened,
        proof: Proof::Measure(measure),
    };
    el("li")
        .class("card")
        .test(&format!("measure-of-{}", measure.id))
        .with(el("strong").class("card-title").text(measure.label))
        .with(state)
        .with(how)
        .with(row([go.into(), let_pass(waiving, open)]))
}

fn shown(states: &[(At, ResultState)]) -> Piece {
    let of = |name: &str| -> Vec<At> {
        let alike = states.iter().filter(|(_, state)| state_name(state) == name);
        alike.map(|(at, _)| *at).collect()
    };
    let several = states.len() > 1;
    let line = |name: &str, words: &str| {
        let at = of(name);
        // Sixteen valves by name say less than that it is all of them.
        let parts = match (several, at.len() == states.len()) {
            (false, _) => String::new(),
            (true, true) => format!("all {}", at.len()),
            (true, false) => part_words(&at),
        };
        let said = if parts.is_empty() {
            words.to_owned()
        } else {
            format!("{words}: {parts}")
        };
        let line = note("check-state", &said)
            .test("measure-state")
            .attr("data-state", name);
        (!at.is_empty()).then_some(line)
    };
    let stale = states.iter().find_map(|(_, state)| match state {
        ResultState::Stale(stale) => Some(cause(std::slice::from_ref(stale))),
        _ => None,
    });
    let passed = states.iter().find_map(|(_, state)| match state {
        ResultState::LetPass(reason) => Some(line("let-pass", &format!("◇ let pass: {reason}"))),
        _ => None,
    });
    Piece::all([
        line("stands", "✓ measured").into(),
        line("stale", "▲ no longer counts").into(),
        stale.into(),
        line("bad", "✗ not good").into(),
        passed.flatten().into(),
        line("not-yet", "○ not measured").into(),
    ])
}

/// The page where it is typed: the mains have pages of their own, all others a
/// round over their parts. What is only worked out is typed nowhere.
fn where_measured(opened: Opened, measure: &Measure, targets: &[At]) -> Option<Route> {
    let of_mains = [
        &MAIN_JOURNAL_DIAMETER,
        &MAIN_BEARING_BORE,
        &MAIN_OIL_CLEARANCE,
    ];
    let page = match targets {
        _ if !of_mains.iter().any(|one| one.id == measure.id) => {
            if !measure.can_be_read() {
                return None;
            }
            Page::Measure(Round::Round(measure.id.to_owned(), 1))
        }
        [At::Main(number)] => Page::Main(*number),
        _ => Page::Mains,
    };
    Some(Route::Build(opened.id.to_string(), page))
}
