//! Before and during teardown.

use super::shape::{PLAIN, Phase, Step, after, better_after};
use crate::caution::{engine, person};
use crate::check::{
    BOLT_MAP, FOUND_STATE, IDENTITY, OLD_BEARINGS, PARTS_NUMBERED, PLUGS_OUT, VALVE_GEAR_IN_ORDER,
};
use crate::engine::{Feature, When};
use crate::measure::{
    CAM_END_FLOAT, COMPRESSION_PRESSURE, CRANK_END_PLAY, DAMPER_MARK, LEAK_DOWN, OIL_PRESSURE,
    PICKUP_TO_PAN, TIMING_CHAIN_SLACK, TIMING_GEAR_BACKLASH,
};
use crate::proof::Proof;

const TEARDOWN: Step = Step {
    phase: Phase::Teardown,
    ..PLAIN
};

/// Which engine it is.
pub static IDENTIFY_ENGINE: Step = Step {
    id: "identify-engine",
    label: "Identify the engine, its goal and its sheet",
    proves: &[Proof::Check(&IDENTITY)],
    tools: &["light", "chalk", "camera"],
    minutes: (60, 180),
    cautions: &[engine(
        "The wrong year or sheet means wrong limits for everything.",
    )],
    ..TEARDOWN
};

/// How it ran.
pub static RUNNING_BASELINE: Step = Step {
    id: "running-baseline",
    label: "Measure it running: compression, leak-down, hot oil pressure, noises",
    optional: true,
    needs: &[better_after(&IDENTIFY_ENGINE)],
    proves: &[
        Proof::Measure(&COMPRESSION_PRESSURE),
        Proof::Measure(&LEAK_DOWN),
        Proof::Measure(&OIL_PRESSURE),
        Proof::Check(&FOUND_STATE),
    ],
    tools: &[
        "compression gauge",
        "leak-down tester",
        "mechanical oil gauge",
    ],
    minutes: (60, 120),
    cautions: &[person(
        "Moving belts and hot coolant. Exhaust gas kills: doors open.",
    )],
    ..TEARDOWN
};

/// Fluids out.
pub static DRAIN: Step = Step {
    id: "drain",
    label: "Drain it, cut the old filter, keep what was in the pan",
    needs: &[better_after(&RUNNING_BASELINE)],
    proves: &[Proof::Check(&FOUND_STATE)],
    tools: &["filter cutter", "magnet"],
    minutes: (30, 45),
    cautions: &[person(
        "Hot oil burns. Let it cool until a hand can stay on the pan.",
    )],
    ..TEARDOWN
};

/// Out of the machine.
pub static ENGINE_OUT: Step = Step {
    id: "engine-out",
    label: "Take the engine out and put it on a stand",
    needs: &[after(&DRAIN)],
    proves: &[Proof::Check(&FOUND_STATE)],
    tools: &["hoist", "stand with four rated bolts"],
    minutes: (180, 480),
    cautions: &[person(
        "Never under a hanging engine. A stand tips forward: keep the weight in its middle.",
    )],
    ..TEARDOWN
};

/// What is bolted on comes off.
pub static STRIP_ACCESSORIES: Step = Step {
    id: "strip-accessories",
    label: "Strip what is bolted on; bag and tag every fastener with hole and length",
    needs: &[after(&ENGINE_OUT)],
    proves: &[Proof::Check(&BOLT_MAP)],
    tools: &["bags", "caliper"],
    minutes: (60, 180),
    cautions: &[engine(
        "One cover may have bolts of three lengths. A long one in a short hole breaks through.",
    )],
    ..TEARDOWN
};

/// Plays as they were found.
pub static MEASURE_AS_FOUND: Step = Step {
    id: "measure-as-found",
    label: "Before anything inside is loosened: end plays, chain or gears, damper mark",
    needs: &[after(&STRIP_ACCESSORIES)],
    proves: &[
        Proof::Measure(&CRANK_END_PLAY),
        Proof::Measure(&CAM_END_FLOAT),
        Proof::Measure(&TIMING_CHAIN_SLACK),
        Proof::Measure(&TIMING_GEAR_BACKLASH),
        Proof::Measure(&DAMPER_MARK),
    ],
    tools: &["dial indicator", "piston stop"],
    minutes: (30, 45),
    ..TEARDOWN
};

