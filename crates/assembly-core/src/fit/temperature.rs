//! Fits of two metals at another temperature than the one they were measured
//! at: at 20 °C, where drawings and sheets hold (ISO 1), or running hot.
//!
//! Iron and steel grow almost alike, so their fits hardly move. Aluminium grows
//! twice as much, and its fits do.

use uom::si::f64::{Length, TemperatureCoefficient, ThermodynamicTemperature};

use crate::describe::{
    Answer, Calculation, CalculationError, Finding, Given, Gravity, Input, Output, Provenance,
    UsualUnits, length_text,
};
use crate::measure::{Estimate, Measured, Window};
use crate::metrology::expansion::REFERENCE_TEMPERATURE;
use crate::quantity::{Kind, Si};

/// A part or a tool as it was while measuring.
#[derive(Clone, PartialEq, Debug)]
pub struct Warmth {
    /// How much its metal grows. The doubt of the book value belongs in it.
    pub expansion: Measured<TemperatureCoefficient>,
    /// How warm it was. The doubt of the thermometer belongs in it; parts that
    /// lay side by side share it.
    pub at: Measured<ThermodynamicTemperature>,
}

impl Warmth {
    /// 1 + α (T − 20 °C): by what part the size differs from that at 20 °C.
    fn growth(&self, at: &Measured<ThermodynamicTemperature>) -> Estimate {
        let warmer = at.estimate() - REFERENCE_TEMPERATURE;
        self.expansion.estimate() * warmer + 1.0
    }
}

/// The size of a part at 20 °C, read with a tool of another metal or warmth:
/// size = reading × (1 + α of the tool × its warmth above 20 °C)
/// ÷ (1 + α of the part × its warmth above 20 °C).
///
/// A tool that was set on a standard in the warmth of the job is as warm as the
/// standard, which is what counts.
#[must_use]
pub fn size_at_reference(
    reading: &Measured<Length>,
    part: &Warmth,
    tool: &Warmth,
) -> Measured<Length> {
    let of_tool = tool.growth(&tool.at);
    let of_part = part.growth(&part.at);
    Measured::from_estimate(reading.estimate() * of_tool / of_part)
}

/// A clearance brought from the warmth of the measuring to another.
#[derive(Clone, PartialEq, Debug)]
pub struct Corrected {
    /// The clearance then.
    pub clearance: Measured<Length>,
    /// What was added to get it.
    pub correction: Measured<Length>,
}

/// The clearance of two parts that share a diameter, when each of them is as
/// warm as said. The diameter is the inner part's as it was measured.
///
/// ```
/// use assembly_core::fit::temperature::{Warmth, clearance_at};
/// use assembly_core::measure::Measured;
/// use assembly_core::quantity::Si;
/// use uom::si::f64::{Length, TemperatureCoefficient, ThermodynamicTemperature};
///
/// let celsius = |t: f64| Measured::exact(ThermodynamicTemperature::from_si(t + 273.15));
/// let warmth = |millionths: f64| Warmth {
///     expansion: Measured::exact(TemperatureCoefficient::from_si(millionths * 1e-6)),
///     at: celsius(5.0),
/// };
/// let length = |metres: f64| Measured::exact(Length::from_si(metres));
/// // An aluminium piston in an iron bore, measured in a cold garage.
/// let corrected = clearance_at(
///     &length(75e-6),
///     &length(0.1016),
///     (&warmth(21.0), &celsius(20.0)),
///     (&warmth(11.0), &celsius(20.0)),
/// );
/// assert!((corrected.clearance.value().to_si() - 60e-6).abs() < 1e-6);
/// ```
#[must_use]
pub fn clearance_at(
    clearance: &Measured<Length>,
    diameter: &Measured<Length>,
    (inner, inner_then): (&Warmth, &Measured<ThermodynamicTemperature>),
    (outer, outer_then): (&Warmth, &Measured<ThermodynamicTemperature>),
) -> Corrected {
    let (inside, outside) = (
        diameter.estimate(),
        diameter.estimate() + clearance.estimate(),
    );
    let grown = |size: &Estimate, warmth: &Warmth, then| {
        size * warmth.growth(then) / warmth.growth(&warmth.at)
    };
    let then = grown(&outside, outer, outer_then) - grown(inside, inner, inner_then);
    Corrected {
        correction: Measured::from_estimate(&then - clearance.estimate()),
        clearance: Measured::from_estimate(then),
    }
}

