//! Shims under wet liners: each to its stand-out, neighbours nearly level.

mod choice;
mod described;

pub use choice::{LinerShims, shim_liners};
pub use described::LINER_SHIMS;
