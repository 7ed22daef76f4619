//! One thing that happened, and the JSON text it is kept as.
//!
//! - [`Fact`]: an id, the device and its clock, and what happened.
//! - [`Body`]: what happened, by kind.
//! - [`Unreadable`]: why a text is no fact.
//!
//! The text of a fact is kept as it came, but for blanks between its parts, so
//! kinds and fields that this version does not know leave as they arrived.

mod body;
mod compact;
mod fields;
mod kinds;
mod place;
mod record;
mod unreadable;
mod write;

pub use body::{
    Body, EngineDescribed, LimitsOrigin, LimitsSet, Note, Reading, SetOn, Spot, Struck, ToolListed,
    ToolSet, UnknownKind, UnreadableKind,
};
pub use record::{FORMAT, Fact};
pub use unreadable::Unreadable;

pub(crate) use write::Line;

#[cfg(test)]
pub(crate) mod samples;
#[cfg(test)]
mod tests;