/// The clearance of two parts at 20 °C.
#[must_use]
pub fn clearance_at_reference(
    clearance: &Measured<Length>,
    diameter: &Measured<Length>,
    inner: &Warmth,
    outer: &Warmth,
) -> Corrected {
    let reference = Measured::exact(ThermodynamicTemperature::from_si(REFERENCE_TEMPERATURE));
    clearance_at(
        clearance,
        diameter,
        (inner, &reference),
        (outer, &reference),
    )
}

/// From this part of the window on a correction is worth a warning.
pub const WORTH_TELLING: f64 = 0.25;

/// A warning when a correction is more than a quarter of the window, so that a
/// verdict without it could be wrong. `None` when it is less, or a side of the
/// window is open.
#[must_use]
pub fn warning(correction: &Measured<Length>, window: &Window) -> Option<Finding> {
    let (by, width) = (correction.value().to_si(), window.width()?);
    (by.abs() > WORTH_TELLING * width).then(|| Finding {
        gravity: Gravity::Caution,
        text: format!(
            "measured at this temperature the clearance reads {} too {}: more than a quarter of the window. Let parts and tools lie side by side overnight, and measure their temperature",
            length_text(by.abs()),
            if by < 0.0 { "loose" } else { "tight" },
        ),
    })
}

const COEFFICIENT: (Kind, UsualUnits) = (Kind::Expansion, UsualUnits::EXPANSION);
const TEMPERATURE: (Kind, UsualUnits) = (Kind::Temperature, UsualUnits::TEMPERATURE);
const METALS: (f64, f64) = (0.0, 4e-5);
/// From a hard frost to too hot to touch for long.
const BENCH: (f64, f64) = (243.15, 353.15);

static READING: Input = Input::size(
    "reading",
    "size as read",
    (0.0, 5.0),
    "As the tool showed it.",
);
static PART: Input = Input::of(
    "part-expansion",
    "expansion coefficient of the part",
    COEFFICIENT,
    METALS,
    "About 11 ppm/K for grey iron and 12 for steel, 21 to 24 for aluminium alloys.",
);
static PART_AT: Input = Input::of(
    "part-at",
    "temperature of the part",
    TEMPERATURE,
    BENCH,
    "Lay the thermometer on the part for some minutes; the air is not the part.",
);
static TOOL: Input = Input::of(
    "tool-expansion",
    "expansion coefficient of the tool",
    COEFFICIENT,
    METALS,
    "About 11.5 ppm/K: measuring tools are of steel.",
);
static TOOL_AT: Input = Input::of(
    "tool-at",
    "temperature of the tool",
    TEMPERATURE,
    BENCH,
    "A tool held in the hand for some minutes is 5 °C or more above the bench.",
);

/// A size read with a tool that is not at 20 °C either.
pub static SIZE_BY_WARM_TOOL: Calculation = Calculation {
    id: "size-by-warm-tool",
    title: "Size at 20 °C, tool warm or cold too",
    purpose: "What a part measures at 20 °C when neither part nor tool were at 20 °C.",
    inputs: &[READING, PART, PART_AT, TOOL, TOOL_AT],
    outputs: &[
        Output::size("at-reference", "size at 20 °C"),
        Output::gap("correction", "correction"),
    ],
    workings: &[
        "tool: 1 + {tool-expansion} × ({tool-at} − 20 °C); part: 1 + {part-expansion} × ({part-at} − 20 °C)",
        "size at 20 °C = {reading} × tool ÷ part = {at-reference}",
        "that is {correction} from what was read",
    ],
    provenance: Provenance::Standard("ISO 1:2022"),
    cautions: &[
        "The best correction is none: let part, tool and standard lie side by side overnight.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let warmth = |expansion: &'static Input, at: &'static Input| {
        Ok::<_, CalculationError>(Warmth {
            expansion: Measured::from_estimate(given.one(expansion)?.clone()),
            at: Measured::from_estimate(given.one(at)?.clone()),
        })
    };
    let reading = Measured::from_estimate(given.one(&READING)?.clone());
    let size = size_at_reference(
        &reading,
        &warmth(&PART, &PART_AT)?,
        &warmth(&TOOL, &TOOL_AT)?,
    );
    Ok(Answer::new()
        .with("correction", (&size - &reading).into_estimate())
        .with("at-reference", size.into_estimate()))
}

#[cfg(test)]
mod tests;
