//! Where on an engine something is measured.
//!
//! - [`Main`]: a main bearing, counted from the front.
//! - [`Station`]: where along a journal or bore.
//! - [`Direction`]: which way across it.
//! - [`Place`]: all of that together.

mod direction;
mod main;
mod spot;
mod station;

pub use direction::Direction;
pub use main::Main;
pub use spot::{At, Place};
pub use station::Station;
