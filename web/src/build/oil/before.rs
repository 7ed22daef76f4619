//! The list before the key is turned, on one page, with what forbids to fire.

use assembly_core::describe::Gravity;
use assembly_core::oil::running_in::pre_fire::{Item, PRE_FIRE, still_forbids};
use build_journal::fact::Outcome;
use build_journal::fold::Build;
use build_plan::check::{OIL_AT_ROCKERS, PRE_FIRE_LIST, PRIMED};
use leptos::prelude::*;

use super::page::Oil;
use super::place::Place;
use super::prime::{check, findings};
use crate::device::chance::now;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, link, note, row, title};
use crate::kit::section::{section, sentences};
use crate::route::go;

/// What hurts people on this day.
pub(super) const CAUTIONS: [&str; 5] = [
    "Fire: extinguisher in reach, no flame, no hot lamp. Fuel and sparks meet today for the first time.",
    "Carbon monoxide: doors open, exhaust led outside. It kills without a smell.",
    "Rotating parts: hands, hair, sleeves, rags and leads away from belts and fan.",
    "Hot oil and coolant burn. Never open a hot radiator cap.",
    "Stopping is always right. The sheets of engine, cam and parts win over this list.",
];

/// What is shown by the book itself and not by a tick.
fn by_the_book(item: &Item, build: &Build) -> Option<bool> {
    let stops = || {
        let all = findings(build, now());
        !all.iter().any(|(gravity, _)| *gravity == Gravity::Stop)
    };
    match item.id {
        "primed" => Some(stops() && build.record.made(&PRIMED, build_plan::At::Engine).is_some()),
        // Counted, the counts decide; not counted, it is a tick like the others.
        "plugs" if build.oil.plugs.any_out() => Some(build.oil.plugs.all_back()),
        "rockers" => {
            let engine = &build.engine.as_ref()?.engine;
            let all = OIL_AT_ROCKERS.per.parts(engine);
            let stands = |at: &build_plan::At| {
                matches!(
                    build.result(build_plan::proof::Proof::Check(&OIL_AT_ROCKERS), *at),
                    build_journal::fold::ResultState::Stands
                        | build_journal::fold::ResultState::LetPass(_)
                )
            };
            Some(!all.is_empty() && all.iter().all(stands))
        }
        _ => None,
    }
}

fn ticked(draft: Draft, build: &Build) -> Vec<&'static str> {
    let kept = draft.get();
    let kept: Vec<&str> = kept.split(' ').collect();
    let done = |item: &&Item| by_the_book(item, build).unwrap_or_else(|| kept.contains(&item.id));
    PRE_FIRE.iter().filter(done).map(|item| item.id).collect()
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let draft = Draft::of(oil.opened.draft("oil/before"));
    let done = Memo::new(move |_| oil.view.with(|view| ticked(draft, &view.build)));
    let items = |hard: bool| {
        PRE_FIRE
            .iter()
            .filter(move |item| item.hard == hard)
            .map(move |item| line(oil, item, draft, done).into())
    };
    let forbids = Piece::live(move || {
        let left = done.with(|done| still_forbids(done).len());
        let words = match left {
            0 => "Nothing on this list forbids it.".to_owned(),
            1 => "One thing still forbids it.".to_owned(),
            _ => format!("{left} things still forbid it."),
        };
        let class = if left == 0 {
            "notice notice-note"
        } else {
            "notice notice-danger"
        };
        note(class, &words)
            .attr("role", "status")
            .test("before-forbids")
            .attr("data-left", &left.to_string())
            .into()
    });
    let ready = button(
        "",
        "All seen to: to the first fire",
        "before-done",
        move || {
            let count = done.with_untracked(Vec::len);
            if !done.with_untracked(|done| still_forbids(done).is_empty()) {
                return;
            }
            let words = format!("{count} of {}", PRE_FIRE.len());
            let body = check(PRE_FIRE_LIST.id, None, Outcome::Good, Some(words));
            if oil.opened.write_down(body).is_some() {
                draft.clear();
                go(&oil.route(Place::Run));
            }
        },
    )
    .live_attr("disabled", move || {
        (!done.with(|done| still_forbids(done).is_empty())).then(String::new)
    });
    Piece::all([
        title("Before the key").into(),
        el("div")
            .class("notice notice-danger")
            .test("before-cautions")
            .with(sentences("", &CAUTIONS))
            .into(),
        section("Not without these")
            .with(
                el("ul")
                    .class("oil-ticks")
                    .test("before-hard")
                    .all(items(true)),
            )
            .into(),
        section("Better with these")
            .with(el("ul").class("oil-ticks").all(items(false)))
            .into(),
        forbids,
        row([ready.into()]).into(),
    ])
}

fn line(oil: Oil, item: &'static Item, draft: Draft, done: Memo<Vec<&'static str>>) -> El {
    let proved = oil
        .view
        .with_untracked(|view| by_the_book(item, &view.build).is_some());
    let words = el("span")
        .with(el("strong").text(item.text))
        .text(" ")
        .with(el("span").class("hint").text(item.because));
    if proved {
        let there = move || done.with(|done| done.contains(&item.id));
        let state = el("span")
            .class("oil-proved")
            .test(&format!("before-{}", item.id))
            .live_attr("data-done", move || Some(there().to_string()))
            .live_text(move || {
                if there() {
                    "✓ in the book"
                } else {
                    "✕ not in the book"
                }
                .to_owned()
            });
        let to = match item.id {
            "plugs" => link("quiet", &oil.route(Place::Plugs), "Count them"),
            _ => link("quiet", &oil.route(Place::Prime), "Prime it"),
        };
        return el("li")
            .class("oil-tick oil-tick-proved")
            .with(state)
            .with(words)
            .with(to);
    }
    let tick = el("input")
        .attr("type", "checkbox")
        .test(&format!("before-{}", item.id))
        .live_property("checked", move || {
            done.with(|done| done.contains(&item.id)).into()
        })
        .on("change", move |_| {
            let kept = draft.now();
            let mut kept: Vec<&str> = kept.split(' ').filter(|one| !one.is_empty()).collect();
            if kept.contains(&item.id) {
                kept.retain(|one| *one != item.id);
            } else {
                kept.push(item.id);
            }
            draft.set(kept.join(" "));
        });
    el("li").with(el("label").class("oil-tick").with(tick).with(words))
}
