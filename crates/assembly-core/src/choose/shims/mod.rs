//! Shims: how thick, how many, and which of those that lie on the bench.
//!
//! - [`stack`]: the stack of pieces nearest to what is needed.
//! - [`valve_spring`], [`distributor`]: stacks under a spring, under a housing.
//! - [`liners`]: wet liners to their stand-out, with the step between neighbours.
//! - [`buckets`]: valve lash shims, used ones first.

pub mod buckets;
pub mod distributor;
pub mod liners;
pub mod stack;
pub mod valve_spring;
