//! Choosing and matching: which part goes where, and which shim.
//!
//! - [`Costs`], [`least_total`], [`bottleneck`]: the assignment problem, exactly, in whole steps.
//! - [`parts_to_places`]: pistons to bores, rods to pins.
//! - [`shells`]: which half-shell goes where, under the mixing rule.
//! - [`catalogue_shell`]: which wall to order for each journal on its own.
//! - [`weights`]: parts paired so that the pairs weigh the same.
//! - [`shims`]: liner stand-out, valve buckets, stacks of shims and packing.

pub mod bottleneck;
pub mod catalogue_shell;
mod costs;
pub mod least_total;
mod matching;
pub mod parts_to_places;
pub mod shells;
pub mod shims;
pub mod weights;

pub use costs::{Assignment, ChoiceError, Costs};
