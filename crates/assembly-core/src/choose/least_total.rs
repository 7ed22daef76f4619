//! The assignment whose figures add up to the least.

use pathfinding::kuhn_munkres::kuhn_munkres_min;
use pathfinding::matrix::Matrix;

use super::costs::{Assignment, Costs};

/// The most parts for which the number of best assignments is counted.
const MOST_COUNTED: usize = 16;

/// An assignment with the least total.
///
/// ```
/// use assembly_core::choose::{Costs, least_total::least_total};
///
/// let costs = Costs::new(&[vec![1.0, 2.0], vec![2.0, 100.0]], 1.0).unwrap();
/// assert_eq!(least_total(&costs).parts, [1, 0]);
/// ```
#[must_use]
pub fn least_total(costs: &Costs) -> Assignment {
    let rows: Vec<&[i64]> = costs.rows().collect();
    // The table was checked when it was made, so its rows are of one length.
    Matrix::from_rows(rows.into_iter().map(<[i64]>::to_vec)).map_or_else(
        |_| Assignment { parts: Vec::new() },
        |matrix| Assignment {
            parts: kuhn_munkres_min(&matrix).1,
        },
    )
}

/// An assignment with the least total of what `figure` makes of each cell,
/// among those that take no cell of which it makes nothing; `None` when there
/// is none.
pub(super) fn least_total_of(
    costs: &Costs,
    figure: impl Fn(i64) -> Option<i64>,
) -> Option<Assignment> {
    let largest = costs
        .rows()
        .flatten()
        .filter_map(|cell| figure(*cell))
        .map(i64::abs)
        .max()?;
    // One forbidden cell outweighs every total of allowed ones. The figures are
    // at most 1e15 and the places at most 64, so all of this fits.
    let forbidden = largest * 2 * costs.places() as i64 + 1;
    let assignment = least_total(&costs.map(|cell| figure(cell).unwrap_or(forbidden)));
    costs
        .picked(&assignment)
        .into_iter()
        .all(|cell| figure(cell).is_some())
        .then_some(assignment)
}

/// How many assignments reach the least total; `None` when there are too many
/// parts to count them all.
#[must_use]
pub fn number_of_optima(costs: &Costs) -> Option<u64> {
    if costs.parts() > MOST_COUNTED {
        return None;
    }
    // For every set of parts given away so far: the least total, and in how many ways.
    let mut reached: Vec<Option<(i64, u64)>> = vec![None; 1 << costs.parts()];
    *reached.first_mut()? = Some((0, 1));
    for row in costs.rows() {
        let mut next: Vec<Option<(i64, u64)>> = vec![None; reached.len()];
        for (given, state) in reached.iter().enumerate() {
            let Some((total, ways)) = state else { continue };
            for (part, cell) in row.iter().enumerate() {
                if given >> part & 1 == 1 {
                    continue;
                }
                let slot = next.get_mut(given | 1 << part)?;
                let new = total + cell;
                *slot = match *slot {
                    Some((best, count)) if best < new => Some((best, count)),
                    Some((best, count)) if best == new => Some((best, count + ways)),
                    _ => Some((new, *ways)),
                };
            }
        }
        reached = next;
    }
    let finals = reached.into_iter().flatten();
    let all: Vec<(i64, u64)> = finals.collect();
    let best = all.iter().map(|(total, _)| *total).min()?;
    Some(
        all.iter()
            .filter(|(total, _)| *total == best)
            .map(|(_, ways)| ways)
            .sum(),
    )
}
