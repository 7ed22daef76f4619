//! The uncertainty of a measured size, put together from its causes.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

static REPEAT: Input = Input::gap(
    "repeat",
    "spread of repeated readings",
    (0.0, 0.001),
    "Measure the same place five times, taking the tool off each time; this is the standard deviation of the five.",
);
static READINGS: Input = Input::of(
    "readings",
    "readings that are averaged",
    (Kind::Count, UsualUnits::NONE),
    (1.0, 1000.0),
    "How many readings of this place go into the value; 1 when it was read once.",
);
static RESOLUTION: Input = Input::gap(
    "resolution",
    "smallest step that is read",
    (0.0, 0.001),
    "One step of the scale or of the last digit shown.",
);
static CERTIFICATE: Input = Input::gap(
    "certificate",
    "uncertainty on the tool's certificate",
    (0.0, 0.001),
    "The expanded uncertainty that the certificate states; 0 when there is none and the tool was set on a standard.",
);
static CERTIFICATE_FACTOR: Input = Input::ratio(
    "certificate-factor",
    "coverage factor on the certificate",
    (0.5, 10.0),
    "The k that the certificate states, commonly 2.",
);
static TEMPERATURE: Input = Input::of(
    "temperature",
    "temperature known to within",
    (Kind::TemperatureDifference, UsualUnits::TEMPERATURE),
    (0.0, 100.0),
    "How far part and tool may at most be from 20 °C or from each other, to either side.",
);
static SIZE: Input = Input::size(
    "size",
    "size that is measured",
    (0.0, 5.0),
    "The nominal size of the part.",
);
static EXPANSION: Input = Input::of(
    "expansion",
    "expansion that part and tool do not share",
    (Kind::Expansion, UsualUnits::EXPANSION),
    (0.0, 1e-4),
    "The difference of the expansion coefficients of part and tool: about 1 ppm/K for iron and steel, 12 ppm/K for aluminium and steel.",
);

/// The causes of a measured size's uncertainty.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct SizeBudget {
    /// From the readings' spread: s / √n.
    pub repeat: f64,
    /// From the scale: r / √12, as of a rectangular distribution of one step.
    pub resolution: f64,
    /// From the certificate: U / k.
    pub certificate: f64,
    /// From the temperature: L · Δα · a / √3.
    pub temperature: f64,
}

impl SizeBudget {
    /// The combined standard uncertainty (JCGM 100:2008, 5.1).
    #[must_use]
    pub fn combined(&self) -> f64 {
        [self.resolution, self.certificate, self.temperature]
            .iter()
            .fold(self.repeat, |sum, part| sum.hypot(*part))
    }
}

/// The uncertainty of a size by its causes.
pub static UNCERTAINTY_BUDGET: Calculation = Calculation {
    id: "uncertainty-budget",
    title: "Give-or-take of a measured size",
    purpose: "How far a measured size may be off, and which cause to work on.",
    inputs: &[
        REPEAT,
        READINGS,
        RESOLUTION,
        CERTIFICATE,
        CERTIFICATE_FACTOR,
        TEMPERATURE,
        SIZE,
        EXPANSION,
    ],
    outputs: &[
        Output::gap("standard", "standard uncertainty"),
        Output::gap("expanded", "expanded uncertainty, k = 2"),
        Output::gap("from-repeat", "of it, from the spread"),
        Output::gap("from-resolution", "of it, from the scale"),
        Output::gap("from-certificate", "of it, from the certificate"),
        Output::gap("from-temperature", "of it, from the temperature"),
    ],
    workings: &[
        "from the spread: {repeat} ÷ √{readings} = {from-repeat}",
        "from the scale: {resolution} ÷ √12 = {from-resolution}",
        "from the certificate: {certificate} ÷ {certificate-factor} = {from-certificate}",
        "from the temperature: {size} × {expansion} × {temperature} ÷ √3 = {from-temperature}",
        "together, as the root of the sum of their squares: {standard}; doubled: {expanded}",
    ],
    provenance: Provenance::Standard("JCGM 100:2008, 4.2, 4.3 and 5.1"),
    cautions: &[
        "More readings shrink only the spread. The scale, the certificate and the temperature stay.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let value = |input: &'static Input| given.one(input).map(Estimate::value);
    let budget = SizeBudget {
        repeat: value(&REPEAT)? / value(&READINGS)?.sqrt(),
        resolution: value(&RESOLUTION)? / 12.0_f64.sqrt(),
        certificate: value(&CERTIFICATE)? / value(&CERTIFICATE_FACTOR)?,
        temperature: value(&SIZE)? * value(&EXPANSION)? * value(&TEMPERATURE)? / 3.0_f64.sqrt(),
    };
    let combined = budget.combined();
    Ok(Answer::new()
        .with("standard", Estimate::exact(combined))
        .with("expanded", Estimate::exact(2.0 * combined))
        .with("from-repeat", Estimate::exact(budget.repeat))
        .with("from-resolution", Estimate::exact(budget.resolution))
        .with("from-certificate", Estimate::exact(budget.certificate))
        .with("from-temperature", Estimate::exact(budget.temperature)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn causes_add_as_the_root_of_their_squares() {
        let budget = SizeBudget {
            repeat: 3.0,
            resolution: 4.0,
            certificate: 12.0,
            temperature: 84.0,
        };
        assert!((budget.combined() - 85.0).abs() < 1e-12);
    }
}
