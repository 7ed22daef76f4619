//! The window a value must lie in.

use thiserror::Error;

/// Which side of a window wrecks the engine, so that *good* must be surer there.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum DangerousSide {
    /// Neither side is worse than the other.
    Neither,
    /// Too little: a tight bearing, a small ring gap, little end float.
    TooLittle,
    /// Too much: a press fit that would crack the part.
    TooMuch,
}

/// A window of allowed values, in SI units, open at a side that has no limit.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Window {
    low: Option<f64>,
    high: Option<f64>,
}

/// Why two limits make no window.
#[derive(Clone, Copy, PartialEq, Debug, Error)]
pub enum WindowError {
    /// The low limit lies above the high one.
    #[error("the low limit is above the high limit: swap the two")]
    UpsideDown,
    /// Both limits are the same.
    #[error("the low and the high limit are the same: no reading could ever be inside")]
    NoWidth,
    /// Neither limit was given.
    #[error("neither a low nor a high limit is given: type at least one")]
    NoLimit,
    /// A limit is not a number.
    #[error("a limit is not a finite number")]
    NotFinite,
}

impl Window {
    /// A window from its limits, SI units.
    ///
    /// # Errors
    /// [`WindowError`] says which pair of limits makes no window.
    pub fn new(low: Option<f64>, high: Option<f64>) -> Result<Self, WindowError> {
        if low.is_some_and(|limit| !limit.is_finite())
            || high.is_some_and(|limit| !limit.is_finite())
        {
            return Err(WindowError::NotFinite);
        }
        match (low, high) {
            (None, None) => Err(WindowError::NoLimit),
            (Some(low), Some(high)) if low > high => Err(WindowError::UpsideDown),
            (Some(low), Some(high)) if low == high => Err(WindowError::NoWidth),
            _ => Ok(Self { low, high }),
        }
    }

    /// The least allowed value, SI units.
    #[must_use]
    pub const fn low(&self) -> Option<f64> {
        self.low
    }

    /// The greatest allowed value, SI units.
    #[must_use]
    pub const fn high(&self) -> Option<f64> {
        self.high
    }

    /// Whether a value lies inside, limits included.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        self.low.is_none_or(|low| value >= low) && self.high.is_none_or(|high| value <= high)
    }

    /// Width, SI units; `None` when a side is open.
    #[must_use]
    pub fn width(&self) -> Option<f64> {
        Some(self.high? - self.low?)
    }
}
