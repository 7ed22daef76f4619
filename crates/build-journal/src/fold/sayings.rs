//! What was said of one thing, a step, a check, the engine as a whole or which part
//! goes where, by one device and another, and which of it takes the place of which.
//!
//! A fact names those it was written in view of ([`InView`]). What those had in
//! view themselves it has in view as well. Of two facts of which neither had the
//! other in view, neither is the later word: when they disagree, a person decides.

use std::collections::{BTreeMap, BTreeSet};

use build_plan::proof::Proof;
use build_plan::{At, Engine};

use super::build::Build;
use super::meant::parts;
use super::placing::choice_on;
use super::plan::Plan;
use super::record::{Looking, ResultAt};
use crate::fact::{Body, EngineDescribed, Fact, InView, Mark, Outcome, PartsPlaced};
use crate::id::FactId;
use crate::journal::Journal;

/// What facts are about that a person may have to decide between.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(super) enum Thing {
    /// The engine as it was described.
    Engine,
    /// A step or a check at a part.
    Result(ResultAt),
    /// Which part goes where: a choice, with all its places. A part is at one of
    /// them only, so they hold or fall together.
    Choice(&'static str),
}

/// What is said of it.
#[derive(Clone, Copy, Debug)]
pub(super) enum Word<'a> {
    Engine(&'a EngineDescribed),
    Mark(Mark),
    Outcome(Outcome),
    Placed(&'a PartsPlaced),
}

impl Word<'_> {
    /// Whether both say the same.
    fn is_the_same_as(self, other: Self) -> bool {
        match (self, other) {
            (Self::Mark(one), Self::Mark(other)) => one == other,
            (Self::Outcome(one), Self::Outcome(other)) => one == other,
            (Self::Placed(one), Self::Placed(other)) => one.puts_the_same_as(other),
            (Self::Engine(one), Self::Engine(other)) => {
                let usable = || Some(one.engine().ok()? == other.engine().ok()?);
                one == other || usable() == Some(true)
            }
            _ => false,
        }
    }

    /// Whether this and what was said later cannot both be right. What was only
    /// planned or begun is on its way to being done.
    fn is_against(self, later: Self) -> bool {
        const OPEN: [Mark; 2] = [Mark::Planned, Mark::Begun];
        match (self, later) {
            (Self::Mark(one), Self::Mark(later)) if OPEN.contains(&one) => {
                !OPEN.contains(&later) && later != Mark::Done
            }
            (Self::Placed(one), Self::Placed(later)) => one.is_against(later),
            _ => !self.is_the_same_as(later),
        }
    }
}

/// One fact's word on a thing.
#[derive(Clone, Copy, Debug)]
pub(super) struct Saying<'a> {
    pub(super) fact: &'a Fact,
    pub(super) word: Word<'a>,
}

impl Saying<'_> {
    const fn id(&self) -> FactId {
        self.fact.id()
    }
}

/// Every word on every thing, in the order of the facts.
pub(super) struct Sayings<'a>(pub(super) BTreeMap<Thing, Vec<Saying<'a>>>);

impl<'a> Sayings<'a> {
    /// Those of a journal, but for facts that are not wanted.
    pub(super) fn of(
        journal: &'a Journal,
        (plan, engine): (&Plan, Option<&Engine>),
        wanted: impl Fn(&Body) -> bool,
    ) -> Self {
        let mut all: BTreeMap<Thing, Vec<Saying<'a>>> = BTreeMap::new();
        let spoken = journal
            .facts()
            .filter(|fact| InView::goes_with(fact.body()) && wanted(fact.body()));
        for fact in spoken {
            let look = engine.map(|engine| Looking { plan, engine });
            for (thing, word) in words(fact.body(), look.as_ref()) {
                all.entry(thing).or_default().push(Saying { fact, word });
            }
        }
        Self(all)
    }
}

