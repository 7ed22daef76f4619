//! The form of one quick check, made from its description.

use assembly_core::describe::{Calculation, CalculationError, Output, Takes};
use assembly_core::quantity::Unit;
use build_plan::measure::Found;
use build_plan::{MEASURES, Measure};
use leptos::prelude::*;

use super::answer::AnswerOf;
use super::check::{Check, Entry, Outcome};
use super::limits::{LimitFields, Limits};
use super::offered::offered;
use super::tools::ToolPicks;
use crate::device::settings::{Settings, settings};
use crate::kit::field::QuantityField;
use crate::kit::keypad::pad;
use crate::kit::pick::{Pick, Word};
use crate::kit::section::{Fold, Section};
use crate::route::Route;

/// One quick check.
#[component]
pub fn QuickCheck(
    /// The id of its calculation.
    id: String,
) -> impl IntoView {
    match offered(&id) {
        Some(calculation) => view! { <Form calculation /> }.into_any(),
        None => view! {
            <h1>"No such check"</h1>
            <p>"There is no quick check called "{id}"."</p>
            <p><a class="button" href=Route::QuickChecks.to_string()>"All quick checks"</a></p>
        }
        .into_any(),
    }
}

/// What the trade knows of a calculation's result.
fn measure_of(calculation: &Calculation) -> Option<&'static Measure> {
    MEASURES
        .iter()
        .copied()
        .find(|measure| match measure.found {
            // Only a running clearance is advised on as such here.
            Found::WorkedOut {
                calculation: own,
                or_read_by,
                ..
            } if own == "running-clearance" => {
                own == calculation.id || or_read_by.contains(&calculation.id)
            }
            _ => false,
        })
}

