//! One main bearing: measuring it, and what comes of it.

use assembly_core::quantity::{Kind, Unit};
use assembly_core::tool::Task;
use build_journal::fact::{Reading, Spot};
use build_journal::fold::{MainBearing, Standing};
use build_journal::Body;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::{Measure, Place};
use leptos::prelude::*;

use super::gauge::{InUse, SetOnPick, ToolPick, shows_needle};
use super::places::{
    PlaceButton, last_words, next_place, place_id, place_words, places,
};
use super::verdict::{judged, mark};
use crate::build::page::opened;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::judged::{Dominates, Findings, VerdictOf, WhatToDo, window_words};
use crate::kit::keypad::pad;
use crate::kit::pick::{Pick, Word};
use crate::kit::section::{Fold, Section, Sentences};
use crate::kit::toast::toast;
use crate::kit::verdict::{Mark, VerdictPlate};
use crate::route::Page;

/// What is in hand, in the order of the work.
const ROUND: [&Measure; 3] = [&MAIN_JOURNAL_DIAMETER, &MAIN_BEARING_BORE, &MAIN_OIL_CLEARANCE];

/// One main bearing.
#[component]
pub fn Bearing(
    /// Which one, counted from the front from 1.
    number: u8,
) -> impl IntoView {
    let opened = opened();
    let bearing = Memo::new(move |_| {
        opened.build.with(|build| build.mains.iter().find(|one| one.main.number() == number).cloned())
    });
    let exists = Memo::new(move |_| bearing.with(Option::is_some));
    let last = Memo::new(move |_| opened.build.with(|build| u8::try_from(build.mains.len()).unwrap_or(u8::MAX)));
    view! {
        <Show
            when=move || exists.get()
            fallback=move || view! { <h1>"No main "{number}</h1><p>"This engine has no such main bearing."</p> }
        >
            <h1>"Main "{number}<span class="of">" of "{move || last.get()}</span></h1>
            <div class="halves">
                <div class="half">
                    <Measuring number bearing />
                </div>
                <div class="half answer" data-test="answer">
                    <Outcome bearing />
                </div>
            </div>
            <nav class="row" aria-label="other main bearings">
                {(number > 1).then(|| view! {
                    <a class="button quiet" href=opened.to(Page::Main(number - 1))>"‹ Main "{number - 1}</a>
                })}
                <Show when=move || number < last.get()>
                    <a class="button" data-test="next-main" href=opened.to(Page::Main(number.saturating_add(1)))>
                        "Main "{number.saturating_add(1)}" ›"
                    </a>
                </Show>
                <a class="button quiet" href=opened.to(Page::Mains)>"All mains"</a>
            </nav>
        </Show>
    }
}

fn task_of(measure: &Measure) -> Task {
    if measure.id == MAIN_JOURNAL_DIAMETER.id {
        Task::OutsideSize
    } else if measure.id == MAIN_BEARING_BORE.id {
        Task::InsideSize
    } else {
        Task::RunningClearance
    }
}

