//! Piston pins: floating in piston and bush, or pressed into the rod.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::Fit;
use crate::limits::about;

const PINS: (f64, f64) = (0.005, 0.1);

static HOLE: Input = Input::size(
    "hole",
    "hole",
    PINS,
    "Small-hole gauge and micrometer, or a bore gauge: two places along, two directions.",
)
.taking(Takes::OneOrMore);
static PIN: Input = Input::size(
    "pin",
    "pin",
    PINS,
    "Where it runs in this hole, two directions.",
)
.taking(Takes::OneOrMore);
static WHERE: Input = Input::one_of(
    "where",
    "hole in",
    &[
        Choice {
            id: "pin-in-piston",
            label: "the piston",
        },
        Choice {
            id: "pin-in-bush",
            label: "the rod's bush",
        },
    ],
    "Which of its two fits this is.",
);

/// A floating pin.
pub static FLOATING_PIN: Calculation = Calculation {
    id: "floating-pin",
    title: "Floating piston pin",
    purpose: "How much room a floating pin has in its piston or in the rod's bush.",
    inputs: &[HOLE, PIN, WHERE],
    outputs: &[
        Output::gap("least", "least clearance"),
        Output::gap("greatest", "greatest clearance"),
    ],
    workings: &[
        "least = smallest hole − largest pin = {least}",
        "greatest = largest hole − smallest pin = {greatest}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Pin locks that are not home let the pin into the bore: new locks, and feel each one seated.",
    ],
    run: |given| {
        let fit = Fit::of(given, &HOLE, &PIN)?;
        let entry = about(given.choice(&WHERE)?.id, "");
        let answer = if fit.least.value() <= 0.0 {
            Answer::new().finding(
                Gravity::Stop,
                "The pin does not go into its hole freely: it would gall.",
            )
        } else {
            Answer::new().remarked(&fit.least, entry)
        };
        Ok(answer
            .with("least", fit.least)
            .with("greatest", fit.greatest))
    },
};

/// A pressed pin.
pub static PRESSED_PIN: Calculation = Calculation {
    id: "pressed-pin",
    title: "Pressed piston pin",
    purpose: "How tightly a pressed pin sits in its rod.",
    inputs: &[HOLE, PIN],
    outputs: &[
        Output::gap("least", "least interference"),
        Output::gap("greatest", "greatest interference"),
    ],
    workings: &[
        "least = smallest pin − largest hole = {least}",
        "greatest = largest pin − smallest hole = {greatest}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Check which way the piston faces before the pin goes in: it does not come out unharmed.",
        "The rod's eye is heated evenly and never glowing; a hot rod burns. Work with a stop so that the pin is centred at once.",
    ],
    run: run_pressed,
};

fn run_pressed(given: &Given) -> Result<Answer, CalculationError> {
    let fit = Fit::of(given, &HOLE, &PIN)?;
    let (least, greatest) = (-&fit.greatest, -&fit.least);
    let answer = if least.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "At its loosest the pin is not held: it would walk into the bore.",
        )
    } else {
        let entry = about("press-pin-interference", "");
        let tight = Answer::new().remarked(&greatest, entry);
        if entry
            .and_then(|entry| entry.window(None))
            .is_some_and(|window| !window.holds(least.value()))
        {
            tight.remarked(&least, entry)
        } else {
            tight
        }
    };
    Ok(answer.with("least", least).with("greatest", greatest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, says, value, worked};
    use crate::measure::Estimate;

    #[test]
    fn the_two_fits_of_a_floating_pin_have_their_own_figures() {
        let sizes = given(INCH, &[("hole", &[0.9274, 0.9275]), ("pin", &[0.9270])]);
        let in_piston = worked(
            &FLOATING_PIN,
            &sizes.clone().with("where", Estimate::exact(0.0)),
        );
        assert_eq!(value(&in_piston, "least", THOU), 0.4);
        assert_eq!(value(&in_piston, "greatest", THOU), 0.5);
        assert!(in_piston.findings()[0].gravity == Gravity::Note);
        let in_bush = worked(&FLOATING_PIN, &sizes.with("where", Estimate::exact(1.0)));
        assert!(says(&in_bush, "under the 0.0005 in"));
    }

    #[test]
    fn a_pressed_pin_that_is_not_held_stops_the_builder() {
        let loose = given(INCH, &[("hole", &[0.9270, 0.9274]), ("pin", &[0.9273])]);
        let answer = worked(&PRESSED_PIN, &loose);
        assert_eq!(value(&answer, "least", THOU), -0.1);
        assert!(says(&answer, "walk into the bore"));
        let right = given(INCH, &[("hole", &[0.9260]), ("pin", &[0.9270])]);
        let answer = worked(&PRESSED_PIN, &right);
        assert_eq!(value(&answer, "greatest", THOU), 1.0);
        assert!(
            answer
                .findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );
    }
}
