//! What the trade knows about rebuilding a piston engine, as data with types.
//!
//! The crate knows nothing of what happened to any one engine: no readings, no
//! dates, no storage. Each measure is one static item in one place, and
//! whatever refers to it refers to that item, so the compiler proves that it
//! exists.
//!
//! - [`engine`]: an engine, described once.
//! - [`place`]: where on an engine something is measured, in the bench's words.
//! - [`map`]: where the parts of an engine lie on a drawing.
//! - [`measure`]: what is measured, where, how, and what it means.
//! - [`check`]: what is seen, felt or counted: a state that is good or is not.
//! - [`step`]: what is done, what has to be done before it, and what proves it.
//! - [`choice`]: which part goes where, and what another one there undoes.
//! - [`event`]: what happens to an engine, and which results that makes stale.
//! - [`supply`]: what is waited for.
//! - [`glossary`]: the words of the trade, explained.
//! - [`caution`]: warnings, at the step that needs them.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic
    )
)]

pub mod caution;
pub mod check;
pub mod choice;
pub mod engine;
pub mod event;
pub mod glossary;
pub mod map;
pub mod measure;
mod named;
pub mod place;
pub mod proof;
pub mod step;
pub mod supply;

pub use engine::{Engine, EngineError, Layout};
pub use measure::{MEASURES, Measure, measure};
pub use place::{At, Direction, Main, Place, Ring, Station, ValveSide};
