//! Fits of two metals that were measured in a cold or a hot garage: what that
//! changes, and bringing the readings to 20 °C where the builder says so.

use std::collections::BTreeMap;

use assembly_core::describe::Finding;
use assembly_core::fit::temperature::{size_at_reference, warning};
use assembly_core::measure::{Measured, Origin, Sources, Window};
use assembly_core::metrology::expansion::REFERENCE_TEMPERATURE;
use assembly_core::quantity::{Kind, Si, Typed, read, unit_of};
use assembly_core::temperature::{BenchMetal, bench_metal};
use build_plan::{At, Engine, MEASURES, Measure};
use uom::si::f64::{Length, ThermodynamicTemperature};

use super::build::Build;
use super::folding::Folding;
use super::readings::Taken;
use super::register::Value;
use crate::fact::{Reading, WarmthAnswer, WarmthSettled};
use crate::id::FactId;

/// How far a thermometer on a part may be off: one standard deviation, kelvin. An
/// estimate of the trade (common practice, no source).
const THERMOMETER: f64 = 1.0;

/// What was decided about the readings of a fit.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SettledWarmth {
    /// The fact.
    pub fact: FactId,
    /// What is done.
    pub answer: WarmthAnswer,
}

/// What the temperature of the parts does to a fit of two metals.
#[derive(Clone, PartialEq, Debug)]
pub struct FitWarmth {
    /// The temperature that was typed and lies farthest from 20 °C.
    pub at: Typed,
    /// What the outer part and the inner one are taken to be of.
    pub metals: (&'static BenchMetal, &'static BenchMetal),
    /// What bringing the readings to 20 °C adds to the fit.
    pub correction: Measured<Length>,
    /// Said when that is more than a quarter of the window.
    pub warning: Option<Finding>,
    /// What the builder decided, when anything was.
    pub settled: Option<SettledWarmth>,
}

impl FitWarmth {
    /// Whether it is a question for the builder: the correction matters and nothing
    /// was decided.
    #[must_use]
    pub const fn asks(&self) -> bool {
        self.warning.is_some() && self.settled.is_none()
    }

    /// Whether the readings are brought to 20 °C.
    #[must_use]
    pub fn is_corrected(&self) -> bool {
        let answer = self.settled.as_ref().map(|settled| settled.answer);
        answer == Some(WarmthAnswer::ToReference)
    }
}

/// The temperature that was written with a reading, when it can be read.
#[must_use]
pub fn temperature_of(reading: &Reading) -> Option<Typed> {
    let unit = unit_of(Kind::Temperature, "°C")?;
    let typed = read(reading.temperature.as_deref()?, Kind::Temperature, unit).ok()?;
    Some(typed).filter(Typed::unit_was_typed)
}

/// The metals of the sizes that are brought to 20 °C, by the id of their measure.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct ToReference(BTreeMap<&'static str, &'static BenchMetal>);

impl ToReference {
    pub(super) fn of(settled: &BTreeMap<String, SettledWarmth>, engine: Option<&Engine>) -> Self {
        let Some(engine) = engine else {
            return Self::default();
        };
        let fits = settled
            .iter()
            .filter(|(_, one)| one.answer == WarmthAnswer::ToReference)
            .filter_map(|(id, _)| MEASURES.iter().find(|fit| fit.id == *id)?.two_metals());
        let sizes = fits.flat_map(|(outer, inner)| [outer, inner]);
        Self(
            sizes
                .filter_map(|size| Some((size.id, size.metal(engine)?)))
                .collect(),
        )
    }

    /// A measured size brought to 20 °C, when its measure is and its temperature
    /// was written down; as it was read otherwise.
    pub(super) fn bring(&self, value: Value, taken: &Taken, sources: &mut Sources) -> Value {
        if self.0.is_empty() {
            return value;
        }
        let metal = taken.measure.and_then(|measure| self.0.get(measure.id));
        match (metal, temperature_of(&taken.reading)) {
            (Some(metal), Some(at)) => at_reference(&value, metal, &at, sources),
            _ => value,
        }
    }
}

/// A size at 20 °C, read with a steel tool as warm as the part.
fn at_reference(size: &Value, metal: &BenchMetal, at: &Typed, sources: &mut Sources) -> Value {
    let Some(steel) = bench_metal("steel") else {
        return size.clone();
    };
    let thermometer = sources.shared("thermometer", "thermometer", Origin::Temperature);
    let at: Measured<ThermodynamicTemperature> = Measured::exact(at.quantity())
        .with(thermometer, ThermodynamicTemperature::from_si(THERMOMETER));
    let part = metal.warmth(at.clone(), sources);
    let tool = steel.warmth(at, sources);
    size_at_reference(size, &part, &tool)
}

impl Build {
    /// What the temperature of the parts does to a fit of two metals at a part:
    /// `None` for any other measure, and where no reading came with a temperature.
    #[must_use]
    pub fn warmth_of(&self, measure: &'static Measure, at: At) -> Option<FitWarmth> {
        let engine = &self.engine.as_ref()?.engine;
        let (outer, inner) = measure.two_metals()?;
        let metals = (outer.metal(engine)?, inner.metal(engine)?);
        let readings = |size: &'static Measure| -> Vec<(f64, Option<Typed>)> {
            let parts = size.spots.per.parts(engine).into_iter();
            let parts = parts.filter(|part| part.concerns(at, engine));
            parts
                .flat_map(|part| self.readings(size, part))
                .filter(|taken| self.still_counts(taken))
                .filter_map(|taken| Some((taken.counting()?.si(), temperature_of(&taken.reading))))
                .collect()
        };
        let (outside, inside) = (readings(outer), readings(inner));
        let both = || outside.iter().chain(&inside);
        // A needle shows a few thous: the largest number is a whole size.
        let size = both().map(|(size, _)| size.abs()).fold(0.0, f64::max);
        let away = |typed: &Typed| (typed.si() - REFERENCE_TEMPERATURE).abs();
        let farthest = both()
            .filter_map(|(_, at)| at.as_ref())
            .max_by(|one, other| away(one).total_cmp(&away(other)))?
            .clone();
        let mut sources = Sources::new();
        let diameter = Measured::exact(Length::from_si(size));
        let mut adds = |all: &[(f64, Option<Typed>)], metal| {
            let each: Vec<Value> = all
                .iter()
                .map(|(_, at)| match at {
                    Some(at) => &at_reference(&diameter, metal, at, &mut sources) - &diameter,
                    None => Measured::exact(Length::from_si(0.0)),
                })
                .collect();
            Measured::mean(&each)
        };
        let correction = adds(&outside, metals.0)? - &adds(&inside, metals.1)?;
        let limits = self.limits_of(measure, at);
        let window: Option<&Window> = limits.iter().find_map(|one| one.window.as_ref().ok());
        Some(FitWarmth {
            at: farthest,
            metals,
            warning: window.and_then(|window| warning(&correction, window)),
            correction,
            settled: self.warmth.get(measure.id).cloned(),
        })
    }
}

impl Folding {
    /// Takes in what was decided of the readings of a fit.
    pub(super) fn settle_warmth(&mut self, fact: FactId, made: &WarmthSettled) {
        let settled = SettledWarmth {
            fact,
            answer: made.answer,
        };
        self.build.warmth.insert(made.measure.clone(), settled);
    }
}
