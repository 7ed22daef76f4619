//! What one torque really gives: the preloads of several bolts, their mean,
//! their scatter and the nut factor that follows.

use super::common::{DIAMETER, FORCE, FORCES, SHARE, TORQUE, TORQUES, per_cent};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;

static TORQUE_IN: Input = Input::of(
    "torque",
    "torque of all of them",
    TORQUE,
    TORQUES,
    "The same for each bolt, same wrench, same lubricant.",
);
static PRELOADS: Input = Input::of(
    "preloads",
    "preload of each bolt",
    FORCE,
    FORCES,
    "From the measured stretch of each bolt, see preload from stretch.",
)
.one_or_more();

/// Preload trial.
pub static PRELOAD_TRIAL: Calculation = Calculation {
    id: "preload-trial",
    title: "Scatter of preload at one torque",
    purpose: "How far the preloads of bolts of one torque lie apart, and which nut factor they show.",
    inputs: &[TORQUE_IN, DIAMETER, PRELOADS],
    outputs: &[
        Output::of("mean", "mean preload", FORCE),
        Output::of("scatter", "scatter, one standard deviation", FORCE),
        Output::of("relative", "scatter as a share of the mean", SHARE),
        Output::ratio("nut-factor", "nut factor that they show"),
    ],
    workings: &[
        "mean of {preloads} = {mean}, standard deviation {scatter}, {relative} of it",
        "nut factor = torque ÷ (diameter × mean) = {torque} ÷ ({diameter} × {mean}) = {nut-factor}",
    ],
    provenance: Provenance::Derivation("mean and sample standard deviation; T = K d F"),
    cautions: &[
        "Use bolts that may be used up: a trial on stretch bolts uses them.",
        "A bolt that breaks lets go at once: glasses on, nobody in line with it.",
    ],
    run,
};

/// The sample standard deviation of some values; `None` of fewer than two.
fn deviation(values: &[f64]) -> Option<f64> {
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    let squares: f64 = values.iter().map(|one| (one - mean) * (one - mean)).sum();
    (values.len() > 1).then(|| libm::sqrt(squares / (count - 1.0)))
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let preloads = given.several(PRELOADS.id);
    let mean = Estimate::mean(preloads).map_or_else(|| given.one(&PRELOADS).cloned(), Ok)?;
    let plain: Vec<f64> = preloads.iter().map(Estimate::value).collect();
    let scatter = deviation(&plain).map(Estimate::exact);
    let relative = scatter.as_ref().map(|one| one / &mean);
    let answer = match &relative {
        Some(relative) => Answer::new().finding(
            Gravity::Note,
            format!(
                "Two bolts in three lie within {} of the mean.",
                per_cent(relative.value())
            ),
        ),
        None => Answer::new().finding(Gravity::Caution, "One bolt shows no scatter: try several."),
    };
    let factor = given.one(&TORQUE_IN)? / (given.one(&DIAMETER)? * &mean);
    Ok(answer
        .with("nut-factor", factor)
        .with_optional("scatter", scatter)
        .with_optional("relative", relative)
        .with("mean", mean))
}

/// Twenty bolts without lubricant at 90 N·m, kilonewtons: J. C. Blake and
/// H. J. Kurtz, The uncertainties of measuring fastener preload, Machine Design
/// 37 (1965), as printed in mechanical engineering handbooks; from memory, and
/// the printed mean and deviation come out of them.
pub const UNLUBRICATED_1965: [f64; 20] = [
    23.6, 27.6, 28.0, 29.4, 30.3, 30.7, 32.9, 33.8, 33.8, 33.8, 34.7, 35.6, 35.6, 37.4, 37.8, 37.8,
    39.2, 40.0, 40.5, 42.7,
];
/// Ten lubricated bolts at 90 N·m, of the same paper.
pub const LUBRICATED_1965: [f64; 10] = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{says, value, worked};

    fn trial(preloads: &[f64]) -> Answer {
        let mut given = si(&[("torque", 90.0), ("diameter", 0.0127)]);
        for preload in preloads {
            given.push("preloads", Estimate::exact(preload * 1e3));
        }
        worked(&PRELOAD_TRIAL, &given)
    }

    // The paper prints 34.3 and 4.91 kN, lubricated 34.18 and 2.88 kN.
    #[test]
    fn the_trials_of_1965_have_their_printed_mean_and_scatter() {
        let dry = trial(&UNLUBRICATED_1965);
        assert!((value(&dry, "mean", 1e3) - 34.3).abs() < 0.05);
        assert!((value(&dry, "scatter", 1e3) - 4.91).abs() < 0.005);
        let oiled = trial(&LUBRICATED_1965);
        assert!((value(&oiled, "mean", 1e3) - 34.18).abs() < 0.005);
        assert!((value(&oiled, "scatter", 1e3) - 2.88).abs() < 0.005);
        assert!(says(&oiled, "8 %"));
    }

    #[test]
    fn one_bolt_shows_no_scatter() {
        let one = trial(&[34.0]);
        assert!(one.get("scatter").is_none() && says(&one, "try several"));
    }
}
