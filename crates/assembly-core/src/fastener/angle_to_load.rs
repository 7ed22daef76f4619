//! Turning a bolt on by an angle from snug: what load that adds.

use std::f64::consts::PI;

use super::common::{
    ANGLE, DIAMETER, FORCE, FORCES, MODULUS, PITCH, PROOF, SHARE, SYSTEM, per_cent, thread,
};
use super::joint::{CLAMPED, clamped, clamped_stiffness};
use super::stretch::{SHANK_DIAMETER, SHANK_LENGTH, THREAD_LENGTH, give_of};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::measure::Estimate;

static SNUG: Input = Input::of(
    "snug",
    "load at snug",
    FORCE,
    FORCES,
    "About what the snug torque gives, see preload from a torque.",
);
static ANGLES: Input = Input::of(
    "angles",
    "angle of each lap",
    ANGLE,
    (0.01, 8.0),
    "As the sheet lists them, one lap each: 60° and 30° are two laps and not one of 90°.",
)
.taking(Takes::OneOrMore);

/// How far along the thread a turn by this angle goes.
#[must_use]
pub fn advance(pitch: &Estimate, angle: &Estimate) -> Estimate {
    pitch * angle / (2.0 * PI)
}

/// By what angle a bolt is turned to go so far along its thread: what gives
/// this stretch when nothing but the bolt gives.
#[must_use]
pub fn angle_of(advance: &Estimate, pitch: &Estimate) -> Estimate {
    advance / pitch * (2.0 * PI)
}

/// Angle to load.
pub static ANGLE_TO_LOAD: Calculation = Calculation {
    id: "angle-to-load",
    title: "Load from an angle",
    purpose: "What load turning a bolt on by the listed angles adds, while it is elastic.",
    inputs: &[
        SNUG,
        ANGLES,
        SHANK_LENGTH,
        SHANK_DIAMETER,
        THREAD_LENGTH,
        DIAMETER,
        PITCH,
        SYSTEM,
        MODULUS,
        CLAMPED,
        PROOF,
    ],
    outputs: &[
        Output::of("whole-angle", "angle of all laps", ANGLE),
        Output::gap("advance", "advance along the thread"),
        Output::of("added", "load added", FORCE),
        Output::of("added-if-rigid", "the same if only the bolt gave", FORCE),
        Output::of("load", "load then", FORCE),
        Output::of("of-proof", "share of the proof load", SHARE),
    ],
    workings: &[
        "advance = pitch × angle ÷ 360° = {pitch} × {whole-angle} ÷ 360° = {advance}",
        "load added = advance ÷ (give of the bolt + give of the clamped parts) = {added}; if only the bolt gave {added-if-rigid}",
        "load = {snug} + {added} = {load}, {of-proof} of proof",
    ],
    provenance: Provenance::Handbook(
        "turn of the nut, mechanical engineering handbooks; stiffness of the parts after J. Wileman and others (1991)",
    ),
    cautions: &[
        "An angle counts only from snug, and only after every bolt of the group is at snug.",
        "Each listed angle is a lap of its own over the whole group. Never merge two.",
        "Past the angle: back right off and begin again at snug, or take a new bolt. A stretch bolt is used once.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let thread = thread(given)?;
    let whole = given
        .several(ANGLES.id)
        .iter()
        .cloned()
        .reduce(|sum, one| sum + one)
        .map_or_else(|| given.one(&ANGLES).cloned(), Ok)?;
    let advance = advance(thread.pitch(), &whole);
    let bolt = give_of(given)?;
    let grip = given.one(&SHANK_LENGTH)? + given.one(&THREAD_LENGTH)?;
    if grip.value() < thread.diameter().value() * 0.1 {
        return Err(CalculationError::not_possible(
            &THREAD_LENGTH,
            "bolt and thread are shorter than a tenth of the diameter: nothing could stretch. Type what lies between head and casting.",
        ));
    }
    let metal = clamped(given.choice(&CLAMPED)?.id).map_or((207e9, 0.787_15, 0.628_73), |one| {
        (one.modulus, one.a, one.b)
    });
    let parts = clamped_stiffness(
        &Estimate::exact(metal.0),
        thread.diameter(),
        &grip,
        (metal.1, metal.2),
    );
    let added = &advance / (&bolt + parts.power(-1.0));
    let load = given.one(&SNUG)? + &added;
    let mut answer = Answer::new();
    if given.several(ANGLES.id).len() > 1 {
        answer = answer.finding(
            Gravity::Note,
            "These are so many laps over the whole group, in this order.",
        );
    }
    let share = given
        .optional(PROOF.id)
        .map(|proof| &load / (proof * thread.stress_area()));
    if share.as_ref().is_some_and(|share| share.value() > 1.0) {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "{} of the proof load if it stayed elastic: this is a bolt that is stretched for good, and used once.",
                per_cent(share.as_ref().map_or(0.0, Estimate::value))
            ),
        );
    }
    Ok(answer
        .with("added-if-rigid", &advance / &bolt)
        .with("whole-angle", whole)
        .with("advance", advance)
        .with("added", added)
        .with("load", load)
        .with_optional("of-proof", share))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{says, value, worked};

    fn head_bolt(angles: &[f64]) -> Given {
        let mut given = si(&[
            ("snug", 10e3),
            ("shank-length", 0.080),
            ("shank-diameter", 0.009),
            ("thread-length", 0.020),
            ("diameter", 0.010),
            ("pitch", 0.0015),
            ("system", 0.0),
            ("modulus", 207e9),
            ("clamped-metal", 1.0),
        ]);
        for angle in angles {
            given.push("angles", Estimate::exact(angle.to_radians()));
        }
        given
    }

    // Worked by hand: a quarter turn of a pitch of 1.5 mm is 0.375 mm.
    #[test]
    fn a_quarter_turn_advances_a_quarter_pitch_and_the_parts_share_it() {
        let answer = worked(&ANGLE_TO_LOAD, &head_bolt(&[90.0]));
        assert!((value(&answer, "advance", 1e-3) - 0.375).abs() < 1e-9);
        let (added, rigid) = (
            value(&answer, "added", 1.0),
            value(&answer, "added-if-rigid", 1.0),
        );
        assert!(added < rigid && added > 0.5 * rigid, "{added} {rigid}");
    }

    #[test]
    fn two_laps_are_told_as_two_and_a_stretch_bolt_as_one() {
        let two = worked(&ANGLE_TO_LOAD, &head_bolt(&[60.0, 30.0]));
        assert!(says(&two, "laps over the whole group"));
        let far = head_bolt(&[90.0, 90.0]).with("proof-stress", Estimate::exact(830e6));
        assert!(says(&worked(&ANGLE_TO_LOAD, &far), "used once"));
    }
}
