//! What two devices say differently, for a person to see and decide.

use std::collections::{BTreeMap, BTreeSet};

use assembly_core::measure::Window;
use build_plan::check::Check;
use build_plan::choice::{Choice, choice};
use build_plan::proof::Proof;
use build_plan::step::Step;
use build_plan::{At, Measure, Place};

use super::build::Build;
use super::folding::Folding;
use super::limits::Limits;
use super::readings::Taken;
use super::record::ResultAt;
use super::register::{Register, Role};
use super::sayings::{Saying, Sayings, Thing, Word, against_each_other, last_words};
use super::store;
use crate::fact::{
    Body, CheckMade, EngineDescribed, Fact, InView, Mark, Outcome, PartsPlaced, Sort, Spot,
    StepMarked,
};
use crate::id::{DeviceId, FactId};
use crate::journal::Journal;

/// Readings of one place that lie further apart than so many give-or-takes of
/// their difference are asked about. Ours: one in twenty would by chance.
pub(super) const APART: f64 = 2.0;

/// What was said on which device.
#[derive(Clone, PartialEq, Debug)]
pub struct Said<T> {
    /// The device.
    pub device: DeviceId,
    /// The fact.
    pub fact: FactId,
    /// What it says.
    pub says: T,
}

/// Two things that cannot both be right, from two devices.
#[derive(Clone, PartialEq, Debug)]
pub enum Conflict {
    /// Limits that differ, for the same measure and part.
    Limits {
        /// The limits in force, in the order they were set.
        limits: Vec<Limits>,
    },
    /// Readings of one place that are too far apart for their tools.
    Readings {
        /// The measure.
        measure: &'static Measure,
        /// The place.
        place: Place,
        /// The readings, with the device each was taken on.
        readings: Vec<(DeviceId, Taken)>,
    },
    /// A step of which one says that it is done and the other that it is not.
    Marks {
        /// The step.
        step: &'static Step,
        /// The parts it is said of.
        parts: Vec<At>,
        /// What is said of it.
        said: Vec<Said<Mark>>,
    },
    /// A check that one found good and the other not.
    Checks {
        /// The check.
        check: &'static Check,
        /// The parts it is said of.
        parts: Vec<At>,
        /// How it came out.
        said: Vec<Said<CheckMade>>,
    },
    /// The engine, described in two ways.
    Engines {
        /// The descriptions.
        said: Vec<Said<EngineDescribed>>,
    },
    /// Which part goes where, accepted in two ways.
    Placings {
        /// The choice.
        choice: &'static Choice,
        /// What was accepted.
        said: Vec<Said<PartsPlaced>>,
    },
}

impl Conflict {
    /// The facts that are against each other.
    #[must_use]
    pub fn facts(&self) -> Vec<FactId> {
        fn of<T>(said: &[Said<T>]) -> Vec<FactId> {
            said.iter().map(|one| one.fact).collect()
        }
        match self {
            Self::Limits { limits } => limits.iter().map(|one| one.fact).collect(),
            Self::Readings { readings, .. } => readings.iter().map(|(_, one)| one.fact).collect(),
            Self::Marks { said, .. } => of(said),
            Self::Checks { said, .. } => of(said),
            Self::Engines { said } => of(said),
            Self::Placings { said, .. } => of(said),
        }
    }

    /// What is written down, fact by fact, when one of the marks, checks,
    /// descriptions or placings holds and the others do not. Nothing for limits, which are set
    /// anew, and for readings, which are struck out or stand side by side.
    #[must_use]
    pub fn holds(&self, fact: FactId, build: &Build) -> Vec<(Body, InView)> {
        let bodies: Vec<Body> = match self {
            Self::Limits { .. } | Self::Readings { .. } => Vec::new(),
            Self::Marks { step, parts, said } => {
                let held = said.iter().find(|one| one.fact == fact);
                let body = |place| {
                    Some(Body::StepMarked(StepMarked {
                        step: step.id.to_owned(),
                        place,
                        mark: held?.says,
                        words: None,
                    }))
                };
                let places = places(Proof::Step(step), parts, build);
                places.into_iter().filter_map(body).collect()
            }
            Self::Checks { check, parts, said } => {
                let held = said.iter().find(|one| one.fact == fact);
                let body = |place| {
                    Some(Body::CheckMade(CheckMade {
                        place,
                        ..held?.says.clone()
                    }))
                };
                let places = places(Proof::Check(check), parts, build);
                places.into_iter().filter_map(body).collect()
            }
            Self::Engines { said } => {
                let held = said.iter().find(|one| one.fact == fact);
                let body = held.map(|held| Body::EngineDescribed(held.says.clone()));
                body.into_iter().collect()
            }
            Self::Placings { said, .. } => {
                let held = said.iter().find(|one| one.fact == fact);
                let body = held.map(|held| Body::PartsPlaced(held.says.clone()));
                body.into_iter().collect()
            }
        };
        let in_view = InView {
            replaces: self.facts(),
            settles: true,
        };
        bodies
            .into_iter()
            .map(|body| (body, in_view.clone()))
            .collect()
    }
}

