//! What happens to cylinders, pistons, heads and valve gear.

use super::shape::{ANYWHERE, Event, of};
use crate::check::{
    BALANCE, BORE_FINISH, CAM_TURNS_FREE, CLEAN, GASKETS_RIGHT_WAY, HEAD_BOLTS_TIGHT,
    LINER_SEALS_TIGHT, NOTHING_TOUCHES, PISTONS_RIGHT_WAY, PRIMED, RINGS_MARKED, SEAT_LEAK,
    TIMING_MARKS,
};
use crate::engine::{Feature, When};
use crate::measure::{
    BORE, BORE_OUT_OF_ROUND, BORE_TAPER, CAM_BEARING_CLEARANCE, CAM_END_FLOAT, CAM_LATENESS,
    CAM_LOBE_CENTRE, CHAMBER_VOLUME, COIL_BIND_MARGIN, COMPRESSION_RATIO, DECK_CLEARANCE,
    DECK_FLATNESS, HEAD_FLATNESS, INSTALLED_HEIGHT, INTAKE_FIT, LIFTER_PRELOAD, LINER_FIT,
    LINER_STAND_OUT, LINER_STEP, LOBE_LIFT, PIN_IN_BUSH, PIN_IN_PISTON, PIN_LOCK_FLOAT, PIN_PRESS,
    PISTON_DIAMETER, PISTON_TO_WALL, PUSHROD_LENGTH, Per, QUENCH, RETAINER_TO_SEAL,
    RING_BACK_CLEARANCE, RING_END_GAP, RING_SIDE_CLEARANCE, ROCKER_ROOM, ROCKER_SWEEP,
    SEAT_RUN_OUT, SEAT_WIDTH, SPRING_OPEN_LOAD, SPRING_SEAT_LOAD, TIMING_COVER_STEP, TIP_HEIGHT,
    VALVE_LASH, VALVE_TO_PISTON_EXHAUST, VALVE_TO_PISTON_INTAKE, VALVE_TO_VALVE,
};
use crate::proof::Proof;

/// A bore honed.
pub static BORES_HONED: Event = Event {
    id: "bores-honed",
    label: "bore honed or bored",
    per: Per::Cylinder,
    voids: &[
        of(&BORE),
        of(&BORE_TAPER),
        of(&BORE_OUT_OF_ROUND),
        of(&PISTON_TO_WALL),
        of(&RING_END_GAP),
        Proof::Check(&BORE_FINISH),
        Proof::Check(&RINGS_MARKED),
        Proof::Check(&CLEAN),
    ],
    why: "The bore is larger, ring gaps open by three times as much, and there is grit.",
    ..ANYWHERE
};

/// Bores that were measured with a plate, or for other fasteners.
pub static PLATE_CONDITION_CHANGED: Event = Event {
    id: "plate-condition-changed",
    label: "plate taken off, or head fasteners or gasket of another kind than the bores were honed with",
    voids: &[
        of(&BORE),
        of(&BORE_TAPER),
        of(&BORE_OUT_OF_ROUND),
        of(&PISTON_TO_WALL),
        of(&RING_END_GAP),
    ],
    why: "The bores have their shape only as they were clamped when they were honed.",
    ..ANYWHERE
};

/// A liner turned, shimmed or moved.
pub static LINERS_MOVED: Event = Event {
    id: "liner-moved",
    label: "liner turned, shimmed, swapped or its seat cut",
    when: When::with(&[Feature::LooseLiners]),
    per: Per::Cylinder,
    voids: &[
        of(&BORE),
        of(&BORE_TAPER),
        of(&BORE_OUT_OF_ROUND),
        of(&PISTON_TO_WALL),
        of(&LINER_STAND_OUT),
        of(&LINER_STEP),
        of(&LINER_FIT),
        of(&DECK_CLEARANCE),
        Proof::Check(&LINER_SEALS_TIGHT),
    ],
    why: "It stands at another height and is held at other places.",
};

/// Other pistons, pins or rods.
pub static PISTONS_OR_RODS_SWAPPED: Event = Event {
    id: "piston-or-rod-swapped",
    label: "piston, pin or rod swapped",
    per: Per::Cylinder,
    voids: &[
        of(&PISTON_DIAMETER),
        of(&PISTON_TO_WALL),
        of(&RING_SIDE_CLEARANCE),
        of(&RING_BACK_CLEARANCE),
        of(&PIN_IN_PISTON),
        of(&PIN_IN_BUSH),
        of(&PIN_PRESS),
        of(&PIN_LOCK_FLOAT),
        of(&DECK_CLEARANCE),
        of(&QUENCH),
        of(&COMPRESSION_RATIO),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        Proof::Check(&PISTONS_RIGHT_WAY),
        Proof::Check(&NOTHING_TOUCHES),
        Proof::Check(&BALANCE),
    ],
    why: "Other parts have other sizes and weights.",
    ..ANYWHERE
};

