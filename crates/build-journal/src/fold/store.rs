//! All readings of a build, found by fact and by place.

use std::collections::BTreeMap;

use build_plan::{At, Engine, Measure};

use super::readings::Taken;
use super::strikes::StruckOut;
use crate::id::FactId;

/// A measure at a part of the engine, as a key: the measure's id and the part.
pub(super) type Spot = (&'static str, At);

/// The readings, in the order they were taken.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Readings {
    taken: Vec<Taken>,
    by_fact: BTreeMap<FactId, usize>,
    by_spot: BTreeMap<Spot, Vec<usize>>,
}

impl Readings {
    /// Takes in a reading that is later than all before. Gives its spot, when
    /// the engine has it.
    pub(super) fn push(&mut self, taken: Taken, engine: Option<&Engine>) -> Option<Spot> {
        let at = self.taken.len();
        let spot = spot_of(&taken, engine);
        self.by_fact.insert(taken.fact, at);
        if let Some(spot) = spot {
            self.by_spot.entry(spot).or_default().push(at);
        }
        self.taken.push(taken);
        spot
    }

    /// The reading with this fact.
    pub(super) fn get(&self, fact: FactId) -> Option<&Taken> {
        self.taken.get(*self.by_fact.get(&fact)?)
    }

    /// Marks a reading as struck out. Says no when there is none of this fact.
    pub(super) fn strike(&mut self, struck: &StruckOut) -> Option<&Taken> {
        let taken = self.taken.get_mut(*self.by_fact.get(&struck.fact)?)?;
        taken.struck = Some(struck.clone());
        Some(taken)
    }

    /// The readings of a measure at a part, in the order they were taken.
    pub(super) fn of(&self, measure: &'static Measure, at: At) -> impl Iterator<Item = &Taken> {
        self.by_spot
            .get(&(measure.id, at))
            .into_iter()
            .flatten()
            .filter_map(|at| self.taken.get(*at))
    }

    /// Whether there is any reading of a measure at a part.
    pub(super) fn any(&self, measure: &'static Measure, at: At) -> bool {
        self.by_spot.contains_key(&(measure.id, at))
    }

    /// Every measure and part with a reading.
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
