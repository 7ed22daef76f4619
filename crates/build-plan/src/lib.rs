//! What the trade knows about rebuilding a piston engine, as data with types.
//!
//! The crate knows nothing of what happened to any one engine: no readings, no
//! dates, no storage. Each measure is one static item in one place, and
//! whatever refers to it refers to that item, so the compiler proves that it
//! exists.
//!
//! - [`engine`]: an engine, described once.
//! - [`place`]: where on an engine something is measured, in the bench's words.
//! - [`measure`]: what is measured, where, how, and what it means.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic
    )
)]

pub mod engine;
pub mod measure;
pub mod place;

pub use engine::{Engine, EngineError, Layout};
pub use measure::{MEASURES, Measure, measure};
pub use place::{At, Direction, Main, Place, Station};
