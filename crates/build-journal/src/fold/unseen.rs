//! Who did something to the engine, and which later facts knew of it.
//!
//! Two devices that both say that a thing was done, neither in view of the other,
//! speak of one doing and not of two: the engine was not taken apart in between.
//! Done once more it was when the later word knew of the earlier.

use std::collections::BTreeMap;

use super::sayings::Thing;
use crate::fact::Fact;
use crate::id::FactId;

/// What was done to every thing so far, and who knew of it.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Doings(BTreeMap<Thing, Doing>);

#[derive(Clone, PartialEq, Debug, Default)]
struct Doing {
    /// How often it was done, each time in view of the time before.
    times: u32,
    /// How many of these times a fact knew of.
    known: BTreeMap<FactId, u32>,
}

impl Doings {
    /// Takes in a word on a thing, whether it counts or not: what it had in view,
    /// later words have through it. Gives whether it knew of the last doing.
    pub(super) fn hear(&mut self, thing: Thing, fact: &Fact) -> bool {
        let doing = self.0.entry(thing).or_default();
        let known = fact.in_view().map_or(doing.times, |in_view| {
            let known = in_view.replaces.iter().filter_map(|it| doing.known.get(it));
            known.copied().max().unwrap_or(0)
        });
        doing.known.insert(fact.id(), known);
        known == doing.times
    }

    /// Takes a word that was heard for the next doing.
    pub(super) fn done(&mut self, thing: Thing, fact: FactId) {
        let doing = self.0.entry(thing).or_default();
        doing.times += 1;
        doing.known.insert(fact, doing.times);
    }

    /// Takes a word that was heard for the same doing as the last.
    pub(super) fn done_as_well(&mut self, thing: Thing, fact: FactId) {
        let doing = self.0.entry(thing).or_default();
        doing.known.insert(fact, doing.times);
    }
}
