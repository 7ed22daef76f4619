//! Checks of cleaning, trial fits and assembly.

use super::shape::{Check, LASTING, Lasts, Seen};
use crate::engine::{Feature, When};
use crate::measure::Per;

/// The hone's pattern.
pub static BORE_FINISH: Check = Check {
    id: "bore-finish",
    label: "bore finish as the rings want it",
    when: When::with(&[Feature::HonedBores]),
    per: Per::Cylinder,
    good: "Grit, angle of the pattern and plateau as the ring sheet says; write down the grit.",
    seen: Seen::Photo,
    ..LASTING
};

/// No leak at a valve's seat.
pub static SEAT_LEAK: Check = Check {
    id: "seat-leak",
    label: "valve seat tight",
    per: Per::Valve,
    good: "Solvent in the port stays there, or vacuum holds.",
    seen: Seen::Feel,
    ..LASTING
};

/// Clean, dried and under oil.
pub static WASHED_AND_OILED: Check = Check {
    id: "washed-and-oiled",
    label: "washed, dried and oiled",
    good: "Bare iron is under oil and under a bag. Flash rust comes in minutes.",
    seen: Seen::Photo,
    lasts: Lasts::AsSaid("days until you would wash and oil it again"),
    ..LASTING
};

/// Clean enough to assemble.
pub static CLEAN: Check = Check {
    id: "clean",
    label: "clean",
    good: "A white rag stays white in every bore and every gallery.",
    seen: Seen::Photo,
    ..LASTING
};

/// Holes that a bolt can be torqued in.
pub static THREADS_READY: Check = Check {
    id: "threads-ready",
    label: "threads chased, blind holes dry",
    good: "Every bolt turns in by hand to its full depth; blind holes are dry.",
    seen: Seen::Count,
    ..LASTING
};

/// Room everywhere in the mock-up.
pub static NOTHING_TOUCHES: Check = Check {
    id: "nothing-touches",
    label: "nothing touches",
    good: "Two full turns by hand: rods, counterweights, camshaft, block, pan rail and pistons all clear.",
    seen: Seen::Feel,
    ..LASTING
};

/// The relief valve moves.
pub static RELIEF_FREE: Check = Check {
    id: "relief-free",
    label: "oil relief plunger free",
    good: "It falls by its own weight, and the spring is the right one.",
    seen: Seen::Feel,
    ..LASTING
};

/// As many plugs in as came out.
pub static PLUGS_IN: Check = Check {
    id: "plugs-in",
    label: "plugs counted in",
    good: "As many as came out, a photo of each; none covers a cross hole.",
    seen: Seen::Count,
    ..LASTING
};

/// The camshaft turns.
pub static CAM_TURNS_FREE: Check = Check {
    id: "cam-turns-free",
    label: "camshaft turns by hand",
    good: "It spins by hand, and a wire goes through every oil hole of its bearings.",
    seen: Seen::Feel,
    ..LASTING
};

/// Wet liners hold their coolant.
pub static LINER_SEALS_TIGHT: Check = Check {
    id: "liner-seals-tight",
    label: "liner seals tight",
    when: When::with(&[Feature::WetLiners]),
    per: Per::Cylinder,
    good: "Liners clamped, coolant side filled or under pressure, no drop on the crank's side.",
    seen: Seen::Feel,
    ..LASTING
};

/// The main caps at their value.
pub static MAIN_CAPS_TIGHT: Check = Check {
    id: "main-caps-tight",
    label: "main caps tight",
    per: Per::Main,
    good: "A tick for every bolt at every lap, lubricant and wrench written down.",
    seen: Seen::Count,
    ..LASTING
};

/// The crank turns.
pub static CRANK_TURNS_FREE: Check = Check {
    id: "crank-turns-free",
    label: "crank turns free",
    per: Per::Main,
    good: "By fingers, with no lump, after this cap as after each one before.",
    seen: Seen::Feel,
    ..LASTING
};

/// The rear seal sits evenly.
pub static REAR_SEAL_EVEN: Check = Check {
    id: "rear-seal-even",
    label: "rear seal even all round",
    good: "The same gap all round, lip the right way and not folded.",
    seen: Seen::Photo,
    ..LASTING
};

/// Each ring belongs to a bore.
pub static RINGS_MARKED: Check = Check {
    id: "rings-marked",
    label: "rings tagged for their bores",
    per: Per::Cylinder,
    good: "Three gaps written down and the rings in a bag with the cylinder's number.",
    seen: Seen::Photo,
    ..LASTING
};

/// Piston and rod face the right way.
pub static PISTONS_RIGHT_WAY: Check = Check {
    id: "pistons-right-way",
    label: "piston and rod the right way round",
    per: Per::Cylinder,
    good: "Notch to the front, rod's chamfer to the fillet, ring marks up, gaps apart.",
    seen: Seen::Photo,
    ..LASTING
};

/// The rod bolts at their value.
pub static ROD_BOLTS_TIGHT: Check = Check {
    id: "rod-bolts-tight",
    label: "rod bolts tight",
    per: Per::Rod,
    good: "A tick or a stretch for every bolt, and it still turns.",
    seen: Seen::Count,
    ..LASTING
};

/// Crank and camshaft stand together.
pub static TIMING_MARKS: Check = Check {
    id: "timing-marks",
    label: "timing marks after two turns",
    good: "Marks meet again after two full turns by hand in running direction; a two-stage chain's only every so many turns.",
    seen: Seen::Photo,
    ..LASTING
};

/// The pump turns.
pub static PUMP_TURNS_FREE: Check = Check {
    id: "pump-turns-free",
    label: "oil pump turns free after its last torque",
    good: "At least one full turn by hand, its drive in place.",
    seen: Seen::Feel,
    ..LASTING
};

/// Sealant that is waiting for its joint.
pub static SEALANT_OPEN: Check = Check {
    id: "sealant-open",
    label: "sealant on, joint still open",
    good: "The joint is closed before the sealant skins.",
    seen: Seen::Words,
    lasts: Lasts::AsSaid("minutes until it skins, off the tube"),
    ..LASTING
};

/// The pan is on.
pub static PAN_CLOSED: Check = Check {
    id: "pan-closed",
    label: "pan on, all bolts",
    when: When::with(&[Feature::Pan]),
    good: "Every bolt ticked; what lies behind it photographed before.",
    seen: Seen::Count,
    ..LASTING
};

/// The head gaskets lie right.
pub static GASKETS_RIGHT_WAY: Check = Check {
    id: "gaskets-right-way",
    label: "head gasket the right way up and round",
    per: Per::Bank,
    good: "Front and up to be seen in the photo; deck wiped dry, dowels in. Some coolant holes are meant to be blocked.",
    seen: Seen::Photo,
    ..LASTING
};

/// The head bolts at their value.
pub static HEAD_BOLTS_TIGHT: Check = Check {
    id: "head-bolts-tight",
    label: "head bolts tight",
    per: Per::Bank,
    good: "A tick for every bolt at every lap, in the maker's order, and paint after the last.",
    seen: Seen::Count,
    ..LASTING
};
