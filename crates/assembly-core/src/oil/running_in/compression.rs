//! Compression of all cylinders, dry and with oil on the piston.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{greatest_of, least_of};
use crate::measure::Estimate;
use crate::oil::inputs::{PRESSURE, SHARE};

const READINGS: (f64, f64) = (0.0, 8e6);

/// The lowest must be this part of the highest: army manual TM 5-4210-230-14&P-1,
/// addendum 2, and makers' manuals.
pub const LEAST_OF_HIGHEST: f64 = 0.75;

/// A new build keeps within this part of the highest: common practice.
pub const TIGHT_SPREAD: f64 = 0.10;

/// With oil on the piston a gain from here on points to the rings: common practice.
const WET_GAIN: f64 = 0.10;

static DRY: Input = Input::of(
    "dry",
    "compression of each cylinder",
    PRESSURE,
    READINGS,
    "Warm, all plugs out, throttle open, battery full, as many turns for each; in the order of the row.",
)
.taking(Takes::OneOrMore);
static WET: Input = Input::of(
    "wet",
    "the same with a spoon of oil",
    PRESSURE,
    READINGS,
    "A spoonful on each piston, a few turns, then as before; one for each or none at all.",
)
.taking(Takes::Any);
static RATIO: Input = Input::ratio(
    "ratio",
    "compression ratio",
    (4.0, 25.0),
    "To see about what a sound engine would show.",
)
.optional();

/// Compression of all cylinders.
pub static COMPRESSION_SPREAD: Calculation = Calculation {
    id: "compression-spread",
    title: "Compression of all cylinders",
    purpose: "Whether the cylinders are alike, and where a low one leaks.",
    inputs: &[DRY, WET, RATIO],
    outputs: &[
        Output::of("lowest-by-highest", "lowest by highest", SHARE),
        Output::of("spread", "spread by highest", SHARE),
        Output::of("wet-gain", "gain of the lowest with oil", SHARE),
        Output::of("about-from", "a sound engine shows about", PRESSURE),
        Output::of("about-to", "to", PRESSURE),
    ],
    workings: &[
        "lowest / highest = {lowest-by-highest}, spread = (highest − lowest) / highest = {spread}",
        "with oil the lowest gains {wet-gain}: a tenth and more points to the rings, less to valves or gasket",
        "about air × ratio^1.2 to ratio^1.3, less air: {about-from} to {about-to}",
    ],
    provenance: Provenance::Handbook(
        "US Army TM 5-4210-230-14&P-1, addendum 2: lowest not under 75 % of highest; the rest is common practice",
    ),
    cautions: &[
        "Fuel and spark off: what sprays out of the plug holes burns, and a turning engine takes fingers.",
        "New rings rise for some hundred miles: compare with the next time, not with a book.",
        "A gauge may be off by a tenth. The engine's maker's figures win.",
    ],
    run,
};

const AIR: f64 = 101_325.0;

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let dry = given.several(DRY.id);
    let wet = given.several(WET.id);
    if !wet.is_empty() && wet.len() != dry.len() {
        return Err(CalculationError::not_possible(
            &WET,
            format!(
                "there are {} wet readings and {} dry ones: give as many, or none",
                wet.len(),
                dry.len()
            ),
        ));
    }
    let (lowest, highest) = (least_of(given, &DRY)?, greatest_of(given, &DRY)?);
    if highest.value() <= 0.0 {
        return Err(CalculationError::not_possible(
            &DRY,
            "no cylinder shows any pressure: throttle, gauge, or the cam does not turn",
        ));
    }
    let part = lowest / highest;
    let spread = (highest - lowest) / highest;
    let gain = gain_of_lowest(dry, wet);
    let sound = |exponent: f64| {
        given
            .optional(RATIO.id)
            .map(|ratio| Estimate::exact(AIR) * ratio.power(exponent) - Estimate::exact(AIR))
    };
    let mut answer = Answer::new();
    if part.value() < LEAST_OF_HIGHEST {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "Cylinder {} is under 75 % of the best: find out where it leaks before going on.",
                place_of(dry, lowest) + 1
            ),
        );
        if let Some(pair) = low_neighbours(dry, highest.value()) {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "Cylinders {} and {} are both low and neighbours: the gasket between them first.",
                    pair + 1,
                    pair + 2
                ),
            );
        }
        if let Some(gain) = &gain {
            answer = answer.finding(Gravity::Note, leaks_at(gain.value()));
        }
    } else if spread.value() > TIGHT_SPREAD {
        answer = answer.finding(
            Gravity::Note,
            "Within what manuals allow, but a new build keeps within a tenth: look again after some hundred miles.",
        );
    }
    Ok(answer
        .with("lowest-by-highest", part)
        .with("spread", spread)
        .with_optional("wet-gain", gain)
        .with_optional("about-from", sound(1.2))
        .with_optional("about-to", sound(1.3)))
}

