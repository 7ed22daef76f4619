//! Fit of a damper's hub on the crank's nose.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::Fit;
use crate::limits::about;

const SIZES: (f64, f64) = (0.01, 0.1);

static HUB: Input = Input::size(
    "hub",
    "bore of the hub",
    SIZES,
    "Two places along, two directions, clear of the keyway.",
)
.taking(Takes::OneOrMore);
static NOSE: Input = Input::size(
    "nose",
    "nose of the crank",
    SIZES,
    "Where the hub sits, two directions, clear of the keyway.",
)
.taking(Takes::OneOrMore);

/// Hub on the nose.
pub static DAMPER_HUB: Calculation = Calculation {
    id: "damper-hub",
    title: "Damper hub on the crank",
    purpose: "How tightly the damper's hub sits on the crank.",
    inputs: &[HUB, NOSE],
    outputs: &[
        Output::gap("least", "least interference"),
        Output::gap("greatest", "greatest interference"),
    ],
    workings: &[
        "least = smallest nose − largest hub = {least}",
        "greatest = largest nose − smallest hub = {greatest}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Pull the hub on with an installer, never hammer it: the thrust bearing takes every blow. Never pull on the rubber ring.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let fit = Fit::of(given, &HUB, &NOSE)?;
    let (least, greatest) = (-&fit.greatest, -&fit.least);
    let card = about("hub-interference", "");
    let answer = if greatest.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "The hub is loose on the crank: it frets and its bolt breaks. A shop can sleeve or plate it.",
        )
    } else {
        Answer::new()
            .remarked(&least, card)
            .remarked(&greatest, card)
    };
    Ok(answer.with("least", least).with("greatest", greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, says, value, worked};

    #[test]
    fn a_loose_hub_stops_the_builder_and_a_tight_one_is_questioned() {
        let loose = given(INCH, &[("hub", &[1.2480]), ("nose", &[1.2478])]);
        assert_eq!(
            worked(&DAMPER_HUB, &loose).findings()[0].gravity,
            Gravity::Stop
        );
        let tight = given(INCH, &[("hub", &[1.2460]), ("nose", &[1.2480])]);
        let answer = worked(&DAMPER_HUB, &tight);
        assert_eq!(value(&answer, "greatest", THOU), 2.0);
        assert!(says(&answer, "galls or cracks"));
    }
}
