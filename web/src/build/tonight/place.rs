//! The addresses of the plan's pages within a build.

use std::fmt;

/// A page of the plan.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Place {
    /// What there is to do tonight.
    Tonight,
    /// All steps, stage by stage.
    Steps,
    /// A step by its id, and the part it is done at, as
    /// [`slug`](super::words::slug) writes it.
    Step(String, Option<String>),
    /// Something that was changed; the event by its id, once it is chosen.
    Change(Option<String>),
    /// How the engine is described.
    Engine,
}

impl Place {
    /// Reads what stands behind the build in an address.
    #[must_use]
    pub fn read(parts: &[&str]) -> Option<Self> {
        let owned = |text: &str| text.to_owned();
        let place = match parts {
            [] | ["tonight"] => Self::Tonight,
            ["steps"] => Self::Steps,
            ["step", step] => Self::Step(owned(step), None),
            ["step", step, part] => Self::Step(owned(step), Some(owned(part))),
            ["change"] => Self::Change(None),
            ["change", event] => Self::Change(Some(owned(event))),
            ["engine"] => Self::Engine,
            _ => return None,
        };
        Some(place)
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Tonight => f.write_str("tonight"),
            Self::Steps => f.write_str("steps"),
            Self::Step(step, None) => write!(f, "step/{step}"),
            Self::Step(step, Some(part)) => write!(f, "step/{step}/{part}"),
            Self::Change(None) => f.write_str("change"),
            Self::Change(Some(event)) => write!(f, "change/{event}"),
            Self::Engine => f.write_str("engine"),
        }
    }
}
