//! The stages of a tightening: equal steps to a final torque, the maker's own
//! list, snug and angles; and what is wrong with a list.

use super::common::{TORQUE, TORQUES};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// One lap over the whole group.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Stage {
    /// To a torque, newton metres.
    Torque(f64),
    /// On by an angle, radians.
    Angle(f64),
    /// To a stretch, metres.
    Stretch(f64),
}

/// What is wrong with a list of stages. Stages count from one.
#[derive(Clone, Copy, PartialEq, Debug, thiserror::Error)]
#[non_exhaustive]
pub enum StageError {
    /// There is none.
    #[error("there is no stage: type at least the final torque")]
    NoStage,
    /// A stage is not above nothing, or no number.
    #[error("stage {stage} is not a number above nothing: type its torque, angle or stretch")]
    NoNumber {
        /// Which one.
        stage: usize,
    },
    /// A torque lies below the one before.
    #[error(
        "stage {stage} is {torque:.1} N·m, less than the {before:.1} N·m before it: torques go up. If it is a new start, type it as a run of its own"
    )]
    GoesDown {
        /// Which one.
        stage: usize,
        /// Its torque.
        torque: f64,
        /// The torque before it.
        before: f64,
    },
    /// An angle comes before any torque.
    #[error(
        "stage {stage} is an angle, and no snug torque comes before it: an angle counts only from snug"
    )]
    AngleWithoutSnug {
        /// Which one.
        stage: usize,
    },
    /// A torque comes after an angle.
    #[error(
        "stage {stage} is a torque after an angle: an angle lap ends a tightening or is followed by another angle"
    )]
    TorqueAfterAngle {
        /// Which one.
        stage: usize,
    },
    /// An angle is more than a turn.
    #[error("stage {stage} is more than a whole turn: type degrees, one lap a stage")]
    MoreThanATurn {
        /// Which one.
        stage: usize,
    },
}

/// Checks a list of stages. A torque may be there twice in a row: a last lap
/// at the final torque catches bolts that their neighbours relaxed.
///
/// # Errors
/// The first thing that is wrong, with its stage.
///
/// ```
/// use assembly_core::fastener::stages::{Stage, StageError, check};
/// assert!(check(&[Stage::Torque(30.0), Stage::Angle(1.57)]).is_ok());
/// assert_eq!(
///     check(&[Stage::Angle(1.57)]),
///     Err(StageError::AngleWithoutSnug { stage: 1 })
/// );
/// ```
pub fn check(stages: &[Stage]) -> Result<(), StageError> {
    if stages.is_empty() {
        return Err(StageError::NoStage);
    }
    let mut torque: Option<f64> = None;
    let mut turned = false;
    for (stage, at) in (1..).zip(stages) {
        let (Stage::Torque(size) | Stage::Angle(size) | Stage::Stretch(size)) = *at;
        if !(size.is_finite() && size > 0.0) {
            return Err(StageError::NoNumber { stage });
        }
        match *at {
            Stage::Torque(_) if turned => return Err(StageError::TorqueAfterAngle { stage }),
            Stage::Torque(next) => {
                if let Some(before) = torque.filter(|before| next < before * (1.0 - 1e-9)) {
                    return Err(StageError::GoesDown {
                        stage,
                        torque: next,
                        before,
                    });
                }
                torque = Some(next);
            }
            Stage::Angle(_) if torque.is_none() => {
                return Err(StageError::AngleWithoutSnug { stage });
            }
            Stage::Angle(angle) if angle > std::f64::consts::TAU + 1e-9 => {
                return Err(StageError::MoreThanATurn { stage });
            }
            Stage::Angle(_) => turned = true,
            Stage::Stretch(_) => {}
        }
    }
    Ok(())
}

/// Equal steps to a final torque. Common practice, to be offered only when the
/// builder asks and has no list.
#[must_use]
pub fn equal_steps(last: f64, count: u8) -> Vec<Stage> {
    let count = count.max(1);
    (1..=count)
        .map(|step| Stage::Torque(last * (f64::from(step) / f64::from(count))))
        .collect()
}

/// Main cap stages that a public manual prints: snug, then on by an angle.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PrintedStages {
    /// The manual.
    pub manual: &'static str,
    /// Snug torque and how far it may be off, foot-pounds.
    pub snug: (f64, f64),
    /// Angle and how far it may be off, degrees.
    pub angle: (f64, f64),
}

/// For comparison only: for that manual's engine and no other.
pub static PRINTED: &[PrintedStages] = &[PrintedStages {
    manual: "TM 5-3825-226-24",
    snug: (30.0, 3.0),
    angle: (120.0, 5.0),
}];

static FINAL: Input = Input::of(
    "final",
    "final torque",
    TORQUE,
    TORQUES,
    "From the maker's sheet. If the sheet lists stages, use those and not this.",
);
static STAGES: Input = Input::of(
    "stages",
    "number of stages",
    (Kind::Count, UsualUnits::NONE),
    (1.0, 6.0),
    "Three or four are common.",
);

