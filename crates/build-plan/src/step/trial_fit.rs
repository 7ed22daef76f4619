//! Receiving, cleaning and fitting on trial.

use super::inspection::ORDER_MACHINE_WORK;
use super::shape::{PLAIN, Phase, Sitting, Step, after, better_after};
use super::shop::{
    BALANCE_CRANK, DECK_BLOCK, FIT_CAM_BEARINGS, FIT_LINERS, GRIND_CRANK, HONE_BORES, LINE_HONE,
    PRESS_PINS, RESIZE_RODS, REWORK_HEADS,
};
use super::teardown::PLUGS_REMOVED;
use crate::caution::{engine, person};
use crate::check::{
    CLEAN, CRANK_TURNS_FREE, NOTHING_TOUCHES, RECEIVED_AS_ORDERED, RELIEF_FREE, RINGS_MARKED,
    THREADS_READY, TIMING_MARKS, WASHED_AND_OILED,
};
use crate::engine::{Feature, When};
use crate::measure::{
    BIG_END_BORE, BOLT_BOTTOM_ROOM, BOLT_ENGAGEMENT, CAM_LATENESS, CAM_LOBE_CENTRE,
    COIL_BIND_MARGIN, COMPRESSION_RATIO, CRANK_END_PLAY, DAMPER_HUB_INTERFERENCE, DAMPER_MARK,
    DECK_CLEARANCE, DISTRIBUTOR_FLOAT, INSTALLED_HEIGHT, INTAKE_FIT, MAIN_BEARING_BORE, MAIN_CRUSH,
    MAIN_HOUSING_BORE, MAIN_LINE, MAIN_OIL_CLEARANCE, MAIN_SHELL_WALL, PICKUP_TO_PAN,
    PISTON_TO_WALL, PUMP_COVER_WEAR, PUMP_DRIVE_FLOAT, PUMP_END_CLEARANCE, PUMP_GEAR_TO_BODY,
    PUMP_TIP_CLEARANCE, PUSHROD_LENGTH, Per, QUENCH, RETAINER_TO_SEAL, RING_BACK_CLEARANCE,
    RING_END_GAP, RING_SIDE_CLEARANCE, ROCKER_ROOM, ROCKER_SWEEP, ROD_BEARING_BORE, ROD_CRUSH,
    ROD_OIL_CLEARANCE, ROD_SHELL_WALL, ROD_SIDE_CLEARANCE, SPRING_OPEN_LOAD, SPRING_SEAT_LOAD,
    TIMING_COVER_STEP, VALVE_TO_PISTON_EXHAUST, VALVE_TO_PISTON_INTAKE, VALVE_TO_VALVE,
};
use crate::proof::Proof;
use crate::supply::{CAM_AND_LIFTERS, FASTENERS, GASKETS, RINGS, SHELLS, SPRINGS};

const TRIAL: Step = Step {
    phase: Phase::TrialFit,
    ..PLAIN
};

/// Machine work checked.
pub static INSPECT_INCOMING: Step = Step {
    id: "inspect-incoming",
    label: "Measure what came back against the order, in the same week",
    needs: &[
        after(&ORDER_MACHINE_WORK),
        after(&LINE_HONE),
        after(&DECK_BLOCK),
        after(&HONE_BORES),
        after(&GRIND_CRANK),
        after(&RESIZE_RODS),
        after(&BALANCE_CRANK),
        after(&REWORK_HEADS),
        after(&FIT_CAM_BEARINGS),
        after(&FIT_LINERS),
        after(&PRESS_PINS),
    ],
    proves: &[
        Proof::Check(&RECEIVED_AS_ORDERED),
        Proof::Measure(&PISTON_TO_WALL),
    ],
    tools: &["micrometers", "bore gauge"],
    minutes: (120, 240),
    cautions: &[engine("A shop's patience has an end: not in a month.")],
    ..TRIAL
};

