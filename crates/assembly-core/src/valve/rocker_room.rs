//! Room around a rocker through its travel, and the sweep of its tip.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::fit::readings::least_of;

static ROOMS: Input = Input::gap(
    "rooms",
    "rooms at closed and at full lift",
    (-0.002, 0.02),
    "Stud in its slot, pushrod in its hole, rocker to retainer: the least of each, with a blade or wire, valve closed and fully open.",
)
.taking(Takes::OneOrMore);
static SWEEP: Input = Input::gap(
    "sweep",
    "width of the pattern on the tip",
    (0.0, 0.01),
    "Ink the tip, turn the engine twice, measure the mark along the rocker.",
);
static OFF_MIDDLE: Input = Input::gap(
    "off-middle",
    "middle of the pattern off the tip's middle",
    (-0.005, 0.005),
    "Towards the exhaust side above nothing, towards the intake side below.",
);

const INCH: f64 = 0.0254;
/// The least room and the widest pattern. Common practice.
const LEAST_ROOM: f64 = 0.040 * INCH;
const WIDEST: f64 = 0.080 * INCH;

/// Room and sweep.
pub static ROCKER_ROOM: Calculation = Calculation {
    id: "rocker-room",
    title: "Rocker room and sweep",
    purpose: "Whether a rocker touches anything through its travel, and rolls in the middle of the valve's tip.",
    inputs: &[ROOMS, SWEEP, OFF_MIDDLE],
    outputs: &[
        Output::gap("least", "least room"),
        Output::gap("edge", "pattern reaches from the middle"),
    ],
    workings: &[
        "least of the rooms: {least}",
        "edge of the pattern = |off the middle| + half its width = |{off-middle}| + {sweep} ÷ 2 = {edge}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A narrow pattern counts more than a centred one: its width tells the pushrod's length, its place the geometry of the head.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let least = least_of(given, &ROOMS)?.clone();
    let sweep = given.one(&SWEEP)?;
    let edge = given.one(&OFF_MIDDLE)?.size() + sweep / 2.0;
    let mut answer = Answer::new();
    if least.value() <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "Something touches: turn no farther, and find it before a pushrod or stud bends.",
        );
    } else if least.value() < LEAST_ROOM {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "Less than the {} that is common practice.",
                length_text(LEAST_ROOM)
            ),
        );
    }
    if sweep.value() > WIDEST {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "The pattern is wider than the {} that is common practice: try another pushrod length.",
                length_text(WIDEST)
            ),
        );
    }
    Ok(answer.with("least", least).with("edge", edge))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    fn rocker(room: f64, sweep: f64) -> Answer {
        let given = given(
            THOU,
            &[
                ("rooms", &[room, 90.0]),
                ("sweep", &[sweep]),
                ("off-middle", &[-20.0]),
            ],
        );
        worked(&ROCKER_ROOM, &given)
    }

    #[test]
    fn a_touching_rocker_stops_and_a_wide_sweep_is_questioned() {
        assert_eq!(rocker(0.0, 60.0).findings()[0].gravity, Gravity::Stop);
        assert!(says(&rocker(30.0, 60.0), "Less than"));
        let wide = rocker(50.0, 90.0);
        assert!(says(&wide, "another pushrod length"));
        assert_eq!(value(&wide, "edge", THOU), 65.0);
    }
}
