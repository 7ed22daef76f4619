//! A group with all that happened to it.

use std::collections::BTreeMap;
use std::sync::Arc;

use build_plan::At;

use super::bolts::Bolt;
use super::run::Run;
use super::sealant::Sealant;
use super::sheet::Sheet;
use crate::fact::{FastenerGroup, Way};
use crate::id::{FactId, OwnId};

/// A group of fasteners.
#[derive(Clone, PartialEq, Debug)]
pub struct Group {
    /// Its id.
    pub own: OwnId,
    /// The latest description.
    pub fact: FactId,
    /// The latest description.
    pub made: FastenerGroup,
    /// What it says.
    pub sheet: Arc<Sheet>,
    /// The parts that something happened at.
    pub parts: BTreeMap<At, Part>,
}

/// The bolts of a group at one part of the engine.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Part {
    /// The runs, in the order they were begun.
    pub runs: Vec<Run>,
    /// The bolts.
    pub bolts: Vec<Bolt>,
    /// Sealant that was put on, in that order.
    pub sealants: Vec<Sealant>,
    /// The latest of anything that undid a tightening besides a run: new bolts.
    pub(super) renewed: Option<FactId>,
}

/// How the bolts of a group at one part are.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum State {
    /// Nobody has tightened them here.
    NotYet,
    /// A run is on, and nobody has to be asked.
    On,
    /// A run is on, and somebody has to say how it stands.
    ToBeSaid,
    /// Tight, and it counts.
    Tight,
    /// Through, but it does not count.
    NoCredit,
    /// A run was given up after bolts were pulled: neither tight nor loose.
    GivenUp,
    /// Loosened again, or new bolts that are not tightened yet.
    Loose,
}

impl Part {
    /// The run that is on.
    #[must_use]
    pub fn on(&self) -> Option<&Run> {
        self.runs.last().filter(|run| run.is_on())
    }

    /// How often a bolt was used in all, since it was new.
    #[must_use]
    pub fn uses(&self, bolt: usize) -> u32 {
        let Some(one) = self.bolts.get(bolt) else {
            return 0;
        };
        let settled = one.settled;
        let tightened = |run: &&Run| run.way == Way::Tighten && !one.after_the_run;
        let last = self.runs.last().filter(tightened);
        let now = last.and_then(|run| run.standing.uses().get(bolt).copied());
        settled.saturating_add(now.unwrap_or_default())
    }

    /// How the bolts are.
    #[must_use]
    pub fn state(&self) -> State {
        // A run that was left before its first pull changed nothing.
        let changed = |run: &&Run| !run.left || run.changed_the_bolts();
        let Some(run) = self.runs.iter().rev().find(changed) else {
            return State::NotYet;
        };
        let renewed_since = self.renewed.is_some_and(|renewed| renewed > run.last_fact);
        if run.left {
            return if renewed_since || run.given_up().is_none() {
                State::Loose
            } else {
                State::GivenUp
            };
        }
        if run.is_on() {
            return if run.has_to_be_said() {
                State::ToBeSaid
            } else {
                State::On
            };
        }
        match run.way {
            Way::Loosen => State::Loose,
            _ if renewed_since => State::Loose,
            _ if run.counts() => State::Tight,
            _ => State::NoCredit,
        }
    }

    /// Room for so many bolts.
    pub(super) fn with(&mut self, bolts: usize) -> &mut Self {
        if self.bolts.len() < bolts {
            self.bolts.resize_with(bolts, Bolt::default);
        }
        self
    }

    /// The last run is over for what comes now: its uses are counted.
    pub(super) fn settle(&mut self) {
        let (Some(run), bolts) = (self.runs.last_mut(), &mut self.bolts) else {
            return;
        };
        run.settle(not_as_mapped(bolts));
        if run.way == Way::Tighten {
            for (bolt, uses) in bolts.iter_mut().zip(run.standing.uses()) {
                if !std::mem::take(&mut bolt.after_the_run) {
                    bolt.settled = bolt.settled.saturating_add(uses);
                }
            }
        }
    }

    /// Works out whether the last run counts.
    pub(super) fn close(&mut self) {
        if let Some(run) = self.runs.last_mut() {
            run.settle(not_as_mapped(&self.bolts));
        }
    }

    pub(super) fn renew(&mut self, bolt: usize, by: FactId, lot: Option<&str>) {
        self.renewed = Some(by);
        if let Some(old) = self.bolts.get_mut(bolt) {
            *old = Bolt {
                lot: lot.map(str::to_owned),
                renewed: Some(by),
                ..Bolt::default()
            };
        }
        let last = self.runs.last_mut().filter(|run| run.way == Way::Tighten);
        match last {
            Some(run) if !run.is_through() => run.new_bolt(bolt),
            // The run that is through has used up the old bolt, not this one.
            Some(_) => {
                if let Some(new) = self.bolts.get_mut(bolt) {
                    new.after_the_run = true;
                }
            }
            None => {}
        }
    }
}

fn not_as_mapped(bolts: &[Bolt]) -> Vec<usize> {
    let wrong = bolts
        .iter()
        .enumerate()
        .filter(|(_, bolt)| bolt.not_as_mapped);
    wrong.map(|(at, _)| at).collect()
}

impl Group {
    /// The bolts at a part.
    #[must_use]
    pub fn part(&self, at: At) -> Option<&Part> {
        self.parts.get(&at)
    }

    /// How the bolts at a part are.
    #[must_use]
    pub fn state(&self, at: At) -> State {
        self.part(at).map_or(State::NotYet, Part::state)
    }
}
