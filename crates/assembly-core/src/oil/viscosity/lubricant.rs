//! An oil as the bearings meet it: line, weight and what shear takes.

use super::density::Density;
use super::error::OilError;
use super::grade::Grade;
use super::index::at_40_of_index;
use super::line::{FREEZING, Point, ViscosityLine};

/// Where the high-shear limit is tried, kelvin.
const SHEARED_AT: f64 = 150.0 + FREEZING;

/// Specific heat of engine oil, J/(kg·K), near 100 °C: common practice.
pub const SPECIFIC_HEAT: f64 = 2100.0;

/// An oil.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Lubricant {
    line: ViscosityLine,
    density: Density,
    /// How much of the viscosity is left in a fast thin film, 1 for a single grade.
    kept_in_shear: f64,
    /// Heat by volume and kelvin where the sheet has it, J/(m³·K).
    heat_by_volume: Option<f64>,
}

impl Lubricant {
    /// From its line and density. Shear takes nothing until told otherwise.
    #[must_use]
    pub const fn new(line: ViscosityLine, density: Density) -> Self {
        Self {
            line,
            density,
            kept_in_shear: 1.0,
            heat_by_volume: None,
        }
    }

    /// From the two figures of its sheet at 40 and 100 °C, mm²/s, and the usual density.
    ///
    /// # Errors
    /// [`OilError`] for figures that no oil has.
    pub fn of_sheet(at_40: f64, at_100: f64) -> Result<Self, OilError> {
        let line =
            ViscosityLine::through(Point::of_sheet(40.0, at_40), Point::of_sheet(100.0, at_100))?;
        Ok(Self::new(line, Density::usual()))
    }

    /// The same with its grade: a multigrade in a fast film is only as thick as
    /// its sheared viscosity at 150 °C, of which the grade tells the least.
    ///
    /// # Errors
    /// [`OilError`] when the oil cannot be of that grade.
    pub fn with_grade(self, grade: Grade) -> Result<Self, OilError> {
        grade.check_hot(self.line.kinematic(100.0 + FREEZING) * 1e6)?;
        Ok(self.with_sheared(grade.sheared_least() * 1e-3))
    }

    /// The same with its sheared viscosity at 150 °C from the sheet, Pa·s.
    #[must_use]
    pub fn with_sheared(self, sheared: f64) -> Self {
        let kept = sheared / self.dynamic(SHEARED_AT);
        Self {
            kept_in_shear: if kept.is_finite() {
                kept.clamp(0.3, 1.0)
            } else {
                1.0
            },
            ..self
        }
    }

    /// Its line.
    #[must_use]
    pub const fn line(&self) -> &ViscosityLine {
        &self.line
    }

    /// Its density.
    #[must_use]
    pub const fn density(&self) -> &Density {
        &self.density
    }

    /// Kinematic viscosity at a temperature in kelvin, m²/s.
    #[must_use]
    pub fn kinematic(&self, temperature: f64) -> f64 {
        self.line.kinematic(temperature)
    }

    /// Dynamic viscosity at rest and in leaks, Pa·s.
    #[must_use]
    pub fn dynamic(&self, temperature: f64) -> f64 {
        self.line.kinematic(temperature) * self.density.at(temperature)
    }

    /// Dynamic viscosity in the film of a running bearing, Pa·s.
    #[must_use]
    pub fn in_film(&self, temperature: f64) -> f64 {
        self.dynamic(temperature) * self.kept_in_shear
    }

    /// Heat that a cubic metre takes a kelvin, J/(m³·K).
    #[must_use]
    pub fn heat_by_volume(&self, temperature: f64) -> f64 {
        self.heat_by_volume
            .unwrap_or_else(|| self.density.at(temperature) * SPECIFIC_HEAT)
    }

    /// The same with the heat that a cubic metre takes a kelvin, J/(m³·K).
    #[must_use]
    pub fn with_heat_by_volume(self, heat: f64) -> Self {
        Self {
            heat_by_volume: (heat > 0.0 && heat.is_finite()).then_some(heat),
            ..self
        }
    }
}

/// What a grade alone tells: the thinnest, the likely and the thickest oil of it.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct GradeBand {
    /// Thinnest.
    pub thin: Lubricant,
    /// In the middle.
    pub likely: Lubricant,
    /// Thickest.
    pub thick: Lubricant,
}

impl GradeBand {
    /// The band of a grade. The hot edges are the standard's; the index, and so
    /// everything colder, is what oils of the grade usually have.
    ///
    /// # Errors
    /// [`OilError`] should a table entry make no oil.
    pub fn of(grade: Grade) -> Result<Self, OilError> {
        let summer = grade.summer();
        let (index, spread) = grade.usual_index();
        let least = grade
            .winter()
            .map_or(0.0, |winter| winter.hot_least)
            .max(summer.hot_least);
        let oil = |at_100: f64, index: f64| {
            let at_40 = at_40_of_index(at_100, index)?;
            Lubricant::of_sheet(at_40, at_100)
                .map(|oil| oil.with_sheared(grade.sheared_least() * 1e-3))
        };
        Ok(Self {
            // A high index is an oil that is thin when cold.
            thin: oil(least, index + spread)?,
            likely: oil(f64::midpoint(least, summer.hot_below), index)?,
            thick: oil(summer.hot_below * 0.9999, index - spread)?,
        })
    }

