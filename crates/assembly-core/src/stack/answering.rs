//! What the quick checks of stacks have in common.

use super::formula::Stack;
use super::solve::SolveError;
use super::stack_up::StackUp;
use crate::describe::{Answer, CalculationError, Given, Gravity, Input};
use crate::measure::Estimate;

/// One inch.
pub(super) const INCH: f64 = 0.0254;

/// Whether a value is less than a limit, by more than adding up rounds: what
/// was typed as the limit itself is not less.
pub(super) fn less(value: f64, limit: f64) -> bool {
    value < limit - limit.abs() * 1e-9
}

/// Whether a value is more than a limit, by more than adding up rounds.
pub(super) fn more(value: f64, limit: f64) -> bool {
    value > limit + limit.abs() * 1e-9
}

/// The result of a stack from what was given.
pub(super) fn estimate(stack: &'static Stack, given: &Given) -> Result<Estimate, CalculationError> {
    StackUp::from_given(stack, given)?.estimate()
}

impl Answer {
    /// The same with the value of a term that gives the wanted result, when a
    /// wanted result was given. When there is none, a finding says why.
    pub(super) fn with_solved(
        self,
        output: &'static str,
        stack: &'static Stack,
        given: &Given,
        term: &Input,
        wanted: &Input,
    ) -> Result<Self, CalculationError> {
        let Some(wanted) = given.optional(wanted.id) else {
            return Ok(self);
        };
        match StackUp::from_given(stack, given)?.solve(term.id, wanted.value()) {
            Ok(solved) => Ok(self.with(output, solved)),
            Err(SolveError::Given(error)) => Err(error),
            Err(error) => Ok(self.finding(Gravity::Caution, sentence(&error.to_string()))),
        }
    }
}

/// The text as a sentence.
fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}.", first.to_uppercase(), letters.as_str())
    })
}