/// Washed.
pub static WASH: Step = Step {
    id: "wash",
    label: "Wash with hot water and detergent, brush every gallery, dry, oil at once",
    needs: &[after(&INSPECT_INCOMING), after(&PLUGS_REMOVED)],
    proves: &[Proof::Check(&CLEAN), Proof::Check(&WASHED_AND_OILED)],
    tools: &["rifle brushes", "hose", "white rags"],
    minutes: (180, 300),
    sitting: Sitting::InOneGo("Flash rust comes in minutes: wash, dry and oil without a break."),
    cautions: &[
        engine("Plugs are out. Wash until a white rag stays white."),
        person("Hot water and detergent; compressed air throws grit: eye guard on."),
    ],
    ..TRIAL
};

/// Threads chased.
pub static CHASE_THREADS: Step = Step {
    id: "chase-threads",
    label: "Chase the threads, blow blind holes dry, try bolt lengths",
    needs: &[after(&WASH)],
    proves: &[
        Proof::Check(&THREADS_READY),
        Proof::Measure(&BOLT_ENGAGEMENT),
        Proof::Measure(&BOLT_BOTTOM_ROOM),
    ],
    tools: &["thread chaser", "air", "caliper"],
    minutes: (60, 120),
    cautions: &[
        engine("Oil or water in a blind hole splits the casting. Chase, do not cut anew."),
        person("Air throws grit: eye guard on."),
    ],
    ..TRIAL
};

/// Main bores without shells.
pub static TRIAL_MAIN_BORES: Step = Step {
    id: "trial-main-bores",
    label: "Measure the main bores, caps torqued, no shells",
    per: Per::Main,
    needs: &[after(&WASH), after(&CHASE_THREADS)],
    in_hand: &[&FASTENERS],
    proves: &[
        Proof::Measure(&MAIN_HOUSING_BORE),
        Proof::Measure(&MAIN_LINE),
        Proof::Measure(&MAIN_CRUSH),
    ],
    tools: &["bore gauge", "torque wrench"],
    minutes: (10, 15),
    cautions: &[engine(
        "Every torquing counts on stretch bolts: use an old set.",
    )],
    ..TRIAL
};

/// Main clearance.
pub static TRIAL_MAIN_BEARINGS: Step = Step {
    id: "trial-main-bearings",
    label: "Main shells in, measure, crank in, clearance, free turn cap by cap",
    per: Per::Main,
    needs: &[after(&TRIAL_MAIN_BORES)],
    in_hand: &[&SHELLS],
    proves: &[
        Proof::Measure(&MAIN_SHELL_WALL),
        Proof::Measure(&MAIN_BEARING_BORE),
        Proof::Measure(&MAIN_OIL_CLEARANCE),
        Proof::Check(&CRANK_TURNS_FREE),
    ],
    tools: &[
        "bore gauge",
        "micrometer",
        "plastic gauge strip",
        "torque wrench",
    ],
    minutes: (25, 40),
    sitting: Sitting::BetweenParts("One bearing's strip, torque and reading belong together."),
    cautions: &[engine(
        "Backs of the shells dry and clean. Upper and lower are not alike: the oil hole has to be open.",
    )],
    ..TRIAL
};

/// Thrust.
pub static TRIAL_THRUST: Step = Step {
    id: "trial-thrust",
    label: "Seat the thrust, torque, read the end play",
    needs: &[after(&TRIAL_MAIN_BEARINGS)],
    proves: &[Proof::Measure(&CRANK_END_PLAY)],
    tools: &["dial indicator", "pry bar"],
    minutes: (15, 25),
    cautions: &[engine(
        "Pry fore and aft at snug; a hammer on a cap alone does not set it.",
    )],
    ..TRIAL
};

