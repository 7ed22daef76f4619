//! What can honestly be said of a measured value against a window.
//!
//! The chance that the true value lies inside the window is computed from the
//! value and its standard uncertainty, taken as normal (JCGM 106:2012, 7), or as
//! Student's where the uncertainty was itself found from a few readings. The
//! thresholds are this project's own: see [`GOOD_AT_LEAST`] and its fellows.

use super::chance::Spread;
use super::estimate::Estimate;
use super::source::Sources;
use super::window::{DangerousSide, Window};

/// The chance of being inside from which a fit is called good.
pub const GOOD_AT_LEAST: f64 = 0.80;
/// The chance of being inside up to which a fit is called bad, provided that it
/// is bad on one side or on both, and not just that the measuring is too coarse
/// to say on which side of the window the value lies.
pub const BAD_AT_MOST: f64 = 0.20;
/// The chance of not being beyond the dangerous limit that *good* needs besides.
pub const GOOD_ON_DANGEROUS_SIDE: f64 = 0.95;

/// The three things that can be said.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Verdict {
    /// Inside, surely enough.
    Good,
    /// The measuring can't tell.
    TooCloseToCall,
    /// Outside, surely enough.
    Bad,
}

/// A verdict with the chances behind it.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Assessment {
    /// What is said.
    pub verdict: Verdict,
    /// The chance that the true value is below the low limit.
    pub below: f64,
    /// The chance that it is inside.
    pub inside: f64,
    /// The chance that it is above the high limit.
    pub above: f64,
}

impl Assessment {
    /// Assesses one value.
    #[must_use]
    pub fn of(value: &Estimate, window: &Window, dangerous: DangerousSide) -> Self {
        Self::of_extent(value, value, window, dangerous)
    }

    /// Assesses something that has a least and a greatest value, such as the
    /// clearance around a bearing: the least must not be below the window and
    /// the greatest not above it.
    #[must_use]
    pub fn of_extent(
        least: &Estimate,
        greatest: &Estimate,
        window: &Window,
        dangerous: DangerousSide,
    ) -> Self {
        let below = |low| Spread::Normal.chance_below(least, low);
        let above = |high| 1.0 - Spread::Normal.chance_below(greatest, high);
        Self::from_chances(
            window.low().map_or(0.0, below),
            window.high().map_or(0.0, above),
            dangerous,
        )
    }

    /// Like [`Self::of_extent`], but mindful of causes whose size was found by a
    /// few readings of the builder's own: what is not known so well must stay
    /// farther from a limit. Student's distribution with the effective degrees
    /// of freedom takes the place of the normal one (JCGM 100:2008, G.4).
    ///
    /// ```
    /// use assembly_core::measure::{
    ///     Assessment, DangerousSide, ErrorSource, Estimate, Origin, Sources, Verdict, Window,
    /// };
    /// let mut sources = Sources::new();
    /// let feel = sources.add(ErrorSource {
    ///     label: "bore gauge".into(),
    ///     origin: Origin::Repeat,
    ///     degrees_of_freedom: 4.0,
    /// });
    /// let value = Estimate::exact(1.86).with(feel, 0.2);
    /// let window = Window::new(Some(1.5), Some(3.0)).unwrap();
    /// let danger = DangerousSide::TooLittle;
    /// let judged = Assessment::judged((&value, &value), &window, danger, &sources);
    /// assert_eq!(judged.verdict, Verdict::TooCloseToCall);
    /// // If the gauge's feel were known for sure, the same reading would be good.
    /// assert_eq!(Assessment::of(&value, &window, danger).verdict, Verdict::Good);
    /// ```
    #[must_use]
    pub fn judged(
        (least, greatest): (&Estimate, &Estimate),
        window: &Window,
        dangerous: DangerousSide,
        sources: &Sources,
    ) -> Self {
        let spread = |value: &Estimate| Spread::of(value.degrees_of_freedom(sources));
        let below = |low| spread(least).chance_below(least, low);
        let above = |high| 1.0 - spread(greatest).chance_below(greatest, high);
        Self::from_chances(
            window.low().map_or(0.0, below),
            window.high().map_or(0.0, above),
            dangerous,
        )
    }

    fn from_chances(below: f64, above: f64, dangerous: DangerousSide) -> Self {
        let inside = (1.0 - below - above).clamp(0.0, 1.0);
        let beyond_danger = match dangerous {
            DangerousSide::Neither => 0.0,
            DangerousSide::TooLittle => below,
            DangerousSide::TooMuch => above,
        };
        // A measurement so coarse that the value may lie on either side of the
        // window has little chance of being inside wherever the value is. That
        // says nothing about the part, so each side counts for itself here.
        let within_both = (1.0 - below) * (1.0 - above);
        let verdict = if inside <= BAD_AT_MOST && within_both <= BAD_AT_MOST {
            Verdict::Bad
        } else if inside >= GOOD_AT_LEAST && 1.0 - beyond_danger >= GOOD_ON_DANGEROUS_SIDE {
            Verdict::Good
        } else {
            Verdict::TooCloseToCall
        };
        Self {
            verdict,
            below,
            inside,
            above,
        }
    }
}

/// Whether a measurement of this standard uncertainty could ever be called good
/// against this window, however the part turns out. To be asked before the
/// measuring starts.
#[must_use]
pub fn could_say_good(deviation: f64, window: &Window, dangerous: DangerousSide) -> bool {
    best_chance(deviation, window, dangerous).verdict == Verdict::Good
}

/// The most favourable assessment that a measurement of this standard
/// uncertainty could ever give against this window.
#[must_use]
pub fn best_chance(deviation: f64, window: &Window, dangerous: DangerousSide) -> Assessment {
    best_chance_of(Spread::Normal, deviation, window, dangerous)
}

