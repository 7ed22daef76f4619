//! The loads that a bolt holds, by the mark on its head.

use super::common::{DIAMETER, FORCE, PITCH, STRESS, thread};
use super::strength::{PERMANENT, REUSED, strength};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Input, Output, Provenance,
};
use crate::fastener::common::SYSTEM;
use crate::measure::Estimate;

const fn mark(id: &'static str, label: &'static str) -> Choice {
    Choice { id, label }
}

static MARK: Input = Input::one_of(
    "mark",
    "mark on the head",
    &[
        mark("SAE J429 1", "inch, grade 1: no lines"),
        mark("SAE J429 2", "inch, grade 2: no lines"),
        mark("SAE J429 4", "inch, grade 4: studs"),
        mark("SAE J429 5", "inch, grade 5: three lines"),
        mark("SAE J429 5.2", "inch, grade 5.2"),
        mark("SAE J429 7", "inch, grade 7: five lines"),
        mark("SAE J429 8", "inch, grade 8: six lines"),
        mark("SAE J429 8.2", "inch, grade 8.2"),
        mark("ISO 898-1 4.6", "metric 4.6"),
        mark("ISO 898-1 4.8", "metric 4.8"),
        mark("ISO 898-1 5.6", "metric 5.6"),
        mark("ISO 898-1 5.8", "metric 5.8"),
        mark("ISO 898-1 6.8", "metric 6.8"),
        mark("ISO 898-1 8.8", "metric 8.8"),
        mark("ISO 898-1 9.8", "metric 9.8"),
        mark("ISO 898-1 10.9", "metric 10.9"),
        mark("ISO 898-1 12.9", "metric 12.9"),
    ],
    "Radial lines on an inch bolt's head, figures on a metric one. No mark: not known, and no bolt for the inside of an engine.",
);

/// Strength of a bolt.
pub static BOLT_STRENGTH: Calculation = Calculation {
    id: "bolt-strength",
    title: "Strength of a bolt",
    purpose: "What a bolt holds by its mark and thread: proof load, breaking load, and a usual preload.",
    inputs: &[DIAMETER, PITCH, SYSTEM, MARK],
    outputs: &[
        Output::of("proof-stress", "proof stress", STRESS),
        Output::of("yield-stress", "least yield stress", STRESS),
        Output::of("tensile-stress", "least tensile stress", STRESS),
        Output::of("proof-load", "proof load", FORCE),
        Output::of("breaking-load", "least breaking load", FORCE),
        Output::of(
            "reused",
            "usual preload of a bolt that comes off again",
            FORCE,
        ),
        Output::of("permanent", "usual preload of a bolt that stays", FORCE),
    ],
    workings: &[
        "by the standard: proof {proof-stress}, yield {yield-stress}, tensile {tensile-stress}",
        "loads = stress × area that carries: proof {proof-load}, breaking {breaking-load}",
        "three quarters of proof = {reused}, nine tenths = {permanent}",
    ],
    provenance: Provenance::Standard(
        "SAE J429; ISO 898-1:2013 tables 3 to 7; preload shares from mechanical engineering handbooks",
    ),
    cautions: &[
        "The maker's torque for this joint decides, not what the bolt could bear: the thread in the casting or the gasket may bear less.",
        "Rod, main and head bolts are often stronger than any mark. Never replace one by a bolt from the shelf.",
        "Never mix bolts of two marks in one joint.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let name = given.choice(&MARK)?.id;
    let row = name
        .rsplit_once(' ')
        .and_then(|(standard, mark)| strength(standard, mark, thread.diameter().value()))
        .ok_or_else(|| {
            CalculationError::not_possible(
                &DIAMETER,
                "the standard has no bolt of this mark in this size: look at the mark again, or use the bolt's own sheet",
            )
        })?;
    let area = thread.nominal_stress_area();
    let [proof_stress, yields, tensile] =
        [row.proof, row.yields, row.tensile].map(|printed| row.pascals(printed));
    let proof = &area * proof_stress;
    Ok(Answer::new()
        .with("proof-stress", Estimate::exact(proof_stress))
        .with("yield-stress", Estimate::exact(yields))
        .with("tensile-stress", Estimate::exact(tensile))
        .with("breaking-load", &area * tensile)
        .with("reused", &proof * REUSED)
        .with("permanent", &proof * PERMANENT)
        .with("proof-load", proof))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::describe::Takes;
    use crate::fit::readings::testing::{refused, value, worked};

    fn bolt(diameter: f64, pitch: f64, mark: &str) -> Given {
        let Takes::OneOf(marks) = MARK.takes else {
            panic!("a list of marks")
        };
        let place = marks.iter().position(|one| one.id == mark).unwrap();
        si(&[
            ("diameter", diameter),
            ("pitch", pitch),
            ("system", 0.0),
            ("mark", place as f64),
        ])
    }

    // ISO 898-1 table 5: M10, 8.8, 33 700 N; table 4: 46 400 N.
    #[test]
    fn a_metric_bolt_holds_what_the_table_prints() {
        let answer = worked(&BOLT_STRENGTH, &bolt(0.010, 0.0015, "ISO 898-1 8.8"));
        assert!((value(&answer, "proof-load", 1.0) - 33_700.0).abs() < 100.0);
        assert!((value(&answer, "breaking-load", 1.0) - 46_400.0).abs() < 100.0);
        let reused = value(&answer, "reused", 1.0) / value(&answer, "proof-load", 1.0);
        assert!((reused - 0.75).abs() < 1e-9);
    }

    #[test]
    fn every_mark_is_in_the_table_and_a_size_outside_is_told() {
        let Takes::OneOf(marks) = MARK.takes else {
            panic!("a list of marks")
        };
        for mark in marks {
            worked(&BOLT_STRENGTH, &bolt(0.010, 0.0015, mark.id));
        }
        assert_eq!(
            refused(&BOLT_STRENGTH, &bolt(0.020, 0.0025, "ISO 898-1 9.8")),
            Some("diameter")
        );
    }
}
