//! What the builder adds to the plan: measures and steps; groups of fasteners
//! are in `fasteners.rs`.
//!
//! Their ids in other facts are `own:` and the id here.

use super::words::Danger;
use crate::id::OwnId;

/// A measure of the builder's own.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OwnMeasure {
    /// Its id.
    pub own: OwnId,
    /// What it is called.
    pub label: String,
    /// The symbol of the unit it is usually said in; what it is a number of
    /// follows from that.
    pub unit: String,
    /// On which parts: a word of `build_plan::measure::Per`; the engine once
    /// when not said.
    pub per: Option<String>,
    /// The side of its limits that wrecks engines, if one does.
    pub danger: Option<Danger>,
    /// How it is measured.
    pub how: Option<String>,
    /// Ids of measures, checks, steps and events that make it stale.
    pub stale_with: Vec<String>,
}

/// A step of the builder's own.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OwnStep {
    /// Its id.
    pub own: OwnId,
    /// What is done.
    pub label: String,
    /// On which parts, as in a measure.
    pub per: Option<String>,
    /// Ids of the steps that have to be done before.
    pub after: Vec<String>,
    /// Ids of the steps that it has to be done before.
    pub before: Vec<String>,
    /// Ids of the measures and checks that it proves.
    pub proves: Vec<String>,
    /// How many minutes it takes.
    pub minutes: Option<u32>,
    /// Why it may not be left half done, when it may not.
    pub in_one_go: Option<String>,
    /// What to beware of.
    pub caution: Option<String>,
    /// Ids of measures, checks, steps and events that make it stale.
    pub stale_with: Vec<String>,
}
