//! The measures of what is bolted on, and of fasteners.

use super::bases::{ANGLE, FIT, SIZE};
use super::per::Per;
use super::shape::{Found, Measure, Spots};
use super::tripwire::Tripwire;
use crate::engine::{Feature, When};

/// How far the damper's mark is from the true top.
pub static DAMPER_MARK: Measure = Measure {
    id: "damper-mark",
    label: "damper mark off the true top",
    how: [
        "Positive stop in cylinder one, read both ways; the middle is the true top.",
        "Compare the damper's mark with the pointer there.",
        "A ring that slipped on its rubber is scrap, or is marked anew.",
    ],
    too_much: "All timing set by it is wrong by as much.",
    cautions: &["Turn by hand only while the stop is in."],
    ..ANGLE
};

/// How much the damper's hub is smaller than the crank's nose.
pub static DAMPER_HUB_INTERFERENCE: Measure = Measure {
    id: "damper-hub-interference",
    label: "damper hub interference",
    how: [
        "Nose less hub bore, both in two directions.",
        "At both ends of the hub.",
        "Burrs at the keyway off first.",
    ],
    tripwire: Some(Tripwire::thou(0.7, 1.5, "0.7 to 1.5 thou of interference")),
    too_little: "The hub frets and its bolt breaks.",
    too_much: "It galls or cracks as it is pulled on.",
    cautions: &["Pulled on with an installer, never hammered."],
    ..FIT
};

/// How far the flywheel or flexplate wobbles.
pub static FLYWHEEL_RUN_OUT: Measure = Measure {
    id: "flywheel-run-out",
    label: "flywheel or flexplate run-out",
    how: [
        "Indicator on the face, near the rim; crank pushed one way all the time.",
        "One slow turn; note the whole way of the needle.",
        "Clean the flange and look at the orientation before blaming the part.",
    ],
    tripwire: Some(Tripwire::at_most(20.0, "at most 20 thou on a flexplate")),
    too_much: "The starter grinds, the plate cracks, the clutch shudders.",
    ..FIT
};

/// How far the bell housing's bore is off the crank's centre.
pub static BELLHOUSING_RUN_OUT: Measure = Measure {
    id: "bellhousing-run-out",
    label: "bell housing bore run-out",
    how: [
        "Indicator on the crank's flange, its finger in the housing's bore.",
        "One slow turn; note the whole way of the needle.",
        "Half of it is how far the bore is off centre.",
    ],
    tripwire: Some(Tripwire::at_most(10.0, "at most 10 thou")),
    too_much: "Pilot, pump or input shaft wear; the clutch drags.",
    ..FIT
};

/// The gap between converter and flexplate before they are bolted.
pub static CONVERTER_GAP: Measure = Measure {
    id: "converter-gap",
    label: "converter to flexplate gap",
    found: Found::WorkedOut {
        calculation: "converter-gap",
        from: &[],
        or_read_by: &["converter-gap"],
    },
    how: [
        "Converter pushed home in steps until it drops for the last time.",
        "Housing flush with the block before any bolt is drawn.",
        "Feeler or ruler between converter and flexplate.",
    ],
    tripwire: Some(Tripwire::thou(125.0, 188.0, "1/8 to 3/16 in")),
    too_little: "The converter pushes on the crank: the thrust burns.",
    too_much: "The pump's drive has too little to hold on to.",
    cautions: &["Never draw the housing up with its bolts: the converter is not home."],
    ..SIZE
};

/// How much thread holds.
pub static BOLT_ENGAGEMENT: Measure = Measure {
    id: "bolt-engagement",
    label: "thread that holds",
    found: Found::WorkedOut {
        calculation: "bolt-engagement",
        from: &[],
        or_read_by: &["bolt-engagement"],
    },
    spots: Spots::each(Per::Engine),
    how: [
        "Bolt length less what it clamps.",
        "In times the bolt's diameter: more in alloy than in iron.",
        "For every bolt whose place or length is in doubt.",
    ],
    too_little: "The thread strips.",
    ..SIZE
};

/// How much room is left below a bolt's end.
pub static BOLT_BOTTOM_ROOM: Measure = Measure {
    id: "bolt-bottom-room",
    label: "room below the bolt's end",
    found: Found::WorkedOut {
        calculation: "bolt-engagement",
        from: &[],
        or_read_by: &["bolt-engagement"],
    },
    spots: Spots::each(Per::Engine),
    how: [
        "Hole depth less what of the bolt goes into it.",
        "Holes clean and dry: oil in a blind hole splits the casting.",
        "A long bolt in a short hole reaches a cylinder wall or a gear.",
    ],
    too_little: "The bolt bottoms before it clamps, or breaks through.",
    ..SIZE
};

/// What an intake that was milled to fit stands out of line.
pub static INTAKE_FIT: Measure = Measure {
    id: "intake-fit",
    label: "intake to head, ports and bolts",
    when: When::with(&[Feature::TwoBanks]),
    spots: Spots::each(Per::Bank),
    how: [
        "Trial fit with the gaskets that will be used.",
        "Witness marks on gasket and faces; ports and bolt holes in line.",
        "Measure how far they are off, up and down.",
    ],
    too_much: "It leaks oil or air, and bolts do not start.",
    ..SIZE
};
