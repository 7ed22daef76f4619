//! Parts paired so that the pairs weigh the same: pistons with pins, rods with
//! pistons.

use uom::si::f64::Mass;

use super::bottleneck::least_spread;
use super::costs::{ChoiceError, Costs};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::{Estimate, Measured};
use crate::quantity::{Kind, Si};

/// A nanogram: finer than any scale.
const NANOGRAM: f64 = 1e-12;

/// Which second part each first part is paired with.
#[derive(Clone, PartialEq, Debug)]
pub struct Pairing {
    /// The second part of each first one, counted from 0.
    pub partners: Vec<usize>,
    /// What each pair weighs.
    pub sums: Vec<Measured<Mass>>,
}

impl Pairing {
    fn of(first: &[Measured<Mass>], second: &[Measured<Mass>], partners: Vec<usize>) -> Self {
        let sums = first
            .iter()
            .zip(&partners)
            .filter_map(|(one, partner)| Some(one.clone() + second.get(*partner)?.clone()))
            .collect();
        Self { partners, sums }
    }

    /// The heaviest pair less the lightest.
    #[must_use]
    pub fn range(&self) -> Option<Measured<Mass>> {
        let heaviest = Measured::greatest(&self.sums)?;
        Some(heaviest.clone() - Measured::least(&self.sums)?.clone())
    }
}

/// The pairing whose pairs differ least in weight. There may be more second
/// parts than first ones.
///
/// # Errors
/// [`ChoiceError`] when there are fewer second parts than first ones, or more
/// than can be looked through at once.
pub fn pair_evenly(
    first: &[Measured<Mass>],
    second: &[Measured<Mass>],
) -> Result<Pairing, ChoiceError> {
    let rows: Vec<Vec<f64>> = first
        .iter()
        .map(|one| {
            let sum = |other: &Measured<Mass>| one.value().to_si() + other.value().to_si();
            second.iter().map(sum).collect()
        })
        .collect();
    let costs = Costs::new(&rows, NANOGRAM)?;
    let best = least_spread(&costs).ok_or(ChoiceError::Nothing)?;
    Ok(Pairing::of(first, second, best.parts))
}

/// The quick way at the bench: the heaviest with the lightest, and so on. It
/// is often the best there is, but not always.
#[must_use]
pub fn heaviest_with_lightest(first: &[Measured<Mass>], second: &[Measured<Mass>]) -> Pairing {
    let by_weight = |parts: &[Measured<Mass>]| {
        let mut order: Vec<(usize, f64)> = parts
            .iter()
            .map(|one| one.value().to_si())
            .enumerate()
            .collect();
        order.sort_by(|(_, a), (_, b)| a.total_cmp(b));
        order
    };
    let mut pairs: Vec<(usize, usize)> = by_weight(first)
        .into_iter()
        .rev()
        .zip(by_weight(second))
        .map(|((one, _), (other, _))| (one, other))
        .collect();
    pairs.sort_unstable();
    Pairing::of(
        first,
        second,
        pairs.into_iter().map(|(_, other)| other).collect(),
    )
}

const WEIGHT: (Kind, UsualUnits) = (Kind::Mass, UsualUnits::of("g", "g"));

static FIRST: Input = Input::of(
    "first",
    "first parts",
    WEIGHT,
    (0.0, 50.0),
    "Weigh each part clean and dry, in the order they lie: the pistons, say.",
)
.one_or_more();
static SECOND: Input = Input::of(
    "second",
    "second parts",
    WEIGHT,
    (0.0, 50.0),
    "Weigh each, in the order they lie: the pins, say.",
)
.one_or_more();

/// Pairs of equal weight.
pub static MATCH_WEIGHTS: Calculation = Calculation {
    id: "match-weights",
    title: "Pairs of the same weight",
    purpose: "Pairs two sets of parts, such as pistons and pins, so that the pairs differ least in weight.",
    inputs: &[FIRST, SECOND],
    outputs: &[
        Output::of("range", "heaviest pair less lightest", WEIGHT),
        Output::of("lightest", "lightest pair", WEIGHT),
        Output::of(
            "quick-range",
            "the same by the quick way, heaviest with lightest",
            WEIGHT,
        ),
    ],
    workings: &[
        "every pairing is weighed for the least difference between its heaviest and lightest pair: {range}",
        "the heaviest with the lightest, in order, would give {quick-range}",
    ],
    provenance: Provenance::Derivation("bottleneck assignment of the sums, exact"),
    cautions: &[
        "Take weight off the heavy ones only where the maker allows. A fit comes before a weight: do not trade clearances for grams.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let first = given.measured::<Mass>(FIRST.id);
    let second = given.measured::<Mass>(SECOND.id);
    let best = pair_evenly(&first, &second)
        .map_err(|error| CalculationError::not_possible(&SECOND, error.to_string()))?;
    let estimate = |one: Measured<Mass>| one.into_estimate();
    let quick = (first.len() == second.len())
        .then(|| heaviest_with_lightest(&first, &second).range())
        .flatten();
    let mut answer = Answer::new()
        .with_optional("range", best.range().map(estimate))
        .with_optional(
            "lightest",
            Measured::least(&best.sums).cloned().map(estimate),
        )
        .with_optional("quick-range", quick.map(estimate));
    for ((one, partner), sum) in (1..).zip(&best.partners).zip(&best.sums) {
        answer = answer.finding(
            Gravity::Note,
            format!(
                "First {one} goes with second {}: {:.2} g",
                partner + 1,
                grams(sum)
            ),
        );
    }
    Ok(answer)
}

fn grams(mass: &Measured<Mass>) -> f64 {
    Estimate::value(mass.estimate()) * 1e3
}

#[cfg(test)]
mod tests {
    use super::*;

    fn masses(grams: &[f64]) -> Vec<Measured<Mass>> {
        grams
            .iter()
            .map(|one| Measured::exact(Mass::from_si(one * 1e-3)))
            .collect()
    }

    fn range(pairing: &Pairing) -> f64 {
        pairing.range().unwrap().value().to_si() * 1e3
    }

    // By hand: sums 2, 4, 10 from (0,4) and so on; 0+10, 5+4, 9+0 is best.
    #[test]
    fn the_quick_way_is_not_always_the_best() {
        let (first, second) = (masses(&[0.0, 1.0, 10.0]), masses(&[0.0, 8.0, 9.0]));
        let quick = heaviest_with_lightest(&first, &second);
        assert_eq!(quick.partners, [2, 1, 0]);
        assert!(range(&pair_evenly(&first, &second).unwrap()) <= range(&quick));
    }

    #[test]
    fn spare_parts_are_left_over() {
        let pairing = pair_evenly(&masses(&[10.0, 12.0]), &masses(&[5.0, 3.0, 50.0])).unwrap();
        assert_eq!(pairing.partners, [0, 1]);
        assert!(range(&pairing) < 1e-9);
    }

    #[test]
    fn too_few_partners_are_told() {
        let given = Given::new()
            .with("first", Estimate::exact(0.6))
            .with("first", Estimate::exact(0.6))
            .with("second", Estimate::exact(0.4));
        assert_eq!(
            MATCH_WEIGHTS.answer(&given).unwrap_err().field(),
            Some("second")
        );
    }
}
