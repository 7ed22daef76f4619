//! Which way across a journal or bore a reading is taken.

use std::fmt;

/// The direction of a diameter. On a bearing bore, *up and down* means square
/// to the joint between cap and block, whichever way the engine lies.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum Direction {
    /// Up and down: square to the joint of the cap.
    UpAndDown,
    /// Across: along the joint of the cap.
    Across,
    /// 25° above the joint on the left, seen from the front.
    /// The shell is thinner towards the joint on purpose.
    JointLeft,
    /// 25° above the joint on the right, seen from the front.
    JointRight,
}

impl Direction {
    /// All directions.
    pub const ALL: &'static [Self] = &[
        Self::UpAndDown,
        Self::Across,
        Self::JointLeft,
        Self::JointRight,
    ];

    /// Stable name.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::UpAndDown => "up-and-down",
            Self::Across => "across",
            Self::JointLeft => "joint-left",
            Self::JointRight => "joint-right",
        }
    }

    /// The direction with this stable name.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|one| one.id() == id)
    }

    /// Its name at the bench.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::UpAndDown => "up and down",
            Self::Across => "across",
            Self::JointLeft => "25° above the joint, left",
            Self::JointRight => "25° above the joint, right",
        }
    }
}

impl fmt::Display for Direction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.label())
    }
}