/// Rod clearance.
pub static TRIAL_ROD_BEARINGS: Step = Step {
    id: "trial-rod-bearings",
    label: "Rod bores, shells, clearance and side clearance",
    per: Per::Rod,
    needs: &[after(&WASH), better_after(&TRIAL_MAIN_BEARINGS)],
    in_hand: &[&SHELLS],
    proves: &[
        Proof::Measure(&BIG_END_BORE),
        Proof::Measure(&ROD_SHELL_WALL),
        Proof::Measure(&ROD_BEARING_BORE),
        Proof::Measure(&ROD_CRUSH),
        Proof::Measure(&ROD_OIL_CLEARANCE),
        Proof::Measure(&ROD_SIDE_CLEARANCE),
    ],
    tools: &[
        "bore gauge",
        "micrometer",
        "plastic gauge strip",
        "feeler blades",
    ],
    minutes: (15, 30),
    sitting: Sitting::BetweenParts("One bearing's strip, torque and reading belong together."),
    cautions: &[engine(
        "Old bolts for the trial where the new ones are used once.",
    )],
    ..TRIAL
};

/// Ring gaps.
pub static RING_GAPS: Step = Step {
    id: "ring-gaps",
    label: "Set the ring gaps, each ring in its own bore",
    per: Per::Cylinder,
    needs: &[after(&WASH)],
    in_hand: &[&RINGS],
    proves: &[Proof::Measure(&RING_END_GAP), Proof::Check(&RINGS_MARKED)],
    tools: &["squaring tool", "ring filer", "feeler blades"],
    minutes: (15, 30),
    cautions: &[engine(
        "With the plate on if the bores were honed with it. File from the face inward.",
    )],
    ..TRIAL
};

/// Ring grooves.
pub static RING_GROOVES: Step = Step {
    id: "ring-grooves",
    label: "Measure ring side and back clearance",
    needs: &[better_after(&RING_GAPS)],
    in_hand: &[&RINGS],
    proves: &[
        Proof::Measure(&RING_SIDE_CLEARANCE),
        Proof::Measure(&RING_BACK_CLEARANCE),
    ],
    tools: &["feeler blades", "depth gauge"],
    minutes: (25, 40),
    ..TRIAL
};

/// Valve springs.
pub static SPRING_HEIGHTS: Step = Step {
    id: "spring-heights",
    label: "Spring heights, loads, room before coils bind and seals",
    needs: &[after(&REWORK_HEADS), after(&INSPECT_INCOMING)],
    in_hand: &[&CAM_AND_LIFTERS, &SPRINGS],
    proves: &[
        Proof::Measure(&INSTALLED_HEIGHT),
        Proof::Measure(&SPRING_SEAT_LOAD),
        Proof::Measure(&SPRING_OPEN_LOAD),
        Proof::Measure(&COIL_BIND_MARGIN),
        Proof::Measure(&RETAINER_TO_SEAL),
    ],
    tools: &["height micrometer", "spring tester"],
    minutes: (90, 120),
    cautions: &[person(
        "A compressed spring that slips hits hard: eye guard on, face away.",
    )],
    ..TRIAL
};

/// Mock-up.
pub static MOCK_UP: Step = Step {
    id: "mock-up",
    label: "Mock it up: deck clearance, valve to piston, room for everything that moves",
    needs: &[
        after(&TRIAL_THRUST),
        after(&TRIAL_ROD_BEARINGS),
        after(&FIT_CAM_BEARINGS),
        better_after(&REWORK_HEADS),
    ],
    in_hand: &[&CAM_AND_LIFTERS, &GASKETS],
    proves: &[
        Proof::Measure(&DECK_CLEARANCE),
        Proof::Measure(&QUENCH),
        Proof::Measure(&COMPRESSION_RATIO),
        Proof::Measure(&VALVE_TO_PISTON_INTAKE),
        Proof::Measure(&VALVE_TO_PISTON_EXHAUST),
        Proof::Measure(&VALVE_TO_VALVE),
        Proof::Measure(&PUSHROD_LENGTH),
        Proof::Measure(&ROCKER_SWEEP),
        Proof::Measure(&ROCKER_ROOM),
        Proof::Measure(&CAM_LOBE_CENTRE),
        Proof::Measure(&CAM_LATENESS),
        Proof::Check(&TIMING_MARKS),
        Proof::Check(&NOTHING_TOUCHES),
    ],
    tools: &["deck bridge", "degree wheel", "clay", "light springs"],
    minutes: (180, 360),
    cautions: &[engine(
        "Stop at any touch. Rods can hit camshaft lobes or the pan rail.",
    )],
    ..TRIAL
};

