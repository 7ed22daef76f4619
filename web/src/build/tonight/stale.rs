//! What no longer counts, cause by cause, with the way back.

use build_journal::FactId;
use build_journal::fold::Stale;
use leptos::prelude::*;

use super::page::Tonight;
use super::undone::{cause, results, way_back};
use crate::build::Opened;
use crate::kit::piece::{Piece, button, el, note, row};
use crate::kit::section::section;
use crate::kit::when;

/// All that no longer counts.
#[must_use]
pub fn stale(tonight: Tonight) -> Piece {
    let opened = tonight.opened;
    let stale = Memo::new(move |_| opened.build.with(|build| build.stale()));
    let any = Memo::new(move |_| stale.with(|stale| !stale.is_empty()));
    Piece::when(
        move || any.get(),
        move || {
            let list = el("ul").class("entries").live(move || {
                let stale = stale.get();
                untrack(|| {
                    let causes = by_cause(&stale);
                    Piece::all(causes.iter().map(|(by, of)| one(opened, *by, of)))
                })
            });
            section("No longer counts").with(list).into()
        },
    )
}

/// What one fact made stale, the latest fact first.
fn by_cause(stale: &[Stale]) -> Vec<(FactId, Vec<Stale>)> {
    let mut causes: Vec<(FactId, Vec<Stale>)> = Vec::new();
    for one in stale {
        match causes.iter_mut().find(|(by, _)| *by == one.by) {
            Some((_, all)) => all.push(one.clone()),
            None => causes.push((one.by, vec![one.clone()])),
        }
    }
    causes.sort_by(|(a, _), (b, _)| b.cmp(a));
    causes
}

fn one(opened: Opened, by: FactId, stale: &[Stale]) -> Piece {
    let back = opened
        .build
        .with_untracked(|build| way_back(opened, &build.way_back(stale)));
    let clock = opened
        .journal
        .with_untracked(|journal| journal.get(by).map(build_journal::Fact::clock));
    let when = clock.map(|clock| note("hint", &when::moment(clock)));
    let strike = button(
        "quiet",
        "It was not so: strike it out",
        "strike-cause",
        move || {
            let _ = opened.strike(by, None);
        },
    );
    el("li")
        .class("card")
        .test("stale")
        .with(cause(stale))
        .with(when)
        .with(results(stale))
        .with(back)
        .with(row([strike.into()]))
        .into()
}