/// What a fact says of which things. Before the engine is described nothing can be
/// said of its parts.
fn words<'a>(body: &'a Body, look: Option<&Looking>) -> Vec<(Thing, Word<'a>)> {
    let of_parts = || -> Option<Vec<(Thing, Word<'a>)>> {
        let look = look?;
        let (proof, spot, word) = match body {
            Body::StepMarked(made) => (
                Proof::Step(look.plan.step(&made.step)?),
                made.place.as_ref(),
                Word::Mark(made.mark),
            ),
            Body::CheckMade(made) => (
                Proof::Check(look.plan.check(&made.check)?),
                made.place.as_ref(),
                Word::Outcome(made.outcome),
            ),
            _ => return None,
        };
        let (parts, whole) = parts(proof, spot, look.engine).ok()?;
        let word = match word {
            // What was done to one part of a step that is one whole has begun it.
            Word::Mark(Mark::Done) if !whole => Word::Mark(Mark::Begun),
            // What is good at one part of it says nothing of the whole.
            Word::Outcome(Outcome::Good) if !whole => return None,
            word => word,
        };
        let at = |at: At| (Thing::Result(ResultAt::of(proof, at)), word);
        Some(parts.into_iter().map(at).collect())
    };
    match body {
        Body::EngineDescribed(engine) => vec![(Thing::Engine, Word::Engine(engine))],
        Body::PartsPlaced(placed) => look
            .and_then(|look| choice_on(placed, look.engine).ok())
            .map(|choice| (Thing::Choice(choice.id), Word::Placed(placed)))
            .into_iter()
            .collect(),
        _ => of_parts().unwrap_or_default(),
    }
}

/// All that some facts were written in view of, from one to the next.
#[derive(Default)]
struct Behind {
    /// Everything before this fact, which does not say what it had in view.
    all_before: Option<FactId>,
    named: BTreeSet<FactId>,
}

impl Behind {
    fn of(said: &[Saying], from: impl Iterator<Item = FactId>) -> Self {
        let find = |id: FactId| {
            let at = said.binary_search_by_key(&id, Saying::id).ok()?;
            said.get(at)
        };
        let mut behind = Self::default();
        let mut left: Vec<FactId> = from.collect();
        while let Some(saying) = left.pop() {
            let Some(saying) = find(saying) else {
                continue;
            };
            let Some(in_view) = saying.fact.in_view() else {
                behind.all_before = behind.all_before.max(Some(saying.id()));
                continue;
            };
            for earlier in &in_view.replaces {
                // Nobody has what comes later in view, whatever a file may say.
                if *earlier < saying.id() && behind.named.insert(*earlier) {
                    left.push(*earlier);
                }
            }
        }
        behind
    }

    fn holds(&self, id: FactId) -> bool {
        self.all_before.is_some_and(|fact| id < fact) || self.named.contains(&id)
    }
}

/// The last words on a thing: those that no other fact that counts had in view.
pub(super) fn last_words<'a>(
    said: &[Saying<'a>],
    counts: impl Fn(FactId) -> bool,
) -> Vec<Saying<'a>> {
    let counting = || said.iter().filter(|one| counts(one.id()));
    let behind = Behind::of(said, counting().map(Saying::id));
    counting()
        .filter(|one| !behind.holds(one.id()))
        .copied()
        .collect()
}

/// Of the last words, those that say what they had in view, when two of them
/// cannot both be right.
pub(super) fn against_each_other(last: Vec<Saying>) -> Vec<Saying> {
    // A fact of the first version had no way to say it: the later one counts.
    let mut told = last;
    told.retain(|one| one.fact.in_view().is_some());
    let pairs = told.iter().enumerate();
    let against = pairs
        .flat_map(|(at, one)| told.iter().skip(at + 1).map(move |later| (one, later)))
        .any(|(one, later)| one.word.is_against(later.word));
    if against { told } else { Vec::new() }
}

/// What persons decided: facts that do not count of a thing, as if they were struck
/// out there, and facts that do nothing but say so.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(super) struct Decided(BTreeSet<(FactId, Thing)>);

