//! Each trap is asked about, and an ordinary reading is left alone.

mod clearances;
mod impossibilities;
mod ordinary;
mod traps;

use super::*;
use crate::quantity::{Kind, Typed, read, unit};

/// Metres from inches.
fn inches(number: f64) -> f64 {
    unit("in").unwrap().to_si(number)
}

/// A lone number is in inches.
fn typed(text: &str) -> Typed {
    read(text, Kind::Length, unit("in").unwrap()).unwrap()
}

/// A main journal of 2.4500 in, read with an inch micrometer.
fn journal() -> Expectation {
    Expectation {
        nominal: Some(inches(2.45)),
        part_spread: inches(0.0015),
        place_spread: inches(0.0005),
        change_spread: inches(0.0003),
        reading_spread: inches(0.0001),
        sizes: Sizes::InchUndersizes,
        scale: Scale::INCH_THIMBLE,
        ..Expectation::default()
    }
}
