//! What a calculation needs and gives, as data: from it come the quick-check
//! forms, the workings shown to the builder, the printed record and the check
//! against outside values.

mod answer;
mod calculation;
pub(crate) mod given;
mod terms;
mod text;

use crate::{choose, cylinder, fit, metrology, stack, temperature, tool};

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
    &temperature::two_metals::TWO_METALS,
    &stack::pickup_to_pan::PICKUP_CHECK,
    &stack::quench_check::DECK_AND_QUENCH,
    &stack::quench_check::QUENCH_CHECK,
    &stack::compression_ratio::COMPRESSION_RATIO_CHECK,
    &stack::trapped_ratio::TRAPPED_RATIO_CHECK,
    &stack::valve_spring_check::VALVE_SPRING,
    &stack::pushrod_length::PUSHROD_LENGTH,
    &stack::lifter_preload::PRELOAD_AFTER,
    &stack::lifter_preload::ROCKER_TURNS_CHECK,
    &stack::pump_drive::PUMP_DRIVE_CHECK,
    &stack::distributor_depth::DISTRIBUTOR_DEPTH,
    &stack::cam_end_float::CAM_FLOAT_PLATE_CHECK,
    &stack::cam_end_float::CAM_FLOAT_BUTTON_CHECK,
    &stack::crank_end_play::END_PLAY_FROM_WIDTHS,
    &stack::liner_stand_out::LINER_STAND_OUT_CHECK,
    &stack::cover_step::COVER_STEP_CHECK,
    &stack::cam_lateness::CAM_LATENESS_CHECK,
    &stack::tooth_out::TOOTH_OUT_CHECK,
    &stack::converter_gap::CONVERTER_GAP_CHECK,
    &stack::converter_gap::RELEASE_TRAVEL_CHECK,
    &stack::bearing_walls::BEARING_WALLS_CHECK,
    &stack::bolt_engagement::BOLT_CHECK,
    &stack::moving_room::PISTON_TO_COUNTERWEIGHT_CHECK,
    &stack::moving_room::ROD_TO_CAM_CHECK,
    &stack::moving_room::RING_TO_DECK_CHECK,
    &stack::moving_room::VALVE_POCKET_CHECK,
    &stack::after_milling::VALVE_ROOM_CHECK,
    &stack::after_milling::INTAKE_AFTER,
    &cylinder::ring_gap::RING_GAP_RULE,
    &cylinder::ring_gap::RING_GAP_AFTER_HONING,
    &choose::parts_to_places::MATCH_PISTONS_TO_BORES,
    &choose::parts_to_places::MATCH_RODS_TO_PINS,
    &choose::weights::MATCH_WEIGHTS,
    &choose::catalogue_shell::SHELLS_TO_ORDER,
    &choose::shells::WHICH_SHELL_WHERE,
    &choose::shims::liners::LINER_SHIMS,
    &choose::shims::buckets::BUCKET_SHIMS,
    &choose::shims::valve_spring::VALVE_SPRING_SHIMS,
    &choose::shims::distributor::DISTRIBUTOR_PACKING,
];

/// The calculation with this id.
#[must_use]
pub fn calculation(id: &str) -> Option<&'static Calculation> {
    CALCULATIONS.iter().copied().find(|one| one.id == id)
}
