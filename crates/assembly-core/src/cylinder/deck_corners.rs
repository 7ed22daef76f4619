//! Deck clearance at the four corners of a block: whether the deck is square
//! to the crank.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::fit::readings::{mean_of, span};
use crate::measure::Estimate;

const DECKS: (f64, f64) = (-0.005, 0.01);

const HOW: &str = "Bridge zeroed on the deck, piston at true top, over the pin's axis at both ends of the pin: in the hole above nothing, proud of the deck below.";

static FRONT_INTAKE: Input =
    Input::gap("front-intake", "front, intake side", DECKS, HOW).taking(Takes::OneOrMore);
static FRONT_EXHAUST: Input =
    Input::gap("front-exhaust", "front, exhaust side", DECKS, HOW).taking(Takes::OneOrMore);
static REAR_INTAKE: Input =
    Input::gap("rear-intake", "rear, intake side", DECKS, HOW).taking(Takes::OneOrMore);
static REAR_EXHAUST: Input =
    Input::gap("rear-exhaust", "rear, exhaust side", DECKS, HOW).taking(Takes::OneOrMore);

/// More than this from end to end or side to side is worth squaring. Common practice.
const WORTH_SQUARING: f64 = 0.004 * 0.0254;

/// Corners of a deck.
pub static DECK_CORNERS: Calculation = Calculation {
    id: "deck-corners",
    title: "Deck clearance at the corners",
    purpose: "How the pistons stand to the deck at its four corners, and whether the deck is square.",
    inputs: &[FRONT_INTAKE, FRONT_EXHAUST, REAR_INTAKE, REAR_EXHAUST],
    outputs: &[
        Output::gap("mean", "mean deck clearance"),
        Output::gap("end-to-end", "rear less front"),
        Output::gap("side-to-side", "exhaust side less intake side"),
        Output::gap("spread", "largest less smallest corner"),
    ],
    workings: &[
        "each corner is the mean of its readings; all together {mean}",
        "rear − front = {end-to-end}; exhaust − intake side = {side-to-side}; spread {spread}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Read over the pin's axis: elsewhere the piston rocks by one to four thou. If you must read off it, take the mean of both thrust sides.",
        "Rods and pistons differ too: put the same rod and piston into each corner before you blame the deck.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let corner = |input| mean_of(given, input);
    let (front_in, front_ex) = (corner(&FRONT_INTAKE)?, corner(&FRONT_EXHAUST)?);
    let (rear_in, rear_ex) = (corner(&REAR_INTAKE)?, corner(&REAR_EXHAUST)?);
    let end_to_end = ((&rear_in + &rear_ex) - (&front_in + &front_ex)) / 2.0;
    let side_to_side = ((&front_ex + &rear_ex) - (&front_in + &rear_in)) / 2.0;
    let corners = [front_in, front_ex, rear_in, rear_ex];
    let mut answer = Answer::new();
    for (words, value) in [("end to end", &end_to_end), ("side to side", &side_to_side)] {
        if value.value().abs() > WORTH_SQUARING {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "From {words} the deck is out by {}: worth having it squared to the mains.",
                    length_text(value.value().abs())
                ),
            );
        }
    }
    Ok(answer
        .with("end-to-end", end_to_end)
        .with("side-to-side", side_to_side)
        .with("spread", span(&corners))
        .with_optional("mean", Estimate::mean(&corners)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn a_deck_that_falls_to_the_rear_shows_end_to_end() {
        let given = given(
            THOU,
            &[
                // Two readings over the pin: their mean takes the rock out.
                ("front-intake", &[24.0, 26.0]),
                ("front-exhaust", &[26.0]),
                ("rear-intake", &[31.0]),
                ("rear-exhaust", &[32.0]),
            ],
        );
        let answer = worked(&DECK_CORNERS, &given);
        assert_eq!(value(&answer, "mean", THOU), 28.5);
        assert_eq!(value(&answer, "end-to-end", THOU), 6.0);
        assert_eq!(value(&answer, "side-to-side", THOU), 1.0);
        assert!(says(&answer, "end to end"));
        assert!(!says(&answer, "side to side"));
    }
}