/// Pump apart.
pub static PUMP_CHECK: Step = Step {
    id: "pump-check",
    label: "Strip the oil pump, deburr, measure, free the relief",
    proves: &[
        Proof::Measure(&PUMP_END_CLEARANCE),
        Proof::Measure(&PUMP_GEAR_TO_BODY),
        Proof::Measure(&PUMP_TIP_CLEARANCE),
        Proof::Measure(&PUMP_COVER_WEAR),
        Proof::Check(&RELIEF_FREE),
    ],
    tools: &["feeler blades", "straightedge"],
    minutes: (25, 40),
    cautions: &[engine(
        "New pumps come with chips and preservative in them.",
    )],
    ..TRIAL
};

/// Pickup height.
pub static PICKUP_CHECK: Step = Step {
    id: "pickup-check",
    label: "Pickup to pan with the real gasket and tray",
    when: When::with(&[Feature::Pan]),
    needs: &[after(&PUMP_CHECK), after(&TRIAL_MAIN_BEARINGS)],
    in_hand: &[&GASKETS],
    proves: &[Proof::Measure(&PICKUP_TO_PAN)],
    tools: &["clay", "depth gauge"],
    minutes: (25, 40),
    cautions: &[engine(
        "Take the spring out before a pickup is welded or brazed.",
    )],
    ..TRIAL
};

/// Pump drive and distributor.
pub static DRIVE_CHECK: Step = Step {
    id: "drive-check",
    label: "Pump drive float and distributor depth",
    when: When::with(&[Feature::PumpDriveShaft]),
    needs: &[after(&PUMP_CHECK), better_after(&MOCK_UP)],
    in_hand: &[&GASKETS],
    proves: &[
        Proof::Measure(&PUMP_DRIVE_FLOAT),
        Proof::Measure(&DISTRIBUTOR_FLOAT),
    ],
    tools: &["feeler blades", "clay"],
    minutes: (25, 40),
    cautions: &[engine(
        "The intake's height counts, and changes after any milling.",
    )],
    ..TRIAL
};

/// Intake, cover and marks.
pub static TRIAL_COVERS: Step = Step {
    id: "trial-covers",
    label: "Trial intake, front cover and damper; find the true top",
    needs: &[after(&MOCK_UP)],
    in_hand: &[&GASKETS],
    proves: &[
        Proof::Measure(&INTAKE_FIT),
        Proof::Measure(&TIMING_COVER_STEP),
        Proof::Measure(&DAMPER_MARK),
        Proof::Measure(&DAMPER_HUB_INTERFERENCE),
    ],
    tools: &["piston stop", "straightedge"],
    minutes: (45, 75),
    cautions: &[engine(
        "A damper's ring may have slipped: believe the stop, not the mark.",
    )],
    ..TRIAL
};

/// Apart and clean again.
pub static FINAL_CLEAN: Step = Step {
    id: "final-clean",
    label: "Take the mock-up apart and clean everything once more",
    needs: &[
        after(&TRIAL_THRUST),
        after(&TRIAL_ROD_BEARINGS),
        after(&RING_GAPS),
        after(&RING_GROOVES),
        after(&MOCK_UP),
        after(&SPRING_HEIGHTS),
        after(&PUMP_CHECK),
        after(&PICKUP_CHECK),
        after(&DRIVE_CHECK),
        after(&TRIAL_COVERS),
    ],
    proves: &[Proof::Check(&CLEAN), Proof::Check(&WASHED_AND_OILED)],
    tools: &["brushes", "white rags"],
    minutes: (90, 150),
    sitting: Sitting::InOneGo("Flash rust comes in minutes: wash, dry and oil without a break."),
    cautions: &[engine("Clay crumbs block a pickup.")],
    ..TRIAL
};
