//! Where in the measures a person is, as an address.

use std::fmt;

/// A page of the measures.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Place {
    /// All measures of the engine.
    List,
    /// One measure at one of its parts, counted from 1 in the order of the round.
    Round(String, usize),
    /// The limits of one measure.
    Limits(String),
    /// Which part goes where, by the id of the choice.
    Choice(String),
}

impl Place {
    /// Reads what stands in an address behind the build.
    #[must_use]
    pub fn read(parts: &[&str]) -> Option<Self> {
        match parts {
            [] => Some(Self::List),
            ["choose", choice] => Some(Self::Choice((*choice).to_owned())),
            [measure] => Some(Self::Round((*measure).to_owned(), 1)),
            [measure, "limits"] => Some(Self::Limits((*measure).to_owned())),
            [measure, part] => {
                let part = part.parse().ok().filter(|part| *part > 0)?;
                Some(Self::Round((*measure).to_owned(), part))
            }
            _ => None,
        }
    }
}

/// What stands in an address behind the build.
impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::List => Ok(()),
            Self::Round(measure, part) => write!(f, "/{measure}/{part}"),
            Self::Limits(measure) => write!(f, "/{measure}/limits"),
            Self::Choice(choice) => write!(f, "/choose/{choice}"),
        }
    }
}
