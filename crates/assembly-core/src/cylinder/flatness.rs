//! Flatness of a deck or head face under a straightedge.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    UsualUnits, length_text,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

const GAPS: (f64, f64) = (0.0, 0.005);
const THOU: f64 = 0.001 * 0.0254;

static ALONG: Input = Input::gap(
    "along",
    "gaps under the edge, along",
    GAPS,
    "Straightedge along the face on both sides and in the middle; the thickest blade that goes under it each time.",
)
.taking(Takes::OneOrMore);
static DIAGONAL: Input = Input::gap(
    "diagonal",
    "gaps under the edge, corner to corner",
    GAPS,
    "The same, both ways corner to corner.",
)
.taking(Takes::Any);
static ACROSS: Input = Input::gap(
    "across",
    "gaps under the edge, across",
    GAPS,
    "The same across the face, at its ends and between cylinders.",
)
.taking(Takes::OneOrMore);
static CYLINDERS: Input = Input::of(
    "cylinders",
    "cylinders along this face",
    (Kind::Count, UsualUnits::NONE),
    (1.0, 12.0),
    "Of this bank, not of the engine.",
);

/// The most across a face. Common practice, from head shops.
const MOST_ACROSS: f64 = 2.0 * THOU;

/// Flatness of a face.
pub static FLATNESS: Calculation = Calculation {
    id: "flatness",
    title: "Flatness of deck or head",
    purpose: "Whether a face is flat enough for its gasket, along and across.",
    inputs: &[ALONG, DIAGONAL, ACROSS, CYLINDERS],
    outputs: &[
        Output::gap("worst-along", "worst along or corner to corner"),
        Output::gap("worst-across", "worst across"),
        Output::gap("allowed-along", "commonly allowed along"),
    ],
    workings: &[
        "worst gap along or corner to corner: {worst-along}; a thou for each cylinder is common: {allowed-along}",
        "worst gap across: {worst-across}; two thou is common",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "The figures are for head and block together: two faces each at the limit do not seal. Multi-layer steel gaskets want a smoother face besides.",
        "Milling a head does not change the quench when its quench pads are the milled face; it does change the chamber, the valves' room and the pushrods.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let long: Vec<Estimate> = given
        .several(ALONG.id)
        .iter()
        .chain(given.several(DIAGONAL.id))
        .cloned()
        .collect();
    let along = Estimate::greatest(&long).cloned();
    let across = Estimate::greatest(given.several(ACROSS.id)).cloned();
    let cylinders = given.one(&CYLINDERS)?.value();
    if cylinders.fract() != 0.0 {
        return Err(CalculationError::not_possible(
            &CYLINDERS,
            "is not a whole number: give the number of cylinders along this face",
        ));
    }
    let allowed = cylinders * THOU;
    let mut answer = Answer::new();
    for (word, worst, most) in [("along", &along, allowed), ("across", &across, MOST_ACROSS)] {
        if let Some(worst) = worst
            && worst.value() > most + 1e-9
        {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "{} {word} is more than the {} that is common practice for head and block together. The maker's sheet decides.",
                    length_text(worst.value()),
                    length_text(most)
                ),
            );
        }
    }
    Ok(answer
        .with_optional("worst-along", along)
        .with_optional("worst-across", across)
        .with("allowed-along", Estimate::exact(allowed)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    fn face(along: &[f64], across: &[f64], cylinders: f64) -> Given {
        let mut given = Given::new().with("cylinders", Estimate::exact(cylinders));
        for (id, values) in [("along", along), ("across", across)] {
            for value in values {
                given.push(id, Estimate::exact(value * THOU));
            }
        }
        given
    }

    // Common practice: as many thou along as there are cylinders, two across.
    #[test]
    fn a_thou_for_each_cylinder_along_and_two_across() {
        let four = worked(&FLATNESS, &face(&[3.0, 4.0], &[2.0], 4.0));
        assert_eq!(value(&four, "worst-along", THOU), 4.0);
        assert!(four.findings().is_empty());
        assert!(says(
            &worked(&FLATNESS, &face(&[4.0], &[1.0], 3.0)),
            "along"
        ));
        assert!(says(
            &worked(&FLATNESS, &face(&[1.0], &[3.0], 4.0)),
            "across"
        ));
    }

    #[test]
    fn half_a_cylinder_is_refused() {
        assert_eq!(
            refused(&FLATNESS, &face(&[1.0], &[1.0], 2.5)),
            Some("cylinders")
        );
    }
}
