//! What presses on a rod bearing over a turn: gas, and the mass that goes up and
//! down and round.
//!
//! The gas follows a plain four-stroke cycle: polytropic squeezing, the peak a
//! little after the top, polytropic expansion, open valves at the pressure of the
//! air. That is common practice for a first figure, not an engine's own diagram.

use std::f64::consts::PI;

/// One cylinder as described. SI units, absolute pressures.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Cylinder {
    /// Bore.
    pub bore: f64,
    /// Stroke.
    pub stroke: f64,
    /// Rod between its centres.
    pub rod: f64,
    /// Piston, rings, pin and the rod's small end.
    pub going_up_and_down: f64,
    /// The rod's big end.
    pub going_round: f64,
    /// Compression ratio.
    pub ratio: f64,
    /// Highest gas pressure, Pa absolute; `None` estimates it.
    pub peak_gas: Option<f64>,
    /// Pressure in the intake, Pa absolute.
    pub intake: f64,
}

/// Pressure of the air, Pa.
const AIR: f64 = 101_325.0;

/// Exponents of squeezing and of expansion, common practice.
const SQUEEZING: f64 = 1.32;
const EXPANSION: f64 = 1.28;

/// Where the peak stands and where the exhaust opens, degrees after the top.
const PEAK_AT: f64 = 14.0;
const EXHAUST_OPENS: f64 = 140.0;

/// Highest gas pressure by the pressure of squeezing at full load: common practice.
const PEAK_BY_SQUEEZED: f64 = 3.3;

/// Mean load of a main by that of a rod: of two rods that pull at other times half
/// of each, added as squares.
pub const MAIN_BY_ROD: f64 = 0.5 * std::f64::consts::SQRT_2;

/// What a bearing sees over the cycle, newtons.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LoadOverCycle {
    /// The greatest.
    pub greatest: f64,
    /// Where it stands, degrees after the top of the firing stroke, 0 to 720.
    pub greatest_at: f64,
    /// The mean over the cycle.
    pub mean: f64,
    /// Whether the peak of the gas was estimated.
    pub gas_estimated: bool,
}

impl Cylinder {
    /// How far the piston is below its top, m, at an angle after it.
    #[must_use]
    pub fn piston_drop(&self, angle: f64) -> f64 {
        let throw = 0.5 * self.stroke;
        let across = throw * libm::sin(angle);
        throw * (1.0 - libm::cos(angle)) + self.rod
            - (self.rod * self.rod - across * across).max(0.0).sqrt()
    }

    /// Acceleration of the piston away from the head, m/s², at a steady speed.
    #[must_use]
    pub fn piston_acceleration(&self, angle: f64, speed: f64) -> f64 {
        let throw = 0.5 * self.stroke;
        let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
        let upright = (self.rod * self.rod - throw * throw * sine * sine)
            .max(1e-12)
            .sqrt();
        let swing = throw * throw * (cosine * cosine - sine * sine) / upright
            + throw.powi(4) * sine * sine * cosine * cosine / upright.powi(3);
        speed * speed * (throw * cosine + swing)
    }

    /// Volume above the piston by the volume at the top.
    fn volume(&self, angle: f64) -> f64 {
        1.0 + (self.ratio - 1.0) * self.piston_drop(angle) / self.stroke
    }

    /// The peak of the gas, Pa absolute.
    #[must_use]
    pub fn peak_of_gas(&self) -> f64 {
        self.peak_gas
            .unwrap_or_else(|| PEAK_BY_SQUEEZED * self.intake * libm::pow(self.ratio, SQUEEZING))
    }

    /// Gas pressure, Pa absolute, at degrees after the top of the firing stroke.
    fn gas(&self, degrees: f64) -> f64 {
        let angle = degrees.to_radians();
        let peak_angle = PEAK_AT.to_radians();
        if degrees < PEAK_AT {
            let squeezed = self.intake * libm::pow(self.ratio, SQUEEZING);
            squeezed + (self.peak_of_gas() - squeezed).max(0.0) * degrees / PEAK_AT
        } else if degrees < EXHAUST_OPENS {
            self.peak_of_gas() * libm::pow(self.volume(peak_angle) / self.volume(angle), EXPANSION)
        } else if degrees < 360.0 {
            AIR
        } else if degrees < 540.0 {
            self.intake
        } else {
            self.intake * libm::pow(self.ratio / self.volume(angle), SQUEEZING)
        }
    }

    /// The force of rod on pin at degrees after the top of the firing stroke.
    fn on_pin(&self, degrees: f64, speed: f64) -> f64 {
        let angle = degrees.to_radians();
        let area = 0.25 * PI * self.bore * self.bore;
        let along = (self.gas(degrees) - AIR) * area
            - self.going_up_and_down * self.piston_acceleration(angle, speed);
        let sine = 0.5 * self.stroke / self.rod * libm::sin(angle);
        let lean = sine / (1.0 - sine * sine).max(1e-12).sqrt();
        // Down the bore is towards the crank; the big end pulls outward.
        let outward = self.going_round * speed * speed * 0.5 * self.stroke;
        let down = along - outward * libm::cos(angle);
        let across = along * lean - outward * libm::sin(angle);
        down.hypot(across)
    }

