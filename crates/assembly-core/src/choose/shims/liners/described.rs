//! Liner shims by their description.

use super::choice::shim_liners;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::measure::{Estimate, Window};

static STAND_OUTS: Input = Input::gap(
    "stand-outs",
    "stand-out of each liner without a shim",
    (-0.003, 0.003),
    "Liner clamped, mean of four places at the flange, in the order along the block; below nothing when it sits under the deck.",
)
.taking(Takes::OneOrMore);
static SHIMS: Input = Input::gap(
    "shims",
    "shims on the bench",
    (1e-5, 0.003),
    "The thickness of every single piece, measured.",
)
.taking(Takes::Any);
static LOW: Input = Input::gap(
    "low",
    "least stand-out",
    (-0.001, 0.003),
    "From the maker's sheet.",
);
static HIGH: Input = Input::gap(
    "high",
    "greatest stand-out",
    (-0.001, 0.003),
    "From the maker's sheet.",
);
static STEP: Input = Input::gap(
    "step",
    "greatest step between neighbours",
    (0.0, 0.001),
    "From the maker's sheet.",
);

/// Liner shims.
pub static LINER_SHIMS: Calculation = Calculation {
    id: "liner-shims",
    title: "Shims under wet liners",
    purpose: "Which shim goes under which liner, so that all stand out right and neighbours are nearly level.",
    inputs: &[STAND_OUTS, SHIMS, LOW, HIGH, STEP],
    outputs: &[
        Output::gap("least", "least stand-out"),
        Output::gap("greatest", "greatest stand-out"),
        Output::gap("greatest-step", "greatest step between neighbours"),
    ],
    workings: &[
        "stand-out = stand-out without a shim + shim",
        "every choice with all liners from {low} to {high} and steps up to {step} is weighed: first the worst distance from the middle, then the greatest step",
        "stand-outs from {least} to {greatest}, greatest step {greatest-step}",
    ],
    provenance: Provenance::Derivation("exact search"),
    cautions: &[
        "Measure every liner again clamped over its shim. Low ones leak at the gasket, high ones crack the flange or the deck.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let liners = given.several(STAND_OUTS.id);
    let shims = given.several(SHIMS.id);
    let (low, high) = (given.one(&LOW)?.value(), given.one(&HIGH)?.value());
    Window::new(Some(low), Some(high))
        .map_err(|error| CalculationError::not_possible(&LOW, error.to_string()))?;
    let values =
        |estimates: &[Estimate]| -> Vec<f64> { estimates.iter().map(Estimate::value).collect() };
    let step = given.one(&STEP)?.value();
    let chosen = shim_liners(&values(liners), &values(shims), (low, high), step)
        .map_err(|error| CalculationError::not_possible(&SHIMS, error.to_string()))?;
    let mut answer = Answer::new();
    let mut stand_outs: Vec<Estimate> = Vec::new();
    for ((liner, under), number) in liners.iter().zip(&chosen.shims).zip(1..) {
        let shim = under.and_then(|piece| shims.get(piece));
        let stand_out = shim.map_or_else(|| liner.clone(), |shim| liner + shim);
        let with = shim.map_or_else(
            || "no shim".to_owned(),
            |shim| format!("the shim of {}", length_text(shim.value())),
        );
        answer = answer.finding(
            Gravity::Note,
            format!(
                "Liner {number}: {with}, stands out {}",
                length_text(stand_out.value())
            ),
        );
        stand_outs.push(stand_out);
    }
    let steps: Vec<Estimate> = stand_outs
        .iter()
        .zip(stand_outs.iter().skip(1))
        .map(|(one, next)| one.apart_from(next))
        .collect();
    Ok(answer
        .with_optional("least", Estimate::least(&stand_outs).cloned())
        .with_optional("greatest", Estimate::greatest(&stand_outs).cloned())
        .with_optional("greatest-step", Estimate::greatest(&steps).cloned()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_liner_is_told_its_shim() {
        let mut given = Given::new()
            .with("low", Estimate::exact(80e-6))
            .with("high", Estimate::exact(120e-6))
            .with("step", Estimate::exact(20e-6));
        for stand_out in [50e-6, 100e-6, 60e-6] {
            given.push("stand-outs", Estimate::exact(stand_out));
        }
        for shim in [50e-6, 40e-6] {
            given.push("shims", Estimate::exact(shim));
        }
        let answer = LINER_SHIMS.answer(&given).unwrap();
        assert!(answer.get("greatest-step").unwrap().value() < 1e-12);
        assert!(answer.findings()[0].text.contains("(0.050 mm)"));
        assert!(answer.findings()[1].text.contains("no shim"));
    }

    #[test]
    fn a_window_upside_down_is_told() {
        let given = Given::new()
            .with("stand-outs", Estimate::exact(1e-4))
            .with("low", Estimate::exact(2e-4))
            .with("high", Estimate::exact(1e-4))
            .with("step", Estimate::exact(1e-5));
        assert_eq!(LINER_SHIMS.answer(&given).unwrap_err().field(), Some("low"));
    }
}
