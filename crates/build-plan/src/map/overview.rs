//! The whole engine on one sheet: crank, bores and heads as they lie seen from
//! above, front at the top; camshafts and pump below them, front at the left.

use assembly_core::quantity::Si;

use super::part::Part;
use super::region::{Region, cylinders};
use super::sheet::{Frame, SHEET_WIDTH, Spot};
use crate::engine::{CrankStop, Engine, Layout};
use crate::place::{At, Ring, ValveSide};

/// Room for the name of a region.
const TITLE: f64 = 26.0;
/// Between regions.
const GAP: f64 = 4.0;
/// As high as what lies along the crank may be, so that a phone shows all of it.
const HIGH: f64 = 372.0;
/// From stop to stop along the crank: not so near that marks touch, nor so far
/// that a short crank looks like a long one.
const LEAST_PITCH: f64 = 16.0;
const MOST_PITCH: f64 = 52.0;
/// What a cylinder needs along the crank with its rings beside it, and below it.
const ROW_BESIDE: f64 = 24.0;
const ROW_BELOW: f64 = 42.0;
/// A region is not smaller than a thumb in a glove.
const THUMB: f64 = 62.0;
/// From camshaft to camshaft.
const SHAFT_PITCH: f64 = 20.0;

/// A region as it is drawn.
#[derive(Clone, PartialEq, Debug)]
pub struct Drawn {
    /// Which.
    pub region: Region,
    /// All of it.
    pub frame: Frame,
    /// Its parts, front to rear.
    pub spots: Vec<Spot>,
}

/// The whole engine.
#[derive(Clone, PartialEq, Debug)]
pub struct Overview {
    /// How high the sheet is.
    pub height: f64,
    /// The regions, in the order of the job.
    pub regions: Vec<Drawn>,
    /// The axis of the crank: from the left edge, from where, down to where.
    pub axis: (f64, f64, f64),
    /// Room for the engine seen from the flywheel.
    pub end_view: Frame,
}

/// How far each bank leans over to the right, in degrees, seen from the flywheel:
/// the first lies at the left, as it does from above with the front at the top.
#[must_use]
pub fn leaning(engine: &Engine) -> Vec<(u8, f64)> {
    let half = match engine.layout() {
        Layout::Inline => return vec![(1, 0.0)],
        Layout::Vee { bank_angle } => bank_angle.to_si().to_degrees() / 2.0,
        Layout::Flat => 90.0,
    };
    vec![(1, -half), (2, half)]
}

/// Where the columns lie, and how the rows follow each other.
struct Rows<'a> {
    engine: &'a Engine,
    /// The bearings along the crank.
    line: Vec<CrankStop>,
    pitch: f64,
    two_banks: bool,
}

/// The whole engine on one sheet.
#[must_use]
pub fn overview(engine: &Engine) -> Overview {
    let rows = Rows::of(engine);
    let mut regions: Vec<Drawn> = Region::all(engine)
        .into_iter()
        .filter_map(|region| rows.column(region))
        .collect();
    let mut y = rows.bottom() + 2.0 * GAP;
    let cam = cam(engine, y);
    y += cam.frame.height + 2.0 * GAP;
    let pump = pump(y);
    let height = y + pump.frame.height;
    let right = pump.frame.x + pump.frame.width + GAP;
    let end_view = Frame {
        x: right,
        y,
        width: SHEET_WIDTH - right,
        height: pump.frame.height,
    };
    regions.extend([cam, pump]);
    Overview {
        height,
        regions,
        axis: (rows.axis(), rows.y(0), rows.y(rows.line.len() + 1)),
        end_view,
    }
}

impl<'a> Rows<'a> {
    fn of(engine: &'a Engine) -> Self {
        let line = engine.crank_line();
        let two_banks = engine.layout().banks() == 2;
        let mut rows = Self {
            engine,
            line,
            pitch: 1.0,
            two_banks,
        };
        let nearest = rows.nearest_bores().unwrap_or(1.0);
        let needed = if two_banks { ROW_BELOW } else { ROW_BESIDE } / nearest;
        // One row more at each end, for the nose and the flywheel.
        let high = HIGH / (count(rows.line.len()) + 2.0);
        rows.pitch = high.clamp(LEAST_PITCH, MOST_PITCH).max(needed);
        rows
    }

    /// The middle of a row; the nose is row 0.
    fn y(&self, row: usize) -> f64 {
        TITLE + (count(row) + 0.5) * self.pitch
    }

