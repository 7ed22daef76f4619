//! Giving a run up: what it costs is said before it is done.

use assembly_core::tightening::interrupted::Advice;
use build_journal::FactId;
use build_journal::fact::{Body, RunMark, RunMarked, Way};
use build_journal::fold::tightening::Run;

use super::Tighten;
use crate::kit::piece::{El, el, note};
use crate::kit::section::sentences;

/// What follows from giving a run up, the first thing first. Common practice by
/// the kind of bolt and the lap; the maker's sheet wins.
#[must_use]
pub fn costs(run: &Run) -> Vec<String> {
    let Some(advice) = run.given_up() else {
        return vec!["Nothing was pulled, so nothing changes.".to_owned()];
    };
    let mut lines = match run.way {
        Way::Tighten => vec![
            "The bolts are neither tight nor loose then: do not run or turn the engine like that."
                .to_owned(),
            format!("Before they are tightened anew: {}", first_small(advice)),
        ],
        Way::Loosen => vec![
            "Some bolts hold and some do not: left like that the part can warp. Loosen all of them, in the same order."
                .to_owned(),
        ],
        Way::Again => vec![
            "Bolts that were not gone over stay as they were. The one that was let go must not stay so: go over all of them anew."
                .to_owned(),
        ],
    };
    if advice.new_gasket {
        lines.push(
            "The gasket was clamped: once it comes free again it has to be a new one.".to_owned(),
        );
    }
    if run.way == Way::Tighten {
        lines.push(
            "A bolt that was pulled to the end has had that use, and what was ticked stays in the book."
                .to_owned(),
        );
    }
    lines
}

fn first_small(advice: Advice) -> String {
    let sentence = advice.remedy.sentence();
    let mut letters = sentence.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// What it costs, as it is read before the button.
#[must_use]
pub fn said(run: &Run) -> El {
    let tone = if run.given_up().is_some() {
        "notice notice-caution"
    } else {
        "notice notice-note"
    };
    el("div")
        .class(tone)
        .test("give-up-costs")
        .with(sentences("", &costs(run)))
        .with(note("hint", "The maker's sheet wins."))
}

/// Writes down that it is given up.
pub fn give_up(context: Tighten, run: &Run) -> bool {
    mark(context, run.fact, RunMark::Left)
}

/// Writes down that all bolts of a run that was given up are loose.
pub fn are_all_loose(context: Tighten, run: FactId) {
    mark(context, run, RunMark::BackedOff);
}

fn mark(context: Tighten, run: FactId, mark: RunMark) -> bool {
    let made = RunMarked {
        run,
        mark,
        bolt: None,
        lap: None,
        knew: None,
        words: None,
    };
    context.opened.write_down(Body::RunMarked(made)).is_some()
}
