//! Where in the tightening part of a build one is.

use std::fmt;

use build_plan::At;

/// A screen of the tightening part.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Place {
    /// All groups.
    Groups,
    /// Describing a new group.
    New,
    /// Describing a group again, by its id.
    Describe(String),
    /// A group at one part of the engine: its id and the part's name.
    Part(String, String),
    /// Its run.
    Run(String, String),
    /// The lengths of its bolts.
    Lengths(String, String),
    /// The sealant in its joint.
    Sealant(String, String),
}

impl Place {
    /// Reads what stands in an address behind the build.
    #[must_use]
    pub fn read(parts: &[&str]) -> Option<Self> {
        let text = |text: &str| text.to_owned();
        Some(match parts {
            ["tighten"] => Self::Groups,
            ["tighten", "new"] => Self::New,
            ["tighten", own, "describe"] => Self::Describe(text(own)),
            ["tighten", own, part] => Self::Part(text(own), text(part)),
            ["tighten", own, part, "run"] => Self::Run(text(own), text(part)),
            ["tighten", own, part, "lengths"] => Self::Lengths(text(own), text(part)),
            ["tighten", own, part, "sealant"] => Self::Sealant(text(own), text(part)),
            _ => return None,
        })
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Groups => f.write_str("tighten"),
            Self::New => f.write_str("tighten/new"),
            Self::Describe(own) => write!(f, "tighten/{own}/describe"),
            Self::Part(own, part) => write!(f, "tighten/{own}/{part}"),
            Self::Run(own, part) => write!(f, "tighten/{own}/{part}/run"),
            Self::Lengths(own, part) => write!(f, "tighten/{own}/{part}/lengths"),
            Self::Sealant(own, part) => write!(f, "tighten/{own}/{part}/sealant"),
        }
    }
}

/// A part of the engine as it stands in an address: `engine`, `bank-2`.
#[must_use]
pub fn part_name(at: At) -> String {
    match at {
        At::Main(number) => format!("main-{number}"),
        At::Crankpin(number) => format!("crankpin-{number}"),
        At::Rod(number) => format!("rod-{number}"),
        At::Cylinder(number) => format!("cylinder-{number}"),
        At::Camshaft(number) => format!("camshaft-{number}"),
        At::Bank(number) => format!("bank-{number}"),
        _ => "engine".to_owned(),
    }
}

/// The part of this name.
#[must_use]
pub fn part_of(name: &str) -> Option<At> {
    if name == "engine" {
        return Some(At::Engine);
    }
    let (word, number) = name.split_once('-')?;
    let number = number.parse().ok()?;
    Some(match word {
        "main" => At::Main(number),
        "crankpin" => At::Crankpin(number),
        "rod" => At::Rod(number),
        "cylinder" => At::Cylinder(number),
        "camshaft" => At::Camshaft(number),
        "bank" => At::Bank(number),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_screen_reads_back_from_its_address() {
        let (own, part) = (|| "an-id".to_owned(), || "bank-2".to_owned());
        for place in [
            Place::Groups,
            Place::New,
            Place::Describe(own()),
            Place::Part(own(), part()),
            Place::Run(own(), part()),
            Place::Lengths(own(), part()),
            Place::Sealant(own(), part()),
        ] {
            let address = place.to_string();
            let parts: Vec<&str> = address.split('/').collect();
            assert_eq!(Place::read(&parts), Some(place));
        }
        assert_eq!(Place::read(&["tighten", "a", "b", "c"]), None);
    }

    #[test]
    fn every_part_reads_back_from_its_name() {
        for at in [
            At::Engine,
            At::Main(3),
            At::Crankpin(2),
            At::Rod(8),
            At::Cylinder(1),
            At::Camshaft(2),
            At::Bank(1),
        ] {
            assert_eq!(part_of(&part_name(at)), Some(at));
        }
        assert_eq!(part_of("bank-x"), None);
        assert_eq!(part_of("attic-1"), None);
    }
}
