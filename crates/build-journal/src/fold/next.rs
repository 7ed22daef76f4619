//! What is next: the steps that can be done, those that wait, and for what.

use std::collections::BTreeSet;

use build_plan::proof::Proof;
use build_plan::step::{By, Phase, Sitting, Step};
use build_plan::supply::{Supply, supply};
use build_plan::{At, Engine};

use super::build::Build;
use super::clocks::Clock;
use super::record::ResultAt;
use super::stale::Stale;
use crate::day::Day;
use crate::fact::{Mark, WorkStage};
use crate::id::{PartId, WorkId};

/// Less than this is not worth beginning anything for. Common practice.
const WORTH_BEGINNING: u32 = 10;

/// A step, and where it stands.
#[derive(Clone, PartialEq, Debug)]
pub struct StepState {
    /// The step.
    pub step: &'static Step,
    /// The parts where it is still to be done, or done again.
    pub open: Vec<At>,
    /// Those of them where it was done, and came apart or is stale since.
    pub again: Vec<At>,
    /// Whether it was begun, or is done at some of its parts.
    pub begun: bool,
    /// What it waits for; nothing when it can be done now.
    pub waits: Vec<WaitsFor>,
    /// Earlier steps that it were better done after.
    pub better_after: Vec<&'static Step>,
    /// What it takes that is on no list: to be asked for.
    pub have_you_got: Vec<&'static Supply>,
    /// The minutes that are left of it, from and to; common practice.
    pub minutes: (u32, u32),
    /// The least that can be done of it in one sitting, at most so many minutes.
    pub sitting: u32,
}

/// What a step waits for.
#[derive(Clone, PartialEq, Debug)]
pub enum WaitsFor {
    /// An earlier step.
    Step(&'static Step),
    /// A result of an earlier step that no longer counts.
    Stale(Stale),
    /// A state that has run out.
    RunOut(Clock),
    /// A part that is on its way.
    Part {
        /// The part.
        part: PartId,
        /// What it is.
        name: String,
        /// The day it is promised for.
        promised: Option<Day>,
    },
    /// The machine shop has it.
    Shop {
        /// The work.
        work: WorkId,
        /// What is done.
        what: String,
        /// The day it is promised for.
        promised: Option<Day>,
    },
}

/// Where the whole job stands.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Outlook {
    /// The steps that are still to be done, in the order of the job.
    pub open: Vec<StepState>,
    /// Steps that nobody ticked, although later ones are done. Never blank: a
    /// person says whether they were done.
    pub passed_over: Vec<&'static Step>,
    /// The steps that are done.
    pub done: Vec<&'static Step>,
}

impl StepState {
    /// Whether it can be done now.
    #[must_use]
    pub const fn is_ready(&self) -> bool {
        self.waits.is_empty()
    }

    /// Whether something worth while of it can be done in so many minutes.
    #[must_use]
    pub const fn fits_in(&self, minutes: u32) -> bool {
        self.sitting <= minutes
    }
}

impl Outlook {
    /// The steps that can be done now, those that were begun first, then in the
    /// order of the job.
    #[must_use]
    pub fn ready(&self) -> Vec<&StepState> {
        let ready = || self.open.iter().filter(|one| one.is_ready());
        let begun = ready().filter(|one| one.begun);
        begun.chain(ready().filter(|one| !one.begun)).collect()
    }

    /// The steps that can be done now in so many minutes: sittings that must
    /// not be split have to fit as a whole.
    #[must_use]
    pub fn fitting(&self, minutes: u32) -> Vec<&StepState> {
        let mut fitting = self.ready();
        fitting.retain(|one| one.fits_in(minutes));
        fitting
    }

    /// The steps that wait.
    pub fn waiting(&self) -> impl Iterator<Item = &StepState> {
        self.open.iter().filter(|one| !one.is_ready())
    }
}

/// What the steps are looked at with.
pub(super) struct Seen<'a> {
    pub(super) build: &'a Build,
    pub(super) engine: &'a Engine,
    stale: Vec<Stale>,
    run_out: Vec<Clock>,
    passed_over: BTreeSet<&'static str>,
}

