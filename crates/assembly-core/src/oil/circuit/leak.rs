//! How much oil a clearance lets through under pressure.
//!
//! Each is laminar, so that flow is pressure by viscosity times something that
//! the parts alone decide: the conductance, m³. It goes with the cube of the
//! clearance, which is why a bearing half a thou looser leaks twice as much.

use std::f64::consts::PI;

use super::eccentricity::Place;

/// By how much more a gap round a shaft leaks when the shaft lies to one side
/// (J. F. Blackburn, G. Reethof and J. L. Shearer, Fluid Power Control, 1960).
#[must_use]
pub fn eccentric_gain(eccentricity: f64) -> f64 {
    1.0 + 1.5 * eccentricity * eccentricity
}

/// Flow along the gap round a shaft: `π·d·c³·p·(1 + 1.5·ε²)/(12·µ·L)`, with the
/// radial clearance c (the same). SI units.
#[must_use]
pub fn ring_gap_flow(
    diameter: f64,
    radial: f64,
    length: f64,
    eccentricity: f64,
    pressure: f64,
    viscosity: f64,
) -> f64 {
    ring_gap(diameter, radial, length) * eccentric_gain(eccentricity) * pressure / viscosity
}

/// Conductance of the gap round a shaft in the middle, m³.
#[must_use]
pub fn ring_gap(diameter: f64, radial: f64, length: f64) -> f64 {
    PI * diameter * radial.powi(3) / (12.0 * length)
}

/// How oil gets into a bearing.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Entry {
    /// A groove all round in the middle, this wide.
    FullGroove(f64),
    /// A groove in the half that carries less, this wide.
    HalfGroove(f64),
    /// A hole of this diameter.
    Hole(f64),
}

/// A bearing that leaks, metres.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LeakingBearing {
    /// Journal diameter.
    pub diameter: f64,
    /// Length of the shell.
    pub length: f64,
    /// Clearance on the diameter.
    pub clearance: f64,
    /// How oil gets in.
    pub entry: Entry,
}

impl LeakingBearing {
    /// Conductance of the bearing with its journal in the middle, m³: both lands.
    ///
    /// Full groove: the gap of two lands. Half groove: half of that. Hole: F. A.
    /// Martin's feed rate of a hole, `0.675·c³·(d/L + 0.4)^1.75` (Proc. Inst. Mech.
    /// Eng., feed of steadily loaded bearings; from memory).
    #[must_use]
    pub fn centred(&self) -> f64 {
        let radial = 0.5 * self.clearance;
        let lands = |groove: f64| {
            let land = (0.5 * (self.length - groove)).max(0.1 * self.length);
            2.0 * ring_gap(self.diameter, radial, land)
        };
        match self.entry {
            Entry::FullGroove(width) => lands(width),
            Entry::HalfGroove(width) => 0.5 * lands(width),
            Entry::Hole(hole) => {
                0.675 * radial.powi(3) * libm::pow((hole / self.length).min(1.0) + 0.4, 1.75)
            }
        }
    }

    /// By how much more it leaks when the journal is off the middle by this part of
    /// the clearance with the load at an angle from the least film.
    ///
    /// The mean of the film cubed over what feeds: all round, or over the half
    /// opposite the load, where the film is the wide one. A hole in a turning pin
    /// comes past all of it.
    #[must_use]
    pub fn gain(&self, place: &Place) -> f64 {
        let e = place.eccentricity;
        match self.entry {
            Entry::FullGroove(_) | Entry::Hole(_) => eccentric_gain(e),
            Entry::HalfGroove(_) => {
                let (one, three) = place.cosines;
                eccentric_gain(e)
                    + 6.0 * e / PI * one
                    + e.powi(3) * (1.5 / PI * one - three / (6.0 * PI))
            }
        }
    }
}

