//! One region by itself, each of its parts as large as a thumb in a glove.

use super::part::Part;
use super::region::{Region, cylinders};
use super::sheet::{Frame, SHEET_WIDTH, Spot};
use crate::engine::{CrankStop, Engine};
use crate::place::{At, ValveSide};

/// How high a part is drawn, with its name and its verdict below its mark, and
/// a little room to the next.
const HIGH: f64 = 110.0;
/// How high the name of a group is.
const HEADING: f64 = 30.0;
/// As many parts as there is room for in a row.
const IN_A_ROW: usize = 4;

/// The name of a group of parts.
#[derive(Clone, PartialEq, Debug)]
pub struct Heading {
    /// The words.
    pub words: String,
    /// How far below the upper edge its base line is.
    pub y: f64,
}

/// A region by itself.
#[derive(Clone, PartialEq, Debug)]
pub struct Zoomed {
    /// How high the sheet is.
    pub height: f64,
    /// The parts, front to rear.
    pub spots: Vec<Spot>,
    /// What stands above groups of them.
    pub headings: Vec<Heading>,
}

/// A sheet that is filled row by row.
#[derive(Default)]
struct Filling {
    y: f64,
    spots: Vec<Spot>,
    headings: Vec<Heading>,
}

impl Filling {
    fn heading(&mut self, words: String) {
        let y = self.y + HEADING - 8.0;
        self.headings.push(Heading { words, y });
        self.y += HEADING;
    }

    /// A row of parts, each in one of so many columns.
    fn row(&mut self, columns: u8, parts: impl IntoIterator<Item = (u8, Part)>) {
        let width = SHEET_WIDTH / f64::from(columns);
        let spots = parts.into_iter().map(|(column, part)| Spot {
            part,
            frame: Frame {
                x: f64::from(column) * width,
                y: self.y,
                width,
                height: HIGH,
            },
        });
        self.spots.extend(spots);
        self.y += HIGH;
    }

    /// As many rows as these parts fill.
    fn rows(&mut self, parts: &[Part]) {
        for row in parts.chunks(IN_A_ROW) {
            self.row(4, (0..).zip(row.iter().copied()));
        }
    }

    fn sheet(self) -> Zoomed {
        Zoomed {
            height: self.y,
            spots: self.spots,
            headings: self.headings,
        }
    }
}

/// One region of an engine by itself.
#[must_use]
pub fn zoomed(engine: &Engine, region: Region) -> Zoomed {
    let mut filling = Filling::default();
    match region {
        Region::Crank => crank(engine, &mut filling),
        Region::Bores(bank) => {
            let parts = region.parts(engine);
            for cylinder in cylinders(engine, bank) {
                filling.heading(format!("Cylinder {cylinder}"));
                filling.rows(&of_cylinder(&parts, cylinder));
            }
        }
        Region::Head(bank) => head(engine, bank, &mut filling),
        Region::Cam => {
            filling.row(4, [(0, Part::Drive)]);
            for camshaft in 1..=engine.camshafts() {
                filling.heading(match engine.camshafts() {
                    1 => "Camshaft, front to rear".to_owned(),
                    _ => format!("Camshaft {camshaft}, front to rear"),
                });
                let shaft = std::iter::once(At::Camshaft(camshaft));
                let bearings = 1..=engine.cam_bearings();
                let bearings = bearings.map(|bearing| At::CamBearing { camshaft, bearing });
                let parts: Vec<Part> = shaft.chain(bearings).map(Part::At).collect();
                filling.rows(&parts);
            }
        }
        Region::Pump => filling.row(4, [(0, Part::Pump), (1, Part::Whole)]),
    }
    filling.sheet()
}

fn of_cylinder(parts: &[Part], cylinder: u8) -> Vec<Part> {
    let all = parts.iter().copied();
    all.filter(|part| matches!(part, Part::At(at) if at.cylinder() == Some(cylinder)))
        .collect()
}

/// The crank line down the middle, the rods at the side of their bank.
fn crank(engine: &Engine, filling: &mut Filling) {
    filling.row(3, [(2, Part::Crank), (1, Part::Nose)]);
    for stop in engine.crank_line() {
        match stop {
            CrankStop::Main(main) => {
                filling.row(3, [(1, Part::At(At::Main(main.number())))]);
            }
            CrankStop::Crankpin(pin) => {
                let rods = engine.on_crankpin(pin).into_iter().map(|cylinder| {
                    let left = engine.layout().banks() == 2 && engine.bank_of(cylinder) == 1;
                    (if left { 0 } else { 2 }, Part::At(At::Rod(cylinder)))
                });
                let pin = std::iter::once((1, Part::At(At::Crankpin(pin))));
                filling.row(3, pin.chain(rods));
            }
        }
    }
    filling.row(3, [(1, Part::Flywheel)]);
}

/// The head by itself, then its valves by cylinder.
fn head(engine: &Engine, bank: u8, filling: &mut Filling) {
    filling.row(4, [(0, Part::At(At::Bank(bank)))]);
    let parts = Region::Head(bank).parts(engine);
    for cylinder in cylinders(engine, bank) {
        filling.heading(format!("Valves of cylinder {cylinder}"));
        let valves = of_cylinder(&parts, cylinder);
        if valves.len() <= IN_A_ROW {
            filling.rows(&valves);
            continue;
        }
        for side in ValveSide::ALL {
            let of_side =
                |part: &&Part| matches!(part, Part::At(At::Valve { side: one, .. }) if one == side);
            let row: Vec<Part> = valves.iter().filter(of_side).copied().collect();
            filling.rows(&row);
        }
    }
}
