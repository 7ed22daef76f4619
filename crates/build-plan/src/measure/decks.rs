//! The measures of decks, chambers and how far the pistons come up.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::Kind;

use super::bases::{FIT, GAP, SIZE};
use super::per::Per;
use super::shape::{Found, Measure, Spots};
use super::tripwire::Tripwire;
use crate::engine::{Feature, When};
use crate::place::Station;

const LINES_OF_A_FACE: &[Station] = &[
    Station::AlongLeft,
    Station::AlongMiddle,
    Station::AlongRight,
    Station::AcrossFront,
    Station::AcrossRear,
    Station::DiagonalOne,
    Station::DiagonalTwo,
];

/// How flat a deck is.
pub static DECK_FLATNESS: Measure = Measure {
    id: "deck-flatness",
    label: "deck flatness",
    spots: Spots::at(Per::Bank, LINES_OF_A_FACE),
    how: [
        "Deck clean, all dowels and high spots out of the way.",
        "Straightedge three times along, twice across, and from corner to corner.",
        "The thickest blade that goes under is the number of that line.",
    ],
    too_much: "The gasket does not seal.",
    cautions: &["A workshop straightedge may itself be out by a thou in a foot."],
    ..FIT
};

/// How flat a head is.
pub static HEAD_FLATNESS: Measure = Measure {
    id: "head-flatness",
    label: "head flatness",
    spots: Spots::at(Per::Bank, LINES_OF_A_FACE),
    how: [
        "Face clean, old gasket gone without gouging alloy.",
        "Straightedge three times along, twice across, and from corner to corner.",
        "The thickest blade that goes under is the number of that line.",
    ],
    too_much: "The gasket does not seal; an overhead camshaft's bearings are bent with the head.",
    cautions: &["Abrasive pads leave grit that beds in bearings: keep them away from the engine."],
    ..FIT
};

/// How far the piston stays below the deck at the top.
pub static DECK_CLEARANCE: Measure = Measure {
    id: "deck-clearance",
    label: "deck clearance",
    spots: Spots::at(Per::Cylinder, &[Station::FrontSide, Station::RearSide]),
    how: [
        "Bridge zeroed on the deck, pointer on the crown over the pin, at both ends of the pin.",
        "Swing the crank through the top and take the highest reading.",
        "In the hole is plus, above the deck is minus.",
    ],
    too_little: "The piston may touch the head.",
    too_much: "Less compression, and a gap that knocks.",
    cautions: &["Off the pin's line the piston rocks, by as much as four thou."],
    ..SIZE
};

/// The room between piston and head at the top, gasket in.
pub static QUENCH: Measure = Measure {
    id: "quench",
    label: "quench, piston to head",
    found: Found::WorkedOut {
        calculation: "quench",
        from: &[&DECK_CLEARANCE],
        or_read_by: &["quench"],
    },
    spots: Spots::each(Per::Cylinder),
    how: [
        "Deck clearance and the gasket's thickness as it is when clamped, not as it comes.",
        "Or soft solder on the crown, head on with the gasket and torqued, turned over once.",
        "At the corner cylinders of each bank at least.",
    ],
    tripwire: Some(Tripwire::thou(35.0, 45.0, "35 to 45 thou with steel rods")),
    too_little: "The piston hits the head when the rods stretch.",
    too_much: "The mixture knocks.",
    ..GAP
};

/// The volume of a combustion chamber.
pub static CHAMBER_VOLUME: Measure = Measure {
    id: "chamber-volume",
    label: "chamber volume",
    kind: Kind::Volume,
    units: UsualUnits::of("cc", "cc"),
    spots: Spots::each(Per::Cylinder),
    how: [
        "Valves in with a smear of grease, plug in, a clear plate sealed on with grease.",
        "Fill from a burette through the hole in the plate until no bubble is left.",
        "Read at eye height.",
    ],
    too_little: "More compression than planned.",
    too_much: "Less compression than planned.",
    ..SIZE
};

/// The compression ratio.
pub static COMPRESSION_RATIO: Measure = Measure {
    id: "compression-ratio",
    label: "compression ratio",
    kind: Kind::Ratio,
    units: UsualUnits::of("", ""),
    found: Found::WorkedOut {
        calculation: "compression-ratio",
        from: &[&CHAMBER_VOLUME, &DECK_CLEARANCE],
        or_read_by: &[],
    },
    spots: Spots::each(Per::Cylinder),
    how: [
        "Swept volume and the volume above the piston, over the volume above the piston.",
        "Above the piston are chamber, gasket, deck clearance and dish less dome.",
        "Work it out for the smallest and the largest chamber.",
    ],
    too_little: "Less power than planned.",
    too_much: "It knocks on the fuel at hand.",
    ..SIZE
};

/// How far the front cover's top is out of level with the deck.
pub static TIMING_COVER_STEP: Measure = Measure {
    id: "timing-cover-step",
    label: "timing cover to deck step",
    when: When::with(&[Feature::OverheadCam]),
    spots: Spots::each(Per::Bank),
    how: [
        "Cover bolted up with its gasket.",
        "Straightedge from the deck over the cover.",
        "The blade that goes under one or the other is the step.",
    ],
    too_little: "The head gasket is not pressed over the cover and leaks oil.",
    too_much: "The head stands on the cover and leaks at the first cylinder.",
    ..FIT
};
