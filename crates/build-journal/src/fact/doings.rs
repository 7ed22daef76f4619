//! What was done, seen, changed, let pass and photographed.

use super::body::Spot;
use super::words::{Mark, Outcome, Sort, WarmthAnswer};
use crate::id::{FactId, ToolId};

/// Something was said of a step.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct StepMarked {
    /// The id of the step in `build_plan`, or of the builder's own.
    pub step: String,
    /// The part it was done at; all of them when not said.
    pub place: Option<Spot>,
    /// What is said.
    pub mark: Mark,
    /// What the builder adds.
    pub words: Option<String>,
}

/// Something was looked at, felt or counted.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct CheckMade {
    /// The id of the check in `build_plan`, or of the builder's own.
    pub check: String,
    /// The part it was made at; all of them when not said.
    pub place: Option<Spot>,
    /// How it came out.
    pub outcome: Outcome,
    /// What the builder adds: a count, a pressure, what was seen.
    pub words: Option<String>,
    /// How long it stays good, as typed with its unit: "10 min", "30 days".
    pub lasts: Option<String>,
}

/// Something happened to the engine that may make results stale.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct EventHappened {
    /// The id of the event in `build_plan`.
    pub event: String,
    /// The parts it happened to; the whole engine when none is named. Of parts
    /// that were moved, both places.
    pub places: Vec<Spot>,
    /// What the builder adds.
    pub words: Option<String>,
}

/// The name of a result.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct ResultName {
    /// Its sort.
    pub sort: Sort,
    /// Its id in `build_plan`, or the builder's own.
    pub id: String,
}

/// A result is let pass as it is: stale, missing or outside its limits.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Waived {
    /// The result.
    pub result: ResultName,
    /// The part; all of them when not said.
    pub place: Option<Spot>,
    /// Why.
    pub reason: String,
}

/// A tool was checked against its zero or a standard, or was dropped.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolChecked {
    /// The tool.
    pub tool: ToolId,
    /// Whether it read right. If not, every reading since it last did is in
    /// doubt.
    pub outcome: Outcome,
    /// What the builder adds: by how much, against what.
    pub words: Option<String>,
}

/// Readings of one place stand side by side, although they lie further apart than
/// their tools explain: a person looked at them, and none is a slip.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ReadingsStand {
    /// The readings.
    pub readings: Vec<FactId>,
    /// What the builder adds.
    pub words: Option<String>,
}

/// A tool was tried out: one thing was read several times, so that the readings
/// show how far this tool strays in this hand.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolTried {
    /// The tool.
    pub tool: ToolId,
    /// The readings, each as typed, in the order they were taken.
    pub readings: Vec<String>,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
    /// What was read: the setting ring, a journal.
    pub words: Option<String>,
}

/// What is done about the readings of a fit that were taken at another
/// temperature than 20 °C, where sheets hold. The latest answer counts.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct WarmthSettled {
    /// The id of the fit's measure in `build_plan`.
    pub measure: String,
    /// What is done.
    pub answer: WarmthAnswer,
}

/// A photo was taken. Its bytes are kept elsewhere, found by their digest.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Photo {
    /// SHA-256 of the bytes, 64 small hexadecimal digits.
    pub hash: String,
    /// What sort of picture: `image/jpeg`, `image/png` or `image/webp`.
    pub media: String,
    /// How many bytes.
    pub bytes: u32,
    /// The step it belongs to.
    pub step: Option<String>,
    /// The place it shows.
    pub place: Option<Spot>,
    /// What it shows.
    pub words: Option<String>,
}
