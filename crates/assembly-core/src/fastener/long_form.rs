//! Torque and preload with the friction of thread and head each for itself.

use super::common::{DIAMETER, FORCE, PITCH, SYSTEM, TORQUE, TORQUES, thread};
use super::thread::Thread;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// Cosine of half the thread's angle of 60°.
const HALF_ANGLE: f64 = 0.866_025_403_784_438_6;

/// Friction in the thread.
pub(super) static THREAD_FRICTION: Input = Input::ratio(
    "thread-friction",
    "friction in the thread",
    (0.02, 0.6),
    "From the lubricant's sheet; common 0.08 to 0.16 oiled or greased, 0.14 to 0.24 as delivered (VDI 2230 classes B and C).",
);
/// Friction under the head.
pub(super) static HEAD_FRICTION: Input = Input::ratio(
    "head-friction",
    "friction under the head",
    (0.02, 0.6),
    "The same for the face under head or nut: it may be another lubricant, or none.",
);
/// Outside of the bearing face.
pub(super) static FACE: Input = Input::size(
    "face",
    "outside of the face under the head",
    (0.003, 0.15),
    "Where head, nut or washer really bears.",
);
/// Hole.
pub(super) static HOLE: Input = Input::size(
    "hole",
    "hole under the head",
    (0.001, 0.1),
    "The clearance hole with its chamfer, or the washer's hole.",
);
static TORQUE_IN: Input = Input::of(
    "torque",
    "torque",
    TORQUE,
    TORQUES,
    "What the wrench is set to.",
);

/// The torque for each unit of preload, part by part.
#[derive(Clone, PartialEq, Debug)]
pub struct TorqueParts {
    /// In the thread: what lifts and what rubs.
    pub thread: Estimate,
    /// What alone would lift on a thread without friction.
    pub lift: Estimate,
    /// Under the head.
    pub head: Estimate,
}

impl TorqueParts {
    /// Of a thread with these coefficients and this mean diameter under the
    /// head: d2/2 × (tan φ + μ/cos 30°) ÷ (1 − tan φ × μ/cos 30°) in the thread,
    /// μ × mean diameter ÷ 2 under the head. VDI 2230 part 1 writes the same,
    /// rounded, as 0.16 P + 0.58 d2 μ + D μ/2.
    #[must_use]
    pub fn of(
        thread: &Thread,
        thread_friction: &Estimate,
        head_friction: &Estimate,
        head_diameter: &Estimate,
    ) -> Self {
        let slope = thread.slope();
        let rubs = thread_friction / HALF_ANGLE;
        let wedge = (&slope + &rubs) / (&slope * &rubs * -1.0 + 1.0);
        Self {
            lift: thread.pitch() / (2.0 * std::f64::consts::PI),
            thread: thread.pitch_diameter() / 2.0 * wedge,
            head: head_friction * head_diameter / 2.0,
        }
    }

    /// All of it: metres, torque for each unit of preload.
    #[must_use]
    pub fn whole(&self) -> Estimate {
        &self.thread + &self.head
    }
}

/// Preload with both frictions.
pub static PRELOAD_TWO_FRICTIONS: Calculation = Calculation {
    id: "preload-two-frictions",
    title: "Preload from a torque, thread and head apart",
    purpose: "What a torque does when thread and head are lubricated differently, and where it goes.",
    inputs: &[
        TORQUE_IN,
        DIAMETER,
        PITCH,
        SYSTEM,
        THREAD_FRICTION,
        HEAD_FRICTION,
        FACE,
        HOLE,
    ],
    outputs: &[
        Output::of("preload", "preload", FORCE),
        Output::ratio("nut-factor", "the nut factor that this is"),
        Output::of(
            "lift-share",
            "torque that stretches the bolt",
            (Kind::Ratio, UsualUnits::SHARE),
        ),
        Output::of(
            "thread-share",
            "torque lost in the thread",
            (Kind::Ratio, UsualUnits::SHARE),
        ),
        Output::of(
            "head-share",
            "torque lost under the head",
            (Kind::Ratio, UsualUnits::SHARE),
        ),
    ],
    workings: &[
        "thread: d2/2 × (tan φ + μ/cos 30°) ÷ (1 − tan φ × μ/cos 30°), μ = {thread-friction}",
        "head: μ × ({face} + {hole}) ÷ 4, μ = {head-friction}",
        "preload = {torque} ÷ (thread + head) = {preload}, nut factor {nut-factor}",
        "of the torque {lift-share} stretch the bolt, {thread-share} rub in the thread, {head-share} under the head",
    ],
    provenance: Provenance::Handbook(
        "VDI 2230 part 1, assembly torque; power screw with collar in mechanical engineering handbooks",
    ),
    cautions: &[
        "Friction is never known to better than some tenths of itself: take the result as a band.",
        "The state is a pair, thread and underside of the head. The maker's sheet says what belongs on each.",
    ],
    run,
};

