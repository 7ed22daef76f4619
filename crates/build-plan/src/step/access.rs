//! What lies over what: which steps are undone when an earlier one is done
//! again, and which results cannot be taken again while something is fitted.
//!
//! Sources: common practice, from how the parts lie over each other; a bore
//! cannot be read past its piston.

use super::{
    BOLT_ONS, CAM_IN, CASE_CLOSED, CORE_PLUGS, COVERS_ON, CRANK_IN, DAMPER_ON, FLYWHEEL_ON,
    FRONT_COVER, GALLERY_PLUGS, HEAD_BOLTS, HEAD_GASKETS, HEADS_ON, IGNITION_SET, INSTALL,
    INTAKE_ON, LINERS_IN, OVERHEAD_CAMS, PAN_ON, PISTONS_IN, PISTONS_ON_RODS, PRIME, PUMP_IN,
    REAR_SEAL, ROD_BOLTS, SPLIT_SEAL_CHECK, Step, THRUST_AND_EFFORT, TIMING_SET, VALVE_GEAR_IN,
};
use crate::check::{
    BALANCE, BORE_FINISH, CAM_TURNS_FREE, CLEAN, GASKETS_RIGHT_WAY, LINER_SEALS_TIGHT,
    NOTHING_TOUCHES, PISTONS_RIGHT_WAY, PLUGS_IN, RELIEF_FREE, RINGS_MARKED, SEAT_LEAK,
    WASHED_AND_OILED,
};
use crate::measure::{
    BIG_END_BORE, BIG_END_OUT_OF_ROUND, BORE, BORE_OUT_OF_ROUND, BORE_TAPER, CAM_BEARING_CLEARANCE,
    CAM_END_FLOAT, CAM_RUN_OUT, CHAMBER_VOLUME, COIL_BIND_MARGIN, CRANK_BOW, DECK_CLEARANCE,
    DECK_FLATNESS, HEAD_FLATNESS, INSTALLED_HEIGHT, LIFTER_IN_BORE, LINER_FIT, LINER_STAND_OUT,
    LINER_STEP, LOBE_LIFT, MAIN_BEARING_BORE, MAIN_CRUSH, MAIN_HOUSING_BORE, MAIN_JOURNAL_DIAMETER,
    MAIN_JOURNAL_OUT_OF_ROUND, MAIN_JOURNAL_TAPER, MAIN_LINE, MAIN_OIL_CLEARANCE, MAIN_SHELL_WALL,
    PICKUP_TO_PAN, PIN_IN_BUSH, PIN_IN_PISTON, PIN_LOCK_FLOAT, PIN_PRESS, PISTON_DIAMETER,
    PUMP_COVER_WEAR, PUMP_END_CLEARANCE, PUMP_GEAR_TO_BODY, PUMP_TIP_CLEARANCE, QUENCH,
    RETAINER_TO_SEAL, RING_BACK_CLEARANCE, RING_END_GAP, RING_SIDE_CLEARANCE, ROD_BEARING_BORE,
    ROD_BEND, ROD_CRUSH, ROD_JOURNAL_DIAMETER, ROD_JOURNAL_OUT_OF_ROUND, ROD_JOURNAL_TAPER,
    ROD_LENGTH, ROD_OIL_CLEARANCE, ROD_SHELL_WALL, ROD_SIDE_CLEARANCE, ROD_TWIST, SEAT_RUN_OUT,
    SEAT_WIDTH, SPRING_OPEN_LOAD, SPRING_SEAT_LOAD, STEM_GUIDE_EXHAUST, STEM_GUIDE_INTAKE,
    TIMING_CHAIN_SLACK, TIMING_COVER_STEP, TIMING_GEAR_BACKLASH, TIP_HEIGHT,
    VALVE_TO_PISTON_EXHAUST, VALVE_TO_PISTON_INTAKE,
};
use crate::proof::Proof::{self, Check, Measure};

