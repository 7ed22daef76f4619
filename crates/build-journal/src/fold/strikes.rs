//! Which facts are struck out.

use std::collections::BTreeMap;

use super::problem::Problem;
use crate::fact::{Body, Fact};
use crate::id::FactId;

/// A fact that no longer counts.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct StruckOut {
    /// The fact.
    pub fact: FactId,
    /// The fact that struck it.
    pub by: FactId,
    /// Why, when it was said.
    pub reason: Option<String>,
}

/// The facts that are struck out, each with the latest strike that counts. A
/// strike only reaches back: it strikes a fact that came before it, and it may
/// itself be struck by one that comes after.
pub(super) fn struck_out<'a>(
    facts: impl DoubleEndedIterator<Item = &'a Fact>,
    problems: &mut Vec<Problem>,
) -> BTreeMap<FactId, StruckOut> {
    let mut struck: BTreeMap<FactId, StruckOut> = BTreeMap::new();
    // From the latest back: whether a strike is itself struck is then known
    // before it is looked at.
    for fact in facts.rev() {
        let Body::Struck(strike) = fact.body() else {
            continue;
        };
        if strike.fact >= fact.id() {
            problems.push(Problem::new(
                fact.id(),
                "It strikes out something that comes after it, which cannot be: it strikes nothing.",
            ));
        } else if !struck.contains_key(&fact.id()) {
            struck.entry(strike.fact).or_insert_with(|| StruckOut {
                fact: strike.fact,
                by: fact.id(),
                reason: strike.reason.clone(),
            });
        }
    }
    struck
}
