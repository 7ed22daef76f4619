//! What two devices say differently, for a person to see and decide.

use std::collections::{BTreeMap, BTreeSet};

use assembly_core::measure::Window;
use build_plan::{Measure, Place};

use super::folding::Folding;
use super::limits::Limits;
use super::readings::Taken;
use super::register::{Register, Role};
use crate::fact::Fact;
use crate::id::{DeviceId, FactId};
use crate::journal::Journal;

/// Readings of one place that lie further apart than so many give-or-takes of
/// their difference are asked about. Ours: one in twenty would by chance.
pub(super) const APART: f64 = 2.0;

/// Two things that cannot both be right, from two devices.
#[derive(Clone, PartialEq, Debug)]
pub enum Conflict {
    /// Limits that differ, for the same measure and part.
    Limits {
        /// The limits in force, in the order they were set.
        limits: Vec<Limits>,
    },
    /// Readings of one place that are too far apart for their tools.
    Readings {
        /// The measure.
        measure: &'static Measure,
        /// The place.
        place: Place,
        /// The readings, with the device each was taken on.
        readings: Vec<(DeviceId, Taken)>,
    },
}

impl Conflict {
    /// The facts that are against each other.
    #[must_use]
    pub fn facts(&self) -> Vec<FactId> {
        match self {
            Self::Limits { limits } => limits.iter().map(|one| one.fact).collect(),
            Self::Readings { readings, .. } => readings.iter().map(|(_, one)| one.fact).collect(),
        }
    }
}

/// Everything that two devices say differently. Nothing is decided: limits that
/// differ give no verdict, readings are averaged with all their errors, until a
/// person sets limits anew or strikes a reading out.
#[must_use]
pub fn conflicts(journal: &Journal) -> Vec<Conflict> {
    let folding = Folding::of(journal);
    let mut found = of_limits(&folding.build.limits);
    for spot in folding.build.readings.spots() {
        let Some(measure) = folding.build.plan.measure(spot.0) else {
            continue;
        };
        let mut places: BTreeMap<Place, Vec<(DeviceId, &Taken)>> = BTreeMap::new();
        for taken in folding.build.readings.of(measure, spot.1) {
            let device = journal.get(taken.fact).map(Fact::device);
            if let (Some(place), Some(device), Some(_)) = (taken.place, device, taken.counting()) {
                places.entry(place).or_default().push((device, taken));
            }
        }
        for (place, readings) in places {
            let devices: BTreeSet<DeviceId> = readings.iter().map(|(device, _)| *device).collect();
            if devices.len() > 1 && folding.are_apart(&readings) {
                let owned = readings
                    .into_iter()
                    .map(|(device, taken)| (device, taken.clone()));
                found.push(Conflict::Readings {
                    measure,
                    place,
                    readings: owned.collect(),
                });
            }
        }
    }
    found
}

fn of_limits(limits: &[Limits]) -> Vec<Conflict> {
    let mut found = Vec::new();
    for (at, one) in limits.iter().enumerate() {
        let same = |other: &&Limits| {
            other.set.measure == one.set.measure && other.set.place == one.set.place
        };
        if limits.iter().take(at).any(|other| same(&other)) {
            continue;
        }
        let all: Vec<Limits> = limits.iter().filter(same).cloned().collect();
        let window = |one: &Limits| one.window.clone().ok();
        let first: Option<Window> = window(one);
        if all.iter().any(|other| window(other) != first) {
            found.push(Conflict::Limits { limits: all });
        }
    }
    found
}

impl Folding {
    /// Whether readings of one place lie too far apart; without a give-or-take,
    /// whether they differ at all.
    fn are_apart(&self, readings: &[(DeviceId, &Taken)]) -> bool {
        let all = readings.iter().map(|(_, taken)| (Role::Itself, *taken));
        let register = Register::of(all, &self.bench, &self.build.readings);
        let measured: usize = register
            .places(Role::Itself)
            .map(|(_, one)| one.len())
            .sum();
        if measured == readings.len() {
            let mut places = register.places(Role::Itself);
            return places.any(|(_, repeats)| repeats.apart_by_more_than(APART).is_some());
        }
        let mut values = readings
            .iter()
            .filter_map(|(_, taken)| taken.counting().map(|typed| typed.si()));
        let first = values.next();
        values.any(|value| Some(value) != first)
    }
}
