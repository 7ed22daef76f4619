//! Beginning a build by describing its engine.

use build_journal::Body;

use super::description::{FormWords, description};
use crate::build::tonight::Place;
use crate::device::drafts;
use crate::device::keeping::keeping;
use crate::kit::piece::{Piece, note, title};
use crate::kit::toast::toast;
use crate::route::{self, Page, Route};

const DRAFT: &str = "new-build/";
const WORDS: FormWords = FormWords {
    save: "Begin the build",
    built_open: false,
};

/// The form that begins a build.
#[must_use]
pub fn new_build() -> Piece {
    let keeping = keeping();
    let toast = toast();
    let form = description(DRAFT, None, WORDS, move |described| {
        let id = keeping.begin();
        match keeping.write_down(id, Body::EngineDescribed(described)) {
            Ok(_) => {
                drafts::forget(DRAFT);
                let tonight = Page::Plan(Place::Tonight);
                route::go(&Route::Build(id.to_string(), tonight));
            }
            Err(error) => toast.say(error.to_string()),
        }
    });
    let lead =
        "From this come the steps and the places to measure. It can be described again later.";
    Piece::all([
        title("Describe the engine").into(),
        note("lead", lead).into(),
        form,
    ])
}
