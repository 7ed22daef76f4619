//! Timing drive, damper and what runs out, one calculation a file.

pub mod chain_slack;
pub mod damper_hub;
pub mod gear_backlash;
pub mod lobe_centre;
pub mod run_out;
pub mod top_dead_centre;
