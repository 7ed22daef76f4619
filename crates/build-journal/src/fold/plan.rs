//! The plan of one build: what the trade knows, and what the builder added.

use std::collections::BTreeMap;

use build_plan::check::{CHECKS, Check, check};
use build_plan::event::{Event, event};
use build_plan::proof::Proof;
use build_plan::step::{STEPS, Step, step};
use build_plan::{Engine, MEASURES, Measure, measure};

use super::own_items::{own_check, own_measure, own_step};
use super::problem::Problem;
use crate::fact::{Body, Fact, FastenerGroup, OwnStep, Sort};
use crate::id::OwnId;

/// More definitions than this in one build are a mistake or a forged file.
const MOST_OWN: usize = 500;

/// The plan of one build.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Plan {
    measures: BTreeMap<OwnId, &'static Measure>,
    fasteners: BTreeMap<OwnId, (FastenerGroup, &'static Check)>,
    steps: BTreeMap<OwnId, (OwnStep, &'static Step)>,
    /// What an own result becomes stale with: the other's id, and the own ones.
    triggers: BTreeMap<String, Vec<Proof>>,
    defined: usize,
}

impl Plan {
    /// Takes in a definition; the latest of an id counts.
    pub(super) fn take(&mut self, fact: &Fact, problems: &mut Vec<Problem>) {
        let body = fact.body();
        if !is_definition(body) {
            return;
        }
        self.defined += 1;
        let made = if self.defined > MOST_OWN {
            Err("there are too many definitions in this build".to_owned())
        } else {
            match body {
                Body::OwnMeasure(made) => own_measure(made).map(|item| {
                    self.measures.insert(made.own, item);
                    self.trigger(&made.stale_with, Proof::Measure(item));
                }),
                Body::FastenerGroup(made) => own_check(made).map(|item| {
                    self.fasteners.insert(made.own, (made.clone(), item));
                    self.trigger(&made.stale_with, Proof::Check(item));
                }),
                Body::OwnStep(made) => own_step(made).map(|item| {
                    self.steps.insert(made.own, (made.clone(), item));
                    self.trigger(&made.stale_with, Proof::Step(item));
                }),
                _ => Ok(()),
            }
        };
        if let Err(why) = made {
            let text = format!("A definition of the builder's own: {why}.");
            problems.push(Problem::new(fact.id(), text));
        }
    }

    fn trigger(&mut self, stale_with: &[String], own: Proof) {
        // What was defined before goes by its latest definition.
        for owns in self.triggers.values_mut() {
            owns.retain(|one| *one != own);
        }
        for id in stale_with {
            // What is worked out becomes stale with what it is worked out from.
            let mut ids = vec![id.as_str()];
            let mut at = 0;
            while let Some(id) = ids.get(at).copied() {
                ids.extend(
                    measure(id)
                        .iter()
                        .flat_map(|one| one.sources())
                        .map(|one| one.id),
                );
                at += 1;
            }
            for id in ids {
                let owns = self.triggers.entry(id.to_owned()).or_default();
                if !owns.contains(&own) {
                    owns.push(own);
                }
            }
        }
    }

    /// The own results that become stale with this.
    pub(super) fn triggered(&self, id: &str) -> &[Proof] {
        self.triggers.get(id).map_or(&[], Vec::as_slice)
    }

    /// The measure with this id.
    #[must_use]
    pub fn measure(&self, id: &str) -> Option<&'static Measure> {
        match own_id(id) {
            None => measure(id),
            Some(own) => self.measures.get(&own?).copied(),
        }
    }

    /// The check with this id.
    #[must_use]
    pub fn check(&self, id: &str) -> Option<&'static Check> {
        match own_id(id) {
            None => check(id),
            Some(own) => self.fasteners.get(&own?).map(|(_, check)| *check),
        }
    }

    /// The step with this id.
    #[must_use]
    pub fn step(&self, id: &str) -> Option<&'static Step> {
        match own_id(id) {
            None => step(id),
            Some(own) => self.steps.get(&own?).map(|(_, step)| *step),
        }
    }

    /// The event with this id.
    #[must_use]
    pub fn event(&self, id: &str) -> Option<&'static Event> {
        event(id)
    }

    /// The result with this sort and id.
    #[must_use]
    pub fn proof(&self, sort: Sort, id: &str) -> Option<Proof> {
        match sort {
            Sort::Measure => self.measure(id).map(Proof::Measure),
            Sort::Check => self.check(id).map(Proof::Check),
            Sort::Step => self.step(id).map(Proof::Step),
        }
    }

    /// Every measure of an engine, the builder's own last.
    pub fn measures(&self, engine: &Engine) -> impl Iterator<Item = &'static Measure> {
        let own = self.measures.values();
        let all = MEASURES.iter().chain(own).copied();
        all.filter(move |one| one.when.applies_to(engine))
    }

    /// Every check of an engine, the builder's own last.
    pub fn checks(&self, engine: &Engine) -> impl Iterator<Item = &'static Check> {
        let own = self.fasteners.values().map(|(_, check)| *check);
        let all = CHECKS.iter().copied().chain(own);
        all.filter(move |one| one.when.applies_to(engine))
    }

    /// Every step of an engine in the order of the job, the builder's own last.
    pub fn steps(&self, engine: &Engine) -> impl Iterator<Item = &'static Step> {
        let own = self.steps.values().map(|(_, step)| *step);
        let all = STEPS.iter().copied().chain(own);
        all.filter(move |one| one.when.applies_to(engine))
    }

    /// The builder's groups of fasteners, each with the check that it is.
    pub fn fasteners(&self) -> impl Iterator<Item = &(FastenerGroup, &'static Check)> {
        self.fasteners.values()
    }

    /// What a step proves.
    #[must_use]
    pub fn proves(&self, step: &Step) -> Vec<Proof> {
        let mut proves = step.proves.to_vec();
        if let Some(Some(own)) = own_id(step.id)
            && let Some((made, _)) = self.steps.get(&own)
        {
            let known = |id: &String| {
                let measure = self.measure(id).map(Proof::Measure);
                measure.or_else(|| self.check(id).map(Proof::Check))
            };
            proves.extend(made.proves.iter().filter_map(known));
        }
        proves
    }

    /// The steps that have to be done before a step on this engine, and the
    /// ones that are better done before.
    #[must_use]
    pub fn needs(&self, step: &'static Step, engine: &Engine) -> Vec<(&'static Step, bool)> {
        let strict = |need: &build_plan::step::Need| {
            (need.step, need.strength == build_plan::step::Strength::Hard)
        };
        let mut needs: Vec<(&'static Step, bool)> = step.needs_on(engine).map(strict).collect();
        for (made, own) in self.steps.values() {
            if own.id == step.id {
                let before = made.after.iter().filter_map(|id| self.step(id));
                needs.extend(before.map(|one| (one, true)));
            } else if made.before.iter().any(|id| id == step.id) {
                needs.push((own, true));
            }
        }
        needs.retain(|(one, _)| one.when.applies_to(engine) && one.id != step.id);
        needs
    }
}

/// Whether a fact adds to the plan.
pub(super) const fn is_definition(body: &Body) -> bool {
    matches!(
        body,
        Body::OwnMeasure(_) | Body::FastenerGroup(_) | Body::OwnStep(_)
    )
}

/// The builder's own id in a name: none when it is of the plan, an empty one
/// when it cannot be read.
fn own_id(id: &str) -> Option<Option<OwnId>> {
    id.strip_prefix("own:").map(|own| OwnId::parse(own).ok())
}
