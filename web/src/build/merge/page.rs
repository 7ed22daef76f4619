//! The page, and the word of it in the book.

use std::collections::BTreeSet;

use build_journal::fold::{Conflict, conflicts};
use build_journal::{Fact, Journal};
use leptos::prelude::*;

use super::came_in::came_in;
use super::conflict::conflict;
use crate::build::Opened;
use crate::device::keeping::keeping;
use crate::kit::piece::{El, Piece, link, note, p, row, title};
use crate::kit::section::section;
use crate::route::{Page, Route};

/// What two devices say differently; nothing to look for while there is one.
fn open_conflicts(journal: &Journal) -> Vec<Conflict> {
    let devices: BTreeSet<_> = journal.facts().map(Fact::device).collect();
    if devices.len() < 2 {
        return Vec::new();
    }
    conflicts(journal)
}

/// The page of what came in.
#[must_use]
pub fn merge_page() -> Piece {
    let opened: Opened = expect_context();
    let keeping = keeping();
    let found = Memo::new(move |_| opened.journal.with(open_conflicts));
    let settle = Piece::live(move || {
        found.with(|found| {
            if found.is_empty() {
                let words = "Nothing is to be settled: no two devices contradict each other.";
                return p(words).test("nothing-to-settle").into();
            }
            untrack(|| Piece::all(found.iter().map(|one| conflict(opened, keeping, one))))
        })
    });
    let book = link(
        "quiet",
        &Route::Build(opened.id.to_string(), Page::Book),
        "To the book",
    );
    Piece::all([
        title("Two copies put together").into(),
        came_in(opened, keeping),
        section("To be settled by you").with(settle).into(),
        row([book.into()]).into(),
    ])
}

/// Says in the book that something is to be settled, or what came in last.
#[must_use]
pub fn to_settle(opened: Opened) -> Piece {
    let keeping = keeping();
    let count = Memo::new(move |_| opened.journal.with(|journal| open_conflicts(journal).len()));
    let to = Route::Build(opened.id.to_string(), Page::Merge);
    Piece::live(move || {
        let look = |kind: &str, words: &str| -> El { link(kind, &to, words).test("to-merge") };
        match count.get() {
            0 if keeping.arrived(opened.id).is_none() => Piece::none(),
            0 => row([look("quiet", "What came in").into()]).into(),
            count => {
                let words = match count {
                    1 => "Two devices say different things in one place.".to_owned(),
                    more => format!("Two devices say different things in {more} places."),
                };
                note("notice notice-caution", &words)
                    .test("to-settle")
                    .with(look("", "Settle it"))
                    .into()
            }
        }
    })
}
