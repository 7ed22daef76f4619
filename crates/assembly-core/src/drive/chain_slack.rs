//! Slack of a timing chain.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    length_text,
};

static DEFLECTION: Input = Input::size(
    "deflection",
    "whole swing of the slack run",
    (0.0, 0.1),
    "Turn the crank until one run is tight; push the slack run in and pull it out half-way along: from one end to the other.",
);
static STATE: Input = Input::one_of(
    "state",
    "chain",
    &[
        Choice {
            id: "new",
            label: "new, with new wheels",
        },
        Choice {
            id: "used",
            label: "used",
        },
    ],
    "Without a tensioner. A chain with one is judged by its tensioner's travel.",
);

const INCH: f64 = 0.0254;
/// The most swing of a used and of a new chain. Common practice.
const MOST_USED: f64 = 0.5 * INCH;
const MOST_NEW: f64 = 0.25 * INCH;

/// Chain slack.
pub static CHAIN_SLACK: Calculation = Calculation {
    id: "chain-slack",
    title: "Timing chain slack",
    purpose: "Whether a timing chain without a tensioner is worn.",
    inputs: &[DEFLECTION, STATE],
    outputs: &[Output::size("left", "left until it is commonly replaced")],
    workings: &["left = what is common − swing = {left}"],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Line honing the mains brings the crank nearer to the cam and slackens the chain: measure again after it.",
        "Never turn the engine by its cam, nor a belt backwards.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let most = match given.choice(&STATE)?.id {
        "new" => MOST_NEW,
        _ => MOST_USED,
    };
    let left = (given.one(&DEFLECTION)? - most) * -1.0;
    let answer = if left.value() < 0.0 {
        Answer::new().finding(
            Gravity::Caution,
            format!(
                "More than the {} that is common practice: chain and both wheels together. The maker's sheet decides.",
                length_text(most)
            ),
        )
    } else {
        Answer::new()
    };
    Ok(answer.with("left", left))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, says, value, worked};
    use crate::measure::Estimate;

    fn chain(deflection: f64, state: f64) -> Answer {
        let given = Given::new()
            .with("deflection", Estimate::exact(deflection * INCH))
            .with("state", Estimate::exact(state));
        worked(&CHAIN_SLACK, &given)
    }

    #[test]
    fn a_new_chain_may_swing_half_as_far_as_a_used_one() {
        assert_eq!(value(&chain(0.4, 1.0), "left", INCH), 0.1);
        assert_eq!(value(&chain(0.4, 0.0), "left", INCH), -0.15);
        assert!(says(&chain(0.4, 0.0), "both wheels"));
        assert!(chain(0.4, 1.0).findings().is_empty());
    }
}
