//! The clearances of all bearings with their causes of error in one register, so
//! that one micrometer's zero is one cause for all that it measured.

use std::sync::Arc;

use assembly_core::fit::running_clearance::RunningClearance;
use assembly_core::measure::{Estimate, Sources};
use assembly_core::quantity::Si;
use build_plan::measure::{
    MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE, ROD_BEARING_BORE,
    ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE,
};
use build_plan::{At, Measure};

use super::super::bearing_readings::BearingReadings;
use super::super::folding::Folding;
use super::super::register::{Register, Role};

/// The bearings of an engine.
pub(super) struct Bearings {
    pub(super) mains: Vec<Option<Estimate>>,
    pub(super) rods: Vec<Option<Estimate>>,
    /// Mean diameters of what was measured, m.
    pub(super) main_journal: Option<f64>,
    pub(super) rod_journal: Option<f64>,
    pub(super) sources: Sources,
}

struct Gathering<'a> {
    folding: &'a Folding,
    sources: Arc<Sources>,
    journals: Vec<f64>,
}

impl Gathering<'_> {
    /// The mean clearance of a bearing: what leaks goes by all of it.
    fn clearance(&mut self, roles: &[(Role, &'static Measure, At)]) -> Option<Estimate> {
        let folding = self.folding;
        let readings = roles.iter().flat_map(|(role, measure, at)| {
            let taken = folding.build.readings.of(measure, *at);
            taken.map(move |taken| (*role, taken))
        });
        let sources = std::mem::take(&mut self.sources);
        let register =
            Register::going_on(sources, readings, &folding.bench, &folding.build.readings);
        self.sources = Arc::clone(register.sources());
        let journals = register.means(Role::Journal);
        self.journals
            .extend(journals.map(|(_, mean)| mean.value().to_si()));
        let readings = BearingReadings(&register);
        let clearance: RunningClearance = readings.by_size().or_else(|| readings.at_once())?;
        Some(clearance.mean.estimate().clone())
    }

    /// The mean diameter of the journals since it was last asked.
    fn journal(&mut self) -> Option<f64> {
        let all = std::mem::take(&mut self.journals);
        (!all.is_empty()).then(|| all.iter().sum::<f64>() / all.len() as f64)
    }
}

impl Bearings {
    pub(super) fn of(folding: &Folding) -> Self {
        let build = &folding.build;
        let mut gathering = Gathering {
            folding,
            sources: Arc::default(),
            journals: Vec::new(),
        };
        let mains = build
            .mains
            .iter()
            .map(|bearing| {
                let at = At::Main(bearing.main.number());
                gathering.clearance(&[
                    (Role::Bore, &MAIN_BEARING_BORE, at),
                    (Role::Journal, &MAIN_JOURNAL_DIAMETER, at),
                    (Role::Itself, &MAIN_OIL_CLEARANCE, at),
                ])
            })
            .collect();
        let main_journal = gathering.journal();
        let rods = build
            .rods
            .iter()
            .map(|bearing| {
                let (rod, pin) = (At::Rod(bearing.cylinder), At::Crankpin(bearing.crankpin));
                gathering.clearance(&[
                    (Role::Bore, &ROD_BEARING_BORE, rod),
                    (Role::Journal, &ROD_JOURNAL_DIAMETER, pin),
                    (Role::Itself, &ROD_OIL_CLEARANCE, rod),
                ])
            })
            .collect();
        let rod_journal = gathering.journal();
        Self {
            mains,
            rods,
            main_journal,
            rod_journal,
            sources: Arc::unwrap_or_clone(gathering.sources),
        }
    }
}