    /// The load on the rod bearing over a cycle at a speed in rad/s.
    #[must_use]
    pub fn rod_load(&self, speed: f64) -> LoadOverCycle {
        let (mut greatest, mut greatest_at, mut sum) = (0.0_f64, 0.0, 0.0);
        for degrees in (0..720_i32).map(f64::from) {
            let load = self.on_pin(degrees, speed);
            sum += load;
            if load > greatest {
                (greatest, greatest_at) = (load, degrees);
            }
        }
        LoadOverCycle {
            greatest,
            greatest_at,
            mean: sum / 720.0,
            gas_estimated: self.peak_gas.is_none(),
        }
    }

    /// The mean loads on the rod bearing over a cycle at each of some speeds, rad/s:
    /// what gas and shape do is worked out once, every ten degrees.
    #[must_use]
    pub fn mean_rod_loads(&self, speeds: &[f64]) -> Vec<f64> {
        let area = 0.25 * PI * self.bore * self.bore;
        let rows: Vec<[f64; 5]> = (0..72_i32)
            .map(|at| {
                let degrees = f64::from(at) * 10.0;
                let angle = degrees.to_radians();
                let sine = 0.5 * self.stroke / self.rod * libm::sin(angle);
                [
                    (self.gas(degrees) - AIR) * area,
                    self.going_up_and_down * self.piston_acceleration(angle, 1.0),
                    sine / (1.0 - sine * sine).max(1e-12).sqrt(),
                    self.going_round * 0.5 * self.stroke * libm::cos(angle),
                    self.going_round * 0.5 * self.stroke * libm::sin(angle),
                ]
            })
            .collect();
        speeds
            .iter()
            .map(|speed| {
                let square = speed * speed;
                let sum: f64 = rows
                    .iter()
                    .map(|[gas, mass, lean, down, across]| {
                        let along = gas - mass * square;
                        let (x, y) = (along - down * square, along * lean - across * square);
                        (x * x + y * y).sqrt()
                    })
                    .sum();
                sum / rows.len() as f64
            })
            .collect()
    }

    /// The load on a main between two cylinders that fire apart: half of one
    /// rod's; what counterweights take is not counted. An estimate.
    #[must_use]
    pub fn main_load(&self, speed: f64) -> LoadOverCycle {
        let rod = self.rod_load(speed);
        LoadOverCycle {
            greatest: 0.5 * rod.greatest,
            mean: MAIN_BY_ROD * rod.mean,
            ..rod
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cylinder() -> Cylinder {
        Cylinder {
            bore: 0.1,
            stroke: 0.088,
            rod: 0.145,
            going_up_and_down: 0.7,
            going_round: 0.45,
            ratio: 9.5,
            peak_gas: Some(6.5e6),
            intake: 1.0e5,
        }
    }

    // At the top a piston of throw r and rod l is pulled by rω²(1 + r/l), at the
    // bottom by rω²(1 − r/l): slider-crank, any book on engine dynamics.
    #[test]
    fn acceleration_at_the_dead_centres_and_by_differences() {
        let (one, speed) = (cylinder(), 300.0);
        let unit = 0.044 * speed * speed;
        let part = 0.044 / 0.145;
        assert!((one.piston_acceleration(0.0, speed) / (unit * (1.0 + part)) - 1.0).abs() < 1e-12);
        assert!((one.piston_acceleration(PI, speed) / (-unit * (1.0 - part)) - 1.0).abs() < 1e-12);
        let step = 1e-4;
        for angle in [0.4, 1.3, 2.5] {
            let twice = (one.piston_drop(angle + step) - 2.0 * one.piston_drop(angle)
                + one.piston_drop(angle - step))
                / (step * step);
            let got = one.piston_acceleration(angle, speed);
            assert!((twice * speed * speed - got).abs() < 1e-5 * unit);
        }
    }

    #[test]
    fn slow_it_is_the_gas_and_fast_the_mass() {
        let one = cylinder();
        let slow = one.rod_load(100.0);
        let gas = (6.5e6 - AIR) * 0.25 * PI * 0.01;
        assert!((slow.greatest / gas - 1.0).abs() < 0.05, "{slow:?}");
        assert!((5.0..30.0).contains(&slow.greatest_at));
        // At twelve thousand a minute the top of the exhaust stroke pulls hardest.
        let fast = one.rod_load(1256.0);
        let pull = 0.7 * one.piston_acceleration(0.0, 1256.0) + 0.45 * 0.044 * 1256.0_f64.powi(2);
        assert!((fast.greatest / pull - 1.0).abs() < 0.02, "{fast:?}");
        assert!(fast.mean < fast.greatest);
        let means = one.mean_rod_loads(&[100.0, 600.0]);
        for (mean, speed) in means.iter().zip([100.0, 600.0]) {
            assert!(
                (mean / one.rod_load(speed).mean - 1.0).abs() < 0.02,
                "{speed}"
            );
        }
        let guessed = Cylinder {
            peak_gas: None,
            ..one
        }
        .rod_load(100.0);
        assert!(guessed.gas_estimated && !slow.gas_estimated);
    }
}
