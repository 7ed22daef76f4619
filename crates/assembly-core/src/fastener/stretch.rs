//! Stretch of a bolt: from its preload, and the preload and torque from it.

use super::common::{
    DIAMETER, FORCE, FORCES, MODULUS, NUT_FACTOR, PITCH, PROOF, SHARE, STRESS, SYSTEM, TORQUE,
    per_cent, round, thread,
};
use super::short_form;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;

static PRELOAD_IN: Input = Input::of(
    "preload",
    "preload",
    FORCE,
    FORCES,
    "What the bolt is to be pulled to.",
);
static STRETCH_IN: Input = Input::gap(
    "stretch",
    "stretch",
    (1e-6, 0.004),
    "Length tight less length free, measured over the ends with a stretch gauge, zeroed on the relaxed bolt.",
);
/// Plain shank.
pub(super) static SHANK_LENGTH: Input = Input::size(
    "shank-length",
    "length of the plain shank",
    (0.0, 0.5),
    "Under the head to where the thread starts, only what is inside the joint; nothing for a bolt that is threaded all along.",
);
/// Diameter of the plain shank.
pub(super) static SHANK_DIAMETER: Input = Input::size(
    "shank-diameter",
    "diameter of the plain shank",
    (0.0015, 0.08),
    "At its thinnest; a necked bolt stretches there.",
);
/// Thread that is pulled.
pub(super) static THREAD_LENGTH: Input = Input::size(
    "thread-length",
    "length of thread that is pulled",
    (0.0, 0.5),
    "From the shank's end to the face of nut or casting, and some threads into it.",
);

/// How much a bolt gives for each unit of pull, metres a newton: the sum of
/// length ÷ area of its parts, over the stiffness of its metal.
#[must_use]
pub fn give(parts: &[(&Estimate, &Estimate)], modulus: &Estimate) -> Estimate {
    parts
        .iter()
        .map(|(length, area)| *length / *area)
        .reduce(|sum, one| sum + one)
        .unwrap_or_default()
        / modulus
}

/// The give of the bolt that was described.
pub(super) fn give_of(given: &Given) -> Result<Estimate, CalculationError> {
    let thread = thread(given)?;
    let (shank, threaded) = (given.one(&SHANK_LENGTH)?, given.one(&THREAD_LENGTH)?);
    if shank.value() + threaded.value() < 1e-4 {
        return Err(CalculationError::not_possible(
            &THREAD_LENGTH,
            "shank and thread together have no length: something has to stretch",
        ));
    }
    let area = round(given.one(&SHANK_DIAMETER)?);
    Ok(give(
        &[(shank, &area), (threaded, &thread.stress_area())],
        given.one(&MODULUS)?,
    ))
}

const BOOKS: Provenance = Provenance::Handbook(
    "stretch = F ÷ E × (shank length ÷ its area + thread length ÷ its stress area), mechanical engineering handbooks",
);
const CAUTIONS: &[&str] = &[
    "The bolt's sheet says the stretch, not this: rod bolts differ in length, neck and steel.",
    "Creep up on it. A bolt that went past its stretch is scrap, not a bolt to back off.",
    "One bolt of a pair below its stretch: loosen both and start again, do not crank the low one on.",
];

/// Stretch of a preload.
pub static BOLT_STRETCH: Calculation = Calculation {
    id: "bolt-stretch",
    title: "Stretch of a bolt",
    purpose: "How much longer a bolt gets when it is pulled.",
    inputs: &[
        PRELOAD_IN,
        SHANK_LENGTH,
        SHANK_DIAMETER,
        THREAD_LENGTH,
        DIAMETER,
        PITCH,
        SYSTEM,
        MODULUS,
    ],
    outputs: &[Output::gap("stretch", "stretch")],
    workings: &[
        "stretch = preload ÷ E × (shank ÷ its area + thread ÷ its area) = {preload} ÷ {modulus} × (…) = {stretch}",
    ],
    provenance: BOOKS,
    cautions: CAUTIONS,
    run: run_stretch,
};

fn run_stretch(given: &Given) -> Result<Answer, CalculationError> {
    let stretch = given.one(&PRELOAD_IN)? * give_of(given)?;
    Ok(Answer::new().with("stretch", stretch))
}

