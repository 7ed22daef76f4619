//! Whether each journal can have a pair of its run, no half used twice.
//!
//! Halves that are alike are one kind, so that swapping them is not tried. The
//! journal with the fewest pairs is settled first. A state is given up at once
//! when the uppers alone or the lowers alone cannot be dealt out, or when the
//! walls that are left cannot add up to what the journals need; and states that
//! led nowhere are remembered.

use std::collections::HashSet;

use super::search::{Candidate, KindOfHalf};
use crate::choose::matching::can_place_all;

/// The most journals at once.
pub(super) const MOST_JOURNALS: usize = 10;

/// A pair for each journal, or `None` when there is no way.
pub(super) fn place(kinds: &[KindOfHalf], runs: &[&[Candidate]]) -> Option<Vec<Candidate>> {
    let mut search = Search::new(kinds, runs);
    let everything = search.everything;
    search
        .go_on(everything)
        .then(|| search.chosen.into_iter().flatten().collect())
}

/// The halves still there, a bit each. The halves of a kind are neighbours, and
/// are used from the highest bit down, so that equal states are equal words.
type Halves = u64;

struct Search<'problem> {
    runs: &'problem [&'problem [Candidate]],
    /// The bits of each kind.
    blocks: Vec<Halves>,
    everything: Halves,
    /// Walls and blocks of the kinds that fit above and below, thin ones first.
    uppers: Vec<(i64, Halves)>,
    lowers: Vec<(i64, Halves)>,
    chosen: Vec<Option<Candidate>>,
    /// Journals still open and halves still there, from which no way led on.
    dead: HashSet<(u16, Halves)>,
}

/// What an open journal can still get.
#[derive(Clone, Copy, Default)]
struct Open {
    journal: usize,
    pairs: usize,
    /// The halves among its pairs.
    uppers: Halves,
    lowers: Halves,
    /// The least and the greatest sum of two walls among its pairs.
    thinnest: i64,
    thickest: i64,
}

