//! What waits and for what, what was passed over, and what lies ahead: promised
//! days and the longest way through the shop.

use build_journal::fold::{CriticalPath, Outlook, Promised, StepState, WaitsFor};
use build_plan::step::{By, Step};
use leptos::prelude::*;

use super::page::Tonight;
use super::undone::{InALine, step_link};
use super::words;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, el, note, p};
use crate::kit::section::{fold, section};
use crate::kit::when;

/// The minutes a day to reckon with.
const A_DAY: [(&str, &str); 4] = [
    ("15", "15 min"),
    ("30", "30 min"),
    ("60", "1 hour"),
    ("180", "3 hours"),
];
const USUAL_A_DAY: &str = "60";

/// What waits for something that is not just an earlier step.
fn is_held_up(state: &StepState) -> bool {
    let earlier = |waits: &WaitsFor| matches!(waits, WaitsFor::Step(_));
    !state.waits.iter().all(earlier)
}

/// What waits, and what was passed over.
#[must_use]
pub fn waiting(tonight: Tonight) -> Piece {
    let opened = tonight.opened;
    Piece::live(move || {
        tonight.outlook.with(|outlook| {
            untrack(|| Piece::all([passed_over(opened, outlook), held_up(opened, outlook)]))
        })
    })
}

fn held_up(opened: Opened, outlook: &Outlook) -> Piece {
    let (held, later): (Vec<_>, Vec<_>) = outlook.waiting().partition(|state| is_held_up(state));
    if held.is_empty() && later.is_empty() {
        return Piece::none();
    }
    let list = (!held.is_empty()).then(|| {
        el("ul")
            .class("steps")
            .all(held.iter().map(|state| waits_line(opened, state)))
    });
    let later = (!later.is_empty()).then(|| {
        let words = match later.len() {
            1 => "One step waits for an earlier one".to_owned(),
            more => format!("{more} steps wait for earlier ones"),
        };
        let lines = later.iter().map(|state| waits_line(opened, state));
        fold(&words, el("ul").class("steps").all(lines)).test("wait-for-earlier")
    });
    section("Waiting").with(list).with(later).into()
}

fn waits_line(opened: Opened, state: &StepState) -> Piece {
    let waits = state.waits.iter().map(|waits| {
        el("span")
            .class("remark")
            .text(&format!("waits for {}", words::waits(waits)))
            .into()
    });
    step_link(opened, state.step.id, None, "waits")
        .with(el("strong").text(state.step.label))
        .all(waits)
        .in_a_line()
}

/// Steps that nobody ticked although later ones are done.
fn passed_over(opened: Opened, outlook: &Outlook) -> Piece {
    if outlook.passed_over.is_empty() {
        return Piece::none();
    }
    let lines = outlook.passed_over.iter().map(|step| {
        step_link(opened, step.id, None, "passed-over")
            .with(el("strong").text(step.label))
            .in_a_line()
    });
    let words = match outlook.passed_over.len() {
        1 => "Was this done? Nobody ticked it".to_owned(),
        more => format!("Were these {more} done? Nobody ticked them"),
    };
    fold(&words, el("ul").class("steps").all(lines))
        .test("passed-over-fold")
        .into()
}

/// What lies ahead.
#[must_use]
pub fn ahead(tonight: Tonight) -> Piece {
    let opened = tonight.opened;
    let promised = Memo::new(move |_| {
        tonight
            .outlook
            .with(|outlook| opened.build.with(|build| outlook.promised(build)))
    });
    let days = Piece::live(move || {
        let promised = promised.get();
        (!promised.is_empty())
            .then(|| {
                el("ul")
                    .class("sentences")
                    .all(promised.iter().map(one_promise))
            })
            .into()
    });
    let a_day = Draft::or(opened.draft("tonight/a-day"), USUAL_A_DAY);
    let path = Memo::new(move |_| {
        let minutes = a_day.get().parse().unwrap_or(60);
        tonight.outlook.with(|outlook| {
            opened
                .build
                .with(|build| outlook.critical_path(build, tonight.now.get_untracked(), minutes))
        })
    });
    let choice = pick(
        "a-day",
        "How long do you work on it, on an average day?",
        "",
        A_DAY
            .iter()
            .map(|(id, label)| Word::of(*id, *label))
            .collect(),
        move || a_day.get(),
        move |id| a_day.set(id),
    )
    .class("pick minutes");
    let way = Piece::live(move || {
        let path = path.get();
        untrack(|| longest_way(opened, &path))
    });
    let inside = Piece::all([choice.into(), way]);
    section("Ahead")
        .with(days)
        .with(fold("The longest way to the end", inside).test("longest-way"))
        .into()
}

fn one_promise(promised: &Promised) -> Piece {
    let held: Vec<&str> = promised.holds_up.iter().map(|step| step.label).collect();
    let held = if held.is_empty() {
        String::new()
    } else {
        format!(" It holds up: {}.", held.join("; "))
    };
    el("li")
        .test("promised")
        .with(el("strong").text(&format!(
            "{}: {}.",
            when::day(promised.day.begins()),
            promised.what
        )))
        .text(&held)
        .into()
}

fn longest_way(opened: Opened, path: &CriticalPath) -> Piece {
    let Some(last) = path.steps.last() else {
        return p("Nothing is left to do.").into();
    };
    let shops = path
        .steps
        .iter()
        .filter(|on| on.step.by == By::Shop)
        .count();
    let guess = (path.steps.iter().any(|on| on.guessed)).then(|| {
        note("hint", "A shop that has promised no day is taken to need six weeks: common practice, no promise. Type the day when it gives one.")
    });
    let at_best = format!(
        "At best it is done on {}, when everything goes side by side that can{}.",
        when::day(last.ends),
        match shops {
            0 => String::new(),
            1 => " and the shop's one job on it is in time".to_owned(),
            more => format!(" and the shop's {more} jobs on it are in time"),
        }
    );
    let lines = path.steps.iter().map(|on| {
        let ends = format!(
            "till {}{}",
            when::day(on.ends),
            if on.guessed { ", a guess" } else { "" }
        );
        way_line(opened, on.step, &ends).in_a_line()
    });
    let stuck = (!path.stuck.is_empty()).then(|| {
        let names: Vec<&str> = path.stuck.iter().map(|step| step.label).collect();
        note(
            "wrong",
            &format!("These wait for each other: {}.", names.join("; ")),
        )
    });
    Piece::all([
        p(&at_best).test("at-best").into(),
        guess.into(),
        el("ol").class("steps").all(lines).into(),
        stuck.into(),
    ])
}

fn way_line(opened: Opened, step: &Step, ends: &str) -> El {
    step_link(opened, step.id, None, "on-the-way")
        .with(el("strong").text(step.label))
        .with(el("span").text(ends))
}
