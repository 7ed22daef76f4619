//! The shape of a check.

use crate::engine::{ALWAYS, When};
use crate::measure::Per;
use crate::named::printed_by_name;

/// Something that is seen, felt or counted, and is good or is not.
#[derive(PartialEq)]
pub struct Check {
    /// Stable name.
    pub id: &'static str,
    /// Its name at the bench.
    pub label: &'static str,
    /// On which engines.
    pub when: When,
    /// On which parts, one by one.
    pub per: Per,
    /// What good looks like.
    pub good: &'static str,
    /// What shows it later.
    pub seen: Seen,
    /// How long it stays good by itself.
    pub lasts: Lasts,
}

printed_by_name!(Check);

/// What shows later that a check was good.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Seen {
    /// A photo.
    Photo,
    /// How it felt to the hand.
    Feel,
    /// A count, of plugs or ticks.
    Count,
    /// A few words.
    Words,
}

/// How long something stays good by itself.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Lasts {
    /// Until something undoes it.
    UntilUndone,
    /// So many days. Common practice.
    Days(u16),
    /// For a time that the builder gives, off a tube or by judgement.
    AsSaid(&'static str),
}

/// What checks have in common.
pub(super) const LASTING: Check = Check {
    id: "",
    label: "",
    when: ALWAYS,
    per: Per::Engine,
    good: "",
    seen: Seen::Words,
    lasts: Lasts::UntilUndone,
};