/// Mean diameter of the face under the head.
pub(super) fn head_diameter(given: &Given) -> Result<Estimate, CalculationError> {
    let (face, hole) = (given.one(&FACE)?, given.one(&HOLE)?);
    if hole.value() >= face.value() {
        return Err(CalculationError::not_possible(
            &HOLE,
            "the hole is not smaller than the face that bears on it: measure both again",
        ));
    }
    Ok((face + hole) / 2.0)
}

/// The parts of the torque from what was given.
pub(super) fn parts(given: &Given, thread: &Thread) -> Result<TorqueParts, CalculationError> {
    let friction = given.one(&THREAD_FRICTION)?;
    let locks = thread.slope().value() * friction.value() / HALF_ANGLE;
    if locks >= 0.5 {
        return Err(CalculationError::not_possible(
            &PITCH,
            "so steep a thread is no fastener's: type the distance from one thread to the next",
        ));
    }
    Ok(TorqueParts::of(
        thread,
        friction,
        given.one(&HEAD_FRICTION)?,
        &head_diameter(given)?,
    ))
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let parts = parts(given, &thread)?;
    let whole = parts.whole();
    Ok(Answer::new()
        .with("preload", given.one(&TORQUE_IN)? / &whole)
        .with("nut-factor", &whole / thread.diameter())
        .with("lift-share", &parts.lift / &whole)
        .with("thread-share", (&parts.thread - &parts.lift) / &whole)
        .with("head-share", &parts.head / &whole))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{refused, value, worked};

    fn bolt(thread: f64, head: f64) -> Given {
        si(&[
            ("torque", 50.0),
            ("diameter", 0.010),
            ("pitch", 0.0015),
            ("system", 0.0),
            ("thread-friction", thread),
            ("head-friction", head),
            ("face", 0.014_63),
            ("hole", 0.011),
        ])
    }

    // VDI 2230 part 1: M10, 0.12 in both, 43.4 kN at 71 N·m.
    #[test]
    fn a_hexagon_bolt_takes_the_torque_of_the_guideline() {
        let answer = worked(&PRELOAD_TWO_FRICTIONS, &bolt(0.12, 0.12));
        let torque = 43_400.0 * 50.0 / value(&answer, "preload", 1.0);
        assert!((torque / 71.0 - 1.0).abs() < 0.02, "{torque}");
        // About a tenth stretches the bolt.
        assert!((value(&answer, "lift-share", 1.0) - 0.146).abs() < 0.01);
    }

    #[test]
    fn a_hole_as_large_as_its_face_is_told() {
        let given = si(&[
            ("torque", 50.0),
            ("diameter", 0.010),
            ("pitch", 0.0015),
            ("system", 0.0),
            ("thread-friction", 0.1),
            ("head-friction", 0.1),
            ("face", 0.011),
            ("hole", 0.011),
        ]);
        assert_eq!(refused(&PRELOAD_TWO_FRICTIONS, &given), Some("hole"));
    }

    proptest! {
        #[test]
        fn the_shares_are_the_whole_and_more_friction_is_less_preload(
            thread in 0.04..0.3_f64, head in 0.04..0.3_f64, more in 0.01..0.1_f64,
        ) {
            let answer = worked(&PRELOAD_TWO_FRICTIONS, &bolt(thread, head));
            let shares = ["lift-share", "thread-share", "head-share"].map(|id| answer.get(id).unwrap().value());
            prop_assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12);
            prop_assert!(shares.iter().all(|one| *one > 0.0));
            let preload = answer.get("preload").unwrap().value();
            for worse in [bolt(thread + more, head), bolt(thread, head + more)] {
                prop_assert!(worked(&PRELOAD_TWO_FRICTIONS, &worse).get("preload").unwrap().value() < preload);
            }
        }
    }
}
