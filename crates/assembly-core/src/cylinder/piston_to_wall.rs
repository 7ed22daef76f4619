//! Piston to wall clearance.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    Takes, length_text,
};
use crate::fit::readings::{greatest_of, least_of};
use crate::limits::about;

const BORES: (f64, f64) = (0.02, 0.6);

static BORE: Input = Input::size(
    "bore",
    "bore across the crank",
    BORES,
    "Where the skirt's gauge point runs, square to the crank; all readings of this direction.",
)
.taking(Takes::OneOrMore);
static PISTON: Input = Input::size(
    "piston",
    "piston at its gauge point",
    BORES,
    "At the height that the maker names, square to the pin: a piston is oval and barrelled, and smaller everywhere else.",
)
.taking(Takes::OneOrMore);
static COATING: Input = Input::gap(
    "coating",
    "coating on each side, not counted",
    (0.0, 0.0002),
    "Only if the maker says that the skirt's coating does not count, and you measured over it.",
)
.optional();
static KIND: Input = Input::one_of(
    "kind",
    "piston",
    &[
        Choice {
            id: "",
            label: "not known, or by its own sheet",
        },
        Choice {
            id: "cast",
            label: "cast",
        },
        Choice {
            id: "hypereutectic",
            label: "hypereutectic",
        },
        Choice {
            id: "forged 4032",
            label: "forged, high silicon (4032)",
        },
        Choice {
            id: "forged 2618 NA",
            label: "forged, low silicon (2618)",
        },
    ],
    "From the piston maker's box.",
);

/// Piston to wall.
pub static PISTON_TO_WALL: Calculation = Calculation {
    id: "piston-to-wall",
    title: "Piston to wall clearance",
    purpose: "How much room the skirt has in its bore.",
    inputs: &[BORE, PISTON, COATING, KIND],
    outputs: &[Output::gap("clearance", "clearance on the diameter")],
    workings: &[
        "clearance = smallest bore − largest piston + 2 × coating = {bore} − {piston} + 2 × {coating} = {clearance}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Too tight scuffs or seizes on the first hot pull. The piston maker's sheet decides, and it differs widely by alloy and use.",
        "Aluminium and iron at different temperatures lie: let piston, block and tools lie together overnight.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let mut clearance = least_of(given, &BORE)? - greatest_of(given, &PISTON)?;
    if let Some(coating) = given.optional(COATING.id) {
        clearance = clearance + coating * 2.0;
    }
    let kind = given.choice(&KIND)?.id;
    let mut answer = Answer::new();
    if clearance.value() <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "The piston is larger than its bore: it does not go in, or seizes at once. Measure again at the gauge point.",
        );
    } else if let Some(entry) = (!kind.is_empty())
        .then(|| about("piston-to-wall", kind))
        .flatten()
    {
        answer = answer.remarked(&clearance, Some(entry));
    }
    if clearance.value() > 0.015 * 0.0254 {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "{} is more than any skirt has at its gauge point: was it measured higher up, or along the pin?",
                length_text(clearance.value())
            ),
        );
    }
    Ok(answer.with("clearance", clearance))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, says, value, worked};
    use crate::measure::Estimate;

    fn piston(bores: &[f64], pistons: &[f64], kind: f64) -> Given {
        let mut given = Given::new().with("kind", Estimate::exact(kind));
        for (id, values) in [("bore", bores), ("piston", pistons)] {
            for value in values {
                given.push(id, Estimate::exact(value * INCH));
            }
        }
        given
    }

    #[test]
    fn the_smallest_bore_and_the_largest_piston_count() {
        let given = piston(&[4.0302, 4.0300], &[4.0280, 4.0282], 1.0);
        let answer = worked(&PISTON_TO_WALL, &given);
        assert_eq!(value(&answer, "clearance", THOU), 1.8);
        assert!(says(&answer, "disputed"));
    }

    #[test]
    fn a_coating_that_does_not_count_is_given_back_on_both_sides() {
        let given = piston(&[4.0300], &[4.0290], 0.0).with("coating", Estimate::exact(0.5 * THOU));
        let answer = worked(&PISTON_TO_WALL, &given);
        assert_eq!(value(&answer, "clearance", THOU), 2.0);
        assert!(
            answer.findings().is_empty(),
            "nothing is proposed for a piston not known"
        );
    }

    // Along the pin or at the crown a piston is far smaller.
    #[test]
    fn a_piston_measured_in_the_wrong_place_is_noticed() {
        let answer = worked(&PISTON_TO_WALL, &piston(&[4.0300], &[4.0100], 0.0));
        assert!(says(&answer, "along the pin"));
        let stop = worked(&PISTON_TO_WALL, &piston(&[4.0300], &[4.0301], 0.0));
        assert_eq!(stop.findings()[0].gravity, Gravity::Stop);
    }
}