/// The parts as facts name them: all in one where it is all that there are.
fn places(proof: Proof, parts: &[At], build: &Build) -> Vec<Option<Spot>> {
    let engine = build.engine.as_ref().map(|one| &one.engine);
    if engine.is_some_and(|engine| proof.per().parts(engine) == parts) {
        return vec![None];
    }
    let spot = |at: &At| Some(Spot::Known(Place::of(*at)));
    parts.iter().map(spot).collect()
}

/// Everything that two devices say differently. Nothing is decided: limits that
/// differ give no verdict, readings are averaged with all their errors, of marks,
/// checks, descriptions and placings the latest counts, until a person says what holds.
#[must_use]
pub fn conflicts(journal: &Journal) -> Vec<Conflict> {
    let folding = Folding::of(journal);
    let mut found = of_words(journal, &folding.build);
    found.extend(of_limits(&folding.build.limits));
    let standing = standing(journal, &folding.build);
    let mut spots: Vec<store::Spot> = folding.build.readings.spots().collect();
    spots.sort_unstable();
    for spot in spots {
        let Some(measure) = folding.build.plan.measure(spot.0) else {
            continue;
        };
        let mut places: BTreeMap<Place, Vec<(DeviceId, &Taken)>> = BTreeMap::new();
        for taken in folding.build.readings.of(measure, spot.1) {
            let device = journal.get(taken.fact).map(Fact::device);
            if let (Some(place), Some(device), Some(_)) = (taken.place, device, taken.counting()) {
                places.entry(place).or_default().push((device, taken));
            }
        }
        for (place, readings) in places {
            if folding.are_apart(&readings, &standing) {
                let owned = readings
                    .into_iter()
                    .map(|(device, taken)| (device, taken.clone()));
                found.push(Conflict::Readings {
                    measure,
                    place,
                    readings: owned.collect(),
                });
            }
        }
    }
    found
}

/// A step or a check, and the facts that are against each other on it.
type OneThing = (Sort, &'static str, Vec<FactId>);

/// Steps, checks, descriptions and placings of which two devices say different things.
fn of_words(journal: &Journal, build: &Build) -> Vec<Conflict> {
    let engine = build.engine.as_ref().map(|one| &one.engine);
    let all = Sayings::of(journal, (&build.plan, engine), |_| true);
    let mut found = Vec::new();
    // What is said of several parts in one breath is one thing to decide.
    let mut by_fact: BTreeMap<OneThing, (Vec<Saying>, Vec<At>)> = BTreeMap::new();
    for (thing, said) in &all.0 {
        let mut last = last_words(said, |fact| !build.is_struck(fact));
        if let Thing::Result(key) = thing {
            last.retain(|one| !is_void(build, *key, one, said));
        }
        let against = against_each_other(last);
        let facts: Vec<FactId> = against.iter().map(|one| one.fact.id()).collect();
        match thing {
            _ if against.is_empty() => {}
            Thing::Engine => found.push(Conflict::Engines {
                said: told(&against, |word| match word {
                    Word::Engine(engine) => Some(engine.clone()),
                    _ => None,
                }),
            }),
            Thing::Choice(id) => found.extend(choice(id).map(|choice| Conflict::Placings {
                choice,
                said: told(&against, |word| match word {
                    Word::Placed(placed) => Some(placed.clone()),
                    _ => None,
                }),
            })),
            Thing::Result(key) => {
                let entry = by_fact.entry((key.sort, key.id, facts));
                entry.or_insert((against, Vec::new())).1.push(key.at);
            }
        }
    }
    for ((sort, id, _), (against, parts)) in by_fact {
        match build.plan.proof(sort, id) {
            Some(Proof::Step(step)) => found.push(Conflict::Marks {
                step,
                parts,
                said: told(&against, |word| match word {
                    Word::Mark(mark) => Some(mark),
                    _ => None,
                }),
            }),
            Some(Proof::Check(check)) => found.push(Conflict::Checks {
                check,
                parts,
                said: against.iter().filter_map(check_said).collect(),
            }),
            _ => {}
        }
    }
    found
}

fn told<'a, T>(against: &[Saying<'a>], says: impl Fn(Word<'a>) -> Option<T>) -> Vec<Said<T>> {
    let one = |saying: &Saying<'a>| {
        Some(Said {
            device: saying.fact.device(),
            fact: saying.fact.id(),
            says: says(saying.word)?,
        })
    };
    against.iter().filter_map(one).collect()
}

