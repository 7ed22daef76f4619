//! A shelf and a vault in memory that fail on request.
//!
//! Operations of both are counted together, and a [`Fault`] can be set on any
//! one of them. A test runs a session once for every operation it makes, each
//! time with another one failing.

mod fault;
mod memory;

pub use fault::{Fault, Faults, Side};
pub use memory::{MemoryShelf, MemoryVault};
