//! One cylinder for the load that gas and mass put on the bearings: from what was
//! measured in this build, and what the builder typed over it.

use assembly_core::oil::film::load::Cylinder;
use assembly_core::quantity::{Kind, Si};
use build_plan::Measure;
use build_plan::measure::{BORE, ROD_LENGTH};

use super::super::folding::Folding;
use super::super::register::{Register, Role};
use super::inputs::Told;
use crate::fact::Said;

/// Pressure in the intake with the throttle open, Pa: common practice.
const FULL_THROTTLE: f64 = 1.0e5;

/// Where a number of the cylinder comes from.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum NumberFrom {
    /// The builder typed it: that wins over all else.
    Typed,
    /// The mean of what was measured in this build.
    Measured {
        /// How many readings.
        readings: usize,
        /// Of how many parts.
        parts: usize,
    },
}

/// One number of the cylinder.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct CylinderNumber {
    /// What it is: "bore".
    pub what: &'static str,
    /// What kind of number.
    pub kind: Kind,
    /// The number, SI.
    pub value: f64,
    /// Where it comes from.
    pub from: NumberFrom,
}

/// What was measured of the cylinders, whatever was typed over it. The plan has no
/// measure of the stroke, of the masses, or of the room that gasket and piston take.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub struct MeasuredCylinder {
    /// The mean bore.
    pub bore: Option<CylinderNumber>,
    /// The mean length of the rods.
    pub rod: Option<CylinderNumber>,
}

impl MeasuredCylinder {
    pub(super) fn of(folding: &Folding) -> Self {
        let mean = |what, measure| mean(folding, what, measure);
        Self {
            bore: mean("bore", &BORE),
            rod: mean("length of the rod", &ROD_LENGTH),
        }
    }
}

/// The mean of a measure over the parts of the engine; none while it is not
/// measured. Readings that no longer count since something was changed are left out
/// once there are others.
fn mean(
    folding: &Folding,
    what: &'static str,
    measure: &'static Measure,
) -> Option<CylinderNumber> {
    let engine = folding.engine()?;
    let (mut parts, mut readings) = (Vec::new(), 0);
    for at in measure.spots.per.parts(engine) {
        let all = &folding.build.readings;
        let taken = all.of(measure, at).map(|taken| (Role::Itself, taken));
        let register = Register::of(taken, &folding.bench, all);
        let places = register.places(Role::Itself);
        readings += places.map(|(_, repeats)| repeats.len()).sum::<usize>();
        let means: Vec<f64> = register
            .means(Role::Itself)
            .map(|(_, mean)| mean.value().to_si())
            .collect();
        if !means.is_empty() {
            parts.push(means.iter().sum::<f64>() / means.len() as f64);
        }
    }
    if parts.is_empty() {
        return None;
    }
    Some(CylinderNumber {
        what,
        kind: measure.kind,
        value: parts.iter().sum::<f64>() / parts.len() as f64,
        from: NumberFrom::Measured {
            readings,
            parts: parts.len(),
        },
    })
}

/// One cylinder as it is known.
pub(super) struct Known {
    /// All of it; none while something is missing.
    pub(super) cylinder: Option<Cylinder>,
    /// What is missing, in words.
    pub(super) lacks: Vec<&'static str>,
    /// Its numbers, and where each comes from.
    pub(super) numbers: Vec<CylinderNumber>,
}

impl Told<'_> {
    /// One cylinder. The peak of the gas is estimated when it was not said.
    pub(super) fn cylinder(&mut self, measured: &MeasuredCylinder) -> Known {
        let system = self.system;
        let (mut lacks, mut numbers) = (Vec::new(), Vec::new());
        let mut need = |what, said: Option<&Said>, kind, measured: Option<CylinderNumber>| {
            let typed = self.read(what, said, kind).map(|value| CylinderNumber {
                what,
                kind,
                value,
                from: NumberFrom::Typed,
            });
            let number = typed.or(measured);
            numbers.extend(number);
            if number.is_none() {
                lacks.push(what);
            }
            number.map(|number| number.value)
        };
        let (length, mass) = (Kind::Length, Kind::Mass);
        let bore = need("bore", system.bore.as_ref(), length, measured.bore);
        let stroke = need("stroke", system.stroke.as_ref(), length, None);
        let rod = need(
            "length of the rod",
            system.rod_length.as_ref(),
            length,
            measured.rod,
        );
        let piston = system.up_and_down.as_ref();
        let piston = need("mass that goes up and down", piston, mass, None);
        let round = need("mass that goes round", system.round.as_ref(), mass, None);
        let ratio = need(
            "compression ratio",
            system.compression_ratio.as_ref(),
            Kind::Ratio,
            None,
        );
        let peak = self.read(
            "highest gas pressure",
            system.peak_gas.as_ref(),
            Kind::Pressure,
        );
        let mut cylinder = || {
            let (stroke, rod, ratio) = (stroke?, rod?, ratio?);
            if rod <= 0.5 * stroke {
                lacks.push("a rod longer than the throw");
                return None;
            }
            if ratio <= 1.0 {
                lacks.push("a compression ratio above one");
                return None;
            }
            Some(Cylinder {
                bore: bore?,
                stroke,
                rod,
                going_up_and_down: piston?,
                going_round: round?,
                ratio,
                peak_gas: peak,
                intake: FULL_THROTTLE,
            })
        };
        let cylinder = cylinder();
        Known {
            cylinder,
            lacks,
            numbers,
        }
    }
}
