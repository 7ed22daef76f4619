//! The limits card: what the trade commonly works to, and what public manuals
//! print. Tripwires for slips and for a missing sheet, never more: the maker's
//! sheet for the part at hand always wins.
//!
//! - [`Entry`]: one line of the card with where it is from.
//! - [`find`], [`about`]: the lines of a measure, the line nearest to a case.
//! - [`inward`]: limits in another unit, rounded so that they never widen.

mod army;
mod bottom_end;
mod cylinder;
mod entry;
mod find;
mod inward;
mod pump_and_drive;
mod remark;
mod valve_gear;

pub use entry::{CardUnit, Entry, Source};
pub use find::{about, all, find};
pub use inward::inward;
