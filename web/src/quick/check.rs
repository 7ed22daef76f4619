//! What was typed into a quick check, and what comes of it.

use assembly_core::describe::{Answer, Calculation, CalculationError, Given, Input, Takes};
use assembly_core::measure::{Estimate, Sources};
use assembly_core::quantity::Typed;
use leptos::prelude::*;

use super::taken::{Taken, taken};
use super::tools::Tools;
use crate::device::drafts::Draft;
use crate::device::settings::Settings;
use crate::kit::field::read_text;

/// The most readings of one input.
const MOST_ROWS: usize = 8;

/// One input with its fields.
#[derive(Clone, Copy)]
pub struct Entry {
    /// What it is.
    pub input: &'static Input,
    /// The texts of its fields, those not shown included.
    pub rows: StoredValue<Vec<Draft>>,
    /// How many fields are shown.
    pub shown: RwSignal<usize>,
}

impl Entry {
    fn of(calculation: &'static Calculation, input: &'static Input) -> Self {
        let most = match input.takes {
            Takes::OneOrMore | Takes::Any => MOST_ROWS,
            Takes::One | Takes::Optional | Takes::OneOf(_) => 1,
        };
        let start = match input.takes {
            Takes::OneOf(choices) => choices.first().map_or("", |choice| choice.id),
            _ => "",
        };
        let rows: Vec<Draft> = (1..=most)
            .map(|row| {
                Draft::or(
                    format!("quick/{}/{}/{row}", calculation.id, input.id),
                    start,
                )
            })
            .collect();
        let used = rows
            .iter()
            .rposition(|row| !row.now().is_empty())
            .map_or(1, |last| last + 1);
        Self {
            input,
            rows: StoredValue::new(rows),
            shown: RwSignal::new(used),
        }
    }

    /// The texts of its fields, followed.
    fn texts(self) -> Vec<String> {
        self.rows
            .with_value(|rows| rows.iter().map(|row| row.get()).collect())
    }

    /// Whether anything is typed.
    fn is_empty(self) -> bool {
        self.rows
            .with_value(|rows| rows.iter().all(|row| row.get().trim().is_empty()))
    }

    /// Whether there may be one more reading.
    #[must_use]
    pub fn may_grow(self) -> bool {
        self.shown.get() < self.rows.with_value(Vec::len)
    }
}

/// What a check has come to.
#[derive(Clone)]
pub enum Outcome {
    /// These are still to be typed.
    Waiting(Vec<&'static str>),
    /// Some text cannot be read; its field says why.
    Unread,
    /// The calculation says no.
    Refused(CalculationError),
    /// Worked out.
    Worked(Box<Worked>),
}

/// An answer with what it came from.
#[derive(Clone)]
pub struct Worked {
    /// The answer.
    pub answer: Answer,
    /// The causes of error in it.
    pub sources: Sources,
    /// What was typed, by input.
    pub typed: Vec<(&'static str, Typed)>,
}

/// One quick check on the screen.
#[derive(Clone, Copy)]
pub struct Check {
    /// What is worked out.
    pub calculation: &'static Calculation,
    /// Its inputs.
    pub entries: StoredValue<Vec<Entry>>,
    /// The tools in use.
    pub tools: Tools,
    settings: Settings,
}

impl Check {
    /// The check as it was left.
    #[must_use]
    pub fn of(calculation: &'static Calculation, settings: Settings) -> Self {
        let entries = calculation
            .inputs
            .iter()
            .map(|input| Entry::of(calculation, input));
        Self {
            calculation,
            entries: StoredValue::new(entries.collect()),
            tools: Tools::of(calculation),
            settings,
        }
    }

    /// Empties every field.
    pub fn clear(self) {
        self.entries.with_value(|entries| {
            for entry in entries {
                if !matches!(entry.input.takes, Takes::OneOf(_)) {
                    entry
                        .rows
                        .with_value(|rows| rows.iter().for_each(|row| row.clear()));
                    entry.shown.set(1);
                }
            }
        });
    }

    /// What it has come to, followed.
    #[must_use]
    pub fn outcome(self) -> Outcome {
        let entries = self.entries.get_value();
        let missing: Vec<&'static str> = entries
            .iter()
            .filter(|entry| matches!(entry.input.takes, Takes::One | Takes::OneOrMore))
            .filter(|entry| entry.is_empty())
            .map(|entry| entry.input.label)
            .collect();
        if !missing.is_empty() {
            return Outcome::Waiting(missing);
        }
        let Some(typed) = self.read(&entries) else {
            return Outcome::Unread;
        };
        let mut sources = Sources::new();
        let given = self.given(&entries, &typed, &mut sources);
        match self.calculation.answer(&given) {
            Ok(answer) => Outcome::Worked(Box::new(Worked {
                answer,
                sources,
                typed,
            })),
            Err(error) => Outcome::Refused(error),
        }
    }

    /// Every text read; `None` when one cannot be.
    fn read(self, entries: &[Entry]) -> Option<Vec<(&'static str, Typed)>> {
        let units = self.settings.units();
        let mut typed = Vec::new();
        for entry in entries {
            if matches!(entry.input.takes, Takes::OneOf(_)) {
                continue;
            }
            let unit = units.of(entry.input.kind, entry.input.units);
            for text in entry.texts() {
                match read_text(&text, entry.input.kind, unit) {
                    None => {}
                    Some(Ok(one)) => typed.push((entry.input.id, one)),
                    Some(Err(_)) => return None,
                }
            }
        }
        Some(typed)
    }

    fn given(
        self,
        entries: &[Entry],
        typed: &[(&'static str, Typed)],
        sources: &mut Sources,
    ) -> Given {
        let mut given = Given::new();
        let mut read: Vec<Estimate> = Vec::new();
        let of = |entry: &Entry| taken(self.calculation.id, entry.input);
        // What a tool stood at may be one of its readings, so those come first.
        let (standing, others): (Vec<&Entry>, Vec<&Entry>) = entries
            .iter()
            .partition(|entry| matches!(of(entry), Taken::StandsAt(_)));
        for entry in others.into_iter().chain(standing) {
            let id = entry.input.id;
            if let Takes::OneOf(choices) = entry.input.takes {
                let picked = entry.texts().into_iter().next().unwrap_or_default();
                let at = choices
                    .iter()
                    .position(|choice| choice.id == picked)
                    .unwrap_or(0);
                given.push(id, Estimate::exact(at as f64));
                continue;
            }
            for (_, one) in typed.iter().filter(|(known, _)| *known == id) {
                let estimate = self.tools.estimate(sources, of(entry), one, &read);
                if id.starts_with("journal") {
                    read.push(estimate.clone());
                }
                given.push(id, estimate);
            }
        }
        given
    }
}
