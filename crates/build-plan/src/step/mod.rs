//! What is done, in which order, and what proves it.
//!
//! To add a step, write its item in the file of its stretch of the job and name
//! it in [`STEPS`]. A step names the steps it needs; the tests prove that the
//! needs have no circle on any engine.

mod access;
mod bottom_end;
mod inspection;
mod order;
mod running;
mod shape;
mod shop;
mod teardown;
mod top_end;
mod trial_fit;

pub use bottom_end::{
    CAM_IN, CASE_CLOSED, CORE_PLUGS, CRANK_IN, DAMPER_ON, FRONT_COVER, GALLERY_PLUGS, LINERS_IN,
    PAN_ON, PISTONS_IN, PISTONS_ON_RODS, PUMP_IN, REAR_SEAL, ROD_BOLTS, SPLIT_SEAL_CHECK,
    THRUST_AND_EFFORT, TIMING_SET,
};
pub use inspection::{
    CRACK_CHECK, DECIDE_SIZES, MEASURE_BLOCK, MEASURE_CAM_AND_PUMP, MEASURE_CRANK, MEASURE_HEADS,
    MEASURE_PISTONS, MEASURE_RODS, ORDER_MACHINE_WORK,
};
pub use order::{Stuck, in_order};
pub use running::{
    AFTER_RUN_IN, BASELINE, CLOSE_BOOK, FIRST_FIRE, FIRST_SERVICE, FLUIDS, INSTALL, LOOK_OVER,
    PRE_FIRE, PRIME_AGAIN, RUN_IN_FIRST, SEAT_RINGS,
};
pub use shape::{By, Need, Phase, Sitting, Step, Strength};
pub use shop::{
    BALANCE_CRANK, DECK_BLOCK, FIT_CAM_BEARINGS, FIT_LINERS, GRIND_CRANK, HONE_BORES, LINE_HONE,
    PRESS_PINS, RESIZE_RODS, REWORK_HEADS,
};
pub use teardown::{
    CAM_OUT, CASE_SPLIT, CRANK_OUT, DRAIN, ENGINE_OUT, HEADS_OFF, HEADS_STRIPPED, IDENTIFY_ENGINE,
    LINERS_OUT, MEASURE_AS_FOUND, PAN_OFF, PLUGS_REMOVED, RIDGE_CUT, RODS_OUT, ROUGH_CLEAN,
    RUNNING_BASELINE, STRIP_ACCESSORIES, TIMING_OFF, VALVE_GEAR_OUT,
};
pub use top_end::{
    BOLT_ONS, COVERS_ON, FLYWHEEL_ON, HEAD_BOLTS, HEAD_GASKETS, HEADS_ON, IGNITION_SET, INTAKE_ON,
    LAY_UP, OVERHEAD_CAMS, PRIME, VALVE_GEAR_IN,
};
pub use trial_fit::{
    CHASE_THREADS, DRIVE_CHECK, FINAL_CLEAN, INSPECT_INCOMING, MOCK_UP, PICKUP_CHECK, PUMP_CHECK,
    RING_GAPS, RING_GROOVES, SPRING_HEIGHTS, TRIAL_COVERS, TRIAL_MAIN_BEARINGS, TRIAL_MAIN_BORES,
    TRIAL_ROD_BEARINGS, TRIAL_THRUST, WASH,
};

/// Every step there is, stretch by stretch.
pub static STEPS: &[&Step] = &[
    &IDENTIFY_ENGINE,
    &RUNNING_BASELINE,
    &DRAIN,
    &ENGINE_OUT,
    &STRIP_ACCESSORIES,
    &MEASURE_AS_FOUND,
    &VALVE_GEAR_OUT,
    &TIMING_OFF,
    &HEADS_OFF,
    &PAN_OFF,
    &RIDGE_CUT,
    &RODS_OUT,
    &CRANK_OUT,
    &CASE_SPLIT,
    &CAM_OUT,
    &LINERS_OUT,
    &PLUGS_REMOVED,
    &HEADS_STRIPPED,
    &ROUGH_CLEAN,
    &CRACK_CHECK,
    &MEASURE_BLOCK,
    &MEASURE_CRANK,
    &MEASURE_RODS,
    &MEASURE_PISTONS,
    &MEASURE_HEADS,
    &MEASURE_CAM_AND_PUMP,
    &DECIDE_SIZES,
    &ORDER_MACHINE_WORK,
    &LINE_HONE,
    &DECK_BLOCK,
    &HONE_BORES,
    &GRIND_CRANK,
    &RESIZE_RODS,
    &BALANCE_CRANK,
    &REWORK_HEADS,
    &FIT_CAM_BEARINGS,
    &FIT_LINERS,
    &PRESS_PINS,
    &INSPECT_INCOMING,
    &WASH,
    &CHASE_THREADS,
    &TRIAL_MAIN_BORES,
    &TRIAL_MAIN_BEARINGS,
    &TRIAL_THRUST,
    &TRIAL_ROD_BEARINGS,
    &RING_GAPS,
    &RING_GROOVES,
    &SPRING_HEIGHTS,
    &MOCK_UP,
    &PUMP_CHECK,
    &PICKUP_CHECK,
    &DRIVE_CHECK,
    &TRIAL_COVERS,
    &FINAL_CLEAN,
    &GALLERY_PLUGS,
    &CORE_PLUGS,
    &CAM_IN,
    &LINERS_IN,
    &CRANK_IN,
    &CASE_CLOSED,
    &THRUST_AND_EFFORT,
    &REAR_SEAL,
    &SPLIT_SEAL_CHECK,
    &PISTONS_ON_RODS,
    &PISTONS_IN,
    &ROD_BOLTS,
    &TIMING_SET,
    &PUMP_IN,
    &FRONT_COVER,
    &PAN_ON,
    &DAMPER_ON,
    &HEAD_GASKETS,
    &HEADS_ON,
    &HEAD_BOLTS,
    &VALVE_GEAR_IN,
    &OVERHEAD_CAMS,
    &INTAKE_ON,
    &PRIME,
    &COVERS_ON,
    &IGNITION_SET,
    &FLYWHEEL_ON,
    &BOLT_ONS,
    &LAY_UP,
    &INSTALL,
    &FLUIDS,
    &PRIME_AGAIN,
    &PRE_FIRE,
    &FIRST_FIRE,
    &RUN_IN_FIRST,
    &AFTER_RUN_IN,
    &SEAT_RINGS,
    &BASELINE,
    &LOOK_OVER,
    &FIRST_SERVICE,
    &CLOSE_BOOK,
];

/// The step with this id.
#[must_use]
pub fn step(id: &str) -> Option<&'static Step> {
    STEPS.iter().copied().find(|one| one.id == id)
}

#[cfg(test)]
pub(crate) mod tests;
#[cfg(test)]
mod whole_tests;
