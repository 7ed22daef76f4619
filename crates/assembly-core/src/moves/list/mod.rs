//! Every move there is, by the part it is made on. To add one, write it in the
//! file of its part.

mod bearing;
mod crank;
mod cylinder;
mod deck;
mod lifter;
mod oil;
mod outside;
mod valve;

use super::change::Move;
use super::effect::{Effect, Sensitivity};

/// Every move, in groups by the part it is made on.
pub static MOVES: &[&[Move]] = &[
    bearing::MOVES,
    crank::MOVES,
    cylinder::MOVES,
    deck::MOVES,
    valve::MOVES,
    lifter::MOVES,
    oil::MOVES,
    outside::MOVES,
];

/// The moves that are offered for this measure.
pub fn moves_for(measure: &str) -> impl Iterator<Item = &'static Move> + use<'_> {
    MOVES
        .iter()
        .copied()
        .flatten()
        .filter(move |one| one.offered_for.contains(&measure))
}

/// The move with this id.
#[must_use]
pub fn move_by_id(id: &str) -> Option<&'static Move> {
    MOVES.iter().copied().flatten().find(|one| one.id == id)
}

/// An effect of so many times the size.
const fn times(measure: &'static str, factor: f64) -> Effect {
    effect(measure, Sensitivity::TimesSize(factor))
}

/// An effect that only measuring again tells.
const fn again(measure: &'static str) -> Effect {
    effect(measure, Sensitivity::MeasureAgain)
}

const fn effect(measure: &'static str, sensitivity: Sensitivity) -> Effect {
    Effect {
        measure,
        sensitivity,
    }
}
