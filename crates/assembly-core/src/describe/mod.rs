//! What a calculation needs and gives, as data: from it come the quick-check
//! forms, the workings shown to the builder, the printed record and the check
//! against outside values.

mod answer;
mod calculation;
mod given;
mod terms;
mod text;

use crate::fit;

pub use answer::{Answer, Finding, Gravity};
pub use calculation::{Calculation, Choice, Input, Output, Provenance, Takes, UsualUnits};
pub use given::{CalculationError, Given};
pub use text::length_text;

/// Every calculation there is. To add one, write its file and name it here.
pub static CALCULATIONS: &[&Calculation] = &[
    &fit::running_clearance::RUNNING_CLEARANCE,
    &fit::running_clearance::RUNNING_CLEARANCE_SAME_MICROMETER,
    &fit::running_clearance::RUNNING_CLEARANCE_STRIP,
    &fit::clearance_rule_of_thumb::CLEARANCE_RULE_OF_THUMB,
];

/// The calculation with this id.
#[must_use]
pub fn calculation(id: &str) -> Option<&'static Calculation> {
    CALCULATIONS.iter().copied().find(|one| one.id == id)
}