    /// One standard deviation of the viscosity at a temperature in kelvin as a part
    /// of the likely one: the band is taken as holding nine oils of ten.
    #[must_use]
    pub fn relative_deviation(&self, temperature: f64) -> f64 {
        let ratio = self.thick.dynamic(temperature) / self.thin.dynamic(temperature);
        libm::log(ratio).abs() / (2.0 * 1.645)
    }
}

/// A line of a comparison of oils: an oil's name and its dynamic viscosities.
#[derive(Clone, PartialEq, Debug)]
pub struct Compared {
    /// The name given.
    pub name: String,
    /// Pa·s at each of the temperatures.
    pub viscosities: Vec<f64>,
    /// As a part of the first oil's at each of them.
    pub of_first: Vec<f64>,
}

/// Oils side by side at some temperatures in kelvin.
#[must_use]
pub fn compare(oils: &[(String, Lubricant)], temperatures: &[f64]) -> Vec<Compared> {
    let row =
        |oil: &Lubricant| -> Vec<f64> { temperatures.iter().map(|at| oil.dynamic(*at)).collect() };
    let first = oils.first().map(|(_, oil)| row(oil)).unwrap_or_default();
    oils.iter()
        .map(|(name, oil)| {
            let viscosities = row(oil);
            let of_first = viscosities.iter().zip(&first).map(|(a, b)| a / b).collect();
            Compared {
                name: name.clone(),
                viscosities,
                of_first,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    // Common practice, kinematic at 60/80/100/120 °C: 10W-30 about 32/17/10.5/7,
    // 20W-50 about 64/32/18/11, a 30 about 38/19/11/7.
    #[test]
    fn grades_lie_about_where_the_trade_has_them() {
        for (name, wanted) in [
            ("10W-30", [32.0, 17.0, 10.5, 7.0]),
            ("20W-50", [64.0, 32.0, 18.0, 11.0]),
            ("30", [38.0, 19.0, 11.0, 7.0]),
        ] {
            let band = GradeBand::of(Grade::read(name).unwrap()).unwrap();
            for (celsius, wanted) in [60.0, 80.0, 100.0, 120.0].into_iter().zip(wanted) {
                let kelvin = celsius + FREEZING;
                let (thin, thick) = (band.thin.kinematic(kelvin), band.thick.kinematic(kelvin));
                assert!(
                    thin * 1e6 < wanted * 1.02 && wanted < thick * 1e6 * 1.02,
                    "{name} at {celsius}"
                );
                let likely = band.likely.kinematic(kelvin) * 1e6;
                assert!(
                    (likely / wanted - 1.0).abs() < 0.15,
                    "{name} {celsius}: {likely}"
                );
            }
        }
    }

    #[test]
    fn every_grade_makes_a_band() {
        use super::super::grade::{SUMMER, WINTER};
        for summer in &SUMMER {
            for winter in WINTER.iter().map(Some).chain([None]) {
                let band = GradeBand::of(Grade::of(winter, summer));
                // A 25W must reach 9.3 hot, which the thin grades never do.
                let impossible = winter.is_some_and(|winter| winter.hot_least >= summer.hot_below);
                if impossible {
                    continue;
                }
                let band = band.unwrap();
                for kelvin in [273.15, 373.15, 423.15] {
                    assert!(band.thin.dynamic(kelvin) < band.likely.dynamic(kelvin));
                    assert!(band.likely.dynamic(kelvin) < band.thick.dynamic(kelvin));
                    assert!(band.relative_deviation(kelvin) > 0.0);
                }
            }
        }
    }

    #[test]
    fn shear_thins_a_multigrade_and_spares_a_single_grade() {
        let multi = Lubricant::of_sheet(92.0, 14.1).unwrap();
        let sheared = multi.with_grade(Grade::read("10W-40").unwrap()).unwrap();
        assert!(sheared.in_film(SHEARED_AT) < 0.9 * multi.dynamic(SHEARED_AT));
        assert!((sheared.in_film(SHEARED_AT) - 3.5e-3).abs() < 1e-9);
        assert!(multi.with_grade(Grade::read("30").unwrap()).is_err());
        assert_eq!(multi.in_film(400.0), multi.dynamic(400.0));
    }

    #[test]
    fn compared_oils_are_measured_by_the_first() {
        let oil = |name: &str| {
            let band = GradeBand::of(Grade::read(name).unwrap()).unwrap();
            (name.to_owned(), band.likely)
        };
        let rows = compare(&[oil("30"), oil("20W-50")], &[373.15]);
        assert_eq!(rows[0].of_first, [1.0]);
        assert!(rows[1].of_first[0] > 1.5);
        assert!(compare(&[], &[300.0]).is_empty());
    }
}
