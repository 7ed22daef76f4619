//! Liner stand-out: how far a replaceable liner stands proud of the deck, so
//! that the head gasket grips it, and how it stands against its neighbours.

use super::answering::{INCH, estimate, less, more};
use super::formula::{Formula, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::measure::Estimate;

/// The most that neighbours may differ (TM 10-4320-307-24 and others).
pub const MOST_STEP: f64 = 0.002 * INCH;
/// The least stand-out in common use. The maker's sheet wins. Common practice.
pub const COMMONLY_LEAST: f64 = 0.003 * INCH;
/// The greatest stand-out in common use. The maker's sheet wins. Common practice.
pub const COMMONLY_MOST: f64 = 0.006 * INCH;

/// Thickness of the liner's flange.
pub static FLANGE: Input = Input::size(
    "flange",
    "liner flange",
    (0.001, 0.06),
    "From the underside that seats to the top of the flange, with its fire ring if it has one, four places.",
);
/// Shims under the flange.
pub static SHIMS: Input = Input::gap(
    "shims",
    "shims under the flange",
    (0.0, 0.003),
    "All shims of this liner together, measured.",
)
.optional();
/// Depth of the seat below the deck.
pub static COUNTERBORE: Input = Input::size(
    "counterbore",
    "depth of its seat below the deck",
    (0.001, 0.06),
    "Four places around, with a spacer plate and its gasket clamped on if the engine has one.",
);
/// Stand-out of the neighbours.
pub static NEIGHBOURS: Input = Input::gap(
    "neighbour",
    "stand-out of a neighbour",
    (-0.002, 0.003),
    "The mean of four readings, for each liner beside this one.",
)
.taking(Takes::Any);
static WANTED: Input = Input::gap(
    "wanted-stand-out",
    "stand-out you want",
    (-0.001, 0.002),
    "From the maker's sheet, to see which shims give it.",
)
.optional();
static STAND_OUT: Output = Output::gap("stand-out", "liner stand-out");

/// Stand-out of a liner.
pub static LINER_STAND_OUT: Stack = Stack {
    id: "liner-stand-out",
    title: "Liner stand-out",
    terms: &[
        Term::needed(&FLANGE),
        Term::if_fitted(&SHIMS),
        Term::needed(&COUNTERBORE),
    ],
    result: &STAND_OUT,
    formula: Formula::Sum(&[1.0, 1.0, -1.0]),
    proof: "The liner clamped down without its seals, an indicator on a bridge at four places, then its neighbours.",
};

/// Liner stand-out as a quick check.
pub static LINER_STAND_OUT_CHECK: Calculation = Calculation {
    id: "liner-stand-out-from-parts",
    title: "Liner stand-out from flange, shims and seat",
    purpose: "How far the liner will stand out of the deck, which shims it needs, and how it stands beside its neighbours.",
    inputs: &[FLANGE, SHIMS, COUNTERBORE, NEIGHBOURS, WANTED],
    outputs: &[
        STAND_OUT,
        Output::gap("step", "greatest step to a neighbour"),
        Output::gap("shims-for-stand-out", "shims for the stand-out you want"),
    ],
    workings: &[
        "stand-out = flange + shims − seat depth = {flange} + {shims} − {counterbore} = {stand-out}",
        "step = the greatest difference to a neighbour = {step}",
    ],
    provenance: Provenance::Handbook("TM 10-4320-307-24 and other Army manuals, liner protrusion"),
    cautions: &[
        "One liner says nothing alone: the gasket needs the neighbours level, stepped one way and not zigzag.",
        "Too low leaks, too high cracks the flange or the deck. The maker's sheet wins.",
        "Never turn the crankshaft with liners unclamped.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let stand_out = estimate(&LINER_STAND_OUT, given)?;
    let steps: Vec<Estimate> = given
        .several(NEIGHBOURS.id)
        .iter()
        .map(|neighbour| stand_out.apart_from(neighbour))
        .collect();
    let step = Estimate::greatest(&steps).cloned();
    let mut answer = match &step {
        None => Answer::new().finding(
            Gravity::Caution,
            "Not judged without its neighbours: measure the liners beside it too.",
        ),
        Some(step) if more(step.value(), MOST_STEP) => Answer::new().finding(
            Gravity::Stop,
            "More than 0.002 in (0.05 mm) to a neighbour: the gasket's fire rings are pressed unevenly.",
        ),
        Some(_) => Answer::new(),
    };
    if stand_out.value() <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "The liner lies below the deck: the gasket cannot grip it.",
        );
    } else if less(stand_out.value(), COMMONLY_LEAST) || more(stand_out.value(), COMMONLY_MOST) {
        answer = answer.finding(
            Gravity::Caution,
            "Commonly it is 0.003 to 0.006 in (0.08 to 0.15 mm), and makers differ: their sheet wins.",
        );
    }
    answer
        .with(STAND_OUT.id, stand_out)
        .with_optional("step", step)
        .with_solved(
            "shims-for-stand-out",
            &LINER_STAND_OUT,
            given,
            &SHIMS,
            &WANTED,
        )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn liner() -> Given {
        Given::new()
            .with("flange", Estimate::exact(0.2800 * INCH))
            .with("shims", Estimate::exact(0.004 * INCH))
            .with("counterbore", Estimate::exact(0.2795 * INCH))
    }

    fn gravities(given: &Given) -> Vec<Gravity> {
        let answer = LINER_STAND_OUT_CHECK.answer(given).unwrap();
        answer.findings().iter().map(|one| one.gravity).collect()
    }

    // Worked by hand (common practice): 0.2800 + 0.004 − 0.2795 = 0.0045.
    #[test]
    fn the_worked_liner_comes_out() {
        let answer = LINER_STAND_OUT_CHECK.answer(&liner()).unwrap();
        assert!((answer.get("stand-out").unwrap().value() / INCH - 0.0045).abs() < 1e-9);
    }

    #[test]
    fn a_liner_is_not_judged_without_its_neighbours() {
        assert_eq!(gravities(&liner()), [Gravity::Caution]);
        let level = liner()
            .with("neighbour", Estimate::exact(0.0040 * INCH))
            .with("neighbour", Estimate::exact(0.0050 * INCH));
        assert!(gravities(&level).is_empty());
        // Right by itself, and still wrong beside this neighbour.
        let stepped = liner().with("neighbour", Estimate::exact(0.0070 * INCH));
        assert_eq!(gravities(&stepped), [Gravity::Stop]);
    }

    #[test]
    fn the_shims_for_a_stand_out_are_solved() {
        let given = liner().with("wanted-stand-out", Estimate::exact(0.0055 * INCH));
        let answer = LINER_STAND_OUT_CHECK.answer(&given).unwrap();
        let shims = answer.get("shims-for-stand-out").unwrap().value();
        assert!((shims / INCH - 0.005).abs() < 1e-9);
    }
}
