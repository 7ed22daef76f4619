//! The choice of bucket shims, exact.

use uom::si::f64::Length;

use crate::choose::costs::{Assignment, ChoiceError, Costs, whole};
use crate::choose::least_total::least_total_of;
use crate::measure::Measured;
use crate::quantity::Si;

/// A nanometre: misses in whole steps of it leave room for the two larger costs.
const NANOMETRE: f64 = 1e-9;
/// One shim moved outweighs all misses together, and one bought all moves.
const MOVED: i64 = 1_000_000_000;
const BOUGHT: i64 = 100 * MOVED;
/// The most valves at once.
const MOST_VALVES: usize = 24;

/// A valve as it was found.
#[derive(Clone, PartialEq, Debug)]
pub struct Valve {
    /// The shim that is in it.
    pub shim: Measured<Length>,
    /// The lash with that shim.
    pub lash: Measured<Length>,
}

/// The shim for a valve.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum ShimFor {
    /// The one that is in it.
    Stays,
    /// The one of another valve, counted from 0.
    FromValve(usize),
    /// A loose one by its place on the bench, counted from 0.
    FromBench(usize),
    /// One to be bought, of this thickness.
    Bought(Length),
}

/// Chooses a shim for each valve: as few bought as can be, then as few moved,
/// then the least total miss of the window's middle. Exact.
///
/// `sold_in` is the step in which shims are sold.
///
/// # Errors
/// [`ChoiceError::NoWay`] when a valve's lash can be brought into the window
/// neither by a shim that is there nor by one of the step.
pub fn choose_bucket_shims(
    valves: &[Valve],
    bench: &[Measured<Length>],
    window: (Length, Length),
    sold_in: Length,
) -> Result<Vec<ShimFor>, ChoiceError> {
    if valves.is_empty() {
        return Err(ChoiceError::Nothing);
    }
    if valves.len() > MOST_VALVES {
        return Err(ChoiceError::TooMany {
            parts: valves.len(),
            most: MOST_VALVES,
        });
    }
    let problem = Problem {
        valves,
        bench,
        low: window.0.to_si(),
        high: window.1.to_si(),
        sold_in: sold_in.to_si(),
    };
    let costs = problem.costs()?;
    let chosen = least_total_of(&costs, |cost| (cost != FORBIDDEN).then_some(cost)).ok_or(
        ChoiceError::NoWay {
            hint: "for some valve no shim that is there and none of the sold steps brings the lash into the window",
        },
    )?;
    Ok(problem.told(&chosen))
}

/// Outside of the window; larger than any cost.
const FORBIDDEN: i64 = 10_000 * BOUGHT;

struct Problem<'given> {
    valves: &'given [Valve],
    bench: &'given [Measured<Length>],
    low: f64,
    high: f64,
    sold_in: f64,
}

