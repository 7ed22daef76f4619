//! What happens to the oil system, to what is bolted on, and around the engine.

use super::shape::{ANYWHERE, Event, of};
use crate::check::{
    BALANCE, CLEAN, OIL_AT_ROCKERS, PRIMED, PUMP_TURNS_FREE, STATIC_TIMING, WASHED_AND_OILED,
};
use crate::measure::{
    BELLHOUSING_RUN_OUT, CONVERTER_GAP, CRANK_END_PLAY, DAMPER_HUB_INTERFERENCE, DAMPER_MARK,
    DISTRIBUTOR_FLOAT, FLYWHEEL_RUN_OUT, INTAKE_FIT, PICKUP_TO_PAN, PUMP_DRIVE_FLOAT,
};
use crate::proof::Proof;
use crate::step::INTAKE_ON;

/// Another pump, pickup, pan, tray or pan gasket.
pub static PUMP_OR_PAN_SWAPPED: Event = Event {
    id: "pump-or-pan-swapped",
    label: "oil pump, pickup, pan, tray or pan gasket swapped",
    voids: &[
        of(&PICKUP_TO_PAN),
        of(&PUMP_DRIVE_FLOAT),
        Proof::Check(&PUMP_TURNS_FREE),
        Proof::Check(&PRIMED),
        Proof::Check(&OIL_AT_ROCKERS),
    ],
    why: "The stack from block to pan is another one, and the oil has drained.",
    ..ANYWHERE
};

/// Another or milled intake, or a distributor that was moved.
pub static INTAKE_SWAPPED: Event = Event {
    id: "intake-swapped",
    label: "intake swapped or milled, or distributor moved",
    voids: &[
        of(&INTAKE_FIT),
        of(&DISTRIBUTOR_FLOAT),
        of(&PUMP_DRIVE_FLOAT),
        Proof::Check(&STATIC_TIMING),
        Proof::Step(&INTAKE_ON),
    ],
    why: "The intake is another one, and a distributor sits at another height.",
    ..ANYWHERE
};

/// Another damper or pointer.
pub static DAMPER_SWAPPED: Event = Event {
    id: "damper-swapped",
    label: "damper or timing pointer swapped",
    voids: &[
        of(&DAMPER_MARK),
        of(&DAMPER_HUB_INTERFERENCE),
        Proof::Check(&STATIC_TIMING),
    ],
    why: "The mark is another one.",
    ..ANYWHERE
};

/// Another flywheel, flexplate or converter.
pub static FLYWHEEL_SWAPPED: Event = Event {
    id: "flywheel-swapped",
    label: "flywheel, flexplate, clutch or converter swapped",
    voids: &[
        of(&FLYWHEEL_RUN_OUT),
        of(&BELLHOUSING_RUN_OUT),
        of(&CONVERTER_GAP),
        of(&CRANK_END_PLAY),
        Proof::Check(&BALANCE),
    ],
    why: "It may push on the crank, and it weighs something else.",
    ..ANYWHERE
};

/// Pump, filter, pan or distributor opened after priming.
pub static OIL_JOINT_OPENED: Event = Event {
    id: "oil-joint-opened",
    label: "pump, filter, pan, gallery or distributor opened",
    voids: &[Proof::Check(&PRIMED), Proof::Check(&OIL_AT_ROCKERS)],
    why: "The oil has drained from where it was opened.",
    ..ANYWHERE
};

/// Grit in the air.
pub static GRIT_NEARBY: Event = Event {
    id: "grit-nearby",
    label: "grinding, drilling or a rotary tool near the open engine",
    voids: &[Proof::Check(&CLEAN), Proof::Check(&WASHED_AND_OILED)],
    why: "Grit beds in bearings and rings.",
    ..ANYWHERE
};
