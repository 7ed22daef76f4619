//! End clearance of an oil pump: gears or rotors to their cover.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{greatest_of, least_of};
use crate::limits::about;
use crate::measure::Estimate;

static BELOW: Input = Input::gap(
    "below",
    "gears below the body's face",
    (-0.001, 0.002),
    "Straightedge across the face, blade over each gear, several places; below nothing when a gear stands proud.",
)
.taking(Takes::OneOrMore);
static GASKET: Input = Input::gap(
    "gasket",
    "gasket, squeezed",
    (0.0, 0.002),
    "Only if the maker fits one; measure an old one. A gasket where none belongs ruins the pump.",
)
.optional();
static HOLLOW: Input = Input::gap(
    "hollow",
    "cover worn hollow by",
    (0.0, 0.001),
    "Straightedge across the cover where the gears run. Leave it out when it is flat.",
)
.optional();

/// End clearance.
pub static PUMP_END_CLEARANCE: Calculation = Calculation {
    id: "pump-end-clearance",
    title: "Oil pump end clearance",
    purpose: "How much room the pump's gears have under their cover.",
    inputs: &[BELOW, GASKET, HOLLOW],
    outputs: &[
        Output::gap("least", "least end clearance"),
        Output::gap("greatest", "greatest end clearance"),
    ],
    workings: &[
        "least = least below the face + gasket = {least}",
        "greatest = greatest below the face + gasket + hollow of the cover = {greatest}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "New pumps come with chips and preservative: strip, wash, deburr, oil.",
        "Whatever is opened after priming has to be primed again.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let nothing = Estimate::exact(0.0);
    let gasket = given.optional(GASKET.id).unwrap_or(&nothing);
    let hollow = given.optional(HOLLOW.id);
    let least = least_of(given, &BELOW)? + gasket;
    let greatest = greatest_of(given, &BELOW)? + gasket + hollow.unwrap_or(&nothing);
    let card = about("pump-end-clearance", "");
    let mut answer = if least.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "A gear touches the cover: the pump binds and its drive shears.",
        )
    } else {
        Answer::new()
            .remarked(&least, card)
            .remarked(&greatest, card)
    };
    if let Some(hollow) = hollow {
        answer = answer.remarked(hollow, about("pump-cover-wear", ""));
    }
    Ok(answer.with("least", least).with("greatest", greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn gasket_and_hollow_add_to_what_the_blade_says() {
        let given = given(
            THOU,
            &[
                ("below", &[1.0, 1.5]),
                ("gasket", &[1.0]),
                ("hollow", &[2.0]),
            ],
        );
        let answer = worked(&PUMP_END_CLEARANCE, &given);
        assert_eq!(value(&answer, "least", THOU), 2.0);
        assert_eq!(value(&answer, "greatest", THOU), 4.5);
        assert!(says(&answer, "worn hollow reads"));
        assert!(says(&answer, "weak at idle"));
    }

    #[test]
    fn a_proud_gear_stops_the_builder() {
        let answer = worked(
            &PUMP_END_CLEARANCE,
            &given(THOU, &[("below", &[-0.5, 1.0])]),
        );
        assert_eq!(answer.findings()[0].gravity, Gravity::Stop);
    }
}
