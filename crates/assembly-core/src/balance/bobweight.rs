//! The weight that stands for rods and pistons while a crank is balanced.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

const MASS: (Kind, UsualUnits) = (Kind::Mass, UsualUnits::of("g", "g"));
const SHARE: (Kind, UsualUnits) = (Kind::Ratio, UsualUnits::SHARE);
const MASSES: (f64, f64) = (0.001, 100.0);

static ROTATING: Input = Input::of(
    "rotating",
    "turning part of each rod",
    MASS,
    MASSES,
    "Big end on the scale, small end held level, with bolts and shells: mean of the rods, each turned round and weighed again.",
)
.one_or_more();
static RECIPROCATING: Input = Input::of(
    "reciprocating",
    "going to and fro on each rod",
    MASS,
    MASSES,
    "Piston, pin, locks, rings, and the small end of the rod.",
)
.one_or_more();
static RODS: Input = Input::of(
    "rods",
    "rods on one crankpin",
    (Kind::Count, UsualUnits::NONE),
    (1.0, 3.0),
    "One of an inline engine, two of a vee with shared pins.",
);
static FRACTION: Input = Input::of(
    "fraction",
    "share of the to and fro",
    SHARE,
    (0.0, 1.0),
    "From the engine's sheet. A 90° vee eight with a cross crank takes a half of both; an inline six or four takes none on its pins.",
);
static OIL: Input = Input::of(
    "oil",
    "oil in the pin",
    MASS,
    (0.0, 1.0),
    "What the balancer allows for it; leave it out for none.",
)
.optional();

/// The share of the going to and fro that a 90° vee with two rods on a pin
/// turns into a steady turning weight: the two cosines at a right angle add to
/// one weight that goes round.
pub const RIGHT_ANGLED_VEE: f64 = 0.5;

/// Bobweight.
pub static BOBWEIGHT: Calculation = Calculation {
    id: "bobweight",
    title: "Bobweight of a crankpin",
    purpose: "The weight that a balancer bolts to a crankpin in place of rods and pistons.",
    inputs: &[ROTATING, RECIPROCATING, RODS, FRACTION, OIL],
    outputs: &[
        Output::of("bobweight", "bobweight", MASS),
        Output::of("rotating-spread", "rods' turning ends differ by", MASS),
        Output::of(
            "reciprocating-spread",
            "pistons with small ends differ by",
            MASS,
        ),
    ],
    workings: &[
        "bobweight = rods × (mean turning + share × mean to and fro) + oil = {rods} × ({rotating} + {fraction} × {reciprocating}) + {oil} = {bobweight}",
        "spreads: turning {rotating-spread}, to and fro {reciprocating-spread}",
    ],
    provenance: Provenance::Derivation(
        "turning weight whole, to and fro by the share the layout asks for",
    ),
    cautions: &[
        "Weigh the very parts that go in, rings and shells too. A part that is swapped later makes the balance void.",
        "A crank with weights outside, on damper and flywheel, is balanced with those on.",
    ],
    run,
};

fn mean_and_spread(
    given: &Given,
    input: &'static Input,
) -> Result<(Estimate, Estimate), CalculationError> {
    let mean = crate::fit::readings::mean_of(given, input)?;
    Ok((mean, crate::fit::readings::span(given.several(input.id))))
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (rotating, rotating_spread) = mean_and_spread(given, &ROTATING)?;
    let (reciprocating, reciprocating_spread) = mean_and_spread(given, &RECIPROCATING)?;
    let rods = given.one(&RODS)?;
    if rods.value().fract() != 0.0 {
        return Err(CalculationError::not_possible(
            &RODS,
            "rods come whole: type 1 or 2",
        ));
    }
    let none = Estimate::default();
    let one = &rotating + given.one(&FRACTION)? * &reciprocating;
    let bobweight = rods * one + given.optional(OIL.id).unwrap_or(&none);
    let mut answer = Answer::new();
    // The parts are matched to a gram or two first. Common practice.
    let most = 0.002;
    if rotating_spread.value() > most || reciprocating_spread.value() > most {
        answer = answer.finding(
            Gravity::Caution,
            "The parts differ by more than two grams: match them first, the crank can stand for one weight only.",
        );
    }
    Ok(answer
        .with("bobweight", bobweight)
        .with("rotating-spread", rotating_spread)
        .with("reciprocating-spread", reciprocating_spread))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    fn vee(rods: f64, other: f64) -> Given {
        let mut given = Given::new();
        for (id, grams) in [
            ("rotating", 480.0),
            ("reciprocating", 520.0),
            ("reciprocating", other),
            ("oil", 4.0),
        ] {
            given.push(id, Estimate::exact(grams * 1e-3));
        }
        given
            .with("rods", Estimate::exact(rods))
            .with("fraction", Estimate::exact(RIGHT_ANGLED_VEE))
    }

    // Worked by hand: 2 × 480 + 2 × 0.5 × 520 + 4 = 1484 g.
    #[test]
    fn a_vee_eight_hangs_all_that_turns_and_half_of_the_rest() {
        let answer = worked(&BOBWEIGHT, &vee(2.0, 520.0));
        assert!((value(&answer, "bobweight", 1e-3) - 1484.0).abs() < 1e-6);
        assert!(answer.findings().is_empty());
        assert!(says(
            &worked(&BOBWEIGHT, &vee(2.0, 525.0)),
            "match them first"
        ));
        assert_eq!(refused(&BOBWEIGHT, &vee(1.5, 520.0)), Some("rods"));
    }
}
