//! The choice itself, from the bench to the placing.

use std::cmp::Reverse;

use uom::si::f64::Length;

use super::bench::{BenchHalf, Main, OddHalf, OddSide, may_pair};
use super::place::MOST_JOURNALS;
use super::search::{Best, Candidate, Journal, KindOfHalf, Problem};
use crate::choose::costs::{ChoiceError, PICOMETRE, whole};
use crate::measure::Measured;
use crate::quantity::Si;

/// The most halves at once.
const MOST_HALVES: usize = 64;

/// The two halves of one journal.
#[derive(Clone, PartialEq, Debug)]
pub struct Placing {
    /// The half in the block or rod, by its place on the bench, counted from 0.
    pub upper: usize,
    /// The half in the cap, by its place on the bench, counted from 0.
    pub lower: usize,
    /// Housing less both walls less journal.
    pub clearance: Measured<Length>,
}

/// Which half goes where.
#[derive(Clone, PartialEq, Debug)]
pub struct ShellChoice {
    /// The halves of each journal, in the order of the journals.
    pub placings: Vec<Placing>,
    /// How far the worst journal misses its target.
    pub worst_miss: Length,
    /// The greatest clearance less the least.
    pub spread: Length,
}

/// Places the halves so that the worst miss of a target is the least there is,
/// and then the clearances lie as close together as they can. Exact.
///
/// Halves pair only as [`may_go_together`](crate::moves::shells::may_go_together)
/// allows, and the odd halves of mixed pairs go on one side.
///
/// # Errors
/// [`ChoiceError`] when there is nothing to place, too much of it, or when no
/// placing keeps the mixing rule.
pub fn choose_shells(
    mains: &[Main],
    bench: &[BenchHalf],
    odd: OddHalf,
) -> Result<ShellChoice, ChoiceError> {
    if mains.is_empty() || bench.is_empty() {
        return Err(ChoiceError::Nothing);
    }
    if bench.len() < 2 * mains.len() {
        return Err(ChoiceError::TooFewParts {
            places: 2 * mains.len(),
            parts: bench.len(),
        });
    }
    for (parts, most) in [(mains.len(), MOST_JOURNALS), (bench.len(), MOST_HALVES)] {
        if parts > most {
            return Err(ChoiceError::TooMany { parts, most });
        }
    }
    let kinds = Kinds::of(bench)?;
    let problems = odd
        .sides()
        .iter()
        .map(|side| problem(mains, &kinds, *side))
        .collect::<Result<Vec<Problem>, ChoiceError>>()?;
    let best = best_of(&problems).ok_or(ChoiceError::NoWay {
        hint: "there are too few uppers or lowers, or too few that are within one step of each other and of one make",
    })?;
    Ok(kinds.placed(mains, bench, &best))
}

/// The best of several searches.
fn best_of(problems: &[Problem]) -> Option<Best> {
    let worst: Vec<Option<i64>> = problems.iter().map(Problem::least_worst_miss).collect();
    let least = worst.iter().copied().flatten().min()?;
    problems
        .iter()
        .zip(worst)
        .filter(|(_, worst)| *worst == Some(least))
        .filter_map(|(problem, _)| problem.least_spread(least))
        .min_by_key(|best| best.spread)
}

/// Halves that are alike in all that counts.
struct Kinds<'bench> {
    /// One of each kind, its wall in steps, and all of the kind by their place.
    all: Vec<(&'bench BenchHalf, i64, Vec<usize>)>,
}

impl<'bench> Kinds<'bench> {
    fn of(bench: &'bench [BenchHalf]) -> Result<Self, ChoiceError> {
        let mut all: Vec<(&BenchHalf, i64, Vec<usize>)> = Vec::new();
        for (place, half) in bench.iter().enumerate() {
            let wall =
                whole(half.wall.value().to_si(), PICOMETRE).ok_or(ChoiceError::NotANumber {
                    place: 1,
                    part: place + 1,
                })?;
            let known = all.iter_mut().find(|(one, its_wall, _)| {
                *its_wall == wall && one.half == half.half && one.position == half.position
            });
            match known {
                Some((_, _, places)) => places.push(place),
                None => all.push((half, wall, vec![place])),
            }
        }
        Ok(Self { all })
    }

    fn counted(&self) -> Vec<KindOfHalf> {
        self.all
            .iter()
            .map(|(half, wall, places)| KindOfHalf {
                count: u8::try_from(places.len()).unwrap_or(u8::MAX),
                wall: *wall,
                position: half.position,
            })
            .collect()
    }

    /// The pairs of kinds back to halves on the bench.
    fn placed(&self, mains: &[Main], bench: &[BenchHalf], best: &Best) -> ShellChoice {
        let mut left: Vec<Vec<usize>> = self
            .all
            .iter()
            .map(|(_, _, places)| places.iter().rev().copied().collect())
            .collect();
        let mut next = |kind: usize| left.get_mut(kind).and_then(Vec::pop);
        let placings = mains
            .iter()
            .zip(&best.pairs)
            .filter_map(|(main, pair)| {
                let (upper, lower) = (next(pair.upper)?, next(pair.lower)?);
                let walls = bench.get(upper)?.wall.clone() + bench.get(lower)?.wall.clone();
                Some(Placing {
                    upper,
                    lower,
                    clearance: main.housing.clone() - main.journal.clone() - walls,
                })
            })
            .collect();
        ShellChoice {
            placings,
            worst_miss: Length::from_si(best.worst_miss as f64 * PICOMETRE),
            spread: Length::from_si(best.spread as f64 * PICOMETRE),
        }
    }
}

fn problem(mains: &[Main], kinds: &Kinds<'_>, odd: OddSide) -> Result<Problem, ChoiceError> {
    let mut pairs = Vec::new();
    for (upper, (above, above_wall, _)) in kinds.all.iter().enumerate() {
        for (lower, (below, below_wall, _)) in kinds.all.iter().enumerate() {
            if may_pair(above, below, odd) {
                pairs.push(Candidate {
                    upper,
                    lower,
                    walls: above_wall + below_wall,
                });
            }
        }
    }
    pairs.sort_by_key(|pair| Reverse(pair.walls));
    let journals = mains
        .iter()
        .zip(1..)
        .map(|(main, place)| {
            let steps = |size: f64| whole(size, PICOMETRE);
            let room = steps(main.housing.value().to_si() - main.journal.value().to_si());
            let target = steps(main.target.to_si());
            let journal = room.zip(target);
            journal
                .map(|(room, target)| Journal { room, target })
                .ok_or(ChoiceError::NotANumber { place, part: 1 })
        })
        .collect::<Result<Vec<Journal>, ChoiceError>>()?;
    Ok(Problem {
        kinds: kinds.counted(),
        pairs,
        journals,
    })
}
