//! The handbook curve of single-grade oils, for checks against handbook examples.
//!
//! A. S. Seireg and S. Dandage, *Empirical design procedure for the
//! thermohydrodynamic behavior of journal bearings*, ASME J. Lubr. Tech. 104
//! (1982): `µ = µ0·exp(b/(T + 95))`, µ in reyn and T in °F. It describes oils of
//! sixty years ago: a sheet's two points are better.

use std::f64::consts::LN_2;

/// One reyn (pound-force second a square inch) in Pa·s.
pub const REYN: f64 = 4.448_221_615_260_5 / 0.000_645_16;

/// Constants of one curve.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct HandbookCurve {
    /// µ0, Pa·s.
    pub base: f64,
    /// b, °F.
    pub rise: f64,
}

impl HandbookCurve {
    /// From µ0 in microreyn and b in °F, as the handbook prints them.
    #[must_use]
    pub fn printed(microreyn: f64, rise: f64) -> Self {
        Self {
            base: microreyn * 1e-6 * REYN,
            rise,
        }
    }

    /// The curve of a single grade from 10 to 60; `None` of another.
    #[must_use]
    pub fn of_grade(number: u32) -> Option<Self> {
        let (base, rise) = match number {
            10 => (0.0158, 1157.5),
            20 => (0.0136, 1271.6),
            30 => (0.0141, 1360.0),
            40 => (0.0121, 1474.4),
            50 => (0.0170, 1509.6),
            60 => (0.0187, 1564.0),
            _ => return None,
        };
        Some(Self::printed(base, rise))
    }

    /// Dynamic viscosity at a temperature in kelvin, Pa·s.
    #[must_use]
    pub fn dynamic(&self, temperature: f64) -> f64 {
        let fahrenheit = temperature * 1.8 - 459.67;
        // The curve has a pole at −95 °F; nothing is oil there.
        let power = (self.rise / (fahrenheit + 95.0).max(5.0)).min(300.0 * LN_2);
        self.base * libm::exp(power)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // The same source at 212 °F: 0.8558 microreyn for a 20, 2.3227 for a 50.
    #[test]
    fn two_printed_curves() {
        for (number, microreyn) in [(20, 0.855_845), (50, 2.322_68)] {
            let curve = HandbookCurve::of_grade(number).unwrap();
            let got = curve.dynamic(373.15) / REYN * 1e6;
            assert!((got / microreyn - 1.0).abs() < 1e-5, "{got}");
        }
        assert!(HandbookCurve::of_grade(35).is_none());
        assert!(
            HandbookCurve::of_grade(30)
                .unwrap()
                .dynamic(0.0)
                .is_finite()
        );
    }
}
