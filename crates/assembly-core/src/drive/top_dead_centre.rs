//! True top dead centre by a positive stop, and how far the pointer is off.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));

static BEFORE: Input = Input::of(
    "before",
    "reading before the top",
    ANGLE,
    (0.0, PI / 2.0),
    "Stop in the plug hole: turn the engine its running way until the piston touches; degrees before the mark.",
);
static AFTER: Input = Input::of(
    "after",
    "reading after the top",
    ANGLE,
    (0.0, PI / 2.0),
    "Turn it back until the piston touches again; degrees after the mark.",
);

/// The most a damper's mark may be off. Common practice.
const MOST_OFF: f64 = 0.5 * PI / 180.0;

/// Top dead centre.
pub static TOP_DEAD_CENTRE: Calculation = Calculation {
    id: "top-dead-centre",
    title: "True top dead centre",
    purpose: "How far a timing mark or the degree wheel's pointer is off the true top.",
    inputs: &[BEFORE, AFTER],
    outputs: &[
        Output::of("off", "the mark is off by", ANGLE),
        Output::of("each", "both readings should be", ANGLE),
    ],
    workings: &[
        "the true top lies half-way between the two touches: each should read ({before} + {after}) ÷ 2 = {each}",
        "off = ({before} − {after}) ÷ 2 = {off}: above nothing the mark comes too late",
    ],
    provenance: Provenance::Derivation("the piston stands as high so far before as after its top"),
    cautions: &[
        "Turn by hand, gently, plugs out: a piston is holed by force. Take the stop out before anything else.",
        "A damper whose ring has slipped shows a wrong mark for ever after: replace it.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (before, after) = (given.one(&BEFORE)?, given.one(&AFTER)?);
    let off = (before - after) / 2.0;
    let answer = if off.value().abs() > MOST_OFF {
        Answer::new().finding(
            Gravity::Caution,
            "More than half a degree off: move the pointer or the wheel until both readings are alike, then read again.",
        )
    } else {
        Answer::new()
    };
    Ok(answer.with("each", (before + after) / 2.0).with("off", off))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, says, value, worked};

    const DEGREE: f64 = PI / 180.0;

    // Common practice: stop readings 31 before and 27 after: the pointer is 2° off.
    #[test]
    fn the_worked_stop_comes_out() {
        let answer = worked(
            &TOP_DEAD_CENTRE,
            &given(DEGREE, &[("before", &[31.0]), ("after", &[27.0])]),
        );
        assert_eq!(value(&answer, "off", DEGREE), 2.0);
        assert_eq!(value(&answer, "each", DEGREE), 29.0);
        assert!(says(&answer, "read again"));
        let right = worked(
            &TOP_DEAD_CENTRE,
            &given(DEGREE, &[("before", &[29.2]), ("after", &[29.0])]),
        );
        assert!(right.findings().is_empty());
    }
}
