//! Kinds of fasteners, and how often each may be tightened.

/// What kind of fastener a group has.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Kind {
    /// An ordinary elastic bolt, to a torque.
    Plain,
    /// Torque and angle, still elastic.
    TorqueAndAngle,
    /// Stretched past its yield: used once.
    StretchToYield,
    /// Tightened to a measured stretch.
    StretchMeasured,
    /// Studs, hand-snug, with nuts to a torque.
    StudAndNut,
    /// Small bolts of covers and pans, in inch-pounds.
    SmallCover,
}

impl Kind {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Plain,
        Self::TorqueAndAngle,
        Self::StretchToYield,
        Self::StretchMeasured,
        Self::StudAndNut,
        Self::SmallCover,
    ];

    /// Stable name.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Plain => "plain",
            Self::TorqueAndAngle => "torque-and-angle",
            Self::StretchToYield => "stretch-to-yield",
            Self::StretchMeasured => "stretch-measured",
            Self::StudAndNut => "stud-and-nut",
            Self::SmallCover => "small-cover",
        }
    }

    /// What it is called at the bench.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Plain => "ordinary bolt",
            Self::TorqueAndAngle => "torque and angle, elastic",
            Self::StretchToYield => "stretch bolt, used once",
            Self::StretchMeasured => "bolt of a measured stretch",
            Self::StudAndNut => "stud and nut",
            Self::SmallCover => "small bolt of a cover",
        }
    }

    /// The kind of this name.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.id() == id)
    }

    /// What is dangerous about tightening this kind, when something is.
    #[must_use]
    pub const fn caution(self) -> Option<&'static str> {
        Some(match self {
            Self::StretchToYield => {
                "These bolts are turned past their yield: each is used once, and a new one goes in every time. Never turn one on again to be sure. One that turns easier near the end is giving way: stop, and take it out."
            }
            Self::TorqueAndAngle => {
                "An angle counts only from snug, with every bolt at snug. Turned too far: back right off and begin again at snug."
            }
            Self::StretchMeasured => {
                "Go by the length, not by the torque. A bolt that stretched too far, or stayed longer, is scrap: it breaks in the running engine."
            }
            Self::StudAndNut => {
                "A stud is seated by hand and not driven into the bottom of its hole: that splits the casting."
            }
            Self::SmallCover => {
                "Small bolts break by hand: read on the wrench whether it is inch-pounds."
            }
            Self::Plain => return None,
        })
    }

    /// How often it may be tightened to the end when the builder's sheet says
    /// nothing; `None` for no limit that is commonly named. A bolt of a measured
    /// stretch is kept or scrapped by its free length.
    #[must_use]
    pub const fn uses(self) -> Option<u32> {
        match self {
            Self::StretchToYield => Some(1),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_hurt_says_so() {
        let says = |kind: Kind, word: &str| kind.caution().is_some_and(|text| text.contains(word));
        assert!(says(Kind::StretchToYield, "used once"));
        assert!(says(Kind::TorqueAndAngle, "back right off"));
        assert!(says(Kind::StretchMeasured, "scrap"));
        assert!(says(Kind::StudAndNut, "splits the casting"));
        assert!(says(Kind::SmallCover, "inch-pounds"));
    }
}
