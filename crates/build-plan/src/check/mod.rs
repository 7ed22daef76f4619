//! What is seen, felt or counted rather than measured: a state that is good or
//! is not.
//!
//! To add a check, write its item in the file of its part of the job and name
//! it in [`CHECKS`].

mod assembling;
mod finding_out;
mod running;
mod shape;

pub use assembling::{
    BORE_FINISH, CAM_TURNS_FREE, CLEAN, CRANK_TURNS_FREE, GASKETS_RIGHT_WAY, HEAD_BOLTS_TIGHT,
    LINER_SEALS_TIGHT, MAIN_CAPS_TIGHT, NOTHING_TOUCHES, PAN_CLOSED, PISTONS_RIGHT_WAY, PLUGS_IN,
    PUMP_TURNS_FREE, REAR_SEAL_EVEN, RELIEF_FREE, RINGS_MARKED, ROD_BOLTS_TIGHT, SEALANT_OPEN,
    SEAT_LEAK, THREADS_READY, TIMING_MARKS, WASHED_AND_OILED,
};
pub use finding_out::{
    BALANCE, BOLT_MAP, CRACKS, DECISIONS, FOUND_STATE, IDENTITY, OLD_BEARINGS, ORDER_WRITTEN,
    PARTS_NUMBERED, PLUGS_OUT, RECEIVED_AS_ORDERED, VALVE_GEAR_IN_ORDER,
};
pub use running::{
    BOOK_CLOSED, FIRED, FLUIDS_IN, INSTALLED, LAID_UP, OIL_AT_ROCKERS, OIL_CHANGED, PRE_FIRE_LIST,
    PRIMED, RUN_IN, STATIC_TIMING,
};
pub use shape::{Check, Lasts, Seen};

/// Every check there is, in the order of the job.
pub static CHECKS: &[&Check] = &[
    &IDENTITY,
    &FOUND_STATE,
    &BOLT_MAP,
    &VALVE_GEAR_IN_ORDER,
    &PARTS_NUMBERED,
    &PLUGS_OUT,
    &OLD_BEARINGS,
    &CRACKS,
    &DECISIONS,
    &ORDER_WRITTEN,
    &BALANCE,
    &BORE_FINISH,
    &SEAT_LEAK,
    &RECEIVED_AS_ORDERED,
    &WASHED_AND_OILED,
    &CLEAN,
    &THREADS_READY,
    &NOTHING_TOUCHES,
    &RELIEF_FREE,
    &PLUGS_IN,
    &CAM_TURNS_FREE,
    &LINER_SEALS_TIGHT,
    &MAIN_CAPS_TIGHT,
    &CRANK_TURNS_FREE,
    &REAR_SEAL_EVEN,
    &RINGS_MARKED,
    &PISTONS_RIGHT_WAY,
    &ROD_BOLTS_TIGHT,
    &TIMING_MARKS,
    &PUMP_TURNS_FREE,
    &SEALANT_OPEN,
    &PAN_CLOSED,
    &GASKETS_RIGHT_WAY,
    &HEAD_BOLTS_TIGHT,
    &PRIMED,
    &OIL_AT_ROCKERS,
    &STATIC_TIMING,
    &LAID_UP,
    &INSTALLED,
    &FLUIDS_IN,
    &PRE_FIRE_LIST,
    &FIRED,
    &RUN_IN,
    &OIL_CHANGED,
    &BOOK_CLOSED,
];

/// The check with this id.
#[must_use]
pub fn check(id: &str) -> Option<&'static Check> {
    CHECKS.iter().copied().find(|one| one.id == id)
}
