//! What is measured on an engine: one static item a measure, each in one place.
//!
//! To add a measure, write its item in the file of its part of the engine and
//! name it in [`MEASURES`].

mod main_bearings;
mod shape;
mod tripwire;

pub use main_bearings::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
pub use shape::{Found, Measure, Per, Spots};
pub use tripwire::{Rule, Tripwire};

/// Every measure there is, in the order of the job.
pub static MEASURES: &[&Measure] = &[
    &MAIN_JOURNAL_DIAMETER,
    &MAIN_BEARING_BORE,
    &MAIN_OIL_CLEARANCE,
];

/// The measure with this id.
#[must_use]
pub fn measure(id: &str) -> Option<&'static Measure> {
    MEASURES.iter().copied().find(|one| one.id == id)
}

#[cfg(test)]
mod tests;
