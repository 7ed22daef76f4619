//! What a drilled gallery takes of the pressure.

use std::f64::consts::PI;

/// A round passage, metres.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Gallery {
    /// Its bore.
    pub diameter: f64,
    /// Its length.
    pub length: f64,
}

/// Below this the flow is smooth.
const LAMINAR: f64 = 2040.0;

impl Gallery {
    /// Reynolds' number of a flow, m³/s, of this viscosity (Pa·s) and density.
    #[must_use]
    pub fn reynolds(&self, flow: f64, viscosity: f64, density: f64) -> f64 {
        4.0 * density * flow / (PI * self.diameter * viscosity)
    }

    /// Darcy's friction factor of a smooth passage: 64/Re when laminar (Hagen and
    /// Poiseuille), 0.3164/Re^¼ when not (Blasius).
    #[must_use]
    pub fn friction_factor(reynolds: f64) -> f64 {
        if reynolds < LAMINAR {
            64.0 / reynolds
        } else {
            0.3164 / reynolds.sqrt().sqrt()
        }
    }

    /// Pressure lost on the way, Pa.
    #[must_use]
    pub fn loss(&self, flow: f64, viscosity: f64, density: f64) -> f64 {
        self.loss_and_slope(flow, viscosity, density).0
    }

    /// The same, and by how much more for more flow, Pa·s/m³: smooth flow loses by
    /// the flow, a whirling one by its power of 1¾.
    pub(super) fn loss_and_slope(&self, flow: f64, viscosity: f64, density: f64) -> (f64, f64) {
        let flow = flow.abs();
        if flow == 0.0 {
            return (0.0, 0.0);
        }
        let reynolds = self.reynolds(flow, viscosity, density);
        let factor = Self::friction_factor(reynolds);
        let speed = flow / (0.25 * PI * self.diameter * self.diameter);
        let loss = factor * self.length / self.diameter * 0.5 * density * speed * speed;
        let power = if reynolds < LAMINAR { 1.0 } else { 1.75 };
        (loss, power * loss / flow)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // Hagen and Poiseuille: 128·µ·L·Q/(π·D⁴).
    #[test]
    fn smooth_flow_is_poiseuilles() {
        let gallery = Gallery {
            diameter: 0.008,
            length: 0.5,
        };
        let flow = 1e-2 / 60.0;
        let wanted = 128.0 * 0.012 * 0.5 * flow / (PI * 0.008_f64.powi(4));
        assert!((gallery.loss(flow, 0.012, 830.0) / wanted - 1.0).abs() < 1e-12);
        assert_eq!(gallery.loss(0.0, 0.012, 830.0), 0.0);
        // Three times the flow loses more than three times the pressure: it whirls.
        assert!(gallery.loss(3.0 * flow, 0.012, 830.0) > 3.3 * wanted);
    }
}
