//! Where along a journal or bore a reading is taken.

use std::fmt;

/// Where along a journal or a bearing bore. The oil hole itself and the fillets
/// are kept clear of.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum Station {
    /// In front of the oil hole.
    Front,
    /// Behind the oil hole, towards the flywheel.
    Rear,
}

impl Station {
    /// All stations, front to rear.
    pub const ALL: &'static [Self] = &[Self::Front, Self::Rear];

    /// Stable name.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Rear => "rear",
        }
    }

    /// The station with this stable name.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|one| one.id() == id)
    }

    /// Its name at the bench.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Front => "front of the oil hole",
            Self::Rear => "rear of the oil hole",
        }
    }
}

impl fmt::Display for Station {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.label())
    }
}
