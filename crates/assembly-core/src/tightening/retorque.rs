//! Whether a group is tightened again after it has been hot. Common practice;
//! the gasket maker's sheet wins.

use super::interrupted::Gasket;
use super::kind::Kind;

/// What lies between the parts.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Between {
    /// Nothing, or a ring: a cap.
    Nothing,
    /// Several layers of steel.
    LayeredSteel,
    /// Composition or copper.
    Composition,
    /// Cork, rubber or paper of a cover or pan.
    Cover,
    /// Gaskets of intake or exhaust.
    Manifold,
}

impl Between {
    /// All of them.
    pub const ALL: [Self; 5] = [
        Self::Nothing,
        Self::LayeredSteel,
        Self::Composition,
        Self::Cover,
        Self::Manifold,
    ];

    /// Stable name.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Nothing => "nothing",
            Self::LayeredSteel => "layered-steel",
            Self::Composition => "composition",
            Self::Cover => "cover",
            Self::Manifold => "manifold",
        }
    }

    /// What it is called at the bench.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Nothing => "no gasket, or an O-ring",
            Self::LayeredSteel => "layered steel",
            Self::Composition => "composition or copper",
            Self::Cover => "cork, rubber or paper",
            Self::Manifold => "manifold gasket",
        }
    }

    /// The one of this name.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.id() == id)
    }

    /// Whether it is crushed for good when it is clamped for the first time.
    #[must_use]
    pub const fn gasket(self) -> Gasket {
        match self {
            Self::Nothing => Gasket::None,
            Self::LayeredSteel | Self::Composition | Self::Cover | Self::Manifold => {
                Gasket::Crushed
            }
        }
    }
}

/// When a group is tightened again.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Retorque {
    /// Not at all: a stretched bolt that is turned on is stretched further.
    Never,
    /// Once, after the first warm run, the engine cold all through.
    OnceColdAfterFirstHeat,
    /// After some warm runs.
    AfterSomeHeats,
    /// Only if the sheet says so.
    AsTheSheetSays,
}

/// When a group of this kind with this between its parts is tightened again.
#[must_use]
pub const fn retorque(kind: Kind, between: Between) -> Retorque {
    match (kind, between) {
        (Kind::StretchToYield | Kind::StretchMeasured | Kind::TorqueAndAngle, _)
        | (_, Between::LayeredSteel) => Retorque::Never,
        (_, Between::Composition) => Retorque::OnceColdAfterFirstHeat,
        (_, Between::Cover | Between::Manifold) => Retorque::AfterSomeHeats,
        (_, Between::Nothing) => Retorque::AsTheSheetSays,
    }
}

impl Retorque {
    /// The sentence for the builder.
    #[must_use]
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::Never => {
                "Not tightened again: turning it on would stretch it further, or crush what is set. The gasket maker's sheet decides."
            }
            Self::OnceColdAfterFirstHeat => {
                "Once after the first warm run, cold all through (an aluminium head always; hot only if the manual says so): one bolt at a time, back a quarter turn, then to its value. It is a lap of its own."
            }
            Self::AfterSomeHeats => {
                "After some warm runs, cold, from the middle out. It is a lap of its own."
            }
            Self::AsTheSheetSays => "Only if the maker's sheet says so.",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stretched_bolt_is_never_turned_on() {
        for between in Between::ALL {
            assert_eq!(Between::from_id(between.id()), Some(between));
            assert_eq!(retorque(Kind::StretchToYield, between), Retorque::Never);
        }
        assert_eq!(
            retorque(Kind::Plain, Between::Composition),
            Retorque::OnceColdAfterFirstHeat
        );
        assert_eq!(
            retorque(Kind::StudAndNut, Between::LayeredSteel),
            Retorque::Never
        );
        assert_eq!(
            retorque(Kind::SmallCover, Between::Cover),
            Retorque::AfterSomeHeats
        );
    }
}
