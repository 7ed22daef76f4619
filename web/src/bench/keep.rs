//! Keeping the answer of a quick check in a build.

use build_journal::fact::{Body, Note};
use build_journal::{BuildId, fold};
use leptos::prelude::*;

use super::card::name_of;
use crate::device::keeping::{Keeping, keeping};
use crate::kit::piece::{Piece, button, el, link, p, row};
use crate::kit::toast::toast;
use crate::route::Route;

/// The builds that a text can be kept in; closes when it is done.
#[must_use]
pub fn keep(text: &str, open: RwSignal<bool>) -> Piece {
    let keeping = keeping();
    let toast = toast();
    let text = text.to_owned();
    let shown = p(&text).test("keep-text");
    let builds = Piece::live(move || {
        let builds = keeping.builds();
        if builds.is_empty() {
            let words =
                "No build is on this device yet. Begin one first: what is typed here waits.";
            return Piece::all([
                p(words).into(),
                p("").with(link("", &Route::NewBuild, "New build")).into(),
            ]);
        }
        let rows = builds.into_iter().rev().map(|(id, journal)| {
            let name = name_of(&journal.with_untracked(fold));
            let text = text.clone();
            let put = button("", &name.clone(), "keep-here", move || {
                toast.say(put_in(keeping, id, &name, &text));
                open.set(false);
            });
            el("li").with(put).into()
        });
        el("ul").class("entries").all(rows).into()
    });
    let away = button("quiet", "Not now", "keep-away", move || open.set(false));
    Piece::all([shown.into(), builds, row([away.into()]).into()])
}

/// Writes the text into a build; says what came of it.
fn put_in(keeping: Keeping, id: BuildId, name: &str, text: &str) -> String {
    let note = Note {
        text: text.to_owned(),
        place: None,
        step: None,
    };
    match keeping.write_down(id, Body::Note(note)) {
        Ok(_) => format!("Kept in the book of {name}."),
        Err(error) => error.to_string(),
    }
}
