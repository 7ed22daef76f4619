//! Packing under a distributor housing, to the end float of its gear.

use super::valve_spring::{stack_of, sum};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};

static WASHER: Input = Input::gap(
    "washer",
    "washer under the gear",
    (1e-4, 0.005),
    "Measure the washer that you lay under the gear for this check.",
);
static GAP: Input = Input::gap(
    "gap",
    "gap at the flange",
    (0.0, 0.01),
    "Housing in place without packing and pressed home: feel the gap under its flange, on both sides.",
);
static TARGET: Input = Input::gap(
    "target",
    "wanted end float",
    (0.0, 0.002),
    "From the maker's sheet; types differ widely.",
);
static PACKINGS: Input = Input::gap(
    "packings",
    "packing thicknesses to be had",
    (1e-5, 0.005),
    "As they are once clamped; a thin paper gasket counts.",
)
.taking(Takes::OneOrMore);

/// Packing by the washer method.
pub static DISTRIBUTOR_PACKING: Calculation = Calculation {
    id: "distributor-packing",
    title: "Packing under the distributor housing",
    purpose: "Which packing gives the distributor gear its end float, by the washer method.",
    inputs: &[WASHER, GAP, TARGET, PACKINGS],
    outputs: &[
        Output::gap(
            "float",
            "end float without packing, below nothing when it would bind",
        ),
        Output::gap("needed", "packing needed"),
        Output::gap("packing", "packing chosen"),
        Output::gap("float-then", "end float then"),
    ],
    workings: &[
        "float = washer − gap = {washer} − {gap} = {float}",
        "needed = wanted float − float = {target} − {float} = {needed}",
        "nearest stack of at most three: {packing}; float then = {float} + {packing} = {float-then}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Never leave it without float: gear and thrust face burn. Prove it with an indicator after clamping.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let float = given.one(&WASHER)? - given.one(&GAP)?;
    let needed = given.one(&TARGET)? - &float;
    let stack = stack_of(given.several(PACKINGS.id), &needed, 3)
        .map_err(|reason| CalculationError::not_possible(&PACKINGS, reason))?;
    let packing = sum(&stack);
    let float_then = &float + &packing;
    let mut answer = Answer::new();
    if float_then.value() <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "Even so the gear has no float and would bind: find thicker packing.",
        );
    } else if needed.value() < 0.0 {
        answer = answer.finding(
            Gravity::Caution,
            "There is more float than wanted without any packing: a shim belongs under the gear instead.",
        );
    }
    let words: Vec<String> = stack.iter().map(|one| length_text(one.value())).collect();
    if !words.is_empty() {
        answer = answer.finding(Gravity::Note, format!("Packing: {}.", words.join(", ")));
    }
    Ok(answer
        .with("float", float)
        .with("needed", needed)
        .with("packing", packing)
        .with("float-then", float_then))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;

    const INCH: f64 = 0.0254;

    fn answer(gap: f64, packings: &[f64]) -> Answer {
        let mut given = Given::new()
            .with("washer", Estimate::exact(0.062 * INCH))
            .with("gap", Estimate::exact(gap * INCH))
            .with("target", Estimate::exact(0.005 * INCH));
        for packing in packings {
            given.push("packings", Estimate::exact(packing * INCH));
        }
        DISTRIBUTOR_PACKING.answer(&given).unwrap()
    }

    // Common practice: washer 0.062, gap 0.060 floats 0.002 and needs 0.003 for
    // 0.005; gap 0.065 binds by 0.003 and needs 0.008.
    #[test]
    fn the_worked_washers_come_out() {
        let thou = |answer: &Answer, id: &str| {
            (answer.get(id).unwrap().value() / INCH * 1e6).round() / 1e3
        };
        let loose = answer(0.060, &[0.003, 0.005]);
        assert_eq!((thou(&loose, "float"), thou(&loose, "needed")), (2.0, 3.0));
        assert_eq!(thou(&loose, "float-then"), 5.0);
        let tight = answer(0.065, &[0.003, 0.005]);
        assert_eq!((thou(&tight, "float"), thou(&tight, "needed")), (-3.0, 8.0));
        assert_eq!(thou(&tight, "packing"), 8.0);
        assert_eq!(thou(&tight, "float-then"), 5.0);
    }

    #[test]
    fn a_gear_that_would_bind_stops_the_builder() {
        let bound = answer(0.072, &[0.001]);
        assert_eq!(bound.findings()[0].gravity, Gravity::Stop);
    }
}
