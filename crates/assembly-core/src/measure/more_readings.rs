//! How many more readings would settle a verdict.

use super::assessment::{Assessment, Verdict};
use super::estimate::Estimate;
use super::source::{Origin, Sources};
use super::window::{DangerousSide, Window};

/// Nobody reads one place more often than this to settle a fit.
pub const MOST_READINGS: usize = 30;

/// What more readings of the same places could do.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum MoreReadings {
    /// The verdict is clear already.
    NotNeeded,
    /// So many more of each would settle it, if their mean stays where it is now.
    Would(usize),
    /// None within reason would: what is left is shared by all readings, or the
    /// value lies too near the limit.
    WouldNot,
}

impl Estimate {
    /// The same value as the mean of so many times as many readings: the causes
    /// that are fresh in each shrink by the root of it, the others stay.
    #[must_use]
    pub fn as_mean_of(&self, times_as_many: f64, sources: &Sources) -> Self {
        let shrunk = 1.0 / times_as_many.max(1.0).sqrt();
        self.parts()
            .iter()
            .fold(Self::exact(self.value()), |mean, (id, part)| {
                let fresh = matches!(
                    sources.get(*id).map(|source| source.origin),
                    Some(Origin::Repeat | Origin::Rounding)
                );
                mean.with(*id, if fresh { part * shrunk } else { *part })
            })
    }
}

/// How many more readings of each place would settle the verdict of a value
/// that has a least and a greatest, made from so many readings of each place.
/// For a single value give it twice.
///
/// Only what is fresh in each reading shrinks; a zero or a setting that all
/// share does not (GUM, JCGM 100:2008, 4.2).
///
/// ```
/// use assembly_core::measure::{
///     DangerousSide, Estimate, MoreReadings, Origin, Sources, Window, how_many_more,
/// };
/// let mut sources = Sources::new();
/// let feel = sources.fresh("bore gauge", Origin::Repeat);
/// let value = Estimate::exact(1.8).with(feel, 0.3);
/// let window = Window::new(Some(1.5), Some(3.0)).unwrap();
/// let more = how_many_more((&value, &value), 1, &sources, &window, DangerousSide::TooLittle);
/// assert_eq!(more, MoreReadings::Would(2));
/// ```
#[must_use]
pub fn how_many_more(
    (least, greatest): (&Estimate, &Estimate),
    readings: usize,
    sources: &Sources,
    window: &Window,
    dangerous: DangerousSide,
) -> MoreReadings {
    let settled = |times: f64| {
        let (least, greatest) = (
            least.as_mean_of(times, sources),
            greatest.as_mean_of(times, sources),
        );
        Assessment::judged((&least, &greatest), window, dangerous, sources).verdict
            != Verdict::TooCloseToCall
    };
    if settled(1.0) {
        return MoreReadings::NotNeeded;
    }
    let readings = readings.max(1);
    (1..=MOST_READINGS)
        .find(|more| settled((readings + more) as f64 / readings as f64))
        .map_or(MoreReadings::WouldNot, MoreReadings::Would)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn value(at: f64, fresh: f64, shared: f64) -> (Estimate, Sources) {
        let mut sources = Sources::new();
        let feel = sources.fresh("gauge", Origin::Repeat);
        let zero = sources.fresh("gauge", Origin::SharedZero);
        (
            Estimate::exact(at).with(feel, fresh).with(zero, shared),
            sources,
        )
    }

    fn more(at: f64, fresh: f64, shared: f64) -> MoreReadings {
        let (value, sources) = value(at, fresh, shared);
        let window = Window::new(Some(1.5), Some(3.0)).unwrap();
        how_many_more(
            (&value, &value),
            1,
            &sources,
            &window,
            DangerousSide::TooLittle,
        )
    }

    #[test]
    fn only_what_is_fresh_in_each_reading_shrinks() {
        let (value, sources) = value(2.0, 0.4, 0.3);
        let mean = value.as_mean_of(16.0, &sources);
        assert!((mean.deviation() - 0.1_f64.hypot(0.3)).abs() < 1e-12);
        assert_eq!(mean.value(), 2.0);
    }

    #[test]
    fn a_clear_verdict_needs_no_more() {
        assert_eq!(more(2.2, 0.2, 0.0), MoreReadings::NotNeeded);
        assert_eq!(more(1.0, 0.2, 0.0), MoreReadings::NotNeeded);
    }

    // 1.645 deviations from the limit make 95 %: at 0.2 from it the deviation
    // must come down from 0.3 to 0.1216, which takes 0.3²/0.1216² = 6.1 readings.
    #[test]
    fn the_number_is_the_least_that_is_enough() {
        assert_eq!(more(1.7, 0.3, 0.0), MoreReadings::Would(6));
    }

    #[test]
    fn no_number_of_readings_beats_a_shared_zero() {
        assert_eq!(more(1.7, 0.05, 0.3), MoreReadings::WouldNot);
    }

    #[test]
    fn on_the_very_limit_nothing_helps() {
        assert_eq!(more(1.5, 0.3, 0.0), MoreReadings::WouldNot);
    }
}
