//! The measures of cylinders and liners.

use super::bases::{FIT, SIZE, TIGHT_IS_DANGEROUS};
use super::per::Per;
use super::pistons::PISTON_DIAMETER;
use super::shape::{Found, Measure, Over, Spots};
use super::tripwire::Tripwire;
use crate::engine::{Feature, When};
use crate::place::{Direction, Station};

/// A cylinder's bore.
pub static BORE: Measure = Measure {
    id: "bore",
    label: "cylinder bore",
    spots: Spots {
        per: Per::Cylinder,
        stations: &[Station::Top, Station::Middle, Station::Bottom],
        directions: &[Direction::Thrust, Direction::Axial],
    },
    how: [
        "With the plate and the fasteners on that it was honed with, or note that they were off.",
        "At the top where the top ring turns round, half way, and near the bottom.",
        "At each, across the crank and along it.",
    ],
    too_little: "The piston scuffs and seizes.",
    too_much: "The piston slaps and the rings rock.",
    cautions: &[
        "A number without plate and caps is for another shape of bore.",
        "Let block and gauge be equally warm: a hand's warmth is tenths.",
    ],
    ..SIZE
};

/// How much a bore differs from top to bottom.
pub static BORE_TAPER: Measure = Measure {
    id: "bore-taper",
    label: "bore taper",
    found: Found::Spread {
        of: &BORE,
        over: Over::StationsInLine,
    },
    spots: Spots::each(Per::Cylinder),
    how: [
        "Compare top, middle and bottom in the same direction.",
        "The largest less the smallest is the taper.",
        "A worn bore is widest just under the ridge, across the crank.",
    ],
    tripwire: Some(Tripwire::at_most(
        0.5,
        "at most half a thou in a fresh bore",
    )),
    too_much: "The rings flutter and oil is used.",
    ..FIT
};

/// How far a bore is from round.
pub static BORE_OUT_OF_ROUND: Measure = Measure {
    id: "bore-out-of-round",
    label: "bore out of round",
    found: Found::Spread {
        of: &BORE,
        over: Over::Directions,
    },
    spots: Spots::each(Per::Cylinder),
    how: [
        "Compare the two directions at one height.",
        "The difference is how far it is out of round there.",
        "Try in between as well when it has lobes from the head's bolts.",
    ],
    tripwire: Some(Tripwire::at_most(
        0.5,
        "at most half a thou in a fresh bore",
    )),
    too_much: "The rings do not seal all round.",
    ..FIT
};

/// The room between piston and bore, on the diameter.
pub static PISTON_TO_WALL: Measure = Measure {
    id: "piston-to-wall",
    label: "piston to wall clearance",
    found: Found::Difference {
        of: &BORE,
        less: &PISTON_DIAMETER,
    },
    spots: Spots::each(Per::Cylinder),
    how: [
        "The smallest bore across the crank where the skirt runs, less the piston at its gauge height.",
        "Big pistons go to big bores: match them before honing.",
        "Bring bore and piston to one temperature, above all an alloy piston in an iron bore.",
    ],
    too_little: "It scuffs and seizes on the first hot pull.",
    too_much: "It slaps, and the rings rock.",
    cautions: &["The sheet that came with the piston decides; alloys differ by many times."],
    ..TIGHT_IS_DANGEROUS
};

/// How far a liner stands out above the block.
pub static LINER_STAND_OUT: Measure = Measure {
    id: "liner-stand-out",
    label: "liner stand-out",
    when: When::with(&[Feature::LooseLiners]),
    spots: Spots::at(
        Per::Cylinder,
        &[
            Station::FrontSide,
            Station::RightSide,
            Station::RearSide,
            Station::LeftSide,
        ],
    ),
    how: [
        "Liner clamped down as the head will hold it.",
        "Indicator or depth micrometer from the deck to the flange, at four places round it.",
        "Compare with the neighbours as well.",
    ],
    tripwire: Some(
        Tripwire::thou(3.0, 6.0, "3 to 6 thou; some engines 5 to 7").from("TM 10-4320-307-24"),
    ),
    too_little: "The gasket leaks at this cylinder.",
    too_much: "The flange or the deck cracks.",
    cautions: &["Never turn the crank with pistons in liners that are not clamped."],
    ..FIT
};

/// How much neighbouring liners differ.
pub static LINER_STEP: Measure = Measure {
    id: "liner-step",
    label: "step between neighbouring liners",
    when: When::with(&[Feature::LooseLiners, Feature::SeveralCylinders]),
    found: Found::Spread {
        of: &LINER_STAND_OUT,
        over: Over::Neighbours,
    },
    spots: Spots::each(Per::Bank),
    how: [
        "Compare the stand-out of each two liners that lie next to each other.",
        "The largest difference is the step.",
        "Let the heights rise or fall along the block, not go up and down.",
    ],
    tripwire: Some(Tripwire::at_most(2.0, "at most two thou").from("TM 9-6115-604-34")),
    too_much: "The gasket's fire rings are not pressed alike.",
    ..FIT
};

/// How tightly a liner sits in its block.
pub static LINER_FIT: Measure = Measure {
    id: "liner-fit",
    label: "liner fit in the block",
    when: When::with(&[Feature::LooseLiners]),
    spots: Spots::each(Per::Cylinder),
    how: [
        "The liner's outside against the bore it sits in, each in two directions.",
        "Dry liners are larger than their bore, wet ones smaller at the lower guide.",
        "The maker's sheet says by how much.",
    ],
    too_little: "A dry liner loses its heat path; a wet one moves and wears its seals.",
    too_much: "Pressing it in bends the bore or cracks the block.",
    ..FIT
};
