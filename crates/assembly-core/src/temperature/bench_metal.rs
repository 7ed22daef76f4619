//! The metals that a builder can tell apart without a certificate.

use uom::si::f64::{TemperatureCoefficient, ThermodynamicTemperature};

use crate::describe::Choice;
use crate::fit::temperature::Warmth;
use crate::measure::{Measured, Origin, Shape, Sources};
use crate::quantity::Si;

/// A metal as it is known at the bench: not by its alloy, so its growth is only
/// known between two values. Common practice, from handbook tables.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct BenchMetal {
    /// Stable name.
    pub id: &'static str,
    /// What it is called.
    pub label: &'static str,
    /// Middle of its expansion coefficient, one a kelvin.
    pub expansion: f64,
    /// How far the coefficient may lie to either side, one a kelvin.
    pub half_width: f64,
}

/// Millionths a Fahrenheit degree, as the trade's tables give them, between two values.
const fn between(id: &'static str, label: &'static str, low: f64, high: f64) -> BenchMetal {
    BenchMetal {
        id,
        label,
        expansion: f64::midpoint(low, high) * 1.8e-6,
        half_width: (high - low) / 2.0 * 1.8e-6,
    }
}

const GREY_IRON: BenchMetal = between("grey-iron", "cast iron", 5.7, 6.1);
const STEEL: BenchMetal = between("steel", "steel", 6.2, 6.8);
const FORGED_PISTON: BenchMetal = between("forged-piston", "forged piston alloy", 11.5, 12.4);
const CAST_ALUMINIUM: BenchMetal =
    between("cast-aluminium", "cast aluminium block or head", 12.0, 13.0);

/// The metals of an engine.
pub static BENCH_METALS: &[BenchMetal] = &[GREY_IRON, STEEL, FORGED_PISTON, CAST_ALUMINIUM];

/// The same metals as words to choose from, in the same order.
pub(super) static CHOICES: &[Choice] = &[
    GREY_IRON.choice(),
    STEEL.choice(),
    FORGED_PISTON.choice(),
    CAST_ALUMINIUM.choice(),
];

/// The metal with this id.
#[must_use]
pub fn bench_metal(id: &str) -> Option<&'static BenchMetal> {
    BENCH_METALS.iter().find(|one| one.id == id)
}

impl BenchMetal {
    const fn choice(&self) -> Choice {
        Choice {
            id: self.id,
            label: self.label,
        }
    }

    /// A part of this metal as warm as measured. What is not known of the
    /// metal's growth is one cause of error, shared by all parts of it.
    #[must_use]
    pub fn warmth(&self, at: Measured<ThermodynamicTemperature>, sources: &mut Sources) -> Warmth {
        let doubt = sources.shared(
            &format!("expansion of {}", self.id),
            format!("growth of {}", self.label),
            Origin::Handbook,
        );
        Warmth {
            expansion: Measured::exact(TemperatureCoefficient::from_si(self.expansion)).with(
                doubt,
                TemperatureCoefficient::from_si(Shape::Rectangular.deviation(self.half_width)),
            ),
            at,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::temperature::clearance_at_reference;
    use uom::si::f64::Length;

    const INCH: f64 = 0.0254;

    fn cold(sources: &mut Sources) -> Measured<ThermodynamicTemperature> {
        let thermometer = sources.shared("thermometer", "thermometer", Origin::Temperature);
        Measured::exact(ThermodynamicTemperature::from_si(
            (40.0 - 32.0) / 1.8 + 273.15,
        ))
        .with(thermometer, ThermodynamicTemperature::from_si(1.0))
    }

    fn corrected(inner: &str, outer: &str, size: f64) -> (f64, f64, Vec<String>) {
        let mut sources = Sources::new();
        let at = cold(&mut sources);
        let inner = bench_metal(inner).unwrap().warmth(at.clone(), &mut sources);
        let outer = bench_metal(outer).unwrap().warmth(at, &mut sources);
        let result = clearance_at_reference(
            &Measured::exact(Length::from_si(0.002 * INCH)),
            &Measured::exact(Length::from_si(size * INCH)),
            &inner,
            &outer,
        );
        let correction = result.correction;
        let labels = correction
            .estimate()
            .causes(&sources)
            .into_iter()
            .map(|cause| cause.label)
            .collect();
        (
            correction.value().to_si() / INCH,
            correction.give_or_take().to_si() / INCH,
            labels,
        )
    }

    // Worked by the trade at 40 °F (common practice): an aluminium piston in an
    // iron bore of 4 in reads 0.0006 to 0.0007 too loose; an aluminium housing
    // over a steel crank of 2.7 in about 0.0005 too tight; iron and steel at
    // 2.5 in nearly cancel, 0.00004.
    #[test]
    fn the_worked_corrections_come_out_from_the_metals_names() {
        let (piston, doubt, causes) = corrected("forged-piston", "grey-iron", 4.0);
        assert!((-0.000_72..=-0.000_6).contains(&piston), "{piston}");
        // Thermometer, iron and piston alloy all have their share.
        assert_eq!(causes.len(), 3, "{causes:?}");
        assert!(causes.contains(&"growth of forged piston alloy".to_owned()));
        assert!(doubt > 0.000_02 && doubt < 0.000_1, "{doubt}");
        let (housing, _, _) = corrected("steel", "cast-aluminium", 2.7);
        assert!((housing - 0.000_45).abs() < 0.000_06, "{housing}");
        let (cancelled, _, _) = corrected("steel", "grey-iron", 2.5);
        assert!(
            (cancelled.abs() - 0.000_04).abs() < 0.000_005,
            "{cancelled}"
        );
    }

    // What is not known of a metal's growth cancels between two parts of it.
    #[test]
    fn two_parts_of_one_metal_share_what_is_not_known_of_it() {
        let (correction, doubt, _) = corrected("steel", "steel", 2.5);
        assert!(correction.abs() < 1e-6 && doubt < 1e-6);
    }
}