/// The other ways to the same result, this one included.
fn ways(measure: Option<&'static Measure>) -> Vec<&'static Calculation> {
    let Some(Found::WorkedOut {
        calculation: own,
        or_read_by,
        ..
    }) = measure.map(|measure| measure.found)
    else {
        return Vec::new();
    };
    std::iter::once(own)
        .chain(or_read_by.iter().copied())
        .filter_map(offered)
        .collect()
}

#[component]
fn Form(
    /// What is worked out.
    calculation: &'static Calculation,
) -> impl IntoView {
    let settings = settings();
    let check = Check::of(calculation, settings);
    let measure = measure_of(calculation);
    let judged = calculation
        .outputs
        .iter()
        .find(|one| one.id == "least")
        .or_else(|| calculation.outputs.first());
    let limits = judged
        .map(|output| Limits::of(measure.map_or(calculation.id, |measure| measure.id), output));
    let outcome = Memo::new_with_compare(move |_| check.outcome(), |_, _| true);
    let size = Signal::derive(move || journal_size(&outcome.get()));
    let refused = Signal::derive(move || match outcome.get() {
        Outcome::Refused(error) => Some(error),
        _ => None,
    });
    let pad = pad();
    on_cleanup(move || pad.show_live(None));
    let entries = check.entries.get_value();
    let (asked, besides): (Vec<Entry>, Vec<Entry>) = entries
        .into_iter()
        .partition(|entry| !matches!(entry.input.takes, Takes::Optional | Takes::Any));
    let rows = move |entries: Vec<Entry>| {
        entries
            .into_iter()
            .map(|entry| view! { <EntryFields entry settings refused /> })
            .collect_view()
    };
    let any_besides = !besides.is_empty();
    let besides_open = besides.iter().any(|entry| {
        entry
            .rows
            .with_value(|rows| rows.iter().any(|row| !row.now().is_empty()))
    });
    view! {
        <h1>{calculation.title}</h1>
        <p class="lead">{calculation.purpose}</p>
        <WayLinks ways=ways(measure) now=calculation.id />
        <div class="halves">
            <div class="half">
                <Section title="Measured">
                    {rows(asked)}
                </Section>
                {limits.zip(judged).map(|(limits, output)| view! {
                    <Section title="Limits, from the maker's sheet">
                        <LimitFields limits unit=unit_of(settings, output) measure size />
                    </Section>
                })}
                {any_besides.then(|| view! {
                    <Fold title="Measured besides, if you like" open=besides_open>
                        {rows(besides)}
                    </Fold>
                })}
                <Fold title="Tools">
                    <ToolPicks tools=check.tools />
                </Fold>
                <p>
                    <button type="button" class="button quiet" data-test="clear" on:click=move |_| check.clear()>
                        "Empty all fields"
                    </button>
                </p>
            </div>
            <div class="half answer" data-test="answer">
                <AnswerOf check outcome limits judged measure />
            </div>
        </div>
    }
}

fn unit_of(settings: Settings, output: &'static Output) -> Signal<&'static Unit> {
    Signal::derive(move || settings.units().of(output.kind, output.units))
}

/// The size that the trade's rule of thumb goes by: the largest journal typed.
fn journal_size(outcome: &Outcome) -> Option<f64> {
    let Outcome::Worked(worked) = outcome else {
        return None;
    };
    let journals = worked
        .typed
        .iter()
        .filter(|(id, _)| id.starts_with("journal"));
    journals.map(|(_, typed)| typed.si()).reduce(f64::max)
}

#[component]
fn WayLinks(ways: Vec<&'static Calculation>, now: &'static str) -> impl IntoView {
    let links: Vec<_> = ways
        .into_iter()
        .map(|one| {
            let to = Route::QuickCheck(one.id.to_owned()).to_string();
            let here = (one.id == now).then_some("page");
            let name = one.title.rsplit(", ").next().unwrap_or(one.title);
            let name = if name == one.title {
                "a tool for each"
            } else {
                name
            };
            view! { <a href=to aria-current=here data-test=format!("way-{}", one.id)>{name}</a> }
        })
        .collect();
    (links.len() > 1)
        .then(|| view! { <nav class="ways" aria-label="ways to measure it">{links}</nav> })
}

#[component]
fn EntryFields(
    entry: Entry,
    settings: Settings,
    refused: Signal<Option<CalculationError>>,
) -> impl IntoView {
    let input = entry.input;
    let rows = entry.rows.get_value();
    if let Takes::OneOf(choices) = input.takes {
        let draft = rows.into_iter().next()?;
        let words = choices
            .iter()
            .map(|one| Word::of(one.id, one.label))
            .collect();
        return Some(
            view! {
                <Pick
                    name=input.id
                    label=capital(input.label)
                    hint=input.how
                    words
                    picked=Signal::derive(move || draft.get())
                    on_pick=Callback::new(move |id| draft.set(id))
                />
            }
            .into_any(),
        );
    }
    let unit = Signal::derive(move || settings.units().of(input.kind, input.units));
    let wrong = Signal::derive(move || {
        let error = refused.get()?;
        let missing = matches!(error, CalculationError::Missing { .. });
        (error.field() == Some(input.id) && !missing).then(|| error.to_string())
    });
    let several = rows.len() > 1;
    let fields: Vec<_> = rows
        .into_iter()
        .enumerate()
        .map(|(at, draft)| {
            let label = if at == 0 {
                capital(input.label)
            } else {
                format!("{}, reading {}", capital(input.label), at + 1)
            };
            let name = format!("{}-{}", input.id, at + 1);
            view! {
                <Show when=move || at < entry.shown.get()>
                    <QuantityField
                        name=name.clone()
                        label=label.clone()
                        draft
                        kind=input.kind
                        unit
                        how=if at == 0 { input.how } else { "" }
                        wrong=if at == 0 { wrong } else { Signal::derive(|| None) }
                    />
                </Show>
            }
        })
        .collect();
    let more = format!("one more reading of the {}", input.label);
    Some(
        view! {
            <div class="readings">
                {fields}
                {several.then(|| view! {
                    <Show when=move || entry.may_grow()>
                        <button
                            type="button"
                            class="button more"
                            aria-label=more.clone()
                            data-test=format!("more-{}", input.id)
                            on:click=move |_| entry.shown.update(|shown| *shown += 1)
                        >
                            "+ reading"
                        </button>
                    </Show>
                })}
            </div>
        }
        .into_any(),
    )
}

/// The words with a capital at the start, as a label has it.
fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().collect::<String>() + letters.as_str())
        .unwrap_or_default()
}
