//! The running clearance of a bearing, main or rod.

use std::sync::Arc;

use assembly_core::describe::Finding;
use assembly_core::fit::running_clearance::{RunningClearance, advise};
use assembly_core::measure::{Sources, Window};
use assembly_core::tool::INSTRUMENTS;
use build_plan::measure::Tripwire;

use super::bearing_readings::BearingReadings;
use super::bench::Bench;
use super::limits::Limits;
use super::register::Register;
use super::standing::{Missing, Standing};

/// What is known of the clearance in a bearing.
#[derive(Clone, PartialEq, Debug)]
pub struct RunningFit {
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

impl RunningFit {
    /// The fit of a bearing with no readings yet.
    pub(super) fn unknown(limits: &[Limits]) -> Self {
        let mut missing = vec![Missing::AllReadings];
        super::standing::window(limits, &mut missing);
        Self {
            by_size: None,
            at_once: None,
            sources: Arc::default(),
            standing: Standing::Open(missing),
            findings: Vec::new(),
            common_practice: None,
        }
    }

    /// Works out all that follows from readings and limits.
    pub(super) fn of(
        register: &Register,
        limits: &[Limits],
        tripwire: Option<&Tripwire>,
        bench: &Bench,
    ) -> Self {
        let readings = BearingReadings(register);
        let sources = register.sources();
        let by_size = readings.by_size();
        let at_once = readings.at_once();
        let common_practice = readings
            .largest_journal()
            .and_then(|journal| tripwire?.window(journal).ok());
        let findings = readings.findings(by_size.as_ref(), at_once.as_ref());
        let mut missing = readings.missing();
        let window = super::standing::window(limits, &mut missing);
        let ruling = by_size.as_ref().or(at_once.as_ref());
        let standing = match (ruling, window) {
            (Some(clearance), Some(window)) if missing.is_empty() => {
                let each = readings.readings_of_each_place();
                let mut advice = advise(clearance, each, &window, sources, bench.known());
                if advice.tools.is_empty() {
                    // Nothing on the bench would settle it: what could be borrowed?
                    advice = advise(clearance, each, &window, sources, INSTRUMENTS);
                }
                Standing::Judged(Box::new(advice))
            }
            _ => Standing::Open(missing),
        };
        Self {
            by_size,
            at_once,
            sources: Arc::clone(sources),
            standing,
            findings,
            common_practice,
        }
    }
}
