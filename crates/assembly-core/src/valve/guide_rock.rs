//! The rock test of a guide: quick, and it reads about double.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Input, Output, Provenance, Takes,
};
use crate::fit::readings::greatest_of;
use crate::limits::about;
use crate::measure::Estimate;

static ROCK: Input = Input::gap(
    "rock",
    "rock at the valve head",
    (0.0, 0.01),
    "Valve off its seat by the lift that the maker names, indicator against the edge of its head: push it to and fro, in two directions.",
)
.taking(Takes::OneOrMore);
static FACTOR: Input = Input::ratio(
    "factor",
    "rock for each unit of clearance",
    (1.0, 10.0),
    "From the maker's sheet or the fixture; commonly about 2. Leave it out for that.",
)
.optional();
static VALVE: Input = Input::one_of(
    "valve",
    "valve",
    &[
        Choice {
            id: "stem-guide-intake",
            label: "intake",
        },
        Choice {
            id: "stem-guide-exhaust",
            label: "exhaust",
        },
    ],
    "The exhaust stem needs more room.",
);

/// How much the head rocks for each unit of clearance, on many heads. Common practice.
pub const USUAL_FACTOR: f64 = 2.0;

/// The rock test.
pub static GUIDE_ROCK: Calculation = Calculation {
    id: "guide-rock",
    title: "Guide rock test",
    purpose: "The clearance of a stem in its guide, from how much the valve rocks.",
    inputs: &[ROCK, FACTOR, VALVE],
    outputs: &[Output::gap("clearance", "stem clearance, about")],
    workings: &["clearance = rock ÷ factor = {rock} ÷ {factor} = {clearance}"],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "The rock is not the clearance: it reads about twice as much. It is a quick sort; a guide near its limit is measured by its sizes.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let usual = Estimate::exact(USUAL_FACTOR);
    let factor = given.optional(FACTOR.id).unwrap_or(&usual);
    let clearance = greatest_of(given, &ROCK)? / factor;
    let card = about(given.choice(&VALVE)?.id, "maker's guide limits");
    Ok(Answer::new()
        .remarked(&clearance, card)
        .with("clearance", clearance))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, value, worked};

    // Common practice: the rock test reads about twice the clearance.
    #[test]
    fn a_rock_of_four_thou_is_a_clearance_of_two() {
        let rock = given(THOU, &[("rock", &[3.0, 4.0])]).with("valve", Estimate::exact(0.0));
        assert_eq!(value(&worked(&GUIDE_ROCK, &rock), "clearance", THOU), 2.0);
        let fixture = rock.with("factor", Estimate::exact(2.5));
        assert_eq!(
            value(&worked(&GUIDE_ROCK, &fixture), "clearance", THOU),
            1.6
        );
    }
}
