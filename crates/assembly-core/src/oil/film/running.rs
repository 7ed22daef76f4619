//! A bearing as it runs: its film in metres, newtons and degrees.
//!
//! The heat of friction goes into the oil, whose viscosity is taken at the mean
//! of what it comes in and goes out with. Plain bearing: as by Raimondi and Boyd,
//! half of the side flow leaves half warmed. Bearing with a full groove in its
//! middle under pressure: two bearings of half the length, flushed by the oil
//! that the pressure drives out (Budynas and Nisbett, Shigley's Mechanical
//! Engineering Design, 10th ed., sections 12-9 and 12-12).

use std::f64::consts::PI;

use super::balance::{Care, balance};
use super::field::Figures;
use super::solution::{Film, FilmError};
use crate::oil::viscosity::Lubricant;

/// A journal in its bearing, metres.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Bearing {
    /// Journal diameter.
    pub diameter: f64,
    /// Length of one land that carries: the bearing, or one side of its groove.
    pub land: f64,
    /// Clearance on the diameter.
    pub clearance: f64,
    /// How it is fed.
    pub feed: Feed,
}

/// How oil comes into a bearing.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Feed {
    /// By a hole, so that the rotation has to draw it in.
    Hole,
    /// By a groove all round in the middle, under this pressure, Pa.
    Groove(f64),
}

/// What it has to do.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Duty {
    /// On the whole bearing, newtons.
    pub load: f64,
    /// Radians a second.
    pub speed: f64,
    /// Of the oil that comes in, kelvin.
    pub oil_in: f64,
}

/// The film as it runs. SI units.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct RunningFilm {
    /// In plain numbers.
    pub film: Film,
    /// Viscosity in the film, Pa·s.
    pub viscosity: f64,
    /// Load by projected area, Pa.
    pub mean_pressure: f64,
    /// Highest pressure in the film, Pa.
    pub peak_pressure: f64,
    /// Least film, m.
    pub least_film: f64,
    /// Friction torque on the journal, N·m.
    pub friction_torque: f64,
    /// Heat made, W.
    pub friction_power: f64,
    /// Oil drawn in or flushed through, m³/s.
    pub inflow: f64,
    /// Oil that leaves at the edges, m³/s.
    pub side_flow: f64,
    /// How much warmer the oil goes out, K.
    pub temperature_rise: f64,
    /// Mean temperature in the film, K.
    pub mean_temperature: f64,
}

/// Laminar flow out of a full groove over both lands of a bearing, m³/s:
/// `π·p·r·c³·(1 + 1.5·ε²)/(3·µ·l')` with the radial clearance c.
#[must_use]
pub fn groove_flow(bearing: &Bearing, pressure: f64, viscosity: f64, eccentricity: f64) -> f64 {
    let radial = 0.5 * bearing.clearance;
    PI * pressure * 0.5 * bearing.diameter * radial.powi(3) * (1.0 + 1.5 * eccentricity.powi(2))
        / (3.0 * viscosity * bearing.land)
}

/// The film of a bearing at its duty with this oil.
///
/// # Errors
/// [`FilmError`] names the number that is not positive, or says that no steady
/// film carries the load.
pub fn run_bearing(
    bearing: &Bearing,
    duty: &Duty,
    oil: &Lubricant,
    care: Care,
) -> Result<RunningFilm, FilmError> {
    positive(bearing, duty)?;
    let work = Work::new(bearing, duty);
    let proportion = bearing.land / bearing.diameter;
    let film = balance(proportion, care, |eccentricity, figures| {
        let heat = work.heat(eccentricity, figures, oil);
        libm::log(work.sommerfeld_per_viscosity * oil.in_film(heat.mean))
    })?;
    Ok(work.result(film, oil))
}

