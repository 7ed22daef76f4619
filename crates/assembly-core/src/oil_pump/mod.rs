//! The oil pump's own fits, one calculation a file.

pub mod end_clearance;
pub mod relief_plunger;
pub mod side_clearance;
pub mod tip_clearance;
