//! The measuring tools of the bench: how far one reading of each may be off,
//! and how readings of one tool share their errors.

mod bench;
mod instrument;
mod instruments;
mod ways;

pub use bench::{SetOn, Setting, Tool};
pub use instrument::{Instrument, Spread, Task};
pub use instruments::{INSTRUMENTS, instrument};
pub use ways::{Way, ways, which_could_settle};
