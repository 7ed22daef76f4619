//! Assembly for good: the top end and what is bolted on.

use super::bottom_end::{
    CAM_IN, FRONT_COVER, GALLERY_PLUGS, LINERS_IN, PAN_ON, PISTONS_IN, PUMP_IN, REAR_SEAL,
    SPLIT_SEAL_CHECK, TIMING_SET,
};
use super::shape::{PLAIN, Phase, Sitting, Step, after, better_after};
use super::trial_fit::{CHASE_THREADS, MOCK_UP, SPRING_HEIGHTS, TRIAL_COVERS};
use crate::caution::{engine, person};
use crate::check::{
    CAM_TURNS_FREE, GASKETS_RIGHT_WAY, HEAD_BOLTS_TIGHT, LAID_UP, OIL_AT_ROCKERS, PRIMED,
    SEALANT_OPEN, STATIC_TIMING, TIMING_MARKS,
};
use crate::engine::{Feature, When};
use crate::measure::{
    BELT_DEFLECTION, CAM_END_FLOAT, CAM_LATENESS, CAM_LOBE_CENTRE, DISTRIBUTOR_FLOAT,
    FLYWHEEL_RUN_OUT, INTAKE_FIT, LIFTER_PRELOAD, OIL_PRESSURE, PUMP_DRIVE_FLOAT, Per,
    TIMING_CHAIN_SLACK, TIMING_GEAR_BACKLASH, VALVE_LASH,
};
use crate::proof::Proof;
use crate::supply::{CAM_AND_LIFTERS, FASTENERS, FIRST_OIL, GASKETS, SEALS};

const TOP: Step = Step {
    phase: Phase::TopEnd,
    ..PLAIN
};

/// Head gaskets.
pub static HEAD_GASKETS: Step = Step {
    id: "head-gaskets",
    label: "Dowels in, deck wiped dry, head gasket the right way up and round",
    per: Per::Bank,
    needs: &[
        after(&PISTONS_IN),
        after(&LINERS_IN),
        better_after(&MOCK_UP),
    ],
    in_hand: &[&GASKETS],
    proves: &[Proof::Check(&GASKETS_RIGHT_WAY)],
    minutes: (10, 20),
    cautions: &[engine("Some coolant holes are meant to be blocked.")],
    ..TOP
};

/// Heads on.
pub static HEADS_ON: Step = Step {
    id: "heads-on",
    label: "Heads on, bolt holes wet or dry as they should be",
    per: Per::Bank,
    needs: &[
        after(&HEAD_GASKETS),
        after(&SPRING_HEIGHTS),
        after(&CHASE_THREADS),
    ],
    in_hand: &[&FASTENERS],
    proves: &[Proof::Check(&GASKETS_RIGHT_WAY)],
    minutes: (15, 30),
    cautions: &[
        person("A head is heavy and slips: two people."),
        engine("A hole into the coolant gets sealant; a blind one gets a film of oil only."),
    ],
    ..TOP
};

/// Head bolts.
pub static HEAD_BOLTS: Step = Step {
    id: "head-bolts",
    label: "Head bolts, all stages, in the maker's order",
    per: Per::Bank,
    needs: &[after(&HEADS_ON)],
    in_hand: &[&FASTENERS],
    proves: &[Proof::Check(&HEAD_BOLTS_TIGHT)],
    tools: &["torque wrench", "angle gauge", "paint"],
    minutes: (45, 90),
    sitting: Sitting::InOneGo(
        "All laps in one sitting: a half-clamped gasket is not clamped again.",
    ),
    cautions: &[engine("Stretch bolts are used once.")],
    ..TOP
};

/// Lifters, rockers, lash.
pub static VALVE_GEAR_IN: Step = Step {
    id: "valve-gear-in",
    label: "Lifters, pushrods, rockers; preload or lash",
    when: When::with(&[Feature::Pushrods]),
    needs: &[after(&HEAD_BOLTS), after(&TIMING_SET), after(&CAM_IN)],
    in_hand: &[&CAM_AND_LIFTERS],
    proves: &[Proof::Measure(&LIFTER_PRELOAD), Proof::Measure(&VALVE_LASH)],
    tools: &["feeler blades"],
    minutes: (60, 120),
    cautions: &[engine(
        "Rockers pulled down together with a piston at the top may bend valves.",
    )],
    ..TOP
};

/// Overhead camshafts.
pub static OVERHEAD_CAMS: Step = Step {
    id: "overhead-cams",
    label: "Camshafts in their caps, followers or buckets, drive and tensioner; two turns by hand",
    when: When::with(&[Feature::OverheadCam]),
    needs: &[after(&HEAD_BOLTS)],
    in_hand: &[&CAM_AND_LIFTERS],
    proves: &[
        Proof::Measure(&CAM_END_FLOAT),
        Proof::Measure(&CAM_LOBE_CENTRE),
        Proof::Measure(&CAM_LATENESS),
        Proof::Measure(&VALVE_LASH),
        Proof::Measure(&TIMING_CHAIN_SLACK),
        Proof::Measure(&TIMING_GEAR_BACKLASH),
        Proof::Measure(&BELT_DEFLECTION),
        Proof::Check(&CAM_TURNS_FREE),
        Proof::Check(&TIMING_MARKS),
    ],
    tools: &["lock pins", "shims", "torque wrench"],
    minutes: (120, 240),
    sitting: Sitting::InOneGo(
        "From the drive going on to the second full turn by hand without a break.",
    ),
    cautions: &[engine(
        "Crank 60 to 90 degrees off the top while the camshafts are free. A belt is never turned backwards.",
    )],
    ..TOP
};

