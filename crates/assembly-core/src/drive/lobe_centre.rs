//! Intake lobe centre by equal lifts on both flanks.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));
const DEGREE: f64 = PI / 180.0;

static OPENING: Input = Input::of(
    "opening",
    "opening flank, before the top",
    ANGLE,
    (-PI / 2.0, PI),
    "Turning the running way: degrees before top dead centre at the lift you chose, such as 0.050 in; below nothing when it is after the top.",
);
static CLOSING: Input = Input::of(
    "closing",
    "closing flank, after the bottom",
    ANGLE,
    (-PI / 2.0, PI),
    "On the way down at the same lift: degrees after bottom dead centre; below nothing when it is before the bottom.",
);
static CARD: Input = Input::of(
    "card",
    "lobe centre on the cam card",
    ANGLE,
    (60.0 * DEGREE, 150.0 * DEGREE),
    "Intake lobe centre after the top, as the cam is to be installed. Leave it out when you have no card.",
)
.optional();

/// The most the installed centre may differ from the card. Common practice.
const MOST_OFF: f64 = 1.0 * DEGREE;

/// Lobe centre.
pub static LOBE_CENTRE: Calculation = Calculation {
    id: "lobe-centre",
    title: "Intake lobe centre",
    purpose: "Where the intake lobe's middle stands, and by how much the cam is early or late.",
    inputs: &[OPENING, CLOSING, CARD],
    outputs: &[
        Output::of("centre", "lobe centre after the top", ANGLE),
        Output::of("duration", "duration at this lift", ANGLE),
        Output::of("advance", "early by", ANGLE),
    ],
    workings: &[
        "centre = (180° + closing − opening) ÷ 2 = (180° + {closing} − {opening}) ÷ 2 = {centre} after the top",
        "duration = opening + 180° + closing = {duration}",
        "early by = card − centre = {card} − {centre} = {advance}; below nothing it is late",
    ],
    provenance: Provenance::Derivation("the middle between two equal lifts"),
    cautions: &[
        "These are degrees of the crank, and both flanks are approached turning the running way, or the chain's slack is measured.",
        "Opening is said before the top, closing after the bottom: mind the signs.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (opening, closing) = (given.one(&OPENING)?, given.one(&CLOSING)?);
    let duration = opening + closing + PI;
    if duration.value() <= 0.0 {
        return Err(CalculationError::not_possible(
            &CLOSING,
            "the valve would close before it opens: look at the signs of the two readings",
        ));
    }
    let centre = (closing - opening + PI) / 2.0;
    let advance = given.optional(CARD.id).map(|card| card - &centre);
    let answer = if advance
        .as_ref()
        .is_some_and(|advance| advance.value().abs() > MOST_OFF + 1e-12)
    {
        Answer::new().finding(
            Gravity::Caution,
            "More than a degree off the card. Look at the marks and the keyway, then use an offset key or another slot.",
        )
    } else {
        Answer::new()
    };
    Ok(answer
        .with("centre", centre)
        .with("duration", duration)
        .with_optional("advance", advance))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    // Common practice: 0.050 in at 2° before the top and 38° after the bottom: 108°.
    #[test]
    fn the_worked_lobe_comes_out() {
        let lobe = given(
            DEGREE,
            &[
                ("opening", &[2.0]),
                ("closing", &[38.0]),
                ("card", &[106.0]),
            ],
        );
        let answer = worked(&LOBE_CENTRE, &lobe);
        assert_eq!(value(&answer, "centre", DEGREE), 108.0);
        assert_eq!(value(&answer, "duration", DEGREE), 220.0);
        assert_eq!(value(&answer, "advance", DEGREE), -2.0);
        assert!(says(&answer, "More than a degree"));
    }

    // The trap: before and after the top are opposite signs.
    #[test]
    fn an_opening_after_the_top_is_below_nothing() {
        let late = given(DEGREE, &[("opening", &[-4.0]), ("closing", &[32.0])]);
        assert_eq!(value(&worked(&LOBE_CENTRE, &late), "centre", DEGREE), 108.0);
        let senseless = given(DEGREE, &[("opening", &[-90.0]), ("closing", &[-90.0])]);
        assert_eq!(refused(&LOBE_CENTRE, &senseless), Some("closing"));
    }
}