impl<'problem> Search<'problem> {
    fn new(kinds: &[KindOfHalf], runs: &'problem [&'problem [Candidate]]) -> Self {
        let mut begin = 0_u32;
        let blocks: Vec<Halves> = kinds
            .iter()
            .map(|kind| {
                let block = (0..u32::from(kind.count))
                    .filter_map(|one| 1_u64.checked_shl(begin + one))
                    .sum();
                begin += u32::from(kind.count);
                block
            })
            .collect();
        let side = |fits: fn(&KindOfHalf) -> bool| {
            let mut side: Vec<(i64, Halves)> = kinds
                .iter()
                .zip(&blocks)
                .filter(|(kind, _)| fits(kind))
                .map(|(kind, block)| (kind.wall, *block))
                .collect();
            side.sort_unstable();
            side
        };
        Self {
            runs,
            everything: blocks.iter().sum(),
            uppers: side(|kind| kind.position.may_be_upper()),
            lowers: side(|kind| kind.position.may_be_lower()),
            blocks,
            chosen: vec![None; runs.len()],
            dead: HashSet::new(),
        }
    }

    fn go_on(&mut self, halves: Halves) -> bool {
        let mut slots = [Open::default(); MOST_JOURNALS];
        let open = self.open(halves, &mut slots);
        let Some(pressed) = open.iter().min_by_key(|one| one.pairs) else {
            return true;
        };
        if pressed.pairs == 0 || !could_be_dealt(open) || !self.could_add_up(halves, open) {
            return false;
        }
        let journal = pressed.journal;
        let still = open.iter().fold(0, |bits, one| bits | 1 << one.journal);
        if self.dead.contains(&(still, halves)) {
            return false;
        }
        let runs = self.runs;
        for candidate in runs.get(journal).copied().unwrap_or(&[]) {
            let Some(left) = self.without(halves, candidate) else {
                continue;
            };
            self.set(journal, Some(*candidate));
            if self.go_on(left) {
                return true;
            }
            self.set(journal, None);
        }
        self.dead.insert((still, halves));
        false
    }

    /// The journals without a pair, and what each can still get.
    fn open<'slots>(
        &self,
        halves: Halves,
        slots: &'slots mut [Open; MOST_JOURNALS],
    ) -> &'slots [Open] {
        let unsettled = self
            .runs
            .iter()
            .zip(&self.chosen)
            .enumerate()
            .filter(|(_, (_, chosen))| chosen.is_none());
        let mut count = 0;
        for ((journal, (run, _)), slot) in unsettled.zip(slots.iter_mut()) {
            *slot = self.still(halves, journal, run);
            count += 1;
        }
        slots.get(..count).unwrap_or(&[])
    }

    fn still(&self, halves: Halves, journal: usize, run: &[Candidate]) -> Open {
        let mut open = Open {
            journal,
            thinnest: i64::MAX,
            thickest: i64::MIN,
            ..Open::default()
        };
        for one in run {
            let (upper, lower) = (self.left(halves, one.upper), self.left(halves, one.lower));
            let enough = one.upper != one.lower || upper.count_ones() > 1;
            if upper != 0 && lower != 0 && enough {
                open.pairs += 1;
                open.uppers |= upper;
                open.lowers |= lower;
                open.thinnest = open.thinnest.min(one.walls);
                open.thickest = open.thickest.max(one.walls);
            }
        }
        open
    }

    /// Whether the walls that are left can add up: the so many journals that
    /// need most cannot need more than so many thickest uppers and lowers, and
    /// the so many that bear least not less than the thinnest.
    fn could_add_up(&self, halves: Halves, open: &[Open]) -> bool {
        let mut needs = [0; MOST_JOURNALS];
        let mut bears = [0; MOST_JOURNALS];
        for ((need, bear), one) in needs.iter_mut().zip(&mut bears).zip(open) {
            (*need, *bear) = (one.thinnest, one.thickest);
        }
        let needs = needs.get_mut(..open.len()).unwrap_or(&mut []);
        let bears = bears.get_mut(..open.len()).unwrap_or(&mut []);
        needs.sort_unstable();
        bears.sort_unstable();
        let thick = walls(self.uppers.iter().rev(), halves)
            .zip(walls(self.lowers.iter().rev(), halves))
            .map(|(upper, lower)| upper + lower);
        let thin = walls(self.uppers.iter(), halves)
            .zip(walls(self.lowers.iter(), halves))
            .map(|(upper, lower)| upper + lower);
        never_beyond(needs.iter().rev().copied(), thick)
            && never_beyond(thin, bears.iter().copied())
    }

    /// The halves of a kind that are still there.
    fn left(&self, halves: Halves, kind: usize) -> Halves {
        self.blocks.get(kind).copied().unwrap_or(0) & halves
    }

    /// What is left when a pair is taken; `None` when it is not there.
    fn without(&self, halves: Halves, pair: &Candidate) -> Option<Halves> {
        let halves = without_last(halves, self.left(halves, pair.upper))?;
        without_last(halves, self.left(halves, pair.lower))
    }

    fn set(&mut self, journal: usize, candidate: Option<Candidate>) {
        if let Some(slot) = self.chosen.get_mut(journal) {
            *slot = candidate;
        }
    }
}

fn without_last(halves: Halves, of: Halves) -> Option<Halves> {
    (of != 0).then(|| halves & !(1 << (63 - of.leading_zeros())))
}

/// The wall of every half that is still there, kind by kind.
fn walls<'kinds>(
    kinds: impl Iterator<Item = &'kinds (i64, Halves)>,
    halves: Halves,
) -> impl Iterator<Item = i64> {
    kinds.flat_map(move |(wall, block)| {
        std::iter::repeat_n(*wall, (block & halves).count_ones() as usize)
    })
}

/// Whether the running sums of the one never go beyond those of the other.
fn never_beyond(ones: impl Iterator<Item = i64>, others: impl Iterator<Item = i64>) -> bool {
    let mut ahead = 0;
    ones.zip(others).all(|(one, other)| {
        ahead += other - one;
        ahead >= 0
    })
}

/// Whether every open journal can have an upper, and every one a lower, each
/// side looked at alone.
fn could_be_dealt(open: &[Open]) -> bool {
    let mut wanted = [0; MOST_JOURNALS];
    [|one: &Open| one.uppers, |one: &Open| one.lowers]
        .iter()
        .all(|side| {
            for (slot, one) in wanted.iter_mut().zip(open) {
                *slot = side(one);
            }
            can_place_all(wanted.get(..open.len()).unwrap_or(&[]))
        })
}
