//! The sample engine: a build that is the same on every device, so that it is
//! known as a sample wherever it turns up.
//!
//! Its facts are in a file of the page, `static/sample-engine.json`; the tests of
//! this crate make them. Taken in twice they are there once, since they are the
//! same facts.

use crate::id::BuildId;

/// The build of the sample: its name was drawn once.
pub const SAMPLE: BuildId = BuildId::from_random(0x5a3e_91c4_07d2_48b6_b1f0_6ce8_2d94_71a5);

/// Whether a build is the sample, and nobody's engine.
#[must_use]
pub fn is_sample(build: BuildId) -> bool {
    build == SAMPLE
}
