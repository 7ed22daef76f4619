//! Viscosity against temperature: the straight line of the ASTM D341 chart.
//!
//! `log10 log10(ν + 0.7) = A − B·log10 T`, ν in mm²/s and T in kelvin (ASTM
//! D341-20, for ν of 2 mm²/s and more). Two points fix the line.

use super::error::OilError;

/// 0 °C, kelvin.
pub const FREEZING: f64 = 273.15;

/// Below this the chart's full formula bends away from the line used here, mm²/s.
pub const LEAST_STRAIGHT: f64 = 2.0;

/// The temperatures at which the line is taken as good, °C: between wax and the
/// hottest film.
pub const STRAIGHT_BETWEEN: (f64, f64) = (-30.0, 175.0);

const SQUARE_MILLIMETRE: f64 = 1e-6;

/// One viscosity at one temperature.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Point {
    /// Kelvin.
    pub temperature: f64,
    /// Kinematic viscosity, m²/s.
    pub viscosity: f64,
}

impl Point {
    /// From degrees Celsius and mm²/s, as an oil's sheet has them.
    #[must_use]
    pub fn of_sheet(celsius: f64, square_millimetres: f64) -> Self {
        Self {
            temperature: celsius + FREEZING,
            viscosity: square_millimetres * SQUARE_MILLIMETRE,
        }
    }
}

/// The line of one oil.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct ViscosityLine {
    a: f64,
    b: f64,
}

impl ViscosityLine {
    /// The line through two points, in any order.
    ///
    /// ```
    /// use assembly_core::oil::viscosity::line::{Point, ViscosityLine};
    /// let line = ViscosityLine::through(
    ///     Point::of_sheet(40.0, 95.0),
    ///     Point::of_sheet(100.0, 11.0),
    /// )?;
    /// let at_80 = line.kinematic(353.15) * 1e6;
    /// assert!((at_80 - 19.0).abs() < 0.5);
    /// # Ok::<(), assembly_core::oil::viscosity::OilError>(())
    /// ```
    ///
    /// # Errors
    /// [`OilError`] for points that no oil has or that fix no line.
    pub fn through(first: Point, second: Point) -> Result<Self, OilError> {
        for point in [first, second] {
            let read = point.viscosity / SQUARE_MILLIMETRE;
            if !(0.3..=2e6).contains(&read) {
                return Err(OilError::Viscosity { read });
            }
            let celsius = point.temperature - FREEZING;
            if !(-60.0..=350.0).contains(&celsius) {
                return Err(OilError::Temperature { celsius });
            }
        }
        let (cold, warm) = if first.temperature <= second.temperature {
            (first, second)
        } else {
            (second, first)
        };
        if warm.temperature - cold.temperature < 5.0 {
            return Err(OilError::TemperaturesTooClose);
        }
        if warm.viscosity >= cold.viscosity {
            return Err(OilError::ThickerWhenWarm);
        }
        let (x, y) = (
            libm::log10(cold.temperature),
            double_log(cold.viscosity / SQUARE_MILLIMETRE),
        );
        let b = (y - double_log(warm.viscosity / SQUARE_MILLIMETRE))
            / (libm::log10(warm.temperature) - x);
        Ok(Self { a: y + b * x, b })
    }

    /// The line's height A.
    #[must_use]
    pub const fn a(&self) -> f64 {
        self.a
    }

    /// The line's slope B.
    #[must_use]
    pub const fn b(&self) -> f64 {
        self.b
    }

    /// Kinematic viscosity at a temperature in kelvin, m²/s.
    #[must_use]
    pub fn kinematic(&self, temperature: f64) -> f64 {
        let height = self.a - self.b * libm::log10(temperature.max(1.0));
        // Far beyond the chart the double power would overflow.
        let thick = libm::exp10(libm::exp10(height.min(1.9)).min(300.0)) - 0.7;
        thick.max(1e-3) * SQUARE_MILLIMETRE
    }

    /// Whether the line may be trusted there, with a sentence when it may not.
    #[must_use]
    pub fn doubt(&self, temperature: f64) -> Option<&'static str> {
        let celsius = temperature - FREEZING;
        if celsius < STRAIGHT_BETWEEN.0 {
            Some(
                "Below −30 °C wax and polymers make an oil thicker than the line says: take the cold cranking figure of its sheet.",
            )
        } else if celsius > STRAIGHT_BETWEEN.1 {
            Some("Above 175 °C the line is a guess: an oil boils off and burns there.")
        } else if self.kinematic(temperature) < LEAST_STRAIGHT * SQUARE_MILLIMETRE {
            Some(
                "Under 2 mm²/s the standard's chart bends away from this line: the figure may be some per cent off.",
            )
        } else {
            None
        }
    }
}

fn double_log(square_millimetres: f64) -> f64 {
    libm::log10(libm::log10(square_millimetres + 0.7))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(at_40: f64, at_100: f64) -> ViscosityLine {
        ViscosityLine::through(Point::of_sheet(40.0, at_40), Point::of_sheet(100.0, at_100))
            .unwrap()
    }

    // Common practice, a 30 oil by the same chart: 38 at 60, 19 at 80, 7 at 120 °C.
    #[test]
    fn a_30_oil_thins_as_the_trade_knows_it() {
        let thirty = line(95.0, 11.0);
        for (celsius, wanted) in [(60.0, 38.0), (80.0, 19.0), (100.0, 11.0), (120.0, 7.0)] {
            let got = thirty.kinematic(celsius + FREEZING) * 1e6;
            assert!((got - wanted).abs() < 0.5, "{celsius}: {got}");
        }
    }

    #[test]
    fn swapped_points_give_the_same_line_and_swapped_viscosities_none() {
        let (cold, warm) = (Point::of_sheet(40.0, 95.0), Point::of_sheet(100.0, 11.0));
        assert_eq!(
            ViscosityLine::through(cold, warm),
            ViscosityLine::through(warm, cold)
        );
        let swapped =
            ViscosityLine::through(Point::of_sheet(40.0, 11.0), Point::of_sheet(100.0, 95.0));
        assert_eq!(swapped, Err(OilError::ThickerWhenWarm));
        let close =
            ViscosityLine::through(Point::of_sheet(99.0, 11.2), Point::of_sheet(100.0, 11.0));
        assert_eq!(close, Err(OilError::TemperaturesTooClose));
        let none = ViscosityLine::through(Point::of_sheet(40.0, f64::NAN), warm);
        assert!(matches!(none, Err(OilError::Viscosity { .. })));
    }

    #[test]
    fn no_temperature_makes_it_no_number_and_doubt_is_said_outside() {
        let thirty = line(95.0, 11.0);
        for kelvin in [0.0, 50.0, 200.0, 300.0, 600.0, 5000.0] {
            let thick = thirty.kinematic(kelvin);
            assert!(thick.is_finite() && thick > 0.0);
        }
        assert!(thirty.doubt(373.15).is_none());
        assert!(thirty.doubt(233.15).is_some());
        assert!(thirty.doubt(470.0).is_some());
        assert!(line(9.0, 2.4).doubt(400.0).is_some());
    }
}