/// Preload and torque of a stretch.
pub static PRELOAD_FROM_STRETCH: Calculation = Calculation {
    id: "preload-from-stretch",
    title: "Preload and torque from a stretch",
    purpose: "How hard a bolt is pulled by its measured stretch, and about what torque that would be.",
    inputs: &[
        STRETCH_IN,
        SHANK_LENGTH,
        SHANK_DIAMETER,
        THREAD_LENGTH,
        DIAMETER,
        PITCH,
        SYSTEM,
        MODULUS,
        NUT_FACTOR,
        PROOF,
    ],
    outputs: &[
        Output::of("preload", "preload", FORCE),
        Output::of("torque", "torque that would give it, about", TORQUE),
        Output::of("stress", "stress in the thread", STRESS),
        Output::of("of-proof", "share of the proof load", SHARE),
    ],
    workings: &[
        "preload = stretch × E ÷ (shank ÷ its area + thread ÷ its area) = {preload}",
        "torque = nut factor × diameter × preload = {nut-factor} × {diameter} × {preload} = {torque}",
        "stress = preload ÷ area that carries = {stress}, {of-proof} of {proof-stress}",
    ],
    provenance: BOOKS,
    cautions: CAUTIONS,
    run: run_preload,
};

fn run_preload(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let preload = given.one(&STRETCH_IN)? / give_of(given)?;
    let torque = short_form::torque(&preload, given.one(&NUT_FACTOR)?, thread.diameter());
    let stress = &preload / thread.stress_area();
    let share = given.optional(PROOF.id).map(|proof| &stress / proof);
    let answer = match &share {
        Some(share) if share.value() > 1.0 => Answer::new().finding(
            Gravity::Stop,
            format!(
                "{} of the proof load: so long a stretch is past what the bolt springs back from. Look at the lengths again; if they are right, the bolt is scrap.",
                per_cent(share.value())
            ),
        ),
        _ => Answer::new(),
    };
    Ok(answer
        .with("preload", preload)
        .with("torque", torque)
        .with("stress", stress)
        .with_optional("of-proof", share))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    const INCH: f64 = 0.0254;
    const LBF: f64 = 4.448_221_615_260_5;

    fn rod_bolt(id: &'static str, amount: f64) -> Given {
        si(&[
            (id, amount),
            ("shank-length", 0.0),
            ("shank-diameter", 0.4375 * INCH),
            ("thread-length", 1.6 * INCH),
            ("diameter", 0.4375 * INCH),
            ("pitch", INCH / 20.0),
            ("system", 1.0),
            ("modulus", 30e6 * LBF / (INCH * INCH)),
            ("nut-factor", 0.15),
        ])
    }

    // Worked by hand (common practice): 7/16 bolt (0.1187 in²), 10 000 lbf over
    // 1.6 in: 0.0045 in; 54.7 ft-lb at a nut factor of 0.15.
    #[test]
    fn the_worked_rod_bolt_comes_out_both_ways() {
        let answer = worked(&BOLT_STRETCH, &rod_bolt("preload", 10_000.0 * LBF));
        let stretch = value(&answer, "stretch", INCH);
        assert!((stretch - 0.004_49).abs() < 2e-5, "{stretch}");
        let back = worked(&PRELOAD_FROM_STRETCH, &rod_bolt("stretch", stretch * INCH));
        assert!((value(&back, "preload", LBF) - 10_000.0).abs() < 5.0);
        assert!((value(&back, "torque", 12.0 * INCH * LBF) - 54.7).abs() < 0.05);
    }

    #[test]
    fn a_stretch_past_proof_and_a_bolt_of_no_length_are_told() {
        let far = rod_bolt("stretch", 0.012 * INCH).with("proof-stress", Estimate::exact(1e9));
        assert!(says(&worked(&PRELOAD_FROM_STRETCH, &far), "scrap"));
        let mut none = si(&[
            ("preload", 1e4),
            ("shank-length", 0.0),
            ("thread-length", 0.0),
        ]);
        for (id, value) in [
            ("shank-diameter", 0.01),
            ("diameter", 0.01),
            ("pitch", 0.0015),
            ("system", 0.0),
            ("modulus", 2e11),
        ] {
            none.push(id, Estimate::exact(value));
        }
        assert_eq!(refused(&BOLT_STRETCH, &none), Some("thread-length"));
    }
}
