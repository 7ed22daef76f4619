//! A main bearing with all that is known of it.

use std::collections::BTreeMap;

use assembly_core::describe::Finding;
use assembly_core::fit::running_clearance::{RunningClearance, advise};
use assembly_core::measure::{Sources, Window};
use assembly_core::quantity::Si;
use assembly_core::tool::INSTRUMENTS;
use build_plan::Main;
use build_plan::measure::MAIN_OIL_CLEARANCE;

use super::bearing_readings::Sorted;
use super::bench::Bench;
use super::limits::Limits;
use super::readings::Taken;
use super::standing::{Missing, Standing};
use crate::id::FactId;

/// A main bearing.
#[derive(Clone, PartialEq, Debug)]
pub struct MainBearing {
    /// Which one.
    pub main: Main,
    /// All its readings, in the order they were taken, also those struck out
    /// and those that cannot be read.
    pub readings: Vec<Taken>,
    /// The limits of its oil clearance. More than one is a conflict that a
    /// person decides.
    pub limits: Vec<Limits>,
    /// The clearance from bore and journal, when both are measured.
    pub by_size: Option<RunningClearance>,
    /// The clearance read at once, off a strip or a needle.
    pub at_once: Option<RunningClearance>,
    /// The causes of error behind both.
    pub sources: Sources,
    /// How it stands against its limits: by bore and journal when both are
    /// measured, else by what was read at once.
    pub standing: Standing,
    /// What the numbers say besides.
    pub findings: Vec<Finding>,
    /// What common practice would expect of a journal of this size. Never a limit.
    pub common_practice: Option<Window>,
}

impl MainBearing {
    /// A main bearing before anything is known of it.
    pub(super) fn new(main: Main) -> Self {
        Self {
            main,
            readings: Vec::new(),
            limits: Vec::new(),
            by_size: None,
            at_once: None,
            sources: Sources::new(),
            standing: Standing::Open(Vec::new()),
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

    /// Works out all that follows from readings and limits. `all` are the
    /// readings of the whole engine: a gauge may have been zeroed at another
    /// bearing's journal.
    pub(super) fn work_out(&mut self, bench: &Bench, all: &BTreeMap<FactId, &Taken>) {
        let mut sources = Sources::new();
        let sorted = Sorted::of(&self.readings, bench, all, &mut sources);
        self.by_size = sorted.by_size();
        self.at_once = sorted.at_once();
        self.common_practice = sorted.largest_journal().and_then(|journal| {
            let wire = MAIN_OIL_CLEARANCE.tripwire.as_ref()?;
            wire.window(journal.value().to_si()).ok()
        });
        self.findings = sorted.findings(self.by_size.as_ref(), self.at_once.as_ref());
        let mut missing = sorted.missing();
        let window = self.window(&mut missing);
        self.standing = match (self.clearance(), window) {
            (Some(clearance), Some(window)) if missing.is_empty() => {
                let readings = sorted.readings_of_each_place();
                let own = bench.known();
                let mut advice = advise(clearance, readings, &window, &sources, &own);
                if advice.tools.is_empty() {
                    // Nothing on the bench would settle it: what could be borrowed?
                    advice = advise(clearance, readings, &window, &sources, INSTRUMENTS);
                }
                Standing::Judged(Box::new(advice))
            }
            _ => Standing::Open(missing),
        };
        self.sources = sources;
    }

    /// The window of the limits, or what is missing for one.
    fn window(&self, missing: &mut Vec<Missing>) -> Option<Window> {
        let [first, others @ ..] = self.limits.as_slice() else {
            missing.push(Missing::Limits);
            return None;
        };
        if others.iter().any(|other| other.window != first.window) {
            missing.push(Missing::OneSetOfLimits {
                facts: self.limits.iter().map(|one| one.fact).collect(),
            });
            return None;
        }
        match &first.window {
            Ok(window) => Some(*window),
            Err(problem) => {
                missing.push(Missing::UsableLimits {
                    fact: first.fact,
                    problem: problem.clone(),
                });
                None
            }
        }
    }
}
