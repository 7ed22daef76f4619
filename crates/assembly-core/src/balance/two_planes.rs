//! An unbalance put right in two planes.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

const MASS: (Kind, UsualUnits) = (Kind::Mass, UsualUnits::of("g", "g"));
const PLACES: (f64, f64) = (-3.0, 3.0);

static WEIGHT: Input = Input::of(
    "weight",
    "weight that is off",
    MASS,
    (1e-6, 10.0),
    "At the radius where it is put right.",
);
static AT: Input = Input::size(
    "at",
    "where it sits along the crank",
    PLACES,
    "From any one end.",
);
static PLANE_A: Input = Input::size("plane-a", "first plane", PLACES, "From the same end.");
static PLANE_B: Input = Input::size("plane-b", "second plane", PLACES, "From the same end.");

/// Two planes.
pub static TWO_PLANES: Calculation = Calculation {
    id: "two-planes",
    title: "Unbalance put right in two planes",
    purpose: "What to take out at two cheeks for a weight that is off between or beside them.",
    inputs: &[WEIGHT, AT, PLANE_A, PLANE_B],
    outputs: &[
        Output::of("at-a", "opposite it in the first plane", MASS),
        Output::of("at-b", "opposite it in the second plane", MASS),
    ],
    workings: &[
        "second plane = weight × (at − a) ÷ (b − a) = {weight} × ({at} − {plane-a}) ÷ ({plane-b} − {plane-a}) = {at-b}",
        "first plane = weight − second = {at-a}; below nothing on the weight's own side",
    ],
    provenance: Provenance::Derivation("forces and moments in balance"),
    cautions: &["Drill where the crank's maker does, clear of oil ways, and not deeper."],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (weight, at) = (given.one(&WEIGHT)?, given.one(&AT)?);
    let (a, b) = (given.one(&PLANE_A)?, given.one(&PLANE_B)?);
    if (b.value() - a.value()).abs() < 1e-4 {
        return Err(CalculationError::not_possible(
            &PLANE_B,
            "the two planes are one: they have to lie apart along the crank",
        ));
    }
    let at_b = weight * ((at - a) / (b - a));
    Ok(Answer::new()
        .with("at-a", weight - &at_b)
        .with("at-b", at_b))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, value, worked};
    use crate::measure::Estimate;

    fn off(at: f64, a: f64, b: f64) -> Given {
        [
            ("weight", 0.010),
            ("at", at),
            ("plane-a", a),
            ("plane-b", b),
        ]
        .into_iter()
        .fold(Given::new(), |given, (id, value)| {
            given.with(id, Estimate::exact(value))
        })
    }

    // Worked by hand: a quarter of the way from the first plane, three quarters there.
    #[test]
    fn the_nearer_plane_takes_more() {
        let answer = worked(&TWO_PLANES, &off(0.1, 0.0, 0.4));
        assert!((value(&answer, "at-a", 1e-3) - 7.5).abs() < 1e-6);
        assert!((value(&answer, "at-b", 1e-3) - 2.5).abs() < 1e-6);
        let beside = worked(&TWO_PLANES, &off(0.5, 0.0, 0.4));
        assert!(value(&beside, "at-a", 1e-3) < 0.0);
        assert_eq!(refused(&TWO_PLANES, &off(0.1, 0.2, 0.2)), Some("plane-b"));
    }
}
