//! The choice of liner shims, exact.

use std::collections::HashSet;

use uom::si::f64::Length;

use crate::choose::costs::{ChoiceError, PICOMETRE, whole};
use crate::quantity::Si;

/// The most liners in a row and pieces on the bench at once.
const MOST_LINERS: usize = 12;
const MOST_SHIMS: usize = 32;

/// Which shim goes under which liner.
#[derive(Clone, PartialEq, Debug)]
pub struct LinerShims {
    /// The shim of each liner by its place on the bench, counted from 0; `None` for none.
    pub shims: Vec<Option<usize>>,
    /// How far the worst liner is from the middle of the window.
    pub worst_miss: Length,
    /// The greatest step between neighbours.
    pub greatest_step: Length,
}

/// Puts at most one shim under each liner so that every stand-out lies in its
/// window and no step between neighbours is too great; first the worst miss of
/// the window's middle is the least there is, then the greatest step. Exact.
///
/// Each shim is one piece. The liners are in one row, in its order.
///
/// # Errors
/// [`ChoiceError::NoWay`] when no choice keeps window and step.
pub fn shim_liners(
    stand_outs: &[f64],
    shims: &[f64],
    window: (f64, f64),
    most_step: f64,
) -> Result<LinerShims, ChoiceError> {
    if stand_outs.is_empty() {
        return Err(ChoiceError::Nothing);
    }
    for (parts, most) in [(stand_outs.len(), MOST_LINERS), (shims.len(), MOST_SHIMS)] {
        if parts > most {
            return Err(ChoiceError::TooMany { parts, most });
        }
    }
    let steps = |value: f64, place: usize, part: usize| {
        whole(value, PICOMETRE).ok_or(ChoiceError::NotANumber { place, part })
    };
    let (low, high) = (steps(window.0, 0, 0)?, steps(window.1, 0, 0)?);
    let mut row = Row {
        liners: Vec::new(),
        kinds: kinds_of(shims)?,
        low,
        high,
    };
    for (stand_out, place) in stand_outs.iter().zip(1..) {
        row.liners.push(steps(*stand_out, place, 0)?);
    }
    let most_step = steps(most_step, 0, 0)?;
    let (miss, step, chosen) = row.best(most_step).ok_or(ChoiceError::NoWay {
        hint: "no choice of these shims brings every liner into its window with such level neighbours; get other thicknesses, or swap the liners about",
    })?;
    Ok(LinerShims {
        shims: row.pieces(&chosen),
        // The middle may lie on half a step, so misses are counted double.
        worst_miss: Length::from_si(miss as f64 / 2.0 * PICOMETRE),
        greatest_step: Length::from_si(step as f64 * PICOMETRE),
    })
}

/// Shims that are alike: their thickness in steps, and the pieces.
type KindOfShim = (i64, Vec<usize>);

fn kinds_of(shims: &[f64]) -> Result<Vec<KindOfShim>, ChoiceError> {
    let mut kinds: Vec<KindOfShim> = Vec::new();
    for (piece, thickness) in shims.iter().enumerate() {
        let thickness = whole(*thickness, PICOMETRE).ok_or(ChoiceError::NotANumber {
            place: 1,
            part: piece + 1,
        })?;
        match kinds.iter_mut().find(|(known, _)| *known == thickness) {
            Some((_, pieces)) => pieces.push(piece),
            None => kinds.push((thickness, vec![piece])),
        }
    }
    Ok(kinds)
}

struct Row {
    /// Stand-outs without a shim, in steps.
    liners: Vec<i64>,
    kinds: Vec<KindOfShim>,
    low: i64,
    high: i64,
}

/// What is under a liner: nothing or a kind of shim.
type Under = Option<usize>;

impl Row {
    fn stand_out(&self, liner: usize, under: Under) -> Option<i64> {
        let shim = match under {
            None => 0,
            Some(kind) => self.kinds.get(kind)?.0,
        };
        Some(self.liners.get(liner)? + shim)
    }

    /// Twice the distance from the window's middle.
    const fn miss(&self, stand_out: i64) -> i64 {
        (2 * stand_out - self.low - self.high).abs()
    }

    fn all_under(&self) -> impl Iterator<Item = Under> {
        std::iter::once(None).chain((0..self.kinds.len()).map(Some))
    }

    fn best(&self, most_step: i64) -> Option<(i64, i64, Vec<Under>)> {
        let stand_outs: Vec<i64> = (0..self.liners.len())
            .flat_map(|liner| self.all_under().map(move |under| (liner, under)))
            .filter_map(|(liner, under)| self.stand_out(liner, under))
            .filter(|stand_out| (self.low..=self.high).contains(stand_out))
            .collect();
        let mut misses: Vec<i64> = stand_outs.iter().map(|one| self.miss(*one)).collect();
        misses.sort_unstable();
        misses.dedup();
        let enough = misses.partition_point(|miss| self.place(*miss, most_step).is_none());
        let miss = *misses.get(enough)?;
        let mut steps: Vec<i64> = stand_outs
            .iter()
            .flat_map(|one| stand_outs.iter().map(move |other| (one - other).abs()))
            .filter(|step| *step <= most_step)
            .collect();
        steps.push(0);
        steps.sort_unstable();
        steps.dedup();
        let enough = steps.partition_point(|step| self.place(miss, *step).is_none());
        let step = *steps.get(enough)?;
        Some((miss, step, self.place(miss, step)?))
    }

