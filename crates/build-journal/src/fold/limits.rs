//! The limits that the builder set, with where they come from.

use assembly_core::measure::{Window, WindowError};
use assembly_core::quantity::{ReadError, Typed, read, unit_of};
use build_plan::Place;
use thiserror::Error;

use super::plan::Plan;
use crate::fact::{LimitsSet, Spot};
use crate::id::{DeviceId, FactId};

/// Limits that hold for a measure.
#[derive(Clone, PartialEq, Debug)]
pub struct Limits {
    /// The fact that set them.
    pub fact: FactId,
    /// The device they were set on.
    pub device: DeviceId,
    /// The limits as they were written down.
    pub set: LimitsSet,
    /// The low limit, when one was typed and can be read.
    pub low: Option<Typed>,
    /// The high limit, when one was typed and can be read.
    pub high: Option<Typed>,
    /// The window the two make, or why they make none.
    pub window: Result<Window, LimitsProblem>,
}

/// Why limits make no window.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum LimitsProblem {
    /// The measure is not known.
    #[error("the measure “{measure}” is not known here")]
    Measure {
        /// The id.
        measure: String,
    },
    /// The unit of the fields is not known.
    #[error("the unit “{unit}” that goes with them is not known here")]
    Unit {
        /// The symbol.
        unit: String,
    },
    /// The low limit cannot be read.
    #[error("low limit: {0}")]
    Low(ReadError),
    /// The high limit cannot be read.
    #[error("high limit: {0}")]
    High(ReadError),
    /// A number cannot be read.
    #[error(transparent)]
    Number(ReadError),
    /// The two do not make a window.
    #[error(transparent)]
    Window(#[from] WindowError),
}

impl Limits {
    pub(super) fn of(fact: FactId, device: DeviceId, set: &LimitsSet, plan: &Plan) -> Self {
        let mut limits = Self {
            fact,
            device,
            set: set.clone(),
            low: None,
            high: None,
            window: Err(WindowError::NoLimit.into()),
        };
        limits.window = limits.read(plan);
        limits
    }

    fn read(&mut self, plan: &Plan) -> Result<Window, LimitsProblem> {
        let set = &self.set;
        let measure = plan
            .measure(&set.measure)
            .ok_or_else(|| LimitsProblem::Measure {
                measure: set.measure.chars().take(60).collect(),
            })?;
        let lone = unit_of(measure.kind, &set.unit).ok_or_else(|| LimitsProblem::Unit {
            unit: set.unit.chars().take(40).collect(),
        })?;
        let typed = |text: &Option<String>| {
            text.as_deref()
                .filter(|text| !text.trim().is_empty())
                .map(|text| read(text, measure.kind, lone))
                .transpose()
        };
        let (low, high) = (typed(&set.low), typed(&set.high));
        self.low = low.as_ref().ok().cloned().flatten();
        self.high = high.as_ref().ok().cloned().flatten();
        low.map_err(LimitsProblem::Low)?;
        high.map_err(LimitsProblem::High)?;
        Ok(Window::new(
            self.low.as_ref().map(Typed::si),
            self.high.as_ref().map(Typed::si),
        )?)
    }

    /// The part these limits are for, when not for all.
    #[must_use]
    pub fn place(&self) -> Option<Place> {
        self.set.place.as_ref().and_then(Spot::place)
    }

    /// Whether both are for the same measure and the same part.
    fn is_about_the_same_as(&self, other: &Self) -> bool {
        self.set.measure == other.set.measure && self.set.place == other.set.place
    }

    /// Whether these take the other's place: they were set later on the same
    /// device, or say so.
    fn replaces(&self, other: &Self) -> bool {
        self.is_about_the_same_as(other)
            && self.fact > other.fact
            && (self.device == other.device || self.set.replaces.contains(&other.fact))
    }
}

/// Takes in later limits: those they replace go, and are named. What is left
/// are the limits in force; more than one for the same measure and part is a
/// conflict.
pub(super) fn put_in_force(in_force: &mut Vec<Limits>, later: Limits) -> Vec<FactId> {
    let mut replaced = Vec::new();
    in_force.retain(|earlier| {
        let goes = later.replaces(earlier);
        if goes {
            replaced.push(earlier.fact);
        }
        !goes
    });
    in_force.push(later);
    replaced
}
