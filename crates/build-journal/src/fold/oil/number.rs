//! A quantity that was said, with what its text says.

use assembly_core::quantity::{Kind, Typed, read, unit_of};

use crate::fact::Said;

/// A quantity as it was typed, and the number in it, if there is one.
#[derive(Clone, PartialEq, Debug)]
pub struct Number {
    /// As it was typed.
    pub said: Said,
    /// What it says.
    pub typed: Option<Typed>,
}

impl Number {
    /// Reads what was said as a number of a kind; else says why there is none.
    pub(super) fn of(said: &Said, kind: Kind) -> (Self, Option<String>) {
        let typed = unit_of(kind, &said.unit)
            .ok_or_else(|| {
                let unit: String = said.unit.chars().take(40).collect();
                format!("the unit “{unit}” that goes with it is not known here")
            })
            .and_then(|unit| read(&said.typed, kind, unit).map_err(|error| error.to_string()));
        let (typed, problem) = match typed {
            Ok(typed) => (Some(typed), None),
            Err(problem) => (None, Some(problem)),
        };
        let said = said.clone();
        (Self { said, typed }, problem)
    }

    /// The number in SI units.
    #[must_use]
    pub fn si(&self) -> Option<f64> {
        self.typed.as_ref().map(Typed::si)
    }
}

/// The number in SI units, when it was said and can be read.
pub(super) fn si(number: Option<&Number>) -> Option<f64> {
    number.and_then(Number::si)
}
