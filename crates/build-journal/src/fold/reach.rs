//! How far a fact reaches: what has to be worked out again because of it.

use std::collections::BTreeSet;

use build_plan::At;
use build_plan::measure::{
    MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE, MEASURES, ROD_BEARING_BORE,
    ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE,
};

use super::folding::Folding;
use super::readings::Taken;
use super::store::{Spot, spot_of};
use super::working_out::Dirty;
use crate::fact::{LimitsSet, ToolSet};

impl Folding {
    /// What a reading at a spot can change.
    pub(super) fn touched_by(&self, (id, at): Spot) -> Dirty {
        let mut dirty = Dirty::default();
        let (Some(engine), Some(read)) = (self.engine(), self.build.plan.measure(id)) else {
            return dirty;
        };
        let ids = |all: [&'static build_plan::Measure; 3]| all.iter().any(|one| one.id == id);
        if ids([
            &MAIN_BEARING_BORE,
            &MAIN_JOURNAL_DIAMETER,
            &MAIN_OIL_CLEARANCE,
        ]) && let At::Main(number) = at
        {
            dirty.mains.insert(number);
        }
        if ids([&ROD_BEARING_BORE, &ROD_JOURNAL_DIAMETER, &ROD_OIL_CLEARANCE]) {
            match at {
                At::Rod(cylinder) => dirty.rods.extend([cylinder]),
                At::Crankpin(pin) => dirty.rods.extend(engine.on_crankpin(pin)),
                _ => {}
            }
        }
        if !is_running_clearance(id) {
            dirty.fits.insert((id, at));
        }
        for derived in MEASURES.iter().filter(|one| one.is_worked_out_from(read)) {
            if is_running_clearance(derived.id) {
                continue;
            }
            for part in derived.spots.per.parts(engine) {
                if part.concerns(at, engine) {
                    dirty.fits.insert((derived.id, part));
                }
            }
        }
        dirty
    }

    /// What limits can change.
    pub(super) fn under_limits(&self, made: &LimitsSet) -> Dirty {
        let mut dirty = Dirty::default();
        if made.measure == MAIN_OIL_CLEARANCE.id {
            dirty.mains = self
                .build
                .mains
                .iter()
                .map(|one| one.main.number())
                .collect();
        } else if made.measure == ROD_OIL_CLEARANCE.id {
            dirty.rods = self.build.rods.iter().map(|one| one.cylinder).collect();
        } else {
            dirty.fits = self
                .build
                .fits
                .keys()
                .copied()
                .filter(|(id, _)| *id == made.measure)
                .collect();
        }
        dirty
    }

    /// What setting a tool can change: nothing that was read before, but for
    /// readings that name the setting.
    pub(super) fn set_like(&self, made: &ToolSet) -> Dirty {
        let named = |taken: &Taken| taken.reading.setting == Some(made.setting);
        if self.build.readings.all().iter().any(named) {
            return self.everything();
        }
        // What the other tool is locked at has to be at hand from now on.
        let locked = made
            .locked_at
            .and_then(|fact| self.build.readings.get(fact));
        let spot = locked.and_then(|taken| spot_of(taken, self.engine()));
        spot.map_or_else(Dirty::default, |spot| self.touched_by(spot))
    }

    /// All that there is something to work out for.
    pub(super) fn everything(&self) -> Dirty {
        let mut dirty = Dirty {
            mains: self
                .build
                .mains
                .iter()
                .map(|one| one.main.number())
                .collect(),
            rods: self.build.rods.iter().map(|one| one.cylinder).collect(),
            fits: BTreeSet::new(),
        };
        for spot in self.build.readings.spots() {
            dirty.fits.extend(self.touched_by(spot).fits);
        }
        dirty
    }
}

/// Clearances of mains and rods are worked out with their bearings.
fn is_running_clearance(id: &str) -> bool {
    id == MAIN_OIL_CLEARANCE.id || id == ROD_OIL_CLEARANCE.id
}
