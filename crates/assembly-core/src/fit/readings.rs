//! What most fits are made of: the span of some readings, the clearance of a
//! hole and a shaft.

use crate::describe::{CalculationError, Given, Input};
use crate::measure::Estimate;

/// The least of an input's values.
pub(crate) fn least_of<'a>(
    given: &'a Given,
    input: &'static Input,
) -> Result<&'a Estimate, CalculationError> {
    Estimate::least(given.several(input.id)).map_or_else(|| given.one(input), Ok)
}

/// The greatest of an input's values.
pub(crate) fn greatest_of<'a>(
    given: &'a Given,
    input: &'static Input,
) -> Result<&'a Estimate, CalculationError> {
    Estimate::greatest(given.several(input.id)).map_or_else(|| given.one(input), Ok)
}

/// The mean of an input's values.
pub(crate) fn mean_of(given: &Given, input: &'static Input) -> Result<Estimate, CalculationError> {
    Estimate::mean(given.several(input.id)).map_or_else(|| given.one(input).cloned(), Ok)
}

/// The greatest of some values less the least; nothing of none.
pub(crate) fn span(values: &[Estimate]) -> Estimate {
    match (Estimate::greatest(values), Estimate::least(values)) {
        (Some(greatest), Some(least)) => greatest - least,
        _ => Estimate::exact(0.0),
    }
}

/// The greatest step from one value to the next in a row; `None` of fewer than two.
pub(crate) fn greatest_step(row: &[Estimate]) -> Option<Estimate> {
    let steps: Vec<Estimate> = row
        .iter()
        .zip(row.iter().skip(1))
        .map(|(one, next)| one.apart_from(next))
        .collect();
    Estimate::greatest(&steps).cloned()
}

/// How a shaft fits a hole.
pub(crate) struct Fit {
    /// Smallest hole less largest shaft: what it runs with at its tightest.
    pub least: Estimate,
    /// Largest hole less smallest shaft.
    pub greatest: Estimate,
}

impl Fit {
    /// The fit of the readings of a hole and of a shaft.
    pub(crate) fn of(
        given: &Given,
        hole: &'static Input,
        shaft: &'static Input,
    ) -> Result<Self, CalculationError> {
        Ok(Self {
            least: least_of(given, hole)? - greatest_of(given, shaft)?,
            greatest: greatest_of(given, hole)? - least_of(given, shaft)?,
        })
    }
}

/// Two lists that must be of one length.
pub(crate) fn same_count(
    given: &Given,
    first: &'static Input,
    second: &'static Input,
) -> Result<(), CalculationError> {
    let (ones, others) = (
        given.several(first.id).len(),
        given.several(second.id).len(),
    );
    if ones == others {
        return Ok(());
    }
    Err(CalculationError::not_possible(
        second,
        format!(
            "there are {others} of these and {ones} of {}: there must be as many",
            first.label
        ),
    ))
}

#[cfg(test)]
pub(crate) mod testing {
    //! For the tests of the fits: inputs in the unit of the example.

    use crate::describe::{Answer, Calculation, CalculationError, Given};
    use crate::measure::Estimate;

    pub(crate) const THOU: f64 = 0.0254e-3;
    pub(crate) const INCH: f64 = 0.0254;

    /// Values of one unit put into a calculation.
    pub(crate) fn given(unit: f64, inputs: &[(&'static str, &[f64])]) -> Given {
        let mut given = Given::new();
        for (id, values) in inputs {
            for value in *values {
                given.push(id, Estimate::exact(value * unit));
            }
        }
        given
    }

    /// The answer, which must be one.
    pub(crate) fn worked(calculation: &Calculation, given: &Given) -> Answer {
        match calculation.answer(given) {
            Ok(answer) => answer,
            Err(error) => panic!("{}: {error}", calculation.id),
        }
    }

    /// An output in a unit, rounded to a millionth of it.
    pub(crate) fn value(answer: &Answer, id: &str, unit: f64) -> f64 {
        (answer.get(id).unwrap().value() / unit * 1e6).round() / 1e6
    }

    /// The field that an error names.
    pub(crate) fn refused(calculation: &Calculation, given: &Given) -> Option<&'static str> {
        calculation
            .answer(given)
            .err()
            .as_ref()
            .and_then(CalculationError::field)
    }

    /// Whether some finding says this.
    pub(crate) fn says(answer: &Answer, words: &str) -> bool {
        answer.findings().iter().any(|one| one.text.contains(words))
    }
}