impl Decided {
    /// Whether a fact says nothing of a thing.
    pub(super) fn silences(&self, fact: FactId, of: Thing) -> bool {
        !self.0.is_empty() && self.0.contains(&(fact, of))
    }

    /// What was decided, in view of the facts that count.
    pub(super) fn of(
        journal: &Journal,
        with: (&Plan, Option<&Engine>),
        counts: impl Fn(FactId) -> bool,
    ) -> Self {
        let settles = |fact: &Fact| fact.in_view().is_some_and(|it| it.settles);
        if !journal.facts().any(settles) {
            return Self::default();
        }
        let mut decided = BTreeSet::new();
        let all = Sayings::of(journal, with, |body| {
            !matches!(body, Body::EngineDescribed(_))
        });
        for (thing, said) in &all.0 {
            // The latest first: a decision may itself have been decided against.
            for saying in said.iter().rev().filter(|one| counts(one.id())) {
                if settles(saying.fact) && !decided.contains(&(saying.id(), *thing)) {
                    let silenced = one_decision(said, saying).into_iter();
                    decided.extend(silenced.map(|fact| (fact, *thing)));
                }
            }
        }
        Self(decided)
    }
}

/// The facts that one decision silences, itself with them. None when nothing that
/// it replaces says the same: then it is a word of its own.
fn one_decision(said: &[Saying], by: &Saying) -> Vec<FactId> {
    let in_view = by.fact.in_view();
    let is_named = |one: &Saying| in_view.is_some_and(|it| it.replaces.contains(&one.id()));
    let held: BTreeSet<FactId> = said
        .iter()
        .filter(|one| one.id() < by.id() && is_named(one) && one.word.is_the_same_as(by.word))
        .map(Saying::id)
        .collect();
    if held.is_empty() {
        return Vec::new();
    }
    let kept = Behind::of(said, held.iter().copied());
    let all = Behind::of(said, std::iter::once(by.id()));
    let is_lost = |id: FactId| all.holds(id) && !kept.holds(id) && !held.contains(&id);
    said.iter()
        .map(Saying::id)
        .filter(|id| *id == by.id() || is_lost(*id))
        .collect()
}

impl Build {
    /// What a fact of such a body takes the place of, when it is written down now:
    /// the last words on the same thing. `None` for kinds that do not say it.
    #[must_use]
    pub fn in_view(&self, journal: &Journal, body: &Body) -> Option<InView> {
        if !InView::goes_with(body) {
            return None;
        }
        let engine = self.engine.as_ref().map(|one| &one.engine);
        let all = Sayings::of(journal, (&self.plan, engine), |other| {
            is_about_the_same(body, other)
        });
        let look = engine.map(|engine| Looking {
            plan: &self.plan,
            engine,
        });
        let mut replaces = BTreeSet::new();
        for (thing, _) in words(body, look.as_ref()) {
            let said = all.0.get(&thing).map_or(&[][..], Vec::as_slice);
            let last = last_words(said, |fact| !self.is_struck(fact));
            replaces.extend(last.iter().map(Saying::id));
        }
        Some(InView {
            replaces: replaces.into_iter().collect(),
            settles: false,
        })
    }

    /// Whether a fact is struck out.
    pub(super) fn is_struck(&self, fact: FactId) -> bool {
        let found = self.struck.binary_search_by_key(&fact, |one| one.fact);
        found.is_ok()
    }
}

/// Whether both may be about the same thing, by their names alone.
fn is_about_the_same(one: &Body, other: &Body) -> bool {
    match (one, other) {
        (Body::EngineDescribed(_), Body::EngineDescribed(_)) => true,
        (Body::StepMarked(one), Body::StepMarked(other)) => one.step == other.step,
        (Body::CheckMade(one), Body::CheckMade(other)) => one.check == other.check,
        (Body::PartsPlaced(one), Body::PartsPlaced(other)) => one.choice == other.choice,
        _ => false,
    }
}