/// The same for a standard uncertainty that was found from a few readings and is
/// itself uncertain: with so many degrees of freedom (JCGM 100:2008, G.3).
#[must_use]
pub fn best_chance_when_tried(
    deviation: f64,
    degrees_of_freedom: f64,
    window: &Window,
    dangerous: DangerousSide,
) -> Assessment {
    best_chance_of(Spread::of(degrees_of_freedom), deviation, window, dangerous)
}

fn best_chance_of(
    spread: Spread,
    deviation: f64,
    window: &Window,
    dangerous: DangerousSide,
) -> Assessment {
    let (Some(low), Some(high)) = (window.low(), window.high()) else {
        // One side is open: a value far enough from the other limit is inside for sure.
        return Assessment::from_chances(0.0, 0.0, dangerous);
    };
    if deviation <= 0.0 {
        return Assessment::from_chances(0.0, 0.0, dangerous);
    }
    // The middle is the likeliest place to be inside; if it is too near the
    // dangerous limit, the place just far enough from it is the best there is.
    let clear_of_danger = spread.clear_by(GOOD_ON_DANGEROUS_SIDE) * deviation;
    let middle = f64::midpoint(low, high);
    let best = match dangerous {
        DangerousSide::Neither => middle,
        DangerousSide::TooLittle => middle.max(low + clear_of_danger),
        DangerousSide::TooMuch => middle.min(high - clear_of_danger),
    };
    let below = spread.below((low - best) / deviation);
    let above = 1.0 - spread.below((high - best) / deviation);
    Assessment::from_chances(below, above, dangerous)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Origin;

    fn reading(value: f64, deviation: f64) -> Estimate {
        Estimate::exact(value).with(Sources::new().fresh("feel", Origin::Repeat), deviation)
    }

    // Worked by hand from the normal distribution (common practice): read 1.6
    // thou against 1.5 to 3.0.
    #[test]
    fn the_worked_chances_of_the_trade_come_out() {
        let window = Window::new(Some(1.5), Some(3.0)).unwrap();
        let near = Assessment::of(&reading(1.6, 0.18), &window, DangerousSide::TooLittle);
        assert!((near.inside - 0.71).abs() < 0.005);
        assert_eq!(near.verdict, Verdict::TooCloseToCall);
        let wide = Assessment::of(&reading(1.6, 0.5), &window, DangerousSide::Neither);
        assert!((wide.inside - 0.58).abs() < 0.005);
        let middle = Assessment::of(&reading(2.2, 0.5), &window, DangerousSide::Neither);
        assert!((middle.inside - 0.86).abs() < 0.011);
        assert_eq!(middle.verdict, Verdict::Good);
    }

    #[test]
    fn the_dangerous_side_needs_more() {
        let window = Window::new(Some(1.5), Some(3.0)).unwrap();
        let value = reading(2.0, 0.4);
        let relaxed = Assessment::of(&value, &window, DangerousSide::Neither);
        let strict = Assessment::of(&value, &window, DangerousSide::TooLittle);
        assert_eq!(relaxed.verdict, Verdict::Good);
        assert_eq!(strict.verdict, Verdict::TooCloseToCall);
    }

    #[test]
    fn a_tool_too_coarse_for_the_window_is_known_before_it_is_used() {
        let window = Window::new(Some(1.5), Some(2.2)).unwrap();
        assert!(could_say_good(0.18, &window, DangerousSide::TooLittle));
        assert!(!could_say_good(0.4, &window, DangerousSide::TooLittle));
        // Whatever is read with such a tool, good is never said.
        for step in 0..200 {
            let value = reading(1.0 + 0.01 * f64::from(step), 0.4);
            let said = Assessment::of(&value, &window, DangerousSide::TooLittle);
            assert_ne!(said.verdict, Verdict::Good);
        }
    }

    #[test]
    fn a_hopelessly_coarse_tool_calls_nothing_bad_that_it_cannot_place() {
        let window = Window::new(Some(1.5), Some(2.2)).unwrap();
        let said = |value: f64, deviation: f64| {
            Assessment::of(
                &reading(value, deviation),
                &window,
                DangerousSide::TooLittle,
            )
            .verdict
        };
        // The chance of being inside is 0.14 at most, wherever the value lies.
        assert_eq!(said(1.85, 2.0), Verdict::TooCloseToCall);
        assert_eq!(said(1.0, 2.0), Verdict::TooCloseToCall);
        // Far enough out even that tool knows.
        assert_eq!(said(-1.0, 2.0), Verdict::Bad);
        assert_eq!(said(5.0, 2.0), Verdict::Bad);
    }

    #[test]
    fn a_fit_that_is_out_on_both_sides_is_bad() {
        let window = Window::new(Some(1.5), Some(2.2)).unwrap();
        let (least, greatest) = (reading(1.4, 0.2), reading(2.3, 0.2));
        let said = Assessment::of_extent(&least, &greatest, &window, DangerousSide::TooLittle);
        assert!(said.below < 0.8 && said.above < 0.8);
        assert_eq!(said.verdict, Verdict::Bad);
    }

    #[test]
    fn an_exact_value_is_inside_or_it_is_not() {
        let window = Window::new(Some(1.5), None).unwrap();
        let on_the_limit = Assessment::of(&Estimate::exact(1.5), &window, DangerousSide::TooLittle);
        assert_eq!(on_the_limit.verdict, Verdict::Good);
        let under = Assessment::of(&Estimate::exact(1.4), &window, DangerousSide::TooLittle);
        assert_eq!(under.verdict, Verdict::Bad);
    }
}
