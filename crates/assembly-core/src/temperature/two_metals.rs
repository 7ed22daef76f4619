//! A clearance between two metals measured at the bench's temperature, brought
//! to 20 °C and, if wanted, to running temperature.

use uom::si::f64::{Length, ThermodynamicTemperature};

use super::bench_metal::{BENCH_METALS, BenchMetal, CHOICES};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::fit::temperature::{Corrected, Warmth, clearance_at, clearance_at_reference, warning};
use crate::measure::{Estimate, Measured, Sources, Window};
use crate::quantity::{Kind, Si};

const TEMPERATURE: (Kind, UsualUnits) = (Kind::Temperature, UsualUnits::TEMPERATURE);
/// From a hard frost to too hot to touch.
const BENCH: (f64, f64) = (243.15, 353.15);
/// What the parts of a running engine reach.
const RUNNING: (f64, f64) = (253.15, 700.0);

static CLEARANCE: Input = Input::gap(
    "clearance",
    "clearance as measured",
    (-0.002, 0.005),
    "On the diameter, both parts measured at one temperature with tools of the same temperature; below nothing when they interfere.",
);
static SIZE: Input = Input::size(
    "size",
    "diameter of the fit",
    (0.001, 1.0),
    "The size that both parts share.",
);
static INNER: Input = Input::one_of(
    "inner-metal",
    "inner part is of",
    CHOICES,
    "Piston, journal or stem. A magnet holds on iron and steel.",
);
static OUTER: Input = Input::one_of(
    "outer-metal",
    "outer part is of",
    CHOICES,
    "Bore, housing or guide. A magnet holds on iron and steel.",
);
static AT: Input = Input::of(
    "measured-at",
    "temperature of the parts",
    TEMPERATURE,
    BENCH,
    "Lay the thermometer on the part for some minutes; the air is not the part.",
);
static INNER_RUNNING: Input = Input::of(
    "inner-running",
    "inner part when running",
    TEMPERATURE,
    RUNNING,
    "Only to see the running clearance: a skirt is far hotter than its bore.",
)
.optional();
static OUTER_RUNNING: Input = Input::of(
    "outer-running",
    "outer part when running",
    TEMPERATURE,
    RUNNING,
    "Leave it out when it runs as hot as the inner part.",
)
.optional();
static LOW: Input = Input::gap(
    "low-limit",
    "least on the sheet",
    (-0.002, 0.005),
    "To see whether the correction matters for this window.",
)
.optional();
static HIGH: Input = Input::gap(
    "high-limit",
    "most on the sheet",
    (-0.002, 0.005),
    "To see whether the correction matters for this window.",
)
.optional();

/// A fit of two metals as a quick check.
pub static TWO_METALS: Calculation = Calculation {
    id: "two-metals",
    title: "Fit of two metals, measured cold or warm",
    purpose: "What a clearance measured in a cold or hot garage is at 20 °C, where sheets hold, and what it becomes when running.",
    inputs: &[
        CLEARANCE,
        SIZE,
        INNER,
        OUTER,
        AT,
        INNER_RUNNING,
        OUTER_RUNNING,
        LOW,
        HIGH,
    ],
    outputs: &[
        Output::gap("at-reference", "clearance at 20 °C"),
        Output::gap("correction", "correction"),
        Output::gap(
            "doubt",
            "give-or-take of the correction, for the metals alone",
        ),
        Output::gap("running", "clearance when running"),
    ],
    workings: &[
        "correction = size × (growth of the outer part − growth of the inner part) from {measured-at} to 20 °C = {correction}, give or take {doubt}",
        "at 20 °C = {clearance} + {correction} = {at-reference}",
        "running: inner part at {inner-running}, outer part at {outer-running}: {running}",
    ],
    provenance: Provenance::Standard(
        "ISO 1:2022 for the reference temperature; growth of the metals by common practice",
    ),
    cautions: &[
        "The best correction is none: let parts and tools lie side by side overnight.",
        "Iron and steel grow almost alike. Aluminium grows twice as much: there it matters.",
        "The maker's cold clearance already counts on what happens when running.",
    ],
    run,
};

