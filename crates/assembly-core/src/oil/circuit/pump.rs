//! The pump and its relief valve.

use std::f64::consts::PI;

/// A pump that pushes a fixed volume a turn.
#[derive(Clone, PartialEq, Debug)]
pub struct Pump {
    /// What it is called on the chart.
    pub name: String,
    /// Volume a turn of the pump, m³.
    pub displacement: f64,
    /// Turns of the pump by a turn of the crank: a half when the cam drives it.
    pub drive_ratio: f64,
    /// What slips back through its own clearances: conductance, m³.
    pub slip: f64,
    /// The valve that caps the pressure.
    pub relief: Relief,
}

/// A relief valve with a spring.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Relief {
    /// It begins to open at this pressure at the pump, Pa.
    pub opens_at: f64,
    /// What it passes for each pascal above that, m³/(s·Pa).
    pub passes: f64,
}

impl Relief {
    /// A valve that opens at this pressure and takes this flow, m³/s, with a tenth
    /// more pressure: common practice.
    #[must_use]
    pub fn usual(opens_at: f64, flow: f64) -> Self {
        Self {
            opens_at,
            passes: flow / (0.1 * opens_at.max(1.0)),
        }
    }

    /// What goes back through it, m³/s.
    #[must_use]
    pub fn flow(&self, pressure: f64) -> f64 {
        (pressure - self.opens_at).max(0.0) * self.passes
    }
}

/// How much more a high-volume pump pushes: 15 to 20 % by taller gears is common
/// practice; the middle of it.
pub const HIGH_VOLUME: f64 = 1.175;

/// How much higher a stiff spring opens the relief, as a part: common practice.
pub const STIFF_RELIEF: f64 = 1.25;

impl Pump {
    /// What it pushes into the filter at a crank speed (rad/s) against a pressure.
    #[must_use]
    pub fn flow(&self, speed: f64, pressure: f64, viscosity: f64) -> f64 {
        self.displacement * self.drive_ratio * speed / (2.0 * PI) - self.slip * pressure / viscosity
    }

    /// The same pump with taller gears; slip grows with them.
    #[must_use]
    pub fn high_volume(&self) -> Self {
        Self {
            name: "high volume".to_owned(),
            displacement: HIGH_VOLUME * self.displacement,
            ..self.clone()
        }
    }

    /// The same pump with a stiffer relief spring.
    #[must_use]
    pub fn stiff_relief(&self) -> Self {
        Self {
            name: "stiff relief".to_owned(),
            relief: Relief {
                opens_at: STIFF_RELIEF * self.relief.opens_at,
                ..self.relief
            },
            ..self.clone()
        }
    }

    /// This pump, one with more volume, one with a stiffer spring: the question
    /// that many builds begin with.
    #[must_use]
    pub fn three(&self) -> [Self; 3] {
        [self.clone(), self.high_volume(), self.stiff_relief()]
    }

    /// Slip of a pump that at this speed, pressure and viscosity still delivers so
    /// much of what it sweeps.
    #[must_use]
    pub fn with_efficiency(self, part: f64, speed: f64, pressure: f64, viscosity: f64) -> Self {
        let swept = self.displacement * self.drive_ratio * speed / (2.0 * PI);
        Self {
            slip: (1.0 - part.clamp(0.0, 1.0)) * swept * viscosity / pressure,
            ..self
        }
    }
}

/// Volume a turn of two equal spur gears: the ring between tip and root circle by
/// the width (the gaps of both together are about the ring of one); common
/// practice. Metres in, m³ out.
#[must_use]
pub fn displacement_of_gears(outside: f64, centres: f64, width: f64) -> f64 {
    let root = 2.0 * centres - outside;
    0.25 * PI * (outside * outside - root * root) * width
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pump() -> Pump {
        Pump {
            name: "standard".to_owned(),
            displacement: 20e-6,
            drive_ratio: 0.5,
            slip: 0.0,
            relief: Relief::usual(4e5, 8e-4),
        }
    }

    #[test]
    fn flow_goes_with_speed_and_slip_with_pressure() {
        let tight = pump();
        // 6000 of the crank are 50 turns a second of the pump: a litre a second.
        assert!((tight.flow(200.0 * PI, 3e5, 0.01) - 1e-3).abs() < 1e-12);
        let slipping = tight.clone().with_efficiency(0.8, 200.0 * PI, 3e5, 0.01);
        assert!((slipping.flow(200.0 * PI, 3e5, 0.01) - 0.8e-3).abs() < 1e-12);
        assert!(slipping.flow(200.0 * PI, 3e5, 0.005) < 0.61e-3);
    }

    #[test]
    fn the_relief_is_shut_below_and_the_three_pumps_differ_where_they_should() {
        let [standard, volume, stiff] = pump().three();
        assert_eq!(standard.relief.flow(3.9e5), 0.0);
        assert!((standard.relief.flow(4.4e5) - 8e-4).abs() < 1e-12);
        assert!(volume.flow(100.0, 0.0, 0.01) > standard.flow(100.0, 0.0, 0.01));
        assert_eq!(
            stiff.flow(100.0, 0.0, 0.01),
            standard.flow(100.0, 0.0, 0.01)
        );
        assert!(stiff.relief.opens_at > standard.relief.opens_at);
    }

    #[test]
    fn gears_of_a_pump() {
        // 1.5 in outside, centres 1.25 in apart, 1.2 in wide: about 1.9 in³ a turn.
        let inch = 0.0254_f64;
        let got = displacement_of_gears(1.5 * inch, 1.25 * inch, 1.2 * inch) / inch.powi(3);
        assert!((got - 0.25 * PI * 1.25 * 1.2).abs() < 1e-9);
    }
}