    /// What goes under each liner with this miss and step at most.
    fn place(&self, most_miss: i64, most_step: i64) -> Option<Vec<Under>> {
        let mut search = Search {
            row: self,
            most_miss,
            most_step,
            left: self.kinds.iter().map(|(_, pieces)| pieces.len()).collect(),
            chosen: Vec::new(),
            dead: HashSet::new(),
        };
        search.go_on(None).then_some(search.chosen)
    }

    /// Kinds back to pieces on the bench.
    fn pieces(&self, chosen: &[Under]) -> Vec<Option<usize>> {
        let mut left: Vec<std::slice::Iter<'_, usize>> =
            self.kinds.iter().map(|(_, pieces)| pieces.iter()).collect();
        chosen
            .iter()
            .map(|under| left.get_mut((*under)?)?.next().copied())
            .collect()
    }
}

struct Search<'row> {
    row: &'row Row,
    most_miss: i64,
    most_step: i64,
    left: Vec<usize>,
    chosen: Vec<Under>,
    dead: HashSet<(Option<i64>, Vec<usize>)>,
}

impl Search<'_> {
    /// Goes on with the next liner; the one before it stands out by `before`.
    fn go_on(&mut self, before: Option<i64>) -> bool {
        let liner = self.chosen.len();
        if liner == self.row.liners.len() {
            return true;
        }
        // The number of liners done is in the number of shims left only when
        // every liner got one, so it is part of what is remembered.
        let mut state = self.left.clone();
        state.push(liner);
        let state = (before, state);
        if self.dead.contains(&state) {
            return false;
        }
        let row = self.row;
        for under in row.all_under() {
            let Some(stand_out) = row.stand_out(liner, under) else {
                continue;
            };
            let level = before.is_none_or(|before| (stand_out - before).abs() <= self.most_step);
            let fits =
                (row.low..=row.high).contains(&stand_out) && row.miss(stand_out) <= self.most_miss;
            if !fits || !level || !self.take(under) {
                continue;
            }
            self.chosen.push(under);
            if self.go_on(Some(stand_out)) {
                return true;
            }
            self.chosen.pop();
            self.give_back(under);
        }
        self.dead.insert(state);
        false
    }

    fn take(&mut self, under: Under) -> bool {
        let Some(left) = under.and_then(|kind| self.left.get_mut(kind)) else {
            return under.is_none();
        };
        let there = *left > 0;
        *left -= usize::from(there);
        there
    }

    fn give_back(&mut self, under: Under) {
        if let Some(left) = under.and_then(|kind| self.left.get_mut(kind)) {
            *left += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const MICROMETRE: f64 = 1e-6;

    fn micrometres(length: Length) -> i64 {
        (length.to_si() / MICROMETRE * 2.0).round() as i64
    }

    fn metres(micrometres: &[i64]) -> Vec<f64> {
        micrometres
            .iter()
            .map(|one| *one as f64 * MICROMETRE)
            .collect()
    }

    /// Twice the worst miss and twice the greatest step, by trying everything.
    fn by_trying_all(
        liners: &[i64],
        shims: &[i64],
        window: (i64, i64),
        step: i64,
    ) -> Option<(i64, i64)> {
        let mut best = None;
        let options = shims.len() + 1;
        for code in 0..options.pow(liners.len() as u32) {
            let picks: Vec<usize> = (0..liners.len() as u32)
                .map(|place| code / options.pow(place) % options)
                .collect();
            let mut used: Vec<usize> = picks.iter().copied().filter(|pick| *pick > 0).collect();
            let count = used.len();
            used.sort_unstable();
            used.dedup();
            let stand_outs: Vec<i64> = liners
                .iter()
                .zip(&picks)
                .map(|(liner, pick)| liner + if *pick == 0 { 0 } else { shims[pick - 1] })
                .collect();
            let greatest_step = stand_outs
                .windows(2)
                .map(|two| (two[0] - two[1]).abs())
                .max()
                .unwrap_or(0);
            let inside = stand_outs
                .iter()
                .all(|one| (window.0..=window.1).contains(one));
            if used.len() == count && inside && greatest_step <= step {
                let miss = stand_outs
                    .iter()
                    .map(|one| (2 * one - window.0 - window.1).abs())
                    .max()
                    .unwrap();
                let rank = (miss, 2 * greatest_step);
                best = Some(best.map_or(rank, |best: (i64, i64)| best.min(rank)));
            }
        }
        best
    }

    proptest! {
        #[test]
        fn no_choice_is_better_than_the_chosen_one(
            liners in prop::collection::vec(-20..120_i64, 1..=4),
            shims in prop::collection::vec(prop_oneof![Just(50_i64), 10..90_i64], 0..=5),
            low in 60..80_i64,
            width in 10..60_i64,
            step in 0..60_i64,
        ) {
            let wanted = by_trying_all(&liners, &shims, (low, low + width), step);
            let window = (low as f64 * MICROMETRE, (low + width) as f64 * MICROMETRE);
            let found = shim_liners(&metres(&liners), &metres(&shims), window, step as f64 * MICROMETRE);
            match found {
                Ok(chosen) => {
                    let rank = (micrometres(chosen.worst_miss), micrometres(chosen.greatest_step));
                    prop_assert_eq!(Some(rank), wanted);
                    let mut used: Vec<usize> = chosen.shims.iter().copied().flatten().collect();
                    let count = used.len();
                    used.sort_unstable();
                    used.dedup();
                    prop_assert_eq!(used.len(), count);
                }
                Err(error) => {
                    let no_way = matches!(error, ChoiceError::NoWay { .. });
                    prop_assert!(no_way, "{}", error);
                    prop_assert_eq!(None, wanted);
                }
            }
        }
    }
}
