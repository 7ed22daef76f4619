//! Parts that were moved from one place to another: what was proved at either
//! place was proved with the other part in it.

use super::shape::{ANYWHERE, Event, of};
use crate::check::{
    CRANK_TURNS_FREE, MAIN_CAPS_TIGHT, PISTONS_RIGHT_WAY, RINGS_MARKED, ROD_BOLTS_TIGHT, SEAT_LEAK,
};
use crate::engine::{Feature, When};
use crate::measure::{
    BIG_END_BORE, BIG_END_OUT_OF_ROUND, COIL_BIND_MARGIN, DECK_CLEARANCE, INSTALLED_HEIGHT,
    LIFTER_IN_BORE, LIFTER_PRELOAD, MAIN_BEARING_BORE, MAIN_CRUSH, MAIN_HOUSING_BORE, MAIN_LINE,
    MAIN_OIL_CLEARANCE, PIN_IN_BUSH, PIN_IN_PISTON, PIN_LOCK_FLOAT, PISTON_DIAMETER,
    PISTON_TO_WALL, Per, QUENCH, RETAINER_TO_SEAL, RING_BACK_CLEARANCE, RING_END_GAP,
    RING_SIDE_CLEARANCE, ROD_BEARING_BORE, ROD_BEND, ROD_BOLT_FREE_LENGTH, ROD_BOLT_STRETCH,
    ROD_CRUSH, ROD_LENGTH, ROD_OIL_CLEARANCE, ROD_SHELL_WALL, ROD_SIDE_CLEARANCE, ROD_TWIST,
    SEAT_RUN_OUT, SEAT_WIDTH, SPRING_OPEN_LOAD, SPRING_SEAT_LOAD, STEM_GUIDE_EXHAUST,
    STEM_GUIDE_INTAKE, TIP_HEIGHT, VALVE_LASH, VALVE_TO_PISTON_EXHAUST, VALVE_TO_PISTON_INTAKE,
};
use crate::proof::Proof;

/// Main caps at each other's places, or turned round.
pub static MAIN_CAPS_MOVED: Event = Event {
    id: "main-caps-moved",
    label: "main caps swapped with each other or turned round",
    when: When::with(&[Feature::SeparateCaps]),
    per: Per::Main,
    voids: &[
        of(&MAIN_HOUSING_BORE),
        of(&MAIN_LINE),
        of(&MAIN_BEARING_BORE),
        of(&MAIN_OIL_CLEARANCE),
        of(&MAIN_CRUSH),
        Proof::Check(&MAIN_CAPS_TIGHT),
        Proof::Check(&CRANK_TURNS_FREE),
    ],
    why: "Each cap was bored in its own place, the same way round.",
};

/// Rods, with their caps, at each other's places.
pub static RODS_MOVED: Event = Event {
    id: "rods-moved",
    label: "rods moved from one cylinder to another",
    per: Per::Rod,
    voids: &[
        of(&BIG_END_BORE),
        of(&BIG_END_OUT_OF_ROUND),
        of(&ROD_SHELL_WALL),
        of(&ROD_BEARING_BORE),
        of(&ROD_OIL_CLEARANCE),
        of(&ROD_CRUSH),
        of(&ROD_SIDE_CLEARANCE),
        of(&ROD_LENGTH),
        of(&ROD_BEND),
        of(&ROD_TWIST),
        of(&ROD_BOLT_FREE_LENGTH),
        of(&ROD_BOLT_STRETCH),
        of(&PIN_IN_BUSH),
        of(&DECK_CLEARANCE),
        of(&QUENCH),
        Proof::Check(&ROD_BOLTS_TIGHT),
    ],
    why: "What was measured at this cylinder was measured on another rod.",
    ..ANYWHERE
};

/// Rod caps on each other's rods.
pub static ROD_CAPS_MOVED: Event = Event {
    id: "rod-caps-moved",
    label: "rod caps swapped with each other or turned round",
    per: Per::Rod,
    voids: &[
        of(&BIG_END_BORE),
        of(&BIG_END_OUT_OF_ROUND),
        of(&ROD_BEARING_BORE),
        of(&ROD_OIL_CLEARANCE),
        of(&ROD_CRUSH),
        Proof::Check(&ROD_BOLTS_TIGHT),
    ],
    why: "Rod and cap were bored together: apart from each other they are scrap or go to the shop.",
    ..ANYWHERE
};

/// Pistons at each other's places.
pub static PISTONS_MOVED: Event = Event {
    id: "pistons-moved",
    label: "pistons moved from one cylinder to another",
    per: Per::Cylinder,
    voids: &[
        of(&PISTON_DIAMETER),
        of(&PISTON_TO_WALL),
        of(&RING_SIDE_CLEARANCE),
        of(&RING_BACK_CLEARANCE),
        of(&PIN_IN_PISTON),
        of(&PIN_LOCK_FLOAT),
        of(&DECK_CLEARANCE),
        of(&QUENCH),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        Proof::Check(&PISTONS_RIGHT_WAY),
    ],
    why: "What was measured at this cylinder was measured on another piston.",
    ..ANYWHERE
};

/// Rings at each other's places.
pub static RINGS_MOVED: Event = Event {
    id: "rings-moved",
    label: "rings moved from one cylinder to another",
    per: Per::Cylinder,
    voids: &[
        of(&RING_END_GAP),
        of(&RING_SIDE_CLEARANCE),
        of(&RING_BACK_CLEARANCE),
        Proof::Check(&RINGS_MARKED),
    ],
    why: "Each ring's gap was set in its own bore.",
    ..ANYWHERE
};

/// Valves at each other's places.
pub static VALVES_MOVED: Event = Event {
    id: "valves-moved",
    label: "valves moved from one guide to another",
    per: Per::Valve,
    voids: &[
        of(&STEM_GUIDE_INTAKE),
        of(&STEM_GUIDE_EXHAUST),
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
        Proof::Check(&SEAT_LEAK),
    ],
    why: "Stem, seat and tip belong to one guide.",
    ..ANYWHERE
};

/// Lifters or buckets at each other's places.
pub static LIFTERS_MOVED: Event = Event {
    id: "lifters-moved",
    label: "lifters or buckets moved from one valve to another",
    per: Per::Valve,
    voids: &[of(&LIFTER_IN_BORE), of(&LIFTER_PRELOAD), of(&VALVE_LASH)],
    why: "A used lifter has run in on its own lobe and in its own bore; a used flat one on another lobe wipes it.",
    ..ANYWHERE
};

/// Lash shims changed.
pub static LASH_SHIMS_CHANGED: Event = Event {
    id: "lash-shims-changed",
    label: "lash shims changed, or moved to another valve",
    when: When::with(&[Feature::SetLash, Feature::Buckets]),
    per: Per::Valve,
    voids: &[of(&VALVE_LASH)],
    why: "Another shim is another lash.",
};
