//! Choosing which lines of a long book are shown.

use std::collections::{BTreeMap, BTreeSet};

use build_journal::Journal;
use build_plan::At;
use leptos::prelude::*;

use super::sort::{Sort, Wanted, parts_of};
use crate::kit::judged::capital;
use crate::kit::pick::Word;
use crate::kit::piece::{Piece, el};
use crate::kit::select::select;

/// A book shorter than this is read through.
const LONG: usize = 40;

/// What a book holds: how many of each sort, and the parts it speaks of.
#[derive(Clone, PartialEq, Eq, Default)]
struct Holds {
    sorts: BTreeMap<Sort, usize>,
    parts: BTreeSet<At>,
}

impl Holds {
    fn of(journal: &Journal) -> Self {
        let mut holds = Self::default();
        for fact in journal.facts() {
            *holds.sorts.entry(Sort::of(fact.body())).or_default() += 1;
            holds.parts.extend(parts_of(fact.body()));
        }
        holds
    }
}

/// The choice, while the book is long.
#[must_use]
pub fn filter(journal: RwSignal<Journal>, wanted: RwSignal<Wanted>) -> Piece {
    let holds = Memo::new(move |_| journal.with(Holds::of));
    Piece::when(
        move || journal.with(Journal::len) > LONG,
        move || {
            Piece::live(move || {
                let holds = holds.get();
                untrack(|| choice(&holds, wanted))
            })
        },
    )
}

fn choice(holds: &Holds, wanted: RwSignal<Wanted>) -> Piece {
    let sorts = Sort::ALL.iter().filter_map(|sort| {
        let count = holds.sorts.get(sort)?;
        Some(Word::of(sort.id(), format!("{} ({count})", sort.label())))
    });
    let sort = select(
        "book-sort",
        "Show",
        std::iter::once(Word::of("", "Everything")).chain(sorts),
        move || wanted.with(|wanted| wanted.sort.clone()),
        move |sort| wanted.update(|wanted| wanted.sort = sort),
    );
    let parts = holds.parts.iter().map(|at| {
        let said = at.to_string();
        Word::of(said.clone(), capital(&said))
    });
    let part = select(
        "book-part",
        "Of",
        std::iter::once(Word::of("", "The whole engine")).chain(parts),
        move || wanted.with(|wanted| wanted.part.clone()),
        move |part| wanted.update(|wanted| wanted.part = part),
    );
    el("div").class("pair").with(sort).with(part).into()
}
