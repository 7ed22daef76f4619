//! The first screen: the builds on this device.

use build_journal::{BuildId, Journal};
use leptos::prelude::*;

use super::card::card;
use super::import::import_file;
use super::room::room;
use super::sample::sample_button;
use crate::device::keeping::keeping;
use crate::kit::piece::{Piece, el, link, note, row, title};
use crate::later::{cards_later, not_here};
use crate::route::Route;

const NONE: &str =
    "No build is on this device yet. Begin one by describing the engine, or bring in a file.";

/// The cards of these builds, the latest begun first.
#[must_use]
pub fn cards(builds: Vec<(BuildId, RwSignal<Journal>)>) -> Piece {
    let cards = builds
        .into_iter()
        .rev()
        .map(|(id, journal)| card(id, journal).into());
    el("ul").class("entries").all(cards).into()
}

/// The bench.
#[must_use]
pub fn bench() -> Piece {
    let keeping = keeping();
    let cards = Piece::live(move || {
        if keeping.is_unread() {
            return not_here(|| {
                let _ = window().location().reload();
            });
        }
        let builds = keeping.builds();
        if builds.is_empty() {
            let words = if keeping.is_open() {
                NONE
            } else {
                "Opening the book…"
            };
            return note("lead", words).test("no-builds").into();
        }
        untrack(|| cards_later(builds))
    });
    let begin = row([
        link("", &Route::NewBuild, "New build")
            .test("new-build")
            .into(),
        link("quiet", &Route::QuickChecks, "Quick checks")
            .test("quick-link")
            .into(),
        import_file(),
        sample_button(),
    ]);
    Piece::all([title("Bench").into(), cards, begin.into(), room()])
}
