//! A gap felt with blades: it lies between the stack that goes and the one that
//! does not.

use thiserror::Error;
use uom::si::f64::Length;

use super::instrument::rounding_deviation;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::measure::{Measured, Origin, Sources};
use crate::quantity::Si;

/// With more blades than this, what lies between them counts too. Common practice.
const MOST_BLADES: usize = 3;

/// Why blades say nothing of a gap.
#[derive(Clone, PartialEq, Debug, Error)]
pub enum FeelerError {
    /// Nothing goes.
    #[error("no blade that goes is there: find the thickest that slides with a light drag")]
    NothingGoes,
    /// What does not go is thinner than what goes.
    #[error(
        "what does not go ({stops}) is no thicker than what goes ({goes}): are the two swapped?"
    )]
    Swapped {
        /// The thickness that goes.
        goes: String,
        /// The thickness that does not.
        stops: String,
    },
}

/// A gap from the blades of the thickest stack that goes and of the thinnest
/// that does not. Each blade brings its own error, so a stack of many is less
/// sure; where in the step between the two stacks the gap lies, nobody knows,
/// which is a cause of error of its own. Without a stack that does not go, the
/// gap is what goes.
///
/// ```
/// use assembly_core::measure::{Measured, Sources};
/// use assembly_core::quantity::Si;
/// use assembly_core::tool::felt_gap;
/// use uom::si::f64::Length;
///
/// let thou = |blade: f64| Measured::exact(Length::from_si(blade * 0.0000254));
/// let mut sources = Sources::new();
/// let gap = felt_gap(&[thou(12.0), thou(4.0)], &[thou(17.0)], &mut sources).unwrap();
/// assert!((gap.value().to_si() / 0.0000254 - 16.5).abs() < 1e-9);
/// ```
///
/// # Errors
/// [`FeelerError`] when nothing goes, or what does not go is no thicker.
pub fn felt_gap(
    goes: &[Measured<Length>],
    stops: &[Measured<Length>],
    sources: &mut Sources,
) -> Result<Measured<Length>, FeelerError> {
    let goes = stack(goes).ok_or(FeelerError::NothingGoes)?;
    let Some(stops) = stack(stops) else {
        return Ok(goes);
    };
    let step = stops.value().to_si() - goes.value().to_si();
    if step <= 0.0 {
        return Err(swapped(goes.value().to_si(), stops.value().to_si()));
    }
    let between = sources.fresh("feeler", Origin::Rounding);
    let middle = (goes + stops) * 0.5;
    Ok(middle.with(between, Length::from_si(rounding_deviation(step))))
}

fn swapped(goes: f64, stops: f64) -> FeelerError {
    FeelerError::Swapped {
        goes: length_text(goes),
        stops: length_text(stops),
    }
}

fn stack(blades: &[Measured<Length>]) -> Option<Measured<Length>> {
    let (first, rest) = blades.split_first()?;
    Some(rest.iter().fold(first.clone(), |sum, blade| sum + blade))
}

const BLADES: (f64, f64) = (0.000_01, 0.005);

static GOES: Input = Input::gap(
    "goes",
    "blades that go",
    BLADES,
    "Every blade of the thickest stack that slides with a light drag, blades wiped clean.",
)
.one_or_more();

static STOPS: Input = Input::gap(
    "stops",
    "blades that do not go",
    BLADES,
    "Every blade of the next thicker stack, the one that will not start.",
)
.taking(Takes::Any);

