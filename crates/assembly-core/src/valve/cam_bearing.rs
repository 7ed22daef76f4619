//! Clearance of a camshaft in its bearings.

use crate::describe::{Answer, Calculation, Gravity, Input, Output, Provenance, Takes};
use crate::fit::readings::Fit;
use crate::limits::about;

const SIZES: (f64, f64) = (0.01, 0.15);

static BEARING: Input = Input::size(
    "bearing",
    "cam bearing",
    SIZES,
    "Inside of the bearing in its block, two directions, clear of the oil hole.",
)
.taking(Takes::OneOrMore);
static JOURNAL: Input = Input::size(
    "journal",
    "cam journal",
    SIZES,
    "The journal that runs in it, two directions.",
)
.taking(Takes::OneOrMore);

/// Cam in its bearing.
pub static CAM_BEARING_CLEARANCE: Calculation = Calculation {
    id: "cam-bearing-clearance",
    title: "Cam bearing clearance",
    purpose: "How much room a cam journal has in its bearing.",
    inputs: &[BEARING, JOURNAL],
    outputs: &[
        Output::gap("least", "least clearance"),
        Output::gap("greatest", "greatest clearance"),
    ],
    workings: &[
        "least = smallest bearing − largest journal = {least}",
        "greatest = largest bearing − smallest journal = {greatest}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A cam that will not spin by hand is not scraped to fit: find the tight bearing, or the bent cam.",
        "Put a wire through every oil hole: a bearing turned in its bore starves what it feeds.",
    ],
    run: |given| {
        let fit = Fit::of(given, &BEARING, &JOURNAL)?;
        let card = about("cam-bearing-clearance", "");
        let answer = if fit.least.value() <= 0.0 {
            Answer::new().finding(Gravity::Stop, "The journal does not turn in this bearing.")
        } else {
            Answer::new()
                .remarked(&fit.least, card)
                .remarked(&fit.greatest, card)
        };
        Ok(answer
            .with("least", fit.least)
            .with("greatest", fit.greatest))
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, says, value, worked};

    #[test]
    fn both_ends_are_held_against_the_card() {
        let given = given(
            INCH,
            &[
                ("bearing", &[1.8697, 1.8715]),
                ("journal", &[1.8690, 1.8688]),
            ],
        );
        let answer = worked(&CAM_BEARING_CLEARANCE, &given);
        assert_eq!(value(&answer, "least", THOU), 0.7);
        assert_eq!(value(&answer, "greatest", THOU), 2.7);
        assert!(says(&answer, "tight cam"));
    }
}
