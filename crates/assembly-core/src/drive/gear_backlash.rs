//! Backlash of a pair of timing gears.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{mean_of, span};
use crate::limits::about;
use crate::measure::Estimate;

static READINGS: Input = Input::gap(
    "readings",
    "play at each place around",
    (0.0, 0.003),
    "Hold one gear, indicator square against a tooth or an arm of the other: rock it. Four places around the larger gear.",
)
.taking(Takes::OneOrMore);
static RADIUS: Input = Input::size(
    "radius",
    "distance of the indicator from the shaft",
    (0.005, 0.5),
    "From the middle of the shaft to where the indicator touches. Leave it out when it touches at the teeth.",
)
.optional();
static PITCH: Input = Input::size(
    "pitch-radius",
    "distance of the teeth from the shaft",
    (0.005, 0.5),
    "From the middle of the shaft to the middle of the teeth. Needed when the indicator touches elsewhere.",
)
.optional();

/// Gear backlash.
pub static GEAR_BACKLASH: Calculation = Calculation {
    id: "gear-backlash",
    title: "Timing gear backlash",
    purpose: "How much play a pair of gears has, and whether it changes around.",
    inputs: &[READINGS, RADIUS, PITCH],
    outputs: &[
        Output::gap("mean", "mean backlash at the teeth"),
        Output::gap("least", "least"),
        Output::gap("greatest", "greatest"),
        Output::gap("uneven", "uneven around"),
    ],
    workings: &[
        "backlash = play × {pitch-radius} ÷ {radius}, or the play itself when read at the teeth",
        "mean {mean}, from {least} to {greatest}, uneven by {uneven}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Play that changes around is a gear out of true or a bent shaft. New gears of the same size differ: measure again after line honing.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let scale = match (given.optional(RADIUS.id), given.optional(PITCH.id)) {
        (Some(radius), Some(pitch)) => pitch / radius,
        (None, None) => Estimate::exact(1.0),
        (Some(_), None) => return Err(missing(&PITCH)),
        (None, Some(_)) => return Err(missing(&RADIUS)),
    };
    let at_the_teeth: Vec<Estimate> = given
        .several(READINGS.id)
        .iter()
        .map(|play| play * &scale)
        .collect();
    let mean = mean_of(given, &READINGS)? * scale;
    let card = about("timing-gear-backlash", "");
    let (least, greatest) = (
        Estimate::least(&at_the_teeth),
        Estimate::greatest(&at_the_teeth),
    );
    let mut answer = Answer::new();
    for value in [least, greatest].into_iter().flatten() {
        answer = answer.remarked(value, card);
    }
    Ok(answer
        .with("mean", mean)
        .with_optional("least", least.cloned())
        .with_optional("greatest", greatest.cloned())
        .with("uneven", span(&at_the_teeth)))
}

const fn missing(input: &'static Input) -> CalculationError {
    CalculationError::Missing {
        field: input.id,
        label: input.label,
        how: input.how,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, refused, says, value, worked};

    #[test]
    fn play_read_farther_out_is_brought_to_the_teeth() {
        let mut given = given(THOU, &[("readings", &[4.0, 8.0])]);
        given.push("radius", Estimate::exact(0.1));
        assert_eq!(refused(&GEAR_BACKLASH, &given), Some("pitch-radius"));
        given.push("pitch-radius", Estimate::exact(0.05));
        let answer = worked(&GEAR_BACKLASH, &given);
        assert_eq!(value(&answer, "least", THOU), 2.0);
        assert_eq!(value(&answer, "greatest", THOU), 4.0);
        assert_eq!(value(&answer, "uneven", THOU), 2.0);
        assert_eq!(value(&answer, "mean", THOU), 3.0);
    }

    #[test]
    fn gears_without_play_whine_and_break() {
        assert!(says(
            &worked(&GEAR_BACKLASH, &given(THOU, &[("readings", &[1.0])])),
            "whine"
        ));
    }
}
