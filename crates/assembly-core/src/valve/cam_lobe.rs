//! Lift of a cam lobe, and how much of it is worn away.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{greatest_of, least_of, mean_of};
use crate::limits::about;

const SIZES: (f64, f64) = (0.01, 0.15);

static NOSE: Input = Input::size(
    "nose",
    "over the nose",
    SIZES,
    "Micrometer over nose and heel, where the lifter ran; also at the edge that it did not touch.",
)
.taking(Takes::OneOrMore);
static HEEL: Input = Input::size(
    "heel",
    "across the heel",
    SIZES,
    "At right angles to the nose, across the round part.",
)
.taking(Takes::OneOrMore);
static CARD: Input = Input::size(
    "card",
    "lobe lift on the cam card",
    (0.001, 0.03),
    "Lobe lift, not valve lift. Leave it out when you have no card.",
)
.optional();

/// Lobe lift.
pub static CAM_LOBE: Calculation = Calculation {
    id: "cam-lobe",
    title: "Cam lobe lift",
    purpose: "How much a lobe lifts, and whether it is worn.",
    inputs: &[NOSE, HEEL, CARD],
    outputs: &[
        Output::gap("lift", "lobe lift"),
        Output::gap("worn", "less than the card"),
        Output::gap("ridge", "step across the nose"),
    ],
    workings: &[
        "lift = smallest over the nose − across the heel = {nose} − {heel} = {lift}",
        "less than the card = {card} − {lift} = {worn}",
        "largest − smallest over the nose = {ridge}: the edge the lifter did not touch stands proud",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Not every cam can be measured so: with a long-duration lobe the heel is flanked, and only an indicator on a turning cam tells the lift.",
        "A new flat-tappet cam wants new lifters, and used lifters their own lobes.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let nose = least_of(given, &NOSE)?;
    let lift = nose - mean_of(given, &HEEL)?;
    if lift.value() <= 0.0 {
        return Err(CalculationError::not_possible(
            &HEEL,
            "is larger than over the nose: the two are swapped, or the heel was not found",
        ));
    }
    let ridge = greatest_of(given, &NOSE)? - nose;
    let worn = given.optional(CARD.id).map(|card| card - &lift);
    let mut answer = Answer::new();
    for value in [worn.as_ref(), Some(&ridge)].into_iter().flatten() {
        answer = answer.remarked(value, about("cam-lobe-wear", ""));
    }
    Ok(answer
        .with("lift", lift)
        .with("ridge", ridge)
        .with_optional("worn", worn))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, refused, says, value, worked};

    #[test]
    fn wear_shows_against_the_card_and_against_the_untouched_edge() {
        let given = given(
            INCH,
            &[
                ("nose", &[1.500, 1.507]),
                ("heel", &[1.200]),
                ("card", &[0.307]),
            ],
        );
        let answer = worked(&CAM_LOBE, &given);
        assert_eq!(value(&answer, "lift", INCH), 0.3);
        assert_eq!(value(&answer, "worn", THOU), 7.0);
        assert_eq!(value(&answer, "ridge", THOU), 7.0);
        assert!(says(&answer, "the lobe is going"));
    }

    #[test]
    fn nose_and_heel_swapped_are_told() {
        let given = given(INCH, &[("nose", &[1.2]), ("heel", &[1.5])]);
        assert_eq!(refused(&CAM_LOBE, &given), Some("heel"));
    }
}
