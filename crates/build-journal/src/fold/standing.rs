//! How a fit stands: judged, or what is still missing for that.

use assembly_core::fit::running_clearance::Advice;
use assembly_core::measure::{Verdict, Window};
use thiserror::Error;

use super::limits::{Limits, LimitsProblem};
use crate::id::FactId;

/// How a fit stands. Whatever is not judged has not passed.
#[derive(Clone, PartialEq, Debug)]
pub enum Standing {
    /// Something is missing for a verdict; at least one thing.
    Open(Vec<Missing>),
    /// The verdict, how far out it is, what makes the doubt and what would
    /// settle it.
    Judged(Box<Advice>),
}

impl Standing {
    /// The verdict, when there is one.
    #[must_use]
    pub fn verdict(&self) -> Option<Verdict> {
        match self {
            Self::Open(_) => None,
            Self::Judged(advice) => Some(advice.assessment.verdict),
        }
    }
}

/// Something that is missing for a verdict, as a sentence.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum Missing {
    /// Nothing was measured yet.
    #[error("Not measured yet.")]
    AllReadings,
    /// The bore was not measured where it counts.
    #[error("The bore is not measured yet, square to the joint of the shells.")]
    Bore,
    /// The journal was not measured.
    #[error("The journal is not measured yet.")]
    Journal,
    /// No limits.
    #[error("No limits are set yet: type them from the maker's sheet, or choose your own.")]
    Limits,
    /// Limits that do not agree, set apart from each other.
    #[error("Two sets of limits do not agree: strike one out, or set them once more.")]
    OneSetOfLimits {
        /// The facts that set them.
        facts: Vec<FactId>,
    },
    /// Limits that make no window.
    #[error("The limits cannot be used: {problem}.")]
    UsableLimits {
        /// The fact that set them.
        fact: FactId,
        /// Why.
        problem: LimitsProblem,
    },
    /// Readings without a tool, so that nothing is known of their give-or-take.
    #[error(
        "{} not said with which tool, so there is no telling how far it may be off.",
        how_many(.facts.len())
    )]
    Tool {
        /// The readings.
        facts: Vec<FactId>,
    },
    /// Readings of a tool that is not on the list or of no sort known here.
    #[error(
        "{} taken with a tool that is not known here or does not read such a thing, so there is no telling how far it may be off.",
        how_many(.facts.len())
    )]
    KnownTool {
        /// The readings.
        facts: Vec<FactId>,
    },
    /// Readings of a needle without the size it was zeroed at.
    #[error("{} a needle's, and it is not said at which size the needle was zeroed.", how_many(.facts.len()))]
    ZeroedAt {
        /// The readings.
        facts: Vec<FactId>,
    },
}

fn how_many(readings: usize) -> String {
    if readings == 1 {
        "One reading is".to_owned()
    } else {
        format!("{readings} readings are")
    }
}

/// The window of the limits, or what is missing for one.
pub(super) fn window(limits: &[Limits], missing: &mut Vec<Missing>) -> Option<Window> {
    let [first, others @ ..] = limits else {
        missing.push(Missing::Limits);
        return None;
    };
    if others.iter().any(|other| other.window != first.window) {
        missing.push(Missing::OneSetOfLimits {
            facts: limits.iter().map(|one| one.fact).collect(),
        });
        return None;
    }
    match &first.window {
        Ok(window) => Some(*window),
        Err(problem) => {
            missing.push(Missing::UsableLimits {
                fact: first.fact,
                problem: problem.clone(),
            });
            None
        }
    }
}
