//! What is known of one term: its value and how far it may be off.

use crate::measure::{Estimate, Shape};

/// The value of a term. It was measured, or it is nominal and may be off by a
/// half-width either way, or both.
#[derive(Clone, PartialEq, Debug)]
pub struct TermValue {
    pub(super) estimate: Estimate,
    pub(super) half_width: f64,
    pub(super) shape: Shape,
}

impl TermValue {
    /// A value taken as exact.
    #[must_use]
    pub const fn exact(value: f64) -> Self {
        Self::measured(Estimate::exact(value))
    }

    /// A measured value with its causes of error.
    #[must_use]
    pub const fn measured(estimate: Estimate) -> Self {
        Self {
            estimate,
            half_width: 0.0,
            shape: Shape::Rectangular,
        }
    }

    /// A nominal value that may be off by the half-width either way, anywhere
    /// alike: nothing more than the limits is known (JCGM 101:2008, 6.4.2). A
    /// half-width that is no number, or below nothing, counts as nothing.
    #[must_use]
    pub const fn within(value: f64, half_width: f64) -> Self {
        Self::exact(value).give_or_take(half_width, Shape::Rectangular)
    }

    /// The same, and besides it may be off by the half-width either way.
    #[must_use]
    pub const fn give_or_take(mut self, half_width: f64, shape: Shape) -> Self {
        self.half_width = if half_width.is_finite() && half_width > 0.0 {
            half_width
        } else {
            0.0
        };
        self.shape = shape;
        self
    }

    /// The value itself.
    #[must_use]
    pub const fn value(&self) -> f64 {
        self.estimate.value()
    }

    /// How far it may be off either way: the half-width, and for what was
    /// measured two standard deviations (JCGM 100:2008, 6.2.1, coverage factor 2).
    #[must_use]
    pub fn reach(&self) -> f64 {
        self.half_width + COVERAGE * self.estimate.deviation()
    }
}

/// How many standard deviations a measured value is taken to be off at worst.
pub(super) const COVERAGE: f64 = 2.0;
