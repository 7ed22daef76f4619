//! A reading, with what its text says.

use std::sync::Arc;

use assembly_core::quantity::{ReadError, Typed, Unit, read};
use build_plan::{Measure, Place};
use thiserror::Error;

use super::plan::Plan;
use super::strikes::StruckOut;
use super::units::Units;
use crate::fact::Reading;
use crate::id::{FactId, SettingId, ToolId};

/// A reading that was taken.
#[derive(Clone, PartialEq, Debug)]
pub struct Taken {
    /// The fact.
    pub fact: FactId,
    /// The reading as it was written down.
    pub reading: Arc<Reading>,
    /// The measure, when this version knows it.
    pub measure: Option<&'static Measure>,
    /// The tool and the setting that the reading names: what it is measured by is
    /// asked for far more often than the rest of what was written down.
    pub(super) by: (Option<ToolId>, Option<SettingId>),
    /// Where, when this version knows the place.
    pub place: Option<Place>,
    /// The number that was typed, or why there is none.
    pub value: Result<Typed, ReadingProblem>,
    /// By what it was struck out, when it was: it is shown struck through and
    /// counts for nothing.
    pub struck: Option<Box<StruckOut>>,
}

/// Why a reading gives no number.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum ReadingProblem {
    /// The text cannot be read.
    #[error(transparent)]
    Text(#[from] ReadError),
    /// The unit of the field is not known.
    #[error("the unit “{unit}” that goes with it is not known here")]
    Unit {
        /// The symbol.
        unit: String,
    },
    /// The measure is not known.
    #[error(
        "the measure “{measure}” is not known here, so there is no telling what it is a number of"
    )]
    Measure {
        /// The id.
        measure: String,
    },
}

impl Taken {
    pub(super) fn of(
        fact: FactId,
        reading: &Arc<Reading>,
        struck: Option<StruckOut>,
        (units, plan): (&mut Units, &Plan),
    ) -> Self {
        let said = Said::of(reading, units, plan);
        Self::reading(fact, reading, struck, said)
    }

    /// The same, where it is known what it is a reading of.
    pub(super) fn reading(
        fact: FactId,
        reading: &Arc<Reading>,
        struck: Option<StruckOut>,
        Said { measure, unit }: Said,
    ) -> Self {
        Self {
            fact,
            reading: Arc::clone(reading),
            measure,
            by: (reading.tool, reading.setting),
            place: reading.place.place(),
            value: value(reading, measure, unit),
            struck: struck.map(Box::new),
        }
    }

    /// The number, when the reading counts: it is readable and not struck out.
    #[must_use]
    pub fn counting(&self) -> Option<&Typed> {
        match (&self.struck, &self.value) {
            (None, Ok(typed)) => Some(typed),
            _ => None,
        }
    }
}

/// The measure and the unit that a reading names, as far as they are known.
#[derive(Clone, Copy, Default)]
pub(super) struct Said {
    measure: Option<&'static Measure>,
    unit: Option<&'static Unit>,
}

impl Said {
    pub(super) fn of(reading: &Reading, units: &mut Units, plan: &Plan) -> Self {
        let measure = units.measure(&reading.measure, plan);
        let unit = measure.and_then(|measure| units.find(measure.kind, &reading.unit));
        Self { measure, unit }
    }
}

fn value(
    reading: &Reading,
    measure: Option<&'static Measure>,
    unit: Option<&'static Unit>,
) -> Result<Typed, ReadingProblem> {
    let Some(measure) = measure else {
        return Err(ReadingProblem::Measure {
            measure: reading.measure.chars().take(60).collect(),
        });
    };
    let lone = unit.ok_or_else(|| ReadingProblem::Unit {
        unit: reading.unit.chars().take(40).collect(),
    })?;
    Ok(read(&reading.typed, measure.kind, lone)?)
}