/// Rockers and lifters out.
pub static VALVE_GEAR_OUT: Step = Step {
    id: "valve-gear-out",
    label: "Take rockers, pushrods and lifters out, in order",
    when: When::with(&[Feature::Pushrods]),
    needs: &[after(&STRIP_ACCESSORIES), better_after(&MEASURE_AS_FOUND)],
    proves: &[Proof::Check(&VALVE_GEAR_IN_ORDER)],
    tools: &["rack with a hole for each"],
    minutes: (45, 75),
    cautions: &[engine(
        "A used flat lifter goes back to its own lobe or is thrown away.",
    )],
    ..TEARDOWN
};

/// Damper, cover and drive off.
pub static TIMING_OFF: Step = Step {
    id: "timing-off",
    label: "Take damper, front cover and timing set off",
    needs: &[
        after(&STRIP_ACCESSORIES),
        better_after(&MEASURE_AS_FOUND),
        better_after(&PAN_OFF),
    ],
    proves: &[Proof::Check(&FOUND_STATE)],
    tools: &["damper puller", "camera"],
    minutes: (45, 75),
    cautions: &[engine(
        "Pulling on its outer ring destroys a damper. Photograph the marks before the drive comes off.",
    )],
    ..TEARDOWN
};

/// Heads off.
pub static HEADS_OFF: Step = Step {
    id: "heads-off",
    label: "Take the heads off, cold, loosening in stages against the tightening order",
    needs: &[
        after(&VALVE_GEAR_OUT).on(When::with(&[Feature::Pushrods])),
        after(&TIMING_OFF).on(When::with(&[Feature::OverheadCam])),
        better_after(&MEASURE_AS_FOUND),
    ],
    proves: &[Proof::Check(&FOUND_STATE)],
    tools: &["breaker bar", "camera"],
    minutes: (60, 120),
    cautions: &[
        engine("A warm alloy head warps as it comes loose."),
        person("A head is heavy and slips: two people."),
    ],
    ..TEARDOWN
};

/// Pan and pump off.
pub static PAN_OFF: Step = Step {
    id: "pan-off",
    label: "Measure the pickup's height, then take pan, pickup and pump off",
    when: When::with(&[Feature::Pan]),
    needs: &[after(&ENGINE_OUT), better_after(&MEASURE_AS_FOUND)],
    proves: &[Proof::Measure(&PICKUP_TO_PAN), Proof::Check(&FOUND_STATE)],
    tools: &["depth gauge"],
    minutes: (30, 45),
    cautions: &[engine("A pressed-in pickup may be good for one fit only.")],
    ..TEARDOWN
};

/// Ridge gone.
pub static RIDGE_CUT: Step = Step {
    id: "ridge-cut",
    label: "Cut the ridge at the top of the bores where a nail catches it",
    per: crate::measure::Per::Cylinder,
    needs: &[after(&HEADS_OFF)],
    proves: &[Proof::Check(&FOUND_STATE)],
    tools: &["ridge reamer"],
    minutes: (15, 25),
    cautions: &[engine("A piston pushed past a ridge breaks its lands.")],
    ..TEARDOWN
};

/// Rods and pistons out.
pub static RODS_OUT: Step = Step {
    id: "rods-out",
    label: "Number rods and caps, take rods and pistons out",
    per: crate::measure::Per::Cylinder,
    needs: &[
        after(&HEADS_OFF),
        after(&PAN_OFF),
        after(&RIDGE_CUT),
        better_after(&MEASURE_AS_FOUND),
    ],
    proves: &[Proof::Check(&PARTS_NUMBERED)],
    tools: &["paint or stamps", "sleeves over the bolts"],
    minutes: (15, 20),
    cautions: &[engine(
        "Fracture-split rods: no punch marks on the joint. Bare bolts scratch the crankpins.",
    )],
    ..TEARDOWN
};

