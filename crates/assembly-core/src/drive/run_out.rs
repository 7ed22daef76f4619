//! Run-out of something that turns: camshaft, flywheel, flexplate, housing bore.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Input, Output, Provenance, Takes,
};
use crate::fit::readings::span;
use crate::limits::about;
use crate::measure::Estimate;

static READINGS: Input = Input::gap(
    "readings",
    "needle at places around",
    (-0.02, 0.02),
    "Indicator square to the surface: turn once and read at eight places or more, signs included; or give the least and the greatest.",
)
.taking(Takes::OneOrMore);
static OUT_OF_ROUND: Input = Input::gap(
    "out-of-round",
    "out of round of the surface itself",
    (0.0, 0.002),
    "From the micrometer; it swings the needle too. Leave it out for a flat face.",
)
.optional();
static PART: Input = Input::one_of(
    "part",
    "part",
    &[
        Choice {
            id: "cam-run-out",
            label: "camshaft, at its middle journal",
        },
        Choice {
            id: "flywheel-run-out",
            label: "flywheel face",
        },
        Choice {
            id: "flexplate-run-out",
            label: "flexplate",
        },
        Choice {
            id: "bellhousing-run-out",
            label: "bellhousing bore",
        },
        Choice {
            id: "other",
            label: "something else",
        },
    ],
    "What turns, or what the indicator is carried around in.",
);

/// Run-out.
pub static RUN_OUT: Calculation = Calculation {
    id: "run-out",
    title: "Run-out",
    purpose: "How far something runs out of true, and how far its middle is off.",
    inputs: &[READINGS, OUT_OF_ROUND, PART],
    outputs: &[
        Output::gap("run-out", "run-out, whole swing"),
        Output::gap("offset", "off its middle by"),
    ],
    workings: &[
        "run-out = greatest − least reading − out of round = {run-out}",
        "off its middle by half of that: {offset}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Push the crank to one end while turning: its end float moves the needle on a face.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let swing = span(given.several(READINGS.id));
    let round = given.optional(OUT_OF_ROUND.id);
    let less = round.map_or_else(|| swing.clone(), |round| &swing - round);
    // Out of round cannot hide more than the whole swing.
    let run_out = if less.value() < 0.0 {
        Estimate::exact(0.0)
    } else {
        less
    };
    Ok(Answer::new()
        .remarked(&run_out, about(given.choice(&PART)?.id, ""))
        .with("offset", &run_out / 2.0)
        .with("run-out", run_out))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn the_whole_swing_less_its_own_out_of_round() {
        let given = given(
            THOU,
            &[("readings", &[-1.5, 0.0, 2.0]), ("out-of-round", &[0.5])],
        )
        .with("part", Estimate::exact(0.0));
        let answer = worked(&RUN_OUT, &given);
        assert_eq!(value(&answer, "run-out", THOU), 3.0);
        assert_eq!(value(&answer, "offset", THOU), 1.5);
        assert!(says(&answer, "over the 0.0020 in"));
    }

    #[test]
    fn something_else_has_no_common_figure() {
        let given = given(THOU, &[("readings", &[0.0, 9.0])]).with("part", Estimate::exact(4.0));
        assert!(worked(&RUN_OUT, &given).findings().is_empty());
    }
}
