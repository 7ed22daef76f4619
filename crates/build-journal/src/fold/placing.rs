//! What lies on the bench to choose from, and which part was put where.

use std::collections::BTreeMap;

use assembly_core::quantity::{Kind, ReadError, Typed, read, unit_of};
use build_plan::choice::{Choice, choice};
use build_plan::event::Event;
use build_plan::{At, Engine};
use thiserror::Error;

use super::problem::Problem;
use super::sayings::{Decided, Thing};
use crate::fact::{Body, Fact, PartOnBench, PartsPlaced, Spot};
use crate::id::{FactId, PartId};

/// A part on the bench.
#[derive(Clone, PartialEq, Debug)]
pub struct OnBench {
    /// The fact that listed it last.
    pub fact: FactId,
    /// What was written down of it.
    pub listed: PartOnBench,
    /// What it can be chosen for.
    pub choice: &'static Choice,
    /// Its size, or why there is none.
    pub size: Result<Typed, BenchSizeProblem>,
}

/// Why a part on the bench has no size.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum BenchSizeProblem {
    /// The text cannot be read.
    #[error(transparent)]
    Text(#[from] ReadError),
    /// The unit is not known.
    #[error("the unit “{unit}” that goes with it is not known here")]
    Unit {
        /// The symbol.
        unit: String,
    },
    /// Nothing is of such a size.
    #[error("a size has to be more than nothing")]
    NotPositive,
}

/// What was put at a place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PutThere {
    /// The fact.
    pub fact: FactId,
    /// What, in words.
    pub what: String,
    /// The parts off the bench that it is.
    pub parts: Vec<PartId>,
    /// The place that it came from.
    pub from: Option<At>,
    /// What it was worked out to give there.
    pub gives: Option<String>,
}

/// What lies on the bench, and what was put where.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct WhatGoesWhere {
    /// The parts on the bench, in the order they were first written down.
    pub bench: Vec<OnBench>,
    put: BTreeMap<(&'static str, At), PutThere>,
}

impl WhatGoesWhere {
    /// The parts on the bench for a choice.
    pub fn on_bench(&self, choice: &Choice) -> impl Iterator<Item = &OnBench> {
        let id = choice.id;
        self.bench.iter().filter(move |one| one.choice.id == id)
    }

    /// What a choice last put at a place.
    #[must_use]
    pub fn put_at(&self, choice: &Choice, at: At) -> Option<&PutThere> {
        self.put.get(&(choice.id, at))
    }

    /// The part on the bench that sits at a place now: the last that was put
    /// there, or was said to be there.
    #[must_use]
    pub fn sits_at(&self, choice: &Choice, at: At) -> Option<&OnBench> {
        let said = self
            .on_bench(choice)
            .filter(|one| {
                one.listed
                    .place
                    .as_ref()
                    .and_then(Spot::place)
                    .map(|it| it.at)
                    == Some(at)
            })
            .max_by_key(|one| one.fact);
        match (self.put_at(choice, at), said) {
            (Some(put), Some(said)) if said.fact > put.fact => Some(said),
            (Some(put), _) => {
                let part = put.parts.first()?;
                self.on_bench(choice).find(|one| one.listed.part == *part)
            }
            (None, said) => said,
        }
    }

    /// Takes in a fact that stands. Gives what happened to which parts of the
    /// engine by it. What makes no sense becomes a problem.
    pub(super) fn take(
        &mut self,
        fact: &Fact,
        (engine, decided): (Option<&Engine>, &Decided),
        problems: &mut Vec<Problem>,
    ) -> Vec<(&'static Event, At)> {
        let taken = match fact.body() {
            Body::PartOnBench(listed) => self.list(fact.id(), listed).map(|()| Vec::new()),
            Body::PartsPlaced(placed) => self.put(fact.id(), placed, (engine, decided)),
            _ => return Vec::new(),
        };
        taken.unwrap_or_else(|text| {
            problems.push(Problem::new(fact.id(), text));
            Vec::new()
        })
    }

    fn list(&mut self, fact: FactId, listed: &PartOnBench) -> Result<(), String> {
        let choice = known(&listed.choice)?;
        let new = OnBench {
            fact,
            listed: listed.clone(),
            choice,
            size: size_of(listed),
        };
        match self
            .bench
            .iter_mut()
            .find(|one| one.listed.part == listed.part)
        {
            Some(old) => *old = new,
            None => self.bench.push(new),
        }
        Ok(())
    }

    fn put(
        &mut self,
        fact: FactId,
        placed: &PartsPlaced,
        (engine, decided): (Option<&Engine>, &Decided),
    ) -> Result<Vec<(&'static Event, At)>, String> {
        let engine = engine.ok_or("It goes by the engine, which is not described yet.")?;
        let choice = choice_on(placed, engine)?;
        if decided.silences(fact, Thing::Choice(choice.id)) {
            return Ok(Vec::new());
        }
        let at_of = |spot: &Spot| spot.place().map(|place| place.at);
        let mut changed = Vec::new();
        for one in &placed.placed {
            let Some(at) = at_of(&one.place) else {
                continue;
            };
            let put = PutThere {
                fact,
                what: one.what.clone(),
                parts: one.parts.clone(),
                from: one.from.as_ref().and_then(at_of),
                gives: one.gives.clone(),
            };
            let from = put.from;
            let before = self.put.insert((choice.id, at), put);
            let same = before.is_some_and(|it| !it.parts.is_empty() && it.parts == one.parts);
            match from {
                Some(from) if from == at => {}
                Some(_) => changed.push((choice.moved, at)),
                None if same => {}
                None => changed.push((choice.renewed, at)),
            }
        }
        Ok(changed)
    }
}

/// The choice that parts were placed by, when all of it is of this engine.
pub(super) fn choice_on(placed: &PartsPlaced, engine: &Engine) -> Result<&'static Choice, String> {
    let choice = known(&placed.choice)?;
    let places = choice.places(engine);
    let is_there = |spot: &Spot| spot.place().is_some_and(|it| places.contains(&it.at));
    let mut spots =
        (placed.placed.iter()).flat_map(|one| std::iter::once(&one.place).chain(&one.from));
    if spots.all(is_there) {
        Ok(choice)
    } else {
        Err("It was put at a place that this engine does not have.".to_owned())
    }
}

fn known(id: &str) -> Result<&'static Choice, String> {
    choice(id).ok_or_else(|| {
        let id: String = id.chars().take(60).collect();
        format!("It is said of the choice “{id}”, which is not known here.")
    })
}

fn size_of(listed: &PartOnBench) -> Result<Typed, BenchSizeProblem> {
    let unit = unit_of(Kind::Length, &listed.unit).ok_or_else(|| BenchSizeProblem::Unit {
        unit: listed.unit.chars().take(40).collect(),
    })?;
    let typed = read(&listed.size, Kind::Length, unit)?;
    if typed.si() > 0.0 {
        Ok(typed)
    } else {
        Err(BenchSizeProblem::NotPositive)
    }
}
