//! The measuring tools of the bench: how far one reading of each may be off,
//! and how readings of one tool share their errors.

mod bench;
mod feeler_stack;
mod instrument;
mod instruments;
mod lean;
mod self_test;
mod settling;
mod ways;
mod zero_check;

pub use bench::{SetOn, Setting, Shared, Tool};
pub use feeler_stack::{FEELER_STACK, FeelerError, felt_gap};
pub use instrument::{Instrument, Spread, Task};
pub use instruments::{INSTRUMENTS, instrument};
pub use lean::{INDICATOR_LEAN, movement, squared_by_eye};
pub use self_test::{FEWEST_READINGS, SelfTest, SelfTestError, TOOL_SELF_TEST, USUAL_READINGS};
pub use settling::{Got, Settling};
pub use ways::{Way, ways, which_could_settle};
pub use zero_check::{Standing, ZERO_CHECK, ZeroCheck, ZeroCheckError, standing};
