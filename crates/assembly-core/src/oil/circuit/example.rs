//! An invented engine for tests and benches: five mains, eight cylinders.

use std::f64::consts::PI;

use super::balance::{BearingLoads, Circuit, Filter};
use super::gallery::Gallery;
use super::layout::{BearingRow, Layout, Leaks};
use super::leak::Entry;
use super::pump::{Pump, Relief};
use crate::measure::{Estimate, Origin, Sources};
use crate::oil::film::load::Cylinder;
use crate::oil::viscosity::Lubricant;

const INCH: f64 = 0.0254;

/// Five mains at 2.2 thou and eight rods at 2.0, each to two tenths.
#[must_use]
pub fn five_main_layout(sources: &mut Sources) -> Layout {
    let mut row = |count: usize, thou: f64| {
        (0..count)
            .map(|_| {
                let feel = sources.fresh("feel", Origin::Repeat);
                Some(Estimate::exact(thou * 1e-3 * INCH).with(feel, 0.2e-3 * INCH))
            })
            .collect()
    };
    Layout {
        mains: BearingRow {
            diameter: 2.45 * INCH,
            length: 0.82 * INCH,
            entry: Entry::HalfGroove(0.13 * INCH),
            clearances: row(5, 2.2),
        },
        rods: BearingRow {
            diameter: 2.1 * INCH,
            length: 0.80 * INCH,
            entry: Entry::Hole(0.22 * INCH),
            clearances: row(8, 2.0),
        },
        stroke: 3.5 * INCH,
        cam_bearings: 5,
        lifters: 16,
        rockers: 16,
        squirters: (0, 0.0),
    }
}

/// The engine with a 10W-30 by its sheet; `None` only should that make no oil.
#[must_use]
pub fn five_main_circuit(layout: &Layout, sources: &mut Sources) -> Option<Circuit> {
    let oil = Lubricant::of_sheet(70.0, 10.5).ok()?;
    Some(Circuit {
        oil,
        viscosity_doubt: 0.05,
        filter: Filter::taking(2e4, 5e-4, 0.01, 8e4),
        gallery: Gallery {
            diameter: 0.012,
            length: 0.6,
        },
        leaks: Leaks::of(layout, sources),
        loads: BearingLoads::Cylinder(Cylinder {
            bore: 4.0 * INCH,
            stroke: 3.5 * INCH,
            rod: 5.7 * INCH,
            going_up_and_down: 0.75,
            going_round: 0.45,
            ratio: 9.5,
            peak_gas: None,
            intake: 1e5,
        }),
    })
}

/// Its pump: driven by the cam, relief at 55 psi.
#[must_use]
pub fn standard_pump() -> Pump {
    Pump {
        name: "standard".to_owned(),
        displacement: 18e-6,
        drive_ratio: 0.5,
        slip: 0.0,
        relief: Relief::usual(55.0 * 6895.0, 5e-4),
    }
    .with_efficiency(0.8, 2000.0 * PI / 30.0, 3e5, 0.01)
}
