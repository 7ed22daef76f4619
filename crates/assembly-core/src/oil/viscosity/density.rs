//! Density of an oil against temperature.
//!
//! ASTM D1250-80 (API MPMS 11.1, ISO 91-1), Table 54D, lubricating oils:
//! `α = 0.6278/ρ15`, volume factor `exp(−α·ΔT·(1 + 0.8·α·ΔT))`.

use super::error::OilError;
use super::line::FREEZING;

/// What most engine oils weigh at 15 °C, kg/m³; common practice. Taken, and
/// said, when the sheet of the oil is not at hand.
pub const USUAL: f64 = 870.0;

/// The density of one oil.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Density {
    at_15: f64,
}

impl Density {
    /// From the density at 15 °C, kg/m³.
    ///
    /// # Errors
    /// [`OilError::Density`] outside 700 to 1100.
    pub fn at_15(density: f64) -> Result<Self, OilError> {
        if (700.0..=1100.0).contains(&density) {
            Ok(Self { at_15: density })
        } else {
            Err(OilError::Density { read: density })
        }
    }

    /// A usual oil.
    #[must_use]
    pub const fn usual() -> Self {
        Self { at_15: USUAL }
    }

    /// Expansion of its volume at 15 °C, 1/K.
    #[must_use]
    pub fn expansion(&self) -> f64 {
        0.6278 / self.at_15
    }

    /// Volume at 15 °C over volume at this temperature in kelvin.
    #[must_use]
    pub fn volume_factor(&self, temperature: f64) -> f64 {
        let warmer = self.expansion() * (temperature - FREEZING - 15.0);
        libm::exp(-warmer * (1.0 + 0.8 * warmer))
    }

    /// At a temperature in kelvin, kg/m³.
    ///
    /// ```
    /// use assembly_core::oil::viscosity::Density;
    /// // Table 54D by its formula: 840 kg/m³ at 15 °C is 849.38 at 0 °C.
    /// let oil = Density::at_15(840.0)?;
    /// assert!((oil.at(273.15) - 849.3846).abs() < 1e-3);
    /// # Ok::<(), assembly_core::oil::viscosity::OilError>(())
    /// ```
    #[must_use]
    pub fn at(&self, temperature: f64) -> f64 {
        self.at_15 * self.volume_factor(temperature)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn warm_oil_is_lighter_and_none_is_refused() {
        let oil = Density::usual();
        assert!((oil.at(288.15) - USUAL).abs() < 1e-9);
        assert!(oil.at(373.15) < 830.0 && oil.at(373.15) > 800.0);
        for none in [0.0, -870.0, 0.87, f64::NAN] {
            assert!(Density::at_15(none).is_err());
        }
    }
}
