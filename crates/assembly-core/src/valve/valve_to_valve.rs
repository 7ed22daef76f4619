//! Valve to valve around the overlap: twin cams, hemispherical chambers.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, length_text,
};
use crate::fit::readings::least_of;

static ROOMS: Input = Input::gap(
    "rooms",
    "room between the two valves",
    (-0.005, 0.03),
    "Every few degrees around the overlap, with a wire gauge or clay between the heads of the two valves.",
)
.one_or_more();

/// Common practice.
const LEAST: f64 = 0.060 * 0.0254;

/// Valve to valve.
pub static VALVE_TO_VALVE: Calculation = Calculation {
    id: "valve-to-valve",
    title: "Valve to valve",
    purpose: "Whether intake and exhaust valve stay clear of each other while both are open.",
    inputs: &[ROOMS],
    outputs: &[Output::gap("least", "least room")],
    workings: &["least of the rooms: {least}"],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "With the camshafts free, valves can meet at any angle: turn each cam only with the other's valves shut or the pistons well down.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let least = least_of(given, &ROOMS)?.clone();
    let answer = Answer::new();
    let answer = if least.value() <= 0.0 {
        answer.finding(Gravity::Stop, "The valves meet: do not turn on.")
    } else if least.value() < LEAST {
        answer.finding(
            Gravity::Caution,
            format!(
                "Less than the {} that is common practice. The maker's sheet decides.",
                length_text(LEAST)
            ),
        )
    } else {
        answer
    };
    Ok(answer.with("least", least))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn the_least_room_counts() {
        let answer = |rooms: &[f64]| worked(&VALVE_TO_VALVE, &given(THOU, &[("rooms", rooms)]));
        assert_eq!(value(&answer(&[90.0, 55.0, 80.0]), "least", THOU), 55.0);
        assert!(says(&answer(&[90.0, 55.0]), "0.0600 in"));
        assert!(answer(&[60.1]).findings().is_empty());
        assert_eq!(answer(&[0.0]).findings()[0].gravity, Gravity::Stop);
    }
}
