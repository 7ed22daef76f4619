//! Which results no longer count, and why.

use std::collections::BTreeSet;

use build_plan::measure::{MAIN_OIL_CLEARANCE, ROD_OIL_CLEARANCE};
use build_plan::proof::Proof;
use build_plan::{At, Engine, Measure};

use super::build::Build;
use super::doubt::Doubt;
use super::readings::Taken;
use super::record::{Cause, ResultAt, Void};
use crate::fact::{Outcome, Sort};
use crate::id::FactId;

/// A result that was proved and no longer counts.
#[derive(Clone, PartialEq, Debug)]
pub struct Stale {
    /// The result.
    pub proof: Proof,
    /// The part.
    pub at: At,
    /// The fact that made it stale.
    pub by: FactId,
    /// How it came to that, a sentence a link, the cause first.
    pub chain: Vec<String>,
}

impl Stale {
    /// Its name.
    #[must_use]
    pub const fn key(&self) -> ResultAt {
        ResultAt::of(self.proof, self.at)
    }
}

/// Where a result stands, apart from its number.
#[derive(Clone, PartialEq, Debug)]
pub enum ResultState {
    /// Nobody has proved it yet.
    NotYet,
    /// It was proved and counts.
    Stands,
    /// It was looked at and is not good.
    Bad,
    /// It was proved, and something has happened since.
    Stale(Stale),
    /// It is let pass as it is, for this reason.
    LetPass(String),
}

impl Build {
    /// Every result that no longer counts, in the order of their names.
    #[must_use]
    pub fn stale(&self) -> Vec<Stale> {
        let Some(engine) = self.engine.as_ref().map(|one| &one.engine) else {
            return Vec::new();
        };
        let mut keys: BTreeSet<ResultAt> = self.record.voids.keys().copied().collect();
        let read = |(id, at): &(&'static str, At)| ResultAt {
            sort: Sort::Measure,
            id,
            at: *at,
        };
        if !self.doubted.is_empty() {
            keys.extend(self.latest.keys().map(read));
        }
        let mut found: Vec<Stale> = keys
            .into_iter()
            .filter_map(|key| self.stale_at(key, engine))
            .collect();
        if !found.is_empty() {
            let worked_out = self
                .plan
                .measures(engine)
                .filter(|one| !one.sources().is_empty());
            for measure in worked_out {
                for at in measure.spots.per.parts(engine) {
                    let known = |one: &Stale| one.proof == Proof::Measure(measure) && one.at == at;
                    if !found.iter().any(known) {
                        found.extend(self.stale_by_source(measure, at, engine));
                    }
                }
            }
        }
        found.sort_unstable_by_key(Stale::key);
        found
    }

    /// Where a result stands.
    #[must_use]
    pub fn result(&self, proof: Proof, at: At) -> ResultState {
        let key = ResultAt::of(proof, at);
        if let Some(passed) = self.record.let_pass(key) {
            return ResultState::LetPass(passed.reason.clone());
        }
        let Some(engine) = self.engine.as_ref().map(|one| &one.engine) else {
            return ResultState::NotYet;
        };
        let by_source = || match proof {
            Proof::Measure(measure) => self.stale_by_source(measure, at, engine),
            _ => None,
        };
        if let Some(stale) = self.stale_at(key, engine).or_else(by_source) {
            return ResultState::Stale(stale);
        }
        let proved = match proof {
            Proof::Measure(measure) => self.has_value(measure, at),
            Proof::Step(step) => (self.record.marked(step, at)).is_some_and(|it| it.done.is_some()),
            Proof::Check(check) => match self.record.made(check, at) {
                Some(made) if made.outcome == Outcome::Bad => return ResultState::Bad,
                made => made.is_some(),
            },
        };
        if proved {
            ResultState::Stands
        } else {
            ResultState::NotYet
        }
    }

    /// Whether a reading still counts: it can be read, it is not struck out, and
    /// nothing has made it stale since.
    #[must_use]
    pub fn still_counts(&self, taken: &Taken) -> bool {
        let (Some(_), Some(measure), Some(place)) = (taken.counting(), taken.measure, taken.place)
        else {
            return false;
        };
        let key = ResultAt::of(Proof::Measure(measure), place.at);
        let passed = self.record.let_pass.get(&key);
        let doubted = (self.doubted.get(&taken.fact))
            .is_some_and(|doubt| passed.is_none_or(|passed| passed.fact <= doubt.by));
        !doubted && self.record.void_of(key, taken.fact).is_none()
    }

    /// The fact that proved a result last.
    fn proved_by(&self, key: ResultAt) -> Option<FactId> {
        match key.sort {
            Sort::Measure => self.latest.get(&(key.id, key.at)).copied(),
            Sort::Check => {
                let made = self.record.made.get(&(key.id, key.at))?;
                (made.outcome == Outcome::Good).then_some(made.fact)
            }
            Sort::Step => self.record.marks.get(&(key.id, key.at))?.done,
        }
    }

