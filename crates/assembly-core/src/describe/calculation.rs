//! The description of a calculation.

use super::answer::Answer;
use super::given::{CalculationError, Given};
use crate::quantity::Kind;

/// Where a formula or a value comes from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Provenance {
    /// A published standard, with the clause.
    Standard(&'static str),
    /// A handbook or paper, with the page, table or equation.
    Handbook(&'static str),
    /// Follows from geometry or arithmetic alone.
    Derivation(&'static str),
    /// A fact of the trade, with no source.
    CommonPractice,
}

/// The units a builder would usually type a quantity in.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct UsualUnits {
    /// Symbol of the inch-class unit.
    pub inch: &'static str,
    /// Symbol of the metric unit.
    pub metric: &'static str,
}

/// How many values an input takes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Takes {
    /// Exactly one.
    One,
    /// One, or none at all.
    Optional,
    /// One or more.
    OneOrMore,
    /// Any number, also none.
    Any,
    /// One of these words: the value is the word's place in the list, from 0.
    OneOf(&'static [Choice]),
}

/// One of the words that an input may be: a material, a kind of rod.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Choice {
    /// Stable name.
    pub id: &'static str,
    /// What it is called at the bench.
    pub label: &'static str,
}

/// One thing that has to be known.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Input {
    /// Stable name.
    pub id: &'static str,
    /// What it is called at the bench.
    pub label: &'static str,
    /// What kind of quantity.
    pub kind: Kind,
    /// What a lone number is taken to be.
    pub units: UsualUnits,
    /// The values that an engine can have, SI units; outside is taken as a slip.
    pub sane: (f64, f64),
    /// How many values.
    pub takes: Takes,
    /// Where and how to measure it, in one sentence.
    pub how: &'static str,
}

/// One thing that is found out.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Output {
    /// Stable name.
    pub id: &'static str,
    /// What it is called at the bench.
    pub label: &'static str,
    /// What kind of quantity.
    pub kind: Kind,
    /// The units it is usually said in.
    pub units: UsualUnits,
}

/// One calculation: what it is for, what it needs, what it gives, where it is
/// from, and how to run it.
pub struct Calculation {
    /// Stable name.
    pub id: &'static str,
    /// Its name at the bench.
    pub title: &'static str,
    /// What it is for, in one line.
    pub purpose: &'static str,
    /// What has to be known.
    pub inputs: &'static [Input],
    /// What is found out.
    pub outputs: &'static [Output],
    /// How it is worked out, a line a step. `{id}` stands for the value of that
    /// input or output.
    pub workings: &'static [&'static str],
    /// Where the formula is from.
    pub provenance: Provenance,
    /// What to beware of while doing this.
    pub cautions: &'static [&'static str],
    /// Runs it.
    pub run: fn(&Given) -> Result<Answer, CalculationError>,
}

impl Calculation {
    /// The input with this id.
    #[must_use]
    pub fn input(&self, id: &str) -> Option<&'static Input> {
        self.inputs.iter().find(|one| one.id == id)
    }

    /// The output with this id.
    #[must_use]
    pub fn output(&self, id: &str) -> Option<&'static Output> {
        self.outputs.iter().find(|one| one.id == id)
    }

    /// Checks what was given against the description and runs the calculation.
    ///
    /// # Errors
    /// [`CalculationError`] names the field, what was read and what would be right.
    pub fn answer(&self, given: &Given) -> Result<Answer, CalculationError> {
        given.check(self.inputs)?;
        let answer = (self.run)(given)?;
        answer.check(self)?;
        Ok(answer)
    }
}
