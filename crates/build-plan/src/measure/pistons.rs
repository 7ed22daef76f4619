//! The measures of pistons, rings and pins.

use super::bases::{FIT, GAP, SIZE, TIGHT_IS_DANGEROUS};
use super::per::Per;
use super::shape::{Measure, Spots};
use super::tripwire::Tripwire;
use crate::engine::{Feature, When};

/// A piston's diameter at its gauge height.
pub static PISTON_DIAMETER: Measure = Measure {
    id: "piston-diameter",
    label: "piston diameter",
    spots: Spots::each(Per::Cylinder),
    how: [
        "At the height the piston's sheet says, square to the pin only.",
        "A piston is oval and barrel-shaped: anywhere else is another number.",
        "Ask whether a coating counts before you measure over it.",
    ],
    too_little: "The piston slaps and the rings rock.",
    too_much: "The piston scuffs and seizes.",
    cautions: &["Measure it as warm as the bore: alloy grows twice as fast as iron."],
    ..SIZE
};

/// The gap between a ring's ends in its own bore.
pub static RING_END_GAP: Measure = Measure {
    id: "ring-end-gap",
    label: "ring end gap",
    spots: Spots::each(Per::Ring),
    how: [
        "Each ring in its own bore, with the plate on if the bore was honed with it.",
        "Square it with a piston about an inch down; in a used bore at the bottom of its travel.",
        "The blade that just slips is the gap. The ring's sheet says what it should be.",
    ],
    too_little: "The ends butt when hot: the ring breaks its land and scores the bore.",
    too_much: "A little blow-by, which is cheap.",
    cautions: &[
        "File from the face inward and take the burr off, or the coating chips.",
        "A bore honed by a thou opens the gap by about three.",
    ],
    ..GAP
};

/// The room for a ring in its groove, up and down.
pub static RING_SIDE_CLEARANCE: Measure = Measure {
    id: "ring-side-clearance",
    label: "ring side clearance",
    spots: Spots::each(Per::Ring),
    how: [
        "A new ring in a clean groove.",
        "Feeler blade beside it at four places round the piston.",
        "The smallest counts for sticking, the largest for flutter.",
    ],
    tripwire: Some(Tripwire::thou(
        1.5,
        3.5,
        "1.5 to 3.5 thou; from 6 the piston is scrap",
    )),
    too_little: "The ring sticks.",
    too_much: "The ring flutters and the land wears.",
    cautions: &["A wire wheel ruins the lands: clean grooves with a broken ring or a groove tool."],
    ..TIGHT_IS_DANGEROUS
};

/// How far a ring lies below its land when pushed home.
pub static RING_BACK_CLEARANCE: Measure = Measure {
    id: "ring-back-clearance",
    label: "ring back clearance",
    spots: Spots::each(Per::Ring),
    how: [
        "Groove depth less the ring's width across.",
        "Or push the ring home: it has to go below the land.",
        "A straightedge over the land shows it.",
    ],
    too_little: "The ring is pressed against the bore by the groove's bottom.",
    ..TIGHT_IS_DANGEROUS
};

/// The room for a floating pin in its piston.
pub static PIN_IN_PISTON: Measure = Measure {
    id: "pin-in-piston",
    label: "pin in piston",
    when: When::with(&[Feature::FloatingPins]),
    spots: Spots::each(Per::Cylinder),
    how: [
        "Pin bore of the piston less the pin, each side of the rod.",
        "Both at room temperature, clean and dry.",
        "An oiled pin should push through by thumb and not fall.",
    ],
    tripwire: Some(Tripwire::thou(0.3, 0.8, "0.3 to 0.8 thou")),
    too_little: "The pin galls and the skirt scuffs.",
    too_much: "A double knock.",
    ..TIGHT_IS_DANGEROUS
};

/// The room for a floating pin in its rod's bush.
pub static PIN_IN_BUSH: Measure = Measure {
    id: "pin-in-bush",
    label: "pin in rod bush",
    when: When::with(&[Feature::FloatingPins]),
    spots: Spots::each(Per::Rod),
    how: [
        "Bush bore less the pin, at both ends of the bush.",
        "Both at room temperature, clean and dry.",
        "An oiled pin should swing free without shake.",
    ],
    tripwire: Some(Tripwire::thou(0.5, 1.0, "0.5 to 1 thou")),
    too_little: "The pin seizes in the bush.",
    too_much: "A double knock.",
    ..TIGHT_IS_DANGEROUS
};

/// By how much a pressed pin is larger than the rod's eye.
pub static PIN_PRESS: Measure = Measure {
    id: "pin-press",
    label: "pin press fit in rod",
    when: When::with(&[Feature::PressedPins]),
    spots: Spots::each(Per::Rod),
    how: [
        "Pin less the rod's eye, at both ends of the eye.",
        "Measure before the rod is heated.",
        "The shop that presses them wants the number.",
    ],
    tripwire: Some(Tripwire::thou(0.8, 1.5, "0.8 to 1.5 thou of interference")),
    too_little: "The pin walks out into the bore.",
    too_much: "The eye cracks or the rod bends.",
    ..FIT
};

/// How far a pin moves between its locks.
pub static PIN_LOCK_FLOAT: Measure = Measure {
    id: "pin-lock-float",
    label: "pin float between its locks",
    when: When::with(&[Feature::FloatingPins]),
    spots: Spots::each(Per::Cylinder),
    how: [
        "Locks in, pin pushed to one side.",
        "Feeler blade between pin and lock at the other.",
        "How much there should be goes by the sort of lock: see its sheet.",
    ],
    too_little: "The locks are pressed and come out.",
    too_much: "The pin hammers its locks out.",
    cautions: &["Wire locks fly: eye guard on."],
    ..FIT
};
