//! Crush of a pair of shells: how much they are squeezed when the cap goes home.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{greatest_of, mean_of};
use crate::limits::about;

static GAP: Input = Input::gap(
    "gap",
    "gap at the joint",
    (0.0, 0.002),
    "Torque both bolts of the cap, let one off until it is free, and feel the gap at the joint on that side; do both sides.",
)
.taking(Takes::OneOrMore);

/// Crush by the gap at the joint.
pub static SHELL_CRUSH: Calculation = Calculation {
    id: "shell-crush",
    title: "Shell crush",
    purpose: "Whether the shells are squeezed enough to stay put, and not so much that they bulge.",
    inputs: &[GAP],
    outputs: &[
        Output::gap("crush", "crush at the joint"),
        Output::gap("greatest", "larger of the two sides"),
    ],
    workings: &["crush = mean of the gaps = {crush}, larger side {greatest}"],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Never file a cap or a shell to change the crush. Too little or too much is a wrong bore or a wrong lot of shells.",
        "Torquing for a trial uses stretch bolts up: take old ones.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let crush = mean_of(given, &GAP)?;
    let greatest = greatest_of(given, &GAP)?.clone();
    let answer = if crush.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "No crush at all: these shells will spin. Measure the housing bore and look at the box.",
        )
    } else {
        Answer::new().remarked(&crush, about("crush", ""))
    };
    Ok(answer.with("crush", crush).with("greatest", greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn shells_without_crush_stop_the_builder() {
        let none = worked(&SHELL_CRUSH, &given(THOU, &[("gap", &[0.0, 0.0])]));
        assert_eq!(none.findings()[0].gravity, Gravity::Stop);
        let some = worked(&SHELL_CRUSH, &given(THOU, &[("gap", &[1.0, 2.0])]));
        assert_eq!(value(&some, "crush", THOU), 1.5);
        assert!(says(&some, "disputed"));
        assert!(says(
            &worked(&SHELL_CRUSH, &given(THOU, &[("gap", &[4.0])])),
            "bulges"
        ));
    }
}
