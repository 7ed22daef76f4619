//! Trying a tool out: one place read several times says what its feel is in
//! the hand that holds it.

use thiserror::Error;

use super::bench::Tool;
use super::instrument::{Spread, rounding_deviation};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// Fewer readings say next to nothing about their spread.
pub const FEWEST_READINGS: usize = 3;
/// As many as a trial commonly has.
pub const USUAL_READINGS: usize = 5;

/// What a trial of a tool showed. SI units.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SelfTest {
    /// The mean of the readings.
    pub mean: f64,
    /// The feel: one standard deviation of a single reading.
    pub repeat: f64,
    /// How well the feel is known: readings less one.
    pub degrees_of_freedom: f64,
    /// The largest less the smallest reading.
    pub spread: f64,
    /// Whether the readings were so alike that the last digit hides the feel.
    pub hidden_by_last_digit: bool,
}

/// Why a trial says nothing.
#[derive(Clone, Copy, PartialEq, Debug, Error)]
pub enum SelfTestError {
    /// Too few readings.
    #[error("{0} readings say too little about the feel: take five of the same place")]
    TooFew(usize),
    /// A reading is not a finite number.
    #[error("a reading is not a finite number: type it again")]
    NotFinite,
}

impl SelfTest {
    /// What these readings of one place show, read to this step (SI units).
    ///
    /// The feel is the standard deviation of the readings (JCGM 100:2008, 4.2.2).
    /// Readings that are alike to the last digit do not make it nothing: then it
    /// counts as much as the digit that hides it.
    ///
    /// ```
    /// use assembly_core::tool::SelfTest;
    /// let millimetre = 1e-3;
    /// let readings = [62.201, 62.203, 62.202, 62.200, 62.204].map(|mm| mm * millimetre);
    /// let trial = SelfTest::of(&readings, 0.001 * millimetre).unwrap();
    /// assert!((trial.repeat - 1.58e-6).abs() < 0.01e-6);
    /// assert_eq!(trial.degrees_of_freedom, 4.0);
    /// ```
    ///
    /// # Errors
    /// [`SelfTestError`] for fewer than three readings or one that is no number.
    pub fn of(readings: &[f64], step: f64) -> Result<Self, SelfTestError> {
        if readings.iter().any(|reading| !reading.is_finite()) || !step.is_finite() {
            return Err(SelfTestError::NotFinite);
        }
        let (Some(first), true) = (readings.first(), readings.len() >= FEWEST_READINGS) else {
            return Err(SelfTestError::TooFew(readings.len()));
        };
        let count = readings.len() as f64;
        // Differences from the first keep the digits that matter.
        let differences: Vec<f64> = readings.iter().map(|reading| reading - first).collect();
        let mean = differences.iter().sum::<f64>() / count;
        let squares: f64 = differences.iter().map(|one| (one - mean).powi(2)).sum();
        let scatter = (squares / (count - 1.0)).sqrt();
        let least = differences.iter().copied().fold(f64::INFINITY, f64::min);
        let greatest = differences
            .iter()
            .copied()
            .fold(f64::NEG_INFINITY, f64::max);
        let digit = rounding_deviation(step);
        Ok(Self {
            mean: first + mean,
            repeat: scatter.max(digit),
            degrees_of_freedom: count - 1.0,
            spread: greatest - least,
            hidden_by_last_digit: scatter < digit,
        })
    }
}

impl Tool {
    /// The same tool with the feel that a trial showed. A tool whose feel grows
    /// with the reading, such as a torque wrench, goes on straying by the same part
    /// of the reading as in the trial.
    #[must_use]
    pub fn tried_out(self, trial: &SelfTest) -> Self {
        let mean = trial.mean.abs();
        match self.instrument().repeat {
            Spread::OfReading(_) if mean > 0.0 => {
                self.with_repeat_of_reading(trial.repeat / mean, trial.degrees_of_freedom)
            }
            _ => self.with_repeat(trial.repeat, trial.degrees_of_freedom),
        }
    }
}

static READING: Input = Input::size(
    "reading",
    "reading",
    (-1.0, 5.0),
    "One place of one part, five times: take the tool off and set it anew each time, and do not look at the last number.",
)
.one_or_more();

static STEP: Input = Input::gap(
    "step",
    "smallest step that is read",
    (0.0, 0.01),
    "One graduation, or the part of one that you read: a tenth, a thou, a hundredth of a millimetre.",
)
.optional();

