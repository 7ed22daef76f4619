//! The shape of a measure.

use assembly_core::describe::UsualUnits;
use assembly_core::measure::DangerousSide;
use assembly_core::quantity::Kind;

use super::per::Per;
use super::tripwire::Tripwire;
use crate::engine::{Engine, When};
use crate::named::printed_by_name;
use crate::place::{At, Direction, Place, Station};

/// One thing that is measured or worked out, with everything the trade knows
/// about it.
#[derive(PartialEq)]
pub struct Measure {
    /// Stable name, such as `main-oil-clearance`.
    pub id: &'static str,
    /// Its name at the bench.
    pub label: &'static str,
    /// What it is a number of.
    pub kind: Kind,
    /// The units it is usually said in.
    pub units: UsualUnits,
    /// On which engines.
    pub when: When,
    /// Whether it is read off a tool or worked out.
    pub found: Found,
    /// The side of its limits that wrecks engines.
    pub dangerous: DangerousSide,
    /// Where it is taken.
    pub spots: Spots,
    /// How to measure it, in three lines.
    pub how: [&'static str; 3],
    /// What the trade would stop and look twice at, when there is no sheet.
    pub tripwire: Option<Tripwire>,
    /// What comes of too little; empty when nothing does.
    pub too_little: &'static str,
    /// What comes of too much; empty when nothing does.
    pub too_much: &'static str,
    /// What to beware of while measuring it.
    pub cautions: &'static [&'static str],
}

printed_by_name!(Measure);

/// Where a measure's number comes from.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Found {
    /// Read off a tool.
    Read,
    /// Worked out from other measures; some tools read it directly as well.
    WorkedOut {
        /// The id of the calculation in `assembly_core`.
        calculation: &'static str,
        /// What it is worked out from.
        from: &'static [&'static Measure],
        /// Ids of the calculations that take readings of the measure itself.
        or_read_by: &'static [&'static str],
    },
    /// One measure less another, at the same part.
    Difference {
        /// The larger of the two.
        of: &'static Measure,
        /// What is taken from it.
        less: &'static Measure,
    },
    /// The most that readings of another measure differ.
    Spread {
        /// The measure whose readings are compared.
        of: &'static Measure,
        /// Which of its readings.
        over: Over,
    },
}

/// Which readings of a measure are compared with each other.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Over {
    /// The means of the stations of one part: a journal's taper.
    Stations,
    /// The stations in one direction, whichever differs most: a bore's taper.
    StationsInLine,
    /// The directions at one station: out-of-round.
    Directions,
    /// Parts that lie next to each other: a step.
    Neighbours,
}

/// Where a measure is taken: on each part, at each station, in each direction.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Spots {
    /// On each of these.
    pub per: Per,
    /// At each of these; none when the part is taken as a whole.
    pub stations: &'static [Station],
    /// In each of these directions; none when there is only one way.
    pub directions: &'static [Direction],
}

impl Spots {
    /// Each part once.
    #[must_use]
    pub const fn each(per: Per) -> Self {
        Self {
            per,
            stations: &[],
            directions: &[],
        }
    }

    /// Each part at these stations.
    #[must_use]
    pub const fn at(per: Per, stations: &'static [Station]) -> Self {
        Self {
            per,
            stations,
            directions: &[],
        }
    }

    /// The places of one part, in the order they are measured.
    #[must_use]
    pub fn on(&self, at: At) -> Vec<Place> {
        let mut places = Vec::with_capacity(self.number_on_each());
        for station in or_none(self.stations) {
            for direction in or_none(self.directions) {
                places.push(Place {
                    at,
                    station,
                    direction,
                });
            }
        }
        places
    }

    /// How many places there are on each part.
    #[must_use]
    pub const fn number_on_each(&self) -> usize {
        let stations = self.stations.len();
        let directions = self.directions.len();
        (if stations == 0 { 1 } else { stations }) * (if directions == 0 { 1 } else { directions })
    }

    /// Whether a place is one of these, whichever engine it is on.
    #[must_use]
    pub fn include(&self, place: &Place) -> bool {
        self.per.includes(place.at)
            && fits(self.stations, place.station)
            && fits(self.directions, place.direction)
    }
}

/// Each item, or once none when there are no items.
fn or_none<T: Copy>(items: &'static [T]) -> impl Iterator<Item = Option<T>> {
    let nothing = items.is_empty().then_some(None);
    nothing
        .into_iter()
        .chain(items.iter().map(|item| Some(*item)))
}

fn fits<T: PartialEq>(items: &[T], item: Option<T>) -> bool {
    match item {
        None => items.is_empty(),
        Some(item) => items.contains(&item),
    }
}

impl Measure {
    /// Every place it is taken at on an engine, in the order of the work; none
    /// when it does not apply to the engine.
    #[must_use]
    pub fn places(&self, engine: &Engine) -> Vec<Place> {
        if !self.when.applies_to(engine) {
            return Vec::new();
        }
        self.spots
            .per
            .parts(engine)
            .into_iter()
            .flat_map(|at| self.spots.on(at))
            .collect()
    }

    /// Whether a tool can read it, so that a reading of it can be typed.
    #[must_use]
    pub const fn can_be_read(&self) -> bool {
        match self.found {
            Found::Read => true,
            Found::WorkedOut { or_read_by, .. } => !or_read_by.is_empty(),
            Found::Difference { .. } | Found::Spread { .. } => false,
        }
    }

    /// Whether it is worked out from another measure.
    #[must_use]
    pub fn is_worked_out_from(&self, other: &Self) -> bool {
        match self.found {
            Found::Read => false,
            Found::WorkedOut { from, .. } => from.iter().any(|one| one.id == other.id),
            Found::Difference { of, less } => of.id == other.id || less.id == other.id,
            Found::Spread { of, .. } => of.id == other.id,
        }
    }

    /// The measures it is worked out from.
    #[must_use]
    pub fn sources(&self) -> Vec<&'static Self> {
        match self.found {
            Found::Read => Vec::new(),
            Found::WorkedOut { from, .. } => from.to_vec(),
            Found::Difference { of, less } => vec![of, less],
            Found::Spread { of, .. } => vec![of],
        }
    }
}
