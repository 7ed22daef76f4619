//! The limits of the oil clearance: typed, with where they came from.

use assembly_core::measure::{Window, WindowError};
use assembly_core::quantity::{Kind, Unit};
use build_journal::Body;
use build_journal::fact::{LimitsOrigin, LimitsSet};
use build_journal::fold::Limits;
use build_plan::measure::MAIN_OIL_CLEARANCE;
use leptos::prelude::*;

use super::tools::Foreseen;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::{QuantityField, WordField, read_text};
use crate::kit::judged::window_words;
use crate::kit::pick::{Pick, Word};
use crate::kit::section::Section;
use crate::kit::toast::toast;

const NOTE_AT_MOST: usize = 200;

/// The page of the limits.
#[component]
pub fn LimitsPage() -> impl IntoView {
    let opened: Opened = expect_context();
    let in_force = Memo::new(move |_| {
        opened.build.with(|build| {
            let own = |one: &&Limits| one.set.measure == MAIN_OIL_CLEARANCE.id;
            build.limits.iter().filter(own).cloned().collect::<Vec<_>>()
        })
    });
    view! {
        <h1>"Limits of the main oil clearance"</h1>
        <p class="lead">
            "The limits that count are those you type from your own sheet. Without any, nothing is called good."
        </p>
        <Foreseen />
        <Section title="In force">
            {move || {
                let limits = in_force.get();
                if limits.is_empty() {
                    view! { <p data-test="limits-none">"None yet."</p> }.into_any()
                } else {
                    let conflict = limits.len() > 1;
                    let rows: Vec<_> =
                        limits.into_iter().map(|limits| view! { <InForce limits /> }).collect();
                    view! {
                        {conflict.then(|| view! {
                            <p class="notice notice-caution" data-test="limits-conflict">
                                "These were set without knowing of each other. Strike one out, or set new ones: those take the place of all."
                            </p>
                        })}
                        <ul class="entries">{rows}</ul>
                    }
                    .into_any()
                }
            }}
        </Section>
        <SetLimits in_force />
    }
}

fn origin_words(origin: LimitsOrigin) -> &'static str {
    match origin {
        LimitsOrigin::Sheet => "the maker's sheet",
        LimitsOrigin::PartSheet => "the sheet of the part",
        LimitsOrigin::OwnChoice => "own choice",
    }
}

#[component]
fn InForce(limits: Limits) -> impl IntoView {
    let opened: Opened = expect_context();
    let settings = settings();
    let fact = limits.fact;
    let set = limits.set.clone();
    let typed = match (&limits.low, &limits.high) {
        (Some(low), Some(high)) => format!("{low} to {high}"),
        (Some(low), None) => format!("at least {low}"),
        (None, Some(high)) => format!("at most {high}"),
        (None, None) => "nothing that can be read".to_owned(),
    };
    let problem = limits.window.as_ref().err().map(ToString::to_string);
    let window = limits.window.as_ref().ok().copied();
    let own_unit = limits
        .low
        .as_ref()
        .or(limits.high.as_ref())
        .map(|typed| typed.unit());
    view! {
        <li class="card" data-test="limits">
            <p class="limits-typed">{typed}</p>
            {move || window.and_then(|window| {
                let unit = settings.units().clearance();
                (own_unit != Some(unit)).then(|| view! { <p>"that is "{window_words(&window, unit)}</p> })
            })}
            <p>"From "{origin_words(set.origin)}": "{set.origin_note.clone()}</p>
            {problem.map(|problem| view! { <p class="wrong">{problem}</p> })}
            <div class="row">
                <button
                    type="button"
                    class="button quiet"
                    data-test="strike-limits"
                    on:click=move |_| {
                        let _ = opened.strike(fact, None);
                    }
                >
                    "Strike out"
                </button>
            </div>
        </li>
    }
}