/// What a tool's feel is in the builder's own hand.
pub static TOOL_SELF_TEST: Calculation = Calculation {
    id: "tool-self-test",
    title: "Try a tool out",
    purpose: "How far one reading of your own tool strays in your own hand.",
    inputs: &[READING, STEP],
    outputs: &[
        Output::gap("feel", "give-or-take of one reading"),
        Output::size("mean", "mean"),
        Output::gap("spread", "largest less smallest"),
        Output::of(
            "degrees",
            "degrees of freedom",
            (Kind::Count, UsualUnits::NONE),
        ),
    ],
    workings: &[
        "mean of {reading} = {mean}",
        "spread = largest − smallest = {spread}",
        "give-or-take of one reading = root of (sum of squared differences from the mean ÷ (readings − 1)) = {feel}",
        "degrees of freedom = readings − 1 = {degrees}",
    ],
    provenance: Provenance::Standard("JCGM 100:2008, 4.2.2"),
    cautions: &[
        "This finds the feel, not the zero: five readings of a tool that is off are off alike. Prove the zero on a standard.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let readings: Vec<f64> = given
        .several(READING.id)
        .iter()
        .map(Estimate::value)
        .collect();
    let step = given.optional(STEP.id).map_or(0.0, Estimate::value);
    let trial = SelfTest::of(&readings, step)
        .map_err(|error| CalculationError::not_possible(&READING, error.to_string()))?;
    let mut answer = Answer::new()
        .with("feel", Estimate::exact(trial.repeat))
        .with("mean", Estimate::exact(trial.mean))
        .with("spread", Estimate::exact(trial.spread))
        .with("degrees", Estimate::exact(trial.degrees_of_freedom));
    if readings.len() < USUAL_READINGS {
        answer = answer.finding(
            Gravity::Note,
            "Fewer than five readings: the give-or-take itself is rough.",
        );
    }
    if trial.hidden_by_last_digit {
        answer = answer.finding(
            Gravity::Note,
            "The readings are alike to the last digit, so the digit counts as the feel.",
        );
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::measure::{Measured, Sources};
    use crate::tool::{Setting, instrument};
    use uom::si::f64::Length;

    // Worked by hand: mean 3, squared differences 4+1+0+1+4 = 10, over 4 is 2.5.
    #[test]
    fn the_feel_is_the_standard_deviation_of_the_readings() {
        let trial = SelfTest::of(&[1.0, 2.0, 3.0, 4.0, 5.0], 0.0).unwrap();
        assert!((trial.mean - 3.0).abs() < 1e-12);
        assert!((trial.repeat - 2.5_f64.sqrt()).abs() < 1e-12);
        assert!((trial.spread - 4.0).abs() < 1e-12);
        assert!(!trial.hidden_by_last_digit);
    }

    #[test]
    fn readings_alike_to_the_last_digit_do_not_make_a_perfect_tool() {
        let trial = SelfTest::of(&[0.0622; 5], 1e-6).unwrap();
        assert!((trial.repeat - 1e-6 / 12_f64.sqrt()).abs() < 1e-18);
        assert!(trial.hidden_by_last_digit);
    }

    #[test]
    fn a_trial_takes_the_place_of_common_practice() {
        let trial = SelfTest::of(&[0.0, 4e-6, 0.0, 4e-6, 2e-6], 1e-6).unwrap();
        let tool = Tool::new(
            "m",
            "micrometer",
            instrument("outside-micrometer-tenths").unwrap(),
        )
        .with_shared_zero(0.0)
        .tried_out(&trial);
        let mut sources = Sources::new();
        let reading: Measured<Length> =
            tool.reading(&mut sources, &Setting::on_standard("a"), 0.05, 0.0);
        assert!((reading.estimate().deviation() - 2e-6).abs() < 1e-12);
        assert!((reading.estimate().degrees_of_freedom(&sources) - 4.0).abs() < 1e-9);
    }

    // A wrench that strays by 1 in 100 lb·ft strays by half of it at 50.
    #[test]
    fn a_feel_that_grows_with_the_reading_goes_on_growing() {
        let trial = SelfTest::of(&[99.0, 101.0, 100.0, 99.0, 101.0], 0.0).unwrap();
        let tool = Tool::new("w", "wrench", instrument("click-wrench-checked").unwrap());
        let tool = tool.tried_out(&trial);
        assert!((tool.repeat_at(50.0) - trial.repeat / 2.0).abs() < 1e-12);
        assert!((tool.degrees_of_freedom() - 4.0).abs() < 1e-12);
    }

    #[test]
    fn too_few_readings_and_no_numbers_are_refused() {
        assert_eq!(SelfTest::of(&[], 0.0), Err(SelfTestError::TooFew(0)));
        assert_eq!(
            SelfTest::of(&[1.0, 1.1], 0.0),
            Err(SelfTestError::TooFew(2))
        );
        assert_eq!(
            SelfTest::of(&[1.0, f64::NAN, 1.0], 0.0),
            Err(SelfTestError::NotFinite)
        );
        let given = Given::new().with("reading", Estimate::exact(0.05));
        let error = TOOL_SELF_TEST.answer(&given).unwrap_err();
        assert!(error.to_string().contains("take five"), "{error}");
    }

    proptest! {
        #[test]
        fn the_feel_does_not_depend_on_the_size_of_the_part(
            readings in prop::collection::vec(-1e-5..1e-5_f64, 3..9),
            size in 0.0..1.0_f64,
        ) {
            let moved: Vec<f64> = readings.iter().map(|reading| reading + size).collect();
            let (here, there) = (SelfTest::of(&readings, 1e-7).unwrap(), SelfTest::of(&moved, 1e-7).unwrap());
            prop_assert!((here.repeat - there.repeat).abs() < 1e-14);
            prop_assert!(here.repeat <= here.spread.max(1e-7));
        }
    }
}
