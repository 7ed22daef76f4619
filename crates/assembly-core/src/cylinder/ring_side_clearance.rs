//! Side clearance of a ring in its groove.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{greatest_of, least_of, span};
use crate::limits::about;

static GAPS: Input = Input::gap(
    "gaps",
    "room beside the ring",
    (0.0, 0.001),
    "A new ring in the clean groove, blade beside it, at four places around.",
)
.taking(Takes::OneOrMore);

/// At this much the land is worn out (TM 9-2815-226-34-1).
const SCRAP: f64 = 0.006 * 0.0254;

/// Ring side clearance.
pub static RING_SIDE_CLEARANCE: Calculation = Calculation {
    id: "ring-side-clearance",
    title: "Ring side clearance",
    purpose: "Whether a ring moves freely in its groove, and whether the groove is worn.",
    inputs: &[GAPS],
    outputs: &[
        Output::gap("least", "least"),
        Output::gap("greatest", "greatest"),
        Output::gap("uneven", "uneven around"),
    ],
    workings: &["around the groove {least} to {greatest}, uneven by {uneven}"],
    provenance: Provenance::CommonPractice,
    cautions: &["A wire wheel rounds the lands: clean grooves with a scraper of their width."],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let least = least_of(given, &GAPS)?.clone();
    let greatest = greatest_of(given, &GAPS)?.clone();
    let card = about("ring-side-clearance", "steel or iron rings");
    let mut answer = Answer::new();
    if greatest.value() >= SCRAP - 1e-9 {
        answer = answer.finding(
            Gravity::Stop,
            "The groove is worn out: the piston is scrap, or goes to a shop that sleeves grooves (TM 9-2815-226-34-1).",
        );
    } else {
        answer = answer.remarked(&greatest, card);
        let tight = card
            .and_then(|entry| entry.window(None)?.low())
            .is_some_and(|low| least.value() < low);
        if tight {
            answer = answer.remarked(&least, card);
        }
    }
    Ok(answer
        .with("uneven", span(given.several(GAPS.id)))
        .with("least", least)
        .with("greatest", greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn six_thou_scraps_the_piston() {
        let worn = worked(&RING_SIDE_CLEARANCE, &given(THOU, &[("gaps", &[3.0, 6.0])]));
        assert_eq!(worn.findings()[0].gravity, Gravity::Stop);
        assert_eq!(value(&worn, "uneven", THOU), 3.0);
        let tight = worked(&RING_SIDE_CLEARANCE, &given(THOU, &[("gaps", &[1.0, 2.0])]));
        assert!(says(&tight, "sticks"));
    }
}
