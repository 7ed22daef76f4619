//! Where it was stopped: the last step, and the last thing written down.

use leptos::prelude::*;

use super::page::Tonight;
use super::undone::step_link;
use super::words;
use crate::build::book::words as told;
use crate::kit::piece::{Piece, el, note, p};
use crate::kit::when;

/// Where it was stopped.
#[must_use]
pub fn stopped(tonight: Tonight) -> Piece {
    let opened = tonight.opened;
    let last = Memo::new(move |_| {
        opened.build.with(|build| {
            opened.journal.with(|journal| {
                let fact = journal.facts().next_back()?;
                Some((told::of(fact, journal, build), fact.clock()))
            })
        })
    });
    let step = Memo::new(move |_| {
        opened.build.with(|build| {
            let (fact, step) = build.record.last_step()?;
            opened
                .journal
                .with(|journal| match journal.get(fact)?.body() {
                    build_journal::Body::StepMarked(said) => {
                        Some((step.id.to_owned(), step.label, words::mark(said.mark)))
                    }
                    _ => None,
                })
        })
    });
    let at_step = Piece::live(move || {
        step.get()
            .map(|(id, label, mark)| {
                step_link(opened, &id, None, "stopped-at")
                    .with(el("span").text("You stopped at"))
                    .with(el("strong").text(label))
                    .with(el("span").text(mark))
            })
            .into()
    });
    let at_fact = Piece::live(move || {
        last.get()
            .map(|(words, clock)| {
                p("")
                    .class("hint")
                    .test("last-fact")
                    .with(
                        el("span")
                            .text(&format!("Last written: {}, ", words.trim_end_matches('.'))),
                    )
                    .live_text(move || when::ago(tonight.now.get().saturating_sub(clock)))
            })
            .into()
    });
    let none = Piece::when(
        move || step.with(Option::is_none),
        || {
            note("lead", "No step is ticked yet. Begun in the middle of the job? Say under “All steps” which stages are over.").into()
        },
    );
    Piece::all([at_step, none, at_fact])
}
