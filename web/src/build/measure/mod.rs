//! Measuring: the main bearings, their limits, and the tools.

mod bearing;
mod crank;
mod entry;
mod limits;
mod mains;
mod order;
mod picture;
mod places;
mod result;
mod tool_choice;
mod tools;
mod zeroing;

pub use bearing::Bearing;
pub use limits::LimitsPage;
pub use mains::Mains;
pub use tools::ToolsPage;
pub use zeroing::setting_words_of;
