//! Quantities: what kind a number is, and the text it comes from and goes to.
//!
//! - [`read`] takes text as people at a bench type it and keeps every digit.
//! - [`last_digits`] and [`off_zero`] say what a reading that is typed in short means.
//! - [`show`] writes results with the digits that make sense.
//! - [`Unit`]s have exact factors; [`unit`] finds them by the names people use.
//! - [`Kind`] says what a number is a number of; [`Si`] is the door to `uom`.

mod factor;
mod kind;
mod last_digits;
mod number;
mod read;
mod read_error;
mod scan;
mod separators;
mod show;
mod si;
mod signs;
mod suggest;
mod typed;
mod unit;
mod units;

pub use kind::Kind;
pub use last_digits::{last_digits, off_zero};
pub use read::read;
pub use read_error::ReadError;
pub use show::{Shown, show, show_high_limit, show_low_limit};
pub use si::Si;
pub use typed::Typed;
pub use unit::{Unit, unit, unit_of, unit_or_usual, units_of};

#[cfg(test)]
mod tests;
