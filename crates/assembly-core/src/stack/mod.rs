//! Stack-ups: sizes of several parts that add up to one that matters, each as
//! data with its formula, worked out four ways and turned round for any part.
//!
//! - [`Stack`], [`Term`], [`Formula`]: a stack as data; [`STACKS`] lists them all.
//! - [`StackUp`]: a stack with values: result, worst case, root of the sum of
//!   squares, many random draws, and what one part has to be for a wanted result.
//! - one file for every stack, with its quick check.

mod answering;
mod formula;
mod monte_carlo;
mod solve;
mod stack_up;
mod term_value;

pub mod deck_and_quench;
pub mod pickup_to_pan;

#[cfg(test)]
mod tests;

pub use deck_and_quench::{DECK_CLEARANCE, QUENCH, QUENCH_OVER_DECK};
pub use formula::{Formula, Number, Smooth, Stack, Term};
pub use monte_carlo::{Drawn, MOST_DRAWS};
pub use pickup_to_pan::{CURTAIN_RATIO, PICKUP_TO_PAN};
pub use solve::SolveError;
pub use stack_up::{Extent, StackUp};
pub use term_value::{Shape, TermValue};

/// Every stack there is. To add one, write its file and name it here.
pub static STACKS: &[&Stack] = &[
    &CURTAIN_RATIO,
    &DECK_CLEARANCE,
    &PICKUP_TO_PAN,
    &QUENCH,
    &QUENCH_OVER_DECK,
];

/// The stack with this id.
#[must_use]
pub fn stack(id: &str) -> Option<&'static Stack> {
    STACKS.iter().copied().find(|one| one.id == id)
}
