//! The pages of the oil, and their addresses.

use std::fmt;

/// A page of the oil.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Place {
    /// What the pressure should be, and where the oil goes.
    Pressure,
    /// What is known of the system.
    System,
    /// The film in the bearings.
    Film,
    /// Oils side by side.
    Oils,
    /// Readings of the gauge.
    Gauge,
    /// Plugs counted out and in.
    Plugs,
    /// Priming.
    Prime,
    /// The list before the key is turned.
    Before,
    /// The first fire.
    Run,
    /// What came after it.
    After,
}

impl Place {
    /// All of them, in the order of the work.
    pub const ALL: [Self; 10] = [
        Self::Pressure,
        Self::System,
        Self::Film,
        Self::Oils,
        Self::Gauge,
        Self::Plugs,
        Self::Prime,
        Self::Before,
        Self::Run,
        Self::After,
    ];

    /// Its name in an address and in tests.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Pressure => "pressure",
            Self::System => "system",
            Self::Film => "film",
            Self::Oils => "oils",
            Self::Gauge => "gauge",
            Self::Plugs => "plugs",
            Self::Prime => "prime",
            Self::Before => "before",
            Self::Run => "run",
            Self::After => "after",
        }
    }

    /// Its name on the screen.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Pressure => "Pressure",
            Self::System => "Pump and oil",
            Self::Film => "Film",
            Self::Oils => "Oils",
            Self::Gauge => "Gauge",
            Self::Plugs => "Plugs",
            Self::Prime => "Prime",
            Self::Before => "Before firing",
            Self::Run => "First fire",
            Self::After => "Afterwards",
        }
    }

    /// Reads the rest of an address; none is the pressure.
    #[must_use]
    pub fn read(rest: &[&str]) -> Option<Self> {
        match rest {
            [] => Some(Self::Pressure),
            [id] => Self::ALL.into_iter().find(|one| one.id() == *id),
            _ => None,
        }
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.id())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_page_reads_back_from_its_address() {
        for place in Place::ALL {
            assert_eq!(Place::read(&[&place.to_string()]), Some(place));
        }
        assert_eq!(Place::read(&[]), Some(Place::Pressure));
        assert_eq!(Place::read(&["sump"]), None);
        assert_eq!(Place::read(&["film", "3"]), None);
    }
}