impl Problem<'_> {
    /// The thickness that would give exactly the middle of the window.
    fn ideal(&self, valve: &Valve) -> f64 {
        let middle = f64::midpoint(self.low, self.high);
        valve.shim.value().to_si() + valve.lash.value().to_si() - middle
    }

    /// The sold thickness nearest to the ideal.
    fn sold(&self, valve: &Valve) -> f64 {
        (self.ideal(valve) / self.sold_in).round() * self.sold_in
    }

    /// Columns: the shims of the valves, those of the bench, one bought for each valve.
    fn costs(&self) -> Result<Costs, ChoiceError> {
        let rows: Vec<Vec<f64>> = self
            .valves
            .iter()
            .enumerate()
            .map(|(row, valve)| {
                let used = self.valves.iter().enumerate().map(|(column, other)| {
                    let extra = if row == column { 0 } else { MOVED };
                    self.cost(valve, other.shim.value().to_si(), extra)
                });
                let loose = self
                    .bench
                    .iter()
                    .map(|shim| self.cost(valve, shim.value().to_si(), MOVED));
                let bought = (0..self.valves.len()).map(|column| {
                    if row == column {
                        self.cost(valve, self.sold(valve), BOUGHT)
                    } else {
                        FORBIDDEN as f64
                    }
                });
                used.chain(loose).chain(bought).collect()
            })
            .collect();
        Costs::new(&rows, 1.0)
    }

    fn cost(&self, valve: &Valve, shim: f64, extra: i64) -> f64 {
        let lash = valve.shim.value().to_si() + valve.lash.value().to_si() - shim;
        // Half a nanometre is rounding, not a limit missed.
        let inside = lash >= self.low - 0.5e-9 && lash <= self.high + 0.5e-9;
        match whole(shim - self.ideal(valve), NANOMETRE) {
            Some(miss) if inside && shim > 0.0 => (extra + miss.abs()) as f64,
            _ => FORBIDDEN as f64,
        }
    }

    fn told(&self, chosen: &Assignment) -> Vec<ShimFor> {
        let valves = self.valves.len();
        self.valves
            .iter()
            .zip(&chosen.parts)
            .enumerate()
            .map(|(row, (valve, column))| match column.checked_sub(valves) {
                None if *column == row => ShimFor::Stays,
                None => ShimFor::FromValve(*column),
                Some(loose) if loose < self.bench.len() => ShimFor::FromBench(loose),
                Some(_) => ShimFor::Bought(Length::from_si(self.sold(valve))),
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const MICROMETRE: f64 = 1e-6;

    fn metres(micrometres: i64) -> Measured<Length> {
        Measured::exact(Length::from_si(micrometres as f64 * MICROMETRE))
    }

    /// Bought, moved and total miss of a dealing; `None` when a lash is outside.
    fn rank(
        valves: &[(i64, i64)],
        shims: &[Option<i64>],
        own: &[bool],
        window: (i64, i64),
        sold_in: i64,
    ) -> Option<(usize, usize, i64)> {
        let mut rank = (0, 0, 0);
        for (((shim, lash), new), own) in valves.iter().zip(shims).zip(own) {
            let ideal2 = 2 * (shim + lash) - window.0 - window.1;
            let new = new.unwrap_or_else(|| {
                rank.0 += 1;
                (ideal2 as f64 / 2.0 / sold_in as f64).round() as i64 * sold_in
            });
            rank.1 += usize::from(!own);
            rank.2 += (2 * new - ideal2).abs();
            if !(window.0..=window.1).contains(&(shim + lash - new)) {
                return None;
            }
        }
        Some(rank)
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 150, ..ProptestConfig::default() })]

        #[test]
        fn no_dealing_buys_or_moves_less(
            valves in prop::collection::vec((2400..2600_i64, 100..400_i64), 1..=3),
            bench in prop::collection::vec(2400..2800_i64, 0..=2),
            low in 150..220_i64,
            width in 20..80_i64,
        ) {
            let window = (low, low + width);
            let pool: Vec<i64> = valves.iter().map(|(shim, _)| *shim).chain(bench.iter().copied()).collect();
            let options = pool.len() + 1;
            let mut best = None;
            for code in 0..options.pow(valves.len() as u32) {
                let picks: Vec<usize> = (0..valves.len() as u32).map(|place| code / options.pow(place) % options).collect();
                let mut used: Vec<usize> = picks.iter().copied().filter(|one| *one < pool.len()).collect();
                let count = used.len();
                used.sort_unstable();
                used.dedup();
                if used.len() < count {
                    continue;
                }
                let shims: Vec<Option<i64>> = picks.iter().map(|pick| pool.get(*pick).copied()).collect();
                let own: Vec<bool> = picks.iter().enumerate().map(|(valve, pick)| valve == *pick).collect();
                if let Some(rank) = rank(&valves, &shims, &own, window, 50) {
                    best = Some(best.map_or(rank, |best: (usize, usize, i64)| best.min(rank)));
                }
            }
            let given: Vec<Valve> = valves.iter().map(|(shim, lash)| Valve { shim: metres(*shim), lash: metres(*lash) }).collect();
            let loose: Vec<Measured<Length>> = bench.iter().map(|one| metres(*one)).collect();
            let found = choose_bucket_shims(&given, &loose, (metres(window.0).value(), metres(window.1).value()), metres(50).value());
            match found {
                Ok(chosen) => {
                    let shims: Vec<Option<i64>> = chosen.iter().zip(&valves).map(|(choice, (shim, _))| match choice {
                        ShimFor::Stays => Some(*shim),
                        ShimFor::FromValve(other) => Some(valves[*other].0),
                        ShimFor::FromBench(piece) => Some(bench[*piece]),
                        ShimFor::Bought(_) => None,
                    }).collect();
                    let own: Vec<bool> = chosen.iter().map(|one| *one == ShimFor::Stays).collect();
                    prop_assert_eq!(rank(&valves, &shims, &own, window, 50), best);
                }
                Err(_) => prop_assert_eq!(None, best),
            }
        }
    }
}
