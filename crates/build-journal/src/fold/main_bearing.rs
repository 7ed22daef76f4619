//! A main bearing, and a rod bearing, with all that is known of it.

use std::sync::Arc;

use assembly_core::describe::Finding;
use assembly_core::fit::running_clearance::RunningClearance;
use assembly_core::measure::{Sources, Window};
use build_plan::Main;
use build_plan::measure::{MAIN_OIL_CLEARANCE, ROD_OIL_CLEARANCE};

use super::bench::Bench;
use super::limits::Limits;
use super::register::Register;
use super::running_fit::RunningFit;
use super::standing::Standing;

/// A main bearing.
#[derive(Clone, PartialEq, Debug)]
pub struct MainBearing {
    /// Which one.
    pub main: Main,
    /// The limits of its oil clearance. More than one is a conflict that a
    /// person decides.
    pub limits: Vec<Limits>,
    /// The clearance from bore and journal, when both are measured.
    pub by_size: Option<RunningClearance>,
    /// The clearance read at once, off a strip or a needle.
    pub at_once: Option<RunningClearance>,
    /// The causes of error behind both.
    pub sources: Arc<Sources>,
    /// How it stands against its limits: by bore and journal when both are
    /// measured, else by what was read at once.
    pub standing: Standing,
    /// What the numbers say besides.
    pub findings: Vec<Finding>,
    /// What common practice would expect of a journal of this size. Never a limit.
    pub common_practice: Option<Window>,
}

/// A rod bearing: a rod's big end on its crankpin.
#[derive(Clone, PartialEq, Debug)]
pub struct RodBearing {
    /// The rod's cylinder.
    pub cylinder: u8,
    /// The crankpin it is on.
    pub crankpin: u8,
    /// The limits of its oil clearance. More than one is a conflict that a
    /// person decides.
    pub limits: Vec<Limits>,
    /// The clearance and how it stands.
    pub fit: RunningFit,
}

impl MainBearing {
    /// A main bearing before anything is known of it.
    pub(super) fn new(main: Main) -> Self {
        let fit = RunningFit::unknown(&[]);
        Self {
            main,
            limits: Vec::new(),
            by_size: None,
            at_once: None,
            sources: fit.sources,
            standing: fit.standing,
            findings: Vec::new(),
            common_practice: None,
        }
    }

    /// The clearance that the verdict goes by.
    #[must_use]
    pub const fn clearance(&self) -> Option<&RunningClearance> {
        match &self.by_size {
            Some(by_size) => Some(by_size),
            None => self.at_once.as_ref(),
        }
    }

    /// Works out all that follows from readings and limits.
    pub(super) fn work_out(&mut self, register: &Register, bench: &Bench) {
        let tripwire = MAIN_OIL_CLEARANCE.tripwire.as_ref();
        let fit = RunningFit::of(register, &self.limits, tripwire, bench);
        self.by_size = fit.by_size;
        self.at_once = fit.at_once;
        self.sources = fit.sources;
        self.standing = fit.standing;
        self.findings = fit.findings;
        self.common_practice = fit.common_practice;
    }
}

impl RodBearing {
    pub(super) fn new(cylinder: u8, crankpin: u8) -> Self {
        Self {
            cylinder,
            crankpin,
            limits: Vec::new(),
            fit: RunningFit::unknown(&[]),
        }
    }

    /// Works out all that follows from readings and limits.
    pub(super) fn work_out(&mut self, register: &Register, bench: &Bench) {
        let tripwire = ROD_OIL_CLEARANCE.tripwire.as_ref();
        self.fit = RunningFit::of(register, &self.limits, tripwire, bench);
    }
}
