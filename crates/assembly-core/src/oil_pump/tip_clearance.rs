//! Tip clearance of a rotor pump: inner to outer rotor, tip to tip.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{greatest_of, span};
use crate::limits::about;

static TIPS: Input = Input::gap(
    "tips",
    "gap at each tip",
    (0.0, 0.002),
    "Turn tip against tip and feel the gap with a blade; every tip in turn.",
)
.taking(Takes::OneOrMore);

/// Tip clearance.
pub static PUMP_TIP_CLEARANCE: Calculation = Calculation {
    id: "pump-tip-clearance",
    title: "Oil pump rotor tip clearance",
    purpose: "How far the tips of the two rotors are apart.",
    inputs: &[TIPS],
    outputs: &[
        Output::gap("greatest", "greatest tip clearance"),
        Output::gap("uneven", "uneven from tip to tip"),
    ],
    workings: &["largest of the gaps: {greatest}, uneven by {uneven}"],
    provenance: Provenance::CommonPractice,
    cautions: &["Rotors are a pair and have a right way up: put their marks to the same side."],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let greatest = greatest_of(given, &TIPS)?.clone();
    Ok(Answer::new()
        .remarked(&greatest, about("pump-tip-clearance", ""))
        .with("uneven", span(given.several(TIPS.id)))
        .with("greatest", greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn worn_tips_are_named() {
        let answer = worked(
            &PUMP_TIP_CLEARANCE,
            &given(THOU, &[("tips", &[5.0, 8.0, 6.0])]),
        );
        assert_eq!(value(&answer, "greatest", THOU), 8.0);
        assert_eq!(value(&answer, "uneven", THOU), 3.0);
        assert!(says(&answer, "over the 0.0070 in"));
    }
}