/// Oil that the turning journal drags out of the ends of its film, m³/s:
/// `q·R·c·N·L`, with the figure q of Reynolds' equation at the place where it
/// runs, N in turns a second and the radial clearance c. SI units.
///
/// It leaves where the film carries, and what the pump pushes leaves where it does
/// not, so the two add up: the total flow of a bearing fed under pressure in ISO
/// 7902-1 (from memory). The films of two lands give their oil back into the
/// groove between them at one of their two edges. A film that is not fed full
/// drags less out: this is the most, and errs to too low a pressure.
#[must_use]
pub fn dragged_out(bearing: &LeakingBearing, place: &Place, turns: f64, land: f64) -> f64 {
    let radius_by_gap = 0.25 * bearing.diameter * bearing.clearance;
    place.dragged * radius_by_gap * turns * land
}

/// The pressure that a turning crank adds on the way out to a rod, Pa: oil goes
/// from the main journal's surface to the pin's hole, further from the axis.
#[must_use]
pub fn centrifugal_head(density: f64, speed: f64, from_radius: f64, to_radius: f64) -> f64 {
    0.5 * density * speed * speed * (to_radius * to_radius - from_radius * from_radius)
}

/// The pressure at the main below which the oil does not get to the axis of a
/// cross-drilled journal against the turning, Pa.
#[must_use]
pub fn pressure_to_reach_axis(density: f64, speed: f64, journal_radius: f64) -> f64 {
    0.5 * density * speed * speed * journal_radius * journal_radius
}

/// Flow of an orifice or nozzle, m³/s: `0.62·A·√(2p/ρ)`; common practice.
#[must_use]
pub fn orifice_flow(diameter: f64, pressure: f64, density: f64) -> f64 {
    0.62 * 0.25 * PI * diameter * diameter * (2.0 * pressure.max(0.0) / density).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn main_bearing(clearance_thou: f64, entry: Entry) -> LeakingBearing {
        LeakingBearing {
            diameter: 2.45 * 0.0254,
            length: 0.8 * 0.0254,
            clearance: clearance_thou * 0.0254e-3,
            entry,
        }
    }

    // Common practice: from 2.0 to 2.5 thou the leak is 1.95 times as great, to 3.0
    // it is 3.4 times.
    #[test]
    fn the_leak_goes_with_the_cube() {
        for entry in [
            Entry::FullGroove(0.005),
            Entry::HalfGroove(0.005),
            Entry::Hole(0.006),
        ] {
            let leak = |clearance: f64| main_bearing(clearance, entry).centred();
            assert!((leak(2.5) / leak(2.0) - 1.953_125).abs() < 1e-9);
            assert!((leak(3.0) / leak(2.0) - 3.375).abs() < 1e-9);
        }
    }

    // The mean of (1 + ε·cos θ)³ over the half round, by summing.
    #[test]
    fn the_half_grooves_gain_is_the_mean_of_the_film_cubed() {
        let bearing = main_bearing(2.0, Entry::HalfGroove(0.005));
        for (e, attitude) in [(0.0, 1.0), (0.6, 0.0), (0.8, 0.9)] {
            let steps = 20_000;
            let mean = (0..steps)
                .map(|at| {
                    let angle = attitude - 0.5 * PI + PI * (f64::from(at) + 0.5) / f64::from(steps);
                    (1.0 + e * angle.cos()).powi(3)
                })
                .sum::<f64>()
                / f64::from(steps);
            assert!(
                (bearing.gain(&Place::at(e, attitude)) - mean).abs() < 1e-6,
                "{e} {attitude}"
            );
        }
    }

    #[test]
    fn a_hole_leaks_less_than_a_groove_and_the_crank_pumps() {
        let groove = main_bearing(2.0, Entry::FullGroove(0.005)).centred();
        let hole = main_bearing(2.0, Entry::Hole(0.006)).centred();
        assert!(hole < 0.5 * groove && hole > 0.01 * groove);
        // 6000 turns a minute from 31 mm to 60 mm: about four bar.
        let head = centrifugal_head(830.0, 628.3, 0.031, 0.060);
        assert!((4.2e5..4.5e5).contains(&head), "{head}");
        assert_eq!(orifice_flow(0.002, -1.0, 830.0), 0.0);
    }
}
