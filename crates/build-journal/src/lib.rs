//! What happened to an engine, as facts, and everything that follows from them.
//!
//! Facts are the only thing kept. A fact is never edited or deleted; a mistake
//! is struck out by another fact. Everything shown is derived from the facts by
//! pure functions. The crate reads no clock, rolls no dice and touches no
//! storage of its own: the caller lends it all three.
//!
//! - [`id`]: who and when: ids that sort in the order things happened.
//! - [`fact`]: one thing that happened, and its text.
//! - [`day`]: a day of the calendar.
//! - [`journal`]: the facts of one build; copies merge by union.
//! - [`fold`]: what follows from the facts.
//! - [`file`]: one readable file out, and back in.
//! - [`bundle`]: the same with its photos.
//! - [`sample`]: a build to play with.
//! - [`summary`]: a build in a few lines.
//! - [`storage`]: keeping facts twice, so that what was acknowledged is there.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic
    )
)]

pub mod bundle;
pub mod day;
pub mod fact;
pub mod file;
pub mod fold;
#[cfg(any(test, feature = "hostile"))]
pub mod hostile;
pub mod id;
pub mod journal;
pub mod sample;
pub mod storage;
pub mod summary;

pub use day::Day;
pub use fact::{Body, Fact, Unreadable};
pub use file::{ImportError, Imported, export, import};
pub use fold::{Build, fold};
pub use id::{
    BuildId, DeviceId, FactId, OwnId, PartId, SettingId, SittingId, Stamper, ToolId, WorkId,
};
pub use journal::{AppendError, DifferentBuilds, Journal};
