//! Takes in what was done, seen, changed and let pass, and finds the readings
//! that no longer count.

use std::collections::BTreeSet;

use build_plan::At;

use super::doubt::in_doubt;
use super::folding::Folding;
use super::readings::Taken;
use super::record::{Looking, Marked};
use super::store::Spot;
use crate::fact::{Body, Fact, Mark, Sort, StepMarked};
use crate::id::FactId;

impl Folding {
    /// Whether a mark changes no result: its step does nothing to the engine and
    /// was not done before at all.
    pub(super) fn is_quiet(&self, marked: &StepMarked) -> bool {
        let Some(step) = self.build.plan.step(&marked.step) else {
            return true;
        };
        let marks = &self.build.record.marks;
        let done = |(_, mark): (_, &Marked)| mark.done.is_some();
        let parts = (step.id, At::Engine)..=(step.id, At::Bank(u8::MAX));
        match marked.mark {
            Mark::Apart => false,
            Mark::Done => step.causes.is_empty() && !marks.range(parts).any(done),
            Mark::Planned | Mark::Begun | Mark::NotNeeded => true,
        }
    }

    /// Takes in what the builder adds to the plan.
    pub(super) fn define(&mut self, fact: &Fact) {
        self.build.plan.take(fact, &mut self.build.problems);
    }

    /// Takes in what goes by the engine and the plan: what was done, seen,
    /// changed, let pass, bought and given out.
    pub(super) fn note(&mut self, fact: &Fact) {
        let build = &mut self.build;
        build.bought.take(fact, &build.plan, &mut build.problems);
        build.oil.take(fact, &mut build.problems);
        let engine = build.engine.as_ref().map(|described| &described.engine);
        let decided = &build.record.decided;
        let changed = (build.places).take(fact, (engine, decided), &mut build.problems);
        match (&build.engine, fact.body()) {
            (Some(described), _) => {
                let look = Looking {
                    plan: &build.plan,
                    engine: &described.engine,
                };
                build.record.take(fact, &look, &mut build.problems);
                for (event, at) in changed {
                    build.record.event(fact.id(), event, Some(at), &look);
                }
            }
            (None, Body::StepMarked(_) | Body::CheckMade(_) | Body::EventHappened(_)) => {
                self.problem(fact, "It goes by the engine, which is not described yet.");
            }
            (None, _) => {}
        }
    }

    /// Takes in a fact that was struck out, for what it had in view.
    pub(super) fn pass_over(&mut self, fact: &Fact) {
        let build = &mut self.build;
        if let Some(described) = &build.engine {
            let look = Looking {
                plan: &build.plan,
                engine: &described.engine,
            };
            build.record.pass_over(fact, &look);
        }
    }

    /// Whether the latest reading is in doubt as soon as it is taken: its tool
    /// was set in one that failed since.
    pub(super) fn last_is_in_doubt(&self) -> bool {
        let last = self.build.readings.last().into_iter();
        !in_doubt(last, &self.build.tools, &self.bench).is_empty()
    }

    /// Finds the readings that no longer count.
    pub(super) fn grow_old(&mut self) {
        let all = self.build.readings.all().iter();
        self.build.doubted = in_doubt(all, &self.build.tools, &self.bench);
        let doubted = self.build.doubted.keys().copied();
        let mut old: BTreeSet<FactId> = doubted.collect();
        let record = &self.build.record;
        for key in record.voids.keys() {
            if key.sort == Sort::Measure {
                let void = |taken: &&Taken| record.void_of(*key, taken.fact).is_some();
                let spot = self.build.readings.at((key.id, key.at));
                old.extend(spot.filter(void).map(|taken| taken.fact));
            }
        }
        self.build.readings.set_old(old);
        let spots: Vec<Spot> = self.build.readings.spots().collect();
        for spot in spots {
            self.note_latest(spot);
        }
    }

    /// Notes the latest reading at a spot that counts.
    pub(super) fn note_latest(&mut self, spot: Spot) {
        match self.build.readings.latest(spot) {
            Some(fact) => self.build.latest.insert(spot, fact),
            None => self.build.latest.remove(&spot),
        };
    }
}
