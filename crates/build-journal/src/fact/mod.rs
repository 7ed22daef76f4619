//! One thing that happened, and the JSON text it is kept as.
//!
//! - [`Fact`]: an id, the device and its clock, and what happened.
//! - [`Body`]: what happened, by kind.
//! - [`InView`]: what the device had in view of the same thing.
//! - [`Unreadable`]: why a text is no fact.
//!
//! The text of a fact is kept as it came, but for blanks between its parts, so
//! kinds and fields that this version does not know leave as they arrived.

mod body;
mod bought;
mod compact;
mod doings;
mod fasteners;
mod fields;
mod in_view;
mod kinds;
mod more_kinds;
mod oil;
mod own;
mod place;
mod placing;
mod placing_kinds;
mod record;
mod sizes;
mod tightening;
mod tightening_kinds;
mod unreadable;
mod words;
mod write;

pub use body::{
    Body, EngineDescribed, LimitsOrigin, LimitsSet, Note, Reading, SetOn, Spot, Struck, ToolListed,
    ToolSet, UnknownKind, UnreadableKind,
};
pub use bought::{PartListed, PartMoved, WorkMoved, WorkOrdered, WorkReturned, WorkWanted};
pub use doings::{
    CheckMade, EventHappened, Photo, ReadingsStand, ResultName, StepMarked, ToolChecked, ToolTried,
    Waived, WarmthSettled,
};
pub use fasteners::{
    Adapter, BoltLayout, FastenerGroup, FastenerSheet, Origin, StageWrench, Wrench, WrenchListed,
};
pub use in_view::InView;
pub use oil::{
    BoreState, CompressionRead, GaugeRead, Groove, LeakDownRead, OilDoing, OilNoted, OilSystem,
    PlugsCounted, PrimeTested, RunningBegun, RunningEnded, RunningRow, Said, SpeedBand,
};
pub use own::{OwnMeasure, OwnStep};
pub use placing::{BenchSide, PartOnBench, PartsPlaced, PlacedPart};
pub use record::{FORMAT, Fact};
pub use sizes::{SizedPart, SizesListed};
pub use tightening::{
    BoltCompared, BoltMeasured, BoltPulled, BoltState, BoltsRenewed, JointClosed, Knew, RunBegun,
    RunMark, RunMarked, RunOpened, SealantPutOn, Way,
};
pub use unreadable::Unreadable;

pub use words::{Danger, Mark, Outcome, PartStage, Sort, WarmthAnswer, WorkStage};

pub(crate) use write::Line;

#[cfg(test)]
pub(crate) mod more_samples;
#[cfg(test)]
pub(crate) mod oil_samples;
#[cfg(test)]
pub(crate) mod samples;
#[cfg(test)]
mod tests;
#[cfg(test)]
pub(crate) mod tightening_samples;