/// A step and what is undone with it.
struct Under(&'static Step, &'static [&'static Step]);

static UNDER: &[Under] = &[
    Under(&GALLERY_PLUGS, &[&PRIME]),
    Under(&CAM_IN, &[&TIMING_SET]),
    Under(&LINERS_IN, &[&PISTONS_IN]),
    Under(&CRANK_IN, ON_THE_CRANK),
    Under(&CASE_CLOSED, ON_THE_CRANK),
    Under(&REAR_SEAL, &[&PAN_ON, &FLYWHEEL_ON]),
    Under(&PISTONS_ON_RODS, &[&PISTONS_IN]),
    Under(&PISTONS_IN, &[&ROD_BOLTS, &HEAD_GASKETS]),
    Under(&ROD_BOLTS, &[&PAN_ON]),
    Under(&TIMING_SET, &[&FRONT_COVER, &IGNITION_SET]),
    Under(&PUMP_IN, &[&PAN_ON, &PRIME]),
    Under(&FRONT_COVER, &[&DAMPER_ON]),
    Under(&PAN_ON, &[&PRIME]),
    Under(&HEAD_GASKETS, &[&HEADS_ON]),
    Under(&HEADS_ON, &[&HEAD_BOLTS, &INTAKE_ON, &BOLT_ONS]),
    Under(&HEAD_BOLTS, &[&VALVE_GEAR_IN, &OVERHEAD_CAMS]),
    Under(&VALVE_GEAR_IN, &[&COVERS_ON]),
    Under(&OVERHEAD_CAMS, &[&COVERS_ON, &IGNITION_SET]),
    Under(&INTAKE_ON, &[&IGNITION_SET]),
    Under(&FLYWHEEL_ON, &[&INSTALL]),
];

const ON_THE_CRANK: &[&Step] = &[
    &THRUST_AND_EFFORT,
    &REAR_SEAL,
    &SPLIT_SEAL_CHECK,
    &PISTONS_IN,
    &TIMING_SET,
    &PUMP_IN,
    &FRONT_COVER,
];

/// A step and the results that are out of reach once it is done.
struct Over(&'static Step, &'static [Proof]);

static OVER: &[Over] = &[
    Over(&GALLERY_PLUGS, CLEANING),
    Over(&CORE_PLUGS, CLEANING),
    Over(
        &CAM_IN,
        &[
            Measure(&CAM_BEARING_CLEARANCE),
            Measure(&CAM_RUN_OUT),
            Measure(&LOBE_LIFT),
        ],
    ),
    Over(&LINERS_IN, &[Measure(&LINER_FIT)]),
    Over(&CRANK_IN, IN_THE_CRANKCASE),
    Over(&CASE_CLOSED, IN_THE_CRANKCASE),
    Over(
        &PISTONS_ON_RODS,
        &[
            Measure(&PISTON_DIAMETER),
            Measure(&PIN_IN_PISTON),
            Measure(&PIN_IN_BUSH),
            Measure(&PIN_PRESS),
            Measure(&RING_END_GAP),
            Measure(&RING_SIDE_CLEARANCE),
            Measure(&RING_BACK_CLEARANCE),
            Measure(&ROD_LENGTH),
            Measure(&ROD_BEND),
            Measure(&ROD_TWIST),
            Check(&RINGS_MARKED),
        ],
    ),
    Over(
        &PISTONS_IN,
        &[
            Measure(&BORE),
            Measure(&BORE_TAPER),
            Measure(&BORE_OUT_OF_ROUND),
            Measure(&PIN_LOCK_FLOAT),
            Measure(&BIG_END_BORE),
            Measure(&BIG_END_OUT_OF_ROUND),
            Measure(&ROD_SHELL_WALL),
            Measure(&ROD_BEARING_BORE),
            Measure(&ROD_CRUSH),
            Measure(&ROD_JOURNAL_DIAMETER),
            Measure(&ROD_JOURNAL_TAPER),
            Measure(&ROD_JOURNAL_OUT_OF_ROUND),
            Measure(&LINER_STAND_OUT),
            Measure(&LINER_STEP),
            Check(&BORE_FINISH),
            Check(&PISTONS_RIGHT_WAY),
            Check(&LINER_SEALS_TIGHT),
            Check(&NOTHING_TOUCHES),
            Check(&CLEAN),
            Check(&WASHED_AND_OILED),
        ],
    ),
    Over(&ROD_BOLTS, &[Measure(&ROD_OIL_CLEARANCE)]),
    Over(
        &PUMP_IN,
        &[
            Measure(&PUMP_END_CLEARANCE),
            Measure(&PUMP_GEAR_TO_BODY),
            Measure(&PUMP_TIP_CLEARANCE),
            Measure(&PUMP_COVER_WEAR),
            Check(&RELIEF_FREE),
        ],
    ),
    Over(
        &FRONT_COVER,
        &[
            Measure(&TIMING_COVER_STEP),
            Measure(&TIMING_CHAIN_SLACK),
            Measure(&TIMING_GEAR_BACKLASH),
            Measure(&CAM_END_FLOAT),
        ],
    ),
    Over(
        &PAN_ON,
        &[
            Measure(&PICKUP_TO_PAN),
            Measure(&ROD_SIDE_CLEARANCE),
            Check(&PLUGS_IN),
        ],
    ),
    Over(
        &HEADS_ON,
        &[
            Measure(&DECK_FLATNESS),
            Measure(&DECK_CLEARANCE),
            Measure(&QUENCH),
            Measure(&HEAD_FLATNESS),
            Measure(&CHAMBER_VOLUME),
            Measure(&STEM_GUIDE_INTAKE),
            Measure(&STEM_GUIDE_EXHAUST),
            Measure(&SEAT_WIDTH),
            Measure(&SEAT_RUN_OUT),
            Measure(&TIP_HEIGHT),
            Measure(&INSTALLED_HEIGHT),
            Measure(&SPRING_SEAT_LOAD),
            Measure(&SPRING_OPEN_LOAD),
            Measure(&COIL_BIND_MARGIN),
            Measure(&RETAINER_TO_SEAL),
            Measure(&VALVE_TO_PISTON_INTAKE),
            Measure(&VALVE_TO_PISTON_EXHAUST),
            Check(&SEAT_LEAK),
            Check(&GASKETS_RIGHT_WAY),
        ],
    ),
    Over(
        &VALVE_GEAR_IN,
        &[Measure(&LIFTER_IN_BORE), Check(&CAM_TURNS_FREE)],
    ),
];

/// A wash is no wash with the plugs in.
const CLEANING: &[Proof] = &[Check(&CLEAN), Check(&WASHED_AND_OILED)];

const IN_THE_CRANKCASE: &[Proof] = &[
    Measure(&MAIN_HOUSING_BORE),
    Measure(&MAIN_LINE),
    Measure(&MAIN_BEARING_BORE),
    Measure(&MAIN_OIL_CLEARANCE),
    Measure(&MAIN_SHELL_WALL),
    Measure(&MAIN_CRUSH),
    Measure(&MAIN_JOURNAL_DIAMETER),
    Measure(&MAIN_JOURNAL_TAPER),
    Measure(&MAIN_JOURNAL_OUT_OF_ROUND),
    Measure(&CRANK_BOW),
    Check(&BALANCE),
    Check(&CLEAN),
    Check(&WASHED_AND_OILED),
];

impl Step {
    /// What comes apart, and has to be done again, when this step is done
    /// again: what is fitted right over it. What lies over that comes apart
    /// with it.
    #[must_use]
    pub fn undoes(&self) -> &'static [&'static Self] {
        let found = UNDER.iter().find(|Under(step, _)| *step == self);
        found.map_or(&[], |Under(_, over)| over)
    }

    /// Whether a result cannot be taken again once this step is done.
    #[must_use]
    pub fn hides(&self, proof: Proof) -> bool {
        let found = OVER.iter().find(|Over(step, _)| *step == self);
        found.is_some_and(|Over(_, hidden)| hidden.contains(&proof))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::step::STEPS;

    /// Everything that comes apart with a step.
    fn all_over(step: &'static Step) -> Vec<&'static str> {
        let mut found: Vec<&'static str> = Vec::new();
        let mut next = vec![step];
        while let Some(one) = next.pop() {
            for over in one.undoes() {
                assert!(!std::ptr::eq(*over, step), "{} undoes itself", step.id);
                if !found.contains(&over.id) {
                    found.push(over.id);
                    next.push(over);
                }
            }
        }
        found
    }

    #[test]
    fn nothing_undoes_itself_and_each_step_is_listed_once() {
        for step in STEPS {
            let _ = all_over(step);
            assert!(UNDER.iter().filter(|one| one.0 == *step).count() <= 1);
            assert!(OVER.iter().filter(|one| one.0 == *step).count() <= 1);
        }
    }

    #[test]
    fn what_is_undone_comes_later_in_the_job() {
        let at = |step: &Step| STEPS.iter().position(|one| *one == step).unwrap();
        for Under(step, over) in UNDER {
            for one in *over {
                assert!(at(one) > at(step), "{} undoes {}", step.id, one.id);
            }
        }
    }

    #[test]
    fn heads_off_keeps_the_crank_and_the_crank_out_takes_the_pistons_along() {
        let heads = all_over(&HEADS_ON);
        assert!(heads.contains(&"head-bolts") && heads.contains(&"valve-gear-in"));
        assert!(!heads.contains(&"crank-in") && !heads.contains(&"pan-on"));
        let crank = all_over(&CRANK_IN);
        for id in [
            "pistons-in",
            "rod-bolts",
            "heads-on",
            "head-bolts",
            "pan-on",
            "prime",
        ] {
            assert!(crank.contains(&id), "{id}");
        }
        assert!(!crank.contains(&"pistons-on-rods") && !crank.contains(&"cam-in"));
    }

    #[test]
    fn a_bore_cannot_be_read_past_its_piston() {
        assert!(PISTONS_IN.hides(Measure(&BORE)));
        assert!(!HEADS_ON.hides(Measure(&BORE)) && !PAN_ON.hides(Measure(&BORE)));
        assert!(PISTONS_ON_RODS.hides(Measure(&RING_END_GAP)));
    }

    #[test]
    fn what_a_step_proves_it_does_not_hide_from_itself() {
        // But for a gasket or piston that is looked at while it goes in.
        let at_once = ["gaskets-right-way", "pistons-right-way"];
        for Over(step, hidden) in OVER {
            for proof in *hidden {
                assert!(
                    !step.proves.contains(proof) || at_once.contains(&proof.id()),
                    "{} hides {}",
                    step.id,
                    proof.id()
                );
            }
        }
    }
}
