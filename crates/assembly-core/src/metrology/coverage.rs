//! Coverage factors: how many standard uncertainties to either side hold the
//! true value with a wanted probability.

use statrs::distribution::{ContinuousCDF, Normal, StudentsT};
use thiserror::Error;

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// Why there is no coverage factor.
#[derive(Clone, Copy, PartialEq, Debug, Error)]
pub enum CoverageError {
    /// A probability that nothing can be covered with.
    #[error("a coverage probability of {0} makes no sense: it lies between 0 and 1, commonly 0.95")]
    Probability(f64),
    /// Too few degrees of freedom.
    #[error("{0} degrees of freedom are too few: two readings give one, which is the least")]
    DegreesOfFreedom(f64),
}

/// Beyond this many degrees of freedom the distribution is so near to the
/// normal one that a series says the rest better than the general algorithm.
const MANY: f64 = 200.0;

/// The coverage factor of Student's distribution, two-sided (JCGM 100:2008, G.3).
/// Infinite degrees of freedom give the normal distribution's.
///
/// ```
/// use assembly_core::metrology::coverage::coverage_factor;
///
/// assert!((coverage_factor(0.95, f64::INFINITY).unwrap() - 1.96).abs() < 1e-4);
/// assert!((coverage_factor(0.95, 4.0).unwrap() - 2.776).abs() < 1e-3);
/// ```
///
/// # Errors
/// [`CoverageError`] for a probability not between 0 and 1, or fewer than one
/// degree of freedom.
pub fn coverage_factor(probability: f64, degrees_of_freedom: f64) -> Result<f64, CoverageError> {
    if !(probability > 0.0 && probability < 1.0) {
        return Err(CoverageError::Probability(probability));
    }
    let too_few = CoverageError::DegreesOfFreedom(degrees_of_freedom);
    if degrees_of_freedom.is_nan() || degrees_of_freedom < 1.0 {
        return Err(too_few);
    }
    let below = 0.5 + probability / 2.0;
    if degrees_of_freedom <= MANY {
        let student = StudentsT::new(0.0, 1.0, degrees_of_freedom).map_err(|_| too_few)?;
        return Ok(student.inverse_cdf(below));
    }
    Ok(from_normal(
        Normal::standard().inverse_cdf(below),
        degrees_of_freedom,
    ))
}

/// The expansion of Student's quantile about the normal one
/// (M. Abramowitz and I. Stegun, Handbook of Mathematical Functions, 26.7.5, from memory).
fn from_normal(z: f64, degrees_of_freedom: f64) -> f64 {
    let square = z * z;
    let terms = [
        z * (square + 1.0) / 4.0,
        z * ((5.0 * square + 16.0) * square + 3.0) / 96.0,
        z * (((3.0 * square + 19.0) * square + 17.0) * square - 15.0) / 384.0,
        z * ((((79.0 * square + 776.0) * square + 1482.0) * square - 1920.0) * square - 945.0)
            / 92_160.0,
    ];
    let one = 1.0 / degrees_of_freedom;
    terms.iter().rev().fold(0.0, |sum, term| (sum + term) * one) + z
}

static PROBABILITY: Input = Input::of(
    "probability",
    "wanted probability",
    (Kind::Ratio, UsualUnits::SHARE),
    (0.01, 0.999_999),
    "How sure you want to be that the true value lies inside; commonly 95 %.",
);
static DEGREES: Input = Input::of(
    "degrees-of-freedom",
    "degrees of freedom",
    (Kind::Count, UsualUnits::NONE),
    (1.0, 1e12),
    "One less than the number of readings that gave the spread. Leave it out when the uncertainty is taken as known.",
)
.optional();

/// The coverage factor by its description.
pub static COVERAGE_FACTOR: Calculation = Calculation {
    id: "coverage-factor",
    title: "Coverage factor",
    purpose: "By how much to multiply a standard uncertainty so that the true value lies inside with a wanted probability.",
    inputs: &[PROBABILITY, DEGREES],
    outputs: &[Output::ratio("factor", "coverage factor")],
    workings: &[
        "Student's t for {probability} to both sides together, {degrees-of-freedom} degrees of freedom: k = {factor}",
    ],
    provenance: Provenance::Standard("JCGM 100:2008, G.3"),
    cautions: &[],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let probability = given.one(&PROBABILITY)?.value();
    let degrees = given
        .optional(DEGREES.id)
        .map_or(f64::INFINITY, Estimate::value);
    let factor = coverage_factor(probability, degrees).map_err(|error| {
        let field = match error {
            CoverageError::Probability(_) => &PROBABILITY,
            CoverageError::DegreesOfFreedom(_) => &DEGREES,
        };
        CalculationError::not_possible(field, error.to_string())
    })?;
    Ok(Answer::new().with("factor", Estimate::exact(factor)))
}

#[cfg(test)]
mod tests {
    use super::*;

    // scipy 1.17.1, stats.t.ppf.
    #[test]
    fn factors_agree_with_an_outside_library() {
        let cases = [
            (0.95, 1.0, 12.706_204_736_174_694),
            (0.99, 2.0, 9.924_843_200_918_287),
            (0.9545, 10.5, 2.268_505_474_034_564_7),
            (0.6827, 50.0, 1.010_122_653_773_102),
        ];
        for (probability, degrees, wanted) in cases {
            let factor = coverage_factor(probability, degrees).unwrap();
            assert!(
                (factor - wanted).abs() < 1e-8 * wanted,
                "{degrees}: {factor}"
            );
        }
    }

    #[test]
    fn the_two_ways_meet_and_fall_to_the_normal_factor() {
        for probability in [0.5, 0.95, 0.99, 0.9999] {
            let below = coverage_factor(probability, MANY).unwrap();
            let above = coverage_factor(probability, MANY * (1.0 + 1e-9)).unwrap();
            assert!(
                (below - above).abs() < 1e-7,
                "{probability}: {below} {above}"
            );
            let factors: Vec<f64> = [1.0, 3.0, 10.0, 100.0, 199.0, 201.0, 1e4, 1e9, f64::INFINITY]
                .iter()
                .map(|degrees| coverage_factor(probability, *degrees).unwrap())
                .collect();
            assert!(factors.is_sorted_by(|a, b| a >= b), "{factors:?}");
        }
    }

    #[test]
    fn senseless_questions_are_refused() {
        for probability in [0.0, 1.0, -0.5, f64::NAN] {
            assert!(coverage_factor(probability, 5.0).is_err());
        }
        for degrees in [0.0, 0.5, -3.0, f64::NAN] {
            assert!(coverage_factor(0.95, degrees).is_err());
        }
    }
}
