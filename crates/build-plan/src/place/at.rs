//! The part of an engine that a place lies on, and how parts belong together.

use std::fmt;

use super::parts::{Ring, ValveSide};
use crate::engine::Engine;

/// The part of the engine a place lies on. All numbers count from 1, along the
/// crank from the front; cylinders count as the builder numbers them.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum At {
    /// The engine as a whole.
    Engine,
    /// A main bearing.
    Main(u8),
    /// A crankpin.
    Crankpin(u8),
    /// The rod of a cylinder.
    Rod(u8),
    /// A cylinder with its piston and liner.
    Cylinder(u8),
    /// A ring of a cylinder's piston.
    Ring {
        /// The cylinder.
        cylinder: u8,
        /// Which ring.
        ring: Ring,
    },
    /// A valve with all that goes with it: guide, seat, spring, lifter.
    Valve {
        /// The cylinder.
        cylinder: u8,
        /// Intake or exhaust.
        side: ValveSide,
        /// Which of them, from the front.
        number: u8,
    },
    /// A bearing of a camshaft.
    CamBearing {
        /// The camshaft: bank by bank, intake before exhaust.
        camshaft: u8,
        /// The bearing.
        bearing: u8,
    },
    /// A camshaft.
    Camshaft(u8),
    /// A bank: its deck and its head.
    Bank(u8),
}

impl At {
    /// Whether this engine has such a part.
    #[must_use]
    pub fn exists_on(self, engine: &Engine) -> bool {
        let within = |number: u8, of: u8| (1..=of).contains(&number);
        let cylinder = |number| within(number, engine.cylinders());
        match self {
            Self::Engine => true,
            Self::Main(number) => within(number, engine.number_of_mains()),
            Self::Crankpin(number) => within(number, engine.layout().crankpins(engine.cylinders())),
            Self::Rod(number) | Self::Cylinder(number) => cylinder(number),
            Self::Ring { cylinder: of, .. } => cylinder(of),
            Self::Valve {
                cylinder: of,
                side,
                number,
            } => cylinder(of) && within(number, engine.valves(side)),
            Self::CamBearing { camshaft, bearing } => {
                within(camshaft, engine.camshafts()) && within(bearing, engine.cam_bearings())
            }
            Self::Camshaft(number) => within(number, engine.camshafts()),
            Self::Bank(number) => within(number, engine.layout().banks()),
        }
    }

    /// The cylinder it belongs to, when it belongs to just one.
    #[must_use]
    pub const fn cylinder(self) -> Option<u8> {
        match self {
            Self::Rod(cylinder)
            | Self::Cylinder(cylinder)
            | Self::Ring { cylinder, .. }
            | Self::Valve { cylinder, .. } => Some(cylinder),
            _ => None,
        }
    }

    /// Whether what happens to one part concerns the other: it is the same, it
    /// is a part of it, or the two work together. Parts that nothing narrower
    /// is known of concern each other.
    #[must_use]
    pub fn concerns(self, other: Self, engine: &Engine) -> bool {
        if self == other || self == Self::Engine || other == Self::Engine {
            return true;
        }
        match (self, other) {
            // Neighbours along one crank or camshaft are still apart.
            (Self::Main(a), Self::Main(b))
            | (Self::Crankpin(a), Self::Crankpin(b))
            | (Self::Camshaft(a), Self::Camshaft(b))
            | (Self::Bank(a), Self::Bank(b)) => a == b,
            (
                Self::CamBearing {
                    camshaft: a,
                    bearing: c,
                },
                Self::CamBearing {
                    camshaft: b,
                    bearing: d,
                },
            ) => a == b && c == d,
            (Self::CamBearing { camshaft: a, .. }, Self::Camshaft(b))
            | (Self::Camshaft(b), Self::CamBearing { camshaft: a, .. }) => a == b,
            // Two rings, or two valves, of one cylinder do not concern each other.
            (Self::Ring { .. }, Self::Ring { .. }) | (Self::Valve { .. }, Self::Valve { .. }) => {
                false
            }
            // A ring or a rod has nothing to do with a valve.
            (Self::Ring { .. }, Self::Valve { .. }) | (Self::Valve { .. }, Self::Ring { .. }) => {
                false
            }
            (Self::Crankpin(pin), part) | (part, Self::Crankpin(pin)) => match part.cylinder() {
                Some(cylinder) => engine.crankpin_of(cylinder) == pin,
                None => true,
            },
            (Self::Bank(bank), part) | (part, Self::Bank(bank)) => match part.cylinder() {
                Some(cylinder) => engine.bank_of(cylinder) == bank,
                None => true,
            },
            _ => match (self.cylinder(), other.cylinder()) {
                (Some(a), Some(b)) => a == b,
                _ => true,
            },
        }
    }
}

impl fmt::Display for At {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Engine => f.write_str("the engine"),
            Self::Main(number) => write!(f, "main {number}"),
            Self::Crankpin(number) => write!(f, "crankpin {number}"),
            Self::Rod(number) => write!(f, "rod {number}"),
            Self::Cylinder(number) => write!(f, "cylinder {number}"),
            Self::Ring { cylinder, ring } => write!(f, "cylinder {cylinder}, {ring}"),
            Self::Valve {
                cylinder,
                side,
                number,
            } => write!(f, "cylinder {cylinder}, {side} valve {number}"),
            Self::CamBearing { camshaft, bearing } => {
                write!(f, "camshaft {camshaft}, bearing {bearing}")
            }
            Self::Camshaft(number) => write!(f, "camshaft {number}"),
            Self::Bank(number) => write!(f, "bank {number}"),
        }
    }
}
