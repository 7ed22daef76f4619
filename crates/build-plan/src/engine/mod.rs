//! An engine, described once: how many cylinders, how they lie, how many mains.
//!
//! - [`Engine`]: the description, checked.
//! - [`Layout`]: how the cylinders lie.
//! - [`CrankStop`]: the crank from front to rear, for drawings and lists.
//! - [`EngineError`]: what is wrong with a description, and what would be right.

mod crank_line;
mod description;
mod error;
mod layout;

pub use crank_line::CrankStop;
pub use description::{Engine, MOST_CYLINDERS, NAME_AT_MOST};
pub use error::EngineError;
pub use layout::Layout;
