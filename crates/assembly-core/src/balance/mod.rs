//! Balance of the crank: what shakes, what is hung on it in its place, how much
//! may be left, one calculation a file.

pub mod bobweight;
pub mod left_over;
pub mod shaking;
pub mod two_planes;
