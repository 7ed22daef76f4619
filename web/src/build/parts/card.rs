//! One part of the list: what it is, how far it has come, and the one tap that
//! moves it on.

use build_journal::fact::{PartMoved, PartStage};
use build_journal::fold::ListedPart;
use build_journal::{Body, Day, PartId};
use leptos::prelude::*;

use super::form::{PartForm, part_form};
use super::moving::moving;
use super::words::{WAY, details, is_late, next, promised_words, stage_words, waited_by};
use crate::build::Opened;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, note, p, row};
use crate::kit::section::fold;
use crate::kit::toast::toast;

/// A part.
#[must_use]
pub fn card(
    opened: Opened,
    doing: RwSignal<Option<PartId>>,
    part: &ListedPart,
    today: Day,
) -> Piece {
    let id = part.listed.part;
    let about = details(part);
    let forms = {
        let part = part.clone();
        Piece::when(
            move || doing.get() == Some(id),
            move || changing(opened, doing, &part),
        )
    };
    let name = part.listed.name.as_str();
    let change = button("quiet", "Change…", "change-part", move || {
        doing.update(|now| *now = if *now == Some(id) { None } else { Some(id) });
    })
    .attr("aria-label", &format!("change {name}"));
    el("li")
        .class("card part")
        .test("part")
        .attr("data-stage", part.stage.id())
        .with(
            p("")
                .with(el("strong").class("part-name").text(&capital(name)))
                .with((!about.is_empty()).then(|| el("span").class("part-about").text(&about))),
        )
        .with(way(part.stage))
        .with(waiting(part, today))
        .with(steps(opened, part))
        .with(row([on(opened, doing, part).into(), change.into()]))
        .with(forms)
        .into()
}

/// What can be changed of a part: its stage and day, and what it is.
fn changing(opened: Opened, doing: RwSignal<Option<PartId>>, part: &ListedPart) -> Piece {
    let done = move || doing.set(None);
    let form = part_form(PartForm::new(opened, Some(part), done));
    Piece::all([
        moving(opened, part, done).into(),
        fold("Its name, size, price, lot", form)
            .test("part-words-fold")
            .into(),
    ])
}

/// The stages as a row, the one it is at marked.
fn way(stage: PartStage) -> El {
    let at = WAY.iter().position(|one| *one == stage);
    let words = WAY.iter().enumerate().map(|(index, one)| {
        let passed = at.is_some_and(|at| index < at);
        let sign = if passed { "✓ " } else { "" };
        let word = el("li")
            .class(if passed { "way-past" } else { "" })
            .text(&format!("{sign}{}", stage_words(*one)));
        if *one == stage {
            word.attr("aria-current", "step").into()
        } else {
            word.into()
        }
    });
    el("ol").class("way").all(words)
}

/// What is waited for, and until when.
fn waiting(part: &ListedPart, today: Day) -> Option<El> {
    let promised = part
        .promised
        .filter(|_| part.is_waited_for())
        .map(|promised| promised_words(promised, today));
    let words = part.words.clone();
    let said: Vec<String> = words.into_iter().chain(promised).collect();
    (!said.is_empty()).then(|| {
        let class = if is_late(part, today) { "wrong" } else { "" };
        note(class, &said.join(". ").replace("..", ".")).test("part-waits")
    })
}

/// The steps that can't begin without it, as long as it is not here.
fn steps(opened: Opened, part: &ListedPart) -> Option<El> {
    let supply = part
        .listed
        .supply
        .as_deref()
        .filter(|_| part.is_waited_for())?;
    let steps = opened.build.with_untracked(|build| {
        let engine = build.engine.as_ref().map(|one| &one.engine)?;
        Some(waited_by(supply, engine))
    })?;
    let words = match steps.as_slice() {
        [] => return None,
        [only] => format!("Waiting for it: {only}."),
        [first, others @ ..] => format!("Waiting for it: {first}, and {} more.", others.len()),
    };
    Some(note("hint", &words))
}

/// The one tap to the next stage.
fn on(opened: Opened, doing: RwSignal<Option<PartId>>, part: &ListedPart) -> Option<El> {
    let (stage, words) = next(part.stage)?;
    let id = part.listed.part;
    let (promised, said) = (part.promised.map(|day| day.to_string()), part.words.clone());
    let name = part.listed.name.clone();
    let toast = toast();
    let go = button("", words, "part-on", move || {
        let ordered = stage == PartStage::Ordered;
        let moved = PartMoved {
            part: id,
            stage,
            // A part that is here is not promised any more.
            promised: promised.clone().filter(|_| ordered),
            words: said.clone().filter(|_| ordered),
        };
        if opened.write_down(Body::PartMoved(moved)).is_some() {
            if ordered && promised.is_none() {
                // The next thing to know of an order is when it comes.
                doing.set(Some(id));
            } else {
                doing.set(None);
                toast.say(format!("{}: {}.", capital(&name), stage_words(stage)));
            }
        }
    });
    Some(go.attr("aria-label", &format!("{}: {words}", part.listed.name)))
}
