//! Assembly for good: the bottom end.

use super::shape::{PLAIN, Phase, Sitting, Step, after, better_after};
use super::shop::{BALANCE_CRANK, FIT_CAM_BEARINGS, FIT_LINERS, PRESS_PINS};
use super::trial_fit::{
    CHASE_THREADS, DRIVE_CHECK, FINAL_CLEAN, MOCK_UP, PICKUP_CHECK, PUMP_CHECK, RING_GAPS,
    RING_GROOVES, TRIAL_MAIN_BEARINGS, TRIAL_THRUST, WASH,
};
use crate::caution::{engine, person};
use crate::check::{
    CAM_TURNS_FREE, CRANK_TURNS_FREE, LINER_SEALS_TIGHT, MAIN_CAPS_TIGHT, PAN_CLOSED,
    PISTONS_RIGHT_WAY, PLUGS_IN, PUMP_TURNS_FREE, REAR_SEAL_EVEN, ROD_BOLTS_TIGHT, SEALANT_OPEN,
    TIMING_MARKS,
};
use crate::engine::{Feature, When};
use crate::measure::{
    CAM_END_FLOAT, CAM_LOBE_CENTRE, CRANK_END_PLAY, DAMPER_MARK, LINER_STAND_OUT, LINER_STEP,
    PIN_LOCK_FLOAT, Per, ROD_BOLT_STRETCH, ROD_SIDE_CLEARANCE, TIMING_CHAIN_SLACK,
    TIMING_GEAR_BACKLASH, TURNING_EFFORT,
};
use crate::proof::Proof;
use crate::supply::{FASTENERS, GASKETS, SEALS};

const BOTTOM: Step = Step {
    phase: Phase::BottomEnd,
    ..PLAIN
};

/// Gallery plugs in.
pub static GALLERY_PLUGS: Step = Step {
    id: "gallery-plugs",
    label: "Gallery plugs in with sealer, counted",
    needs: &[after(&WASH), after(&FINAL_CLEAN)],
    proves: &[Proof::Check(&PLUGS_IN)],
    tools: &["hexagon bits", "thread sealer"],
    minutes: (25, 40),
    cautions: &[engine(
        "As many as came out. A plug too deep covers a cross hole.",
    )],
    ..BOTTOM
};

/// Core plugs in.
pub static CORE_PLUGS: Step = Step {
    id: "core-plugs",
    label: "Core plugs and rear cam plug in",
    needs: &[
        after(&WASH),
        better_after(&GALLERY_PLUGS),
        after(&FINAL_CLEAN),
    ],
    proves: &[Proof::Check(&PLUGS_IN)],
    tools: &["plug driver"],
    minutes: (25, 40),
    ..BOTTOM
};

/// Camshaft in the block.
pub static CAM_IN: Step = Step {
    id: "cam-in",
    label: "Camshaft and thrust plate in",
    when: When::with(&[Feature::Pushrods]),
    needs: &[
        after(&GALLERY_PLUGS),
        after(&FIT_CAM_BEARINGS),
        after(&FINAL_CLEAN),
    ],
    proves: &[
        Proof::Check(&CAM_TURNS_FREE),
        Proof::Measure(&CAM_END_FLOAT),
    ],
    tools: &["long handle", "lubricant for the lobes"],
    minutes: (15, 25),
    cautions: &[engine(
        "Lobes scrape the bearings. Lubricate them right before.",
    )],
    ..BOTTOM
};

/// Wet liners in.
pub static LINERS_IN: Step = Step {
    id: "liners-in",
    label: "Wet liners and their seals in, clamped",
    when: When::with(&[Feature::WetLiners]),
    per: Per::Cylinder,
    needs: &[after(&FIT_LINERS), after(&FINAL_CLEAN)],
    in_hand: &[&SEALS],
    proves: &[
        Proof::Measure(&LINER_STAND_OUT),
        Proof::Measure(&LINER_STEP),
        Proof::Check(&LINER_SEALS_TIGHT),
    ],
    tools: &["liner clamps", "depth gauge"],
    minutes: (20, 40),
    cautions: &[engine(
        "A sheared seal lets coolant into the oil. Never turn the crank unclamped.",
    )],
    ..BOTTOM
};

