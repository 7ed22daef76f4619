//! The answer of a quick check: the verdict, the numbers, and how it was
//! worked out.

use assembly_core::describe::{Calculation, Output, Provenance};
use assembly_core::measure::could_say_good;
use assembly_core::quantity::Unit;
use build_plan::Measure;
use leptos::prelude::*;

use super::check::{Check, Outcome, Worked};
use super::limits::Limits;
use crate::device::settings::{UnitClass, settings};
use crate::kit::judged::{Dominates, Findings, Judged, VerdictOf, WhatToDo, advice_on};
use crate::kit::keypad::pad;
use crate::kit::number::Value;
use crate::kit::section::{Fold, Section, Sentences};
use crate::kit::workings;

/// The answer, followed.
#[component]
pub fn AnswerOf(
    /// The check.
    check: Check,
    /// What it has come to.
    outcome: Memo<Outcome>,
    /// Its limits.
    limits: Option<Limits>,
    /// The output that is held against them.
    judged: Option<&'static Output>,
    /// What the trade knows of it.
    measure: Option<&'static Measure>,
) -> impl IntoView {
    let settings = settings();
    let pad = pad();
    let judge = move |worked: &Worked| -> Option<Judged> {
        let output = judged?;
        let unit = settings.units().of(output.kind, output.units);
        let least = worked.answer.get(output.id)?.clone();
        let greatest = if output.id == "least" {
            worked.answer.get("greatest").cloned()
        } else {
            None
        };
        let greatest = greatest.unwrap_or_else(|| least.clone());
        let window = limits.and_then(|limits| limits.window(unit).ok().flatten());
        // What is known to be a running clearance is advised on as one.
        let advice = window
            .filter(|_| measure.is_some())
            .map(|window| advice_on(&least, &greatest, &window, &worked.sources));
        Some(Judged {
            least,
            greatest,
            sources: worked.sources.clone(),
            window,
            advice,
            measure,
            findings: worked.answer.findings().to_vec(),
            unit,
        })
    };
    Effect::new(move |_| {
        let live = match outcome.get() {
            Outcome::Worked(worked) => judge(&worked).map(|one| (one.mark(), one.live_words())),
            _ => None,
        };
        pad.show_live(live);
    });
    let too_coarse = move || {
        let output = judged?;
        let unit = settings.units().of(output.kind, output.units);
        let window = limits?.window(unit).ok().flatten()?;
        let deviation = check.tools.foreseen()?;
        let dangerous = measure?.dangerous;
        (!could_say_good(deviation, &window, dangerous)).then(|| view! {
            <p class="notice notice-caution" data-test="too-coarse">
                "With these tools this could never come out as good, however the part turns out: the window is too narrow for them. Pick surer tools under Tools, or zero the bore gauge on the journal's own micrometer."
            </p>
        })
    };
    let cautions: Vec<String> = check
        .calculation
        .cautions
        .iter()
        .map(|line| (*line).to_owned())
        .collect();
    view! {
        {too_coarse}
        {move || match outcome.get() {
            Outcome::Waiting(missing) => view! {
                <p class="waiting" data-test="waiting">"Still to type: "{missing.join("; ")}"."</p>
            }
            .into_any(),
            Outcome::Unread => view! {
                <p class="waiting">"One field can't be read yet; it says why under itself."</p>
            }
            .into_any(),
            Outcome::Refused(error) => view! {
                <p class="notice notice-danger" role="alert" data-test="refused">{error.to_string()}</p>
            }
            .into_any(),
            Outcome::Worked(worked) => {
                let judged = judge(&worked);
                view! { <Answered calculation=check.calculation worked=*worked judged units=settings.units() /> }
                    .into_any()
            }
        }}
        <Section title="Beware">
            <Sentences lines=cautions />
        </Section>
    }
}

#[component]
fn Answered(
    calculation: &'static Calculation,
    worked: Worked,
    judged: Option<Judged>,
    units: UnitClass,
) -> impl IntoView {
    let rows: Vec<_> = calculation
        .outputs
        .iter()
        .filter_map(|output| {
            let value = worked.answer.get(output.id)?.clone();
            let unit = units.of(output.kind, output.units);
            Some(view! {
                <tr>
                    <th scope="row">{output.label}</th>
                    <td data-test=format!("output-{}", output.id)><Value value unit /></td>
                </tr>
            })
        })
        .collect();
    let unit_of = |id: &str| -> Option<&'static Unit> {
        calculation
            .output(id)
            .map(|output| units.of(output.kind, output.units))
    };
    let lines = workings::lines(calculation, &worked.answer, &worked.typed, unit_of);
    let provenance = match calculation.provenance {
        Provenance::Standard(text) => format!("From the standard: {text}"),
        Provenance::Handbook(text) => format!("From a handbook: {text}"),
        Provenance::Derivation(text) => format!("Follows from: {text}"),
        Provenance::CommonPractice => "Common practice of the trade, with no source.".to_owned(),
    };
    let findings = worked.answer.findings().to_vec();
    view! {
        {judged.clone().map(|judged| view! { <VerdictOf judged /> })}
        <Findings findings />
        {judged.clone().map(|judged| view! {
            <Dominates value=judged.least.clone() sources=judged.sources.clone() />
            <WhatToDo judged />
        })}
        <table class="numbers"><tbody>{rows}</tbody></table>
        <Fold title="How it was worked out">
            <Sentences lines class="workings" />
            <p class="hint">{provenance}"."</p>
        </Fold>
    }
}
