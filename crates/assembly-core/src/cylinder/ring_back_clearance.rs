//! Back clearance: how far a ring lies below its land when pushed in.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::limits::about;

static GROOVE: Input = Input::size(
    "groove",
    "depth of the groove",
    (0.001, 0.02),
    "Depth gauge from the land beside it to the bottom of the groove.",
);
static RING: Input = Input::size(
    "ring",
    "radial wall of the ring",
    (0.001, 0.02),
    "Across the ring from its face to its back.",
);

/// Ring back clearance.
pub static RING_BACK_CLEARANCE: Calculation = Calculation {
    id: "ring-back-clearance",
    title: "Ring back clearance",
    purpose: "How far a ring lies below its land when it is pushed home.",
    inputs: &[GROOVE, RING],
    outputs: &[Output::gap("below", "below the land")],
    workings: &["below = groove − ring = {groove} − {ring} = {below}"],
    provenance: Provenance::CommonPractice,
    cautions: &["A ring that stands proud is crushed by the bore and breaks."],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let below = given.one(&GROOVE)? - given.one(&RING)?;
    let answer = if below.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "The ring stands proud of its land: it is the wrong ring, or the groove is dirty.",
        )
    } else {
        Answer::new().remarked(&below, about("ring-back-clearance", ""))
    };
    Ok(answer.with("below", below))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, value, worked};

    #[test]
    fn a_proud_ring_stops_the_builder() {
        let proud = given(INCH, &[("groove", &[0.190]), ("ring", &[0.192])]);
        assert_eq!(
            worked(&RING_BACK_CLEARANCE, &proud).findings()[0].gravity,
            Gravity::Stop
        );
        let right = given(INCH, &[("groove", &[0.190]), ("ring", &[0.180])]);
        assert_eq!(
            value(&worked(&RING_BACK_CLEARANCE, &right), "below", THOU),
            10.0
        );
    }
}
