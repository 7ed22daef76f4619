//! A valve stem in its guide, by its sizes.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    Takes, length_text,
};
use crate::fit::readings::{Fit, span};
use crate::limits::about;

const SIZES: (f64, f64) = (0.003, 0.03);

static GUIDE: Input = Input::size(
    "guide",
    "guide",
    SIZES,
    "Small-hole gauge and micrometer: top, middle and bottom, two directions each.",
)
.taking(Takes::OneOrMore);
static STEM: Input = Input::size(
    "stem",
    "stem",
    SIZES,
    "Where it runs in the guide, three places; many stems taper on purpose.",
)
.taking(Takes::OneOrMore);
static VALVE: Input = Input::one_of(
    "valve",
    "valve",
    &[
        Choice {
            id: "stem-guide-intake",
            label: "intake",
        },
        Choice {
            id: "stem-guide-exhaust",
            label: "exhaust",
        },
    ],
    "The exhaust stem runs hotter and needs more room.",
);

/// Wear of a guide along its length that is worth a liner. Common practice.
const BELL_MOUTH: f64 = 0.001 * 0.0254;

/// Stem in its guide.
pub static STEM_IN_GUIDE: Calculation = Calculation {
    id: "stem-in-guide",
    title: "Valve stem in its guide",
    purpose: "How much room a stem has in its guide, and whether the guide is worn to a bell.",
    inputs: &[GUIDE, STEM, VALVE],
    outputs: &[
        Output::gap("least", "least clearance"),
        Output::gap("greatest", "greatest clearance"),
        Output::gap("bell", "guide, largest less smallest"),
    ],
    workings: &[
        "least = smallest guide − largest stem = {least}",
        "greatest = largest guide − smallest stem = {greatest}",
        "guide, largest − smallest = {bell}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Guides come before seats: a seat follows its guide. After a new guide the seat is cut again.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let fit = Fit::of(given, &GUIDE, &STEM)?;
    let bell = span(given.several(GUIDE.id));
    let card = about(given.choice(&VALVE)?.id, "maker's guide limits");
    let mut answer = if fit.least.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "The stem binds in its guide: it would stick hot and meet the piston.",
        )
    } else {
        Answer::new()
            .remarked(&fit.least, card)
            .remarked(&fit.greatest, card)
    };
    if let Some(worn) = card.and_then(|entry| entry.worn)
        && fit.greatest.value() > worn * 0.0254
    {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "Beyond {} the guide is worn out for good.",
                length_text(worn * 0.0254)
            ),
        );
    }
    if bell.value() > BELL_MOUTH {
        answer = answer.finding(
            Gravity::Caution,
            "The guide is belled: the valve tips and its seat wears oval.",
        );
    }
    Ok(answer
        .with("least", fit.least)
        .with("greatest", fit.greatest)
        .with("bell", bell))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, says, value, worked};
    use crate::measure::Estimate;

    #[test]
    fn the_exhaust_needs_more_room_than_the_intake() {
        let sizes = given(INCH, &[("guide", &[0.3437]), ("stem", &[0.3422])]);
        let intake = worked(
            &STEM_IN_GUIDE,
            &sizes.clone().with("valve", Estimate::exact(0.0)),
        );
        assert_eq!(value(&intake, "least", THOU), 1.5);
        assert!(
            intake
                .findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );
        let exhaust = worked(&STEM_IN_GUIDE, &sizes.with("valve", Estimate::exact(1.0)));
        assert!(says(&exhaust, "sticks hot"));
    }

    #[test]
    fn a_belled_and_worn_guide_is_named() {
        let given = given(INCH, &[("guide", &[0.3440, 0.3470]), ("stem", &[0.3425])])
            .with("valve", Estimate::exact(0.0));
        let answer = worked(&STEM_IN_GUIDE, &given);
        assert_eq!(value(&answer, "bell", THOU), 3.0);
        assert!(says(&answer, "belled"));
        assert!(says(&answer, "worn out for good"));
    }
}