impl Build {
    /// Where the whole job stands at this moment: milliseconds since 1970.
    #[must_use]
    pub fn outlook(&self, now: i64) -> Outlook {
        let Some(described) = &self.engine else {
            return Outlook::default();
        };
        let seen = Seen::of(self, &described.engine, now);
        let mut outlook = Outlook::default();
        for step in self.plan.steps(&described.engine) {
            if seen.passed_over.contains(step.id) {
                outlook.passed_over.push(step);
            } else if let Some(state) = seen.state(step) {
                outlook.open.push(state);
            } else if seen.is_done(step) {
                outlook.done.push(step);
            }
        }
        outlook
    }
}

impl<'a> Seen<'a> {
    fn of(build: &'a Build, engine: &'a Engine, now: i64) -> Self {
        let mut seen = Self {
            build,
            engine,
            stale: build.stale(),
            run_out: build.clocks(),
            passed_over: BTreeSet::new(),
        };
        seen.run_out.retain(|clock| clock.has_run_out(now));
        seen.passed_over = seen.find_passed_over();
        seen
    }

    /// Steps that a done step needs, through others, and nobody spoke of.
    fn find_passed_over(&self) -> BTreeSet<&'static str> {
        let steps = self.build.plan.steps(self.engine);
        let mut next: Vec<&'static Step> = steps.filter(|step| self.is_done(step)).collect();
        let mut met: BTreeSet<&'static str> = next.iter().map(|step| step.id).collect();
        let mut passed = BTreeSet::new();
        while let Some(step) = next.pop() {
            for (need, hard) in self.build.plan.needs(step, self.engine) {
                if hard && met.insert(need.id) {
                    next.push(need);
                    if !self.is_spoken_of(need) && !need.optional {
                        passed.insert(need.id);
                    }
                }
            }
        }
        passed
    }

    fn mark(&self, step: &Step, at: At) -> Option<Mark> {
        self.build.record.marked(step, at).map(|marked| marked.mark)
    }

    fn is_spoken_of(&self, step: &Step) -> bool {
        let mut parts = step.per.parts(self.engine).into_iter();
        parts.any(|at| self.mark(step, at).is_some())
    }

    fn was_done(&self, step: &Step, at: At) -> bool {
        let marked = self.build.record.marked(step, at);
        marked.is_some_and(|marked| marked.done.is_some())
    }

    /// Whether a step stands at a part: done, and neither undone nor begun anew.
    fn stands(&self, step: &'static Step, at: At) -> bool {
        let Some(marked) = self.build.record.marked(step, at) else {
            return false;
        };
        marked.mark == Mark::NotNeeded
            || marked.mark == Mark::Done
                && !self
                    .build
                    .record
                    .is_void(Proof::Step(step), at, marked.fact)
    }

    fn is_done(&self, step: &'static Step) -> bool {
        let mut parts = step.per.parts(self.engine).into_iter();
        parts.all(|at| self.stands(step, at))
    }

    /// Whether a step is on the plan: what is optional has to be decided on.
    fn is_wanted(&self, step: &'static Step) -> bool {
        !step.optional || self.is_spoken_of(step) || self.is_ordered(step)
    }

    fn is_ordered(&self, step: &Step) -> bool {
        let mut work = self.build.bought.work.iter();
        work.any(|one| one.ordered.step.as_deref() == Some(step.id))
    }

    /// A step that is still to be done; `None` when it is done or not wanted.
    fn state(&self, step: &'static Step) -> Option<StepState> {
        let parts = step.per.parts(self.engine);
        let all = parts.len();
        let open: Vec<At> = (parts.iter().copied())
            .filter(|at| !self.stands(step, *at))
            .collect();
        if open.is_empty() || !self.is_wanted(step) {
            return None;
        }
        let again = (open.iter().copied())
            .filter(|at| self.was_done(step, *at))
            .collect();
        let begun =
            open.len() < all || (open.iter()).any(|at| self.mark(step, *at) == Some(Mark::Begun));
        let mut state = StepState {
            step,
            again,
            begun,
            waits: Vec::new(),
            better_after: Vec::new(),
            have_you_got: Vec::new(),
            minutes: minutes(step, open.len()),
            sitting: sitting(step, open.len()),
            open,
        };
        self.earlier(&mut state);
        self.in_hand(&mut state);
        self.at_the_shop(&mut state);
        Some(state)
    }

    fn earlier(&self, state: &mut StepState) {
        for (need, hard) in self.build.plan.needs(state.step, self.engine) {
            let concerned: Vec<At> = (need.per.parts(self.engine).into_iter())
                .filter(|part| state.open.iter().any(|at| part.concerns(*at, self.engine)))
                .collect();
            let settled = concerned.iter().all(|at| self.stands(need, *at))
                || !self.is_wanted(need)
                || self.is_long_past(need);
            if !settled {
                if hard {
                    state.waits.push(WaitsFor::Step(need));
                } else {
                    state.better_after.push(need);
                }
                continue;
            }
            if !hard || !self.is_done(need) {
                continue;
            }
            let proves = self.build.plan.proves(need);
            let of_it = |proof: Proof, at: At| {
                proves.contains(&proof)
                    && state.open.iter().any(|part| part.concerns(at, self.engine))
            };
            let stale = self.stale.iter().find(|one| of_it(one.proof, one.at));
            if let Some(stale) = stale {
                state.waits.push(WaitsFor::Stale(stale.clone()));
            }
            let run_out = (self.run_out.iter())
                .find(|clock| of_it(Proof::Check(clock.check), clock.at) && self.lasts(clock));
            if let Some(clock) = run_out {
                state.waits.push(WaitsFor::RunOut(clock.clone()));
            }
        }
    }

    /// Whether a state that has run out still matters: nobody let it pass.
    fn lasts(&self, clock: &Clock) -> bool {
        let key = ResultAt::of(Proof::Check(clock.check), clock.at);
        self.build.record.let_pass(key).is_none()
    }

    /// A step of the teardown or before, that later work has left behind.
    fn is_long_past(&self, step: &Step) -> bool {
        matches!(
            step.phase,
            Phase::Teardown | Phase::Inspection | Phase::Shop
        ) && self.passed_over.contains(step.id)
    }

    fn in_hand(&self, state: &mut StepState) {
        for wanted in state.step.in_hand {
            let listed = || {
                let parts = self.build.bought.parts.iter();
                parts.filter(|part| {
                    let of = part.listed.supply.as_deref().and_then(supply);
                    of == Some(*wanted) && (part.is_here() || part.is_waited_for())
                })
            };
            if listed().next().is_none() {
                state.have_you_got.push(wanted);
            }
            for part in listed().filter(|part| !part.is_here()) {
                state.waits.push(WaitsFor::Part {
                    part: part.listed.part,
                    name: part.listed.name.clone(),
                    promised: part.promised,
                });
            }
        }
    }

    fn at_the_shop(&self, state: &mut StepState) {
        let sent = (self.build.bought.work.iter()).filter(|work| {
            work.ordered.step.as_deref() == Some(state.step.id)
                && work.stage == Some(WorkStage::Sent)
        });
        for work in sent {
            state.waits.push(WaitsFor::Shop {
                work: work.ordered.work,
                what: work.ordered.what.clone(),
                promised: work.promised,
            });
        }
    }
}

/// The minutes of a step at so many of its parts.
fn minutes(step: &Step, parts: usize) -> (u32, u32) {
    let parts = u32::try_from(parts).unwrap_or(u32::MAX);
    let of = |minutes: u16| u32::from(minutes).saturating_mul(parts);
    (of(step.minutes.0), of(step.minutes.1))
}

/// The least that can be done of it without a break. A shop's work takes no
/// sitting.
fn sitting(step: &Step, parts: usize) -> u32 {
    if step.by == By::Shop {
        return 0;
    }
    match step.sitting {
        Sitting::MayPause => minutes(step, 1).1.min(WORTH_BEGINNING),
        Sitting::BetweenParts(_) => minutes(step, 1).1,
        Sitting::InOneGo(_) => minutes(step, parts).1,
    }
}
