//! The assignments whose worst figure is the least, and those whose figures lie
//! closest together.

use super::costs::{Assignment, Costs, LARGEST};
use super::least_total::least_total_of;
use super::matching::{allowed, can_place_all};

/// The least that the worst figure of an assignment can be, in steps.
///
/// ```
/// use assembly_core::choose::{Costs, bottleneck};
///
/// let costs = Costs::new(&[vec![1.0, 2.0], vec![2.0, 100.0]], 1.0).unwrap();
/// assert_eq!(bottleneck::least_worst(&costs), 2);
/// ```
#[must_use]
pub fn least_worst(costs: &Costs) -> i64 {
    let levels = costs.levels();
    let enough =
        levels.partition_point(|level| !can_place_all(&allowed(costs, |cell| cell <= *level)));
    // With the largest figure everything is allowed, so there always is a level.
    levels
        .get(enough)
        .or_else(|| levels.last())
        .copied()
        .unwrap_or(0)
}

/// Among the assignments with the least worst figure, one with the least total.
#[must_use]
pub fn least_worst_then_total(costs: &Costs) -> Option<Assignment> {
    let worst = least_worst(costs);
    least_total_of(costs, |cell| (cell <= worst).then_some(cell))
}

/// An assignment whose figures lie closest together; among these the one with
/// the least total.
#[must_use]
pub fn least_spread(costs: &Costs) -> Option<Assignment> {
    closest(costs, |_| true)
}

/// The assignment of sizes to a target: least worst miss, then least spread of
/// the sizes, then least total miss.
#[must_use]
pub fn nearest_then_closest(sizes: &Costs, target: i64) -> Option<Assignment> {
    // Nothing in the table is larger, and so nothing overflows.
    let target = target.clamp(-LARGEST, LARGEST);
    let misses = sizes.map(|size| (size - target).abs());
    let worst = least_worst(&misses);
    // The table of sizes is moved to the target, so that its figures' sizes are the misses.
    closest(&sizes.map(|size| size - target), |off| off.abs() <= worst)
}

/// Least spread among the figures that hold, then the least total of their sizes.
fn closest(costs: &Costs, holds: impl Fn(i64) -> bool) -> Option<Assignment> {
    let levels: Vec<i64> = costs
        .levels()
        .into_iter()
        .filter(|level| holds(*level))
        .collect();
    let mut best: Option<(i64, Vec<(i64, i64)>)> = None;
    let mut high_at = 0;
    for (low_at, low) in levels.iter().enumerate() {
        high_at = high_at.max(low_at);
        // The window from here up only ever has to grow as its lower end rises.
        let reaching = levels
            .get(high_at..)?
            .iter()
            .position(|high| can_place_all(&allowed(costs, |cell| (*low..=*high).contains(&cell))));
        let Some(reaching) = reaching else { break };
        high_at += reaching;
        let high = *levels.get(high_at)?;
        match &mut best {
            Some((spread, windows)) if *spread == high - low => windows.push((*low, high)),
            Some((spread, _)) if *spread < high - low => {}
            _ => best = Some((high - low, vec![(*low, high)])),
        }
    }
    let (_, windows) = best?;
    let sizes = costs.map(i64::abs);
    windows
        .into_iter()
        .filter_map(|(low, high)| {
            least_total_of(costs, |cell| {
                (low..=high).contains(&cell).then_some(cell.abs())
            })
        })
        .min_by_key(|assignment| sizes.total(assignment))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::choose::least_total::{least_total, number_of_optima};
    use proptest::prelude::*;

    /// Every assignment of a small table.
    fn all(places: usize, parts: usize) -> Vec<Assignment> {
        fn extend(places: usize, parts: usize, begun: &[usize], found: &mut Vec<Assignment>) {
            if begun.len() == places {
                found.push(Assignment {
                    parts: begun.to_vec(),
                });
                return;
            }
            for part in (0..parts).filter(|part| !begun.contains(part)) {
                let longer: Vec<usize> = begun.iter().copied().chain([part]).collect();
                extend(places, parts, &longer, found);
            }
        }
        let mut found = Vec::new();
        extend(places, parts, &[], &mut found);
        found
    }

    fn tables() -> impl Strategy<Value = Vec<Vec<f64>>> {
        (
            1..=4_usize,
            0..=2_usize,
            prop_oneof![Just(3_i32), Just(1000)],
        )
            .prop_flat_map(|(places, more, most)| {
                let row = prop::collection::vec((-most..=most).prop_map(f64::from), places + more);
                prop::collection::vec(row, places)
            })
    }

    proptest! {
        #[test]
        fn every_choice_is_the_best_of_all_there_are(rows in tables(), target in -5_i64..5) {
            let costs = Costs::new(&rows, 1.0).unwrap();
            let every = all(costs.places(), costs.parts());

            let least = every.iter().map(|one| costs.total(one)).min().unwrap();
            prop_assert_eq!(costs.total(&least_total(&costs)), least);
            let count = every.iter().filter(|one| costs.total(one) == least).count() as u64;
            prop_assert_eq!(number_of_optima(&costs), Some(count));

            let worst = every.iter().map(|one| costs.worst(one)).min().unwrap();
            prop_assert_eq!(least_worst(&costs), worst);
            let then = every
                .iter()
                .filter(|one| costs.worst(one) == worst)
                .map(|one| costs.total(one))
                .min()
                .unwrap();
            let chosen = least_worst_then_total(&costs).unwrap();
            prop_assert_eq!((costs.worst(&chosen), costs.total(&chosen)), (worst, then));

            let spread = every.iter().map(|one| costs.spread(one)).min().unwrap();
            prop_assert_eq!(costs.spread(&least_spread(&costs).unwrap()), spread);

            let misses = costs.map(|cell| (cell - target).abs());
            let rank = |one: &Assignment| {
                (misses.worst(one), costs.spread(one), misses.total(one))
            };
            let best = every.iter().map(rank).min().unwrap();
            prop_assert_eq!(rank(&nearest_then_closest(&costs, target).unwrap()), best);
        }
    }

    #[test]
    fn large_figures_stay_exact() {
        let rows = vec![vec![1e15, 1e15 - 1.0], vec![1e15 - 1.0, 1e15]];
        let costs = Costs::new(&rows, 1.0).unwrap();
        assert_eq!(least_total(&costs).parts, [1, 0]);
        assert_eq!(least_worst_then_total(&costs).unwrap().parts, [1, 0]);
        assert_eq!(least_spread(&costs).unwrap().parts, [1, 0]);
    }
}
