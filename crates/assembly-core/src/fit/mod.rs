//! The fits of an engine, one calculation a file.

pub mod clearance_rule_of_thumb;
pub(crate) mod readings;
pub mod running_clearance;
pub mod temperature;
