//! Who and when.
//!
//! - [`FactId`]: names a fact and says when it happened, in an order that no
//!   wrong wall clock upsets.
//! - [`Stamper`]: makes those ids on one device.
//! - [`BuildId`], [`DeviceId`], [`ToolId`], [`SettingId`], [`SittingId`],
//!   [`OwnId`], [`PartId`], [`WorkId`]: name the rest.

mod fact_id;
mod names;
mod stamper;

pub use fact_id::{FactId, NotAFactId};
pub use names::{BuildId, DeviceId, NotAnId, OwnId, PartId, SettingId, SittingId, ToolId, WorkId};
pub use stamper::Stamper;

#[cfg(test)]
mod tests;
