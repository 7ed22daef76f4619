//! The engine as it is described, to be described further: what is assumed of
//! how it is built is said as such until somebody has looked. What another
//! description does to plan and results is shown before it is written down.

use build_journal::Body;
use leptos::prelude::*;

use super::step::{Ask, Words};
use super::tonight::Place;
use crate::bench::{FormWords, description};
use crate::build::Opened;
use crate::device::drafts;
use crate::kit::piece::{Piece, note, title};
use crate::kit::toast::toast;
use crate::route::{self, Page, Route};

const WORDS: FormWords = FormWords {
    save: "Describe it so",
    built_open: true,
};

/// The page that describes the engine of this build.
#[must_use]
pub fn engine() -> Piece {
    let opened: Opened = expect_context();
    let toast = toast();
    let ask = Ask::new(opened);
    let prefix = opened.draft("engine/");
    let from = opened.build.with_untracked(|build| {
        let fact = build.engine.as_ref()?.fact;
        opened
            .journal
            .with_untracked(|journal| match journal.get(fact)?.body() {
                Body::EngineDescribed(described) => Some(described.clone()),
                _ => None,
            })
    });
    let before = from.clone();
    let drafts_of = prefix.clone();
    let form = description(&prefix, from.as_ref(), WORDS, move |described| {
        let tonight = Route::Build(opened.id.to_string(), Page::Plan(Place::Tonight));
        if before.as_ref() == Some(&described) {
            drafts::forget(&drafts_of);
            toast.say("Nothing has changed.");
            route::go(&tonight);
        } else {
            let drafts_of = drafts_of.clone();
            let words = Words {
                lead: "The plan goes by this description from now on.",
                yes: "Describe it so",
                said: "Described. The plan goes by it from now on.",
            };
            ask.write_and(
                vec![Body::EngineDescribed(described)],
                false,
                &words,
                move || {
                    drafts::forget(&drafts_of);
                    route::go(&tonight);
                },
            );
        }
    });
    let lead = "The latest description counts. Readings at places that the engine then no longer has stay in the book.";
    Piece::all([
        title("The engine").into(),
        note("lead", lead).into(),
        form,
        ask.dialog().into(),
    ])
}
