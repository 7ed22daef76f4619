//! What was done, seen, changed and let pass, and what that made stale.

use std::collections::BTreeMap;

use build_plan::check::Check;
use build_plan::event::Event;
use build_plan::proof::Proof;
use build_plan::step::{Phase, Step};
use build_plan::{At, Engine};

use super::meant::{of_the_whole, parts, unknown};
use super::plan::Plan;
use super::problem::Problem;
use super::sayings::{Decided, Thing};
use super::unseen::Doings;
use crate::fact::{
    Body, CheckMade, EventHappened, Fact, Mark, Outcome, Sort, Spot, StepMarked, Waived,
};
use crate::id::FactId;

/// A result at a part of the engine, by name.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct ResultAt {
    /// What sort of result.
    pub sort: Sort,
    /// Its id.
    pub id: &'static str,
    /// The part.
    pub at: At,
}

impl ResultAt {
    /// The name of a result at a part.
    #[must_use]
    pub const fn of(proof: Proof, at: At) -> Self {
        let sort = match proof {
            Proof::Measure(_) => Sort::Measure,
            Proof::Check(_) => Sort::Check,
            Proof::Step(_) => Sort::Step,
        };
        Self {
            sort,
            id: proof.id(),
            at,
        }
    }
}

/// What made a result stale in the first place.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Cause {
    /// Something happened.
    Event(&'static Event),
    /// A step was done again.
    DoneAgain(&'static Step),
    /// A step was taken apart.
    TakenApart(&'static Step),
}

/// That a result stopped counting.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Void {
    /// The fact that did it.
    pub by: FactId,
    /// What was proved up to this fact no longer counts; later proofs do.
    pub upto: FactId,
    /// What happened.
    pub cause: Cause,
    /// The part it happened to, when it was not the whole engine.
    pub at: Option<At>,
    /// The result that this one goes by, when it was not named by the cause.
    pub through: Option<ResultAt>,
}

/// What was last said of a step at a part.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Marked {
    /// The fact.
    pub fact: FactId,
    /// What was said.
    pub mark: Mark,
    /// The fact that it was last done by.
    pub done: Option<FactId>,
}

/// How a check last came out at a part.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Made {
    /// The fact.
    pub fact: FactId,
    /// The device's clock then, in milliseconds since 1970.
    pub clock: i64,
    /// How it came out.
    pub outcome: Outcome,
    /// How long it stays good, as typed.
    pub lasts: Option<String>,
}

/// That a result is let pass.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LetPass {
    /// The fact.
    pub fact: FactId,
    /// Why.
    pub reason: String,
}

