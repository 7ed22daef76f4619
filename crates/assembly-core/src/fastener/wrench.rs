//! The useful band of a torque wrench, and which of several to take.

use super::common::{SHARE, TORQUE, TORQUES, per_cent};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::fit::readings::same_count;
use crate::measure::Estimate;

/// From this share of its full scale a click wrench is meant to hold its
/// tolerance: ISO 6789 states it from 20 % up.
pub const FROM: f64 = 0.20;
/// Up to this share it is comfortable. Common practice.
pub const UP_TO: f64 = 0.90;

/// A torque wrench's scale, newton metres.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Scale {
    low: f64,
    high: f64,
}

/// What is wrong with a wrench's scale.
#[derive(Clone, Copy, PartialEq, Eq, Debug, thiserror::Error)]
#[non_exhaustive]
pub enum ScaleError {
    /// An end is no number or below nothing.
    #[error("the scale's ends are not numbers above nothing: type the lowest and highest mark")]
    NoNumber,
    /// The lowest mark is not below the highest.
    #[error("the lowest mark of the scale is not below its highest: swap them")]
    UpsideDown,
}

/// Where a torque lies on a wrench's scale.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Place {
    /// It cannot be set.
    OffTheScale,
    /// Below a fifth of full scale: the click means little.
    TooLow,
    /// In the useful band.
    Useful,
    /// Above nine tenths: hard to pull smoothly.
    High,
}

impl Scale {
    /// A scale from its lowest to its highest mark.
    ///
    /// # Errors
    /// What is wrong with the two.
    pub fn new(low: f64, high: f64) -> Result<Self, ScaleError> {
        if !(low.is_finite() && high.is_finite() && low >= 0.0 && high > 0.0) {
            return Err(ScaleError::NoNumber);
        }
        if low >= high {
            return Err(ScaleError::UpsideDown);
        }
        Ok(Self { low, high })
    }

    /// Its lowest mark, newton metres.
    #[must_use]
    pub const fn low(&self) -> f64 {
        self.low
    }

    /// Its highest mark, newton metres.
    #[must_use]
    pub const fn high(&self) -> f64 {
        self.high
    }

    /// Where a torque lies on it.
    #[must_use]
    pub fn place(&self, torque: f64) -> Place {
        let share = torque / self.high;
        let beyond = |limit: f64| limit * (1.0 + 1e-9);
        if !(torque * (1.0 + 1e-9) >= self.low && torque <= beyond(self.high)) {
            Place::OffTheScale
        } else if beyond(share) < FROM {
            Place::TooLow
        } else if share > beyond(UP_TO) {
            Place::High
        } else {
            Place::Useful
        }
    }
}

/// The wrench to take for a torque: among those with it in their useful band
/// the one whose middle it is nearest to, else one that has it high on its
/// scale, else one that has it low. `None` when none can be set to it. Counted
/// from nothing.
#[must_use]
pub fn best(torque: f64, wrenches: &[Scale]) -> Option<usize> {
    let middle = f64::midpoint(FROM, UP_TO);
    wrenches
        .iter()
        .enumerate()
        .filter_map(|(at, scale)| {
            let rank = match scale.place(torque) {
                Place::Useful => 0_u8,
                Place::High => 1,
                Place::TooLow => 2,
                Place::OffTheScale => return None,
            };
            Some((rank, (torque / scale.high - middle).abs(), at))
        })
        .min_by(|one, other| one.0.cmp(&other.0).then(one.1.total_cmp(&other.1)))
        .map(|(_, _, at)| at)
}

static WANTED: Input = Input::of(
    "wanted",
    "torque wanted",
    TORQUE,
    TORQUES,
    "From the sheet.",
);
static LOWS: Input = Input::of(
    "lows",
    "lowest mark of each wrench",
    TORQUE,
    (0.0, 3000.0),
    "Your wrenches in any order.",
)
.one_or_more();
static HIGHS: Input = Input::of(
    "highs",
    "highest mark of each wrench",
    TORQUE,
    TORQUES,
    "The same wrenches in the same order.",
)
.one_or_more();

