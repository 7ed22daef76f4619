//! What a fact would make stale, before it is written down.

use super::build::fold;
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
    let before = fold(journal).stale();
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
    Preview {
        way_back: build.way_back(&stale),
        again: (before.into_iter())
            .filter(|one| not_in(one, &after))
            .collect(),
        problems: problems
            .filter(|one| facts.iter().any(|fact| fact.id() == one.fact))
            .map(|one| one.text.clone())
            .collect(),
        stale,
    }
}
