//! The changes that were written down, the latest first, each to be struck out.

use build_journal::{Body, FactId};
use leptos::prelude::*;

use crate::build::Opened;
use crate::build::book::words as told;
use crate::build::tonight::way_back;
use crate::kit::piece::{Piece, button, el, note, p, row};
use crate::kit::section::{fold, section};
use crate::kit::when;

/// As many are shown at once; the others are folded away.
const SHOWN: usize = 3;

#[derive(Clone, PartialEq)]
struct Line {
    fact: FactId,
    words: String,
    clock: i64,
    /// The strike that it was struck by.
    struck: Option<FactId>,
    /// How many results do not count because of it.
    undoes: usize,
}

/// What was changed so far.
#[must_use]
pub fn written(opened: Opened) -> Piece {
    let lines = Memo::new(move |_| {
        opened.build.with(|build| {
            let stale = build.stale();
            opened.journal.with(|journal| {
                let facts = journal.facts().rev();
                facts
                    .filter(|fact| matches!(fact.body(), Body::EventHappened(_)))
                    .map(|fact| Line {
                        fact: fact.id(),
                        words: told::of(fact, journal, build),
                        clock: fact.clock(),
                        struck: (build.struck.iter())
                            .find(|one| one.fact == fact.id())
                            .map(|one| one.by),
                        undoes: stale.iter().filter(|one| one.by == fact.id()).count(),
                    })
                    .collect::<Vec<_>>()
            })
        })
    });
    Piece::live(move || {
        let lines = lines.get();
        untrack(|| {
            if lines.is_empty() {
                return Piece::none();
            }
            let (first, rest) = lines.split_at(lines.len().min(SHOWN));
            let list = |lines: &[Line]| {
                el("ul")
                    .class("entries")
                    .all(lines.iter().map(|line| one(opened, line)))
            };
            let rest = (!rest.is_empty())
                .then(|| fold(&format!("{} earlier changes", rest.len()), list(rest)));
            section("Changed so far")
                .with(list(first))
                .with(rest)
                .into()
        })
    })
}

fn one(opened: Opened, line: &Line) -> Piece {
    let (words, act, target) = match line.struck {
        Some(strike) => (el("del").text(&line.words), "Take the strike back", strike),
        None => (el("strong").text(&line.words), "Strike it out", line.fact),
    };
    let undoes = (line.struck.is_none()).then(|| {
        p(&match line.undoes {
            0 => "All that it undid counts again, or nothing was proved yet.".to_owned(),
            1 => "One result does not count because of it.".to_owned(),
            more => format!("{more} results do not count because of it."),
        })
        .test("change-undoes")
    });
    let by = line.fact;
    let back = (line.undoes > 0).then(|| {
        opened.build.with_untracked(|build| {
            let mut own = build.stale();
            own.retain(|one| one.by == by);
            way_back(opened, &build.way_back(&own))
        })
    });
    let strike = button("quiet", act, "strike-change", move || {
        let _ = opened.strike(target, None);
    });
    el("li")
        .class("card")
        .test("changed")
        .attr(
            "data-struck",
            if line.struck.is_some() {
                "true"
            } else {
                "false"
            },
        )
        .with(words)
        .with(note("hint", &when::moment(line.clock)))
        .with(undoes)
        .with(back)
        .with(row([strike.into()]))
        .into()
}
