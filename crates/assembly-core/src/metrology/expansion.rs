//! Size and temperature: growth, sizes brought to 20 °C, clearance of two
//! metals when hot or cold.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// The temperature at which sizes hold: 20 °C, in kelvin (ISO 1:2022).
pub const REFERENCE_TEMPERATURE: f64 = 293.15;

/// A coefficient of linear thermal expansion.
#[derive(Clone, Copy, PartialEq, PartialOrd, Debug)]
pub struct Expansion(f64);

impl Expansion {
    /// From millionths a kelvin.
    #[must_use]
    pub const fn millionths(millionths: f64) -> Self {
        Self(millionths / 1e6)
    }

    /// One a kelvin.
    #[must_use]
    pub const fn per_kelvin(self) -> f64 {
        self.0
    }

    /// Millionths a kelvin.
    #[must_use]
    pub const fn in_millionths(self) -> f64 {
        self.0 * 1e6
    }
}

const COEFFICIENT: (Kind, UsualUnits) = (Kind::Expansion, UsualUnits::EXPANSION);
const TEMPERATURE: (Kind, UsualUnits) = (Kind::Temperature, UsualUnits::TEMPERATURE);
const METALS: (f64, f64) = (0.0, 4e-5);
/// From deep cold to glowing.
const TEMPERATURES: (f64, f64) = (70.0, 1500.0);
const HOW_MUCH_IT_GROWS: &str = "About 11.4 ppm/K for grey iron, 11.5 for steel, 21 to 24 for aluminium alloys; the maker's sheet or the table of metals says it closer.";

static SIZE: Input = Input::size(
    "size",
    "size",
    (0.0, 5.0),
    "The size of the part when cold.",
);
static EXPANSION: Input = Input::of(
    "expansion",
    "expansion coefficient",
    COEFFICIENT,
    METALS,
    HOW_MUCH_IT_GROWS,
);
static RISE: Input = Input::of(
    "rise",
    "rise of temperature",
    (Kind::TemperatureDifference, UsualUnits::TEMPERATURE),
    (-300.0, 1500.0),
    "How much hotter it gets; below nothing when it is cooled.",
);

/// Growth of a part.
pub static THERMAL_GROWTH: Calculation = Calculation {
    id: "thermal-growth",
    title: "Growth by heat",
    purpose: "How much a part grows when it is heated, or shrinks when it is cooled.",
    inputs: &[SIZE, EXPANSION, RISE],
    outputs: &[
        Output::gap("growth", "growth"),
        Output::size("hot", "size when hot"),
    ],
    workings: &[
        "growth = size × coefficient × rise = {size} × {expansion} × {rise} = {growth}",
        "hot = {size} + {growth} = {hot}",
    ],
    provenance: Provenance::Derivation("linear expansion"),
    cautions: &["A heated part burns: use dry gloves and tongs."],
    run: |given| {
        let size = given.one(&SIZE)?;
        let growth = size * given.one(&EXPANSION)? * given.one(&RISE)?;
        Ok(Answer::new()
            .with("hot", size + &growth)
            .with("growth", growth))
    },
};

static MEASURED: Input = Input::size(
    "measured",
    "size as measured",
    (0.0, 5.0),
    "As the tool showed it, the tool itself being at 20 °C or corrected for.",
);
static PART_TEMPERATURE: Input = Input::of(
    "temperature",
    "temperature of the part",
    TEMPERATURE,
    (200.0, 800.0),
    "Lay the thermometer on the part for some minutes; the air is not the part.",
);