/// What was done, seen, changed and let pass, by part.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Record {
    pub(super) marks: BTreeMap<(&'static str, At), Marked>,
    pub(super) made: BTreeMap<(&'static str, At), Made>,
    pub(super) voids: BTreeMap<ResultAt, Void>,
    pub(super) let_pass: BTreeMap<ResultAt, LetPass>,
    /// What persons decided between devices.
    pub(super) decided: Decided,
    /// Which words on a step knew of which.
    doings: Doings,
    /// The last step that something was said of.
    pub(super) last_step: Option<(FactId, &'static Step)>,
}

/// What a fact is looked at with.
pub(super) struct Looking<'a> {
    pub(super) plan: &'a Plan,
    pub(super) engine: &'a Engine,
}

impl Record {
    /// Takes in a fact that stands. What it cannot make sense of becomes a
    /// problem.
    pub(super) fn take(&mut self, fact: &Fact, look: &Looking, problems: &mut Vec<Problem>) {
        let taken = match fact.body() {
            Body::StepMarked(made) => self.mark(fact, made, look),
            Body::CheckMade(made) => self.check(fact, made, look),
            Body::EventHappened(made) => self.happen(fact.id(), made, look),
            Body::Waived(made) => self.waive(fact.id(), made, look),
            _ => Ok(()),
        };
        if let Err(problem) = taken {
            problems.push(Problem::new(fact.id(), problem));
        }
    }

    /// Takes in a fact that was struck out: what it had in view, later ones have.
    pub(super) fn pass_over(&mut self, fact: &Fact, look: &Looking) {
        let Body::StepMarked(made) = fact.body() else {
            return;
        };
        let Some(step) = look.plan.step(&made.step) else {
            return;
        };
        let proof = Proof::Step(step);
        if let Ok((parts, _)) = parts(proof, made.place.as_ref(), look.engine) {
            for at in parts {
                self.doings
                    .hear(Thing::Result(ResultAt::of(proof, at)), fact);
            }
        }
    }

    fn mark(&mut self, said: &Fact, made: &StepMarked, look: &Looking) -> Result<(), String> {
        let fact = said.id();
        let step = (look.plan.step(&made.step)).ok_or_else(|| unknown("step", &made.step))?;
        let (parts, whole) = parts(Proof::Step(step), made.place.as_ref(), look.engine)?;
        self.last_step = Some((fact, step));
        // What was done to one part of a step that is one whole has begun it.
        let mark = match made.mark {
            Mark::Done if !whole => Mark::Begun,
            mark => mark,
        };
        for at in parts {
            let thing = Thing::Result(ResultAt::of(Proof::Step(step), at));
            let knew = self.doings.hear(thing, said);
            if self.decided.silences(fact, thing) {
                continue;
            }
            let before = self.marks.get(&(step.id, at)).copied();
            let done_before = before.and_then(|before| before.done);
            let stood = done_before.filter(|done| !self.is_void(Proof::Step(step), at, *done));
            let is_so_already = match mark {
                Mark::Done => stood.is_some(),
                Mark::Apart => before.is_some_and(|before| before.mark == Mark::Apart),
                Mark::Planned | Mark::Begun | Mark::NotNeeded => false,
            };
            if mark == Mark::Done {
                // What was measured before the later word may be from before it was
                // done, also where the first word came earlier.
                for event in step.causes {
                    let scope = made.place.as_ref().and_then(Spot::place).map(|_| at);
                    self.event(fact, event, scope, look);
                }
            }
            if is_so_already && !knew {
                // Two devices tell of one doing: nothing came apart in between, and
                // it was done when the first said so.
                self.doings.done_as_well(thing, fact);
                continue;
            }
            if matches!(mark, Mark::Done | Mark::Apart) {
                self.doings.done(thing, fact);
            }
            match mark {
                Mark::Done => {
                    if let (Some(done), Some(before)) = (stood, before) {
                        // Whatever was proved since it was begun again stands.
                        let begun = (before.mark == Mark::Begun).then_some(before.fact);
                        let again = Cause::DoneAgain(step);
                        self.undo(step, at, (fact, begun.unwrap_or(fact), again), look);
                        if is_assembly(step) {
                            let upto = begun.unwrap_or(done);
                            self.void_proofs(step, at, (fact, upto, again), look);
                        }
                    }
                }
                Mark::Apart => {
                    let apart = (fact, fact, Cause::TakenApart(step));
                    self.undo(step, at, apart, look);
                    self.void_proofs(step, at, apart, look);
                }
                Mark::Planned | Mark::Begun | Mark::NotNeeded => {}
            }
            let done = match mark {
                Mark::Done => Some(fact),
                Mark::Begun => done_before,
                Mark::Apart | Mark::Planned | Mark::NotNeeded => None,
            };
            self.marks
                .insert((step.id, at), Marked { fact, mark, done });
        }
        Ok(())
    }

    fn check(&mut self, fact: &Fact, made: &CheckMade, look: &Looking) -> Result<(), String> {
        let check: &'static Check =
            (look.plan.check(&made.check)).ok_or_else(|| unknown("check", &made.check))?;
        let (parts, whole) = parts(Proof::Check(check), made.place.as_ref(), look.engine)?;
        if !whole && made.outcome == Outcome::Good {
            return Err(of_the_whole(check.label));
        }
        for at in parts {
            let thing = Thing::Result(ResultAt::of(Proof::Check(check), at));
            if self.decided.silences(fact.id(), thing) {
                continue;
            }
            let made = Made {
                fact: fact.id(),
                clock: fact.clock(),
                outcome: made.outcome,
                lasts: made.lasts.clone(),
            };
            self.made.insert((check.id, at), made);
        }
        Ok(())
    }

    fn happen(&mut self, fact: FactId, made: &EventHappened, look: &Looking) -> Result<(), String> {
        let event = (look.plan.event(&made.event)).ok_or_else(|| unknown("event", &made.event))?;
        if made.places.is_empty() {
            self.event(fact, event, None, look);
        }
        for spot in &made.places {
            let place = (spot.place().filter(|place| place.exists_on(look.engine)))
                .ok_or("It happened at a place that this engine does not have.")?;
            self.event(fact, event, Some(place.at), look);
        }
        Ok(())
    }

    fn waive(&mut self, fact: FactId, made: &Waived, look: &Looking) -> Result<(), String> {
        let proof = (look.plan.proof(made.result.sort, &made.result.id))
            .ok_or_else(|| unknown("result", &made.result.id))?;
        let (parts, whole) = parts(proof, made.place.as_ref(), look.engine)?;
        if !whole {
            return Err(of_the_whole(proof.label()));
        }
        for at in parts {
            let let_pass = LetPass {
                fact,
                reason: made.reason.clone(),
            };
            self.let_pass.insert(ResultAt::of(proof, at), let_pass);
        }
        Ok(())
    }

    /// An event at a part, or all over.
    pub(super) fn event(
        &mut self,
        by: FactId,
        event: &'static Event,
        at: Option<At>,
        look: &Looking,
    ) {
        if !event.when.applies_to(look.engine) {
            return;
        }
        let void = Void {
            by,
            upto: by,
            cause: Cause::Event(event),
            at,
            through: None,
        };
        let own = look.plan.triggered(event.id);
        for proof in event.voids.iter().chain(own) {
            self.void_at(*proof, at, void, look);
        }
    }

    /// Makes a result stale at every part that has to do with one.
    fn void_at(&mut self, proof: Proof, at: Option<At>, void: Void, look: &Looking) {
        if !proof.when().applies_to(look.engine) {
            return;
        }
        for part in proof.per().parts(look.engine) {
            if at.is_none_or(|at| part.concerns(at, look.engine)) {
                self.void(proof, part, void, look);
            }
        }
    }

    fn void(&mut self, proof: Proof, at: At, void: Void, look: &Looking) {
        let key = ResultAt::of(proof, at);
        // The same fact reaches a result once: definitions may go in circles.
        if self.voids.get(&key).is_some_and(|old| old.by == void.by) {
            return;
        }
        self.voids.insert(key, void);
        for own in look.plan.triggered(proof.id()) {
            let through = Some(key);
            self.void_at(*own, Some(at), Void { through, ..void }, look);
        }
    }

    /// A step was taken apart, and all that is fitted over it.
    fn undo(
        &mut self,
        step: &'static Step,
        at: At,
        (by, upto, cause): (FactId, FactId, Cause),
        look: &Looking,
    ) {
        for over in step.undoes().iter().copied() {
            if !over.when.applies_to(look.engine) {
                continue;
            }
            for part in over.per.parts(look.engine) {
                let done = self.marks.get(&(over.id, part)).and_then(|mark| mark.done);
                let stood = done.is_some_and(|done| !self.is_void(Proof::Step(over), part, done));
                // What was done since it was begun again stands.
                let before = done.is_some_and(|done| done <= upto);
                if !stood || !before || !part.concerns(at, look.engine) {
                    continue;
                }
                let void = Void {
                    by,
                    upto,
                    cause,
                    at: Some(at),
                    through: None,
                };
                self.void(Proof::Step(over), part, void, look);
                // What is done once for the whole engine is undone where it
                // lay over the part.
                let scope = if part == At::Engine { at } else { part };
                self.void_proofs(over, scope, (by, upto, cause), look);
                self.undo(over, scope, (by, upto, cause), look);
            }
        }
    }

    /// What a step proved no longer counts.
    fn void_proofs(
        &mut self,
        step: &'static Step,
        at: At,
        (by, upto, cause): (FactId, FactId, Cause),
        look: &Looking,
    ) {
        let through = Some(ResultAt::of(Proof::Step(step), at));
        let void = Void {
            by,
            upto,
            cause,
            at: Some(at),
            through,
        };
        for proof in look.plan.proves(step) {
            self.void_at(proof, Some(at), void, look);
        }
    }

    /// Whether what was proved by a fact has stopped counting since.
    pub(super) fn is_void(&self, proof: Proof, at: At, proved: FactId) -> bool {
        self.void_of(ResultAt::of(proof, at), proved).is_some()
    }

    /// Why what was proved by a fact has stopped counting since; nothing when
    /// it counts, or was let pass after all.
    pub(super) fn void_of(&self, key: ResultAt, proved: FactId) -> Option<&Void> {
        let void = self.voids.get(&key)?;
        let passed = self.let_pass.get(&key);
        let passed = passed.is_some_and(|passed| passed.fact > void.by);
        (proved <= void.upto && proved < void.by && !passed).then_some(void)
    }

    /// That a result is let pass as it stands: nothing made it stale since.
    #[must_use]
    pub fn let_pass(&self, key: ResultAt) -> Option<&LetPass> {
        let passed = self.let_pass.get(&key)?;
        let void = self.voids.get(&key);
        void.is_none_or(|void| void.by < passed.fact)
            .then_some(passed)
    }

    /// What was last said of a step at a part.
    #[must_use]
    pub fn marked(&self, step: &Step, at: At) -> Option<Marked> {
        self.marks.get(&(step.id, at)).copied()
    }

    /// How a check last came out at a part, whether it still counts or not.
    #[must_use]
    pub fn made(&self, check: &Check, at: At) -> Option<&Made> {
        self.made.get(&(check.id, at))
    }

    /// The last step that something was said of, and the fact that said it.
    #[must_use]
    pub const fn last_step(&self) -> Option<(FactId, &'static Step)> {
        self.last_step
    }
}

/// Whether doing a step once more takes what it proved apart. A thing that is
/// measured once more is not undone by that.
const fn is_assembly(step: &Step) -> bool {
    matches!(
        step.phase,
        Phase::BottomEnd | Phase::TopEnd | Phase::Running
    )
}
