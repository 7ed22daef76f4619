//! The state of a build.

use std::collections::BTreeMap;

use build_plan::{At, Engine, Measure, Place};

use super::bought::Bought;
use super::doubt::Doubt;
use super::fit::Fit;
use super::folding::Folding;
use super::limits::Limits;
use super::made_sizes::ListedSizes;
use super::main_bearing::{MainBearing, RodBearing};
use super::oil::OilBook;
use super::photos::KeptPhoto;
use super::placing::WhatGoesWhere;
use super::plan::Plan;
use super::problem::Problem;
use super::readings::Taken;
use super::record::Record;
use super::store::{Readings, Spot};
use super::strikes::StruckOut;
use super::tools::ListedTool;
use super::warmth::SettledWarmth;
use crate::fact::SizedPart;
use crate::id::{BuildId, FactId};
use crate::journal::Journal;

/// Everything that follows from the facts of a build.
#[derive(Clone, PartialEq, Debug)]
pub struct Build {
    /// The build.
    pub id: BuildId,
    /// The engine, by its latest description that can be used.
    pub engine: Option<DescribedEngine>,
    /// The tools, in the order they were listed.
    pub tools: Vec<ListedTool>,
    /// What was decided about readings taken cold or warm, by the id of the fit.
    pub(super) warmth: BTreeMap<String, SettledWarmth>,
    /// The limits in force, in the order they were set.
    pub limits: Vec<Limits>,
    /// The sizes that sheets list.
    pub(super) sizes: BTreeMap<SizedPart, ListedSizes>,
    /// The main bearings, front to rear; none before the engine is described.
    pub mains: Vec<MainBearing>,
    /// The rod bearings, by cylinder; none before the engine is described.
    pub rods: Vec<RodBearing>,
    /// All other measures that there is something to say about. Clearances of
    /// mains and rods are with their bearings.
    pub(super) fits: BTreeMap<Spot, Fit>,
    /// Readings at a place or of a measure that this engine does not have, as
    /// far as this version knows. They are shown as such.
    pub elsewhere: Vec<Taken>,
    /// What the trade knows, and what the builder added.
    pub plan: Plan,
    /// What was done, seen, changed and let pass.
    pub record: Record,
    /// The parts list and the machine work.
    pub bought: Bought,
    /// What lies on the bench to choose from, and what was put where.
    pub places: WhatGoesWhere,
    /// What was written down of the oil and of running.
    pub oil: OilBook,
    /// The photos, in the order they were taken.
    pub photos: Vec<KeptPhoto>,
    /// The latest reading that counts, of each measure at each part.
    pub(super) latest: BTreeMap<Spot, FactId>,
    /// Readings in doubt, since their tool failed its zero afterwards.
    pub doubted: BTreeMap<FactId, Doubt>,
    /// What was noted down.
    pub notes: Vec<NotedDown>,
    /// What was struck out.
    pub struck: Vec<StruckOut>,
    /// All readings.
    pub(super) readings: Readings,
    /// What could not be used, and why.
    pub problems: Vec<Problem>,
    /// Facts of kinds that this version does not know.
    pub unknown: Vec<OtherFact>,
    /// The last thing that happened.
    pub last: Option<FactId>,
}

/// The engine, and the fact that describes it.
#[derive(Clone, PartialEq, Debug)]
pub struct DescribedEngine {
    /// The fact.
    pub fact: FactId,
    /// The engine.
    pub engine: Engine,
}

/// A note.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct NotedDown {
    /// The fact.
    pub fact: FactId,
    /// The words.
    pub text: String,
    /// Where it belongs, when it belongs somewhere.
    pub place: Option<Place>,
    /// The id of the step it was written on, when it was written on one.
    pub step: Option<String>,
}

/// A fact of a kind that this version does not know.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OtherFact {
    /// The fact.
    pub fact: FactId,
    /// The name of its kind.
    pub kind: String,
}

/// The state of a build, worked out from all its facts. Pure: the same facts
/// give the same state, in whatever order they came in.
#[must_use]
pub fn fold(journal: &Journal) -> Build {
    Folding::of(journal).into_build()
}

impl Build {
    pub(super) fn new(id: BuildId) -> Self {
        Self {
            id,
            engine: None,
            tools: Vec::new(),
            warmth: BTreeMap::new(),
            limits: Vec::new(),
            sizes: BTreeMap::new(),
            mains: Vec::new(),
            rods: Vec::new(),
            fits: BTreeMap::new(),
            elsewhere: Vec::new(),
            plan: Plan::default(),
            record: Record::default(),
            bought: Bought::default(),
            places: WhatGoesWhere::default(),
            oil: OilBook::default(),
            photos: Vec::new(),
            latest: BTreeMap::new(),
            doubted: BTreeMap::new(),
            notes: Vec::new(),
            struck: Vec::new(),
            readings: Readings::default(),
            problems: Vec::new(),
            unknown: Vec::new(),
            last: None,
        }
    }

    /// A measure at a part, when there is something to say about it. The
    /// clearances of mains and rods are with their bearings.
    #[must_use]
    pub fn fit(&self, measure: &Measure, at: At) -> Option<&Fit> {
        self.fits.get(&(measure.id, at))
    }

    /// All measures that there is something to say about.
    pub fn fits(&self) -> impl Iterator<Item = &Fit> {
        self.fits.values()
    }

    /// All readings of a measure at a part, in the order they were taken; those
    /// that were struck out included.
    pub fn readings(&self, measure: &Measure, at: At) -> impl DoubleEndedIterator<Item = &Taken> {
        self.readings.at((measure.id, at))
    }

    /// The reading that a fact is.
    #[must_use]
    pub fn reading(&self, fact: FactId) -> Option<&Taken> {
        self.readings.get(fact)
    }

    /// The limits that hold for a measure at a part: the part's own, else those
    /// for all.
    #[must_use]
    pub fn limits_of(&self, measure: &Measure, at: At) -> Vec<Limits> {
        let of_measure = || {
            self.limits
                .iter()
                .filter(|one| one.set.measure == measure.id)
        };
        let own: Vec<Limits> = of_measure()
            .filter(|one| one.place().is_some_and(|place| place.at == at))
            .cloned()
            .collect();
        if own.is_empty() {
            of_measure()
                .filter(|one| one.set.place.is_none())
                .cloned()
                .collect()
        } else {
            own
        }
    }
}