/// Intake on.
pub static INTAKE_ON: Step = Step {
    id: "intake-on",
    label: "Intake or valley on, from the middle out",
    needs: &[
        after(&HEAD_BOLTS),
        better_after(&TRIAL_COVERS),
        better_after(&VALVE_GEAR_IN),
    ],
    in_hand: &[&GASKETS],
    proves: &[Proof::Measure(&INTAKE_FIT), Proof::Check(&SEALANT_OPEN)],
    tools: &["torque wrench"],
    minutes: (60, 120),
    sitting: Sitting::InOneGo("From the sealant's bead to the closed joint without a break."),
    cautions: &[engine(
        "Rags out of the ports and the valley. End seals slip: look before and after.",
    )],
    ..TOP
};

/// Priming.
pub static PRIME: Step = Step {
    id: "prime",
    label: "Prime it: pressure on a gauge, oil at every rocker, crank a quarter at a time",
    needs: &[
        after(&GALLERY_PLUGS),
        after(&PUMP_IN),
        after(&PAN_ON),
        after(&HEAD_BOLTS),
        better_after(&VALVE_GEAR_IN),
        better_after(&OVERHEAD_CAMS),
    ],
    in_hand: &[&FIRST_OIL],
    proves: &[
        Proof::Check(&PRIMED),
        Proof::Check(&OIL_AT_ROCKERS),
        Proof::Measure(&OIL_PRESSURE),
    ],
    tools: &["drill or pressure pot", "mechanical oil gauge"],
    minutes: (30, 60),
    cautions: &[engine(
        "Mind the drive's direction. A crank-driven pump needs packing or a pressure pot.",
    )],
    ..TOP
};

/// Covers on.
pub static COVERS_ON: Step = Step {
    id: "covers-on",
    label: "Valve covers on; tools and rags counted",
    needs: &[after(&PRIME), after(&VALVE_GEAR_IN), after(&OVERHEAD_CAMS)],
    in_hand: &[&GASKETS],
    proves: &[Proof::Check(&SEALANT_OPEN)],
    minutes: (25, 40),
    ..TOP
};

/// Timing standing still.
pub static IGNITION_SET: Step = Step {
    id: "ignition-set",
    label: "Distributor or sensor in, timing set standing still",
    when: When::with(&[Feature::SparkIgnition]),
    needs: &[
        after(&PRIME),
        after(&TIMING_SET),
        after(&OVERHEAD_CAMS),
        better_after(&INTAKE_ON),
    ],
    proves: &[
        Proof::Check(&STATIC_TIMING),
        Proof::Measure(&DISTRIBUTOR_FLOAT),
        Proof::Measure(&PUMP_DRIVE_FLOAT),
    ],
    minutes: (25, 40),
    cautions: &[engine(
        "Cylinder one on its compression stroke, or it is half a turn out.",
    )],
    ..TOP
};

/// Flywheel on.
pub static FLYWHEEL_ON: Step = Step {
    id: "flywheel-on",
    label: "Flywheel or flexplate on, run-out, pilot",
    needs: &[after(&REAR_SEAL), after(&SPLIT_SEAL_CHECK)],
    in_hand: &[&FASTENERS],
    proves: &[Proof::Measure(&FLYWHEEL_RUN_OUT)],
    tools: &["dial indicator", "torque wrench"],
    minutes: (25, 40),
    cautions: &[
        engine("Clocked wrongly it is out of balance. Sealant on bolts in through holes."),
        person("A flywheel is heavy and falls off its dowels."),
    ],
    ..TOP
};

/// Pumps, manifolds, sensors.
pub static BOLT_ONS: Step = Step {
    id: "bolt-ons",
    label: "Water pump, manifolds, thermostat, sensors",
    needs: &[after(&FRONT_COVER), after(&HEAD_BOLTS)],
    in_hand: &[&GASKETS, &SEALS],
    proves: &[Proof::Check(&SEALANT_OPEN)],
    minutes: (120, 240),
    cautions: &[engine("The thermostat's bleed hole goes up.")],
    ..TOP
};

/// Laid up.
pub static LAY_UP: Step = Step {
    id: "lay-up",
    label: "Lay it up when it will not run within about two weeks",
    optional: true,
    needs: &[after(&COVERS_ON)],
    proves: &[Proof::Check(&LAID_UP)],
    tools: &["tape", "bag", "desiccant", "tag"],
    minutes: (15, 25),
    cautions: &[engine(
        "Priming expires meanwhile. For months: back the rockers off to rest the springs.",
    )],
    ..TOP
};
