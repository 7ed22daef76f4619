//! The addresses of this area.

use std::fmt;

/// A page about what is bought and given out.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Place {
    /// The parts list.
    List,
    /// The machine-work order.
    Shop,
}

impl Place {
    /// Reads the part of an address behind the build.
    #[must_use]
    pub fn read(parts: &[&str]) -> Option<Self> {
        match parts {
            ["parts"] => Some(Self::List),
            ["parts", "shop"] => Some(Self::Shop),
            _ => None,
        }
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::List => "parts",
            Self::Shop => "parts/shop",
        })
    }
}
