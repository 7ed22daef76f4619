//! A stack with values: its result, and how far it may be off.

use super::formula::{Formula, Stack, Term};
use super::term_value::{COVERAGE, TermValue};
use crate::describe::{CalculationError, Given};
use crate::measure::Estimate;

/// The least and the greatest that a result can be.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Extent {
    /// The least, SI units.
    pub least: f64,
    /// The greatest, SI units.
    pub greatest: f64,
}

/// A stack with the values of its terms.
///
/// ```
/// use assembly_core::stack::{QUENCH, StackUp, TermValue};
///
/// const INCH: f64 = 0.0254;
/// let stack_up = StackUp::new(&QUENCH)
///     .with("block-height", TermValue::within(9.025 * INCH, 0.002 * INCH))?
///     .with("stroke", TermValue::exact(3.480 * INCH))?
///     .with("rod-length", TermValue::within(5.700 * INCH, 0.001 * INCH))?
///     .with("compression-height", TermValue::within(1.560 * INCH, 0.001 * INCH))?
///     .with("gasket-compressed", TermValue::within(0.040 * INCH, 0.001 * INCH))?;
/// assert!((stack_up.value()? / INCH - 0.065).abs() < 1e-9);
/// let worst = stack_up.worst_case()?;
/// assert!((worst.least / INCH - 0.060).abs() < 1e-9);
/// // Which gasket gives 0.040?
/// let gasket = stack_up.solve("gasket-compressed", 0.055 * INCH)?;
/// assert!((gasket.value() / INCH - 0.030).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct StackUp {
    pub(super) stack: &'static Stack,
    /// In the order of the terms.
    values: Vec<Option<TermValue>>,
}

impl StackUp {
    /// A stack with no values yet.
    #[must_use]
    pub fn new(stack: &'static Stack) -> Self {
        Self {
            stack,
            values: vec![None; stack.terms.len()],
        }
    }

    /// A stack with the values that were given for its terms; others may be missing.
    ///
    /// # Errors
    /// [`CalculationError`] names the value that no engine has, or of which
    /// there are several.
    pub fn from_given(stack: &'static Stack, given: &Given) -> Result<Self, CalculationError> {
        let mut filled = Self::new(stack);
        for (term, value) in stack.terms.iter().zip(&mut filled.values) {
            if !given.several(term.input.id).is_empty() {
                given.check(std::slice::from_ref(term.input))?;
            }
            *value = given
                .optional(term.input.id)
                .map(|one| TermValue::measured(one.clone()));
        }
        Ok(filled)
    }

    /// The same with this value for a term.
    ///
    /// # Errors
    /// [`CalculationError::OutOfRange`] when no engine has such a value,
    /// [`CalculationError::NoSuchTerm`] when the stack has no such term.
    pub fn with(mut self, term: &str, value: TermValue) -> Result<Self, CalculationError> {
        let Some((place, term)) = self.stack.term(term) else {
            return Err(CalculationError::NoSuchTerm {
                stack: self.stack.title,
                terms: self.term_names(),
            });
        };
        let given = Given::new().with(term.input.id, value.estimate.clone());
        given.check(std::slice::from_ref(term.input))?;
        if let Some(slot) = self.values.get_mut(place) {
            *slot = Some(value);
        }
        Ok(self)
    }

    pub(super) fn term_names(&self) -> String {
        let names: Vec<&str> = self
            .stack
            .terms
            .iter()
            .map(|term| term.input.label)
            .collect();
        names.join(", ")
    }

