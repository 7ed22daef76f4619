//! A place on an engine, down to the station and direction.

use std::fmt;

use super::at::At;
use super::direction::Direction;
use super::station::Station;
use crate::engine::Engine;

/// A place on an engine. Written out: "main 3, front of the oil hole, up and down".
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Place {
    /// The part.
    pub at: At,
    /// Where along it, when that matters.
    pub station: Option<Station>,
    /// Which way across it, when that matters.
    pub direction: Option<Direction>,
}

impl Place {
    /// A part as a whole.
    #[must_use]
    pub const fn of(at: At) -> Self {
        Self {
            at,
            station: None,
            direction: None,
        }
    }

    /// A main bearing as a whole.
    #[must_use]
    pub const fn main(number: u8) -> Self {
        Self::of(At::Main(number))
    }

    /// The same part, at this station.
    #[must_use]
    pub const fn station(mut self, station: Station) -> Self {
        self.station = Some(station);
        self
    }

    /// The same part and station, in this direction.
    #[must_use]
    pub const fn direction(mut self, direction: Direction) -> Self {
        self.direction = Some(direction);
        self
    }

    /// Whether this engine has such a place.
    #[must_use]
    pub fn exists_on(&self, engine: &Engine) -> bool {
        self.at.exists_on(engine)
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.at.fmt(f)?;
        if let Some(station) = self.station {
            write!(f, ", {station}")?;
        }
        if let Some(direction) = self.direction {
            write!(f, ", {direction}")?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Layout;

    #[test]
    fn a_place_reads_like_the_bench_says_it() {
        let place = Place::main(3)
            .station(Station::Front)
            .direction(Direction::UpAndDown);
        assert_eq!(
            place.to_string(),
            "main 3, front of the oil hole, up and down"
        );
    }

    #[test]
    fn a_place_exists_only_on_an_engine_that_has_it() {
        let engine = Engine::new("test bed", 4, Layout::Inline, Some(3)).unwrap();
        assert!(Place::main(3).exists_on(&engine));
        assert!(!Place::main(4).exists_on(&engine));
        assert!(!Place::main(0).exists_on(&engine));
    }

    #[test]
    fn stable_names_lead_back_to_what_they_name() {
        for station in Station::ALL {
            assert_eq!(Station::from_id(station.id()), Some(*station));
        }
        for direction in Direction::ALL {
            assert_eq!(Direction::from_id(direction.id()), Some(*direction));
        }
    }
}
