//! What has to be done, and be there, before a step.

use build_journal::fold::Outlook;
use build_plan::At;
use build_plan::step::Step;
use build_plan::supply::{Supply, supply};
use leptos::prelude::*;

use super::state::{InHand, Stand};
use crate::build::Opened;
use crate::build::tonight::words::{self, waits};
use crate::build::tonight::{InALine, step_link};
use crate::kit::piece::{El, Piece, el, note, p};
use crate::kit::section::{section, sentences};
use crate::kit::toast::notice;

/// What the step still waits for, above everything else.
#[must_use]
pub fn waits_for(in_hand: &InHand, outlook: Memo<Outlook>) -> Piece {
    let id = in_hand.step.id;
    Piece::live(move || {
        outlook.with(|outlook| {
            let state = outlook.open.iter().find(|state| state.step.id == id);
            let lines: Vec<String> = state
                .map(|state| state.waits.iter().map(waits).collect())
                .unwrap_or_default();
            if lines.is_empty() {
                return Piece::none();
            }
            notice("caution", "step-waits")
                .with(p("Not yet. First:"))
                .with(sentences("", &lines))
                .into()
        })
    })
}

/// An earlier step, as far as it concerns the parts in hand.
#[derive(Clone, PartialEq)]
struct Need {
    step: &'static Step,
    hard: bool,
    stand: Stand,
    passed_over: bool,
}

/// The earlier steps, each with whether it stands.
#[must_use]
pub fn needs(opened: Opened, in_hand: &InHand, outlook: Memo<Outlook>) -> Piece {
    let (step, targets) = (in_hand.step, in_hand.targets());
    let needs = Memo::new(move |_| {
        opened.build.with(|build| {
            let Some(engine) = build.engine.as_ref().map(|one| &one.engine) else {
                return Vec::new();
            };
            let all = build.plan.needs(step, engine).into_iter();
            all.map(|(need, hard)| {
                let parts = need.per.parts(engine).into_iter();
                let parts: Vec<At> = parts
                    .filter(|part| targets.iter().any(|at| part.concerns(*at, engine)))
                    .collect();
                Need {
                    step: need,
                    hard,
                    stand: Stand::of_all(build, need, &parts),
                    passed_over: outlook.with(|outlook| outlook.passed_over.contains(&need)),
                }
            })
            .collect()
        })
    });
    let any = Memo::new(move |_| needs.with(|needs| !needs.is_empty()));
    Piece::when(
        move || any.get(),
        move || {
            let list = el("ul").class("steps").live(move || {
                let needs = needs.get();
                untrack(|| Piece::all(needs.iter().map(|need| line(opened, need))))
            });
            section("After").with(list).into()
        },
    )
}

fn line(opened: Opened, need: &Need) -> Piece {
    let stands = match (&need.stand, need.step.optional, need.passed_over) {
        (Stand::Open, true, _) => "– only if it was decided on".to_owned(),
        (Stand::Open, false, true) => "○ nobody ticked it".to_owned(),
        (stand, ..) => stand.words(),
    };
    let strict = if need.hard {
        "has to be done before"
    } else {
        "better done before"
    };
    step_link(opened, need.step.id, None, "need")
        .attr("data-state", need.stand.name())
        .with(el("strong").text(need.step.label))
        .with(el("span").text(&format!("{stands} · {strict}")))
        .in_a_line()
}

/// What has to lie on the bench: parts and tools.
#[must_use]
pub fn in_hand(opened: Opened, step: &'static Step) -> Piece {
    if step.in_hand.is_empty() && step.tools.is_empty() {
        return Piece::none();
    }
    let supplies = Memo::new(move |_| {
        opened.build.with(|build| {
            let state = |wanted: &'static Supply| {
                let listed =
                    build.bought.parts.iter().filter(|part| {
                        part.listed.supply.as_deref().and_then(supply) == Some(wanted)
                    });
                let mut listed: Vec<_> = listed.collect();
                listed.retain(|part| part.is_here() || part.is_waited_for());
                match listed.as_slice() {
                    [] => "not on the parts list, so look whether you have it",
                    all if all.iter().all(|part| part.is_here()) => "✓ here",
                    _ => "○ waited for",
                }
            };
            step.in_hand
                .iter()
                .map(|wanted| (wanted.label, wanted.why, state(wanted)))
                .collect::<Vec<_>>()
        })
    });
    let list = el("ul").class("sentences").live(move || {
        supplies.with(|supplies| {
            Piece::all(supplies.iter().map(|(label, why, state)| {
                el("li")
                    .with(el("strong").text(label))
                    .text(&format!(": {state}. {why}"))
                    .into()
            }))
        })
    });
    let tools =
        (!step.tools.is_empty()).then(|| note("", &format!("Tools: {}.", step.tools.join("; "))));
    section("In hand").with(list).with(tools).into()
}

/// How long it takes, and whether it may be left half done.
#[must_use]
pub fn takes(in_hand: &InHand) -> El {
    let step = in_hand.step;
    let minutes = (u32::from(step.minutes.0), u32::from(step.minutes.1));
    let each = if in_hand.parts.len() > 1 {
        " for each part"
    } else {
        ""
    };
    let time = match step.by {
        build_plan::step::By::Shop => "The machine shop does it.".to_owned(),
        build_plan::step::By::Builder => format!(
            "{}{each} for one careful person: common practice.",
            crate::kit::when::takes(minutes)
        ),
    };
    section("Time")
        .with(p(&time))
        .with(p(&words::sitting(step)).test("sitting"))
}
