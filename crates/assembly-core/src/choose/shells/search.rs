//! The exact search: a pair of halves for each journal, no half twice, least
//! worst miss, then least spread of the clearances.
//!
//! A bound on the miss leaves each journal a run of its pairs, which are in the
//! order of their clearance; [`place`] finds whether each journal can have one.

use std::ops::RangeInclusive;

use super::bench::Position;
use super::place::place;

/// A pair that a journal could get.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Candidate {
    /// The kind of the upper half.
    pub upper: usize,
    /// The kind of the lower half.
    pub lower: usize,
    /// Both walls together, in steps.
    pub walls: i64,
}

/// Halves that are alike.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct KindOfHalf {
    /// How many there are.
    pub count: u8,
    /// The wall, in steps.
    pub wall: i64,
    /// Where they fit.
    pub position: Position,
}

/// A journal to be given a pair.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Journal {
    /// Housing less journal, in steps: what two walls and the clearance share.
    pub room: i64,
    /// The wanted clearance, in steps.
    pub target: i64,
}

/// What there is of each kind, which pairs of kinds may be made, and for whom.
pub(super) struct Problem {
    pub kinds: Vec<KindOfHalf>,
    /// In the order of their walls, thick ones first: clearances ascend.
    pub pairs: Vec<Candidate>,
    pub journals: Vec<Journal>,
}

/// The best there is: its spread in steps, and the pair of each journal.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Best {
    pub worst_miss: i64,
    pub spread: i64,
    pub pairs: Vec<Candidate>,
}

impl Problem {
    /// The least worst miss there is, if there is any way at all.
    pub(super) fn least_worst_miss(&self) -> Option<i64> {
        let misses = |journal: &Journal| {
            let off = journal.room - journal.target;
            self.pairs.iter().map(move |pair| (off - pair.walls).abs())
        };
        // No journal can do better than its own best pair.
        let at_least = self
            .journals
            .iter()
            .map(|journal| misses(journal).min())
            .collect::<Option<Vec<i64>>>()?
            .into_iter()
            .max()?;
        let mut levels: Vec<i64> = self
            .journals
            .iter()
            .flat_map(misses)
            .filter(|miss| *miss >= at_least)
            .collect();
        levels.sort_unstable();
        levels.dedup();
        let everything = i64::MIN..=i64::MAX;
        let enough =
            levels.partition_point(|level| self.place(*level, everything.clone()).is_none());
        levels.get(enough).copied()
    }

    /// The best way with this worst miss.
    pub(super) fn least_spread(&self, worst_miss: i64) -> Option<Best> {
        let mut levels: Vec<i64> = self
            .journals
            .iter()
            .flat_map(|journal| {
                self.run(journal, worst_miss, &(i64::MIN..=i64::MAX))
                    .iter()
                    .map(|pair| journal.room - pair.walls)
            })
            .collect();
        levels.sort_unstable();
        levels.dedup();
        let mut best: Option<Best> = None;
        let mut high_at = 0;
        for (low_at, low) in levels.iter().enumerate() {
            high_at = high_at.max(low_at);
            // The window only ever has to grow at its upper end as its lower end
            // rises, and need not be tried once it is as wide as the best.
            while let Some(high) = levels.get(high_at) {
                let spread = high - low;
                if best.as_ref().is_some_and(|best| spread >= best.spread) {
                    break;
                }
                if let Some(pairs) = self.place(worst_miss, *low..=*high) {
                    best = Some(Best {
                        worst_miss,
                        spread,
                        pairs,
                    });
                    break;
                }
                high_at += 1;
            }
        }
        best
    }

    /// A pair for each journal that misses by no more than this and gives a
    /// clearance in this window.
    fn place(&self, worst_miss: i64, window: RangeInclusive<i64>) -> Option<Vec<Candidate>> {
        let runs: Vec<&[Candidate]> = self
            .journals
            .iter()
            .map(|journal| self.run(journal, worst_miss, &window))
            .collect();
        place(&self.kinds, &runs)
    }

    /// The pairs that would do for a journal.
    fn run(
        &self,
        journal: &Journal,
        worst_miss: i64,
        window: &RangeInclusive<i64>,
    ) -> &[Candidate] {
        let low = (*window.start()).max(journal.target - worst_miss);
        let high = (*window.end()).min(journal.target + worst_miss);
        let begin = self
            .pairs
            .partition_point(|pair| journal.room - pair.walls < low);
        let end = self
            .pairs
            .partition_point(|pair| journal.room - pair.walls <= high);
        self.pairs.get(begin..end).unwrap_or(&[])
    }
}
