//! Stand-out of the wet liners of a row as measured: each around its flange,
//! and each against its neighbours.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::fit::readings::{greatest_step, span};
use crate::limits::about;
use crate::measure::{Estimate, Window};

const STAND_OUTS: (f64, f64) = (-0.003, 0.003);

static READINGS: Input = Input::gap(
    "readings",
    "stand-out, four places a liner",
    STAND_OUTS,
    "Liners clamped: four places around the first liner, then four around the next, and so on along the block.",
)
.taking(Takes::OneOrMore);
static LOW: Input = Input::gap(
    "low",
    "least stand-out",
    STAND_OUTS,
    "From the maker's sheet.",
);
static HIGH: Input = Input::gap(
    "high",
    "greatest stand-out",
    STAND_OUTS,
    "From the maker's sheet.",
);

/// Places around a liner.
const PLACES: usize = 4;

/// Liners of a row.
pub static LINERS_IN_A_ROW: Calculation = Calculation {
    id: "liners-in-a-row",
    title: "Stand-out of a row of liners",
    purpose: "Whether every liner stands out right, sits square, and is level with its neighbours.",
    inputs: &[READINGS, LOW, HIGH],
    outputs: &[
        Output::gap("least", "lowest liner"),
        Output::gap("greatest", "highest liner"),
        Output::gap("step", "greatest step between neighbours"),
        Output::gap("tilt", "worst difference around one liner"),
    ],
    workings: &[
        "each liner is the mean of its four places: {least} to {greatest}",
        "greatest step from one liner to the next = {step}",
        "greatest difference around one liner = {tilt}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "A single liner within limits can still leak when its neighbour is higher: the gasket bridges from one to the other.",
        "A liner that differs around sits on dirt or a burr: clean its seat before you reach for shims.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let readings = given.several(READINGS.id);
    if !readings.len().is_multiple_of(PLACES) {
        return Err(CalculationError::not_possible(
            &READINGS,
            format!("{} readings are not four for each liner", readings.len()),
        ));
    }
    let (low, high) = (given.one(&LOW)?.value(), given.one(&HIGH)?.value());
    let window = Window::new(Some(low), Some(high))
        .map_err(|error| CalculationError::not_possible(&LOW, error.to_string()))?;
    let liners: Vec<Estimate> = readings.chunks(PLACES).filter_map(Estimate::mean).collect();
    let tilts: Vec<Estimate> = readings.chunks(PLACES).map(span).collect();
    let mut answer = Answer::new();
    for (stand_out, liner) in liners.iter().zip(1..) {
        if !window.holds(stand_out.value()) {
            let words = if stand_out.value() < low {
                "too low: the gasket leaks there"
            } else {
                "too high: its flange or the deck cracks"
            };
            answer = answer.finding(
                Gravity::Stop,
                format!(
                    "Liner {liner} stands out {}, {words}.",
                    length_text(stand_out.value())
                ),
            );
        }
    }
    let step = greatest_step(&liners);
    if let Some(step) = &step {
        answer = answer.remarked(step, about("liner-step", ""));
    }
    let tilt = Estimate::greatest(&tilts).cloned();
    if let Some(tilt) = &tilt {
        let most = about("liner-step", "").and_then(|entry| entry.window(None)?.high());
        if most.is_some_and(|most| tilt.value() > most) {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "One liner differs by {} around: it does not sit square.",
                    length_text(tilt.value())
                ),
            );
        }
    }
    Ok(answer
        .with_optional("least", Estimate::least(&liners).cloned())
        .with_optional("greatest", Estimate::greatest(&liners).cloned())
        .with_optional("step", step)
        .with_optional("tilt", tilt))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, refused, says, value, worked};

    fn row(liners: &[[f64; 4]]) -> Given {
        let readings: Vec<f64> = liners.iter().flatten().copied().collect();
        given(
            THOU,
            &[("readings", &readings), ("low", &[3.0]), ("high", &[6.0])],
        )
    }

    // The trap: each liner within its limits, and still a step between neighbours.
    #[test]
    fn liners_within_limits_can_still_step() {
        let answer = worked(&LINERS_IN_A_ROW, &row(&[[3.2; 4], [5.8; 4], [3.4; 4]]));
        assert_eq!(value(&answer, "step", THOU), 2.6);
        assert!(says(&answer, "over the 0.0020 in"));
        assert!(!says(&answer, "stands out"));
    }

    #[test]
    fn a_low_and_a_tilted_liner_are_named() {
        let answer = worked(&LINERS_IN_A_ROW, &row(&[[4.0; 4], [1.0, 2.0, 3.0, 4.0]]));
        assert!(says(&answer, "Liner 2 stands out"));
        assert!(says(&answer, "does not sit square"));
    }

    #[test]
    fn four_places_belong_to_each_liner() {
        let given = given(
            THOU,
            &[("readings", &[4.0; 5]), ("low", &[3.0]), ("high", &[6.0])],
        );
        assert_eq!(refused(&LINERS_IN_A_ROW, &given), Some("readings"));
    }
}