/// A size brought to the reference temperature.
pub static SIZE_AT_REFERENCE: Calculation = Calculation {
    id: "size-at-reference-temperature",
    title: "Size at 20 °C",
    purpose: "What a part measured warm or cold measures at 20 °C, where drawings hold.",
    inputs: &[MEASURED, EXPANSION, PART_TEMPERATURE],
    outputs: &[
        Output::size("at-reference", "size at 20 °C"),
        Output::gap("correction", "correction"),
    ],
    workings: &[
        "size at 20 °C = measured ÷ (1 + coefficient × (temperature − 20 °C)) = {measured} ÷ (1 + {expansion} × ({temperature} − 20 °C)) = {at-reference}",
        "that is {correction} from what was measured",
    ],
    provenance: Provenance::Standard("ISO 1:2022"),
    cautions: &[
        "A tool of steel at the part's temperature has grown too: then only the difference of the two coefficients counts.",
    ],
    run: |given| {
        let measured = given.one(&MEASURED)?;
        let warmer = given.one(&PART_TEMPERATURE)? - REFERENCE_TEMPERATURE;
        let at_reference = measured / (given.one(&EXPANSION)? * warmer + 1.0);
        Ok(Answer::new()
            .with("correction", &at_reference - measured)
            .with("at-reference", at_reference))
    },
};

static FIT_DIAMETER: Input = Input::size(
    "diameter",
    "diameter of the fit",
    (0.0005, 1.0),
    "The nominal diameter that both parts share.",
);
static COLD_CLEARANCE: Input = Input::gap(
    "clearance",
    "clearance as measured",
    (-0.005, 0.01),
    "On the diameter; below nothing when it is an interference.",
);
static INNER: Input = Input::of(
    "inner-expansion",
    "expansion coefficient of the inner part",
    COEFFICIENT,
    METALS,
    HOW_MUCH_IT_GROWS,
);
static OUTER: Input = Input::of(
    "outer-expansion",
    "expansion coefficient of the outer part",
    COEFFICIENT,
    METALS,
    HOW_MUCH_IT_GROWS,
);
static AT: Input = Input::of(
    "measured-at",
    "temperature while measuring",
    TEMPERATURE,
    TEMPERATURES,
    "Of both parts. Leave it out when it was 20 °C.",
)
.optional();
static INNER_AT: Input = Input::of(
    "inner-at",
    "temperature of the inner part then",
    TEMPERATURE,
    TEMPERATURES,
    "The temperature for which you want to know the clearance: 20 °C to compare with a sheet, or running hot.",
);
static OUTER_AT: Input = Input::of(
    "outer-at",
    "temperature of the outer part then",
    TEMPERATURE,
    TEMPERATURES,
    "Leave it out when it is as hot as the inner part.",
)
.optional();

/// The clearance of two metals at another temperature.
pub static CLEARANCE_AT_TEMPERATURE: Calculation = Calculation {
    id: "clearance-at-temperature",
    title: "Clearance at another temperature",
    purpose: "What a clearance between two metals becomes at 20 °C or running hot.",
    inputs: &[
        FIT_DIAMETER,
        COLD_CLEARANCE,
        INNER,
        OUTER,
        AT,
        INNER_AT,
        OUTER_AT,
    ],
    outputs: &[
        Output::gap("then", "clearance at that temperature"),
        Output::gap("change", "change"),
    ],
    workings: &[
        "change = diameter × (outer coefficient × its rise − inner coefficient × its rise) = {change}",
        "clearance then = {clearance} + {change} = {then}",
    ],
    provenance: Provenance::Derivation("both parts expand freely from the size they share"),
    cautions: &[
        "Running parts are not of one temperature: a piston crown is far hotter than the bore. The maker's cold clearance already counts on that.",
    ],
    run: run_clearance,
};

