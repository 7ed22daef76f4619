//! Two devices with a copy of the build each, for tests: they write apart, as the
//! app does, and exchange what they have.

use build_plan::{At, Place};

use super::{Build, conflicts, fold};
use crate::fact::samples::{Pen, sprayer};
use crate::fact::{Body, InView, Mark, Spot, StepMarked};
use crate::id::{BuildId, FactId};
use crate::journal::Journal;

/// A device with its copy of the build.
pub(super) struct Device {
    pub(super) journal: Journal,
    pub(super) pen: Pen,
}

impl Device {
    pub(super) fn new(number: u128) -> Self {
        Self {
            journal: Journal::new(BuildId::from_random(7)),
            pen: Pen::new(number),
        }
    }

    pub(super) fn build(&self) -> Build {
        fold(&self.journal)
    }

    /// Writes as the app does: with what is in view.
    pub(super) fn write(&mut self, body: Body) -> FactId {
        let in_view = self.build().in_view(&self.journal, &body);
        self.write_with(body, in_view)
    }

    pub(super) fn write_with(&mut self, body: Body, in_view: Option<InView>) -> FactId {
        let fact = self.pen.write_in_view(body, in_view);
        self.journal.take(fact.clone());
        fact.id()
    }

    pub(super) fn sees(&mut self, other: &Self) {
        other
            .journal
            .facts()
            .for_each(|fact| self.pen.observe(fact));
        self.journal.merge(&other.journal).unwrap();
    }

    /// Lets one word hold, as a tap on the screen does.
    pub(super) fn settle(&mut self, fact: FactId) {
        let found = conflicts(&self.journal);
        let one = found
            .iter()
            .find(|one| one.facts().contains(&fact))
            .unwrap();
        for (body, in_view) in one.holds(fact, &self.build()) {
            self.write_with(body, Some(in_view));
        }
    }

    pub(super) fn marked(&self, step: &str, at: At) -> Option<Mark> {
        let build = self.build();
        let step = build.plan.step(step).unwrap();
        build.record.marked(step, at).map(|marked| marked.mark)
    }
}

/// A phone and a tablet that both have the engine.
pub(super) fn two() -> [Device; 2] {
    let mut devices = [Device::new(1), Device::new(2)];
    devices[0].write(sprayer());
    exchange(&mut devices);
    // By its clock, what the tablet says comes later.
    for _ in 0..3 {
        let _ = devices[1].pen.write(sprayer());
    }
    devices
}

pub(super) fn assert_none(device: &Device) {
    assert_eq!(conflicts(&device.journal), []);
}

pub(super) fn exchange(devices: &mut [Device; 2]) {
    let [one, other] = devices;
    one.sees(other);
    other.sees(one);
}

pub(super) fn step(step: &str, at: Option<At>, mark: Mark) -> Body {
    Body::StepMarked(StepMarked {
        step: step.to_owned(),
        place: at.map(|at| Spot::Known(Place::of(at))),
        mark,
        words: None,
    })
}
