//! Putting a part's stage right, with the day it is promised for and who is
//! waited for.

use build_journal::fact::{PartMoved, PartStage};
use build_journal::fold::ListedPart;
use build_journal::{Body, Day};

use super::words::stage_words;
use crate::build::Opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::day::{day_field, read_day};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, button, el, row};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;
const DAY_MS: i64 = 24 * 60 * 60 * 1000;
/// Days that are often promised.
const OFTEN: [(i64, &str); 3] = [(7, "in a week"), (14, "in two weeks"), (30, "in a month")];

/// Buttons for the days that are often promised, and the field for any day.
#[must_use]
pub fn promise(name: &str, draft: Draft) -> El {
    let often = OFTEN.map(|(days, words)| {
        button("quiet", words, &format!("{name}-{days}"), move || {
            let day = Day::of(chance::today().begins() + days * DAY_MS);
            draft.set(day.to_string());
        })
        .into()
    });
    el("div")
        .class("promise")
        .with(day_field(name, "Promised for", draft))
        .with(row(often))
}

/// The form of a part's stage; `done` closes it.
#[must_use]
pub fn moving(opened: Opened, part: &ListedPart, done: impl Fn() + Copy + 'static) -> El {
    let id = part.listed.part;
    let draft =
        |name: &str, start: &str| Draft::or(opened.draft(&format!("part/{id}/{name}")), start);
    let promised = part.promised.map(|day| day.to_string());
    let stage = draft("stage", part.stage.id());
    let day = draft("day", &promised.unwrap_or_default());
    let words = draft("words", part.words.as_deref().unwrap_or_default());
    let clear = move || {
        for draft in [stage, day, words] {
            draft.clear();
        }
    };
    let stages = PartStage::ALL
        .iter()
        .map(|stage| Word::of(stage.id(), stage_words(*stage)))
        .collect();
    let write = move || {
        let said = words.now().trim().to_owned();
        let (Some(stage), Ok(promised)) = (PartStage::from_id(&stage.now()), read_day(&day.now()))
        else {
            return;
        };
        if too_long(&said, WORDS_AT_MOST).is_some() {
            return;
        }
        let moved = PartMoved {
            part: id,
            stage,
            promised: promised.map(|day| day.to_string()),
            words: Some(said).filter(|said| !said.is_empty()),
        };
        if opened.write_down(Body::PartMoved(moved)).is_some() {
            clear();
            done();
        }
    };
    let give_up = move || {
        clear();
        done();
    };
    el("div")
        .class("inset")
        .test("moving-part")
        .with(promise("part-promised", day))
        .with(word_field(
            "part-words",
            "Waiting on, or what else is to be said",
            "",
            words,
            WORDS_AT_MOST,
            || None,
        ))
        .with(pick(
            "part-stage",
            "Where it stands",
            "",
            stages,
            move || stage.get(),
            move |id| stage.set(id),
        ))
        .with(row([
            button("", "Write it down", "part-moved", write).into(),
            button("quiet", "Leave it", "part-leave", give_up).into(),
        ]))
}
