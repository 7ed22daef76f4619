//! Notes on a step, and all that was written of it.

use build_journal::fact::{CheckMade, Note, Spot};
use build_journal::{Body, FactId};
use build_plan::Place;
use leptos::prelude::*;

use super::doing::is_of;
use super::state::InHand;
use crate::build::Opened;
use crate::build::book::words as told;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, note, row};
use crate::kit::section::{fold, section};
use crate::kit::when;
use crate::kit::words::{too_long, word_field};

const NOTE_AT_MOST: usize = 2000;

/// A note on this step, and what was written of it so far.
#[must_use]
pub fn notes(opened: Opened, in_hand: InHand) -> El {
    let draft = Draft::of(opened.draft(&format!("step/{}/note", in_hand.step.id)));
    let (step, part) = (in_hand.step.id, in_hand.part);
    let write = move || {
        let text = draft.now().trim().to_owned();
        if text.is_empty() || too_long(&text, NOTE_AT_MOST).is_some() {
            return;
        }
        let note = Note {
            text,
            place: part.map(|at| Spot::Known(Place::of(at))),
            step: Some(step.to_owned()),
        };
        if opened.write_down(Body::Note(note)).is_some() {
            draft.clear();
        }
    };
    let field = word_field("step-note", "Note", "", draft, NOTE_AT_MOST, || None);
    section("Notes")
        .with(field)
        .with(row([button(
            "quiet",
            "Write it down",
            "step-note-write",
            write,
        )
        .into()]))
        .with(written(opened, in_hand))
}

/// How a note on a step began before it carried its step.
fn beginning(label: &str) -> String {
    format!("{label}: ")
}

/// Whether something was written of this step.
fn is_about(body: &Body, in_hand: &InHand) -> bool {
    let checks = || in_hand.step.proves.iter().map(|proof| proof.id());
    match body {
        Body::Note(note) => match &note.step {
            Some(step) => step == in_hand.step.id,
            None => note.text.starts_with(&beginning(in_hand.step.label)),
        },
        Body::CheckMade(CheckMade { check, .. }) => checks().any(|id| id == check),
        body => is_of(body, in_hand.step.id),
    }
}

#[derive(Clone, PartialEq)]
struct Line {
    fact: FactId,
    words: String,
    clock: i64,
    struck: Option<FactId>,
}

fn written(opened: Opened, in_hand: InHand) -> Piece {
    let lines = Memo::new(move |_| {
        opened.build.with(|build| {
            opened.journal.with(|journal| {
                let facts = journal.facts().rev();
                facts
                    .filter(|fact| is_about(fact.body(), &in_hand))
                    .map(|fact| Line {
                        fact: fact.id(),
                        words: told::of(fact, journal, build),
                        clock: fact.clock(),
                        struck: (build.struck.iter())
                            .find(|one| one.fact == fact.id())
                            .map(|one| one.by),
                    })
                    .collect::<Vec<_>>()
            })
        })
    });
    let any = Memo::new(move |_| lines.with(|lines| !lines.is_empty()));
    Piece::when(
        move || any.get(),
        move || {
            let list = el("ol").class("log").test("step-log").live(move || {
                let lines = lines.get();
                untrack(|| Piece::all(lines.iter().map(|line| one(opened, line))))
            });
            fold("Written of it so far", list).attr("open", "").into()
        },
    )
}

fn one(opened: Opened, line: &Line) -> Piece {
    let (words, act, target) = match line.struck {
        Some(strike) => (el("del").text(&line.words), "Take the strike back", strike),
        None => (el("span").text(&line.words), "Strike out", line.fact),
    };
    el("li")
        .class("log-line")
        .with(el("p").class("log-words").with(words))
        .with(note("hint", &when::moment(line.clock)))
        .with(button("quiet", act, "step-strike", move || {
            let _ = opened.strike(target, None);
        }))
        .into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_plan::step::STEPS;

    #[test]
    fn a_note_belongs_to_the_step_it_carries_and_an_old_one_to_the_step_it_names() {
        let in_hand = InHand {
            step: STEPS[0],
            parts: Vec::new(),
            part: None,
        };
        let about = |text: &str, step: Option<&str>| {
            let note = Note {
                text: text.to_owned(),
                place: None,
                step: step.map(str::to_owned),
            };
            is_about(&Body::Note(note), &in_hand)
        };
        let old = format!("{} stoned it", beginning(STEPS[0].label));
        assert!(about("stoned it", Some(STEPS[0].id)));
        assert!(!about(&old, Some(STEPS[1].id)));
        assert!(about(&old, None));
        assert!(!about("stoned it", None));
    }
}
