//! Measuring: the main bearings, their limits, and the tools.

pub mod asked;
mod bearing;
pub mod cold;
mod crank;
mod diary;
pub mod entry;
mod holding;
pub mod limits;
mod mains;
mod naming;
pub mod order;
mod picture;
pub mod places;
pub mod result;
mod short;
pub mod sizes;
mod standing;
mod temperature;
pub mod tool_choice;
mod tools;
mod trial;
mod zeroing;

pub use bearing::bearing_page;
pub use crank::{journal_drawing, pin_drawing};
pub use limits::limits_page;
pub use mains::mains;
pub use standing::{Stands, so_far};
pub use tools::tools_page;
pub use zeroing::setting_words_of;
