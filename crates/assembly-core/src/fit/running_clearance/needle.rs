//! Running clearance from a bore gauge zeroed on a micrometer.

use uom::si::f64::Length;

use super::station::{ClearanceError, RunningClearance, Station, from_stations};
use crate::measure::Measured;

/// Which way the needle of a bore gauge goes. Find out by looking: close the
/// gauge's anvils a little with a finger and watch the needle.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum NeedleSense {
    /// Clockwise from zero means a smaller bore: so on most bore gauges.
    ClockwiseIsSmaller,
    /// Clockwise from zero means a bigger bore.
    ClockwiseIsLarger,
}

impl NeedleSense {
    /// The bore that a needle reading means: the size the gauge was zeroed at,
    /// plus or less the needle. The needle is positive clockwise from zero.
    ///
    /// ```
    /// use assembly_core::fit::running_clearance::NeedleSense;
    /// use assembly_core::measure::Measured;
    /// use assembly_core::quantity::Si;
    /// use uom::si::f64::Length;
    ///
    /// let length = |si: f64| Measured::exact(Length::from_si(si));
    /// let bore = NeedleSense::ClockwiseIsSmaller.bore(&length(0.0622), &length(-53e-6));
    /// assert!((bore.value().to_si() - 0.062253).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn bore(self, set_at: &Measured<Length>, needle: &Measured<Length>) -> Measured<Length> {
        match self {
            Self::ClockwiseIsSmaller => set_at - needle,
            Self::ClockwiseIsLarger => set_at + needle,
        }
    }
}

/// Running clearance of one station from a bore gauge that was zeroed on a
/// micrometer: clearance = setting ± needle − journal.
///
/// When `set_at` and the journals carry the zero error of one micrometer, it
/// cancels, and what is left is the feel of the micrometer and of the gauge.
/// For several stations make each [`Station`]'s bores with [`NeedleSense::bore`]
/// and call [`from_stations`].
///
/// # Errors
/// [`ClearanceError`] when there is no needle or journal reading, or one is no number.
pub fn from_needle(
    set_at: &Measured<Length>,
    sense: NeedleSense,
    needles: &[Measured<Length>],
    journals: &[Measured<Length>],
) -> Result<RunningClearance, ClearanceError> {
    from_stations(&[Station {
        bores: needles
            .iter()
            .map(|needle| sense.bore(set_at, needle))
            .collect(),
        bores_near_joint: Vec::new(),
        journals: journals.to_vec(),
    }])
}
