//! Measuring: the main bearings, their limits, and the tools.

mod bearing;
mod crank;
pub mod entry;
pub mod limits;
mod mains;
pub mod order;
mod picture;
pub mod places;
pub mod result;
pub mod tool_choice;
mod tools;
mod zeroing;

pub use bearing::bearing_page;
pub use limits::limits_page;
pub use mains::mains;
pub use tools::tools_page;
pub use zeroing::setting_words_of;
