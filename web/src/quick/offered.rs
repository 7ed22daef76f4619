//! The quick checks that the page carries.
//!
//! `assembly_core` knows many more, which wait in a part of their own. Each one
//! named here is in what a phone has to fetch first, so they are named one by one.

use assembly_core::describe::Calculation;
use assembly_core::fit::clearance_rule_of_thumb::CLEARANCE_RULE_OF_THUMB;
use assembly_core::fit::running_clearance::{
    RUNNING_CLEARANCE, RUNNING_CLEARANCE_SAME_MICROMETER, RUNNING_CLEARANCE_STRIP,
};

/// The quick checks, in the order they are listed.
pub static OFFERED: &[&Calculation] = &[
    &RUNNING_CLEARANCE,
    &RUNNING_CLEARANCE_SAME_MICROMETER,
    &RUNNING_CLEARANCE_STRIP,
    &CLEARANCE_RULE_OF_THUMB,
];

/// The quick check with this id.
#[must_use]
pub fn offered(id: &str) -> Option<&'static Calculation> {
    OFFERED.iter().copied().find(|one| one.id == id)
}
