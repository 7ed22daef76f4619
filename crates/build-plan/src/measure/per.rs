//! On which parts of an engine something is measured, checked or done.

use crate::engine::Engine;
use crate::place::{At, Ring, ValveSide};

/// The parts of an engine that are gone through one by one.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
#[non_exhaustive]
pub enum Per {
    /// The engine, once.
    Engine,
    /// Each main bearing.
    Main,
    /// Each crankpin.
    Crankpin,
    /// Each rod.
    Rod,
    /// Each cylinder.
    Cylinder,
    /// Each ring of each piston.
    Ring,
    /// Each valve.
    Valve,
    /// Each intake valve.
    IntakeValve,
    /// Each exhaust valve.
    ExhaustValve,
    /// Each bearing of each camshaft.
    CamBearing,
    /// Each camshaft.
    Camshaft,
    /// Each bank with its deck and head.
    Bank,
}

impl Per {
    /// All of them, with their stable names.
    pub const ALL: &'static [(Self, &'static str)] = &[
        (Self::Engine, "engine"),
        (Self::Main, "main"),
        (Self::Crankpin, "crankpin"),
        (Self::Rod, "rod"),
        (Self::Cylinder, "cylinder"),
        (Self::Ring, "ring"),
        (Self::Valve, "valve"),
        (Self::IntakeValve, "intake-valve"),
        (Self::ExhaustValve, "exhaust-valve"),
        (Self::CamBearing, "cam-bearing"),
        (Self::Camshaft, "camshaft"),
        (Self::Bank, "bank"),
    ];

    /// The one with this stable name.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        let mut all = Self::ALL.iter();
        all.find_map(|(per, name)| (*name == id).then_some(*per))
    }

    /// The parts an engine has, in the order they are gone through.
    #[must_use]
    pub fn parts(self, engine: &Engine) -> Vec<At> {
        let upto = |last: u8, at: fn(u8) -> At| (1..=last).map(at).collect();
        match self {
            Self::Engine => vec![At::Engine],
            Self::Main => upto(engine.number_of_mains(), At::Main),
            Self::Crankpin => upto(engine.layout().crankpins(engine.cylinders()), At::Crankpin),
            Self::Rod => upto(engine.cylinders(), At::Rod),
            Self::Cylinder => upto(engine.cylinders(), At::Cylinder),
            Self::Ring => (1..=engine.cylinders())
                .flat_map(|cylinder| {
                    Ring::ALL.iter().map(move |ring| At::Ring {
                        cylinder,
                        ring: *ring,
                    })
                })
                .collect(),
            Self::Valve => valves(engine, ValveSide::ALL),
            Self::IntakeValve => valves(engine, &[ValveSide::Intake]),
            Self::ExhaustValve => valves(engine, &[ValveSide::Exhaust]),
            Self::CamBearing => (1..=engine.camshafts())
                .flat_map(|camshaft| {
                    (1..=engine.cam_bearings())
                        .map(move |bearing| At::CamBearing { camshaft, bearing })
                })
                .collect(),
            Self::Camshaft => upto(engine.camshafts(), At::Camshaft),
            Self::Bank => upto(engine.layout().banks(), At::Bank),
        }
    }

    /// Whether a part is one of these, whichever engine it is on.
    #[must_use]
    pub const fn includes(self, at: At) -> bool {
        matches!(
            (self, at),
            (Self::Engine, At::Engine)
                | (Self::Main, At::Main(_))
                | (Self::Crankpin, At::Crankpin(_))
                | (Self::Rod, At::Rod(_))
                | (Self::Cylinder, At::Cylinder(_))
                | (Self::Ring, At::Ring { .. })
                | (Self::Valve, At::Valve { .. })
                | (
                    Self::IntakeValve,
                    At::Valve {
                        side: ValveSide::Intake,
                        ..
                    }
                )
                | (
                    Self::ExhaustValve,
                    At::Valve {
                        side: ValveSide::Exhaust,
                        ..
                    }
                )
                | (Self::CamBearing, At::CamBearing { .. })
                | (Self::Camshaft, At::Camshaft(_))
                | (Self::Bank, At::Bank(_))
        )
    }
}

fn valves(engine: &Engine, sides: &[ValveSide]) -> Vec<At> {
    let mut valves = Vec::new();
    for cylinder in 1..=engine.cylinders() {
        for side in sides {
            for number in 1..=engine.valves(*side) {
                valves.push(At::Valve {
                    cylinder,
                    side: *side,
                    number,
                });
            }
        }
    }
    valves
}
