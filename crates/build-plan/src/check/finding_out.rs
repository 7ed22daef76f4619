//! Checks from teardown to the machine shop's order.

use super::shape::{Check, LASTING, Seen};
use crate::measure::Per;

/// Which engine it is, and whose numbers count.
pub static IDENTITY: Check = Check {
    id: "identity",
    label: "engine numbers and sheet",
    good: "Casting and stamped numbers photographed, the sheet named that its limits come from.",
    seen: Seen::Photo,
    ..LASTING
};

/// How it ran and was found before it came apart.
pub static FOUND_STATE: Check = Check {
    id: "found-state",
    label: "state as found",
    good: "What it did running, what was in the pan and the filter, and each thing photographed before it was loosened.",
    seen: Seen::Photo,
    ..LASTING
};

/// Which bolt came from which hole.
pub static BOLT_MAP: Check = Check {
    id: "bolt-map",
    label: "bolts bagged by hole and length",
    good: "Every bag has hole and length on it; covers with several lengths have a map.",
    seen: Seen::Photo,
    ..LASTING
};

/// Valve gear that goes back where it came from.
pub static VALVE_GEAR_IN_ORDER: Check = Check {
    id: "valve-gear-in-order",
    label: "valve gear kept in order",
    good: "Everything in a rack by cylinder and valve. A used flat lifter goes back to its own lobe or is thrown away.",
    seen: Seen::Photo,
    ..LASTING
};

/// Rods, caps and mains that know their places.
pub static PARTS_NUMBERED: Check = Check {
    id: "parts-numbered",
    label: "rods and caps numbered, with their direction",
    good: "Number and front on each, photographed in pairs. Fracture-split rods: paint, no punch marks on the joint.",
    seen: Seen::Photo,
    ..LASTING
};

/// How many plugs came out.
pub static PLUGS_OUT: Check = Check {
    id: "plugs-out",
    label: "gallery and core plugs counted out",
    good: "Every plug on a map, counted, a photo of each place.",
    seen: Seen::Count,
    ..LASTING
};

/// What the old shells tell.
pub static OLD_BEARINGS: Check = Check {
    id: "old-bearings",
    label: "old bearings, rings and faces read",
    good: "Shells laid out in order and photographed: where they wore, and on which side of the thrust.",
    seen: Seen::Photo,
    ..LASTING
};

/// No cracks.
pub static CRACKS: Check = Check {
    id: "cracks",
    label: "no cracks",
    good: "The shop's note for block, heads, rods and crank.",
    seen: Seen::Words,
    ..LASTING
};

/// What was decided, and why.
pub static DECISIONS: Check = Check {
    id: "decisions",
    label: "sizes decided",
    good: "Oversize, undersize, deck, gasket, pistons and rings, each with its reason.",
    seen: Seen::Words,
    ..LASTING
};

/// The order to the shop.
pub static ORDER_WRITTEN: Check = Check {
    id: "order-written",
    label: "machine work ordered in writing",
    good: "Target and tolerance for each cut, what to measure to, what not to touch, which numbers to write down.",
    seen: Seen::Photo,
    ..LASTING
};

/// What came back.
pub static RECEIVED_AS_ORDERED: Check = Check {
    id: "received-as-ordered",
    label: "machine work came back as ordered",
    good: "Own numbers beside the order's, taken in the week it came back; differences listed.",
    seen: Seen::Words,
    ..LASTING
};

/// The balance card.
pub static BALANCE: Check = Check {
    id: "balance",
    label: "balance",
    per: Per::Engine,
    good: "The card, with the weights it was balanced to. Any part swapped since counts against it.",
    seen: Seen::Photo,
    ..LASTING
};
