//! What is next: the steps that can be done now, in the time there is.

use build_journal::fold::StepState;
use build_plan::step::{By, Sitting};
use leptos::prelude::*;

use super::page::Tonight;
use super::undone::{InALine, step_link};
use super::words;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, el, note};
use crate::kit::section::{fold, section};
use crate::kit::when;

/// The stretches of time to choose from, in minutes.
const STRETCHES: [u32; 4] = [15, 30, 60, 120];
/// As many steps are offered at once, after the first.
const OFFERED: usize = 4;

/// What is next.
#[must_use]
pub fn next(tonight: Tonight) -> Piece {
    let opened = tonight.opened;
    let minutes = Draft::or(opened.draft("tonight/minutes"), "all");
    let words = STRETCHES
        .iter()
        .map(|minutes| Word::of(minutes.to_string(), format!("{minutes} min")))
        .chain([Word::of("all", "all evening")]);
    let choice = pick(
        "minutes",
        "How long have you got?",
        "",
        words.collect(),
        move || minutes.get(),
        move |id| minutes.set(id),
    )
    .class("pick minutes");
    let list = Piece::live(move || {
        let given = minutes.get().parse::<u32>().ok();
        tonight.outlook.with(|outlook| {
            let ready = outlook.ready();
            let fitting = match given {
                Some(minutes) => outlook.fitting(minutes),
                None => ready.clone(),
            };
            let left_out = ready.len() - fitting.len();
            untrack(|| offered(opened, &fitting, left_out, ready.is_empty()))
        })
    });
    section("Next").with(choice).with(list).into()
}

fn offered(opened: Opened, fitting: &[&StepState], left_out: usize, nothing: bool) -> Piece {
    let too_long = (left_out > 0).then(|| {
        let words = match left_out {
            1 => "One step more is ready and needs a longer sitting: it must not be left half done."
                .to_owned(),
            more => format!(
                "{more} steps more are ready and need a longer sitting: they must not be left half done."
            ),
        };
        note("hint", &words).test("too-long")
    });
    let Some((first, others)) = fitting.split_first() else {
        let words = if nothing {
            "Nothing can be done just now: all that is left waits for something."
        } else {
            "Nothing that is ready fits into so little time."
        };
        return Piece::all([
            note("lead", words).test("nothing-fits").into(),
            too_long.into(),
        ]);
    };
    let go_on = go_on(opened, first);
    let (some, rest) = others.split_at(others.len().min(OFFERED));
    let list = |states: &[&StepState]| {
        el("ul")
            .class("steps")
            .all(states.iter().map(|state| line(opened, state)))
    };
    let rest = (!rest.is_empty()).then(|| {
        let words = match rest.len() {
            1 => "One more that is ready".to_owned(),
            more => format!("{more} more that are ready"),
        };
        fold(&words, list(rest)).test("more-ready")
    });
    let some = (!some.is_empty()).then(|| list(some));
    Piece::all([go_on.into(), some.into(), rest.into(), too_long.into()])
}

/// The one thing to do next.
fn go_on(opened: Opened, state: &StepState) -> El {
    let word = if state.begun { "Go on" } else { "Next" };
    let what = words::of_parts(state.step.label, &some_parts(state));
    step_link(opened, state.step.id, None, "next-step")
        .class("button go-on")
        .with(
            el("span")
                .class("go-on-word")
                .text(&format!("{word}: {what}")),
        )
        .with(el("span").text(&takes(state)))
        .all(remarks(state))
}

fn line(opened: Opened, state: &StepState) -> Piece {
    let begun = if state.begun { "begun: " } else { "" };
    step_link(opened, state.step.id, None, "ready")
        .with(el("strong").text(&format!(
            "{begun}{}",
            words::of_parts(state.step.label, &some_parts(state))
        )))
        .with(el("span").text(&takes(state)))
        .all(remarks(state))
        .in_a_line()
}

/// The parts that are left, when some are done.
fn some_parts(state: &StepState) -> Vec<build_plan::At> {
    if state.begun {
        state.open.clone()
    } else {
        Vec::new()
    }
}

fn takes(state: &StepState) -> String {
    if state.step.by == By::Shop {
        return "at the machine shop".to_owned();
    }
    let takes = when::takes(state.minutes);
    match state.step.sitting {
        Sitting::MayPause => format!("{takes}, in pieces if need be"),
        Sitting::BetweenParts(_) if state.open.len() > 1 => format!(
            "{takes}, part by part, {} each",
            when::takes((state.sitting, state.sitting))
        ),
        Sitting::BetweenParts(_) | Sitting::InOneGo(_) => {
            format!("{takes}, not to be left half done")
        }
    }
}

/// What else there is to say of it before it is begun.
fn remarks(state: &StepState) -> Vec<Piece> {
    let mut lines = Vec::new();
    if !state.again.is_empty() {
        lines.push("once more: it came apart or no longer counts".to_owned());
    }
    if let Some(first) = state.better_after.first() {
        lines.push(format!("better after: {}", first.label));
    }
    if !state.have_you_got.is_empty() {
        let names: Vec<&str> = state.have_you_got.iter().map(|one| one.label).collect();
        lines.push(format!("have you got: {}?", names.join("; ")));
    }
    lines
        .iter()
        .map(|words| el("span").class("remark").text(words).into())
        .collect()
}
