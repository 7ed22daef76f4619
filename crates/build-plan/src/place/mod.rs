//! Where on an engine something is measured.
//!
//! - [`Main`]: a main bearing, counted from the front.
//! - [`At`]: the part of the engine, and which parts concern each other.
//! - [`Station`]: where along a journal or bore.
//! - [`Direction`]: which way across it.
//! - [`Place`]: all of that together.

mod at;
mod direction;
mod main;
mod parts;
mod spot;
mod station;

pub use at::At;
pub use direction::Direction;
pub use main::Main;
pub use parts::{Ring, ValveSide};
pub use spot::Place;
pub use station::Station;