/// Crank out from below.
pub static CRANK_OUT: Step = Step {
    id: "crank-out",
    label: "Number the main caps with an arrow to the front, take the crank out",
    when: When::without(&[Feature::CaseHalves]),
    needs: &[after(&PAN_OFF), after(&TIMING_OFF), after(&RODS_OUT)],
    proves: &[Proof::Check(&PARTS_NUMBERED)],
    tools: &["cap puller"],
    minutes: (25, 40),
    cautions: &[
        person("A crank is heavy and oily. Stood on its end it is tied, or it falls."),
        engine("Put the caps back on the block the same day."),
    ],
    ..TEARDOWN
};

/// Case split.
pub static CASE_SPLIT: Step = Step {
    id: "case-split",
    label: "Split the crankcase, take the crank out",
    when: When::with(&[Feature::CaseHalves]),
    needs: &[after(&TIMING_OFF), after(&RODS_OUT)],
    proves: &[Proof::Check(&PARTS_NUMBERED)],
    tools: &["rubber mallet"],
    minutes: (60, 120),
    cautions: &[
        engine("Never drive anything between the faces: they seal metal to metal."),
        person("The half that lifts off is heavy: two people."),
    ],
    ..TEARDOWN
};

/// Camshaft out of the block.
pub static CAM_OUT: Step = Step {
    id: "cam-out",
    label: "Take the camshaft out of the block, and its bearings if they are renewed",
    when: When::with(&[Feature::Pushrods]),
    needs: &[
        after(&VALVE_GEAR_OUT),
        after(&TIMING_OFF),
        better_after(&CRANK_OUT),
        better_after(&CASE_SPLIT),
    ],
    proves: &[Proof::Check(&FOUND_STATE)],
    tools: &["long bolt as a handle", "bearing driver"],
    minutes: (30, 60),
    cautions: &[engine(
        "Lobes chip the bearings: draw it out straight and slowly.",
    )],
    ..TEARDOWN
};

/// Liners out.
pub static LINERS_OUT: Step = Step {
    id: "liners-out",
    label: "Draw the liners, tag each with its place and shims",
    when: When::with(&[Feature::LooseLiners]),
    per: crate::measure::Per::Cylinder,
    needs: &[
        after(&RODS_OUT),
        better_after(&CRANK_OUT),
        better_after(&CASE_SPLIT),
    ],
    proves: &[Proof::Check(&PARTS_NUMBERED)],
    tools: &["liner puller"],
    minutes: (20, 45),
    cautions: &[engine("Shims stay with their hole.")],
    ..TEARDOWN
};

/// All plugs out.
pub static PLUGS_REMOVED: Step = Step {
    id: "plugs-removed",
    label: "Take all gallery and core plugs out, counted on a map",
    needs: &[after(&CRANK_OUT), after(&CASE_SPLIT)],
    proves: &[Proof::Check(&PLUGS_OUT)],
    tools: &["heat", "hexagon bits"],
    minutes: (30, 120),
    cautions: &[
        engine(
            "One plug left out later means no oil pressure: count them. Drill chips stay in the gallery.",
        ),
        person("Flame near solvent: clear the bench first."),
    ],
    ..TEARDOWN
};

/// Heads apart.
pub static HEADS_STRIPPED: Step = Step {
    id: "heads-stripped",
    label: "Strip the heads, valves and followers in order",
    needs: &[after(&HEADS_OFF)],
    proves: &[Proof::Check(&VALVE_GEAR_IN_ORDER)],
    tools: &["spring compressor", "rack"],
    minutes: (60, 120),
    cautions: &[person(
        "Locks and springs fly: eye guard on, nobody in line.",
    )],
    ..TEARDOWN
};

/// Rough clean, and reading the old parts.
pub static ROUGH_CLEAN: Step = Step {
    id: "rough-clean",
    label: "Clean it roughly and read the old parts",
    needs: &[after(&RODS_OUT), after(&CRANK_OUT), after(&CASE_SPLIT)],
    proves: &[Proof::Check(&OLD_BEARINGS)],
    tools: &["solvent", "brushes"],
    minutes: (120, 240),
    cautions: &[
        engine("Caustic ruins alloy parts and cam bearings."),
        person("Solvent burns and its vapour makes ill: air, gloves, no flame."),
    ],
    ..TEARDOWN
};
