//! A position on the map of an engine.

use std::fmt;

use super::region::Region;
use crate::engine::Engine;
use crate::measure::{
    BELLHOUSING_RUN_OUT, BELT_DEFLECTION, CONVERTER_GAP, CRANK_END_PLAY, DAMPER_HUB_INTERFERENCE,
    DAMPER_MARK, DISTRIBUTOR_FLOAT, FLYWHEEL_RUN_OUT, Measure, OIL_PRESSURE, PICKUP_TO_PAN,
    PUMP_COVER_WEAR, PUMP_DRIVE_FLOAT, PUMP_END_CLEARANCE, PUMP_GEAR_TO_BODY, PUMP_TIP_CLEARANCE,
    TIMING_CHAIN_SLACK, TIMING_GEAR_BACKLASH, TURNING_EFFORT,
};
use crate::place::{At, ValveSide};

/// A position on the map: a part that measures go by, or that part of the
/// engine where something is that is there once.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Part {
    /// The crank as it lies in its bearings.
    Crank,
    /// What sits on the nose of the crank.
    Nose,
    /// A part with a number.
    At(At),
    /// What is bolted on behind the rear main.
    Flywheel,
    /// What turns the camshafts.
    Drive,
    /// The oil pump with its pickup and its drive.
    Pump,
    /// What concerns the engine as a whole.
    Whole,
}

/// Where the measures that are taken once on an engine belong; those that are
/// not named concern the whole of it.
static ONCE: &[(Part, &[&Measure])] = &[
    (Part::Crank, &[&CRANK_END_PLAY, &TURNING_EFFORT]),
    (Part::Nose, &[&DAMPER_MARK, &DAMPER_HUB_INTERFERENCE]),
    (
        Part::Flywheel,
        &[&FLYWHEEL_RUN_OUT, &BELLHOUSING_RUN_OUT, &CONVERTER_GAP],
    ),
    (
        Part::Drive,
        &[&TIMING_CHAIN_SLACK, &TIMING_GEAR_BACKLASH, &BELT_DEFLECTION],
    ),
    (
        Part::Pump,
        &[
            &PUMP_END_CLEARANCE,
            &PUMP_GEAR_TO_BODY,
            &PUMP_TIP_CLEARANCE,
            &PUMP_COVER_WEAR,
            &PICKUP_TO_PAN,
            &PUMP_DRIVE_FLOAT,
            &DISTRIBUTOR_FLOAT,
            &OIL_PRESSURE,
        ],
    ),
];

impl Part {
    /// The position of a measure that is taken at this part of the engine.
    #[must_use]
    pub fn of(measure: &Measure, at: At) -> Self {
        if at != At::Engine {
            return Self::At(at);
        }
        let mut once = ONCE.iter();
        once.find(|(_, all)| all.iter().any(|one| one.id == measure.id))
            .map_or(Self::Whole, |(part, _)| *part)
    }

    /// Every position of an engine, region by region.
    #[must_use]
    pub fn all(engine: &Engine) -> Vec<Self> {
        let regions = Region::all(engine).into_iter();
        regions.flat_map(|region| region.parts(engine)).collect()
    }

    /// The region it lies in; `None` when the engine has no such part.
    #[must_use]
    pub fn region(self, engine: &Engine) -> Option<Region> {
        let region = match self {
            Self::Crank | Self::Nose | Self::Flywheel => Region::Crank,
            Self::Drive => Region::Cam,
            Self::Pump | Self::Whole => Region::Pump,
            Self::At(At::Engine) => return None,
            Self::At(at) if !at.exists_on(engine) => return None,
            Self::At(at) => match at {
                At::Cylinder(cylinder) | At::Ring { cylinder, .. } => {
                    Region::Bores(engine.bank_of(cylinder))
                }
                At::Valve { cylinder, .. } => Region::Head(engine.bank_of(cylinder)),
                At::Bank(bank) => Region::Head(bank),
                At::CamBearing { .. } | At::Camshaft(_) => Region::Cam,
                At::Main(_) | At::Crankpin(_) | At::Rod(_) | At::Engine => Region::Crank,
            },
        };
        Some(region)
    }