#[component]
fn Measuring(number: u8, bearing: Memo<Option<MainBearing>>) -> impl IntoView {
    let opened = opened();
    let settings = settings();
    let pad = pad();
    let key = format!("build/{}/main/{number}", opened.id);
    let in_hand = Draft::or(format!("{key}/in-hand"), MAIN_JOURNAL_DIAMETER.id);
    let chosen = Draft::of(format!("{key}/place"));
    let reading = Draft::of(format!("{key}/reading"));
    let measure = Memo::new(move |_| {
        let id = in_hand.get();
        ROUND.into_iter().find(|one| one.id == id).unwrap_or(&MAIN_JOURNAL_DIAMETER)
    });
    let journal_tool = InUse::of(opened, Task::OutsideSize);
    let bore_tool = InUse::of(opened, Task::InsideSize);
    let strip = InUse::of(opened, Task::RunningClearance);
    let tool = move || match task_of(measure.get()) {
        Task::OutsideSize => journal_tool.tool(),
        Task::InsideSize => bore_tool.tool(),
        _ => strip.tool(),
    };
    // The place picked by hand, else the next one without a reading.
    let place = Memo::new(move |_| {
        let measure = measure.get();
        let all = places(measure, number);
        let picked = chosen.get();
        let by_hand = all.iter().find(|place| place_id(place) == picked && !picked.is_empty()).copied();
        by_hand
            .or_else(|| bearing.with(|bearing| bearing.as_ref().and_then(|one| next_place(one, measure))))
            .or_else(|| all.first().copied())
    });
    let needle = move || measure.get().id == MAIN_BEARING_BORE.id && bore_tool.tool().is_some_and(|tool| shows_needle(&tool));
    let unit = Signal::derive(move || -> &'static Unit {
        let units = if needle() { MAIN_OIL_CLEARANCE.units } else { measure.get().units };
        settings.units().of(Kind::Length, units)
    });
    let keep = Callback::new(move |()| {
        let text = reading.now();
        let (measure, unit) = (measure.get_untracked(), unit.get_untracked());
        let Some(Ok(_)) = read_text(&text, measure.kind, unit) else { return };
        let Some(place) = place.get_untracked() else { return };
        let Some(tool) = untrack(tool) else {
            toast().say("First say below what it is measured with: without a tool nobody knows how far a number may be off. The number stays in its field.");
            return;
        };
        let written = opened.write_down(Body::Reading(Reading {
            measure: measure.id.to_owned(),
            place: Spot::Known(place),
            typed: text,
            unit: unit.symbol.to_owned(),
            tool: Some(tool.tool),
            setting: None,
            temperature: None,
            condition: None,
        }));
        if written.is_some() {
            reading.clear();
            chosen.clear();
            go_on(bearing, measure, in_hand);
        }
    });
    Effect::new(move |_| {
        let unit = settings.units().of(Kind::Length, MAIN_OIL_CLEARANCE.units);
        let live = bearing.with(|bearing| {
            let judged = judged(bearing.as_ref()?, unit)?;
            Some((mark(bearing.as_ref()?), judged.live_words()))
        });
        pad.show_live(live);
    });
    on_cleanup(move || pad.show_live(None));
    let where_words = move || {
        let what = if needle() { "needle from its zero, clockwise plus" } else { measure.get().label };
        format!("{what}: {}", place.get().map_or_else(String::new, |place| place_words(&place)))
    };
    let how = move || measure.get().how.iter().map(|line| (*line).to_owned()).collect::<Vec<_>>();
    view! {
        <Pick
            name="in-hand"
            label="In hand"
            words=vec![
                Word::of(MAIN_JOURNAL_DIAMETER.id, "Journal"),
                Word::of(MAIN_BEARING_BORE.id, "Bore"),
                Word::of(MAIN_OIL_CLEARANCE.id, "Plastic strip"),
            ]
            picked=Signal::derive(move || measure.get().id.to_owned())
            on_pick=Callback::new(move |id| {
                chosen.clear();
                in_hand.set(id);
            })
        />
        <p class="where" id="where" role="status" data-test="where">{where_words}</p>
        <QuantityField
            name="reading"
            label="Reading"
            draft=reading
            kind=Kind::Length
            unit
            on_next=keep
            next_word="Keep"
        />
        <p class="row">
            <button type="button" class="button" data-test="keep" on:click=move |_| keep.run(())>"Keep"</button>
        </p>
        <div class="places">
            {move || {
                let measure = measure.get();
                let here = move |one: Place| Signal::derive(move || place.get() == Some(one));
                places(measure, number)
                    .into_iter()
                    .map(|one| {
                        let last = bearing.with(|bearing| last_words(bearing.as_ref()?, measure, one));
                        view! {
                            <PlaceButton
                                place=one
                                last
                                here=here(one)
                                on_pick=Callback::new(move |place: Place| chosen.set(place_id(&place)))
                            />
                        }
                    })
                    .collect_view()
            }}
        </div>
        {move || match task_of(measure.get()) {
            Task::OutsideSize => view! {
                <ToolPick in_use=journal_tool name="tool-outside" label="Journals are measured with" />
            }.into_any(),
            Task::InsideSize => view! {
                <ToolPick in_use=bore_tool name="tool-inside" label="Bores are measured with" />
                <SetOnPick bore=bore_tool journal=journal_tool number />
            }.into_any(),
            _ => view! {
                <ToolPick in_use=strip name="tool-clearance" label="The clearance is read off" />
            }.into_any(),
        }}
        <Fold title="How to measure it">
            {move || view! { <Sentences lines=how() /> }}
        </Fold>
    }
}

