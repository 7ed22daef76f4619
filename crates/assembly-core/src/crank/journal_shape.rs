//! Taper and out of round of a journal, and the three lobes that a micrometer
//! cannot feel.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{mean_of, span};
use crate::limits::about;
use crate::measure::Estimate;

const SIZES: (f64, f64) = (0.005, 0.6);

static FRONT: Input = Input::size(
    "front",
    "front of the journal",
    SIZES,
    "One side of the oil hole, clear of the fillet, in two or three directions around.",
)
.taking(Takes::OneOrMore);
static REAR: Input = Input::size(
    "rear",
    "rear of the journal",
    SIZES,
    "The other side of the oil hole, in the same directions.",
)
.taking(Takes::OneOrMore);
static VEE: Input = Input::gap(
    "vee-swing",
    "swing in a 60° vee block",
    (0.0, 0.001),
    "Lay the journal in a vee block of 60°, an indicator over the middle of the vee, and turn it once: the whole swing of the needle.",
)
.optional();

/// How many times its own size a three-lobed form swings the needle over the
/// middle of a 60° vee.
const VEE_MAGNIFIES: f64 = 3.0;

/// The shape of a journal.
pub static JOURNAL_SHAPE: Calculation = Calculation {
    id: "journal-shape",
    title: "Journal taper and out of round",
    purpose: "Whether a journal is straight and round enough to be used.",
    inputs: &[FRONT, REAR, VEE],
    outputs: &[
        Output::gap("taper", "taper from end to end"),
        Output::gap("out-of-round", "out of round, worst end"),
        Output::gap("lobing", "three-lobed form"),
    ],
    workings: &[
        "taper = |mean of the front − mean of the rear| = {taper}",
        "out of round = largest − smallest reading at one end = {out-of-round}",
        "three lobes = swing in the vee ÷ 3 = {vee-swing} ÷ 3 = {lobing}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Polishing mends neither taper nor out of round: the journal is ground, and then all journals of its kind.",
        "A micrometer measures across two points and is blind to three lobes. Only a vee block or a roundness gauge shows them.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let taper = mean_of(given, &FRONT)?.apart_from(&mean_of(given, &REAR)?);
    let ends = [span(given.several(FRONT.id)), span(given.several(REAR.id))];
    let out_of_round = Estimate::greatest(&ends).cloned().unwrap_or_default();
    let lobing = given.optional(VEE.id).map(|swing| swing / VEE_MAGNIFIES);
    let directions = given
        .several(FRONT.id)
        .len()
        .min(given.several(REAR.id).len());
    let mut answer = Answer::new()
        .remarked(&taper, about("journal-taper", ""))
        .remarked(&out_of_round, about("journal-out-of-round", ""));
    if directions < 2 {
        answer = answer.finding(
            Gravity::Caution,
            "With one direction at an end nothing is known of its roundness: measure at least two, a quarter turn apart.",
        );
    }
    answer = match &lobing {
        Some(lobing) => answer.remarked(lobing, about("journal-out-of-round", "")),
        None => answer.finding(
            Gravity::Note,
            "Three lobes would not show in these readings: try the journal in a 60° vee block.",
        ),
    };
    Ok(answer
        .with("taper", taper)
        .with("out-of-round", out_of_round)
        .with_optional("lobing", lobing))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, given, says, value, worked};

    #[test]
    fn taper_is_of_the_means_and_out_of_round_of_one_end() {
        let given = given(
            INCH,
            &[("front", &[2.4500, 2.4498]), ("rear", &[2.4496, 2.4490])],
        );
        let answer = worked(&JOURNAL_SHAPE, &given);
        assert_eq!(value(&answer, "taper", INCH), 0.0006);
        assert_eq!(value(&answer, "out-of-round", INCH), 0.0006);
        assert!(says(&answer, "journal taper reads 0.0006 in"));
        assert!(answer.get("lobing").is_none());
    }

    // The trap: a three-lobed journal is round to a micrometer.
    #[test]
    fn three_lobes_hide_from_the_micrometer_and_show_in_the_vee() {
        let round = [
            ("front", &[2.45, 2.45, 2.45][..]),
            ("rear", &[2.45, 2.45, 2.45][..]),
        ];
        let alone = worked(&JOURNAL_SHAPE, &given(INCH, &round));
        assert_eq!(value(&alone, "out-of-round", INCH), 0.0);
        assert!(says(&alone, "Three lobes would not show"));
        let vee = given(INCH, &[round[0], round[1], ("vee-swing", &[0.0024])]);
        let answer = worked(&JOURNAL_SHAPE, &vee);
        assert_eq!(value(&answer, "lobing", INCH), 0.0008);
        assert!(says(&answer, "over the 0.0005 in"));
    }

    #[test]
    fn one_direction_says_nothing_of_roundness() {
        let answer = worked(
            &JOURNAL_SHAPE,
            &given(INCH, &[("front", &[2.45]), ("rear", &[2.45])]),
        );
        assert!(says(&answer, "nothing is known of its roundness"));
    }
}