fn run_clearance(given: &Given) -> Result<Answer, CalculationError> {
    let diameter = given.one(&FIT_DIAMETER)?;
    let clearance = given.one(&COLD_CLEARANCE)?;
    let at = given
        .optional(AT.id)
        .cloned()
        .unwrap_or_else(|| Estimate::exact(REFERENCE_TEMPERATURE));
    let inner_at = given.one(&INNER_AT)?;
    let outer_at = given.optional(OUTER_AT.id).unwrap_or(inner_at);
    let outer = given.one(&OUTER)? * (outer_at - &at);
    let inner = given.one(&INNER)? * (inner_at - &at);
    let change = (outer - inner) * diameter;
    let then = clearance + &change;
    let seized = clearance.value() >= 0.0 && then.value() < 0.0;
    let answer = Answer::new().with("then", then).with("change", change);
    Ok(if seized {
        answer.finding(
            Gravity::Stop,
            "At that temperature the parts have grown into each other.",
        )
    } else {
        answer
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Origin, Sources};

    const INCH: f64 = 0.0254;
    const CELSIUS: f64 = 273.15;

    fn fahrenheit(degrees: f64) -> f64 {
        (degrees + 459.67) * 5.0 / 9.0
    }

    fn clearance(diameter: f64, inner: f64, outer: f64, measured_at: f64) -> f64 {
        let given = Given::new()
            .with("diameter", Estimate::exact(diameter))
            .with("clearance", Estimate::exact(0.0))
            .with("inner-expansion", Estimate::exact(inner))
            .with("outer-expansion", Estimate::exact(outer))
            .with("measured-at", Estimate::exact(measured_at))
            .with("inner-at", Estimate::exact(REFERENCE_TEMPERATURE));
        CLEARANCE_AT_TEMPERATURE
            .answer(&given)
            .unwrap()
            .get("change")
            .unwrap()
            .value()
    }

    // Common practice: an aluminium piston in a 4 in iron bore measured at 40 °F
    // reads 0.0006 to 0.0007 in too loose, so the clearance at 68 °F is smaller.
    #[test]
    fn a_cold_piston_reads_too_loose() {
        let change = clearance(4.0 * INCH, 12.0e-6 * 1.8, 5.9e-6 * 1.8, fahrenheit(40.0));
        assert!(
            (-0.0007..=-0.0006).contains(&(change / INCH)),
            "{}",
            change / INCH
        );
    }

    // Common practice: an aluminium housing over a steel crank measured at 40 °F
    // reads about 0.0005 in too tight on 2.7 in.
    #[test]
    fn a_cold_alloy_housing_reads_too_tight() {
        let change = clearance(2.7 * INCH, 6.5e-6 * 1.8, 12.5e-6 * 1.8, fahrenheit(40.0));
        assert!(
            (change / INCH - 0.0005).abs() < 0.000_06,
            "{}",
            change / INCH
        );
    }

    // Common practice: iron and steel nearly cancel, 0.00004 in on 2.5 in at 28 °F off.
    #[test]
    fn iron_and_steel_nearly_cancel() {
        let change = clearance(2.5 * INCH, 6.5e-6 * 1.8, 5.9e-6 * 1.8, fahrenheit(40.0));
        assert!((change.abs() / INCH - 0.000_04).abs() < 0.000_005);
    }

    #[test]
    fn a_doubtful_temperature_makes_the_size_doubtful() {
        let mut sources = Sources::new();
        let doubt = sources.fresh("thermometer", Origin::Temperature);
        let given = Given::new()
            .with("measured", Estimate::exact(0.1))
            .with("expansion", Estimate::exact(11.5e-6))
            .with(
                "temperature",
                Estimate::exact(28.0 + CELSIUS).with(doubt, 1.0),
            );
        let answer = SIZE_AT_REFERENCE.answer(&given).unwrap();
        let size = answer.get("at-reference").unwrap();
        assert!((size.value() - 0.1 / (1.0 + 11.5e-6 * 8.0)).abs() < 1e-15);
        assert!((size.deviation() - 1.15e-6).abs() < 1e-9);
    }

    #[test]
    fn a_clearance_that_closes_when_hot_stops_the_builder() {
        let given = Given::new()
            .with("diameter", Estimate::exact(0.1))
            .with("clearance", Estimate::exact(50e-6))
            .with("inner-expansion", Estimate::exact(22e-6))
            .with("outer-expansion", Estimate::exact(11.4e-6))
            .with("inner-at", Estimate::exact(200.0 + CELSIUS))
            .with("outer-at", Estimate::exact(100.0 + CELSIUS));
        let answer = CLEARANCE_AT_TEMPERATURE.answer(&given).unwrap();
        assert!(answer.get("then").unwrap().value() < 0.0);
        assert_eq!(answer.findings()[0].gravity, Gravity::Stop);
    }
}
