//! Every calculation of an engine build, on typed quantities, with its errors
//! carried along.
//!
//! The crate knows no clock, no storage, no browser and no screen. It compiles
//! for the host and for wasm32 and is useful on its own.
//!
//! - [`quantity`]: text as people at a bench type it, into quantities and back.
//! - [`measure`]: values that know how far they may be off, and why; verdicts.
//! - [`fit`]: the fits of an engine, one calculation a file.
//! - [`stack`]: sizes of several parts that add up to one that matters.
//! - [`moves`]: what can be done about a result that is not good, and what never.
//! - [`temperature`]: the metals of an engine and fits of two of them, cold or warm.
//! - [`tool`]: the measuring tools of the bench and how their readings share errors.
//! - [`typing_sense`]: slips in what was typed, asked about and never corrected silently.
//! - [`metrology`]: tolerances, press fits, heat, uncertainty, decisions.
//! - [`cylinder`]: bores, pistons, rings, liners, deck.
//! - [`oil`]: the oil, its film, its circuit, its gauge.
//! - [`balance`]: what shakes, what is hung on a crank, what may be left.
//! - [`crank`], [`valve`], [`oil_pump`], [`drive`]: the fits of those parts.
//! - [`limits`]: what is common and what manuals print, as tripwires with their sources.
//! - [`fastener`]: threads, strength, torque and preload, stretch, stages, wrenches.
//! - [`tightening`]: orders of bolts, what is next, what an interruption means.
//! - [`choose`]: which part goes where, which shim, found exactly.
//! - [`describe`]: what a calculation needs and gives, as data; [`describe::CALCULATIONS`] lists them all.

#![cfg_attr(
    test,
    allow(
        clippy::unwrap_used,
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic
    )
)]

pub mod balance;
pub mod choose;
pub mod crank;
pub mod cylinder;
pub mod describe;
pub mod drive;
pub mod fastener;
pub mod fit;
pub mod limits;
pub mod measure;
pub mod metrology;
pub mod moves;
pub mod oil;
pub mod oil_pump;
pub mod quantity;
pub mod stack;
pub mod temperature;
pub mod tightening;
pub mod tool;
pub mod typing_sense;
pub mod valve;
