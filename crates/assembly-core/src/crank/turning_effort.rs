//! Turning effort of the crank as caps and pistons go on.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

const TORQUE: (Kind, UsualUnits) = (Kind::Torque, UsualUnits::TORQUE);
const EFFORTS: (f64, f64) = (0.0, 300.0);

static STEPS: Input = Input::of(
    "efforts",
    "effort after each part went on",
    TORQUE,
    EFFORTS,
    "Beam wrench on the crank's nose, turned slowly and steadily: one reading for the crank alone, then one after each cap or piston, in their order.",
)
.one_or_more();
static MOST: Input = Input::of(
    "most",
    "most that one part may add",
    TORQUE,
    EFFORTS,
    "From your own sheet; leave it out to compare the parts with each other.",
)
.optional();
static EASIEST: Input = Input::of(
    "easiest",
    "least effort within a turn",
    TORQUE,
    EFFORTS,
    "The lowest that the beam shows in one slow turn.",
)
.optional();
static HARDEST: Input = Input::of(
    "hardest",
    "greatest effort within a turn",
    TORQUE,
    EFFORTS,
    "The highest that the beam shows in the same turn.",
)
.optional();

/// A part that adds more than so many times what the others do is asked about.
/// This project's own choice: the trade only says "a jump".
const A_JUMP: f64 = 2.0;

/// Turning effort.
pub static TURNING_EFFORT: Calculation = Calculation {
    id: "turning-effort",
    title: "Turning effort",
    purpose: "Which cap or piston makes the crank turn harder than the others do.",
    inputs: &[STEPS, MOST, EASIEST, HARDEST],
    outputs: &[
        Output::of("whole", "effort now", TORQUE),
        Output::of("greatest-jump", "most that one part added", TORQUE),
        Output::of("usual-jump", "what a part usually added", TORQUE),
        Output::ratio(
            "which",
            "the part that added most, counted from the first after the crank",
        ),
        Output::of("lumpiness", "greatest less least within a turn", TORQUE),
    ],
    workings: &[
        "effort now = last reading = {whole}",
        "greatest jump from one reading to the next: {greatest-jump}, at part {which}; usual {usual-jump}",
        "lumpiness = {hardest} − {easiest} = {lumpiness}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "The jump tells, not the sum: seals, rings and oil make any whole value possible.",
        "When the crank binds at a cap, stop: do not turn it free with a bar. Take that cap off and look.",
    ],
    run,
};

/// The middle of some values: half of them are not above it.
fn usual(values: &[Estimate]) -> Option<&Estimate> {
    let mut sorted: Vec<&Estimate> = values.iter().collect();
    sorted.sort_by(|one, other| one.value().total_cmp(&other.value()));
    sorted.get(sorted.len().checked_sub(1)? / 2).copied()
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let efforts = given.several(STEPS.id);
    let jumps: Vec<Estimate> = efforts
        .iter()
        .zip(efforts.iter().skip(1))
        .map(|(before, after)| after - before)
        .collect();
    let greatest = Estimate::greatest(&jumps).cloned();
    let which = greatest.as_ref().and_then(|most| {
        let place = jumps.iter().position(|one| one.value() >= most.value())?;
        Some(Estimate::exact((place + 1) as f64))
    });
    let lumpiness = match (given.optional(EASIEST.id), given.optional(HARDEST.id)) {
        (Some(easiest), Some(hardest)) if hardest.value() < easiest.value() => {
            return Err(CalculationError::not_possible(
                &HARDEST,
                "it is less than the least effort of the same turn: swap the two",
            ));
        }
        (Some(easiest), Some(hardest)) => Some(hardest - easiest),
        _ => None,
    };
    let mut answer = Answer::new();
    if let (Some(most), Some(which)) = (&greatest, &which) {
        let allowed = given.optional(MOST.id).map(Estimate::value);
        let beside = usual(&jumps).map_or(0.0, Estimate::value);
        let odd = jumps.len() > 2 && most.value() > A_JUMP * beside.max(0.0) && most.value() > 0.0;
        if allowed.is_some_and(|allowed| most.value() > allowed) || (allowed.is_none() && odd) {
            answer = answer.finding(
                Gravity::Stop,
                format!(
                    "Part {:.0} made it harder than it should: take it off again and look, before the next one goes on.",
                    which.value()
                ),
            );
        }
        if jumps.iter().any(|one| one.value() < 0.0) {
            answer = answer.finding(
                Gravity::Note,
                "One reading is less than the one before: turn it some turns more and read again.",
            );
        }
    }
    Ok(answer
        .with("whole", efforts.last().cloned().unwrap_or_default())
        .with_optional("usual-jump", usual(&jumps).cloned())
        .with_optional("greatest-jump", greatest)
        .with_optional("which", which)
        .with_optional("lumpiness", lumpiness))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    const FT_LB: f64 = 1.355_817_948_331_4;

    #[test]
    fn the_part_that_makes_it_jump_is_named() {
        let efforts = [2.0, 3.5, 5.0, 9.0, 10.5];
        let answer = worked(&TURNING_EFFORT, &given(FT_LB, &[("efforts", &efforts)]));
        assert!((value(&answer, "whole", FT_LB) - 10.5).abs() < 1e-6);
        assert!((value(&answer, "greatest-jump", FT_LB) - 4.0).abs() < 1e-6);
        assert_eq!(value(&answer, "which", 1.0), 3.0);
        assert!(says(&answer, "Part 3"));
        let even = worked(
            &TURNING_EFFORT,
            &given(FT_LB, &[("efforts", &[2.0, 3.5, 5.0, 6.5, 8.2])]),
        );
        assert!(even.findings().is_empty());
    }

    #[test]
    fn the_builders_own_limit_wins_over_comparing() {
        let own = |most: f64| {
            given(
                FT_LB,
                &[("efforts", &[2.0, 3.5, 5.0, 9.0]), ("most", &[most])],
            )
        };
        assert!(worked(&TURNING_EFFORT, &own(4.5)).findings().is_empty());
        assert!(says(&worked(&TURNING_EFFORT, &own(3.0)), "Part 3"));
    }

    #[test]
    fn a_turn_upside_down_is_told() {
        let turn = given(
            1.0,
            &[
                ("efforts", &[5.0]),
                ("easiest", &[4.0]),
                ("hardest", &[3.0]),
            ],
        );
        assert_eq!(refused(&TURNING_EFFORT, &turn), Some("hardest"));
        let turn = given(
            1.0,
            &[
                ("efforts", &[5.0]),
                ("easiest", &[3.0]),
                ("hardest", &[7.0]),
            ],
        );
        assert_eq!(
            value(&worked(&TURNING_EFFORT, &turn), "lumpiness", 1.0),
            4.0
        );
    }
}
