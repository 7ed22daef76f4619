//! What the trade would look twice at when there is no sheet.

use assembly_core::describe::Provenance;
use assembly_core::measure::{Window, WindowError};

use super::shape::Measure;

/// A rule of thumb that catches slips of typing and missing sheets. It is never
/// a limit: the maker's sheet, or the builder's own choice, is.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Tripwire {
    /// The rule.
    pub rule: Rule,
    /// Where it is from.
    pub provenance: Provenance,
    /// The rule in words.
    pub words: &'static str,
}

/// The numbers of a rule of thumb.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Rule {
    /// Fixed limits, SI units.
    Fixed {
        /// The least, if there is one.
        low: Option<f64>,
        /// The greatest, if there is one.
        high: Option<f64>,
    },
    /// So much for each unit of a size.
    PartOf {
        /// The size it goes by.
        size: &'static Measure,
        /// The least part of that size.
        low: f64,
        /// The greatest part of that size.
        high: f64,
    },
}

/// A thousandth of an inch in metres, exactly.
pub(super) const THOU: f64 = 0.000_025_4;

impl Tripwire {
    /// From so many thou to so many, by common practice.
    pub(super) const fn thou(low: f64, high: f64, words: &'static str) -> Self {
        Self {
            rule: Rule::Fixed {
                low: Some(low * THOU),
                high: Some(high * THOU),
            },
            provenance: Provenance::CommonPractice,
            words,
        }
    }

    /// At most so many thou, by common practice.
    pub(super) const fn at_most(high: f64, words: &'static str) -> Self {
        Self {
            rule: Rule::Fixed {
                low: None,
                high: Some(high * THOU),
            },
            provenance: Provenance::CommonPractice,
            words,
        }
    }

    /// At least so many thou, by common practice.
    pub(super) const fn at_least(low: f64, words: &'static str) -> Self {
        Self {
            rule: Rule::Fixed {
                low: Some(low * THOU),
                high: None,
            },
            provenance: Provenance::CommonPractice,
            words,
        }
    }

    /// The same out of a handbook.
    pub(super) const fn from(mut self, handbook: &'static str) -> Self {
        self.provenance = Provenance::Handbook(handbook);
        self
    }

    /// The window of the rule, SI units, for a part of this size. Rules that go
    /// by no size ignore it.
    ///
    /// # Errors
    /// [`WindowError`] when the size is not one that makes a window.
    pub fn window(&self, size: f64) -> Result<Window, WindowError> {
        match self.rule {
            Rule::Fixed { low, high } => Window::new(low, high),
            Rule::PartOf { low, high, .. } => Window::new(Some(low * size), Some(high * size)),
        }
    }
}