    /// Stable name, for an address: `main-3`, `valve-2-intake-1`.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Crank => "crank".to_owned(),
            Self::Nose => "nose".to_owned(),
            Self::Flywheel => "flywheel".to_owned(),
            Self::Drive => "cam-drive".to_owned(),
            Self::Pump => "pump".to_owned(),
            Self::Whole | Self::At(At::Engine) => "engine".to_owned(),
            Self::At(at) => match at {
                At::Main(number) => format!("main-{number}"),
                At::Crankpin(number) => format!("crankpin-{number}"),
                At::Rod(number) => format!("rod-{number}"),
                At::Cylinder(number) => format!("cylinder-{number}"),
                At::Ring { cylinder, ring } => format!("ring-{cylinder}-{}", ring.id()),
                At::Valve {
                    cylinder,
                    side,
                    number,
                } => format!("valve-{cylinder}-{}-{number}", side.id()),
                At::CamBearing { camshaft, bearing } => format!("cam-bearing-{camshaft}-{bearing}"),
                At::Camshaft(number) => format!("camshaft-{number}"),
                At::Bank(number) => format!("bank-{number}"),
                At::Engine => "engine".to_owned(),
            },
        }
    }

    /// The position of an engine with this stable name.
    #[must_use]
    pub fn with_id(engine: &Engine, id: &str) -> Option<Self> {
        Self::all(engine).into_iter().find(|one| one.id() == id)
    }

    /// Its name where the region around it is named: "Main 3", "Top ring".
    #[must_use]
    pub fn short(self, engine: &Engine) -> String {
        let of_two = |word: &str, number: u8, of: u8| match of {
            1 => word.to_owned(),
            _ => format!("{word} {number}"),
        };
        match self {
            Self::Crank => "Crank".to_owned(),
            Self::Nose => "Nose".to_owned(),
            Self::Flywheel => "Flywheel".to_owned(),
            Self::Drive => "Drive".to_owned(),
            Self::Pump => "Pump".to_owned(),
            Self::Whole | Self::At(At::Engine) => "Engine".to_owned(),
            Self::At(at) => match at {
                At::Main(number) => format!("Main {number}"),
                At::Crankpin(number) => format!("Pin {number}"),
                At::Rod(number) => format!("Rod {number}"),
                At::Cylinder(number) => format!("Bore {number}"),
                At::Ring { ring, .. } => match ring {
                    crate::Ring::Top => "Top ring".to_owned(),
                    crate::Ring::Second => "2nd ring".to_owned(),
                    crate::Ring::Oil => "Oil ring".to_owned(),
                },
                At::Valve { side, number, .. } => {
                    let word = match side {
                        ValveSide::Intake => "Intake",
                        ValveSide::Exhaust => "Exhaust",
                    };
                    of_two(word, number, engine.valves(side))
                }
                At::CamBearing { bearing, .. } => format!("Bearing {bearing}"),
                At::Camshaft(number) => of_two("Shaft", number, engine.camshafts()),
                At::Bank(number) => of_two("Head", number, engine.layout().banks()),
                At::Engine => "Engine".to_owned(),
            },
        }
    }
}

/// Its name in full: "main 3", "cylinder 2, top ring".
impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Crank => f.write_str("the crank in its bearings"),
            Self::Nose => f.write_str("the nose of the crank"),
            Self::Flywheel => f.write_str("the flywheel end"),
            Self::Drive => f.write_str("the camshaft drive"),
            Self::Pump => f.write_str("the oil pump"),
            Self::Whole => f.write_str("the engine as a whole"),
            Self::At(At::Bank(number)) => write!(f, "head and deck, bank {number}"),
            Self::At(at) => at.fmt(f),
        }
    }
}