fn positive(bearing: &Bearing, duty: &Duty) -> Result<(), FilmError> {
    let mut all = vec![
        ("the journal diameter", bearing.diameter),
        ("the length of the land", bearing.land),
        ("the clearance", bearing.clearance),
        ("the load", duty.load),
        ("the speed", duty.speed),
        ("the temperature of the oil", duty.oil_in),
    ];
    if let Feed::Groove(pressure) = bearing.feed {
        all.push(("the pressure in the groove", pressure));
    }
    all.into_iter().try_for_each(|(what, read)| {
        if read > 0.0 && read.is_finite() {
            Ok(())
        } else {
            Err(FilmError::NotPositive { what, read })
        }
    })
}

struct Heat {
    rise: f64,
    mean: f64,
}

/// What stays the same while the film is searched for.
struct Work<'a> {
    bearing: &'a Bearing,
    duty: &'a Duty,
    mean_pressure: f64,
    radius: f64,
    radial: f64,
    turns: f64,
    sommerfeld_per_viscosity: f64,
}

impl<'a> Work<'a> {
    fn new(bearing: &'a Bearing, duty: &'a Duty) -> Self {
        let lands = match bearing.feed {
            Feed::Hole => 1.0,
            Feed::Groove(_) => 2.0,
        };
        let (radius, radial) = (0.5 * bearing.diameter, 0.5 * bearing.clearance);
        let turns = duty.speed / (2.0 * PI);
        let mean_pressure = duty.load / (lands * bearing.land * bearing.diameter);
        Self {
            bearing,
            duty,
            mean_pressure,
            radius,
            radial,
            turns,
            sommerfeld_per_viscosity: turns / mean_pressure * (radius / radial).powi(2),
        }
    }

    fn torque(&self, figures: &Figures) -> f64 {
        figures.friction * self.radial * self.duty.load
    }

    /// Oil drawn in and oil that leaves at the edges.
    fn flows(&self, eccentricity: f64, figures: &Figures) -> (f64, f64) {
        match self.bearing.feed {
            Feed::Hole => {
                let unit = self.radius * self.radial * self.turns * self.bearing.land;
                let inflow = figures.inflow * unit;
                (inflow, inflow * figures.side_share)
            }
            Feed::Groove(pressure) => {
                let viscosity = figures.sommerfeld / self.sommerfeld_per_viscosity;
                let flow = groove_flow(self.bearing, pressure, viscosity, eccentricity);
                (flow, flow)
            }
        }
    }

    fn heat(&self, eccentricity: f64, figures: &Figures, oil: &Lubricant) -> Heat {
        let (inflow, side) = self.flows(eccentricity, figures);
        let carried = match self.bearing.feed {
            Feed::Hole => inflow - 0.5 * side,
            Feed::Groove(_) => inflow,
        };
        let by_volume = oil.heat_by_volume(self.duty.oil_in);
        let rise = self.torque(figures) * self.duty.speed / (by_volume * carried.max(1e-15));
        // Past this no oil is left; the line of its viscosity ends.
        let rise = rise.clamp(0.0, 400.0);
        Heat {
            rise,
            mean: self.duty.oil_in + 0.5 * rise,
        }
    }

    fn result(&self, film: Film, oil: &Lubricant) -> RunningFilm {
        let figures = &film.figures;
        let heat = self.heat(film.eccentricity, figures, oil);
        let (inflow, side_flow) = self.flows(film.eccentricity, figures);
        let friction_torque = self.torque(figures);
        RunningFilm {
            film,
            viscosity: oil.in_film(heat.mean),
            mean_pressure: self.mean_pressure,
            peak_pressure: self.mean_pressure / figures.mean_over_peak,
            least_film: self.radial * film.least_film(),
            friction_torque,
            friction_power: friction_torque * self.duty.speed,
            inflow,
            side_flow,
            temperature_rise: heat.rise,
            mean_temperature: heat.mean,
        }
    }
}

/// Friction coefficient of a journal that runs in the middle: Petroff's
/// `2π²·(µN/P)·(R/c)`, N in turns a second.
#[must_use]
pub fn petroff(viscosity: f64, turns: f64, mean_pressure: f64, radius_by_clearance: f64) -> f64 {
    2.0 * PI * PI * viscosity * turns / mean_pressure * radius_by_clearance
}

