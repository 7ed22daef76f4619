//! Where on the map a person is, as an address.

use std::fmt;

/// A page of the map. Regions and parts go by their stable names.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Place {
    /// The whole engine.
    Whole,
    /// One region of it.
    Region(String),
    /// One part, with its measures.
    Part(String),
}

impl Place {
    /// Reads what stands in an address behind the map.
    #[must_use]
    pub fn read(parts: &[&str]) -> Option<Self> {
        match parts {
            [] => Some(Self::Whole),
            ["part", part] => Some(Self::Part((*part).to_owned())),
            [region] => Some(Self::Region((*region).to_owned())),
            _ => None,
        }
    }
}

/// What stands in an address behind the map.
impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Whole => Ok(()),
            Self::Region(region) => write!(f, "/{region}"),
            Self::Part(part) => write!(f, "/part/{part}"),
        }
    }
}
