//! Checks from priming to the closed book.

use super::shape::{Check, LASTING, Lasts, Seen};
use crate::engine::{Feature, When};
use crate::measure::Per;

/// Oil has been everywhere.
pub static PRIMED: Check = Check {
    id: "primed",
    label: "primed",
    good: "Pressure seen on a gauge, with oil temperature and date.",
    seen: Seen::Words,
    lasts: Lasts::Days(14),
    ..LASTING
};

/// Oil at each valve.
pub static OIL_AT_ROCKERS: Check = Check {
    id: "oil-at-rockers",
    label: "oil at every rocker or cam bearing",
    per: Per::Valve,
    good: "Seen to come out while priming, the crank turned on a quarter at a time.",
    seen: Seen::Count,
    lasts: Lasts::Days(14),
    ..LASTING
};

/// The spark will come at the right time.
pub static STATIC_TIMING: Check = Check {
    id: "static-timing",
    label: "timing set standing still",
    when: When::with(&[Feature::SparkIgnition]),
    good: "Cylinder one on its compression stroke, rotor or sensor where it should be; it fires at once.",
    seen: Seen::Photo,
    ..LASTING
};

/// Put away for a while.
pub static LAID_UP: Check = Check {
    id: "laid-up",
    label: "laid up",
    good: "Bores oiled, openings taped, bagged with desiccant, a tag on it: do not crank.",
    seen: Seen::Photo,
    ..LASTING
};

/// The engine is in.
pub static INSTALLED: Check = Check {
    id: "installed",
    label: "installed, converter or clutch home",
    good: "Housing flush before any bolt was drawn, and the crank still has its end play.",
    seen: Seen::Feel,
    ..LASTING
};

/// Oil and coolant are in.
pub static FLUIDS_IN: Check = Check {
    id: "fluids-in",
    label: "oil and coolant in, bled",
    good: "Quantities written down; no air behind the thermostat.",
    seen: Seen::Words,
    ..LASTING
};

/// Everything looked at before the key is turned.
pub static PRE_FIRE_LIST: Check = Check {
    id: "pre-fire-list",
    label: "list before the first start",
    good: "Extinguisher in reach, doors open, chocked, fuel tight, oil and coolant right, fan proved, helper at the switch, tools and rags counted.",
    seen: Seen::Count,
    ..LASTING
};

/// It ran.
pub static FIRED: Check = Check {
    id: "fired",
    label: "first start",
    good: "Oil pressure within seconds, and nothing that says stop.",
    seen: Seen::Words,
    ..LASTING
};

/// It is run in.
pub static RUN_IN: Check = Check {
    id: "run-in",
    label: "run in",
    good: "Minutes at speed, temperature and pressure written down. A break is resumed: minutes add up.",
    seen: Seen::Words,
    ..LASTING
};

/// The first oil is out.
pub static OIL_CHANGED: Check = Check {
    id: "oil-changed",
    label: "oil changed, filter cut",
    good: "Fine grey paste is normal. Glitter, flakes or slivers are not.",
    seen: Seen::Photo,
    ..LASTING
};

/// The book is closed.
pub static BOOK_CLOSED: Check = Check {
    id: "book-closed",
    label: "book exported off this device",
    good: "A copy that is not on this device, and a printed one.",
    seen: Seen::Words,
    ..LASTING
};
