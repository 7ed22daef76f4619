//! What is taken where nobody knows better: filter, gallery, loads and slip as is
//! common practice, from memory. The quick check and the build's chart share it.

use std::f64::consts::PI;

use super::balance::{BearingLoads, Filter};
use super::gallery::Gallery;
use super::layout::{BearingRow, Layout};
use super::pump::{Pump, Relief};

/// The pressure over a filter at which it is gone round, Pa.
pub const BYPASS_AT: f64 = 8e4;

/// Mean pressure that bearings of an engine run under, Pa.
pub const MEAN_PRESSURE: f64 = 2.5e6;

/// A pump in order still delivers this part of what it sweeps at 2000 turns of the
/// crank against three bar with oil of 10 mPa·s.
const DELIVERS: f64 = 0.8;

/// A clean filter that is gone round at a pressure, Pa.
#[must_use]
pub fn filter(bypass_at: f64) -> Filter {
    Filter::taking(2e4, 5e-4, 0.01, bypass_at)
}

/// The gallery from filter to gauge.
pub const GALLERY: Gallery = Gallery {
    diameter: 0.012,
    length: 0.6,
};

/// The mean load on a bearing of a row, N.
#[must_use]
pub fn load(row: &BearingRow) -> f64 {
    MEAN_PRESSURE * row.diameter * row.length
}

/// The mean loads on mains and rods.
#[must_use]
pub fn loads(layout: &Layout) -> BearingLoads {
    BearingLoads::Steady(load(&layout.mains), load(&layout.rods))
}

/// A pump in order, by its volume a turn (m³), its turns by a turn of the crank, and
/// the pressure at which its relief opens (Pa).
#[must_use]
pub fn pump(name: &str, displacement: f64, drive_ratio: f64, opens_at: f64) -> Pump {
    let speed = 2000.0 * PI / 30.0;
    let swept = displacement * drive_ratio * speed / (2.0 * PI);
    Pump {
        name: name.to_owned(),
        displacement,
        drive_ratio,
        slip: 0.0,
        relief: Relief::usual(opens_at, 2.0 * swept),
    }
    .with_efficiency(DELIVERS, speed, 3e5, 0.01)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_pump_delivers_four_fifths_where_it_is_said_to() {
        let pump = pump("standard", 18e-6, 0.5, 4e5);
        let speed = 2000.0 * PI / 30.0;
        let part = pump.flow(speed, 3e5, 0.01) / pump.flow(speed, 0.0, 0.01);
        assert!((part - DELIVERS).abs() < 1e-12);
        // Twice of what it sweeps there goes through the relief at a tenth more.
        let swept = pump.flow(speed, 0.0, 0.01);
        assert!((pump.relief.flow(4.4e5) / (2.0 * swept) - 1.0).abs() < 1e-9);
    }
}