fn metal(given: &Given, input: &'static Input) -> Result<&'static BenchMetal, CalculationError> {
    let chosen = given.choice(input)?;
    BENCH_METALS
        .iter()
        .find(|metal| metal.id == chosen.id)
        .ok_or_else(|| CalculationError::not_possible(input, "choose one of the listed metals."))
}

fn typed<Q: Si>(estimate: &Estimate) -> Measured<Q> {
    Measured::from_estimate(estimate.clone())
}

/// A part as warm as it was, its metal's growth taken as exact.
fn exact_warmth(metal: &BenchMetal, at: &Measured<ThermodynamicTemperature>) -> Warmth {
    Warmth {
        expansion: Measured::exact(Si::from_si(metal.expansion)),
        at: at.clone(),
    }
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let clearance: Measured<Length> = typed(given.one(&CLEARANCE)?);
    let size: Measured<Length> = typed(given.one(&SIZE)?);
    let at: Measured<ThermodynamicTemperature> = typed(given.one(&AT)?);
    let (inner_metal, outer_metal) = (metal(given, &INNER)?, metal(given, &OUTER)?);
    let (inner, outer) = (
        exact_warmth(inner_metal, &at),
        exact_warmth(outer_metal, &at),
    );
    let Corrected {
        clearance: at_reference,
        correction,
    } = clearance_at_reference(&clearance, &size, &inner, &outer);
    let mut answer = Answer::new();
    if let Some(window) = window(given)?
        && let Some(warned) = warning(&correction, &window)
    {
        answer = answer.finding(warned.gravity, warned.text);
    }
    if let Some(inner_then) = given.optional(INNER_RUNNING.id) {
        let outer_then = given.optional(OUTER_RUNNING.id).unwrap_or(inner_then);
        let running = clearance_at(
            &clearance,
            &size,
            (&inner, &typed(inner_then)),
            (&outer, &typed(outer_then)),
        )
        .clearance;
        if clearance.value().to_si() >= 0.0 && running.value().to_si() < 0.0 {
            answer = answer.finding(
                Gravity::Stop,
                "At that temperature the parts have grown into each other.",
            );
        }
        answer = answer.with("running", running.into_estimate());
    }
    Ok(answer
        .with("at-reference", at_reference.into_estimate())
        .with("correction", correction.into_estimate())
        .with(
            "doubt",
            doubt(&clearance, &size, &at, inner_metal, outer_metal),
        ))
}

/// What is not known of the two metals, as one standard deviation of the
/// correction. Worked out apart from the given values, whose causes of error
/// belong to a register that is not at hand here.
fn doubt(
    clearance: &Measured<Length>,
    size: &Measured<Length>,
    at: &Measured<ThermodynamicTemperature>,
    inner: &BenchMetal,
    outer: &BenchMetal,
) -> Estimate {
    let mut sources = Sources::new();
    let at = Measured::exact(at.value());
    let inner = inner.warmth(at.clone(), &mut sources);
    let outer = outer.warmth(at, &mut sources);
    let corrected = clearance_at_reference(
        &Measured::exact(clearance.value()),
        &Measured::exact(size.value()),
        &inner,
        &outer,
    );
    Estimate::exact(corrected.correction.give_or_take().to_si())
}

fn window(given: &Given) -> Result<Option<Window>, CalculationError> {
    let limit = |input: &Input| given.optional(input.id).map(Estimate::value);
    match (limit(&LOW), limit(&HIGH)) {
        (None, None) => Ok(None),
        (low, high) => Window::new(low, high)
            .map(Some)
            .map_err(|error| CalculationError::not_possible(&LOW, error.to_string())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 0.0254;
    const IRON: f64 = 0.0;
    const STEEL: f64 = 1.0;
    const PISTON: f64 = 2.0;
    const CAST: f64 = 3.0;

    fn cold(size: f64, inner: f64, outer: f64) -> Given {
        Given::new()
            .with("clearance", Estimate::exact(0.0040 * INCH))
            .with("size", Estimate::exact(size * INCH))
            .with("inner-metal", Estimate::exact(inner))
            .with("outer-metal", Estimate::exact(outer))
            .with("measured-at", Estimate::exact((40.0 - 32.0) / 1.8 + 273.15))
    }

    fn inch(answer: &Answer, id: &str) -> f64 {
        answer.get(id).unwrap().value() / INCH
    }

    // The trade's own figures at 40 °F (common practice).
    #[test]
    fn a_cold_piston_is_tighter_than_it_reads_and_a_cold_housing_looser() {
        let piston = TWO_METALS.answer(&cold(4.0, PISTON, IRON)).unwrap();
        assert!((inch(&piston, "correction") + 0.000_68).abs() < 0.000_03);
        assert!((inch(&piston, "at-reference") - 0.003_32).abs() < 0.000_03);
        let housing = TWO_METALS.answer(&cold(2.7, STEEL, CAST)).unwrap();
        assert!((inch(&housing, "correction") - 0.000_45).abs() < 0.000_06);
        let iron = TWO_METALS.answer(&cold(2.5, STEEL, IRON)).unwrap();
        assert!(inch(&iron, "correction").abs() < 0.000_05);
    }

    #[test]
    fn a_correction_beyond_a_quarter_of_the_window_is_warned_of() {
        let window = |given: Given, low: f64, high: f64| {
            let given = given
                .with("low-limit", Estimate::exact(low * INCH))
                .with("high-limit", Estimate::exact(high * INCH));
            TWO_METALS.answer(&given).unwrap().findings().len()
        };
        assert_eq!(window(cold(4.0, PISTON, IRON), 0.0035, 0.0050), 1);
        assert_eq!(window(cold(4.0, PISTON, IRON), 0.0020, 0.0060), 0);
        assert_eq!(window(cold(2.5, STEEL, IRON), 0.0018, 0.0025), 0);
    }

    #[test]
    fn limits_upside_down_are_named() {
        let given = cold(4.0, PISTON, IRON)
            .with("low-limit", Estimate::exact(0.0060 * INCH))
            .with("high-limit", Estimate::exact(0.0020 * INCH));
        let error = TWO_METALS.answer(&given).unwrap_err();
        assert_eq!(error.field(), Some("low-limit"));
    }

    #[test]
    fn a_piston_that_grows_into_its_bore_is_a_stop() {
        let given = cold(4.0, PISTON, IRON)
            .with("inner-running", Estimate::exact(520.0))
            .with("outer-running", Estimate::exact(380.0));
        let answer = TWO_METALS.answer(&given).unwrap();
        assert!(inch(&answer, "running") < 0.0);
        assert_eq!(answer.findings()[0].gravity, Gravity::Stop);
    }
}
