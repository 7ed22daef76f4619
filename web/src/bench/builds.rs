//! The first screen: the builds on this device.

use super::card::card;
use super::import::import_file;
use super::room::room;
use crate::device::keeping::keeping;
use crate::kit::piece::{Piece, el, link, note, row, title};
use crate::route::Route;

const NONE: &str =
    "No build is on this device yet. Begin one by describing the engine, or bring in a file.";

/// The bench.
#[must_use]
pub fn bench() -> Piece {
    let keeping = keeping();
    let cards = Piece::live(move || {
        let builds = keeping.builds();
        if builds.is_empty() {
            let words = if keeping.is_open() {
                NONE
            } else {
                "Opening the book…"
            };
            return note("lead", words).test("no-builds").into();
        }
        // The latest begun comes first.
        let cards = builds
            .into_iter()
            .rev()
            .map(|(id, journal)| card(id, journal).into());
        el("ul").class("entries").all(cards).into()
    });
    let begin = row([
        link("", &Route::NewBuild, "New build")
            .test("new-build")
            .into(),
        link("quiet", &Route::QuickChecks, "Quick checks")
            .test("quick-link")
            .into(),
        import_file(),
    ]);
    Piece::all([title("Bench").into(), cards, begin.into(), room()])
}
