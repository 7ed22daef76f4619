//! The preload that uses a share of a bolt's yield while it is twisted, and the
//! torque for it.

use std::f64::consts::PI;

use super::common::{DIAMETER, FORCE, PITCH, SHARE, STRESS, SYSTEM, TORQUE, thread};
use super::long_form::{FACE, HEAD_FRICTION, HOLE, THREAD_FRICTION, parts};
use crate::describe::{Answer, Calculation, CalculationError, Given, Input, Output, Provenance};

static YIELD: Input = Input::of(
    "yield-stress",
    "least yield stress",
    STRESS,
    (5e7, 3e9),
    "By its mark, see the strength of a bolt, or from the bolt's sheet.",
);
static USED: Input = Input::of(
    "used",
    "share of the yield that is used",
    SHARE,
    (0.05, 1.0),
    "The guideline's tables use 90 %. Less for a thread in a casting.",
);

/// Assembly preload.
pub static ASSEMBLY_PRELOAD: Calculation = Calculation {
    id: "assembly-preload",
    title: "Preload and torque at a share of the yield",
    purpose: "How hard a bolt can be pulled while the wrench twists it, and the torque that does it.",
    inputs: &[
        DIAMETER,
        PITCH,
        SYSTEM,
        YIELD,
        USED,
        THREAD_FRICTION,
        HEAD_FRICTION,
        FACE,
        HOLE,
    ],
    outputs: &[
        Output::of("preload", "preload", FORCE),
        Output::of("torque", "torque", TORQUE),
        Output::of("pull", "stress of the pull alone", STRESS),
    ],
    workings: &[
        "pull and twist together reach {used} of {yield-stress}: pull = used × yield ÷ √(1 + 3 × (3/2 × d2/d0 × (P/(π d2) + 1.155 μ))²) = {pull}",
        "preload = pull × area that carries = {preload}",
        "torque = preload × (thread + head) = {torque}",
    ],
    provenance: Provenance::Handbook(
        "VDI 2230 part 1 (2003, 2015), assembly preload and tightening torque",
    ),
    cautions: &[
        "This is what the bolt could bear, not what the joint wants. The maker's figure decides.",
        "A bolt that was pulled past its yield is used up, and may break in the pull: glasses on.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let parts = parts(given, &thread)?;
    let area = thread.stress_area();
    let carries = (&area * (4.0 / PI)).root();
    let twist = (thread.slope() + given.one(&THREAD_FRICTION)? * 1.155)
        * (thread.pitch_diameter() / &carries)
        * 1.5;
    let pull = given.one(&YIELD)? * given.one(&USED)? / (twist.square() * 3.0 + 1.0).root();
    let preload = &pull * &area;
    Ok(Answer::new()
        .with("torque", &preload * parts.whole())
        .with("preload", preload)
        .with("pull", pull))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{value, worked};

    // VDI 2230 part 1, fine threads: M12x1.25, 10.9, 0.10: 72.1 kN and 116 N·m.
    #[test]
    fn a_fine_bolt_takes_what_the_guideline_prints() {
        let given = si(&[
            ("diameter", 0.012),
            ("pitch", 0.001_25),
            ("system", 0.0),
            ("yield-stress", 940e6),
            ("used", 0.9),
            ("thread-friction", 0.10),
            ("head-friction", 0.10),
            ("face", 0.016_63),
            ("hole", 0.013_5),
        ]);
        let answer = worked(&ASSEMBLY_PRELOAD, &given);
        assert!((value(&answer, "preload", 1e3) - 72.1).abs() < 0.3);
        assert!((value(&answer, "torque", 1.0) - 116.0).abs() < 1.5);
        assert!(value(&answer, "pull", 1e6) < 0.9 * 940.0);
    }
}
