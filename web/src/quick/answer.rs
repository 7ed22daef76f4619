//! The answer of a quick check: the verdict, the numbers, and how it was
//! worked out.

use assembly_core::describe::{Calculation, Output, Provenance};
use assembly_core::measure::could_say_good;
use build_plan::Measure;
use leptos::prelude::*;

use super::check::{Check, Outcome, Worked};
use super::finds::is_running_clearance;
use super::limits::Limits;
use crate::device::settings::{UnitClass, settings};
use crate::kit::dialog::dialog;
use crate::kit::judged::{Judged, advice_on, capital, dominates, findings, verdict, window_words};
use crate::kit::keypad::pad;
use crate::kit::number::{self, value};
use crate::kit::piece::{Piece, button, el, note, row};
use crate::kit::section::{fold_later, section, sentences};
use crate::kit::workings;
use crate::later::{keep_later, what_to_do_later};

/// What an answer is held against.
#[derive(Clone, Copy)]
struct Held {
    limits: Option<Limits>,
    output: Option<&'static Output>,
    measure: Option<&'static Measure>,
    is_running_clearance: bool,
}

impl Held {
    fn judge(self, worked: &Worked, units: UnitClass) -> Option<Judged> {
        let output = self.output?;
        let unit = units.of(output.kind, output.units);
        let least = worked.answer.get(output.id)?.clone();
        let greatest = if output.id == "least" {
            worked.answer.get("greatest").cloned()
        } else {
            None
        };
        let greatest = greatest.unwrap_or_else(|| least.clone());
        let window = self
            .limits
            .and_then(|limits| limits.window(unit).ok().flatten());
        // What is known to be a running clearance is advised on as one.
        let advice = window
            .filter(|_| self.is_running_clearance)
            .map(|window| advice_on(&least, &greatest, &window, &worked.sources));
        Some(Judged {
            least,
            greatest,
            sources: worked.sources.clone(),
            window,
            advice,
            measure: self.measure,
            findings: worked.answer.findings().to_vec(),
            sets: Vec::new(),
            unit,
        })
    }

    /// Whether these tools could never say good against these limits.
    fn too_coarse(self, check: Check, units: UnitClass) -> bool {
        let foreseen = || {
            let output = self.output?;
            let unit = units.of(output.kind, output.units);
            let window = self.limits?.window(unit).ok().flatten()?;
            let dangerous = self
                .measure
                .filter(|_| self.is_running_clearance)?
                .dangerous;
            Some(could_say_good(check.tools.foreseen()?, &window, dangerous))
        };
        foreseen() == Some(false)
    }
}

const TOO_COARSE: &str = "With these tools this could never come out as good, however the part turns out: the window is too narrow for them. Pick surer tools under Tools, or zero the bore gauge on the journal's own micrometer.";

/// The answer, followed.
#[must_use]
pub fn answer(
    check: Check,
    outcome: Memo<Outcome>,
    limits: Option<Limits>,
    output: Option<&'static Output>,
    measure: Option<&'static Measure>,
) -> Piece {
    let settings = settings();
    let pad = pad();
    let held = Held {
        limits,
        output,
        measure,
        is_running_clearance: is_running_clearance(check.calculation),
    };
    Effect::new(move |_| {
        let live = match outcome.get() {
            Outcome::Worked(worked) => held
                .judge(&worked, settings.units())
                .map(|one| (one.mark(), one.live_words())),
            _ => None,
        };
        pad.show_live(live);
    });
    let too_coarse = Piece::live(move || {
        held.too_coarse(check, settings.units())
            .then(|| note("notice notice-caution", TOO_COARSE).test("too-coarse"))
            .into()
    });
    let answered = Piece::live(move || match outcome.get() {
        Outcome::Waiting(missing) => note(
            "waiting",
            &format!("Still to type: {}.", missing.join("; ")),
        )
        .test("waiting")
        .into(),
        Outcome::Unread => note(
            "waiting",
            "One field can't be read yet; it says why under itself.",
        )
        .into(),
        Outcome::Refused(error) => note("notice notice-danger", &error.to_string())
            .attr("role", "alert")
            .test("refused")
            .into(),
        Outcome::Worked(worked) => answered(check, &worked, held, settings.units()),
    });
    let open = RwSignal::new(false);
    let text = move || match outcome.get_untracked() {
        Outcome::Worked(worked) => in_words(check.calculation, &worked, held, settings.units()),
        _ => String::new(),
    };
    let keep = Piece::when(
        move || outcome.with(|outcome| matches!(outcome, Outcome::Worked(_))),
        move || {
            let keep = button("quiet", "Keep it in a build…", "keep", move || {
                open.set(true)
            });
            row([keep.into()]).into()
        },
    );
    let asked = dialog(open, "Keep it in a build", "keep-dialog", move || {
        keep_later(untrack(text), open)
    });
    let beware = section("Beware").with(sentences("", check.calculation.cautions));
    Piece::all([too_coarse, answered, keep, asked.into(), beware.into()])
}