/// Stages of a torque.
pub static TORQUE_STAGES: Calculation = Calculation {
    id: "torque-stages",
    title: "Stages to a final torque",
    purpose: "Equal steps to a final torque, for a sheet that gives the final one alone.",
    inputs: &[FINAL, STAGES],
    outputs: &[
        Output::of("stage-1", "first lap", TORQUE),
        Output::of("stage-2", "second lap", TORQUE),
        Output::of("stage-3", "third lap", TORQUE),
        Output::of("stage-4", "fourth lap", TORQUE),
        Output::of("stage-5", "fifth lap", TORQUE),
        Output::of("stage-6", "sixth lap", TORQUE),
    ],
    workings: &[
        "each lap {final} ÷ {stages} more than the one before: {stage-1} {stage-2} {stage-3} {stage-4} {stage-5} {stage-6}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "The maker's list wins whenever there is one. Angle stages cannot be made up.",
        "Every bolt of the group gets the lap before any gets the next one. A last lap at the final torque catches bolts that their neighbours relaxed.",
        "Never put the wrench on an already tight bolt: back it off a quarter turn and pull again, smoothly.",
    ],
    run,
};

const LAPS: [&str; 6] = [
    "stage-1", "stage-2", "stage-3", "stage-4", "stage-5", "stage-6",
];

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (last, count) = (given.one(&FINAL)?, given.one(&STAGES)?.value());
    if count.fract() != 0.0 {
        return Err(CalculationError::not_possible(
            &STAGES,
            "stages are whole laps: type a whole number",
        ));
    }
    let answer = if count < 2.0 {
        Answer::new().finding(
            Gravity::Caution,
            "One lap pulls a gasket or cap down crooked: two at least.",
        )
    } else {
        Answer::new()
    };
    Ok(LAPS
        .iter()
        .zip(1_u8..)
        .map(|(id, lap)| (*id, f64::from(lap)))
        .take_while(|(_, lap)| *lap <= count)
        .fold(answer, |answer, (id, lap)| {
            // The last one is the final torque itself, to the last digit.
            let torque: Estimate = if lap < count {
                last * (lap / count)
            } else {
                last.clone()
            };
            answer.with(id, torque)
        }))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    // Common practice: 90 in three laps is 30, 60, 90.
    #[test]
    fn three_laps_are_thirds_and_the_last_is_the_final_torque() {
        let answer = worked(&TORQUE_STAGES, &si(&[("final", 90.0), ("stages", 3.0)]));
        let laps = ["stage-1", "stage-2", "stage-3"].map(|id| value(&answer, id, 1.0));
        assert_eq!(laps, [30.0, 60.0, 90.0]);
        assert!(answer.get("stage-4").is_none());
        assert!(says(
            &worked(&TORQUE_STAGES, &si(&[("final", 90.0), ("stages", 1.0)])),
            "crooked"
        ));
        assert_eq!(
            refused(&TORQUE_STAGES, &si(&[("final", 90.0), ("stages", 2.5)])),
            Some("stages")
        );
    }

    #[test]
    fn each_mistake_in_a_list_has_its_name() {
        use Stage::{Angle, Stretch, Torque};
        assert_eq!(check(&[]), Err(StageError::NoStage));
        assert_eq!(
            check(&[Torque(30.0), Torque(f64::NAN)]),
            Err(StageError::NoNumber { stage: 2 })
        );
        assert!(matches!(
            check(&[Torque(30.0), Torque(60.0), Torque(40.0)]),
            Err(StageError::GoesDown { stage: 3, .. })
        ));
        assert_eq!(
            check(&[Angle(1.0), Torque(30.0)]),
            Err(StageError::AngleWithoutSnug { stage: 1 })
        );
        assert_eq!(
            check(&[Torque(30.0), Angle(1.0), Torque(60.0)]),
            Err(StageError::TorqueAfterAngle { stage: 3 })
        );
        assert_eq!(
            check(&[Torque(30.0), Angle(90.0)]),
            Err(StageError::MoreThanATurn { stage: 2 })
        );
        assert!(check(&[Torque(30.0), Torque(60.0), Torque(60.0)]).is_ok());
        assert!(check(&[Torque(30.0), Angle(1.0), Angle(0.5)]).is_ok());
        assert!(check(&[Torque(30.0), Stretch(0.000_14)]).is_ok());
        let said = StageError::AngleWithoutSnug { stage: 1 }.to_string();
        assert!(said.contains("only from snug"));
    }

    proptest! {
        #[test]
        fn equal_steps_are_always_a_sound_list(last in 0.1..1000.0_f64, count in 0_u8..12) {
            let stages = equal_steps(last, count);
            prop_assert!(check(&stages).is_ok());
            prop_assert_eq!(stages.last(), Some(&Stage::Torque(last)));
        }
    }
}
