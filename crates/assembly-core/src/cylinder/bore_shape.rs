//! Taper and out of round of a bore, from three planes and two directions.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{same_count, span};
use crate::limits::about;
use crate::measure::Estimate;

const BORES: (f64, f64) = (0.02, 0.6);

static THRUST: Input = Input::size(
    "thrust",
    "across the crank, from top to bottom",
    BORES,
    "Half an inch below the deck, in the middle, an inch above the bottom; square to the crank.",
)
.taking(Takes::OneOrMore);
static AXIAL: Input = Input::size(
    "axial",
    "along the crank, from top to bottom",
    BORES,
    "In the same planes.",
)
.taking(Takes::OneOrMore);
static STATE: Input = Input::one_of(
    "state",
    "bore",
    &[
        Choice {
            id: "fresh",
            label: "freshly honed",
        },
        Choice {
            id: "worn",
            label: "worn, for new rings",
        },
    ],
    "What it has to be good for.",
);
static PLATE: Input = Input::one_of(
    "plate",
    "torque plate",
    &[
        Choice {
            id: "same",
            label: "as it was honed: on if it was on, off if it was off",
        },
        Choice {
            id: "differs",
            label: "not as it was honed",
        },
    ],
    "A bore honed under a plate is round only under it, with the same gasket and fasteners.",
);

/// The shape of a bore.
pub static BORE_SHAPE: Calculation = Calculation {
    id: "bore-shape",
    title: "Bore taper and out of round",
    purpose: "Whether a bore is straight and round enough for its rings.",
    inputs: &[THRUST, AXIAL, STATE, PLATE],
    outputs: &[
        Output::size("mean", "mean size"),
        Output::size("least-thrust", "smallest across the crank"),
        Output::gap("taper", "taper, worse direction"),
        Output::gap("out-of-round", "out of round, worst plane"),
    ],
    workings: &[
        "taper = largest − smallest reading down one direction, the worse of the two = {taper}",
        "out of round = |across − along| in one plane, the worst = {out-of-round}",
        "for the piston's clearance counts the smallest across the crank: {least-thrust}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Main caps torqued while measuring. Numbers taken with another plate, gasket or fastener than at the honing mean nothing.",
        "After any honing: wash with hot water and soap until a white rag stays white, then oil at once.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    same_count(given, &THRUST, &AXIAL)?;
    let (thrust, axial) = (given.several(THRUST.id), given.several(AXIAL.id));
    let tapers = [span(thrust), span(axial)];
    let taper = Estimate::greatest(&tapers).cloned().unwrap_or_default();
    let planes: Vec<Estimate> = thrust
        .iter()
        .zip(axial)
        .map(|(across, along)| across.apart_from(along))
        .collect();
    let out_of_round = Estimate::greatest(&planes).cloned().unwrap_or_default();
    let all: Vec<Estimate> = thrust.iter().chain(axial).cloned().collect();
    let mut answer = Answer::new();
    if given.choice(&PLATE)?.id == "differs" {
        answer = answer.finding(
            Gravity::Stop,
            "Measured in another condition than it was honed in: these numbers say nothing about the bore under its head. Fit the plate as at the honing, or take it off if it was off.",
        );
    }
    let worn = given.choice(&STATE)?.id == "worn";
    answer = if worn {
        answer.remarked(&taper, about("bore-taper", "worn"))
    } else {
        answer
            .remarked(&taper, about("bore-taper", ""))
            .remarked(&out_of_round, about("bore-out-of-round", ""))
    };
    if thrust.len() < 3 {
        answer = answer.finding(
            Gravity::Note,
            "Three planes tell more: wear is greatest just under the top ring's stop.",
        );
    }
    Ok(answer
        .with("taper", taper)
        .with("out-of-round", out_of_round)
        .with_optional("mean", Estimate::mean(&all))
        .with_optional("least-thrust", Estimate::least(thrust).cloned()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, refused, says, value, worked};

    fn bore(thrust: &[f64], axial: &[f64], state: f64, plate: f64) -> Given {
        let mut given = Given::new()
            .with("state", Estimate::exact(state))
            .with("plate", Estimate::exact(plate));
        for (id, values) in [("thrust", thrust), ("axial", axial)] {
            for value in values {
                given.push(id, Estimate::exact(value * INCH));
            }
        }
        given
    }

    #[test]
    fn taper_goes_down_a_direction_and_out_of_round_across_a_plane() {
        let given = bore(
            &[4.0310, 4.0304, 4.0302],
            &[4.0303, 4.0303, 4.0302],
            0.0,
            0.0,
        );
        let answer = worked(&BORE_SHAPE, &given);
        assert_eq!(value(&answer, "taper", THOU), 0.8);
        assert_eq!(value(&answer, "out-of-round", THOU), 0.7);
        assert_eq!(value(&answer, "least-thrust", INCH), 4.0302);
        assert!(says(&answer, "taper of a fresh bore reads"));
        let again = worked(
            &BORE_SHAPE,
            &bore(
                &[4.0310, 4.0304, 4.0302],
                &[4.0303, 4.0303, 4.0302],
                1.0,
                0.0,
            ),
        );
        assert!(
            again
                .findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );
    }

    // The trap: numbers taken without the plate that the bore was honed under.
    #[test]
    fn a_bore_measured_without_its_plate_says_nothing() {
        let answer = worked(&BORE_SHAPE, &bore(&[4.03], &[4.03], 0.0, 1.0));
        assert_eq!(answer.findings()[0].gravity, Gravity::Stop);
    }

    #[test]
    fn planes_need_both_directions() {
        let given = bore(&[4.03, 4.03], &[4.03], 0.0, 0.0);
        assert_eq!(refused(&BORE_SHAPE, &given), Some("axial"));
    }
}
