//! Torque and preload by the nut factor, with the band that friction makes.

use super::common::{
    DIAMETER, FORCE, FORCES, NUT_FACTOR, PITCH, PROOF, SHARE, STRESS, SYSTEM, TORQUE, TORQUES,
    per_cent, thread,
};
use super::thread::Thread;
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;

static TORQUE_IN: Input = Input::of(
    "torque",
    "torque",
    TORQUE,
    TORQUES,
    "What the wrench is set to.",
);
static PRELOAD_IN: Input = Input::of(
    "preload",
    "preload wanted",
    FORCE,
    FORCES,
    "From the fastener's sheet.",
);
static FRICTION: Input = Input::one_of(
    "friction",
    "thread and underside of the head",
    &[
        Choice {
            id: "oiled",
            label: "oiled or lubricated",
        },
        Choice {
            id: "dry",
            label: "dry or not known",
        },
    ],
    "Both faces count: oil on the thread alone is not oiled.",
);

/// How far the preload of one torque scatters to either side: NASA NSTS 08307,
/// Criteria for Preloaded Bolts, table of torque methods.
const OILED: f64 = 0.25;
const DRY: f64 = 0.35;

/// The preload that a torque gives: torque ÷ (nut factor × diameter).
#[must_use]
pub fn preload(torque: &Estimate, nut_factor: &Estimate, diameter: &Estimate) -> Estimate {
    torque / (nut_factor * diameter)
}

/// The torque that gives a preload: nut factor × diameter × preload.
#[must_use]
pub fn torque(preload: &Estimate, nut_factor: &Estimate, diameter: &Estimate) -> Estimate {
    nut_factor * diameter * preload
}

/// Preload from a torque.
pub static PRELOAD_FROM_TORQUE: Calculation = Calculation {
    id: "preload-from-torque",
    title: "Preload from a torque",
    purpose: "About how hard a torque pulls the bolt, between what limits, and how near that is to its proof load.",
    inputs: &[
        TORQUE_IN, DIAMETER, PITCH, SYSTEM, NUT_FACTOR, FRICTION, PROOF,
    ],
    outputs: &[
        Output::of("preload", "preload, about", FORCE),
        Output::of("least", "preload, least of the band", FORCE),
        Output::of("greatest", "preload, greatest of the band", FORCE),
        Output::of("stress", "stress in the thread, about", STRESS),
        Output::of("of-proof", "share of the proof load, about", SHARE),
        Output::of(
            "most-of-proof",
            "share of the proof load, greatest of the band",
            SHARE,
        ),
    ],
    workings: &[
        "preload = torque ÷ (nut factor × diameter) = {torque} ÷ ({nut-factor} × {diameter}) = {preload}",
        "band ±25 % oiled, ±35 % dry: {least} to {greatest}",
        "stress = preload ÷ area that carries = {stress}, of {proof-stress}: {of-proof}, at most {most-of-proof}",
    ],
    provenance: Provenance::Handbook(
        "T = K d F in mechanical engineering handbooks; bands of NASA NSTS 08307, Criteria for Preloaded Bolts",
    ),
    cautions: &[
        "A torque alone is no evidence of a preload: some nine tenths of it go into friction.",
        "The maker's torque for the lubricant it names decides. Do not oil what is meant dry.",
        "Clicking again proves that a bolt is not loose, never that it is not over-tight.",
    ],
    run: run_preload,
};

fn band(given: &Given) -> Result<f64, CalculationError> {
    Ok(match given.choice(&FRICTION)?.id {
        "oiled" => OILED,
        _ => DRY,
    })
}

fn judged(
    answer: Answer,
    given: &Given,
    thread: &Thread,
    preload: &Estimate,
) -> Result<Answer, CalculationError> {
    let scatter = band(given)?;
    let stress = preload / thread.stress_area();
    let mut answer = answer
        .with("least", preload * (1.0 - scatter))
        .with("greatest", preload * (1.0 + scatter));
    if let Some(proof) = given.optional(PROOF.id) {
        let share = &stress / proof;
        let most = &share * (1.0 + scatter);
        if share.value() > 1.0 {
            answer = answer.finding(
                Gravity::Stop,
                format!(
                    "About {} of the proof load: the bolt would be stretched for good. Look at torque, thread and mark again.",
                    per_cent(share.value())
                ),
            );
        } else if most.value() > 1.0 {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "At the upper end of the band the bolt reaches {} of its proof load. A measured stretch would say what it is.",
                    per_cent(most.value())
                ),
            );
        }
        answer = answer.with("of-proof", share).with("most-of-proof", most);
    }
    Ok(answer.with("stress", stress))
}

