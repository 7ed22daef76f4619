//! How the leak changed between two readings: a baseline and now.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;
use crate::oil::inputs::{PRESSURE, TURNING};
use crate::oil::viscosity::Lubricant;
use crate::oil::viscosity::line_check::{AT_40, AT_100, TEMPERATURE};

const TURNS: (f64, f64) = (300.0 * PI / 30.0, 12_000.0 * PI / 30.0);
const PRESSURES: (f64, f64) = (5e3, 1.5e6);
const WARM: (f64, f64) = (260.0, 430.0);
const HOW: &str = "Mechanical gauge, engine warm through, speed held.";

static THEN: Input = Input::of(
    "pressure-then",
    "pressure of the first reading",
    PRESSURE,
    PRESSURES,
    HOW,
);
static SPEED_THEN: Input = Input::of(
    "speed-then",
    "its speed",
    TURNING,
    TURNS,
    "At the crankshaft.",
);
static WARM_THEN: Input = Input::of(
    "oil-then",
    "its oil temperature",
    TEMPERATURE,
    WARM,
    "Without it a reading tells nothing.",
);
static NOW: Input = Input::of("pressure-now", "pressure now", PRESSURE, PRESSURES, HOW);
static SPEED_NOW: Input = Input::of(
    "speed-now",
    "speed now",
    TURNING,
    TURNS,
    "At the crankshaft.",
);
static WARM_NOW: Input = Input::of(
    "oil-now",
    "oil temperature now",
    TEMPERATURE,
    WARM,
    "Without it a reading tells nothing.",
);
static RELIEF: Input = Input::of(
    "relief",
    "relief opens at",
    PRESSURE,
    (5e4, 2e6),
    "From the maker's sheet; readings near it tell nothing of the bearings.",
)
.optional();

/// Change of the leak.
pub static LEAK_CHANGE: Calculation = Calculation {
    id: "leak-change",
    title: "Has the engine grown looser?",
    purpose: "How the leak changed between two readings of the gauge at known oil temperatures.",
    inputs: &[
        AT_40, AT_100, THEN, SPEED_THEN, WARM_THEN, NOW, SPEED_NOW, WARM_NOW, RELIEF,
    ],
    outputs: &[
        Output::ratio("leak", "leak now by leak then"),
        Output::ratio("clearance", "as if all clearances had grown by the factor"),
        Output::of("expected", "pressure now, had nothing changed", PRESSURE),
    ],
    workings: &[
        "below the relief pressure goes with speed × viscosity / leak",
        "had nothing changed: {pressure-then} × {speed-now}/{speed-then} × viscosity now / then = {expected}",
        "leak now by then = {expected} / {pressure-now} = {leak}; a leak goes with the cube of the clearance: {clearance}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "The same oil is assumed; fuel in it looks like wear.",
        "Hot oil burns; keep clear of belts and fan; run an engine only with the doors open.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (at_40, at_100) = (given.one(&AT_40)?.value(), given.one(&AT_100)?.value());
    let oil = Lubricant::of_sheet(at_40 * 1e6, at_100 * 1e6)
        .map_err(|error| CalculationError::not_possible(&AT_100, error.to_string()))?;
    let (then, now) = (given.one(&THEN)?, given.one(&NOW)?);
    if let Some(relief) = given.optional(RELIEF.id) {
        for (reading, field) in [(then, &THEN), (now, &NOW)] {
            if reading.value() > 0.95 * relief.value() {
                return Err(CalculationError::not_possible(
                    field,
                    "the relief is open there, so the gauge shows its spring and nothing of the bearings: read again slower or hotter",
                ));
            }
        }
    }
    let thick = |input: &'static Input| -> Result<Estimate, CalculationError> {
        Ok(Estimate::of_function(&[given.one(input)?], |values| {
            values.first().map_or(f64::NAN, |at| oil.dynamic(*at))
        }))
    };
    let expected = then * given.one(&SPEED_NOW)? / given.one(&SPEED_THEN)? * thick(&WARM_NOW)?
        / thick(&WARM_THEN)?;
    let leak = &expected / now;
    let clearance = leak.power(1.0 / 3.0);
    let answer = Answer::new();
    let sure = (leak.value() - 1.0).abs() > 2.0 * leak.deviation();
    let answer = if leak.value() > 1.3 && sure {
        answer.finding(
            Gravity::Caution,
            "The engine leaks clearly more than it did: smell the oil for fuel, cut the filter, compare again before driving on.",
        )
    } else if leak.value() < 0.7 && sure {
        answer.finding(
            Gravity::Caution,
            "It leaks clearly less than it did: a passage may be closing, or the gauge changed.",
        )
    } else {
        answer.finding(Gravity::Note, "No clear change.")
    };
    Ok(answer
        .with("leak", leak)
        .with("clearance", clearance)
        .with("expected", expected))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    fn asked(now_psi: f64, now_celsius: f64) -> Given {
        let mut given = Given::new();
        for (id, number) in [
            ("at-40", 95e-6),
            ("at-100", 11e-6),
            ("pressure-then", 20.0 * 6895.0),
            ("speed-then", 80.0),
            ("oil-then", 373.15),
            ("pressure-now", now_psi * 6895.0),
            ("speed-now", 80.0),
            ("oil-now", now_celsius + 273.15),
        ] {
            given.push(id, Estimate::exact(number));
        }
        given
    }

    // Common practice: 20 psi at 2.0 thou is about 10 at 2.5: (2.5/2)³ = 1.95.
    #[test]
    fn half_the_pressure_is_a_quarter_more_clearance() {
        let answer = worked(&LEAK_CHANGE, &asked(10.24, 100.0));
        assert!((value(&answer, "clearance", 1.0) - 1.25).abs() < 0.001);
        assert!(says(&answer, "clearly more"));
    }

    #[test]
    fn hotter_oil_explains_itself() {
        // At 120 °C a 30 has 7 instead of 11 mm²/s: 20 psi become some 12.5.
        let answer = worked(&LEAK_CHANGE, &asked(12.6, 120.0));
        assert!(
            (value(&answer, "leak", 1.0) - 1.0).abs() < 0.05,
            "{answer:?}"
        );
        assert!(says(&answer, "No clear change"));
        let open = asked(10.0, 100.0).with("relief", Estimate::exact(20.5 * 6895.0));
        assert_eq!(refused(&LEAK_CHANGE, &open), Some("pressure-then"));
    }
}