    /// The stack that this is a case of.
    #[must_use]
    pub const fn stack(&self) -> &'static Stack {
        self.stack
    }

    /// The value of every term, an absent one's own value included.
    pub(super) fn terms(&self) -> Result<Vec<TermValue>, CalculationError> {
        self.terms_but(None)
    }

    /// The same, with nothing in the place of one term that may be missing.
    pub(super) fn terms_but(
        &self,
        unknown: Option<usize>,
    ) -> Result<Vec<TermValue>, CalculationError> {
        self.stack
            .terms
            .iter()
            .zip(&self.values)
            .enumerate()
            .map(|(place, (term, value))| match value {
                Some(value) => Ok(value.clone()),
                None if unknown == Some(place) => Ok(TermValue::exact(0.0)),
                None => absent(term),
            })
            .collect()
    }

    /// Whether a term was given a value.
    pub(super) fn known(&self, place: usize) -> Option<&TermValue> {
        self.values.get(place)?.as_ref()
    }

    fn finite(&self, value: f64) -> Result<f64, CalculationError> {
        if value.is_finite() {
            Ok(value)
        } else {
            Err(CalculationError::NoNumber {
                output: self.stack.result.id,
            })
        }
    }

    /// The result, all terms as given.
    ///
    /// # Errors
    /// [`CalculationError`] names what is missing, or says that these values
    /// give no number.
    pub fn value(&self) -> Result<f64, CalculationError> {
        self.finite(self.stack.value_at(&numbers(&self.terms()?)))
    }

    /// The result with the errors of everything measured, to first order
    /// (JCGM 100:2008, 5.1). Tolerances of parts that were not measured do not
    /// count here.
    ///
    /// # Errors
    /// As for [`value`](Self::value).
    pub fn estimate(&self) -> Result<Estimate, CalculationError> {
        let terms = self.terms()?;
        let numbers = numbers(&terms);
        let value = self.finite(self.stack.value_at(&numbers))?;
        let mut inputs = Vec::with_capacity(terms.len());
        for (place, term) in terms.iter().enumerate() {
            if !term.estimate.parts().is_empty() {
                let slope = self.finite(self.stack.slope_at(&numbers, place))?;
                inputs.push((&term.estimate, slope));
            }
        }
        Ok(Estimate::from_slopes(value, &inputs))
    }

    /// The least and the greatest result when every term is off as far as it
    /// can be, in the worst way together. Measured terms are taken to be off by
    /// two standard deviations at worst.
    ///
    /// For a formula that is no sum, every corner is tried: exact as long as
    /// the result rises or falls steadily with each term.
    ///
    /// # Errors
    /// As for [`value`](Self::value); also when a corner gives no number.
    pub fn worst_case(&self) -> Result<Extent, CalculationError> {
        let terms = self.terms()?;
        let middle = numbers(&terms);
        let value = self.finite(self.stack.value_at(&middle))?;
        if let Formula::Sum(times) = self.stack.formula {
            let off: f64 = times
                .iter()
                .zip(&terms)
                .map(|(times, term)| times.abs() * term.reach())
                .sum();
            return Ok(Extent {
                least: self.finite(value - off)?,
                greatest: self.finite(value + off)?,
            });
        }
        let mut corners = vec![middle];
        for (place, term) in terms.iter().enumerate() {
            let reach = term.reach();
            if reach > 0.0 {
                corners = corners
                    .iter()
                    .flat_map(|corner| [moved(corner, place, reach), moved(corner, place, -reach)])
                    .collect();
            }
        }
        let mut extent = Extent {
            least: value,
            greatest: value,
        };
        for corner in corners {
            let value = self.finite(self.stack.value_at(&corner))?;
            extent.least = extent.least.min(value);
            extent.greatest = extent.greatest.max(value);
        }
        Ok(extent)
    }

    /// The least and the greatest result when the terms are off independently
    /// of each other, so that they rarely all add up: root of the sum of the
    /// squares, to first order. Errors that measured terms share add up with
    /// their signs before they are squared.
    ///
    /// # Errors
    /// As for [`value`](Self::value).
    pub fn root_sum_square(&self) -> Result<Extent, CalculationError> {
        let measured = self.estimate()?;
        let terms = self.terms()?;
        let numbers = numbers(&terms);
        let mut off = COVERAGE * measured.deviation();
        for (place, term) in terms.iter().enumerate() {
            if term.half_width > 0.0 {
                let slope = self.finite(self.stack.slope_at(&numbers, place))?;
                off = off.hypot(slope * term.half_width);
            }
        }
        Ok(Extent {
            least: self.finite(measured.value() - off)?,
            greatest: self.finite(measured.value() + off)?,
        })
    }
}

fn absent(term: &Term) -> Result<TermValue, CalculationError> {
    term.absent
        .map(TermValue::exact)
        .ok_or(CalculationError::Missing {
            field: term.input.id,
            label: term.input.label,
            how: term.input.how,
        })
}

pub(super) fn numbers(terms: &[TermValue]) -> Vec<f64> {
    terms.iter().map(TermValue::value).collect()
}

fn moved(corner: &[f64], place: usize, by: f64) -> Vec<f64> {
    let mut corner = corner.to_vec();
    if let Some(value) = corner.get_mut(place) {
        *value += by;
    }
    corner
}
