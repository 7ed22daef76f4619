//! Bucket shims by their description.

use uom::si::f64::Length;

use super::choice::{ShimFor, Valve, choose_bucket_shims};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    UsualUnits, length_text,
};
use crate::measure::{Estimate, Measured, Window};
use crate::quantity::{Kind, Si};

static OLD: Input = Input::size(
    "old",
    "shims that are in",
    (0.000_5, 0.02),
    "Measure each as it comes out, in the order of the valves; the etched figure wears off true.",
)
.taking(Takes::OneOrMore);
static LASH: Input = Input::gap(
    "lash",
    "lash as measured",
    (0.0, 0.005),
    "Engine cold, cam lobe pointing away, in the same order.",
)
.taking(Takes::OneOrMore);
static LOOSE: Input = Input::size(
    "loose",
    "loose shims on the bench",
    (0.000_5, 0.02),
    "Every single piece, measured.",
)
.taking(Takes::Any);
static LOW: Input = Input::gap(
    "low",
    "least lash",
    (0.0, 0.003),
    "From the maker's sheet, cold.",
);
static HIGH: Input = Input::gap(
    "high",
    "greatest lash",
    (0.0, 0.003),
    "From the maker's sheet, cold.",
);
static SOLD_IN: Input = Input::gap(
    "sold-in",
    "step in which shims are sold",
    (1e-6, 0.001),
    "Commonly 0.05 mm, with some makers 0.025 mm.",
);

/// Bucket shims.
pub static BUCKET_SHIMS: Calculation = Calculation {
    id: "bucket-shims",
    title: "Valve shims, used ones first",
    purpose: "Which shim goes under which bucket so that every lash is right and as few as can be are bought.",
    inputs: &[OLD, LASH, LOOSE, LOW, HIGH, SOLD_IN],
    outputs: &[
        Output::of("bought", "shims to buy", (Kind::Count, UsualUnits::NONE)),
        Output::of("moved", "valves to open", (Kind::Count, UsualUnits::NONE)),
        Output::gap("least", "least lash then"),
        Output::gap("greatest", "greatest lash then"),
    ],
    workings: &[
        "wanted shim = old shim + lash − middle of the window",
        "every way of dealing out the shims is weighed: fewest bought ({bought}), then fewest valves opened ({moved}), then the least total miss",
        "lash then = old shim + lash − new shim: {least} to {greatest}",
    ],
    provenance: Provenance::Derivation("assignment, exact"),
    cautions: &[
        "Turn the engine by hand and measure every lash again before starting. Too little lash burns an exhaust valve.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (old, lash) = (given.several(OLD.id), given.several(LASH.id));
    if old.len() != lash.len() {
        return Err(CalculationError::not_possible(
            &LASH,
            format!(
                "there are {} shims and {} readings of lash: each valve needs both",
                old.len(),
                lash.len()
            ),
        ));
    }
    let (low, high) = (given.one(&LOW)?.value(), given.one(&HIGH)?.value());
    Window::new(Some(low), Some(high))
        .map_err(|error| CalculationError::not_possible(&LOW, error.to_string()))?;
    let loose = given.measured::<Length>(LOOSE.id);
    let valves: Vec<Valve> = given
        .measured(OLD.id)
        .into_iter()
        .zip(given.measured(LASH.id))
        .map(|(shim, lash)| Valve { shim, lash })
        .collect();
    let window = (Length::from_si(low), Length::from_si(high));
    let sold_in = Length::from_si(given.one(&SOLD_IN)?.value());
    let chosen = choose_bucket_shims(&valves, &loose, window, sold_in)
        .map_err(|error| CalculationError::not_possible(&LASH, error.to_string()))?;
    let mut answer = Answer::new();
    let mut lashes = Vec::new();
    for ((shim, lash), (choice, valve)) in old.iter().zip(lash).zip(chosen.iter().zip(1..)) {
        let bought;
        let (new, words) = match choice {
            ShimFor::Stays => (Some(shim), "its shim stays".to_owned()),
            ShimFor::FromValve(other) => {
                (old.get(*other), format!("the shim of valve {}", other + 1))
            }
            ShimFor::FromBench(piece) => (
                loose.get(*piece).map(Measured::estimate),
                format!("loose shim {}", piece + 1),
            ),
            ShimFor::Bought(thickness) => {
                bought = Estimate::exact(thickness.to_si());
                (
                    Some(&bought),
                    format!("buy {}", length_text(thickness.to_si())),
                )
            }
        };
        let then = lash + shim - new.unwrap_or(shim);
        answer = answer.finding(
            Gravity::Note,
            format!("Valve {valve}: {words}, lash {}", length_text(then.value())),
        );
        lashes.push(then);
    }
    let count = |holds: fn(&ShimFor) -> bool| {
        Estimate::exact(chosen.iter().filter(|one| holds(one)).count() as f64)
    };
    Ok(answer
        .with("bought", count(|one| matches!(one, ShimFor::Bought(_))))
        .with("moved", count(|one| !matches!(one, ShimFor::Stays)))
        .with_optional("least", Estimate::least(&lashes).cloned())
        .with_optional("greatest", Estimate::greatest(&lashes).cloned()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shims_change_places_before_any_is_bought() {
        let mut given = Given::new()
            .with("low", Estimate::exact(0.15e-3))
            .with("high", Estimate::exact(0.25e-3))
            .with("sold-in", Estimate::exact(0.05e-3));
        // Valve 1 is loose by 0.1 and valve 2 tight by 0.1: they swap. Valve 3 is good.
        for (shim, lash) in [(2.5e-3, 0.3e-3), (2.6e-3, 0.1e-3), (2.55e-3, 0.18e-3)] {
            given.push("old", Estimate::exact(shim));
            given.push("lash", Estimate::exact(lash));
        }
        let answer = BUCKET_SHIMS.answer(&given).unwrap();
        let value = |id: &str| answer.get(id).unwrap().value();
        assert_eq!((value("bought"), value("moved")), (0.0, 2.0));
        assert!((value("greatest") - 0.2e-3).abs() < 1e-12);
        assert!(answer.findings()[0].text.contains("the shim of valve 2"));
        assert!(answer.findings()[2].text.contains("stays"));
    }

    #[test]
    fn a_shim_that_nothing_fits_is_bought_in_the_sold_step() {
        let given = Given::new()
            .with("low", Estimate::exact(0.15e-3))
            .with("high", Estimate::exact(0.25e-3))
            .with("sold-in", Estimate::exact(0.05e-3))
            .with("old", Estimate::exact(2.5e-3))
            .with("lash", Estimate::exact(0.43e-3));
        let answer = BUCKET_SHIMS.answer(&given).unwrap();
        assert_eq!(answer.get("bought").unwrap().value(), 1.0);
        assert!(answer.findings()[0].text.contains("(2.750 mm)"));
        assert!((answer.get("least").unwrap().value() - 0.18e-3).abs() < 1e-12);
    }
}
