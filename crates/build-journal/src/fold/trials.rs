//! A tool tried out: what its readings of one thing say of it.

use std::fmt;

use assembly_core::quantity::{ReadError, Typed, read, unit_of};
use assembly_core::tool::{Instrument, SelfTest, Tool, USUAL_READINGS, instrument};

use super::tools::ListedTool;
use crate::fact::ToolTried;
use crate::id::FactId;

/// A tool was tried out.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolTrial {
    /// The fact.
    pub fact: FactId,
    /// What was read.
    pub tried: ToolTried,
}

/// Why a trial does not count.
#[derive(Clone, PartialEq, Debug)]
pub enum TrialProblem {
    /// The tool is of a sort not known here, so nobody knows what it reads.
    ToolNotKnown,
    /// The unit does not belong to what the tool reads.
    UnitNotKnown(String),
    /// A reading cannot be read.
    NotRead {
        /// Which one, counted from 1.
        number: usize,
        /// Why.
        error: ReadError,
    },
    /// So many readings are there, and more are needed.
    TooFew(usize),
    /// The readings are no finite numbers.
    NotFinite,
}

/// What is wrong, as a sentence for the person.
impl fmt::Display for TrialProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::ToolNotKnown => write!(
                f,
                "the tool is of a kind that this version does not know, so its scatter stays unknown"
            ),
            Self::UnitNotKnown(unit) => write!(
                f,
                "“{}” is no unit of what this tool reads",
                unit.chars().take(20).collect::<String>()
            ),
            Self::NotRead { number, error } => write!(f, "reading {number}: {error}"),
            Self::TooFew(count) => write!(f, "{}", still_wanted(*count)),
            Self::NotFinite => write!(f, "a reading is not a finite number: type it again"),
        }
    }
}

/// How many readings more a trial needs, as a sentence without its full stop.
#[must_use]
pub fn still_wanted(count: usize) -> String {
    let more = USUAL_READINGS.saturating_sub(count);
    match (count, more) {
        (0, more) => format!("take {more} readings of the same place"),
        (count, 1) => format!("{count} readings say too little: take one more of the same place"),
        (1, more) => {
            format!("one reading says nothing of scatter: take {more} more of the same place")
        }
        (count, more) => {
            format!("{count} readings say too little: take {more} more of the same place")
        }
    }
}

impl ToolTrial {
    /// The readings, each in its unit.
    ///
    /// # Errors
    /// [`TrialProblem`] when one cannot be read, or nobody knows what the tool reads.
    pub fn readings(&self, kind: Option<&Instrument>) -> Result<Vec<Typed>, TrialProblem> {
        let kind = kind.ok_or(TrialProblem::ToolNotKnown)?.kind;
        let unit = unit_of(kind, &self.tried.unit)
            .ok_or_else(|| TrialProblem::UnitNotKnown(self.tried.unit.clone()))?;
        let readings = self.tried.readings.iter().enumerate();
        readings
            .map(|(at, text)| {
                read(text, kind, unit).map_err(|error| TrialProblem::NotRead {
                    number: at + 1,
                    error,
                })
            })
            .collect()
    }

    /// What the trial shows of a tool of this kind.
    ///
    /// # Errors
    /// [`TrialProblem`] for fewer than five readings, or one that cannot be read.
    pub fn shows(&self, kind: Option<&Instrument>) -> Result<SelfTest, TrialProblem> {
        let readings = self.readings(kind)?;
        scatter_of(kind.ok_or(TrialProblem::ToolNotKnown)?, &readings)
    }
}

/// The scatter in readings of one place with a tool of this kind. Readings that
/// are alike to the last digit leave as much as that digit hides: the coarser of
/// the scale's finest step and the last digit typed.
///
/// # Errors
/// [`TrialProblem::TooFew`] below five readings.
pub fn scatter_of(kind: &Instrument, readings: &[Typed]) -> Result<SelfTest, TrialProblem> {
    if readings.len() < USUAL_READINGS {
        return Err(TrialProblem::TooFew(readings.len()));
    }
    let step = readings
        .iter()
        .map(Typed::resolution)
        .fold(kind.graduation, f64::max);
    let all: Vec<f64> = readings.iter().map(Typed::si).collect();
    SelfTest::of(&all, step).map_err(|_| TrialProblem::NotFinite)
}

/// From this many times the common figure on, a scatter is a slip more likely than
/// a bad tool. Ours.
const WILD: f64 = 4.0;

/// Whether a trial strays so far from what is common for its kind that one of its
/// readings may be a slip.
#[must_use]
pub fn is_wild(kind: &Instrument, shows: &SelfTest) -> bool {
    shows.repeat > WILD * kind.fresh_deviation(shows.mean)
}

impl ListedTool {
    /// Its sort, when this version knows it.
    #[must_use]
    pub fn kind(&self) -> Option<&'static Instrument> {
        instrument(&self.instrument)
    }

    /// The newest trial that counts, and what it shows. One that cannot be used
    /// leaves the one before it in force.
    #[must_use]
    pub fn tried(&self) -> Option<(&ToolTrial, SelfTest)> {
        let mut newest_first = self.trials.iter().rev();
        newest_first.find_map(|trial| Some((trial, trial.shows(self.kind()).ok()?)))
    }

    /// What is known of it: the figures of its kind, its scatter from the newest
    /// trial. `None` for a kind that this version does not know.
    #[must_use]
    pub fn known(&self) -> Option<Tool> {
        let tool = Tool::new(self.tool.to_string(), self.name.as_str(), self.kind()?);
        Some(match self.tried() {
            Some((_, shows)) => tool.tried_out(&shows),
            None => tool,
        })
    }
}