/// The answer as one paragraph for the book: what came out, and from what.
fn in_words(
    calculation: &'static Calculation,
    worked: &Worked,
    held: Held,
    units: UnitClass,
) -> String {
    let mut words = format!("Quick check, {}.", calculation.title);
    for output in calculation.outputs {
        if let Some(found) = worked.answer.get(output.id) {
            let value = number::text(found, units.of(output.kind, output.units));
            words.push_str(&format!(" {}: {value}.", capital(output.label)));
        }
    }
    if let Some(judged) = held.judge(worked, units)
        && let Some(window) = judged.window
    {
        let against = window_words(&window, judged.unit);
        let verdict = judged.verdict_words();
        words.push_str(&format!(" Against {against}: {verdict}."));
    }
    words.push_str(" Typed:");
    for (at, (id, typed)) in worked.typed.iter().enumerate() {
        let label = calculation.input(id).map_or(*id, |input| input.label);
        let between = if at == 0 { "" } else { ";" };
        words.push_str(&format!("{between} {label} {typed}"));
    }
    words.push('.');
    words
}

fn answered(check: Check, worked: &Worked, held: Held, units: UnitClass) -> Piece {
    let calculation = check.calculation;
    let rows = calculation.outputs.iter().filter_map(|output| {
        let found = worked.answer.get(output.id)?;
        let number = value(found, units.of(output.kind, output.units));
        let row = el("tr")
            .with(el("th").attr("scope", "row").text(output.label))
            .with(el("td").test(&format!("output-{}", output.id)).with(number));
        Some(row.into())
    });
    let numbers = el("table").class("numbers").with(el("tbody").all(rows));
    let shown = worked.clone();
    let how = move || how_it_was_worked_out(calculation, &shown, units);
    let judged = held.judge(worked, units);
    Piece::all([
        judged.as_ref().map(verdict).into(),
        findings(worked.answer.findings()),
        judged
            .as_ref()
            .map(|one| dominates(&one.least, &one.sources))
            .into(),
        judged.map(what_to_do_later).into(),
        numbers.into(),
        fold_later("How it was worked out", how).into(),
    ])
}

fn how_it_was_worked_out(
    calculation: &'static Calculation,
    worked: &Worked,
    units: UnitClass,
) -> Piece {
    let lines = workings::lines(calculation, &worked.answer, &worked.typed, |id| {
        calculation
            .output(id)
            .map(|output| units.of(output.kind, output.units))
    });
    let provenance = match calculation.provenance {
        Provenance::Standard(text) => format!("From the standard: {text}."),
        Provenance::Handbook(text) => format!("From a handbook: {text}."),
        Provenance::Derivation(text) => format!("Follows from: {text}."),
        Provenance::CommonPractice => "Common practice of the trade, with no source.".to_owned(),
    };
    Piece::all([
        sentences("workings", &lines).into(),
        note("hint", &provenance).into(),
    ])
}
