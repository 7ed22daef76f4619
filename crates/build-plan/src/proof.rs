//! What can be proved, and can become stale again.

use crate::check::Check;
use crate::engine::When;
use crate::measure::{Measure, Per};
use crate::step::Step;

/// Something that is proved by measuring, looking or doing.
#[derive(Clone, Copy, Debug)]
pub enum Proof {
    /// A measure was taken.
    Measure(&'static Measure),
    /// A check was good.
    Check(&'static Check),
    /// A step was done.
    Step(&'static Step),
}

impl Proof {
    /// Stable name, unique among its sort.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Measure(measure) => measure.id,
            Self::Check(check) => check.id,
            Self::Step(step) => step.id,
        }
    }

    /// Its name at the bench.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Measure(measure) => measure.label,
            Self::Check(check) => check.label,
            Self::Step(step) => step.label,
        }
    }

    /// On which engines.
    #[must_use]
    pub const fn when(self) -> When {
        match self {
            Self::Measure(measure) => measure.when,
            Self::Check(check) => check.when,
            Self::Step(step) => step.when,
        }
    }

    /// On which parts.
    #[must_use]
    pub const fn per(self) -> Per {
        match self {
            Self::Measure(measure) => measure.spots.per,
            Self::Check(check) => check.per,
            Self::Step(step) => step.per,
        }
    }
}

/// Two proofs are the same when sort and name are: comparing all they refer to
/// would go round in circles.
impl PartialEq for Proof {
    fn eq(&self, other: &Self) -> bool {
        std::mem::discriminant(self) == std::mem::discriminant(other) && self.id() == other.id()
    }
}

impl Eq for Proof {}
