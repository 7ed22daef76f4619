//! What a calculation needs and gives, as data: from it come the quick-check
//! forms, the workings shown to the builder, the printed record and the check
//! against outside values.

mod answer;
mod calculation;
pub(crate) mod given;
mod terms;
mod text;

use crate::{
    choose, crank, cylinder, drive, fit, metrology, oil, oil_pump, stack, temperature, tool, valve,
};

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
    &crank::journal_shape::JOURNAL_SHAPE,
    &crank::run_out_of_mains::CRANK_BOW,
    &crank::housing_bore::HOUSING_BORE,
    &crank::line_of_mains::LINE_OF_MAINS,
    &crank::shell_wall::SHELL_WALL,
    &crank::shell_crush::SHELL_CRUSH,
    &crank::end_float::CRANK_END_FLOAT,
    &crank::rod_side_clearance::ROD_SIDE_CLEARANCE,
    &crank::rod_alignment::ROD_ALIGNMENT,
    &crank::turning_effort::TURNING_EFFORT,
    &cylinder::bore_shape::BORE_SHAPE,
    &cylinder::bore_finish::BORE_FINISH,
    &cylinder::piston_to_wall::PISTON_TO_WALL,
    &cylinder::piston_pin::FLOATING_PIN,
    &cylinder::piston_pin::PRESSED_PIN,
    &cylinder::pin_lock_float::PIN_LOCK_FLOAT,
    &cylinder::ring_side_clearance::RING_SIDE_CLEARANCE,
    &cylinder::ring_back_clearance::RING_BACK_CLEARANCE,
    &cylinder::liner_fit::LINER_FIT,
    &cylinder::liners_in_a_row::LINERS_IN_A_ROW,
    &cylinder::flatness::FLATNESS,
    &cylinder::deck_corners::DECK_CORNERS,
    &valve::stem_in_guide::STEM_IN_GUIDE,
    &valve::guide_rock::GUIDE_ROCK,
    &valve::seat::VALVE_SEAT,
    &valve::tip_heights::TIP_HEIGHTS,
    &valve::cam_bearing::CAM_BEARING_CLEARANCE,
    &valve::cam_lobe::CAM_LOBE,
    &valve::lifter_in_bore::LIFTER_IN_BORE,
    &valve::lash::VALVE_LASH,
    &valve::rocker_room::ROCKER_ROOM,
    &valve::piston_room::by_lift::VALVE_TO_PISTON,
    &valve::piston_room::by_feel::VALVE_TO_PISTON_FELT,
    &valve::valve_to_valve::VALVE_TO_VALVE,
    &oil_pump::end_clearance::PUMP_END_CLEARANCE,
    &oil_pump::side_clearance::PUMP_SIDE_CLEARANCE,
    &oil_pump::tip_clearance::PUMP_TIP_CLEARANCE,
    &oil_pump::relief_plunger::RELIEF_PLUNGER,
    &drive::gear_backlash::GEAR_BACKLASH,
    &drive::chain_slack::CHAIN_SLACK,
    &drive::damper_hub::DAMPER_HUB,
    &drive::run_out::RUN_OUT,
    &drive::lobe_centre::LOBE_CENTRE,
    &drive::top_dead_centre::TOP_DEAD_CENTRE,
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
    &oil::viscosity::OIL_VISCOSITY,
    &oil::viscosity::VISCOSITY_INDEX,
    &oil::viscosity::GRADE_AT_TEMPERATURE,
    &oil::viscosity::GRADE_OF_OIL,
];

/// The calculation with this id.
#[must_use]
pub fn calculation(id: &str) -> Option<&'static Calculation> {
    CALCULATIONS.iter().copied().find(|one| one.id == id)
}