/// The films of one bearing over several clearances: a point a clearance, or why
/// there is none.
#[must_use]
pub fn film_over_clearance(
    bearing: &Bearing,
    duty: &Duty,
    oil: &Lubricant,
    clearances: &[f64],
) -> Vec<Result<RunningFilm, FilmError>> {
    clearances
        .iter()
        .map(|clearance| {
            let bearing = Bearing {
                clearance: *clearance,
                ..*bearing
            };
            run_bearing(&bearing, duty, oil, Care::Fine)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 0.0254;

    fn rod() -> (Bearing, Duty, Lubricant) {
        let bearing = Bearing {
            diameter: 2.1 * INCH,
            land: 0.8 * INCH,
            clearance: 0.0022 * INCH,
            feed: Feed::Hole,
        };
        let duty = Duty {
            load: 8000.0,
            speed: 3000.0 * PI / 30.0,
            oil_in: 363.15,
        };
        (bearing, duty, Lubricant::of_sheet(95.0, 11.0).unwrap())
    }

    #[test]
    fn load_and_heat_agree_in_the_film_that_comes_out() {
        let (bearing, duty, oil) = rod();
        let got = run_bearing(&bearing, &duty, &oil, Care::Fine).unwrap();
        // The film's own number and the one of oil, speed and load are the same.
        let turns = duty.speed / (2.0 * PI);
        let number = got.viscosity * turns / got.mean_pressure
            * (bearing.diameter / bearing.clearance).powi(2);
        assert!((number / got.film.figures.sommerfeld - 1.0).abs() < 1e-3);
        // The heat of friction is what the oil carries away.
        let carried = (got.inflow - 0.5 * got.side_flow)
            * oil.heat_by_volume(duty.oil_in)
            * got.temperature_rise;
        assert!((carried / got.friction_power - 1.0).abs() < 1e-9);
        assert!(got.least_film > 0.5e-6 && got.least_film < 20e-6, "{got:?}");
        assert!(got.film.has_converged());
    }

    #[test]
    fn the_curve_over_clearance_has_a_top_and_its_ends_are_lower() {
        let (bearing, duty, oil) = rod();
        let clearances: Vec<f64> = [0.4, 1.2, 2.5, 6.0]
            .iter()
            .map(|one| one * 1e-3 * INCH)
            .collect();
        let films: Vec<f64> = film_over_clearance(&bearing, &duty, &oil, &clearances)
            .into_iter()
            .map(|film| film.map_or(0.0, |film| film.least_film))
            .collect();
        let best = films.iter().copied().fold(0.0, f64::max);
        assert!(films[0] < best && films[3] < best, "{films:?}");
    }

    #[test]
    fn bad_numbers_are_named() {
        let (bearing, duty, oil) = rod();
        for clearance in [0.0, -1e-5, f64::NAN] {
            let bad = Bearing {
                clearance,
                ..bearing
            };
            let error = run_bearing(&bad, &duty, &oil, Care::Fine).unwrap_err();
            assert!(error.to_string().contains("clearance"), "{error}");
        }
        let crushing = Duty { load: 1e9, ..duty };
        let error = run_bearing(&bearing, &crushing, &oil, Care::Fine).unwrap_err();
        assert_eq!(error, FilmError::TooMuchLoad);
    }

    #[test]
    fn thicker_oil_and_more_speed_make_a_thicker_film() {
        let (bearing, duty, oil) = rod();
        let film = |duty: &Duty, oil: &Lubricant| {
            run_bearing(&bearing, duty, oil, Care::Fine)
                .unwrap()
                .least_film
        };
        let now = film(&duty, &oil);
        let thick = Lubricant::of_sheet(160.0, 18.0).unwrap();
        assert!(film(&duty, &thick) > 1.05 * now);
        let slow = Duty {
            speed: 0.3 * duty.speed,
            ..duty
        };
        assert!(film(&slow, &oil) < now);
    }
}