fn check_said(saying: &Saying) -> Option<Said<CheckMade>> {
    let Body::CheckMade(made) = saying.fact.body() else {
        return None;
    };
    Some(Said {
        device: saying.fact.device(),
        fact: saying.fact.id(),
        says: made.clone(),
    })
}

/// Whether something else has happened since, so that the word no longer counts
/// and contradicts nothing. What the others say of the same thing is no such thing.
fn is_void(build: &Build, key: ResultAt, one: &Saying, said: &[Saying]) -> bool {
    let proves = matches!(
        one.word,
        Word::Mark(Mark::Done) | Word::Outcome(Outcome::Good)
    );
    let void = build.record.void_of(key, one.fact.id());
    let void = void.filter(|void| !said.iter().any(|other| other.fact.id() == void.by));
    proves && void.is_some()
}

fn of_limits(limits: &[Limits]) -> Vec<Conflict> {
    let mut found = Vec::new();
    for (at, one) in limits.iter().enumerate() {
        let same = |other: &&Limits| {
            other.set.measure == one.set.measure && other.set.place == one.set.place
        };
        if limits.iter().take(at).any(|other| same(&other)) {
            continue;
        }
        let all: Vec<Limits> = limits.iter().filter(same).cloned().collect();
        let window = |one: &Limits| one.window.clone().ok();
        let first: Option<Window> = window(one);
        if all.iter().any(|other| window(other) != first) {
            found.push(Conflict::Limits { limits: all });
        }
    }
    found
}

/// The readings that a person let stand side by side, as often as it was said.
fn standing(journal: &Journal, build: &Build) -> Vec<BTreeSet<FactId>> {
    let said = journal.facts().filter_map(|fact| match fact.body() {
        Body::ReadingsStand(stand) if !build.is_struck(fact.id()) => Some(stand),
        _ => None,
    });
    said.map(|stand| stand.readings.iter().copied().collect())
        .collect()
}

impl Folding {
    /// Whether two readings of one place, from two devices, lie too far apart and
    /// were not said to stand both; without a give-or-take, whether they differ at
    /// all.
    fn are_apart(&self, readings: &[(DeviceId, &Taken)], standing: &[BTreeSet<FactId>]) -> bool {
        let pairs = readings
            .iter()
            .enumerate()
            .flat_map(|(at, one)| readings.iter().skip(at + 1).map(move |other| (one, other)));
        pairs.into_iter().any(|((here, one), (there, other))| {
            let both =
                |all: &BTreeSet<FactId>| all.contains(&one.fact) && all.contains(&other.fact);
            here != there && !standing.iter().any(both) && self.two_are_apart(one, other)
        })
    }

    fn two_are_apart(&self, one: &Taken, other: &Taken) -> bool {
        let both = [(Role::Itself, one), (Role::Itself, other)];
        let register = Register::of(both.into_iter(), &self.bench, &self.build.readings);
        let mut places = register.places(Role::Itself);
        match places.next() {
            Some((_, repeats)) if repeats.len() == 2 => repeats.apart_by_more_than(APART).is_some(),
            _ => {
                let value = |one: &Taken| one.counting().map(|typed| typed.si());
                value(one) != value(other)
            }
        }
    }
}
