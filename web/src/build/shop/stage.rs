//! How far machine work has come, and moving it on.

use build_journal::Body;
use build_journal::fact::{WorkMoved, WorkStage};
use build_journal::fold::ShopWork;
use leptos::prelude::*;

use super::page::Doing;
use crate::build::Opened;
use crate::build::parts::{promise, promised_words};
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::day::read_day;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, row};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;

const fn stage_words(stage: Option<WorkStage>) -> &'static str {
    match stage {
        None => "Not sent off yet.",
        Some(WorkStage::Sent) => "At the shop.",
        Some(WorkStage::Back) => "Back, not looked over yet.",
        Some(WorkStage::Accepted) => "Looked over and taken.",
        Some(WorkStage::Refused) => "Looked over and not as ordered.",
    }
}

/// Where it stands, with the taps that lead on.
#[must_use]
pub fn stage_line(opened: Opened, doing: RwSignal<Doing>, work: &ShopWork) -> El {
    let id = work.ordered.work;
    let at_the_shop = work.stage == Some(WorkStage::Sent);
    let promised = work
        .promised
        .filter(|_| at_the_shop)
        .map(|day| promised_words(day, chance::today()));
    let late = work
        .promised
        .is_some_and(|day| at_the_shop && day < chance::today());
    let mut words = stage_words(work.stage).to_owned();
    for more in promised.into_iter().chain(work.words.clone()) {
        words.push(' ');
        words.push_str(&more);
    }
    let go = |to: WorkStage, kind: &str, words: &str| -> Piece {
        let promised = work.promised.map(|day| day.to_string());
        let said = work.words.clone();
        let test = format!("work-{}", to.id());
        button(kind, words, &test, move || {
            let leaves = to == WorkStage::Sent;
            let moved = WorkMoved {
                work: id,
                stage: to,
                promised: promised.clone().filter(|_| leaves),
                words: said.clone().filter(|_| leaves),
            };
            if opened.write_down(Body::WorkMoved(moved)).is_some() {
                let next = match to {
                    // The next thing to know is when it comes back.
                    WorkStage::Sent if promised.is_none() => Doing::Moving(id),
                    WorkStage::Back => Doing::Receiving(id),
                    _ => Doing::Nothing,
                };
                doing.set(next);
            }
        })
        .into()
    };
    let on: Vec<Piece> = match work.stage {
        None => vec![go(WorkStage::Sent, "", "It is at the shop")],
        Some(WorkStage::Sent) => vec![go(WorkStage::Back, "", "It is back")],
        Some(WorkStage::Back) => vec![
            go(WorkStage::Accepted, "", "Looked over: take it"),
            go(WorkStage::Refused, "quiet", "Not as ordered"),
        ],
        Some(WorkStage::Refused) => vec![go(WorkStage::Sent, "", "It goes back to the shop")],
        Some(WorkStage::Accepted) => Vec::new(),
    };
    el("div")
        .class("work-stage")
        .with(
            el("p")
                .class(if late { "wrong" } else { "" })
                .test("work-stage")
                .text(&words),
        )
        .with(row(on).class("row no-print"))
}

/// The form of its stage and day; `done` closes it.
#[must_use]
pub fn moving_work(opened: Opened, work: &ShopWork, done: impl Fn() + Copy + 'static) -> El {
    let id = work.ordered.work;
    let draft =
        |name: &str, start: &str| Draft::or(opened.draft(&format!("work/{id}/{name}")), start);
    let stage = draft("stage", work.stage.unwrap_or(WorkStage::Sent).id());
    let promised = work.promised.map(|day| day.to_string());
    let day = draft("day", &promised.unwrap_or_default());
    let words = draft("words", work.words.as_deref().unwrap_or_default());
    let clear = move || {
        for draft in [stage, day, words] {
            draft.clear();
        }
    };
    let stages = WorkStage::ALL
        .iter()
        .map(|stage| Word::of(stage.id(), stage_words(Some(*stage)).trim_end_matches('.')))
        .collect();
    let write = move || {
        let said = words.now().trim().to_owned();
        let (Some(stage), Ok(promised)) = (WorkStage::from_id(&stage.now()), read_day(&day.now()))
        else {
            return;
        };
        if too_long(&said, WORDS_AT_MOST).is_some() {
            return;
        }
        let moved = WorkMoved {
            work: id,
            stage,
            promised: promised.map(|day| day.to_string()),
            words: Some(said).filter(|said| !said.is_empty()),
        };
        if opened.write_down(Body::WorkMoved(moved)).is_some() {
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
        .test("moving-work")
        .with(promise("work-promised", day))
        .with(word_field(
            "work-words",
            "What else is to be said",
            "",
            words,
            WORDS_AT_MOST,
            || None,
        ))
        .with(pick(
            "work-at",
            "Where it stands",
            "",
            stages,
            move || stage.get(),
            move |id| stage.set(id),
        ))
        .with(row([
            button("", "Write it down", "work-moved", write).into(),
            button("quiet", "Leave it", "work-leave", give_up).into(),
        ]))
}
