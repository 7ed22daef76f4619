//! Whether a group is tightened again after it has been hot. Common practice;
//! the gasket maker's sheet wins.

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
        for between in [
            Between::Nothing,
            Between::LayeredSteel,
            Between::Composition,
            Between::Cover,
            Between::Manifold,
        ] {
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