/// Crank in, caps on.
pub static CRANK_IN: Step = Step {
    id: "crank-in",
    label: "Upper shells, rear seal halves or rope, crank, caps in stages, thrust aligned",
    when: When::without(&[Feature::CaseHalves]),
    needs: &[
        after(&TRIAL_MAIN_BEARINGS),
        after(&TRIAL_THRUST),
        after(&FINAL_CLEAN),
        after(&BALANCE_CRANK),
        after(&CORE_PLUGS),
        better_after(&CAM_IN),
    ],
    in_hand: &[&FASTENERS, &SEALS],
    proves: &[
        Proof::Check(&MAIN_CAPS_TIGHT),
        Proof::Check(&CRANK_TURNS_FREE),
    ],
    tools: &["torque wrench", "assembly lubricant"],
    minutes: (60, 120),
    sitting: Sitting::InOneGo(
        "The last lap is one sitting; a bolt left at an earlier stage is not seen later.",
    ),
    cautions: &[
        engine(
            "Split seal: ends offset from the joint, sealer on the joint only. Turn after each cap.",
        ),
        person("A crank is heavy and oily: two people."),
    ],
    ..BOTTOM
};

/// Case closed around the crank.
pub static CASE_CLOSED: Step = Step {
    id: "case-closed",
    label: "Crank and rods in, close the case halves, through bolts in stages",
    when: When::with(&[Feature::CaseHalves]),
    needs: &[
        after(&TRIAL_MAIN_BEARINGS),
        after(&TRIAL_THRUST),
        after(&FINAL_CLEAN),
        after(&BALANCE_CRANK),
        after(&CORE_PLUGS),
        better_after(&CAM_IN),
    ],
    in_hand: &[&FASTENERS, &SEALS],
    proves: &[
        Proof::Check(&MAIN_CAPS_TIGHT),
        Proof::Check(&CRANK_TURNS_FREE),
        Proof::Check(&SEALANT_OPEN),
    ],
    tools: &["torque wrench", "anaerobic sealer"],
    minutes: (90, 180),
    sitting: Sitting::InOneGo(
        "The sealer cures once the halves are closed: bolts to their last lap without a break.",
    ),
    cautions: &[
        engine(
            "Nothing can be looked at from below afterwards: photograph everything inside first.",
        ),
        person("The half is heavy: two people."),
    ],
    ..BOTTOM
};

/// Thrust and effort written down.
pub static THRUST_AND_EFFORT: Step = Step {
    id: "thrust-and-effort",
    label: "Write down end play and turning effort",
    needs: &[after(&CRANK_IN), after(&CASE_CLOSED)],
    proves: &[
        Proof::Measure(&CRANK_END_PLAY),
        Proof::Measure(&TURNING_EFFORT),
    ],
    tools: &["dial indicator", "beam wrench"],
    minutes: (10, 15),
    ..BOTTOM
};

/// Whole rear seal.
pub static REAR_SEAL: Step = Step {
    id: "rear-seal",
    label: "Rear seal and retainer, centred",
    when: When::with(&[Feature::WholeRearSeal]),
    needs: &[after(&CRANK_IN), after(&CASE_CLOSED)],
    in_hand: &[&SEALS],
    proves: &[Proof::Check(&REAR_SEAL_EVEN)],
    tools: &["alignment sleeve"],
    minutes: (15, 25),
    cautions: &[engine(
        "Dry or oiled lip as the seal's maker says. A folded lip leaks from the first turn.",
    )],
    ..BOTTOM
};

/// Seal that went in with the caps.
pub static SPLIT_SEAL_CHECK: Step = Step {
    id: "split-seal-check",
    label: "Look at the split or rope seal with the crank turned",
    when: When::with(&[Feature::SplitRearSeal]),
    needs: &[after(&CRANK_IN), after(&CASE_CLOSED)],
    proves: &[Proof::Check(&REAR_SEAL_EVEN)],
    minutes: (10, 15),
    ..BOTTOM
};

/// Pistons on rods, rings on.
pub static PISTONS_ON_RODS: Step = Step {
    id: "pistons-on-rods",
    label: "Pistons on rods, rings on, gaps apart",
    per: Per::Cylinder,
    needs: &[
        after(&PRESS_PINS),
        after(&RING_GAPS),
        after(&RING_GROOVES),
        after(&FINAL_CLEAN),
    ],
    proves: &[
        Proof::Check(&PISTONS_RIGHT_WAY),
        Proof::Measure(&PIN_LOCK_FLOAT),
    ],
    tools: &["ring expander"],
    minutes: (10, 15),
    cautions: &[
        engine("Ring marks up. The oil expander's ends butt, they do not overlap."),
        person("Wire locks fly: eye guard on."),
    ],
    ..BOTTOM
};

/// Pistons in.
pub static PISTONS_IN: Step = Step {
    id: "pistons-in",
    label: "Pistons in, rod caps on, turn after each",
    per: Per::Cylinder,
    needs: &[
        after(&CRANK_IN),
        after(&CASE_CLOSED),
        after(&PISTONS_ON_RODS),
        after(&LINERS_IN),
    ],
    in_hand: &[&FASTENERS],
    proves: &[
        Proof::Check(&PISTONS_RIGHT_WAY),
        Proof::Check(&CRANK_TURNS_FREE),
    ],
    tools: &["ring compressor", "sleeves over the bolts"],
    minutes: (15, 25),
    cautions: &[engine(
        "Stop at any hang: a ring is caught. Notch to the front, every time.",
    )],
    ..BOTTOM
};

