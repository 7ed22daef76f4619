//! What a calculation gives back.

use super::calculation::Calculation;
use super::given::CalculationError;
use crate::measure::Estimate;

/// How grave a finding is.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Gravity {
    /// Good to know.
    Note,
    /// Look twice.
    Caution,
    /// Must not be built like this.
    Stop,
}

/// Something the numbers say besides their value: an interference, a taper
/// that hides in the mean.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Finding {
    /// How grave.
    pub gravity: Gravity,
    /// The sentence for the builder.
    pub text: String,
}

/// The outputs of a calculation, in the order of its description, and findings.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Answer {
    values: Vec<(&'static str, Estimate)>,
    findings: Vec<Finding>,
}

impl Answer {
    /// An answer with nothing in it yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// The same with one more output.
    #[must_use]
    pub fn with(mut self, id: &'static str, value: Estimate) -> Self {
        self.values.push((id, value));
        self
    }

    /// The same with one more output, if there is one.
    #[must_use]
    pub fn with_optional(self, id: &'static str, value: Option<Estimate>) -> Self {
        match value {
            Some(value) => self.with(id, value),
            None => self,
        }
    }

    /// The same with one more finding.
    #[must_use]
    pub fn finding(mut self, gravity: Gravity, text: impl Into<String>) -> Self {
        self.findings.push(Finding {
            gravity,
            text: text.into(),
        });
        self
    }

    /// The value of an output; `None` when these inputs do not give it.
    #[must_use]
    pub fn get(&self, id: &str) -> Option<&Estimate> {
        self.values
            .iter()
            .find_map(|(name, value)| (*name == id).then_some(value))
    }

    /// All outputs.
    #[must_use]
    pub fn values(&self) -> &[(&'static str, Estimate)] {
        &self.values
    }

    /// All findings.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// Every output is described and a finite number.
    pub(super) fn check(&self, calculation: &Calculation) -> Result<(), CalculationError> {
        for (id, value) in &self.values {
            debug_assert!(calculation.output(id).is_some(), "undescribed output {id}");
            if !value.value().is_finite() || !value.deviation().is_finite() {
                return Err(CalculationError::NoNumber { output: id });
            }
        }
        Ok(())
    }
}
