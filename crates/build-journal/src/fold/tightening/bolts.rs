//! The bolts of a group at one part: how often each was used, how long it is.

use assembly_core::quantity::{Kind, Typed, read, unit_of, unit_or_usual};

use super::sheet::Sheet;
use crate::fact::{BoltMeasured, BoltState};
use crate::id::FactId;

/// A length of a bolt.
#[derive(Clone, PartialEq, Debug)]
pub struct Length {
    /// The fact.
    pub fact: FactId,
    /// What was typed, read, or why it cannot be read.
    pub value: Result<Typed, String>,
}

impl Length {
    pub(super) fn of(fact: FactId, made: &BoltMeasured) -> Self {
        let lone =
            unit_of(Kind::Length, &made.unit).unwrap_or_else(|| unit_or_usual(Kind::Length, "in"));
        let value = read(&made.typed, Kind::Length, lone).map_err(|error| error.to_string());
        Self { fact, value }
    }

    fn metres(&self) -> Option<f64> {
        self.value.as_ref().ok().map(Typed::si)
    }
}

/// One bolt of a group.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Bolt {
    /// How often it was pulled to the end before the last run.
    pub(super) settled: u32,
    /// It was taken new when the last run was through: it has no part in that.
    pub(super) after_the_run: bool,
    /// What stands on its bag, when it was taken new.
    pub lot: Option<String>,
    /// The fact that it was taken new.
    pub renewed: Option<FactId>,
    /// It was held against the map and is not the one that belongs there.
    pub not_as_mapped: bool,
    /// Its length before it was first tightened.
    pub first_free: Option<Length>,
    /// Its latest length with no load on it.
    pub free: Option<Length>,
    /// Its latest length when tight.
    pub tight: Option<Length>,
}

/// What is wrong with a bolt by its lengths and uses.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum BoltTrouble {
    /// It stretched less than the sheet wants, metres.
    TooLittle(f64),
    /// It stretched more than the sheet allows, metres: scrap.
    TooMuch(f64),
    /// It is not longer when tight: look at the list.
    NotLonger,
    /// It stayed longer than the sheet allows, metres: scrap.
    Set(f64),
    /// It has had all its uses: scrap once it comes off.
    UsedUp {
        /// How often.
        uses: u32,
        /// How often it may be.
        allowed: u32,
    },
}

impl BoltTrouble {
    /// Whether the bolt is for the scrap bin.
    #[must_use]
    pub const fn is_scrap(self) -> bool {
        matches!(self, Self::TooMuch(_) | Self::Set(_))
    }
}

impl Bolt {
    pub(super) fn measured(&mut self, length: Length, state: BoltState) {
        match state {
            BoltState::Free => {
                if self.first_free.is_none() && length.value.is_ok() {
                    self.first_free = Some(length.clone());
                }
                self.free = Some(length);
            }
            BoltState::Tight => self.tight = Some(length),
        }
    }

    /// How much longer it is tight than free, metres: both as measured last. A
    /// tight length from before the free one says nothing.
    #[must_use]
    pub fn stretch(&self) -> Option<f64> {
        let (free, tight) = (self.free.as_ref()?, self.tight.as_ref()?);
        if tight.fact < free.fact {
            return None;
        }
        Some(tight.metres()? - free.metres()?)
    }

    /// How much longer it has stayed, metres; nothing before it was measured
    /// free a second time.
    #[must_use]
    pub fn set(&self) -> Option<f64> {
        let (first, last) = (self.first_free.as_ref()?, self.free.as_ref()?);
        if first.fact == last.fact {
            return None;
        }
        Some(last.metres()? - first.metres()?)
    }

    /// What is wrong with it, the worst first; `uses` is how often it was used
    /// in all.
    #[must_use]
    pub fn troubles(&self, sheet: &Sheet, uses: u32) -> Vec<BoltTrouble> {
        /// A millionth is no difference: figures are compared as typed.
        const ALIKE: f64 = 1e-6;
        let mut troubles = Vec::new();
        if let (Some(set), Some(most)) = (self.set(), sheet.set_at_most)
            && set > most * (1.0 + ALIKE)
        {
            troubles.push(BoltTrouble::Set(set));
        }
        if let Some(stretch) = self.stretch() {
            let (low, high) = sheet.stretch;
            if stretch <= 0.0 {
                troubles.push(BoltTrouble::NotLonger);
            } else if high.is_some_and(|high| stretch > high * (1.0 + ALIKE)) {
                troubles.push(BoltTrouble::TooMuch(stretch));
            } else if low.is_some_and(|low| stretch < low * (1.0 - ALIKE)) {
                troubles.push(BoltTrouble::TooLittle(stretch));
            }
        }
        if let Some(allowed) = sheet.uses_allowed().filter(|allowed| uses >= *allowed) {
            troubles.push(BoltTrouble::UsedUp { uses, allowed });
        }
        troubles
    }
}
