//! A lifter in its bore.

use crate::describe::{Answer, Calculation, Choice, Gravity, Input, Output, Provenance, Takes};
use crate::fit::readings::Fit;
use crate::limits::about;

const SIZES: (f64, f64) = (0.005, 0.08);

static BORE: Input = Input::size(
    "bore",
    "lifter bore",
    SIZES,
    "Small-hole gauge and micrometer, top and bottom, two directions.",
)
.taking(Takes::OneOrMore);
static LIFTER: Input = Input::size(
    "lifter",
    "lifter",
    SIZES,
    "Outside, two directions, clear of the oil band.",
)
.taking(Takes::OneOrMore);
static FALLS: Input = Input::one_of(
    "falls",
    "clean and lightly oiled, the lifter",
    &[
        Choice {
            id: "falls",
            label: "falls by its own weight and turns freely",
        },
        Choice {
            id: "hangs",
            label: "hangs or does not turn freely",
        },
    ],
    "Drop it in from above and let it go; then turn it with a finger.",
);

/// Lifter in its bore.
pub static LIFTER_IN_BORE: Calculation = Calculation {
    id: "lifter-in-bore",
    title: "Lifter in its bore",
    purpose: "Whether a lifter can fall and turn, and does not leak.",
    inputs: &[BORE, LIFTER, FALLS],
    outputs: &[
        Output::gap("least", "least clearance"),
        Output::gap("greatest", "greatest clearance"),
    ],
    workings: &[
        "least = smallest bore − largest lifter = {least}",
        "greatest = largest bore − smallest lifter = {greatest}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A flat lifter that does not turn wipes its lobe within the first half hour. Whatever the numbers say, it must fall and turn.",
    ],
    run: |given| {
        let fit = Fit::of(given, &BORE, &LIFTER)?;
        let card = about("lifter-bore-clearance", "");
        let mut answer = Answer::new()
            .remarked(&fit.least, card)
            .remarked(&fit.greatest, card);
        if given.choice(&FALLS)?.id == "hangs" || fit.least.value() <= 0.0 {
            answer = answer.finding(
                Gravity::Stop,
                "This lifter must not go in: look for a burr, varnish or a mushroomed foot, and try another bore.",
            );
        }
        Ok(answer
            .with("least", fit.least)
            .with("greatest", fit.greatest))
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, says, value, worked};
    use crate::measure::Estimate;

    #[test]
    fn a_lifter_that_hangs_is_out_whatever_the_numbers_say() {
        let sizes = given(INCH, &[("bore", &[0.8435]), ("lifter", &[0.8420])]);
        let falls = worked(
            &LIFTER_IN_BORE,
            &sizes.clone().with("falls", Estimate::exact(0.0)),
        );
        assert_eq!(value(&falls, "least", THOU), 1.5);
        assert!(!says(&falls, "must not go in"));
        let hangs = worked(&LIFTER_IN_BORE, &sizes.with("falls", Estimate::exact(1.0)));
        assert!(says(&hangs, "must not go in"));
    }
}
