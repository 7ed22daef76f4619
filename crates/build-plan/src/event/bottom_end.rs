//! What happens to crank, mains and rods.

use super::shape::{ANYWHERE, Event, of};
use crate::check::{BALANCE, CRANK_TURNS_FREE, REAR_SEAL_EVEN, ROD_BOLTS_TIGHT};
use crate::measure::{
    BIG_END_BORE, BIG_END_OUT_OF_ROUND, CAM_LOBE_CENTRE, COMPRESSION_RATIO, CRANK_BOW,
    CRANK_END_PLAY, DECK_CLEARANCE, MAIN_BEARING_BORE, MAIN_CRUSH, MAIN_HOUSING_BORE,
    MAIN_JOURNAL_DIAMETER, MAIN_JOURNAL_OUT_OF_ROUND, MAIN_JOURNAL_TAPER, MAIN_LINE,
    MAIN_OIL_CLEARANCE, MAIN_SHELL_WALL, PUMP_DRIVE_FLOAT, Per, QUENCH, ROD_BEARING_BORE,
    ROD_CRUSH, ROD_JOURNAL_DIAMETER, ROD_JOURNAL_OUT_OF_ROUND, ROD_JOURNAL_TAPER, ROD_LENGTH,
    ROD_OIL_CLEARANCE, ROD_SHELL_WALL, ROD_SIDE_CLEARANCE, TIMING_CHAIN_SLACK,
    TIMING_GEAR_BACKLASH, TURNING_EFFORT, VALVE_TO_PISTON_EXHAUST, VALVE_TO_PISTON_INTAKE,
};
use crate::proof::Proof;

/// Bolts for studs, or another lubricant.
pub static MAIN_FASTENERS_CHANGED: Event = Event {
    id: "main-fasteners-changed",
    label: "main bolts or studs changed, or their lubricant",
    voids: &[
        of(&MAIN_HOUSING_BORE),
        of(&MAIN_LINE),
        of(&MAIN_BEARING_BORE),
        of(&MAIN_OIL_CLEARANCE),
        of(&MAIN_CRUSH),
        of(&TURNING_EFFORT),
    ],
    why: "The caps are pulled to another shape.",
    ..ANYWHERE
};

/// A cap filed or cut. The bore has to be made round again.
pub static MAIN_CAP_CUT: Event = Event {
    id: "main-cap-cut",
    label: "main cap filed or cut",
    per: Per::Main,
    voids: &[
        of(&MAIN_HOUSING_BORE),
        of(&MAIN_LINE),
        of(&MAIN_BEARING_BORE),
        of(&MAIN_OIL_CLEARANCE),
        of(&MAIN_CRUSH),
        of(&TURNING_EFFORT),
        Proof::Check(&CRANK_TURNS_FREE),
    ],
    why: "The bore is no longer round where the cap was cut.",
    ..ANYWHERE
};

/// The mains bored or honed in line.
pub static MAIN_LINE_HONED: Event = Event {
    id: "main-line-honed",
    label: "mains line-honed or line-bored",
    voids: &[
        of(&MAIN_HOUSING_BORE),
        of(&MAIN_LINE),
        of(&MAIN_BEARING_BORE),
        of(&MAIN_OIL_CLEARANCE),
        of(&MAIN_CRUSH),
        of(&CRANK_END_PLAY),
        of(&DECK_CLEARANCE),
        of(&QUENCH),
        of(&COMPRESSION_RATIO),
        of(&TIMING_CHAIN_SLACK),
        of(&TIMING_GEAR_BACKLASH),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        of(&CAM_LOBE_CENTRE),
        of(&PUMP_DRIVE_FLOAT),
        of(&TURNING_EFFORT),
        Proof::Check(&REAR_SEAL_EVEN),
    ],
    why: "The bores changed, and the crank came up by about half of what the caps lost.",
    ..ANYWHERE
};

