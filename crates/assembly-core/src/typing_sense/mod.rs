//! Sense for slips in what was typed or read off: offered as questions with the
//! likely value and how likely it is, never corrected silently.
//!
//! - [`Expectation`]: what is known of a reading before it is typed.
//! - [`questions`]: the slips that explain a reading better than the part does.
//! - [`Slip`]: each slip, with how often it happens.
//! - [`doubt_of_clearance`]: limits whose figures belong to another unit.
//! - [`impossible`]: what can't be, whatever was typed: worn journals don't grow.

mod candidates;
mod clearance;
mod expectation;
pub mod impossible;
mod question;
mod scale;
mod slip;

pub use clearance::{Doubt, doubt_of_clearance};
pub use expectation::Expectation;
pub use question::{Question, questions};
pub use scale::{Scale, Sizes, size_words};
pub use slip::Slip;

#[cfg(test)]
mod tests;
