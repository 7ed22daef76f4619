//! What a wrong unit text may have been meant to be.

use super::{Kind, Unit, units_of};

/// How many suggestions a person is offered.
const MOST: usize = 2;

/// Whether a unit of the kind has a name that begins like this.
pub(super) fn could_become(plain: &str, kind: Kind) -> bool {
    units_of(kind).flat_map(Unit::names).any(|name| {
        name.len() > plain.len()
            && name
                .get(..plain.len())
                .is_some_and(|start| start.eq_ignore_ascii_case(plain))
    })
}

/// Symbols of the units of the kind whose names come nearest, nearest first.
pub(super) fn nearest(plain: &str, kind: Kind) -> Vec<&'static str> {
    let wanted: Vec<char> = plain.to_ascii_lowercase().chars().collect();
    let allowed = match wanted.len() {
        0 => return Vec::new(),
        // A single letter in the wrong case, or nothing.
        1 => 0,
        2..=4 => 1,
        _ => 2,
    };
    let near: Vec<(usize, &'static str)> = units_of(kind)
        .filter_map(|unit| {
            let slips = unit
                .names()
                .map(|name| slips(&wanted, name))
                .min()
                .filter(|slips| *slips <= allowed)?;
            Some((slips, unit.symbol))
        })
        .collect();
    let best = near.iter().map(|(slips, _)| *slips).min();
    near.into_iter()
        .filter(|(slips, _)| Some(*slips) == best)
        .map(|(_, symbol)| symbol)
        .take(MOST)
        .collect()
}

/// How many letters were dropped, added, changed or swapped with a neighbour.
fn slips(wanted: &[char], name: &str) -> usize {
    let name: Vec<char> = name.to_ascii_lowercase().chars().collect();
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=name.len()).collect();
    let at = |row: &[usize], index: usize| row.get(index).copied().unwrap_or(usize::MAX / 2);
    for (i, letter) in wanted.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, other) in name.iter().enumerate() {
            let changed = at(&last, j) + usize::from(letter != other);
            let dropped = at(&last, j + 1) + 1;
            let added = at(&row, j) + 1;
            let mut least = changed.min(dropped).min(added);
            let swapped = i > 0
                && j > 0
                && wanted.get(i - 1) == Some(other)
                && name.get(j - 1) == Some(letter);
            if swapped {
                least = least.min(at(&before, j - 1) + 1);
            }
            row.push(least);
        }
        before = last;
        last = row;
    }
    at(&last, name.len())
}
