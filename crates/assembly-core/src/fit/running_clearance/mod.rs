//! Running clearance of a plain bearing: how much bigger the bore is than the
//! journal that turns in it.
//!
//! Three ways to measure it, one result:
//!
//! - [`from_stations`]: bore and journal, each with its own tool, at several
//!   stations along the bearing and in several directions;
//! - [`from_needle`]: a bore gauge zeroed on the micrometer that measured the
//!   journal, so that the micrometer's own error cancels;
//! - [`from_strip`]: a plastic gauge strip crushed under the cap.
//!
//! [`advise`] says what to do about it.

mod advice;
mod described;
mod findings;
mod needle;
mod station;
mod strip;

pub use advice::{Advice, DANGEROUS_SIDE, advise};
pub use described::{
    RUNNING_CLEARANCE, RUNNING_CLEARANCE_SAME_MICROMETER, RUNNING_CLEARANCE_STRIP,
};
pub use findings::JOURNAL_SHAPE_TRIPWIRE;
pub use needle::{NeedleSense, from_needle};
pub use station::{ClearanceError, RunningClearance, Station, from_stations};
pub use strip::{StripReading, from_strip};

#[cfg(test)]
mod tests;
