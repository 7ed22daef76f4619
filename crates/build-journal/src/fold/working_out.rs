//! Works out again what a fact can have changed.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use build_plan::measure::{
    Found, MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE, Over, ROD_BEARING_BORE,
    ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE,
};
use build_plan::{At, Engine, Measure};

use super::bench::Bench;
use super::fit::{Fit, Holds};
use super::folding::{Folding, main};
use super::readings::Taken;
use super::register::{Register, Role};
use super::store::{Readings, Spot};

/// The measured values behind each result that goes by readings of its own.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Registers {
    mains: BTreeMap<u8, Register>,
    rods: BTreeMap<u8, Register>,
    spots: BTreeMap<Spot, Register>,
}

/// What becomes of the registers of what is worked out again.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Registered {
    /// They stand as they are: limits changed.
    Stand,
    /// They get the latest reading.
    Grow,
    /// They are made afresh.
    Afresh,
}

/// What has to be worked out again.
#[derive(Default)]
pub(super) struct Dirty {
    pub(super) mains: BTreeSet<u8>,
    pub(super) rods: BTreeSet<u8>,
    pub(super) fits: BTreeSet<Spot>,
}

impl Folding {
    pub(super) fn work_out(&mut self, dirty: &Dirty, registered: Registered) {
        for number in &dirty.mains {
            self.main(*number, registered);
        }
        for cylinder in &dirty.rods {
            self.rod(*cylinder, registered);
        }
        for spot in &dirty.fits {
            self.release(*spot);
        }
        for spot in &dirty.fits {
            if self.own_register(*spot) {
                self.register(*spot, registered);
            }
        }
        for spot in &dirty.fits {
            match self.fit(*spot) {
                Some(fit) => self.build.fits.insert(*spot, fit),
                None => self.build.fits.remove(spot),
            };
        }
    }

    fn main(&mut self, number: u8, registered: Registered) {
        let at = At::Main(number);
        let limits = self.build.limits_of(&MAIN_OIL_CLEARANCE, at);
        let Some(bearing) = main(&mut self.build.mains, number) else {
            return;
        };
        bearing.limits = limits;
        // Nothing else holds the causes of error now, so that they grow in place.
        bearing.sources = Arc::default();
        let roles = [
            (Role::Bore, &MAIN_BEARING_BORE, at),
            (Role::Journal, &MAIN_JOURNAL_DIAMETER, at),
            (Role::Itself, &MAIN_OIL_CLEARANCE, at),
        ];
        let register = self.registers.mains.entry(number).or_default();
        bring_up(
            register,
            registered,
            &roles,
            &self.bench,
            &self.build.readings,
        );
        bearing.work_out(register, &self.bench);
    }

    fn rod(&mut self, cylinder: u8, registered: Registered) {
        let limits = self.build.limits_of(&ROD_OIL_CLEARANCE, At::Rod(cylinder));
        let rods = &mut self.build.rods;
        let Some(bearing) = rods.iter_mut().find(|one| one.cylinder == cylinder) else {
            return;
        };
        bearing.limits = limits;
        bearing.fit.sources = Arc::default();
        let (rod, pin) = (At::Rod(cylinder), At::Crankpin(bearing.crankpin));
        let roles = [
            (Role::Bore, &ROD_BEARING_BORE, rod),
            (Role::Journal, &ROD_JOURNAL_DIAMETER, pin),
            (Role::Itself, &ROD_OIL_CLEARANCE, rod),
        ];
        let register = self.registers.rods.entry(cylinder).or_default();
        bring_up(
            register,
            registered,
            &roles,
            &self.bench,
            &self.build.readings,
        );
        bearing.work_out(register, &self.bench);
    }

    /// Lets go of the causes of error that a fit holds, so that they grow in place.
    fn release(&mut self, spot: Spot) {
        if let Some(fit) = self.build.fits.get_mut(&spot) {
            fit.sources = Arc::default();
        }
    }

    /// Whether a fit goes by readings of its own that are kept: all but what is
    /// worked out from more than one measure or part.
    fn own_register(&self, (id, at): Spot) -> bool {
        self.build
            .plan
            .measure(id)
            .is_some_and(|measure| self.build.readings.any(measure, at))
    }

    fn register(&mut self, spot: Spot, registered: Registered) {
        let (id, at) = spot;
        let Some(of) = self.build.plan.measure(id) else {
            return;
        };
        let register = self.registers.spots.entry(spot).or_default();
        let roles = [(Role::Itself, of, at)];
        bring_up(
            register,
            registered,
            &roles,
            &self.bench,
            &self.build.readings,
        );
    }

    fn fit(&self, spot: Spot) -> Option<Fit> {
        let (id, at) = spot;
        let of = self.build.plan.measure(id)?;
        let engine = self.engine()?;
        let limits = self.build.limits_of(of, at);
        let spots = &self.registers.spots;
        match (self.build.readings.any(of, at), of.found) {
            (true, _) => Fit::of((of, at), limits, spots.get(&spot)?, engine, Holds::Itself),
            // Taper and the like go by the readings of one measure at one part.
            (false, Found::Spread { of: base, over }) if over != Over::Neighbours => {
                let register = spots.get(&(base.id, at))?;
                Fit::of((of, at), limits, register, engine, Holds::Base)
            }
            _ => {
                let register = self.put_together(of, at, engine);
                Fit::of((of, at), limits, &register, engine, Holds::Several)
            }
        }
    }

    /// The register of what is worked out from several measures or parts.
    fn put_together(&self, of: &'static Measure, at: At, engine: &Engine) -> Register {
        let mut from: Vec<(Role, &'static Measure)> = Vec::new();
        match of.found {
            Found::Read | Found::WorkedOut { .. } => {}
            Found::Difference { of, less } => {
                from.extend([(Role::Bore, of), (Role::Journal, less)]);
            }
            Found::Spread { of, .. } => from.push((Role::Bore, of)),
        }
        let readings = from.into_iter().flat_map(|(role, measure)| {
            let parts = measure.spots.per.parts(engine);
            parts
                .into_iter()
                .filter(|part| part.concerns(at, engine))
                .flat_map(move |part| self.build.readings.of(measure, part))
                .map(move |taken| (role, taken))
        });
        Register::of(readings, &self.bench, &self.build.readings)
    }
}

/// Brings a register up to date: with the latest reading, or afresh.
fn bring_up(
    register: &mut Register,
    registered: Registered,
    roles: &[(Role, &'static Measure, At)],
    bench: &Bench,
    readings: &Readings,
) {
    let role_of = |taken: &Taken| {
        let (measure, at) = (taken.measure?, taken.place?.at);
        roles
            .iter()
            .find_map(|(role, of, part)| (of.id == measure.id && *part == at).then_some(*role))
    };
    match registered {
        Registered::Stand => {}
        Registered::Grow => {
            if let Some(taken) = readings.last()
                && let Some(role) = role_of(taken)
            {
                register.add(role, taken, bench, readings);
            }
        }
        Registered::Afresh => {
            let all = roles.iter().flat_map(|(role, measure, at)| {
                readings.of(measure, *at).map(move |taken| (*role, taken))
            });
            *register = Register::of(all, bench, readings);
        }
    }
}
