//! Crankshaft end float by indicator.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::fit::readings::{least_of, mean_of, span};
use crate::limits::about;
use crate::measure::Estimate;

static PRIES: Input = Input::gap(
    "float",
    "float at each pry",
    (0.0, 0.005),
    "Indicator on the crank's nose, along it: pry the crank fully back, zero, pry it fully forward, read. Three times, thrust halves aligned and caps torqued.",
)
.taking(Takes::OneOrMore);
static LOADED: Input = Input::gap(
    "with-converter",
    "float with converter or clutch on",
    (0.0, 0.005),
    "Once the converter or clutch is bolted up, the same again.",
)
.optional();

/// The least that must be left once converter or clutch is on. Common practice.
const LEAST_LOADED: f64 = 0.002 * 0.0254;

/// End float.
pub static CRANK_END_FLOAT: Calculation = Calculation {
    id: "crank-end-float",
    title: "Crankshaft end float by indicator",
    purpose: "Whether the crank floats endways enough for oil and not so much that it pounds.",
    inputs: &[PRIES, LOADED],
    outputs: &[
        Output::gap("mean", "end float"),
        Output::gap("spread", "spread of the pries"),
        Output::gap("lost", "lost with converter or clutch on"),
    ],
    workings: &[
        "end float = mean of the pries = {mean}, spread {spread}",
        "lost = {mean} − {with-converter} = {lost}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Too little float burns the thrust face within minutes. Align the thrust halves by prying fore and aft at snug bolts before the caps are torqued.",
        "Lap both thrust halves together, on a flat plate; what is rubbed off is gained.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let pries = given.several(PRIES.id);
    let mean = mean_of(given, &PRIES)?;
    let least = least_of(given, &PRIES)?;
    let spread = span(pries);
    let lost = given.optional(LOADED.id).map(|loaded| &mean - loaded);
    let mut answer = Answer::new();
    if least.value() <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "A pry without any float: the thrust face would burn at once. Look at the thrust halves before turning the crank under power.",
        );
    } else {
        answer = answer.remarked(least, about("crank-end-play", ""));
    }
    if spread.value() > 0.001 * 0.0254 {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "The pries differ by {}: a base that creeps, a cap not aligned, or dirt. Read again.",
                length_text(spread.value())
            ),
        );
    }
    if given
        .optional(LOADED.id)
        .map(Estimate::value)
        .is_some_and(|loaded| loaded < LEAST_LOADED)
    {
        answer = answer.finding(
            Gravity::Stop,
            "Bolted up, the crank has hardly any float left: converter or clutch pushes it. Do not start; find what is not home.",
        );
    }
    Ok(answer
        .with("mean", mean)
        .with("spread", spread)
        .with_optional("lost", lost))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, says, value, worked};

    #[test]
    fn the_tightest_pry_counts_against_the_card() {
        let answer = worked(
            &CRANK_END_FLOAT,
            &given(THOU, &[("float", &[3.0, 5.0, 4.0])]),
        );
        assert_eq!(value(&answer, "mean", THOU), 4.0);
        assert!(says(&answer, "under the 0.0040 in"));
        assert!(says(&answer, "Read again"));
    }

    #[test]
    fn a_converter_that_takes_the_float_stops_the_builder() {
        let given = given(THOU, &[("float", &[6.0]), ("with-converter", &[1.0])]);
        let answer = worked(&CRANK_END_FLOAT, &given);
        assert_eq!(value(&answer, "lost", THOU), 5.0);
        assert!(says(&answer, "Do not start"));
    }
}