/// The crank ground, polished or straightened.
pub static CRANK_GROUND: Event = Event {
    id: "crank-ground",
    label: "crank ground, polished or straightened",
    voids: &[
        of(&MAIN_JOURNAL_DIAMETER),
        of(&MAIN_JOURNAL_TAPER),
        of(&MAIN_JOURNAL_OUT_OF_ROUND),
        of(&CRANK_BOW),
        of(&MAIN_OIL_CLEARANCE),
        of(&CRANK_END_PLAY),
        of(&ROD_JOURNAL_DIAMETER),
        of(&ROD_JOURNAL_TAPER),
        of(&ROD_JOURNAL_OUT_OF_ROUND),
        of(&ROD_OIL_CLEARANCE),
        of(&ROD_SIDE_CLEARANCE),
        of(&TURNING_EFFORT),
        Proof::Check(&BALANCE),
        Proof::Check(&REAR_SEAL_EVEN),
    ],
    why: "The journals have other diameters, and cheeks, thrust and seal land may have been touched.",
    ..ANYWHERE
};

/// The thrust halves lapped or swapped.
pub static THRUST_LAPPED: Event = Event {
    id: "thrust-lapped",
    label: "thrust halves lapped or swapped",
    voids: &[of(&CRANK_END_PLAY)],
    why: "The thrust has another width.",
    ..ANYWHERE
};

/// Other shells in a main.
pub static MAIN_SHELLS_SWAPPED: Event = Event {
    id: "main-shells-swapped",
    label: "main shells swapped: size, coating or box",
    per: Per::Main,
    voids: &[
        of(&MAIN_SHELL_WALL),
        of(&MAIN_BEARING_BORE),
        of(&MAIN_OIL_CLEARANCE),
        of(&MAIN_CRUSH),
        Proof::Check(&CRANK_TURNS_FREE),
    ],
    why: "The walls are of another thickness; two boxes of one size may differ.",
    ..ANYWHERE
};

/// Other shells in a rod.
pub static ROD_SHELLS_SWAPPED: Event = Event {
    id: "rod-shells-swapped",
    label: "rod shells swapped: size, coating or box",
    per: Per::Rod,
    voids: &[
        of(&ROD_SHELL_WALL),
        of(&ROD_BEARING_BORE),
        of(&ROD_OIL_CLEARANCE),
        of(&ROD_CRUSH),
    ],
    why: "The walls are of another thickness; two boxes of one size may differ.",
    ..ANYWHERE
};

/// New rod bolts.
pub static ROD_BOLTS_REPLACED: Event = Event {
    id: "rod-bolts-replaced",
    label: "rod bolts replaced",
    per: Per::Rod,
    voids: &[
        of(&BIG_END_BORE),
        of(&BIG_END_OUT_OF_ROUND),
        of(&ROD_BEARING_BORE),
        of(&ROD_OIL_CLEARANCE),
        of(&ROD_CRUSH),
        Proof::Check(&ROD_BOLTS_TIGHT),
    ],
    why: "A new bolt presses and clamps differently; the bore may have gone egg-shaped.",
    ..ANYWHERE
};

/// A big end cut and honed round again.
pub static BIG_ENDS_RESIZED: Event = Event {
    id: "big-end-resized",
    label: "big end resized",
    per: Per::Rod,
    voids: &[
        of(&BIG_END_BORE),
        of(&BIG_END_OUT_OF_ROUND),
        of(&ROD_BEARING_BORE),
        of(&ROD_OIL_CLEARANCE),
        of(&ROD_CRUSH),
        of(&ROD_LENGTH),
        of(&DECK_CLEARANCE),
        of(&QUENCH),
        of(&COMPRESSION_RATIO),
        of(&VALVE_TO_PISTON_INTAKE),
        of(&VALVE_TO_PISTON_EXHAUST),
        Proof::Check(&BALANCE),
    ],
    why: "The bore is new, and the rod got shorter.",
    ..ANYWHERE
};