    fn bottom(&self) -> f64 {
        TITLE + (count(self.line.len()) + 2.0) * self.pitch
    }

    /// The middle of the row of a cylinder: its rod's crankpin.
    fn y_of(&self, cylinder: u8) -> f64 {
        let pin = CrankStop::Crankpin(self.engine.crankpin_of(cylinder));
        let row = self.line.iter().position(|stop| *stop == pin);
        self.y(row.unwrap_or(0) + 1)
    }

    /// How far the nearest two cylinders of a bank are from each other.
    fn nearest_bores(&self) -> Option<f64> {
        (1..=self.engine.layout().banks())
            .flat_map(|bank| {
                let all = cylinders(self.engine, bank);
                let ys: Vec<f64> = all.into_iter().map(|one| self.y_of(one)).collect();
                let steps = ys.iter().zip(ys.iter().skip(1)).map(|(a, b)| b - a);
                steps.collect::<Vec<f64>>()
            })
            .min_by(f64::total_cmp)
    }

    /// The left edge and the width of a region's column.
    fn across(&self, region: Region) -> Option<(f64, f64)> {
        let column = match (self.two_banks, region) {
            (false, Region::Crank) => (0.0, 112.0),
            (false, Region::Bores(_)) => (116.0, 102.0),
            (false, Region::Head(_)) => (222.0, 102.0),
            (true, Region::Head(1)) => (0.0, 61.0),
            (true, Region::Bores(1)) => (65.0, 61.0),
            (true, Region::Crank) => (130.0, 64.0),
            (true, Region::Bores(_)) => (198.0, 61.0),
            (true, Region::Head(_)) => (263.0, 61.0),
            (_, Region::Cam | Region::Pump) => return None,
        };
        Some(column)
    }

    fn axis(&self) -> f64 {
        if self.two_banks { 162.0 } else { 36.0 }
    }

    fn column(&self, region: Region) -> Option<Drawn> {
        let (x, width) = self.across(region)?;
        let frame = Frame {
            x,
            y: 0.0,
            width,
            height: self.bottom(),
        };
        let spots = match region {
            Region::Crank => self.crank(),
            Region::Bores(bank) => (cylinders(self.engine, bank).into_iter())
                .flat_map(|cylinder| self.bore(cylinder, frame))
                .collect(),
            Region::Head(bank) => {
                let head = Spot {
                    part: Part::At(At::Bank(bank)),
                    frame: Frame::around((x + width / 2.0, self.y(0)), self.size(20.0)),
                };
                let valves = cylinders(self.engine, bank)
                    .into_iter()
                    .flat_map(|cylinder| self.valves(cylinder, frame));
                std::iter::once(head).chain(valves).collect()
            }
            Region::Cam | Region::Pump => return None,
        };
        Some(Drawn {
            region,
            frame,
            spots,
        })
    }

    /// A mark that leaves room to the next row.
    fn size(&self, most: f64) -> f64 {
        most.min(self.pitch - 1.0)
    }

    fn crank(&self) -> Vec<Spot> {
        let (axis, rod) = (self.axis(), if self.two_banks { 21.0 } else { 44.0 });
        let spot = |part, x, row, most| Spot {
            part,
            frame: Frame::around((x, self.y(row)), self.size(most)),
        };
        let mut spots = vec![
            spot(Part::Crank, axis + rod, 0, 20.0),
            spot(Part::Nose, axis, 0, 20.0),
        ];
        for (row, stop) in self.line.iter().enumerate() {
            let row = row + 1;
            match *stop {
                CrankStop::Main(main) => {
                    let part = Part::At(At::Main(main.number()));
                    spots.push(spot(part, axis, row, 28.0));
                }
                CrankStop::Crankpin(pin) => {
                    spots.push(spot(Part::At(At::Crankpin(pin)), axis, row, 20.0));
                    let rods = self.engine.on_crankpin(pin).into_iter();
                    spots.extend(rods.map(|cylinder| {
                        let left = self.two_banks && self.engine.bank_of(cylinder) == 1;
                        let x = if left { axis - rod } else { axis + rod };
                        spot(Part::At(At::Rod(cylinder)), x, row, 20.0)
                    }));
                }
            }
        }
        spots.push(spot(Part::Flywheel, axis, self.line.len() + 1, 20.0));
        spots
    }

