//! The facts of one build.
//!
//! - [`Journal`]: a set of facts. Copies merge by union, in any order, any
//!   number of times, with the same result.
//! - What could not be read, and what clashed, is set aside and kept.

mod set;

pub use set::{AppendError, CameIn, DifferentBuilds, Journal};

#[cfg(test)]
mod exchange_tests;
#[cfg(test)]
mod tests;
