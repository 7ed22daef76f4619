//! What a calculation is given, by name.

use std::collections::BTreeMap;

use thiserror::Error;

use super::calculation::{Choice, Input, Takes};
use crate::measure::{Estimate, Measured};
use crate::quantity::{Kind, Si};

/// The named values that go into a calculation, in SI units.
#[derive(Clone, Debug, Default)]
pub struct Given {
    values: BTreeMap<&'static str, Vec<Estimate>>,
}

/// Why a calculation gave no answer.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum CalculationError {
    /// A value is missing.
    #[error("{label} is missing: {how}")]
    Missing {
        /// The input's id.
        field: &'static str,
        /// Its name at the bench.
        label: &'static str,
        /// How it is measured.
        how: &'static str,
    },
    /// More than one value where one is meant.
    #[error("{label} takes one value, and {count} were given")]
    TooMany {
        /// The input's id.
        field: &'static str,
        /// Its name at the bench.
        label: &'static str,
        /// How many were given.
        count: usize,
    },
    /// A value is not a finite number.
    #[error("{label} is not a finite number")]
    NotFinite {
        /// The input's id.
        field: &'static str,
        /// Its name at the bench.
        label: &'static str,
    },
    /// A value that no engine has.
    #[error("{label} reads {}, and should lie between {} and {}", kind_text(*read, *kind), kind_text(sane.0, *kind), kind_text(sane.1, *kind))]
    OutOfRange {
        /// The input's id.
        field: &'static str,
        /// Its name at the bench.
        label: &'static str,
        /// What it is a number of.
        kind: Kind,
        /// What was read, SI units.
        read: f64,
        /// What would be right, SI units.
        sane: (f64, f64),
    },
    /// A number that stands for no word of the list.
    #[error("{label} is none of these: {words}")]
    NoSuchChoice {
        /// The input's id.
        field: &'static str,
        /// Its name at the bench.
        label: &'static str,
        /// What could be chosen.
        words: String,
    },
    /// The values contradict each other or the physics.
    #[error("{label}: {reason}")]
    NotPossible {
        /// The input's id.
        field: &'static str,
        /// Its name at the bench.
        label: &'static str,
        /// What is wrong, and what would be right.
        reason: String,
    },
    /// A stack was asked for a part that it does not have.
    #[error("{stack} has no such part: its parts are {terms}")]
    NoSuchTerm {
        /// The stack's name.
        stack: &'static str,
        /// The names of its parts.
        terms: String,
    },
    /// The calculation itself gave a number that is none: a defect of this crate.
    #[error("{output} came out as no number: these inputs lie outside what the calculation can do")]
    NoNumber {
        /// The output's id.
        output: &'static str,
    },
}

impl CalculationError {
    /// What was given for this input cannot be, for this reason. The reason says
    /// what would be right.
    #[must_use]
    pub fn not_possible(input: &'static Input, reason: impl Into<String>) -> Self {
        Self::NotPossible {
            field: input.id,
            label: input.label,
            reason: reason.into(),
        }
    }

    /// The input that has to be looked at, when it is one.
    #[must_use]
    pub const fn field(&self) -> Option<&'static str> {
        match self {
            Self::Missing { field, .. }
            | Self::TooMany { field, .. }
            | Self::NotFinite { field, .. }
            | Self::OutOfRange { field, .. }
            | Self::NoSuchChoice { field, .. }
            | Self::NotPossible { field, .. } => Some(field),
            Self::NoNumber { .. } | Self::NoSuchTerm { .. } => None,
        }
    }
}

/// A number in SI units with its symbol; lengths in both of the trade's units.
pub(crate) fn kind_text(si: f64, kind: Kind) -> String {
    if kind == Kind::Length {
        return format!(
            "{} mm ({} in)",
            trimmed(si * 1e3, 4),
            trimmed(si / 0.0254, 5)
        );
    }
    let symbol = kind.si_symbol();
    format!(
        "{}{}{symbol}",
        trimmed(si, 6),
        if symbol.is_empty() { "" } else { " " }
    )
}