#[component]
fn SetLimits(in_force: Memo<Vec<Limits>>) -> impl IntoView {
    let opened: Opened = expect_context();
    let settings = settings();
    let toast = toast();
    let draft = |name: &str, start: &str| Draft::or(opened.draft(&format!("limits/{name}")), start);
    let (low, high) = (draft("low", ""), draft("high", ""));
    let (origin, note) = (draft("origin", "sheet"), draft("note", ""));
    let tried = RwSignal::new(false);
    let unit: Signal<&'static Unit> = Signal::derive(move || settings.units().clearance());
    let window = Memo::new(move |_| {
        let side = |draft: Draft| match read_text(&draft.get(), Kind::Length, unit.get()) {
            None => Ok(None),
            Some(Ok(typed)) => Ok(Some(typed.si())),
            Some(Err(_)) => Err(None),
        };
        let (low, high) = (side(low)?, side(high)?);
        Window::new(low, high).map_err(Some)
    });
    let wrong = Signal::derive(move || match window.get() {
        Err(Some(WindowError::NoLimit)) if !tried.get() => None,
        Err(Some(error)) => Some(error.to_string()),
        _ => None,
    });
    let note_wrong = Signal::derive(move || {
        (tried.get() && note.get().trim().is_empty())
            .then(|| "Say which sheet and page, or why this choice.".to_owned())
    });
    let save = move |_| {
        tried.set(true);
        let said = note.now().trim().to_owned();
        if window.get_untracked().is_err() || said.is_empty() {
            return;
        }
        let typed =
            |draft: Draft| Some(draft.now().trim().to_owned()).filter(|text| !text.is_empty());
        let wrote = opened.write_down(Body::LimitsSet(LimitsSet {
            measure: MAIN_OIL_CLEARANCE.id.to_owned(),
            place: None,
            low: typed(low),
            high: typed(high),
            unit: unit.get_untracked().symbol.to_owned(),
            origin: match origin.now().as_str() {
                "part-sheet" => LimitsOrigin::PartSheet,
                "own-choice" => LimitsOrigin::OwnChoice,
                _ => LimitsOrigin::Sheet,
            },
            origin_note: said,
            replaces: in_force
                .get_untracked()
                .iter()
                .map(|limits| limits.fact)
                .collect(),
        }));
        if wrote.is_some() {
            for draft in [low, high, note] {
                draft.clear();
            }
            tried.set(false);
            toast.say("The limits are set.");
        }
    };
    let practice = Memo::new(move |_| {
        opened.build.with(|build| {
            build
                .mains
                .iter()
                .find_map(|bearing| bearing.common_practice)
        })
    });
    let words = MAIN_OIL_CLEARANCE.tripwire.map(|tripwire| tripwire.words);
    view! {
        <Section title="Set limits">
            <div class="pair">
                <QuantityField name="limits-low" label="At least" draft=low kind=Kind::Length unit />
                <QuantityField name="limits-high" label="At most" draft=high kind=Kind::Length unit wrong />
            </div>
            {words.map(|words| view! {
                <p class="tripwire" data-test="tripwire">
                    <strong>"Common practice, not a limit"</strong>": "{words}
                    {move || practice.get().map(|window| {
                        format!(", here {}", window_words(&window, unit.get()))
                    })}
                    ". It is there to catch slips; the maker's sheet decides."
                </p>
            })}
            <Pick
                name="limits-origin"
                label="Where do they come from?"
                words=vec![
                    Word::of("sheet", "the maker's sheet"),
                    Word::of("part-sheet", "the sheet of the part"),
                    Word::of("own-choice", "my own choice"),
                ]
                picked=Signal::derive(move || origin.get())
                on_pick=Callback::new(move |id| origin.set(id))
            />
            <WordField
                name="limits-note"
                label="Which sheet and page, or why"
                draft=note
                at_most=NOTE_AT_MOST
                wrong=note_wrong
            />
            <div class="row">
                <button type="button" class="button" data-test="limits-save" on:click=save>
                    "Set these limits"
                </button>
            </div>
        </Section>
    }
}
