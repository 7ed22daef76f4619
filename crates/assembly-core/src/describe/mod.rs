//! What a calculation needs and gives, as data: from it come the quick-check
//! forms, the workings shown to the builder, the printed record and the check
//! against outside values.

mod answer;
mod calculation;
pub(crate) mod given;
mod terms;
mod text;

use crate::{fit, metrology, stack, tool};

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
    &metrology::standard_tolerance::STANDARD_TOLERANCE,
    &metrology::limits_and_fits::LIMITS_AND_FITS,
    &metrology::press_fit::PRESS_FIT,
    &metrology::expansion::THERMAL_GROWTH,
    &metrology::expansion::SIZE_AT_REFERENCE,
    &metrology::expansion::CLEARANCE_AT_TEMPERATURE,
    &metrology::coverage::COVERAGE_FACTOR,
    &metrology::budget::UNCERTAINTY_BUDGET,
    &metrology::conformity::CONFORMITY,
    &fit::temperature::SIZE_BY_WARM_TOOL,
    &tool::TOOL_SELF_TEST,
    &tool::ZERO_CHECK,
    &tool::INDICATOR_LEAN,
    &tool::FEELER_STACK,
    &stack::pickup_to_pan::PICKUP_CHECK,
    &stack::deck_and_quench::DECK_AND_QUENCH,
    &stack::deck_and_quench::QUENCH_CHECK,
];

/// The calculation with this id.
#[must_use]
pub fn calculation(id: &str) -> Option<&'static Calculation> {
    CALCULATIONS.iter().copied().find(|one| one.id == id)
}
