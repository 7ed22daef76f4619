//! Choosing what was changed, in the words of the trade.

use build_plan::event::{EVENTS, Event};

use super::written::written;
use crate::build::Opened;
use crate::build::tonight::{InALine, Place};
use crate::device::drafts::Draft;
use crate::kit::judged::capital;
use crate::kit::piece::{Piece, el, note, title};
use crate::kit::words::word_field;
use crate::route::{Page, Route};

const FIND_AT_MOST: usize = 80;

/// All that can be changed on this engine.
#[must_use]
pub fn choose(opened: Opened) -> Piece {
    let find = Draft::of(opened.draft("change/find"));
    let field = word_field(
        "find-change",
        "What did you change?",
        "A word of it, such as shells, gasket, hone. Or take it from the list.",
        find,
        FIND_AT_MOST,
        || None,
    );
    let list = Piece::live(move || {
        let wanted = find.get().to_lowercase();
        let found: Vec<&'static Event> = opened.build.with(|build| {
            let engine = build.engine.as_ref().map(|one| &one.engine);
            let applies =
                |event: &&Event| engine.is_some_and(|engine| event.when.applies_to(engine));
            let all = EVENTS.iter().copied().filter(applies);
            all.filter(|event| is_meant(event, &wanted)).collect()
        });
        if found.is_empty() {
            let words = "Nothing of that name. Try another word of the trade, or empty the field to see all.";
            return note("lead", words).test("no-such-change").into();
        }
        let lines = found.iter().map(|event| line(opened, event));
        el("ul").class("steps").all(lines).into()
    });
    Piece::all([
        title("I changed something").into(),
        note(
            "lead",
            "It is shown what that undoes before anything is written down.",
        )
        .into(),
        written(opened),
        field.into(),
        list,
    ])
}

/// Whether every word that was typed is in what it is called, why it matters, or
/// what it makes stale.
fn is_meant(event: &Event, wanted: &str) -> bool {
    let mut said = format!("{} {}", event.label, event.why);
    for proof in event.voids {
        said.push(' ');
        said.push_str(proof.label());
    }
    let said = said.to_lowercase();
    wanted.split_whitespace().all(|word| said.contains(word))
}

fn line(opened: Opened, event: &Event) -> Piece {
    let to = Place::Change(Some(event.id.to_owned()));
    el("a")
        .class("entry")
        .attr(
            "href",
            &Route::Build(opened.id.to_string(), Page::Plan(to)).to_string(),
        )
        .test(&format!("change-{}", event.id))
        .with(el("strong").text(&capital(event.label)))
        .in_a_line()
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_plan::event::{HEAD_GASKET_SWAPPED, MAIN_SHELLS_SWAPPED};

    #[test]
    fn a_change_is_found_by_any_word_of_it_and_by_what_it_undoes() {
        assert!(is_meant(&MAIN_SHELLS_SWAPPED, "shells main"));
        assert!(is_meant(&MAIN_SHELLS_SWAPPED, "oil clearance"));
        assert!(is_meant(&HEAD_GASKET_SWAPPED, "gasket"));
        assert!(is_meant(&HEAD_GASKET_SWAPPED, ""));
        assert!(!is_meant(&HEAD_GASKET_SWAPPED, "shells"));
    }
}
