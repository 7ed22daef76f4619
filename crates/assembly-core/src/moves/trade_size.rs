//! The sizes the trade thinks in, as numbers of metres.

/// One thousandth of an inch.
pub(super) const THOU: f64 = 25.4e-6;
/// One ten-thousandth of an inch.
pub(super) const TENTH: f64 = 2.54e-6;
