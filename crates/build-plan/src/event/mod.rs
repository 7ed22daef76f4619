//! What happens to an engine, and which results that makes stale.
//!
//! A result that is made stale was true until then. It is kept, struck through,
//! with the event and the reason.

mod bottom_end;
mod moved;
mod other;
mod shape;
mod top_end;

pub use bottom_end::{
    BIG_ENDS_RESIZED, CRANK_GROUND, MAIN_CAP_CUT, MAIN_FASTENERS_CHANGED, MAIN_LINE_HONED,
    MAIN_SHELLS_SWAPPED, ROD_BOLTS_REPLACED, ROD_SHELLS_SWAPPED, THRUST_LAPPED,
};
pub use moved::{
    LASH_SHIMS_CHANGED, LIFTERS_MOVED, MAIN_CAPS_MOVED, PISTONS_MOVED, RINGS_MOVED, ROD_CAPS_MOVED,
    RODS_MOVED, VALVES_MOVED,
};
pub use other::{
    DAMPER_SWAPPED, FLYWHEEL_SWAPPED, GRIT_NEARBY, INTAKE_SWAPPED, OIL_JOINT_OPENED,
    PUMP_OR_PAN_SWAPPED,
};
pub use shape::Event;
pub use top_end::{
    BLOCK_DECKED, BORES_HONED, CAM_BEARINGS_FITTED, CAM_SWAPPED, HEAD_GASKET_SWAPPED, HEAD_MILLED,
    LINERS_MOVED, PISTONS_OR_RODS_SWAPPED, PLATE_CONDITION_CHANGED, ROCKER_RATIO_CHANGED,
    SEATS_CUT, SPRINGS_CHANGED,
};

/// Every event there is.
pub static EVENTS: &[&Event] = &[
    &MAIN_FASTENERS_CHANGED,
    &MAIN_CAP_CUT,
    &MAIN_LINE_HONED,
    &CRANK_GROUND,
    &THRUST_LAPPED,
    &MAIN_SHELLS_SWAPPED,
    &ROD_SHELLS_SWAPPED,
    &ROD_BOLTS_REPLACED,
    &BIG_ENDS_RESIZED,
    &BORES_HONED,
    &PLATE_CONDITION_CHANGED,
    &LINERS_MOVED,
    &PISTONS_OR_RODS_SWAPPED,
    &BLOCK_DECKED,
    &HEAD_MILLED,
    &HEAD_GASKET_SWAPPED,
    &SEATS_CUT,
    &SPRINGS_CHANGED,
    &CAM_SWAPPED,
    &CAM_BEARINGS_FITTED,
    &ROCKER_RATIO_CHANGED,
    &PUMP_OR_PAN_SWAPPED,
    &INTAKE_SWAPPED,
    &DAMPER_SWAPPED,
    &FLYWHEEL_SWAPPED,
    &OIL_JOINT_OPENED,
    &GRIT_NEARBY,
    &MAIN_CAPS_MOVED,
    &RODS_MOVED,
    &ROD_CAPS_MOVED,
    &PISTONS_MOVED,
    &RINGS_MOVED,
    &VALVES_MOVED,
    &LIFTERS_MOVED,
    &LASH_SHIMS_CHANGED,
];

/// The event with this id.
#[must_use]
pub fn event(id: &str) -> Option<&'static Event> {
    EVENTS.iter().copied().find(|one| one.id == id)
}