/// Wrench choice.
pub static WHICH_WRENCH: Calculation = Calculation {
    id: "which-wrench",
    title: "Which torque wrench",
    purpose: "Which of your torque wrenches has a torque in the useful part of its scale.",
    inputs: &[WANTED, LOWS, HIGHS],
    outputs: &[
        Output::ratio("which", "wrench to take, counted from one"),
        Output::of("share", "the torque on its scale", SHARE),
    ],
    workings: &[
        "{wanted} against the highest marks {highs}: between 20 % and 90 % of one, near its middle",
        "wrench {which}, at {share} of its scale",
    ],
    provenance: Provenance::Handbook(
        "ISO 6789: a torque wrench states its tolerance from 20 % of full scale; 90 % is common practice",
    ),
    cautions: &[
        "Set it back to its lowest mark afterwards, and never loosen a bolt with it.",
        "Foot-pounds and inch-pounds differ by twelve: read the unit on the wrench aloud.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    same_count(given, &LOWS, &HIGHS)?;
    let wanted = given.one(&WANTED)?;
    let mut scales = Vec::new();
    for (low, high) in given.several(LOWS.id).iter().zip(given.several(HIGHS.id)) {
        let scale = Scale::new(low.value(), high.value())
            .map_err(|error| CalculationError::not_possible(&LOWS, error.to_string()))?;
        scales.push(scale);
    }
    let Some((at, scale)) =
        best(wanted.value(), &scales).and_then(|at| Some((at, scales.get(at)?)))
    else {
        return Ok(Answer::new().finding(
            Gravity::Stop,
            "None of these can be set to it. Borrow one: a torque that is guessed is none.",
        ));
    };
    let share = wanted / scale.high;
    let answer = match scale.place(wanted.value()) {
        Place::TooLow => Answer::new().finding(
            Gravity::Caution,
            format!(
                "Only {} of its scale: a click so low means little. Look for a smaller wrench.",
                per_cent(share.value())
            ),
        ),
        Place::High => Answer::new().finding(
            Gravity::Caution,
            format!(
                "{} of its scale: hard to pull smoothly. A longer wrench is better.",
                per_cent(share.value())
            ),
        ),
        Place::Useful | Place::OffTheScale => Answer::new(),
    };
    Ok(answer
        .with("which", Estimate::exact((at + 1) as f64))
        .with("share", share))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    const FT_LB: f64 = 1.355_817_948_331_4;

    fn answer(wanted: f64, highs: &[f64]) -> Answer {
        let lows: Vec<f64> = highs.iter().map(|high| high / 10.0).collect();
        worked(
            &WHICH_WRENCH,
            &given(
                FT_LB,
                &[("wanted", &[wanted]), ("lows", &lows), ("highs", highs)],
            ),
        )
    }

    #[test]
    fn the_wrench_that_has_it_in_the_middle_is_taken() {
        let taken = answer(65.0, &[250.0, 100.0, 75.0]);
        assert_eq!(value(&taken, "which", 1.0), 2.0);
        assert!(taken.findings().is_empty());
        assert!(says(&answer(20.0, &[150.0]), "smaller wrench"));
        assert!(says(&answer(95.0, &[100.0]), "longer wrench"));
        assert!(says(&answer(200.0, &[100.0]), "None of these"));
    }

    #[test]
    fn a_scale_upside_down_is_told() {
        let upside = given(
            FT_LB,
            &[("wanted", &[50.0]), ("lows", &[150.0]), ("highs", &[20.0])],
        );
        assert_eq!(refused(&WHICH_WRENCH, &upside), Some("lows"));
        assert_eq!(Scale::new(f64::NAN, 1.0), Err(ScaleError::NoNumber));
        assert_eq!(Scale::new(5.0, 5.0), Err(ScaleError::UpsideDown));
    }

    proptest! {
        #[test]
        fn a_useful_wrench_is_never_passed_over(
            torque in 1.0..300.0_f64, highs in prop::collection::vec(5.0..400.0_f64, 1..6),
        ) {
            let scales: Vec<Scale> = highs.iter().map(|high| Scale::new(high / 20.0, *high).unwrap()).collect();
            let useful = scales.iter().any(|one| one.place(torque) == Place::Useful);
            let settable = scales.iter().any(|one| one.place(torque) != Place::OffTheScale);
            match best(torque, &scales) {
                Some(at) => {
                    prop_assert!(scales[at].place(torque) != Place::OffTheScale);
                    prop_assert!(!useful || scales[at].place(torque) == Place::Useful);
                }
                None => prop_assert!(!settable),
            }
        }
    }
}