/// A gap from the blades that go and those that do not.
pub static FEELER_STACK: Calculation = Calculation {
    id: "feeler-stack",
    title: "Gap by feeler blades",
    purpose: "What a gap is when one stack of blades goes and the next does not.",
    inputs: &[GOES, STOPS],
    outputs: &[
        Output::gap("least", "at least"),
        Output::gap("greatest", "at most"),
        Output::gap("middle", "middle"),
    ],
    workings: &[
        "at least = sum of the blades that go = {goes} = {least}",
        "at most = sum of the blades that do not = {stops} = {greatest}",
        "middle = half way between = {middle}",
    ],
    provenance: Provenance::Derivation("a gap lies between what goes and what does not"),
    cautions: &["Never force a blade: it springs the parts apart, and worn corners read large."],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (goes, stops) = (given.measured(GOES.id), given.measured(STOPS.id));
    let nothing = || CalculationError::not_possible(&GOES, FeelerError::NothingGoes.to_string());
    let least = stack(&goes).ok_or_else(nothing)?.into_estimate();
    let greatest = stack(&stops).map(Measured::into_estimate);
    if let Some(greatest) = &greatest
        && greatest.value() <= least.value()
    {
        let error = swapped(least.value(), greatest.value());
        return Err(CalculationError::not_possible(&STOPS, error.to_string()));
    }
    let middle = greatest.as_ref().map(|greatest| (&least + greatest) * 0.5);
    let many = goes.len().max(stops.len()) > MOST_BLADES;
    let alone = greatest.is_none();
    let mut answer = Answer::new()
        .with("least", least)
        .with_optional("greatest", greatest)
        .with_optional("middle", middle);
    if many {
        answer = answer.finding(
            Gravity::Caution,
            "More than three blades: each adds its own error, and oil or air between them counts too. Use fewer, thicker blades.",
        );
    }
    if alone {
        answer = answer.finding(
            Gravity::Note,
            "Try the next thicker stack too: only what does not go says how much bigger the gap may be.",
        );
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;

    const THOU: f64 = 0.000_025_4;

    fn blades(thous: &[f64], sources: &mut Sources) -> Vec<Measured<Length>> {
        thous
            .iter()
            .map(|thou| {
                let blade = sources.fresh("feeler", Origin::Stated);
                Measured::exact(Length::from_si(thou * THOU)).with(blade, Length::from_si(5e-6))
            })
            .collect()
    }

    #[test]
    fn each_blade_of_a_stack_adds_its_own_error() {
        let mut sources = Sources::new();
        let single = blades(&[12.0], &mut sources);
        let stacked = blades(&[4.0, 4.0, 4.0], &mut sources);
        let single = felt_gap(&single, &[], &mut sources).unwrap();
        let stacked = felt_gap(&stacked, &[], &mut sources).unwrap();
        assert!((single.value().to_si() - stacked.value().to_si()).abs() < 1e-15);
        let ratio = stacked.give_or_take().to_si() / single.give_or_take().to_si();
        assert!((ratio - 3.0_f64.sqrt()).abs() < 1e-9);
    }

    #[test]
    fn the_step_of_the_set_is_a_cause_of_error() {
        let mut sources = Sources::new();
        let exact = |thou: f64| vec![Measured::exact(Length::from_si(thou * THOU))];
        let gap = felt_gap(&exact(16.0), &exact(17.0), &mut sources).unwrap();
        assert!((gap.value().to_si() / THOU - 16.5).abs() < 1e-9);
        assert!((gap.give_or_take().to_si() / THOU - 1.0 / 12_f64.sqrt()).abs() < 1e-9);
    }

    #[test]
    fn blades_that_contradict_each_other_are_named() {
        let mut sources = Sources::new();
        assert_eq!(
            felt_gap(&[], &[], &mut sources),
            Err(FeelerError::NothingGoes)
        );
        let (thick, thin) = (blades(&[17.0], &mut sources), blades(&[16.0], &mut sources));
        let error = felt_gap(&thick, &thin, &mut sources).unwrap_err();
        assert!(error.to_string().contains("are the two swapped"), "{error}");
        let given = Given::new()
            .with("goes", Estimate::exact(17.0 * THOU))
            .with("stops", Estimate::exact(16.0 * THOU));
        assert_eq!(
            FEELER_STACK.answer(&given).unwrap_err().field(),
            Some("stops")
        );
    }

    #[test]
    fn the_quick_check_says_between_what_the_gap_lies() {
        let given = Given::new()
            .with("goes", Estimate::exact(12.0 * THOU))
            .with("goes", Estimate::exact(4.0 * THOU))
            .with("stops", Estimate::exact(17.0 * THOU));
        let answer = FEELER_STACK.answer(&given).unwrap();
        let thou = |id: &str| answer.get(id).unwrap().value() / THOU;
        assert!((thou("least") - 16.0).abs() < 1e-9);
        assert!((thou("greatest") - 17.0).abs() < 1e-9);
        assert!((thou("middle") - 16.5).abs() < 1e-9);
    }
}
