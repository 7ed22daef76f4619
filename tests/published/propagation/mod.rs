//! Correlated error propagation, against an outside library.

pub mod clearance_chain;
pub mod formula;

use crate::runner::Subject;

/// The topics and what answers them.
pub const SUBJECTS: &[Subject] = &[
    Subject::of("propagation", "formula", formula::answer),
    Subject::of("propagation", "clearance_chain", clearance_chain::answer),
];
