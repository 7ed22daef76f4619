//! The oil's two figures as a quick check: how thick it is at any temperature.

use super::density::{Density, USUAL};
use super::error::OilError;
use super::index::viscosity_index;
use super::line::{FREEZING, Point, ViscosityLine};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// Kinematic viscosity.
pub(crate) const KINEMATIC: (Kind, UsualUnits) =
    (Kind::KinematicViscosity, UsualUnits::of("cSt", "cSt"));
/// Dynamic viscosity.
pub(crate) const DYNAMIC: (Kind, UsualUnits) =
    (Kind::DynamicViscosity, UsualUnits::of("cP", "mPa·s"));
/// A temperature.
pub(crate) const TEMPERATURE: (Kind, UsualUnits) = (Kind::Temperature, UsualUnits::TEMPERATURE);
/// A density.
pub(crate) const DENSITY: (Kind, UsualUnits) = (Kind::Density, UsualUnits::of("kg/L", "kg/m³"));
/// The temperatures of an oil in an engine, kelvin.
pub(crate) const OIL_TEMPERATURES: (f64, f64) = (213.15, 523.15);

/// Viscosity at 40 °C.
pub static AT_40: Input = Input::of(
    "at-40",
    "viscosity at 40 °C",
    KINEMATIC,
    (2e-6, 5e-3),
    "From the oil's data sheet, \"kinematic viscosity at 40 °C\".",
);
/// Viscosity at 100 °C.
pub static AT_100: Input = Input::of(
    "at-100",
    "viscosity at 100 °C",
    KINEMATIC,
    (1e-6, 1e-3),
    "From the oil's data sheet, \"kinematic viscosity at 100 °C\".",
);
/// The temperature in question.
pub static AT: Input = Input::of(
    "temperature",
    "oil temperature",
    TEMPERATURE,
    OIL_TEMPERATURES,
    "In the sump or at the gallery, with a probe; the water gauge says nothing of it.",
);
static HEAVY: Input = Input::of(
    "density",
    "density at 15 °C",
    DENSITY,
    (700.0, 1100.0),
    "From the data sheet; most engine oils are near 870 kg/m³, which is taken when it is left out.",
)
.optional();

/// Viscosity at a temperature.
pub static OIL_VISCOSITY: Calculation = Calculation {
    id: "oil-viscosity",
    title: "Oil viscosity at temperature",
    purpose: "How thick an oil is at the temperature you read, from the two figures on its sheet.",
    inputs: &[AT_40, AT_100, AT, HEAVY],
    outputs: &[
        Output::of("kinematic", "kinematic viscosity there", KINEMATIC),
        Output::of("dynamic", "dynamic viscosity there", DYNAMIC),
        Output::of("density-there", "density there", DENSITY),
        Output::ratio("index", "viscosity index"),
    ],
    workings: &[
        "log log (ν + 0.7) = A − B log T, through {at-40} at 40 °C and {at-100} at 100 °C: {kinematic} at {temperature}",
        "× density there {density-there} = {dynamic}",
        "index of the two figures: {index}",
    ],
    provenance: Provenance::Standard(
        "ASTM D341-20 (ν of 2 mm²/s and more), ASTM D2270-10e1, ASTM D1250-80 table 54D",
    ),
    cautions: &[
        "Hot oil burns: let it cool before you draw any, and keep hands clear of a running engine while you read its temperature.",
    ],
    run,
};

/// What is wrong with an oil, at the field that it is about.
pub(super) fn at_field(field: &'static Input) -> impl Fn(OilError) -> CalculationError {
    move |error| CalculationError::not_possible(field, error.to_string())
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (at_40, at_100) = (given.one(&AT_40)?, given.one(&AT_100)?);
    let at = given.one(&AT)?;
    let line = |at_40: f64, at_100: f64| {
        ViscosityLine::through(
            Point {
                temperature: 40.0 + FREEZING,
                viscosity: at_40,
            },
            Point {
                temperature: 100.0 + FREEZING,
                viscosity: at_100,
            },
        )
    };
    let middle = line(at_40.value(), at_100.value()).map_err(at_field(&AT_100))?;
    let thick = Estimate::of_function(&[at_40, at_100, at], |values| match values {
        [at_40, at_100, at] => {
            line(*at_40, *at_100).map_or(middle.kinematic(*at), |line| line.kinematic(*at))
        }
        _ => f64::NAN,
    });
    let usual = Estimate::exact(USUAL);
    let heavy = given.optional(HEAVY.id).unwrap_or(&usual);
    let weight = Estimate::of_function(&[heavy, at], |values| match values {
        [heavy, at] => Density::at_15(*heavy).unwrap_or(Density::usual()).at(*at),
        _ => f64::NAN,
    });
    let index = viscosity_index(at_40.value() * 1e6, at_100.value() * 1e6).ok();
    let mut answer = Answer::new()
        .with("dynamic", &thick * &weight)
        .with("kinematic", thick)
        .with("density-there", weight)
        .with_optional("index", index.map(Estimate::exact));
    if let Some(doubt) = middle.doubt(at.value()) {
        answer = answer.finding(Gravity::Caution, doubt);
    }
    if given.optional(HEAVY.id).is_none() {
        answer = answer.finding(
            Gravity::Note,
            "The density was not given: 870 kg/m³ at 15 °C, as most engine oils have, was taken.",
        );
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};
    use crate::measure::{Origin, Sources};

    fn asked(celsius: f64) -> Given {
        given(1e-6, &[("at-40", &[61.7]), ("at-100", &[11.0])])
            .with("temperature", Estimate::exact(celsius + FREEZING))
    }

    // ASTM D341 by mpmath: 61.7 and 11.0 give 17.391 at 80 °C.
    #[test]
    fn eighty_degrees_of_a_sheet() {
        let answer = worked(&OIL_VISCOSITY, &asked(80.0));
        assert!((value(&answer, "kinematic", 1e-6) - 17.391_417).abs() < 1e-5);
        assert!((value(&answer, "index", 1.0) - 172.0).abs() < 3.0);
        assert!(says(&answer, "870"));
        assert!(says(&worked(&OIL_VISCOSITY, &asked(-40.0)), "wax"));
    }

    #[test]
    fn swapped_figures_are_told() {
        let swapped = given(1e-6, &[("at-40", &[11.0]), ("at-100", &[61.7])])
            .with("temperature", Estimate::exact(350.0));
        assert_eq!(refused(&OIL_VISCOSITY, &swapped), Some("at-100"));
    }

    #[test]
    fn a_thermometer_that_may_be_off_makes_the_viscosity_uncertain() {
        let mut sources = Sources::new();
        let probe = sources.fresh("probe", Origin::Repeat);
        let given = given(1e-6, &[("at-40", &[61.7]), ("at-100", &[11.0])])
            .with("temperature", Estimate::exact(373.15).with(probe, 3.0));
        let answer = worked(&OIL_VISCOSITY, &given);
        let relative = answer.get("kinematic").unwrap().deviation() / 11e-6;
        // Near 100 °C an oil thins by about two per cent a degree.
        assert!((0.05..0.08).contains(&relative), "{relative}");
    }
}
