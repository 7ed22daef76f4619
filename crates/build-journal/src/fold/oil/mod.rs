//! The oil of a build: what is known of its system, what its gauge said, how long
//! it ran, and what changes over time.
//!
//! [`OilBook`] is part of the state of a build and grows fact by fact. What takes
//! the readings of all bearings, or is dear to work out, is made when a screen asks
//! for it: [`OilView::of`] a journal.

#[cfg(test)]
mod afterwards_tests;
mod bearings;
mod book;
mod cylinder;
mod inputs;
mod lack;
mod number;
mod plugs;
mod proofs;
mod running;
#[cfg(test)]
mod tests;
mod trends;
mod used;

pub use book::{
    CompressionNote, GaugeNote, KnownSystem, LeakDownNote, OilBook, OilNote, PrimeNote, RowNote,
};
pub use cylinder::{CylinderNumber, MeasuredCylinder, NumberFrom};
pub use inputs::{Estimated, OilInputs};
pub use lack::Lack;
pub use number::Number;
pub use plugs::{Count, PlugCounts};
pub(super) use proofs::as_reading;
pub use running::{RunStretch, valve_gear};
pub use trends::{TrendLine, TrendOf};
pub use used::{Meter, MeterOf, OilUse};

use super::build::Build;
use super::folding::Folding;
use crate::journal::Journal;

/// What a screen of the oil needs besides the state of the build.
#[derive(Clone, PartialEq, Debug)]
pub struct OilView {
    /// The state of the build.
    pub build: Build,
    /// The circuit, or what is missing for it.
    pub inputs: OilInputs,
    /// What changes over time.
    pub trends: Vec<TrendLine>,
}

impl OilView {
    /// All of it, from all facts.
    #[must_use]
    pub fn of(journal: &Journal) -> Self {
        let folding = Folding::of(journal);
        let inputs = OilInputs::of(&folding);
        let trends = trends::trends(&folding, &inputs);
        Self {
            build: folding.into_build(),
            inputs,
            trends,
        }
    }
}