/// Rod bolts to their value.
pub static ROD_BOLTS: Step = Step {
    id: "rod-bolts",
    label: "Rod bolts in stages or to their stretch; side clearance",
    per: Per::Rod,
    needs: &[after(&PISTONS_IN)],
    proves: &[
        Proof::Check(&ROD_BOLTS_TIGHT),
        Proof::Measure(&ROD_BOLT_STRETCH),
        Proof::Measure(&ROD_SIDE_CLEARANCE),
        Proof::Measure(&TURNING_EFFORT),
    ],
    tools: &["torque wrench", "stretch gauge"],
    minutes: (10, 15),
    sitting: Sitting::InOneGo("A rod bolt left at its first stage is a rod through the block."),
    cautions: &[engine("Not split across sittings, and never half a rod.")],
    ..BOTTOM
};

/// Camshaft timed, drive in the block.
pub static TIMING_SET: Step = Step {
    id: "timing-set",
    label: "Timing set on, degree the camshaft, lock the bolts",
    when: When::with(&[Feature::Pushrods]),
    needs: &[
        after(&CAM_IN),
        after(&CRANK_IN),
        after(&CASE_CLOSED),
        better_after(&MOCK_UP),
    ],
    proves: &[
        Proof::Measure(&CAM_LOBE_CENTRE),
        Proof::Measure(&TIMING_CHAIN_SLACK),
        Proof::Measure(&TIMING_GEAR_BACKLASH),
        Proof::Check(&TIMING_MARKS),
    ],
    tools: &["degree wheel", "dial indicator"],
    minutes: (60, 120),
    cautions: &[engine("One tooth is 15 to 20 degrees of the crank.")],
    ..BOTTOM
};

/// Pump in.
pub static PUMP_IN: Step = Step {
    id: "pump-in",
    label: "Oil pump, drive and pickup in, torqued, then spun by hand",
    needs: &[
        after(&CRANK_IN),
        after(&CASE_CLOSED),
        after(&PUMP_CHECK),
        after(&PICKUP_CHECK),
        after(&DRIVE_CHECK),
        better_after(&ROD_BOLTS),
    ],
    proves: &[Proof::Check(&PUMP_TURNS_FREE)],
    tools: &["torque wrench"],
    minutes: (25, 40),
    cautions: &[engine(
        "The sleeve or retainer of the drive is fitted. A pump gasket only where it is specified.",
    )],
    ..BOTTOM
};

/// Front cover.
pub static FRONT_COVER: Step = Step {
    id: "front-cover",
    label: "Front cover and its seal",
    needs: &[
        after(&TIMING_SET),
        after(&PUMP_IN).on(When::with(&[Feature::CrankDrivenPump])),
        after(&CHASE_THREADS),
        after(&CRANK_IN),
        after(&CASE_CLOSED),
    ],
    in_hand: &[&GASKETS, &SEALS],
    proves: &[Proof::Check(&SEALANT_OPEN)],
    tools: &["bolt map"],
    minutes: (45, 75),
    cautions: &[engine(
        "Bolt lengths by the map: a long one reaches a gear or a cylinder. A crank-driven pump is packed and centred here.",
    )],
    ..BOTTOM
};

/// Pan on.
pub static PAN_ON: Step = Step {
    id: "pan-on",
    label: "Tray and pan on",
    when: When::with(&[Feature::Pan]),
    needs: &[
        after(&ROD_BOLTS),
        after(&PUMP_IN),
        after(&FRONT_COVER),
        after(&REAR_SEAL),
        after(&SPLIT_SEAL_CHECK),
        after(&THRUST_AND_EFFORT),
    ],
    in_hand: &[&GASKETS],
    proves: &[Proof::Check(&PAN_CLOSED), Proof::Check(&SEALANT_OPEN)],
    tools: &["small torque wrench"],
    minutes: (45, 75),
    sitting: Sitting::InOneGo("From the sealant's bead to the closed joint without a break."),
    cautions: &[engine(
        "Everything behind it photographed. A thin bead inside the holes, none that squeezes into the pan.",
    )],
    ..BOTTOM
};

/// Damper on.
pub static DAMPER_ON: Step = Step {
    id: "damper-on",
    label: "Damper pulled on, bolt torqued",
    needs: &[after(&FRONT_COVER)],
    proves: &[Proof::Measure(&DAMPER_MARK)],
    tools: &["damper installer", "torque wrench"],
    minutes: (15, 25),
    cautions: &[engine(
        "Pulled on, never hammered: the thrust takes the blow.",
    )],
    ..BOTTOM
};
