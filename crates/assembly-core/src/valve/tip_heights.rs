//! Heights of the valve tips: with fixed rockers they decide every lifter's preload.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::fit::readings::span;
use crate::limits::about;
use crate::measure::Estimate;

static HEIGHTS: Input = Input::size(
    "heights",
    "tip heights",
    (0.01, 0.2),
    "Valves held shut: from the spring seat or the head's rail to each tip, in order along the head.",
)
.taking(Takes::OneOrMore);

/// Tip heights.
pub static TIP_HEIGHTS: Calculation = Calculation {
    id: "valve-tip-heights",
    title: "Valve tip heights",
    purpose: "Whether all valve tips stand alike, so that one pushrod length fits all.",
    inputs: &[HEIGHTS],
    outputs: &[
        Output::size("mean", "mean height"),
        Output::gap("spread", "highest less lowest"),
    ],
    workings: &["mean {mean}; highest − lowest = {spread}"],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A tip is ground by little and stays hard only so deep. Grinding a tip lowers it; cutting a seat raises it.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let heights = given.several(HEIGHTS.id);
    let spread = span(heights);
    let mean = Estimate::mean(heights).unwrap_or_default();
    let mut answer = Answer::new().remarked(&spread, about("valve-tip-spread", ""));
    let farthest = heights.iter().zip(1..).max_by(|(one, _), (other, _)| {
        let off = |height: &Estimate| (height.value() - mean.value()).abs();
        off(one).total_cmp(&off(other))
    });
    if let Some((height, valve)) = farthest
        && heights.len() > 2
    {
        answer = answer.finding(
            Gravity::Note,
            format!(
                "Valve {valve} is farthest off, by {}.",
                length_text((height.value() - mean.value()).abs())
            ),
        );
    }
    Ok(answer.with("spread", spread).with("mean", mean))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, says, value, worked};

    #[test]
    fn the_odd_valve_is_named() {
        let given = given(INCH, &[("heights", &[1.900, 1.902, 1.920, 1.901])]);
        let answer = worked(&TIP_HEIGHTS, &given);
        assert_eq!(value(&answer, "spread", THOU), 20.0);
        assert!(says(&answer, "over the 0.0150 in"));
        assert!(says(&answer, "Valve 3"));
    }
}
