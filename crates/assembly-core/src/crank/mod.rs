//! The crankshaft, its line and its bearings' parts, one calculation a file.

pub mod end_float;
pub mod housing_bore;
pub mod journal_shape;
pub mod line_of_mains;
pub mod rod_alignment;
pub mod rod_side_clearance;
pub mod run_out_of_mains;
pub mod shell_crush;
pub mod shell_wall;
pub mod slider_crank;
pub mod turning_effort;
