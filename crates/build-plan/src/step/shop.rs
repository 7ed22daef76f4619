//! At the machine shop. Later cuts are made from earlier surfaces, so the order
//! matters.

use super::inspection::ORDER_MACHINE_WORK;
use super::shape::{By, PLAIN, Phase, Step, after, better_after};
use crate::caution::engine;
use crate::check::{BALANCE, BORE_FINISH, CAM_TURNS_FREE, SEAT_LEAK};
use crate::engine::{Feature, When};
use crate::event::{
    BIG_ENDS_RESIZED, BLOCK_DECKED, BORES_HONED, CAM_BEARINGS_FITTED, CRANK_GROUND, HEAD_MILLED,
    LINERS_MOVED, MAIN_LINE_HONED, SEATS_CUT,
};
use crate::measure::{
    BORE, CAM_BEARING_CLEARANCE, CHAMBER_VOLUME, LINER_FIT, LINER_STAND_OUT, LINER_STEP,
    MAIN_HOUSING_BORE, PIN_PRESS, PISTON_DIAMETER, ROD_LENGTH, SEAT_WIDTH, TIP_HEIGHT,
};
use crate::proof::Proof;
use crate::supply::{CAM_AND_LIFTERS, FASTENERS, PISTONS, PLATE, RINGS, SHELLS};

const AT_THE_SHOP: Step = Step {
    phase: Phase::Shop,
    by: By::Shop,
    optional: true,
    needs: &[after(&ORDER_MACHINE_WORK)],
    minutes: (0, 0),
    ..PLAIN
};

/// Mains in line.
pub static LINE_HONE: Step = Step {
    id: "line-hone",
    label: "Line-hone or line-bore the mains",
    in_hand: &[&FASTENERS],
    proves: &[Proof::Measure(&MAIN_HOUSING_BORE)],
    causes: &[&MAIN_LINE_HONED],
    cautions: &[engine(
        "Decide between bolts and studs before: they pull the bores differently.",
    )],
    ..AT_THE_SHOP
};

/// Decks square.
pub static DECK_BLOCK: Step = Step {
    id: "deck-block",
    label: "Deck the block, square to the mains",
    needs: &[
        after(&ORDER_MACHINE_WORK),
        after(&LINE_HONE),
        better_after(&FIT_LINERS),
    ],
    causes: &[&BLOCK_DECKED],
    cautions: &[engine(
        "Valves come nearer the pistons, pushrods get too long, the intake has to follow.",
    )],
    ..AT_THE_SHOP
};

/// Bores bored and honed.
pub static HONE_BORES: Step = Step {
    id: "hone-bores",
    label: "Bore and hone the cylinders to the pistons in hand",
    when: When::with(&[Feature::HonedBores]),
    needs: &[
        after(&ORDER_MACHINE_WORK),
        better_after(&LINE_HONE),
        better_after(&DECK_BLOCK),
        after(&FIT_LINERS),
    ],
    in_hand: &[&PISTONS, &RINGS, &PLATE],
    proves: &[
        Proof::Measure(&BORE),
        Proof::Measure(&PISTON_DIAMETER),
        Proof::Check(&BORE_FINISH),
    ],
    causes: &[&BORES_HONED],
    cautions: &[engine(
        "Plate on, caps torqued, with the gasket and fasteners of the final assembly.",
    )],
    ..AT_THE_SHOP
};

/// Crank ground.
pub static GRIND_CRANK: Step = Step {
    id: "grind-crank",
    label: "Straighten, grind and polish the crank, clean its holes",
    in_hand: &[&SHELLS],
    causes: &[&CRANK_GROUND],
    cautions: &[engine(
        "To the clearance with the shells in hand, not to a nominal undersize.",
    )],
    ..AT_THE_SHOP
};

/// Rods resized.
pub static RESIZE_RODS: Step = Step {
    id: "resize-rods",
    label: "Rods: new bolts, big ends made round, small ends bushed",
    when: When::with(&[Feature::ResizableRods]),
    in_hand: &[&FASTENERS],
    proves: &[Proof::Measure(&ROD_LENGTH)],
    causes: &[&BIG_ENDS_RESIZED],
    cautions: &[engine(
        "Bolts first, then the bore. Each cut makes the rod shorter.",
    )],
    ..AT_THE_SHOP
};

/// Balance.
pub static BALANCE_CRANK: Step = Step {
    id: "balance-crank",
    label: "Balance, with the real parts weighed",
    needs: &[
        after(&ORDER_MACHINE_WORK),
        after(&GRIND_CRANK),
        after(&RESIZE_RODS),
    ],
    in_hand: &[&PISTONS, &RINGS, &SHELLS],
    proves: &[Proof::Check(&BALANCE)],
    cautions: &[engine("Any part swapped afterwards undoes it.")],
    ..AT_THE_SHOP
};

/// Heads reworked.
pub static REWORK_HEADS: Step = Step {
    id: "rework-heads",
    label: "Heads: guides, then seats, then the face, then springs",
    in_hand: &[&CAM_AND_LIFTERS],
    proves: &[
        Proof::Measure(&CHAMBER_VOLUME),
        Proof::Measure(&TIP_HEIGHT),
        Proof::Measure(&SEAT_WIDTH),
        Proof::Check(&SEAT_LEAK),
    ],
    causes: &[&SEATS_CUT, &HEAD_MILLED],
    cautions: &[engine(
        "Seats follow the guides: guides first. Ask how much was milled.",
    )],
    ..AT_THE_SHOP
};

/// Cam bearings in.
pub static FIT_CAM_BEARINGS: Step = Step {
    id: "fit-cam-bearings",
    label: "Fit the cam bearings, holes in line",
    when: When::with(&[Feature::Pushrods]),
    needs: &[after(&ORDER_MACHINE_WORK), after(&LINE_HONE)],
    proves: &[
        Proof::Measure(&CAM_BEARING_CLEARANCE),
        Proof::Check(&CAM_TURNS_FREE),
    ],
    causes: &[&CAM_BEARINGS_FITTED],
    cautions: &[engine(
        "After the hot tank: caustic eats them. A wire through every oil hole.",
    )],
    ..AT_THE_SHOP
};

/// Liners fitted.
pub static FIT_LINERS: Step = Step {
    id: "fit-liners",
    label: "Press dry liners in, or cut the seats of wet ones",
    when: When::with(&[Feature::LooseLiners]),
    proves: &[
        Proof::Measure(&LINER_STAND_OUT),
        Proof::Measure(&LINER_STEP),
        Proof::Measure(&LINER_FIT),
    ],
    causes: &[&LINERS_MOVED],
    cautions: &[engine("Before decking and honing.")],
    ..AT_THE_SHOP
};

/// Pins pressed.
pub static PRESS_PINS: Step = Step {
    id: "press-pins",
    label: "Press the pins into the heated rods",
    when: When::with(&[Feature::PressedPins]),
    optional: false,
    needs: &[after(&ORDER_MACHINE_WORK), after(&RESIZE_RODS)],
    in_hand: &[&PISTONS],
    proves: &[Proof::Measure(&PIN_PRESS)],
    cautions: &[engine("Send a drawing of which way piston and rod face.")],
    ..AT_THE_SHOP
};
