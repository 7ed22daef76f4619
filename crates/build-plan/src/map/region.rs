//! The stretches of an engine that are looked at one by one.

use super::part::Part;
use crate::engine::{CrankStop, Engine};
use crate::place::{At, Ring, ValveSide};

/// A stretch of the engine.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Region {
    /// The crank with its mains, its pins and the rods on them.
    Crank,
    /// The bores of a bank, with pistons and rings.
    Bores(u8),
    /// The head of a bank, with its valves.
    Head(u8),
    /// The camshafts and what drives them.
    Cam,
    /// The oil pump, and what concerns the whole engine.
    Pump,
}

impl Region {
    /// The regions of an engine, in the order of the job.
    #[must_use]
    pub fn all(engine: &Engine) -> Vec<Self> {
        let banks = 1..=engine.layout().banks();
        let mut all = vec![Self::Crank];
        all.extend(banks.clone().map(Self::Bores));
        all.extend(banks.map(Self::Head));
        all.extend([Self::Cam, Self::Pump]);
        all
    }

    /// Stable name, for an address: `crank`, `bores-1`.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Crank => "crank".to_owned(),
            Self::Bores(bank) => format!("bores-{bank}"),
            Self::Head(bank) => format!("head-{bank}"),
            Self::Cam => "cam".to_owned(),
            Self::Pump => "pump".to_owned(),
        }
    }

    /// The region of an engine with this stable name.
    #[must_use]
    pub fn with_id(engine: &Engine, id: &str) -> Option<Self> {
        Self::all(engine).into_iter().find(|one| one.id() == id)
    }

    /// Its name on the drawing: banks are counted only where there are two.
    #[must_use]
    pub fn name(self, engine: &Engine) -> String {
        let of = |word: &str, bank: u8| match engine.layout().banks() {
            1 => word.to_owned(),
            _ => format!("{word} {bank}"),
        };
        match self {
            Self::Crank => "Crank".to_owned(),
            Self::Bores(bank) => of("Bores", bank),
            Self::Head(bank) => of("Head", bank),
            Self::Cam if engine.camshafts() == 1 => "Camshaft".to_owned(),
            Self::Cam => "Camshafts".to_owned(),
            Self::Pump => "Oil pump".to_owned(),
        }
    }

    /// Its parts, front to rear.
    #[must_use]
    pub fn parts(self, engine: &Engine) -> Vec<Part> {
        match self {
            Self::Crank => {
                let mut parts = vec![Part::Crank, Part::Nose];
                for stop in engine.crank_line() {
                    match stop {
                        CrankStop::Main(main) => parts.push(Part::At(At::Main(main.number()))),
                        CrankStop::Crankpin(pin) => {
                            parts.push(Part::At(At::Crankpin(pin)));
                            let rods = engine.on_crankpin(pin).into_iter();
                            parts.extend(rods.map(|cylinder| Part::At(At::Rod(cylinder))));
                        }
                    }
                }
                parts.push(Part::Flywheel);
                parts
            }
            Self::Bores(bank) => cylinders(engine, bank)
                .into_iter()
                .flat_map(|cylinder| {
                    let rings = Ring::ALL.iter().map(move |ring| At::Ring {
                        cylinder,
                        ring: *ring,
                    });
                    std::iter::once(At::Cylinder(cylinder)).chain(rings)
                })
                .map(Part::At)
                .collect(),
            Self::Head(bank) => {
                let valves = cylinders(engine, bank)
                    .into_iter()
                    .flat_map(|cylinder| valves(engine, cylinder));
                let head = std::iter::once(At::Bank(bank));
                head.chain(valves).map(Part::At).collect()
            }
            Self::Cam => {
                let mut parts = vec![Part::Drive];
                for camshaft in 1..=engine.camshafts() {
                    parts.push(Part::At(At::Camshaft(camshaft)));
                    let bearings = 1..=engine.cam_bearings();
                    parts.extend(
                        bearings.map(|bearing| Part::At(At::CamBearing { camshaft, bearing })),
                    );
                }
                parts
            }
            Self::Pump => vec![Part::Pump, Part::Whole],
        }
    }
}

/// The cylinders of a bank, front to rear.
pub(super) fn cylinders(engine: &Engine, bank: u8) -> Vec<u8> {
    let mut all: Vec<u8> = (1..=engine.cylinders())
        .filter(|cylinder| engine.bank_of(*cylinder) == bank)
        .collect();
    all.sort_by_key(|cylinder| engine.crankpin_of(*cylinder));
    all
}

/// The valves of a cylinder, intake before exhaust.
fn valves(engine: &Engine, cylinder: u8) -> Vec<At> {
    ValveSide::ALL
        .iter()
        .flat_map(|side| {
            (1..=engine.valves(*side)).map(move |number| At::Valve {
                cylinder,
                side: *side,
                number,
            })
        })
        .collect()
}
