//! The oil pump's relief plunger: whether it slides, and what its spring holds.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    UsualUnits,
};
use crate::fit::readings::Fit;
use crate::measure::Estimate;
use crate::quantity::Kind;
use std::f64::consts::FRAC_PI_4;

const DIAMETERS: (f64, f64) = (0.004, 0.05);
const LENGTHS: (f64, f64) = (0.005, 0.2);
const PRESSURE: (Kind, UsualUnits) = (Kind::Pressure, UsualUnits::of("psi", "bar"));

static BORE: Input = Input::size(
    "bore",
    "plunger's bore",
    DIAMETERS,
    "Small-hole or telescoping gauge, along the whole travel and across it.",
)
.one_or_more();
static PLUNGER: Input = Input::size(
    "plunger",
    "plunger",
    DIAMETERS,
    "Micrometer, at both ends and twice across.",
)
.one_or_more();
static FALLS: Input = Input::one_of(
    "falls",
    "oiled plunger in its bore",
    &[
        Choice {
            id: "falls",
            label: "falls by its own weight at every turn",
        },
        Choice {
            id: "sticks",
            label: "sticks somewhere",
        },
    ],
    "Spring out, body upright, plunger turned a bit at each try.",
);
static FREE: Input = Input::size(
    "free",
    "free length of the spring",
    LENGTHS,
    "Spring standing on a flat, caliper over its ends.",
);
static SHEET_FREE: Input = Input::size(
    "sheet-free",
    "free length on the sheet",
    LENGTHS,
    "From the pump's sheet, or from a new spring of the same kind.",
)
.optional();
static SHIMS: Input = Input::gap(
    "shims",
    "shims under the spring",
    (0.0, 0.01),
    "All of them together.",
)
.optional();
static FITTED: Input = Input::size(
    "fitted",
    "room for spring and shims when the valve just opens",
    LENGTHS,
    "Depth from the plug's seat to the plunger where its edge meets the port.",
)
.optional();
static RATE: Input = Input::of(
    "rate",
    "spring rate",
    (Kind::Stiffness, UsualUnits::of("lbf/in", "N/mm")),
    (50.0, 500_000.0),
    "From the sheet, or two loads on a spring tester and the travel between them.",
)
.optional();

/// Relief plunger.
pub static RELIEF_PLUNGER: Calculation = Calculation {
    id: "relief-plunger",
    title: "Relief plunger and its spring",
    purpose: "Whether the pump's relief valve can move, whether its spring has set, and at which pressure it opens.",
    inputs: &[BORE, PLUNGER, FALLS, FREE, SHEET_FREE, SHIMS, FITTED, RATE],
    outputs: &[
        Output::gap("least", "least clearance of the plunger"),
        Output::gap("greatest", "greatest clearance of the plunger"),
        Output::gap("set", "spring shorter than its sheet"),
        Output::of("opens-at", "pressure at which it opens", PRESSURE),
    ],
    workings: &[
        "clearance = bore − plunger: {least} to {greatest}",
        "set = {sheet-free} − {free} = {set}",
        "opens at rate × (free + shims − room) ÷ (π/4 × plunger²) = {rate} × ({free} + {shims} − {fitted}) ÷ … = {opens-at}",
    ],
    provenance: Provenance::Derivation(
        "spring force over the plunger's face; the fit is common practice",
    ),
    cautions: &[
        "A chip that holds the plunger open leaves no pressure, one that holds it shut bursts the filter: strip, deburr and wash even a new pump.",
        "The plug is under a spring: goggles, and a hand on it for its last thread.",
        "Shims raise the highest pressure only. They mend no worn bearing.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let fit = Fit::of(given, &BORE, &PLUNGER)?;
    let free = given.one(&FREE)?;
    let mut answer = Answer::new();
    if fit.least.value() <= 0.0 || given.choice(&FALLS)?.id == "sticks" {
        answer = answer.finding(
            Gravity::Stop,
            "The plunger cannot move freely: find the burr, chip or dent before the pump goes on.",
        );
    }
    let set = given.optional(SHEET_FREE.id).map(|sheet| sheet - free);
    if set
        .as_ref()
        .is_some_and(|set| set.value() > 2.0 * set.deviation() && set.value() > 0.0)
    {
        answer = answer.finding(
            Gravity::Caution,
            "The spring is shorter than its sheet: it has set, and the valve opens early. Fit a new one.",
        );
    }
    let opens = match (given.optional(FITTED.id), given.optional(RATE.id)) {
        (Some(fitted), Some(rate)) => {
            let none = Estimate::default();
            let pressed = free + given.optional(SHIMS.id).unwrap_or(&none) - fitted;
            if pressed.value() <= 0.0 {
                return Err(CalculationError::not_possible(
                    &FITTED,
                    "the spring is not pressed at all in so much room: measure to the plunger where its edge meets the port",
                ));
            }
            let face = given.one(&PLUNGER)?.square() * FRAC_PI_4;
            Some(rate * &pressed / &face)
        }
        _ => None,
    };
    Ok(answer
        .with("least", fit.least)
        .with("greatest", fit.greatest)
        .with_optional("set", set)
        .with_optional("opens-at", opens))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    fn plunger() -> Given {
        [
            ("bore", 0.015_05),
            ("plunger", 0.015_00),
            ("falls", 0.0),
            ("free", 0.050),
            ("fitted", 0.040),
            ("rate", 8000.0),
        ]
        .into_iter()
        .fold(Given::new(), |given, (id, value)| {
            given.with(id, Estimate::exact(value))
        })
    }

    // Worked by hand: 8 N/mm × 10 mm = 80 N on 176.7 mm² is 4.53 bar; a shim of
    // 1 mm adds a tenth.
    #[test]
    fn the_valve_opens_at_spring_force_over_its_face() {
        let answer = worked(&RELIEF_PLUNGER, &plunger());
        assert!((value(&answer, "opens-at", 1e5) - 4.527).abs() < 0.001);
        assert!((value(&answer, "least", 1e-6) - 50.0).abs() < 1e-6);
        let shimmed = plunger().with("shims", Estimate::exact(0.001));
        let shimmed = worked(&RELIEF_PLUNGER, &shimmed);
        assert!((value(&shimmed, "opens-at", 1e5) - 1.1 * 4.527).abs() < 0.001);
    }

    #[test]
    fn a_set_spring_and_a_sticking_plunger_are_told() {
        let set = plunger().with("sheet-free", Estimate::exact(0.052));
        assert!(says(&worked(&RELIEF_PLUNGER, &set), "has set"));
        let tight = plunger().with("plunger", Estimate::exact(0.0151));
        assert_eq!(
            worked(&RELIEF_PLUNGER, &tight).findings()[0].gravity,
            Gravity::Stop
        );
        let mut loose = plunger().with("sheet-free", Estimate::exact(0.050));
        assert!(worked(&RELIEF_PLUNGER, &loose).findings().is_empty());
        loose = Given::new();
        for (id, value) in [
            ("bore", 0.01),
            ("plunger", 0.009),
            ("falls", 1.0),
            ("free", 0.03),
            ("fitted", 0.04),
            ("rate", 5000.0),
        ] {
            loose.push(id, Estimate::exact(value));
        }
        assert_eq!(refused(&RELIEF_PLUNGER, &loose), Some("fitted"));
    }
}
