//! Bend and twist of a rod on its fixture.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, length_text,
};
use crate::measure::Estimate;

static BEND: Input = Input::gap(
    "bend",
    "difference up and down",
    (0.0, 0.01),
    "Rod on its mandrel, pin in the small end: height of the pin at its two ends, one less the other.",
);
static TWIST: Input = Input::gap(
    "twist",
    "difference fore and aft",
    (0.0, 0.02),
    "The same, rod laid over by a quarter turn.",
);
static APART: Input = Input::size(
    "apart",
    "distance between the two readings",
    (0.02, 0.5),
    "Along the pin, or along a longer bar put through the small end.",
);

const INCH: f64 = 0.0254;
/// The length over which the common figures are said.
const OVER: f64 = 6.0 * INCH;
/// The most bend and twist over six inches. Common practice.
const MOST_BEND: f64 = 0.001 * INCH;
const MOST_TWIST: f64 = 0.002 * INCH;

/// Bend and twist.
pub static ROD_ALIGNMENT: Calculation = Calculation {
    id: "rod-alignment",
    title: "Rod bend and twist",
    purpose: "Whether a rod's two eyes are parallel, over the length that the common figures are said for.",
    inputs: &[BEND, TWIST, APART],
    outputs: &[
        Output::gap("bend-over-six", "bend over 6 in"),
        Output::gap("twist-over-six", "twist over 6 in"),
    ],
    workings: &[
        "bend over 6 in = {bend} × 6 in ÷ {apart} = {bend-over-six}",
        "twist over 6 in = {twist} × 6 in ÷ {apart} = {twist-over-six}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A skewed rod wears its piston's skirt at two corners. Straightening is for a shop; a rod that was bent by water is scrap.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let apart = given.one(&APART)?;
    let over_six = |input: &'static Input| -> Result<Estimate, CalculationError> {
        Ok(given.one(input)? * OVER / apart)
    };
    let (bend, twist) = (over_six(&BEND)?, over_six(&TWIST)?);
    let mut answer = Answer::new();
    for (word, value, most) in [("bend", &bend, MOST_BEND), ("twist", &twist, MOST_TWIST)] {
        if value.value() > most {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "Its {word} over 6 in is {}, more than the {} that is common practice. The maker's sheet decides.",
                    length_text(value.value()),
                    length_text(most)
                ),
            );
        }
    }
    Ok(answer
        .with("bend-over-six", bend)
        .with("twist-over-six", twist))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, given, says, value, worked};

    #[test]
    fn a_short_pin_shows_only_part_of_the_bend() {
        let given = given(
            INCH,
            &[("bend", &[0.0006]), ("twist", &[0.0006]), ("apart", &[3.0])],
        );
        let answer = worked(&ROD_ALIGNMENT, &given);
        assert_eq!(value(&answer, "bend-over-six", INCH), 0.0012);
        assert!(says(&answer, "Its bend"));
        assert!(!says(&answer, "Its twist"));
    }
}