/// A deck cut.
pub static BLOCK_DECKED: Event = Event {
    id: "block-decked",
    label: "block decked",
    per: Per::Bank,
    voids: &[
        of(&DECK_FLATNESS),
        of(&LINER_STAND_OUT),
        of(&LINER_STEP),
        of(&DECK_CLEARANCE),
        of(&QUENCH),
        of(&COMPRESSION_RATIO),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        of(&PUSHROD_LENGTH),
        of(&LIFTER_PRELOAD),
        of(&VALVE_LASH),
        of(&ROCKER_SWEEP),
        of(&INTAKE_FIT),
        of(&TIMING_COVER_STEP),
        of(&CAM_LATENESS),
        Proof::Check(&CLEAN),
    ],
    why: "Everything above the deck came down by what was cut.",
    ..ANYWHERE
};

/// A head cut. Quench stays when its pad is the face that was cut.
pub static HEAD_MILLED: Event = Event {
    id: "head-milled",
    label: "head milled",
    per: Per::Bank,
    voids: &[
        of(&HEAD_FLATNESS),
        of(&CHAMBER_VOLUME),
        of(&COMPRESSION_RATIO),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        of(&PUSHROD_LENGTH),
        of(&LIFTER_PRELOAD),
        of(&VALVE_LASH),
        of(&ROCKER_SWEEP),
        of(&INTAKE_FIT),
        of(&CAM_LATENESS),
    ],
    why: "The chambers are smaller and the head sits lower. Quench stays: its pad is the milled face.",
    ..ANYWHERE
};

/// A gasket of another thickness.
pub static HEAD_GASKET_SWAPPED: Event = Event {
    id: "head-gasket-swapped",
    label: "head gasket of another thickness",
    per: Per::Bank,
    voids: &[
        of(&QUENCH),
        of(&COMPRESSION_RATIO),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        of(&PUSHROD_LENGTH),
        of(&LIFTER_PRELOAD),
        of(&VALVE_LASH),
        of(&INTAKE_FIT),
        of(&CAM_LATENESS),
        Proof::Check(&GASKETS_RIGHT_WAY),
        Proof::Check(&HEAD_BOLTS_TIGHT),
    ],
    why: "The head sits at another height.",
    ..ANYWHERE
};

/// A seat cut, or a valve ground or swapped.
pub static SEATS_CUT: Event = Event {
    id: "seat-cut",
    label: "seat cut, or valve ground or swapped",
    per: Per::Valve,
    voids: &[
        of(&SEAT_WIDTH),
        of(&SEAT_RUN_OUT),
        of(&TIP_HEIGHT),
        of(&INSTALLED_HEIGHT),
        of(&SPRING_SEAT_LOAD),
        of(&SPRING_OPEN_LOAD),
        of(&COIL_BIND_MARGIN),
        of(&RETAINER_TO_SEAL),
        of(&LIFTER_PRELOAD),
        of(&VALVE_LASH),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        of(&CHAMBER_VOLUME),
        of(&COMPRESSION_RATIO),
        Proof::Check(&SEAT_LEAK),
    ],
    why: "The valve sank and its tip rose.",
    ..ANYWHERE
};

/// Shims, retainers, locks or springs changed.
pub static SPRINGS_CHANGED: Event = Event {
    id: "springs-changed",
    label: "spring, shim, retainer or locks changed",
    per: Per::Valve,
    voids: &[
        of(&INSTALLED_HEIGHT),
        of(&SPRING_SEAT_LOAD),
        of(&SPRING_OPEN_LOAD),
        of(&COIL_BIND_MARGIN),
        of(&RETAINER_TO_SEAL),
    ],
    why: "The spring stands at another height.",
    ..ANYWHERE
};

/// Another camshaft, or the same one moved.
pub static CAM_SWAPPED: Event = Event {
    id: "cam-swapped",
    label: "camshaft swapped, reground, advanced or retarded",
    per: Per::Camshaft,
    voids: &[
        of(&LOBE_LIFT),
        of(&CAM_END_FLOAT),
        of(&CAM_LOBE_CENTRE),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        of(&VALVE_TO_VALVE),
        of(&SPRING_OPEN_LOAD),
        of(&COIL_BIND_MARGIN),
        of(&RETAINER_TO_SEAL),
        of(&PUSHROD_LENGTH),
        of(&LIFTER_PRELOAD),
        of(&VALVE_LASH),
        Proof::Check(&TIMING_MARKS),
    ],
    why: "Lift, phase or base circle changed.",
    ..ANYWHERE
};

/// New cam bearings.
pub static CAM_BEARINGS_FITTED: Event = Event {
    id: "cam-bearings-fitted",
    label: "cam bearings fitted or turned",
    voids: &[
        of(&CAM_BEARING_CLEARANCE),
        Proof::Check(&CAM_TURNS_FREE),
        Proof::Check(&PRIMED),
    ],
    why: "The clearance is new, and an oil hole may be covered.",
    ..ANYWHERE
};

/// Rockers of another ratio.
pub static ROCKER_RATIO_CHANGED: Event = Event {
    id: "rocker-ratio-changed",
    label: "rockers of another ratio",
    when: When::with(&[Feature::Rockers]),
    voids: &[
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        of(&SPRING_OPEN_LOAD),
        of(&COIL_BIND_MARGIN),
        of(&RETAINER_TO_SEAL),
        of(&ROCKER_SWEEP),
        of(&ROCKER_ROOM),
        of(&LIFTER_PRELOAD),
        of(&VALVE_LASH),
    ],
    why: "The valves lift by another amount.",
    ..ANYWHERE
};