fn trimmed(number: f64, decimals: usize) -> String {
    let text = format!("{number:.decimals$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

impl Given {
    /// Nothing given yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a value to an input.
    pub fn push(&mut self, id: &'static str, value: Estimate) {
        self.values.entry(id).or_default().push(value);
    }

    /// The same with one more value.
    #[must_use]
    pub fn with(mut self, id: &'static str, value: Estimate) -> Self {
        self.push(id, value);
        self
    }

    /// All values of an input; none when it was not given.
    #[must_use]
    pub fn several(&self, id: &str) -> &[Estimate] {
        self.values.get(id).map_or(&[], Vec::as_slice)
    }

    /// All values of an input, typed.
    #[must_use]
    pub fn measured<Q: Si>(&self, id: &str) -> Vec<Measured<Q>> {
        self.several(id)
            .iter()
            .cloned()
            .map(Measured::from_estimate)
            .collect()
    }

    /// The one value of an input, if it was given.
    #[must_use]
    pub fn optional(&self, id: &str) -> Option<&Estimate> {
        self.several(id).first()
    }

    /// The one value of an input.
    ///
    /// # Errors
    /// [`CalculationError::Missing`] when it was not given.
    pub fn one(&self, input: &'static Input) -> Result<&Estimate, CalculationError> {
        self.optional(input.id).ok_or(CalculationError::Missing {
            field: input.id,
            label: input.label,
            how: input.how,
        })
    }

    /// The word that was chosen.
    ///
    /// # Errors
    /// [`CalculationError::Missing`] when none was, [`CalculationError::NoSuchChoice`]
    /// when the number stands for no word of the list.
    pub fn choice(&self, input: &'static Input) -> Result<&'static Choice, CalculationError> {
        let read = self.one(input)?.value();
        choice_at(input, read).ok_or_else(|| CalculationError::NoSuchChoice {
            field: input.id,
            label: input.label,
            words: words_of(input),
        })
    }

    /// Checks number, finiteness and range of every input of a description.
    ///
    /// # Errors
    /// The first thing that is wrong, in the order of the description.
    pub fn check(&self, inputs: &'static [Input]) -> Result<(), CalculationError> {
        for input in inputs {
            let values = self.several(input.id);
            let needed = matches!(input.takes, Takes::One | Takes::OneOrMore | Takes::OneOf(_));
            if values.is_empty() && needed {
                self.one(input)?;
            }
            let single = matches!(input.takes, Takes::One | Takes::Optional | Takes::OneOf(_));
            if values.len() > 1 && single {
                return Err(CalculationError::TooMany {
                    field: input.id,
                    label: input.label,
                    count: values.len(),
                });
            }
            for value in values {
                check_value(input, value)?;
            }
        }
        Ok(())
    }
}

/// The word that a number stands for.
fn choice_at(input: &'static Input, read: f64) -> Option<&'static Choice> {
    let Takes::OneOf(choices) = input.takes else {
        return None;
    };
    choices
        .iter()
        .zip(0_u32..)
        .find_map(|(choice, at)| (read == f64::from(at)).then_some(choice))
}

fn words_of(input: &'static Input) -> String {
    let Takes::OneOf(choices) = input.takes else {
        return String::new();
    };
    let words: Vec<&str> = choices.iter().map(|choice| choice.label).collect();
    words.join(", ")
}

fn check_value(input: &'static Input, value: &Estimate) -> Result<(), CalculationError> {
    let read = value.value();
    if !read.is_finite() || !value.deviation().is_finite() {
        return Err(CalculationError::NotFinite {
            field: input.id,
            label: input.label,
        });
    }
    if matches!(input.takes, Takes::OneOf(_)) {
        return match choice_at(input, read) {
            Some(_) => Ok(()),
            None => Err(CalculationError::NoSuchChoice {
                field: input.id,
                label: input.label,
                words: words_of(input),
            }),
        };
    }
    if read < input.sane.0 || read > input.sane.1 {
        return Err(CalculationError::OutOfRange {
            field: input.id,
            label: input.label,
            kind: input.kind,
            read,
            sane: input.sane,
        });
    }
    Ok(())
}
