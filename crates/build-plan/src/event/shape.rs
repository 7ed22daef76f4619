//! The shape of an event.

use crate::engine::{ALWAYS, When};
use crate::measure::{Measure, Per};
use crate::named::printed_by_name;
use crate::proof::Proof;

/// Something that happens to an engine and makes results stale.
#[derive(PartialEq)]
pub struct Event {
    /// Stable name.
    pub id: &'static str,
    /// What happened, as the builder would say it.
    pub label: &'static str,
    /// On which engines.
    pub when: When,
    /// On which parts it happens. Results of other parts stay, where nothing
    /// joins the two.
    pub per: Per,
    /// What becomes stale.
    pub voids: &'static [Proof],
    /// Why.
    pub why: &'static str,
}

printed_by_name!(Event);

pub(super) const ANYWHERE: Event = Event {
    id: "",
    label: "",
    when: ALWAYS,
    per: Per::Engine,
    voids: &[],
    why: "",
};

/// A measure that becomes stale.
pub(super) const fn of(measure: &'static Measure) -> Proof {
    Proof::Measure(measure)
}