const fn leaks_at(gain: f64) -> &'static str {
    if gain >= WET_GAIN {
        "Oil lifts it: rings, or a score in the bore. Borescope next."
    } else {
        "Oil does not lift it: a valve or the gasket. Leak-down next, and listen where it hisses."
    }
}

fn place_of(values: &[Estimate], wanted: &Estimate) -> usize {
    values
        .iter()
        .position(|one| one.value() == wanted.value())
        .unwrap_or(0)
}

fn gain_of_lowest(dry: &[Estimate], wet: &[Estimate]) -> Option<Estimate> {
    let lowest = Estimate::least(dry)?;
    let with_oil = wet.get(place_of(dry, lowest))?;
    (lowest.value() > 0.0).then(|| (with_oil - lowest) / lowest)
}

fn low_neighbours(dry: &[Estimate], highest: f64) -> Option<usize> {
    let is_low = |one: &Estimate| one.value() < LEAST_OF_HIGHEST * highest;
    dry.iter()
        .zip(dry.iter().skip(1))
        .position(|(one, next)| is_low(one) && is_low(next))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    const PSI: f64 = 6_894.757_293_168_36;

    #[test]
    fn a_low_cylinder_and_what_oil_says() {
        let rings = given(
            PSI,
            &[
                ("dry", &[160.0, 110.0, 155.0, 158.0]),
                ("wet", &[170.0, 140.0, 165.0, 166.0]),
            ],
        );
        let answer = worked(&COMPRESSION_SPREAD, &rings);
        assert_eq!(value(&answer, "lowest-by-highest", 1.0), 0.6875);
        assert!(says(&answer, "Cylinder 2") && says(&answer, "rings"));
        let valve = given(
            PSI,
            &[
                ("dry", &[160.0, 110.0, 155.0, 158.0]),
                ("wet", &[170.0, 113.0, 165.0, 166.0]),
            ],
        );
        assert!(says(
            &worked(&COMPRESSION_SPREAD, &valve),
            "a valve or the gasket"
        ));
        let gasket = given(PSI, &[("dry", &[160.0, 90.0, 92.0, 158.0])]);
        assert!(says(
            &worked(&COMPRESSION_SPREAD, &gasket),
            "2 and 3 are both low"
        ));
        let even = given(PSI, &[("dry", &[160.0, 150.0, 155.0, 158.0])]);
        assert!(worked(&COMPRESSION_SPREAD, &even).findings().is_empty());
    }

    // Common practice: 8:1 shows some 164 to 205 psi.
    #[test]
    fn about_what_a_sound_engine_shows() {
        let asked = given(PSI, &[("dry", &[160.0])]).with("ratio", Estimate::exact(8.0));
        let answer = worked(&COMPRESSION_SPREAD, &asked);
        assert!((value(&answer, "about-from", PSI) - 164.0).abs() < 1.0);
        assert!((value(&answer, "about-to", PSI) - 205.0).abs() < 1.0);
        let odd = given(PSI, &[("dry", &[160.0, 150.0]), ("wet", &[160.0])]);
        assert_eq!(refused(&COMPRESSION_SPREAD, &odd), Some("wet"));
        let dead = given(PSI, &[("dry", &[0.0, 0.0])]);
        assert_eq!(refused(&COMPRESSION_SPREAD, &dead), Some("dry"));
    }
}