    /// A bore with its three rings, beside it or below it.
    fn bore(&self, cylinder: u8, column: Frame) -> Vec<Spot> {
        let y = self.y_of(cylinder);
        let left = column.x + 3.0;
        let ring_size = 16.0;
        let (bore, ring_x, ring_y) = if self.two_banks {
            let bore = (column.x + column.width / 2.0, y - 10.0);
            (bore, left + ring_size / 2.0, y + 11.0)
        } else {
            ((left + 13.0, y), left + 40.0, y)
        };
        let mut spots = vec![Spot {
            part: Part::At(At::Cylinder(cylinder)),
            frame: Frame::around(bore, if self.two_banks { 22.0 } else { 23.0 }),
        }];
        spots.extend(Ring::ALL.iter().enumerate().map(|(nth, ring)| {
            let ring = At::Ring {
                cylinder,
                ring: *ring,
            };
            Spot {
                part: Part::At(ring),
                frame: Frame::around((ring_x + count(nth) * 19.0, ring_y), ring_size),
            }
        }));
        spots
    }

    /// The valves of a cylinder: intake beside exhaust, or above it.
    fn valves(&self, cylinder: u8, column: Frame) -> Vec<Spot> {
        let y = self.y_of(cylinder);
        let middle = column.x + column.width / 2.0;
        let row = |side: ValveSide, x: f64, y: f64, pitch: f64| {
            let valves = 1..=self.engine.valves(side);
            valves.map(move |number| Spot {
                part: Part::At(At::Valve {
                    cylinder,
                    side,
                    number,
                }),
                frame: Frame::around((x + (f64::from(number) - 1.0) * pitch, y), pitch - 2.0),
            })
        };
        let number = |side| f64::from(self.engine.valves(side));
        let (intake, exhaust) = (number(ValveSide::Intake), number(ValveSide::Exhaust));
        if self.two_banks {
            let pitch = 20.0;
            let from = |number: f64| middle - (number - 1.0) * pitch / 2.0;
            row(ValveSide::Intake, from(intake), y - 10.0, pitch)
                .chain(row(ValveSide::Exhaust, from(exhaust), y + 10.0, pitch))
                .collect()
        } else {
            let pitch = ((column.width - 4.0) / (intake + exhaust)).min(24.0);
            let from = middle - (intake + exhaust - 1.0) * pitch / 2.0;
            row(ValveSide::Intake, from, y, pitch)
                .chain(row(ValveSide::Exhaust, from + intake * pitch, y, pitch))
                .collect()
        }
    }
}

/// The camshafts, one below the other, front at the left.
fn cam(engine: &Engine, y: f64) -> Drawn {
    let shafts = f64::from(engine.camshafts());
    let height = (TITLE + shafts * SHAFT_PITCH + GAP).max(THUMB);
    let middle = TITLE + (height - TITLE - GAP) / 2.0;
    let mut spots = vec![Spot {
        part: Part::Drive,
        frame: Frame::around((15.0, y + middle), 18.0),
    }];
    let first = 64.0;
    let pitch = ((SHEET_WIDTH - GAP - first) / f64::from(engine.cam_bearings())).min(32.0);
    for camshaft in 1..=engine.camshafts() {
        let along = f64::from(camshaft) - 1.0 - (shafts - 1.0) / 2.0;
        let y = y + middle + along * SHAFT_PITCH;
        spots.push(Spot {
            part: Part::At(At::Camshaft(camshaft)),
            frame: Frame::around((42.0, y), 18.0),
        });
        let bearings = 1..=engine.cam_bearings();
        spots.extend(bearings.map(|bearing| Spot {
            part: Part::At(At::CamBearing { camshaft, bearing }),
            frame: Frame::around(
                (first + (f64::from(bearing) - 0.5) * pitch, y),
                (pitch - 1.0).min(18.0),
            ),
        }));
    }
    Drawn {
        region: Region::Cam,
        frame: Frame {
            x: 0.0,
            y,
            width: SHEET_WIDTH,
            height,
        },
        spots,
    }
}

fn pump(y: f64) -> Drawn {
    let spot = |part, x| Spot {
        part,
        frame: Frame::around((x, y + 44.0), 24.0),
    };
    Drawn {
        region: Region::Pump,
        frame: Frame {
            x: 0.0,
            y,
            width: 160.0,
            height: THUMB,
        },
        spots: vec![spot(Part::Pump, 40.0), spot(Part::Whole, 110.0)],
    }
}

/// As many parts as an engine has, as a distance.
fn count(number: usize) -> f64 {
    u16::try_from(number).map_or(f64::from(u16::MAX), f64::from)
}
