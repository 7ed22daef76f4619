//! Tests of reading, showing and the table of units.

mod exactness;
mod mistakes;
mod names;
mod round_trip;
mod shown;
mod typing;

use super::*;

/// Reads a length; a lone number is in inches.
fn length(text: &str) -> Result<Typed, ReadError> {
    read(text, Kind::Length, unit("in").unwrap())
}

/// Reads a quantity; a lone number is in the kind's first unit.
fn of(text: &str, kind: Kind) -> Result<Typed, ReadError> {
    read(text, kind, units_of(kind).next().unwrap())
}
