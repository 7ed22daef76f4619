//! Side clearance of rods on their pin: of one, or of two together.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::least_of;
use crate::limits::about;
use crate::measure::Estimate;

static PIN: Input = Input::size(
    "pin-width",
    "width of the crank pin",
    (0.005, 0.3),
    "Between the cheeks, with an inside gauge, at the least place.",
)
.taking(Takes::OneOrMore);
static RODS: Input = Input::size(
    "rod-widths",
    "widths of the rods on it",
    (0.005, 0.2),
    "Big end across its faces; one rod of an inline engine, both rods of a shared pin.",
)
.taking(Takes::OneOrMore);
static METAL: Input = Input::one_of(
    "rods",
    "rods",
    &[
        Choice {
            id: "steel",
            label: "steel",
        },
        Choice {
            id: "aluminium",
            label: "aluminium",
        },
    ],
    "Aluminium rods grow more and need more room.",
);

/// The most rods that share a pin.
const MOST_RODS: usize = 2;

/// Side clearance.
pub static ROD_SIDE_CLEARANCE: Calculation = Calculation {
    id: "rod-side-clearance",
    title: "Rod side clearance",
    purpose: "How much room the rod, or the pair of rods on one pin, has sideways.",
    inputs: &[PIN, RODS, METAL],
    outputs: &[
        Output::gap("clearance", "side clearance of all rods on the pin"),
        Output::gap("each", "share of each rod"),
    ],
    workings: &[
        "clearance = width of the pin − widths of the rods = {pin-width} − {rod-widths} = {clearance}",
        "shared by the rods on it: {each} each",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Side clearance says nothing about the fit of the bearing.",
        "On a shared pin the chamfered side of each big end faces its cheek, never the other rod.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let rods = given.several(RODS.id);
    if rods.len() > MOST_RODS {
        return Err(CalculationError::not_possible(
            &RODS,
            format!(
                "{} rods on one pin: give one width for a pin of its own, two for a shared pin",
                rods.len()
            ),
        ));
    }
    let together = rods
        .iter()
        .fold(Estimate::exact(0.0), |sum, width| sum + width);
    let clearance = least_of(given, &PIN)? - together;
    let each = &clearance / rods.len().max(1) as f64;
    let mut answer = Answer::new();
    if clearance.value() <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "The rods are wider than their pin: they bind. Look whether they belong here, and for burrs.",
        );
    } else if rods.len() == MOST_RODS {
        let case = match given.choice(&METAL)?.id {
            "aluminium" => "aluminium, two per pin",
            _ => "steel, two per pin",
        };
        answer = answer.remarked(&clearance, about("rod-side-clearance", case));
    } else {
        answer = answer.finding(
            Gravity::Note,
            "The common figures are for a pair on one pin. For a single rod take the maker's sheet.",
        );
    }
    Ok(answer.with("clearance", clearance).with("each", each))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, refused, says, value, worked};

    fn rods(pin: f64, widths: &[f64]) -> Given {
        let mut given = Given::new()
            .with("pin-width", Estimate::exact(pin * INCH))
            .with("rods", Estimate::exact(0.0));
        for width in widths {
            given.push("rod-widths", Estimate::exact(width * INCH));
        }
        given
    }

    // The trap: on a shared pin the clearance is of the pair, not of each rod.
    #[test]
    fn a_shared_pin_is_judged_by_the_pair_and_a_single_one_is_not() {
        let pair = worked(&ROD_SIDE_CLEARANCE, &rods(1.900, &[0.940, 0.945]));
        assert_eq!(value(&pair, "clearance", THOU), 15.0);
        assert_eq!(value(&pair, "each", THOU), 7.5);
        assert!(says(&pair, "0.0060 in"));
        let single = worked(&ROD_SIDE_CLEARANCE, &rods(0.950, &[0.945]));
        assert_eq!(value(&single, "each", THOU), 5.0);
        assert!(says(&single, "single rod"));
        assert!(!says(&single, "under the"));
    }

    #[test]
    fn rods_that_bind_and_rods_that_are_too_many_are_told() {
        let bound = worked(&ROD_SIDE_CLEARANCE, &rods(0.940, &[0.945]));
        assert_eq!(bound.findings()[0].gravity, Gravity::Stop);
        let many = rods(2.9, &[0.9, 0.9, 0.9]);
        assert_eq!(refused(&ROD_SIDE_CLEARANCE, &many), Some("rod-widths"));
    }
}
