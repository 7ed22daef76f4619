//! The three ways to a running clearance, as they are offered at the bench.

mod common;
mod same_micrometer;
mod strip;
mod two_tools;

pub use same_micrometer::RUNNING_CLEARANCE_SAME_MICROMETER;
pub use strip::RUNNING_CLEARANCE_STRIP;
pub use two_tools::RUNNING_CLEARANCE;
