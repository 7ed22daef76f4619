//! What can be done about a result that is not good: each thing a builder or a
//! machine shop can do, what it changes and by how much, here and elsewhere,
//! and how surely it would land inside the window. What must never be done is
//! listed too, with the reason.
//!
//! - [`Move`]: one thing that can be done, as data; [`MOVES`] lists them all.
//! - [`for_measure`]: the moves for one result, the surest first.
//! - [`shells`]: which two bearing halves may go together.
//! - [`NEVER`]: what ruins the part.

mod change;
mod circumstances;
mod effect;
mod forbidden;
mod list;
mod rank;
pub mod shells;
mod trade_size;

#[cfg(test)]
mod tests;

pub use change::{Move, Sizes, Step, Who};
pub use circumstances::Circumstances;
pub use effect::{Effect, Sensitivity, SideEffect};
pub use forbidden::{Forbidden, NEVER, never};
pub use list::{MOVES, move_by_id, moves_for};
pub use rank::{Landing, Ranked, for_extent, for_measure};
