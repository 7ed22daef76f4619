//! A stack-up as data: its terms, its result and how the one follows from the other.

use num_dual::{Dual64, DualNum};

use crate::describe::{Input, Output};

/// A number that a formula can be worked out with: a plain one, or one that
/// brings its slope along.
pub trait Number: DualNum<Primitive = f64> + Copy {}

impl<N: DualNum<Primitive = f64> + Copy> Number for N {}

/// One part of a stack.
#[derive(Clone, Copy, Debug)]
pub struct Term {
    /// What it is, how it is measured, and what it can be.
    pub input: &'static Input,
    /// Its value when it is not there at all, such as a tray that is not
    /// fitted; `None` when the stack can't be worked out without it.
    pub absent: Option<f64>,
}

impl Term {
    /// A part that has to be known.
    #[must_use]
    pub const fn needed(input: &'static Input) -> Self {
        Self {
            input,
            absent: None,
        }
    }

    /// A part that may not be there, and then counts as nothing.
    #[must_use]
    pub const fn if_fitted(input: &'static Input) -> Self {
        Self {
            input,
            absent: Some(0.0),
        }
    }
}

/// How the result follows from the terms.
#[derive(Clone, Copy, Debug)]
pub enum Formula {
    /// Each term this many times, added up; in the order of the terms.
    Sum(&'static [f64]),
    /// Anything else that is smooth.
    Smooth(Smooth),
}

/// A smooth formula, written once and compiled for plain numbers and for
/// numbers with a slope.
#[derive(Clone, Copy, Debug)]
pub struct Smooth {
    /// The result, from the terms in their order.
    pub value: fn(&[f64]) -> f64,
    /// The result with its slope.
    pub with_slope: fn(&[Dual64]) -> Dual64,
}

/// A stack-up: one result and the parts it is made of.
#[derive(Clone, Copy, Debug)]
pub struct Stack {
    /// Stable name.
    pub id: &'static str,
    /// Its name at the bench.
    pub title: &'static str,
    /// Its parts.
    pub terms: &'static [Term],
    /// What comes out.
    pub result: &'static Output,
    /// How it comes out.
    pub formula: Formula,
    /// How it is then proved on the engine.
    pub proof: &'static str,
}

impl Stack {
    /// The term with this id and its place.
    #[must_use]
    pub fn term(&self, id: &str) -> Option<(usize, &'static Term)> {
        self.terms
            .iter()
            .enumerate()
            .find(|(_, term)| term.input.id == id)
    }

    /// The result for these values of the terms, in their order. No number
    /// when they are too few or the formula has none for them.
    #[must_use]
    pub fn value_at(&self, terms: &[f64]) -> f64 {
        match self.formula {
            Formula::Sum(times) => times
                .iter()
                .zip(terms)
                .map(|(times, term)| times * term)
                .sum(),
            Formula::Smooth(smooth) => (smooth.value)(terms),
        }
    }

    /// How the result moves with one term, all else as it is.
    #[must_use]
    pub fn slope_at(&self, terms: &[f64], place: usize) -> f64 {
        match self.formula {
            Formula::Sum(times) => times.get(place).copied().unwrap_or_default(),
            Formula::Smooth(smooth) => {
                let duals: Vec<Dual64> = terms
                    .iter()
                    .enumerate()
                    .map(|(at, term)| Dual64::new(*term, if at == place { 1.0 } else { 0.0 }))
                    .collect();
                (smooth.with_slope)(&duals).eps
            }
        }
    }
}