    /// Why a result that was proved by itself no longer counts.
    fn stale_at(&self, key: ResultAt, engine: &Engine) -> Option<Stale> {
        let proof = self.plan.proof(key.sort, key.id)?;
        if !key.at.exists_on(engine) {
            return None;
        }
        let proved = self.proved_by(key)?;
        if let Some(void) = self.record.void_of(key, proved) {
            return Some(Stale {
                proof,
                at: key.at,
                by: void.by,
                chain: self.chain(void, proof),
            });
        }
        let doubt = self.doubted.get(&proved)?;
        let passed = self.record.let_pass.get(&key);
        if passed.is_some_and(|passed| passed.fact > doubt.by) {
            return None;
        }
        Some(Stale {
            proof,
            at: key.at,
            by: doubt.by,
            chain: vec![self.in_doubt(doubt)],
        })
    }

    /// Why what is worked out from other measures no longer counts.
    fn stale_by_source(&self, measure: &'static Measure, at: At, engine: &Engine) -> Option<Stale> {
        if self.is_read_at_once(measure, at) || !self.has_value(measure, at) {
            return None;
        }
        let source = measure.sources().into_iter().find_map(|source| {
            let parts = source.spots.per.parts(engine);
            parts
                .into_iter()
                .filter(|part| part.concerns(at, engine))
                .find_map(|part| {
                    let key = ResultAt::of(Proof::Measure(source), part);
                    let own = self.stale_at(key, engine);
                    own.or_else(|| self.stale_by_source(source, part, engine))
                })
        })?;
        let passed = (self.record.let_pass).get(&ResultAt::of(Proof::Measure(measure), at));
        if passed.is_some_and(|passed| passed.fact > source.by) {
            return None;
        }
        let mut chain = source.chain;
        let (of, part) = (source.proof.label(), source.at);
        chain.push(format!(
            "{} goes by {of}{}.",
            capital(measure.label),
            of_part(part)
        ));
        Some(Stale {
            proof: Proof::Measure(measure),
            at,
            by: source.by,
            chain,
        })
    }

    /// Whether a result goes by readings of its own and not by sizes.
    fn is_read_at_once(&self, measure: &Measure, at: At) -> bool {
        match at {
            At::Main(number) if measure.id == MAIN_OIL_CLEARANCE.id => {
                let main = self.mains.iter().find(|one| one.main.number() == number);
                main.is_none_or(|main| main.by_size.is_none())
            }
            At::Rod(cylinder) if measure.id == ROD_OIL_CLEARANCE.id => {
                let rod = self.rods.iter().find(|one| one.cylinder == cylinder);
                rod.is_none_or(|rod| rod.fit.by_size.is_none())
            }
            _ => self.latest.contains_key(&(measure.id, at)),
        }
    }

    /// Whether there is a number, worked out or read.
    pub(super) fn has_value(&self, measure: &Measure, at: At) -> bool {
        self.latest.contains_key(&(measure.id, at))
            || match at {
                At::Main(number) if measure.id == MAIN_OIL_CLEARANCE.id => {
                    let main = self.mains.iter().find(|one| one.main.number() == number);
                    main.is_some_and(|main| main.clearance().is_some())
                }
                At::Rod(cylinder) if measure.id == ROD_OIL_CLEARANCE.id => {
                    let rod = self.rods.iter().find(|one| one.cylinder == cylinder);
                    rod.is_some_and(|rod| rod.fit.by_size.is_some() || rod.fit.at_once.is_some())
                }
                _ => (self.fit(measure, at)).is_some_and(|fit| fit.extent.is_some()),
            }
    }

    /// The way from what happened to a result, in words.
    fn chain(&self, void: &Void, proof: Proof) -> Vec<String> {
        let mut links: Vec<ResultAt> = Vec::new();
        let mut next = void.through;
        while let Some(key) = next {
            if links.contains(&key) {
                break;
            }
            links.push(key);
            // A step that was taken apart itself is named by the cause.
            next = match self.record.voids.get(&key) {
                Some(before) if before.by == void.by => before.through,
                _ => None,
            };
        }
        let mut chain = vec![cause(void)];
        let label = |key: &ResultAt| {
            let proof = self.plan.proof(key.sort, key.id);
            proof.map_or(key.id, Proof::label)
        };
        let names = links.iter().skip(1).rev().map(label);
        let mut names: Vec<&str> = names.collect();
        names.push(proof.label());
        for (key, name) in links.iter().rev().zip(names) {
            let sentence = match key.sort {
                Sort::Step => format!("“{}” came apart with it.", label(key)),
                _ => format!(
                    "{} goes by {}{}.",
                    capital(name),
                    label(key),
                    of_part(key.at)
                ),
            };
            if !chain.contains(&sentence) {
                chain.push(sentence);
            }
        }
        chain
    }

    fn in_doubt(&self, doubt: &Doubt) -> String {
        let tool = self.tools.iter().find(|one| one.tool == doubt.tool);
        let name = tool.map_or("a tool", |tool| tool.name.as_str());
        format!("“{name}” did not read right afterwards, and was not seen to be right in between.")
    }
}

/// What happened, in words.
fn cause(void: &Void) -> String {
    let at = void.at.map(of_part).unwrap_or_default();
    match void.cause {
        Cause::Event(event) => format!("{}{at}. {}", capital(event.label), event.why),
        Cause::DoneAgain(step) => format!("“{}” was done again{at}.", step.label),
        Cause::TakenApart(step) => format!("“{}” was taken apart{at}.", step.label),
    }
}

/// The part in a sentence; nothing for the engine as a whole.
fn of_part(at: At) -> String {
    match at {
        At::Engine => String::new(),
        at => format!(", {at}"),
    }
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => String::new(),
    }
}
