//! Bow of a crankshaft: the run-out of its mains, and how neighbours may differ.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    UsualUnits, length_text,
};
use crate::fit::readings::same_count;
use crate::limits::about;
use crate::measure::Estimate;
use crate::quantity::Kind;

static RUN_OUT: Input = Input::gap(
    "run-out",
    "run-out of each main",
    (0.0, 0.01),
    "Ends in vee blocks or in their upper shells, indicator on each main from front to rear: the whole swing of the needle in one turn.",
)
.taking(Takes::OneOrMore);
static OUT_OF_ROUND: Input = Input::gap(
    "out-of-round",
    "out of round of each main",
    (0.0, 0.002),
    "From the micrometer, in the same order. It swings the needle too and is taken off. Leave it out when all are round.",
)
.taking(Takes::Any);
static HIGH_AT: Input = Input::of(
    "high-at",
    "where each main reads highest",
    (Kind::Angle, UsualUnits::of("°", "°")),
    (0.0, TAU),
    "Degrees of the crank from a mark of your own, in the same order. Needed for the rule of neighbours.",
)
.taking(Takes::Any);

const INCH: f64 = 0.0254;
/// The most that neighbours may add up to with their high spots opposite, and
/// that they may differ with the high spots on one side (TM 9-2815-202-34).
const MOST_OPPOSITE_OR_SAME: f64 = 0.003 * INCH;
/// The most that neighbours may add up to with their high spots a quarter turn
/// apart (TM 9-2815-202-34).
const MOST_AT_RIGHT_ANGLES: f64 = 0.004 * INCH;

/// Bow of a crankshaft.
pub static CRANK_BOW: Calculation = Calculation {
    id: "crank-bow",
    title: "Crankshaft bow",
    purpose: "Whether a crankshaft is straight, as a whole and from main to main.",
    inputs: &[RUN_OUT, OUT_OF_ROUND, HIGH_AT],
    outputs: &[
        Output::gap("worst", "worst run-out, out of round taken off"),
        Output::gap("bow", "bow"),
        Output::gap("neighbours", "worst figure of two neighbours"),
    ],
    workings: &[
        "run-out of each main less its out of round, worst {worst}",
        "bow = half of that = {bow}",
        "neighbours with high spots opposite or at right angles: their sum; on one side: their difference; worst {neighbours}",
    ],
    provenance: Provenance::Handbook(
        "TM 9-2815-202-34 for the rule of neighbours; the whole is common practice",
    ),
    cautions: &[
        "Straightening is for a shop that does it daily: a crank that was bent cold can crack. Have it crack-tested before and after.",
    ],
    run,
};

/// The figure of two neighbours, and the most it may be.
fn neighbours(one: (&Estimate, f64), next: (&Estimate, f64)) -> (Estimate, f64) {
    let turned = (one.1 - next.1).rem_euclid(TAU);
    let apart = turned.min(TAU - turned);
    // Each of the three cases has an eighth of a turn to either side.
    if apart < FRAC_PI_2 / 2.0 {
        (one.0.apart_from(next.0), MOST_OPPOSITE_OR_SAME)
    } else if apart > PI - FRAC_PI_2 / 2.0 {
        (one.0 + next.0, MOST_OPPOSITE_OR_SAME)
    } else {
        (one.0 + next.0, MOST_AT_RIGHT_ANGLES)
    }
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let read = given.several(RUN_OUT.id);
    let rounds = given.several(OUT_OF_ROUND.id);
    let angles = given.several(HIGH_AT.id);
    if !rounds.is_empty() {
        same_count(given, &RUN_OUT, &OUT_OF_ROUND)?;
    }
    if !angles.is_empty() {
        same_count(given, &RUN_OUT, &HIGH_AT)?;
    }
    let nothing = Estimate::exact(0.0);
    let true_run_out: Vec<Estimate> = read
        .iter()
        .enumerate()
        .map(|(main, swing)| {
            let less = swing - rounds.get(main).unwrap_or(&nothing);
            // Out of round cannot hide more than the whole swing.
            if less.value() < 0.0 {
                nothing.clone()
            } else {
                less
            }
        })
        .collect();
    let worst = Estimate::greatest(&true_run_out)
        .cloned()
        .unwrap_or_default();
    let mut answer = Answer::new().remarked(&worst, about("crank-bow", ""));
    let mains: Vec<(&Estimate, f64)> = true_run_out
        .iter()
        .zip(angles.iter().map(Estimate::value))
        .collect();
    let pairs: Vec<(Estimate, f64)> = mains
        .iter()
        .zip(mains.iter().skip(1))
        .map(|(one, next)| neighbours(*one, *next))
        .collect();
    for ((figure, most), main) in pairs.iter().zip(1..) {
        if figure.value() > *most {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "Mains {main} and {}: {} is over the {} that neighbours may have (TM 9-2815-202-34). The maker's sheet decides.",
                    main + 1,
                    length_text(figure.value()),
                    length_text(*most)
                ),
            );
        }
    }
    if angles.is_empty() && read.len() > 1 {
        answer = answer.finding(
            Gravity::Note,
            "Note where each main reads highest: neighbours bent to opposite sides bind sooner.",
        );
    }
    let figures: Vec<Estimate> = pairs.into_iter().map(|(figure, _)| figure).collect();
    Ok(answer
        .with("bow", &worst / 2.0)
        .with("worst", worst)
        .with_optional("neighbours", Estimate::greatest(&figures).cloned()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, refused, says, value, worked};

    fn bow(run_out: &[f64], degrees: &[f64]) -> Answer {
        let mut given = given(THOU, &[("run-out", run_out)]);
        for angle in degrees {
            given.push("high-at", Estimate::exact(angle.to_radians()));
        }
        worked(&CRANK_BOW, &given)
    }

    #[test]
    fn half_the_swing_is_the_bow_and_out_of_round_is_taken_off() {
        let given = given(
            THOU,
            &[
                ("run-out", &[0.5, 1.8, 0.4]),
                ("out-of-round", &[0.0, 0.4, 0.6]),
            ],
        );
        let answer = worked(&CRANK_BOW, &given);
        assert_eq!(value(&answer, "worst", THOU), 1.4);
        assert_eq!(value(&answer, "bow", THOU), 0.7);
    }

    // The rule of TM 9-2815-202-34: opposite highs add up to at most 3 thou, highs
    // on one side differ by at most 3, at right angles they add up to at most 4.
    #[test]
    fn neighbours_are_judged_by_where_they_are_high() {
        assert!(says(&bow(&[1.8, 1.6], &[0.0, 180.0]), "Mains 1 and 2"));
        assert!(!says(&bow(&[1.8, 1.6], &[0.0, 90.0]), "Mains 1 and 2"));
        assert!(says(&bow(&[2.5, 1.8], &[0.0, 270.0]), "Mains 1 and 2"));
        assert!(!says(&bow(&[4.5, 1.8], &[350.0, 10.0]), "Mains 1 and 2"));
        assert_eq!(
            value(&bow(&[4.5, 1.8], &[350.0, 10.0]), "neighbours", THOU),
            2.7
        );
    }

    #[test]
    fn angles_for_some_mains_only_are_refused() {
        let mut given = given(THOU, &[("run-out", &[1.0, 1.0])]);
        given.push("high-at", Estimate::exact(0.0));
        assert_eq!(refused(&CRANK_BOW, &given), Some("high-at"));
    }
}