/// When every place of a measure has a reading, the next measure is in hand.
fn go_on(bearing: Memo<Option<MainBearing>>, measure: &'static Measure, in_hand: Draft) {
    let done = bearing.with_untracked(|bearing| {
        bearing.as_ref().is_some_and(|one| next_place(one, measure).is_none())
    });
    if done && measure.id == MAIN_JOURNAL_DIAMETER.id {
        in_hand.set(MAIN_BEARING_BORE.id.to_owned());
    }
}

#[component]
fn Outcome(bearing: Memo<Option<MainBearing>>) -> impl IntoView {
    let opened = opened();
    let settings = settings();
    move || {
        let unit = settings.units().of(Kind::Length, MAIN_OIL_CLEARANCE.units);
        let bearing = bearing.get()?;
        let shown = judged(&bearing, unit);
        let missing: Vec<String> = match &bearing.standing {
            Standing::Open(missing) => missing.iter().map(ToString::to_string).collect(),
            Standing::Judged(_) => Vec::new(),
        };
        let advice: Vec<String> = match &bearing.standing {
            Standing::Judged(advice) => advice.sentences(unit),
            Standing::Open(_) => Vec::new(),
        };
        let practice = bearing.common_practice.map(|window| {
            format!("Common practice, not a limit: {}. The maker's sheet decides.", window_words(&window, unit))
        });
        let limits = bearing.limits.first().map(|limits| {
            let window = limits.window.as_ref().ok().map(|window| window_words(window, unit));
            format!("Limits: {}, {}", window.unwrap_or_default(), super::super::limits::origin_words(limits))
        });
        let cautions = MAIN_OIL_CLEARANCE.cautions.iter().map(|line| (*line).to_owned()).collect::<Vec<_>>();
        Some(view! {
            {match (shown.clone(), missing.is_empty()) {
                (Some(judged), true) => view! { <VerdictOf judged /> }.into_any(),
                (Some(judged), false) => view! {
                    <p class="reading" data-test="reading">{judged.value_words()}</p>
                    <VerdictPlate mark=mark(&bearing) details=missing.clone() />
                }.into_any(),
                (None, _) => view! { <VerdictPlate mark=Mark::None details=missing.clone() /> }.into_any(),
            }}
            {limits.map(|limits| view! { <p data-test="limits-in-force">{limits}</p> })}
            <p><a href=opened.to(Page::Limits)>"Limits of the main bearings"</a></p>
            {practice.map(|practice| view! { <p class="tripwire" data-test="tripwire">{practice}</p> })}
            <Findings findings=bearing.findings.clone() />
            {(!advice.is_empty()).then(|| view! { <Sentences lines=advice class="sentences advice" /> })}
            {shown.clone().filter(|_| missing.is_empty()).map(|judged| view! {
                <Dominates value=judged.least.clone() sources=judged.sources.clone() />
                <WhatToDo judged />
            })}
            <WorkedOut bearing=bearing.clone() unit />
            <Section title="Beware"><Sentences lines=cautions /></Section>
        })
    }
}

/// How the clearance was worked out, with its numbers.
#[component]
fn WorkedOut(bearing: MainBearing, unit: &'static Unit) -> Option<impl IntoView> {
    let clearance = bearing.clearance()?.clone();
    let row = |name: &'static str, value: Option<assembly_core::measure::Estimate>| {
        value.map(|value| view! {
            <tr><th scope="row">{name}</th><td><crate::kit::number::Value value unit /></td></tr>
        })
    };
    let of = |one: &assembly_core::measure::Measured<uom::si::f64::Length>| one.estimate().clone();
    Some(view! {
        <Fold title="How it was worked out">
            <p class="hint">
                "Least: the smallest bore square to the joint less the largest journal. Greatest: the largest such bore less the smallest journal. A shell is thinner toward its joint on purpose, so readings there are never averaged in."
            </p>
            <table class="numbers"><tbody>
                {row("Least clearance", Some(of(&clearance.least)))}
                {row("Greatest clearance", Some(of(&clearance.greatest)))}
                {row("Mean clearance", Some(of(&clearance.mean)))}
                {row("Taper of the journal", clearance.journal_taper.as_ref().map(of))}
                {row("Out of round, journal", clearance.journal_out_of_round.as_ref().map(of))}
                {row("Taper of the bore", clearance.bore_taper.as_ref().map(of))}
                {row("Wider toward the joint by", clearance.eccentricity.as_ref().map(of))}
            </tbody></table>
        </Fold>
    })
}
