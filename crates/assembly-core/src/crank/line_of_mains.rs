//! Whether the main bores lie in one line.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{greatest_step, span};
use crate::limits::about;

static GAPS: Input = Input::gap(
    "gaps",
    "gap under the straight bar at each main",
    (0.0, 0.005),
    "Caps torqued, no shells: a straight ground bar on the bottom of the bores, blade under it at each main from front to rear; 0 where it touches.",
)
.taking(Takes::OneOrMore);
static SHELLS: Input = Input::one_of(
    "shells",
    "shells",
    &[
        Choice {
            id: "other",
            label: "tri-metal or not known",
        },
        Choice {
            id: "bi-metal",
            label: "aluminium bi-metal",
        },
    ],
    "Aluminium bi-metal shells bear a little more.",
);

/// Line of the main bores.
pub static LINE_OF_MAINS: Calculation = Calculation {
    id: "line-of-mains",
    title: "Line of the main bores",
    purpose: "Whether the main bores lie in one line, from neighbour to neighbour and in all.",
    inputs: &[GAPS, SHELLS],
    outputs: &[
        Output::gap("step", "greatest step between neighbours"),
        Output::gap("overall", "in all"),
    ],
    workings: &[
        "step = greatest difference of two gaps side by side = {step}",
        "in all = largest gap − smallest gap = {overall}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A crank that is itself bent shows the same wear: measure its bow too. A line that is out is honed by a shop, and the crank then sits higher.",
    ],
    run,
};

/// The most that all mains together may be out: twice the step of neighbours.
/// Common practice.
const OVERALL: f64 = 0.001 * 0.0254;

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let gaps = given.several(GAPS.id);
    let step = greatest_step(gaps);
    let overall = span(gaps);
    let case = match given.choice(&SHELLS)?.id {
        "bi-metal" => "aluminium bi-metal shells",
        _ => "",
    };
    let mut answer = Answer::new();
    if let Some(step) = &step {
        answer = answer.remarked(step, about("main-line-step", case));
    }
    if case.is_empty() && overall.value() > OVERALL {
        answer = answer.finding(
            crate::describe::Gravity::Caution,
            "All mains together are out by more than the 0.001 in that is common practice. The maker's sheet decides.",
        );
    }
    Ok(answer.with_optional("step", step).with("overall", overall))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::describe::Gravity;
    use crate::fit::readings::testing::{THOU, says, value, worked};
    use crate::measure::Estimate;

    fn line(gaps: &[f64], shells: f64) -> Answer {
        let mut given = Given::new().with("shells", Estimate::exact(shells));
        for gap in gaps {
            given.push("gaps", Estimate::exact(gap * THOU));
        }
        worked(&LINE_OF_MAINS, &given)
    }

    #[test]
    fn a_bow_may_be_small_from_main_to_main_and_large_in_all() {
        let bowed = line(&[0.0, 0.5, 0.9, 1.3, 1.5], 0.0);
        assert_eq!(value(&bowed, "step", THOU), 0.5);
        assert_eq!(value(&bowed, "overall", THOU), 1.5);
        assert!(says(&bowed, "All mains together"));
        assert!(!says(&bowed, "step between neighbours reads"));
    }

    #[test]
    fn bi_metal_shells_bear_a_larger_step() {
        assert!(says(&line(&[0.0, 1.5], 0.0), "over the 0.0005 in"));
        let findings = line(&[0.0, 1.5], 1.0);
        assert!(
            findings
                .findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );
    }

    #[test]
    fn one_main_has_no_neighbour() {
        assert!(line(&[0.0], 0.0).get("step").is_none());
    }
}
