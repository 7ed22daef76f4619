//! What a fact would make stale, before it is written down.

use std::collections::BTreeSet;

use super::build::{Build, fold};
use super::stale::Stale;
use super::way_back::WayBack;
use crate::fact::Fact;
use crate::journal::Journal;

/// What would come of a fact.
#[derive(Clone, PartialEq, Debug)]
pub struct Preview {
    /// The results that would no longer count, and do now.
    pub stale: Vec<Stale>,
    /// The results that do not count now, and would.
    pub again: Vec<Stale>,
    /// What would have to be done for the new ones to count again.
    pub way_back: WayBack,
    /// Steps and measures that the engine then has and has not now.
    pub come: Vec<&'static str>,
    /// Steps and measures that the engine has now and then has no more.
    pub go: Vec<&'static str>,
    /// Why the fact could not be used, if it could not.
    pub problems: Vec<String>,
}

/// What would come of a fact, if it were written down now. The journal stays as
/// it is.
#[must_use]
pub fn preview(journal: &Journal, fact: &Fact) -> Preview {
    preview_all(journal, std::slice::from_ref(fact))
}

/// What would come of several facts, if they were written down now one after
/// the other. The journal stays as it is.
#[must_use]
pub fn preview_all(journal: &Journal, facts: &[Fact]) -> Preview {
    let (before, items_before) = {
        let build = fold(journal);
        (build.stale(), items(&build))
    };
    let mut with = journal.clone();
    for fact in facts {
        with.take(fact.clone());
    }
    let build = fold(&with);
    let after = build.stale();
    let not_in = |one: &Stale, all: &[Stale]| !all.iter().any(|other| other.key() == one.key());
    let stale: Vec<Stale> = (after.iter())
        .filter(|one| not_in(one, &before))
        .cloned()
        .collect();
    let problems = build.problems.iter();
    let items_after = items(&build);
    let only_in = |one: &[Item], other: &[Item]| -> Vec<&'static str> {
        let known: BTreeSet<&str> = other.iter().map(|(id, _)| *id).collect();
        let new = one.iter().filter(|(id, _)| !known.contains(id));
        new.map(|(_, label)| *label).collect()
    };
    Preview {
        way_back: build.way_back(&stale),
        again: (before.into_iter())
            .filter(|one| not_in(one, &after))
            .collect(),
        problems: problems
            .filter(|one| facts.iter().any(|fact| fact.id() == one.fact))
            .map(|one| one.text.clone())
            .collect(),
        // Before the engine is described there is nothing to compare with.
        come: if items_before.is_empty() {
            Vec::new()
        } else {
            only_in(&items_after, &items_before)
        },
        go: only_in(&items_before, &items_after),
        stale,
    }
}

/// The id of a step or measure, and what it is called.
type Item = (&'static str, &'static str);

/// The steps and measures that the engine has, in the order of the plan.
fn items(build: &Build) -> Vec<Item> {
    let Some(engine) = build.engine.as_ref().map(|one| &one.engine) else {
        return Vec::new();
    };
    let steps = build.plan.steps(engine).map(|one| (one.id, one.label));
    let measures = build.plan.measures(engine).map(|one| (one.id, one.label));
    steps.chain(measures).collect()
}
