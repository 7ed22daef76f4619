//! A tightening as pure logic: in which order, what is next, what an
//! interruption means, and whether the end counts.
//!
//! - [`layout`]: where the bolts of a group sit.
//! - [`pattern`]: an order of bolts that misses none and repeats none.
//! - [`generate`]: orders for when no printed one is there; the printed one wins.
//! - [`group`]: the bolts that are tightened together, and what is wrong with them before the first tap.
//! - [`kind`]: kinds of fasteners and how often each may be used.
//! - [`run`]: what is done and what is next, from what happened, one by one.
//! - [`interrupted`]: what to do when nobody is sure any more.
//! - [`wrenches`]: where a torque lies on each wrench at the bench, and which to take.
//! - [`credit`]: why a tightening that is through does not count yet.
//! - [`retorque`]: whether a group is tightened again after it was hot.
//! - [`sealant`]: how long a sealant may still be closed, and what waits for it.
//!
//! Bolts and laps count from nothing here and from one in sentences. Nothing is
//! ever guessed: what is not known is a state of its own.

pub mod credit;
pub mod generate;
pub mod group;
pub mod interrupted;
pub mod kind;
pub mod layout;
pub mod pattern;
pub mod retorque;
pub mod run;
#[cfg(test)]
mod run_tests;
pub mod sealant;
pub mod wrenches;

#[cfg(test)]
mod tests;
