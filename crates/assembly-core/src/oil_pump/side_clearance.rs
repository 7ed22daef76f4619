//! Side clearance of an oil pump: gears or rotor to the body around them.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::greatest_of;
use crate::limits::about;

static GAPS: Input = Input::gap(
    "gaps",
    "gap between gear and body",
    (0.0, 0.002),
    "Blade between the teeth's tips and the body, pushed to the side, at each gear or around the outer rotor.",
)
.taking(Takes::OneOrMore);

/// Side clearance.
pub static PUMP_SIDE_CLEARANCE: Calculation = Calculation {
    id: "pump-side-clearance",
    title: "Oil pump side clearance",
    purpose: "How much room the pump's gears have to the body around them.",
    inputs: &[GAPS],
    outputs: &[Output::gap("greatest", "greatest side clearance")],
    workings: &["largest of the gaps: {greatest}"],
    provenance: Provenance::CommonPractice,
    cautions: &["A scored body cannot be mended: replace the pump."],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let greatest = greatest_of(given, &GAPS)?.clone();
    let answer = if greatest.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "The gears touch the body all round: the pump binds.",
        )
    } else {
        Answer::new().remarked(&greatest, about("pump-side-clearance", ""))
    };
    Ok(answer.with("greatest", greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn the_largest_gap_counts() {
        let answer = worked(&PUMP_SIDE_CLEARANCE, &given(THOU, &[("gaps", &[3.0, 6.0])]));
        assert_eq!(value(&answer, "greatest", THOU), 6.0);
        assert!(says(&answer, "weak pressure"));
    }
}
