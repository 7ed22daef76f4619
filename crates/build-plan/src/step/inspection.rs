//! Inspecting and deciding.

use super::shape::{PLAIN, Phase, Step, after, better_after};
use super::teardown::{CAM_OUT, HEADS_STRIPPED, LINERS_OUT, PLUGS_REMOVED, ROUGH_CLEAN};
use crate::caution::{engine, person};
use crate::check::{CRACKS, DECISIONS, ORDER_WRITTEN, SEAT_LEAK};
use crate::measure::{
    BELT_DEFLECTION, BIG_END_BORE, BIG_END_OUT_OF_ROUND, BORE, BORE_OUT_OF_ROUND, BORE_TAPER,
    CAM_BEARING_CLEARANCE, CAM_RUN_OUT, CRANK_BOW, DECK_FLATNESS, HEAD_FLATNESS, LIFTER_IN_BORE,
    LOBE_LIFT, MAIN_HOUSING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_JOURNAL_OUT_OF_ROUND,
    MAIN_JOURNAL_TAPER, MAIN_LINE, PIN_IN_BUSH, PIN_IN_PISTON, PISTON_DIAMETER, PUMP_COVER_WEAR,
    PUMP_END_CLEARANCE, PUMP_GEAR_TO_BODY, PUMP_TIP_CLEARANCE, RING_SIDE_CLEARANCE, ROD_BEND,
    ROD_BOLT_FREE_LENGTH, ROD_JOURNAL_DIAMETER, ROD_JOURNAL_OUT_OF_ROUND, ROD_JOURNAL_TAPER,
    ROD_LENGTH, ROD_TWIST, SEAT_RUN_OUT, SEAT_WIDTH, STEM_GUIDE_EXHAUST, STEM_GUIDE_INTAKE,
    TIMING_CHAIN_SLACK, TIMING_GEAR_BACKLASH,
};
use crate::proof::Proof;
use crate::supply::{PISTONS, RINGS, SHELLS};

const INSPECTION: Step = Step {
    phase: Phase::Inspection,
    ..PLAIN
};

/// Crack check.
pub static CRACK_CHECK: Step = Step {
    id: "crack-check",
    label: "Have block, heads, rods and crank checked for cracks and under pressure",
    by: super::shape::By::Shop,
    needs: &[after(&ROUGH_CLEAN), better_after(&PLUGS_REMOVED)],
    proves: &[Proof::Check(&CRACKS)],
    minutes: (30, 60),
    cautions: &[engine("Before any machining is paid for.")],
    ..INSPECTION
};

/// Measuring the block.
pub static MEASURE_BLOCK: Step = Step {
    id: "measure-block",
    label: "Measure the block: bores, decks, main bores with caps torqued",
    needs: &[
        after(&ROUGH_CLEAN),
        after(&LINERS_OUT),
        better_after(&CRACK_CHECK),
    ],
    proves: &[
        Proof::Measure(&MAIN_HOUSING_BORE),
        Proof::Measure(&MAIN_LINE),
        Proof::Measure(&BORE),
        Proof::Measure(&BORE_TAPER),
        Proof::Measure(&BORE_OUT_OF_ROUND),
        Proof::Measure(&DECK_FLATNESS),
    ],
    tools: &["bore gauge", "micrometer", "straightedge", "feeler blades"],
    minutes: (120, 180),
    cautions: &[engine("Caps at torque, or the numbers mean nothing.")],
    ..INSPECTION
};

/// Measuring the crank.
pub static MEASURE_CRANK: Step = Step {
    id: "measure-crank",
    label: "Measure the crank",
    needs: &[after(&ROUGH_CLEAN), better_after(&CRACK_CHECK)],
    proves: &[
        Proof::Measure(&MAIN_JOURNAL_DIAMETER),
        Proof::Measure(&MAIN_JOURNAL_TAPER),
        Proof::Measure(&MAIN_JOURNAL_OUT_OF_ROUND),
        Proof::Measure(&CRANK_BOW),
        Proof::Measure(&ROD_JOURNAL_DIAMETER),
        Proof::Measure(&ROD_JOURNAL_TAPER),
        Proof::Measure(&ROD_JOURNAL_OUT_OF_ROUND),
    ],
    tools: &["micrometer", "vee blocks", "dial indicator"],
    minutes: (45, 75),
    cautions: &[person("A crank on vee blocks rolls: chock it.")],
    ..INSPECTION
};

