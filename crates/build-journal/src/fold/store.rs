//! All readings of a build, found by fact and by place.

use std::collections::BTreeSet;

use build_plan::{At, Engine, Measure};
use rustc_hash::FxHashMap;
use smallvec::SmallVec;

use super::readings::Taken;
use super::strikes::StruckOut;
use crate::id::FactId;

/// A measure at a part of the engine, as a key: the measure's id and the part.
pub(super) type Spot = (&'static str, At);

/// The readings, in the order they were taken.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Readings {
    /// Sorted by fact: a reading that came late is taken in by starting over.
    taken: Vec<Taken>,
    /// In no order: nothing that is shown goes by it.
    by_spot: FxHashMap<Spot, SmallVec<[u32; 6]>>,
    /// Readings that no longer count, since something was changed or their
    /// tool is in doubt.
    old: BTreeSet<FactId>,
}

impl Readings {
    /// Makes room for so many.
    pub(super) fn reserve(&mut self, many: usize) {
        self.taken.reserve(many);
    }

    /// Takes in a reading that is later than all before, of this spot, when the
    /// engine has it.
    pub(super) fn push(&mut self, taken: Taken, spot: Option<Spot>) {
        // No memory holds 2^32 readings.
        if let (Some(spot), Ok(at)) = (spot, u32::try_from(self.taken.len())) {
            self.by_spot.entry(spot).or_default().push(at);
        }
        self.taken.push(taken);
    }

    /// Where the reading with this fact is.
    fn place_of(&self, fact: FactId) -> Option<usize> {
        self.taken.binary_search_by_key(&fact, |one| one.fact).ok()
    }

    /// The reading with this fact.
    pub(super) fn get(&self, fact: FactId) -> Option<&Taken> {
        self.taken.get(self.place_of(fact)?)
    }

    /// Marks a reading as struck out. Says no when there is none of this fact.
    pub(super) fn strike(&mut self, struck: &StruckOut) -> Option<&Taken> {
        let at = self.place_of(struck.fact)?;
        let taken = self.taken.get_mut(at)?;
        taken.struck = Some(Box::new(struck.clone()));
        Some(taken)
    }

    /// The readings of a measure at a part, in the order they were taken.
    /// Those that no longer count are left out once there are others.
    pub(super) fn of(&self, measure: &'static Measure, at: At) -> impl Iterator<Item = &Taken> {
        let all = || self.at((measure.id, at));
        let renewed = !self.old.is_empty()
            && all().any(|taken| taken.counting().is_some() && !self.old.contains(&taken.fact));
        all().filter(move |taken| !renewed || !self.old.contains(&taken.fact))
    }

    /// All readings of a measure at a part, in the order they were taken.
    pub(super) fn at(&self, spot: Spot) -> impl DoubleEndedIterator<Item = &Taken> {
        let found = self.by_spot.get(&spot).map_or(&[][..], SmallVec::as_slice);
        found.iter().filter_map(|at| self.taken.get(*at as usize))
    }

    /// Says which readings no longer count.
    pub(super) fn set_old(&mut self, old: BTreeSet<FactId>) {
        self.old = old;
    }

    /// Whether some readings at a spot no longer count.
    pub(super) fn any_old(&self, spot: Spot) -> bool {
        !self.old.is_empty() && self.at(spot).any(|taken| self.old.contains(&taken.fact))
    }

    /// The latest reading at a spot that counts.
    pub(super) fn latest(&self, spot: Spot) -> Option<FactId> {
        let counting = |taken: &&Taken| taken.counting().is_some();
        let mut latest = self.at(spot).rev().filter(counting);
        let last = latest.next()?.fact;
        if self.old.contains(&last) {
            // One in doubt may come after one that is not.
            let sound = latest.find(|taken| !self.old.contains(&taken.fact));
            return Some(sound.map_or(last, |taken| taken.fact));
        }
        Some(last)
    }

    /// Whether there is any reading of a measure at a part.
    pub(super) fn any(&self, measure: &'static Measure, at: At) -> bool {
        self.by_spot.contains_key(&(measure.id, at))
    }

    /// Every measure and part with a reading, in no order.
    pub(super) fn spots(&self) -> impl Iterator<Item = Spot> {
        self.by_spot.keys().copied()
    }

    /// The latest reading.
    pub(super) fn last(&self) -> Option<&Taken> {
        self.taken.last()
    }

    /// All readings.
    pub(super) fn all(&self) -> &[Taken] {
        &self.taken
    }
}

/// Where a reading belongs on an engine; nowhere when this version does not
/// know its measure or place, or the engine has no such place.
pub(super) fn spot_of(taken: &Taken, engine: Option<&Engine>) -> Option<Spot> {
    let (measure, place) = (taken.measure?, taken.place?);
    let fits = measure.spots.per.includes(place.at) && place.exists_on(engine?);
    fits.then_some((measure.id, place.at))
}
