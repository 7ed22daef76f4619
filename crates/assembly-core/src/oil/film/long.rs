//! The bearing so long that nothing leaves at its edges: Sommerfeld's case with
//! Reynolds' end of the film.

use std::f64::consts::PI;

use super::field::{Figures, journal_friction};
use super::grid::film_integrals;

/// Meshes for the load: Simpson's rule on a smooth curve.
const MESHES: u32 = 2000;

/// The figures of a long bearing fed at the widest film.
///
/// The place where the film breaks is that where the pressure, worked out in
/// closed form, comes back to nothing.
#[must_use]
pub fn long_bearing(eccentricity: f64) -> Figures {
    let e = eccentricity.clamp(1e-6, 0.9999);
    let film = |angle: f64| 1.0 + e * libm::cos(angle);
    let pressure = |angle: f64, flow: f64| {
        let (second, third) = film_integrals(angle, e);
        second - flow * third
    };
    // The end lies in the opening half and the pressure there changes its sign once.
    let (mut low, mut high) = (PI, 2.0 * PI);
    for _ in 0..80 {
        let middle = f64::midpoint(low, high);
        if pressure(middle, film(middle)) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    let end = f64::midpoint(low, high);
    let flow = film(end);
    let step = end / f64::from(MESHES);
    let (mut towards, mut across, mut top) = (0.0, 0.0, 0.0_f64);
    for at in 0..=MESHES {
        let weight = match at {
            0 | MESHES => 1.0,
            odd if odd % 2 == 1 => 4.0,
            _ => 2.0,
        };
        let angle = step * f64::from(at);
        let here = pressure(angle, flow);
        towards -= weight * here * libm::cos(angle);
        across += weight * here * libm::sin(angle);
        top = top.max(here);
    }
    // The peak lies where the film is as thick as where it breaks.
    top = top.max(pressure(2.0 * PI - end, flow));
    let load = 0.5 * towards.hypot(across) * step / 3.0;
    let sommerfeld = 1.0 / (12.0 * PI * load);
    let attitude = libm::atan2(across, towards);
    Figures {
        sommerfeld,
        attitude,
        friction: journal_friction(sommerfeld, e, attitude),
        inflow: PI * flow,
        side_share: 0.0,
        mean_over_peak: load / top,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // A. A. Raimondi and J. Boyd, Trans. ASLE 1 (1958), table for L/D infinite:
    // eccentricity 0.1: S 0.240, φ 69.10°, friction 4.80, flow 3.03.
    #[test]
    fn a_printed_line_of_the_long_bearing() {
        let got = long_bearing(0.1);
        assert!((got.sommerfeld / 0.240 - 1.0).abs() < 0.01, "{got:?}");
        assert!(
            (got.attitude.to_degrees() / 69.10 - 1.0).abs() < 0.01,
            "{got:?}"
        );
        assert!((got.friction / 4.80 - 1.0).abs() < 0.01, "{got:?}");
        assert!((got.inflow / 3.03 - 1.0).abs() < 0.01, "{got:?}");
    }
}