/// Measuring the rods.
pub static MEASURE_RODS: Step = Step {
    id: "measure-rods",
    label: "Measure rods and their bolts",
    needs: &[after(&ROUGH_CLEAN), better_after(&CRACK_CHECK)],
    proves: &[
        Proof::Measure(&BIG_END_BORE),
        Proof::Measure(&BIG_END_OUT_OF_ROUND),
        Proof::Measure(&ROD_LENGTH),
        Proof::Measure(&ROD_BEND),
        Proof::Measure(&ROD_TWIST),
        Proof::Measure(&ROD_BOLT_FREE_LENGTH),
        Proof::Measure(&PIN_IN_BUSH),
    ],
    tools: &["bore gauge", "micrometer", "stretch gauge"],
    minutes: (45, 75),
    cautions: &[engine("A bolt that is necked or longer than new is scrap.")],
    ..INSPECTION
};

/// Measuring the pistons.
pub static MEASURE_PISTONS: Step = Step {
    id: "measure-pistons",
    label: "Measure pistons, grooves and pins",
    needs: &[after(&ROUGH_CLEAN)],
    proves: &[
        Proof::Measure(&PISTON_DIAMETER),
        Proof::Measure(&RING_SIDE_CLEARANCE),
        Proof::Measure(&PIN_IN_PISTON),
    ],
    tools: &["micrometer", "feeler blades", "small-hole gauge"],
    minutes: (45, 75),
    cautions: &[engine("A wire wheel ruins the ring lands.")],
    ..INSPECTION
};

/// Measuring the heads.
pub static MEASURE_HEADS: Step = Step {
    id: "measure-heads",
    label: "Measure the heads: flatness, guides, seats",
    needs: &[after(&HEADS_STRIPPED), better_after(&CRACK_CHECK)],
    proves: &[
        Proof::Measure(&HEAD_FLATNESS),
        Proof::Measure(&STEM_GUIDE_INTAKE),
        Proof::Measure(&STEM_GUIDE_EXHAUST),
        Proof::Measure(&SEAT_WIDTH),
        Proof::Measure(&SEAT_RUN_OUT),
        Proof::Check(&SEAT_LEAK),
    ],
    tools: &[
        "straightedge",
        "small-hole gauge",
        "micrometer",
        "test indicator",
    ],
    minutes: (60, 120),
    ..INSPECTION
};

/// Measuring valve gear, drive and pump.
pub static MEASURE_CAM_AND_PUMP: Step = Step {
    id: "measure-cam-and-pump",
    label: "Measure camshaft, lifters, rockers, timing set and oil pump",
    needs: &[after(&ROUGH_CLEAN), after(&CAM_OUT), after(&HEADS_STRIPPED)],
    proves: &[
        Proof::Measure(&LOBE_LIFT),
        Proof::Measure(&CAM_RUN_OUT),
        Proof::Measure(&CAM_BEARING_CLEARANCE),
        Proof::Measure(&LIFTER_IN_BORE),
        Proof::Measure(&TIMING_CHAIN_SLACK),
        Proof::Measure(&TIMING_GEAR_BACKLASH),
        Proof::Measure(&BELT_DEFLECTION),
        Proof::Measure(&PUMP_END_CLEARANCE),
        Proof::Measure(&PUMP_GEAR_TO_BODY),
        Proof::Measure(&PUMP_TIP_CLEARANCE),
        Proof::Measure(&PUMP_COVER_WEAR),
    ],
    tools: &["micrometer", "feeler blades", "dial indicator"],
    minutes: (45, 75),
    cautions: &[engine("A new camshaft gets new flat lifters, always.")],
    ..INSPECTION
};

/// Deciding the sizes.
pub static DECIDE_SIZES: Step = Step {
    id: "decide-sizes",
    label: "Decide the sizes: bores, crank, deck, gasket, pistons, rings",
    needs: &[
        after(&MEASURE_BLOCK),
        after(&MEASURE_CRANK),
        after(&MEASURE_RODS),
        after(&MEASURE_PISTONS),
        after(&MEASURE_HEADS),
        after(&MEASURE_CAM_AND_PUMP),
    ],
    proves: &[Proof::Check(&DECISIONS)],
    minutes: (45, 90),
    cautions: &[engine("Buy the pistons first, and bore to the pistons.")],
    ..INSPECTION
};

/// The order to the shop.
pub static ORDER_MACHINE_WORK: Step = Step {
    id: "order-machine-work",
    label: "Write the machine-work order",
    needs: &[after(&DECIDE_SIZES)],
    in_hand: &[&PISTONS, &RINGS, &SHELLS],
    proves: &[Proof::Check(&ORDER_WRITTEN)],
    minutes: (30, 45),
    cautions: &[engine(
        "A size alone is no order: write target, tolerance and what to measure to.",
    )],
    ..INSPECTION
};
