//! Fit of a liner in its block: pressed when dry, free when wet.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    Takes, length_text,
};
use crate::fit::readings::{Fit, span};
use crate::limits::about;

const SIZES: (f64, f64) = (0.02, 0.6);

static BLOCK: Input = Input::size(
    "block",
    "bore in the block",
    SIZES,
    "Where the liner is held: along its length for a dry liner, the lower bore for a wet one; two directions.",
)
.taking(Takes::OneOrMore);
static LINER: Input = Input::size(
    "liner",
    "outside of the liner",
    SIZES,
    "In the same places and directions.",
)
.taking(Takes::OneOrMore);
static KIND: Input = Input::one_of(
    "kind",
    "liner",
    &[
        Choice {
            id: "dry",
            label: "dry, pressed in",
        },
        Choice {
            id: "wet",
            label: "wet, held at its flange",
        },
    ],
    "A wet liner has coolant against it.",
);

/// The most a wet liner may be out of round in its bore (army manuals on wet liners).
const WET_OUT_OF_ROUND: f64 = 0.003 * 0.0254;

/// Liner in its block.
pub static LINER_FIT: Calculation = Calculation {
    id: "liner-fit",
    title: "Liner in its block",
    purpose: "How tightly a dry liner is pressed, or how free a wet one is in its lower bore.",
    inputs: &[BLOCK, LINER, KIND],
    outputs: &[
        Output::gap("least", "least clearance, below nothing an interference"),
        Output::gap(
            "greatest",
            "greatest clearance, below nothing an interference",
        ),
        Output::gap("liner-out-of-round", "liner out of round"),
    ],
    workings: &[
        "least = smallest bore − largest liner = {least}",
        "greatest = largest bore − smallest liner = {greatest}",
        "liner out of round = {liner-out-of-round}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A dry liner is bored and honed after pressing: pressing closes it.",
        "Under a wet liner the seals come first: a sheared seal puts coolant in the oil. Never turn the crank with liners not clamped.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let fit = Fit::of(given, &BLOCK, &LINER)?;
    let out_of_round = span(given.several(LINER.id));
    let dry = given.choice(&KIND)?.id == "dry";
    let mut answer = Answer::new();
    if dry {
        let loosest = -&fit.greatest;
        if loosest.value() <= 0.0 {
            answer = answer.finding(
                Gravity::Stop,
                "At its loosest the liner is not held: it fidgets, leaks heat and cracks.",
            );
        } else {
            answer = answer.remarked(&-&fit.least, about("liner-interference", ""));
        }
    } else {
        answer = answer.remarked(&fit.greatest, about("liner-lower-fit", ""));
        if fit.least.value() < 0.0 {
            answer = answer.finding(
                Gravity::Caution,
                "The liner touches its lower bore: allowed only while it stays round. Measure its bore when it is in.",
            );
        }
        if out_of_round.value() > WET_OUT_OF_ROUND {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "The liner is out of round by {}, more than the {} that manuals allow.",
                    length_text(out_of_round.value()),
                    length_text(WET_OUT_OF_ROUND)
                ),
            );
        }
    }
    Ok(answer
        .with("least", fit.least)
        .with("greatest", fit.greatest)
        .with("liner-out-of-round", out_of_round))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, says, value, worked};
    use crate::measure::Estimate;

    fn liner(block: &[f64], liner: &[f64], kind: f64) -> Answer {
        let mut given = Given::new().with("kind", Estimate::exact(kind));
        for (id, values) in [("block", block), ("liner", liner)] {
            for value in values {
                given.push(id, Estimate::exact(value * INCH));
            }
        }
        worked(&LINER_FIT, &given)
    }

    #[test]
    fn a_dry_liner_must_be_held_and_a_wet_one_may_be_free() {
        let dry = liner(&[4.0000, 4.0004], &[4.0020], 0.0);
        assert_eq!(value(&dry, "greatest", THOU), -1.6);
        assert!(says(&dry, "disputed"));
        assert_eq!(
            liner(&[4.0000], &[3.9990], 0.0).findings()[0].gravity,
            Gravity::Stop
        );
        let wet = liner(&[4.0000], &[3.9960], 1.0);
        assert_eq!(value(&wet, "least", THOU), 4.0);
        assert!(!says(&wet, "touches"));
        assert!(says(&liner(&[4.0000], &[3.9960, 4.0001], 1.0), "touches"));
    }
}