fn run_preload(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let pulls = preload(
        given.one(&TORQUE_IN)?,
        given.one(&NUT_FACTOR)?,
        thread.diameter(),
    );
    let answer = judged(Answer::new(), given, &thread, &pulls)?;
    Ok(answer.with("preload", pulls))
}

/// Torque for a preload.
pub static TORQUE_FOR_PRELOAD: Calculation = Calculation {
    id: "torque-for-preload",
    title: "Torque for a preload",
    purpose: "About what torque gives a preload, and between what limits the preload then lies.",
    inputs: &[
        PRELOAD_IN, DIAMETER, PITCH, SYSTEM, NUT_FACTOR, FRICTION, PROOF,
    ],
    outputs: &[
        Output::of("torque", "torque, about", TORQUE),
        Output::of("least", "preload, least of the band", FORCE),
        Output::of("greatest", "preload, greatest of the band", FORCE),
        Output::of("stress", "stress in the thread, about", STRESS),
        Output::of("of-proof", "share of the proof load, about", SHARE),
        Output::of(
            "most-of-proof",
            "share of the proof load, greatest of the band",
            SHARE,
        ),
    ],
    workings: &[
        "torque = nut factor × diameter × preload = {nut-factor} × {diameter} × {preload} = {torque}",
        "band ±25 % oiled, ±35 % dry: {least} to {greatest}",
        "stress = preload ÷ area that carries = {stress}, of {proof-stress}: {of-proof}, at most {most-of-proof}",
    ],
    provenance: PRELOAD_FROM_TORQUE.provenance,
    cautions: PRELOAD_FROM_TORQUE.cautions,
    run: run_torque,
};

fn run_torque(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let pulls = given.one(&PRELOAD_IN)?;
    let turns = torque(pulls, given.one(&NUT_FACTOR)?, thread.diameter());
    let answer = judged(Answer::new(), given, &thread, pulls)?;
    Ok(answer.with("torque", turns))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{says, value, worked};

    const INCH: f64 = 0.0254;
    const LBF: f64 = 4.448_221_615_260_5;

    fn bolt(torque: f64, friction: f64) -> Given {
        si(&[
            ("torque", torque),
            ("diameter", 0.4375 * INCH),
            ("pitch", INCH / 20.0),
            ("system", 1.0),
            ("nut-factor", 0.15),
            ("friction", friction),
        ])
    }

    // Worked by hand (common practice): 7/16-20, nut factor 0.15, 10 000 lbf: 54.7 ft-lb.
    #[test]
    fn the_worked_rod_bolt_comes_out_both_ways() {
        let foot_pounds = 12.0 * INCH * LBF;
        let answer = worked(&PRELOAD_FROM_TORQUE, &bolt(54.6875 * foot_pounds, 0.0));
        assert!((value(&answer, "preload", LBF) - 10_000.0).abs() < 0.01);
        assert!((value(&answer, "least", LBF) - 7_500.0).abs() < 0.01);
        assert!((value(&answer, "greatest", LBF) - 12_500.0).abs() < 0.01);
        let mut back = bolt(1.0, 1.0);
        back = back.with("preload", Estimate::exact(10_000.0 * LBF));
        let back = worked(&TORQUE_FOR_PRELOAD, &back);
        assert!((value(&back, "torque", foot_pounds) - 54.6875).abs() < 1e-4);
        assert!((value(&back, "least", LBF) - 6_500.0).abs() < 0.01);
    }

    #[test]
    fn the_upper_end_of_the_band_is_held_against_the_proof_load() {
        let proof = |share: f64| {
            let given = bolt(60.0, 0.0);
            let stress = worked(&PRELOAD_FROM_TORQUE, &given)
                .get("stress")
                .unwrap()
                .value();
            let given = given.with("proof-stress", Estimate::exact(stress / share));
            worked(&PRELOAD_FROM_TORQUE, &given)
        };
        assert!(proof(0.75).findings().is_empty());
        assert!(says(&proof(0.9), "upper end of the band"));
        assert_eq!(proof(1.1).findings()[0].gravity, Gravity::Stop);
    }
}
