//! What a tool must be able to do to read a measure.

use assembly_core::quantity::Kind;
use assembly_core::tool::Task;

use super::{
    BELLHOUSING_RUN_OUT, BELT_DEFLECTION, BIG_END_BORE, BOLT_BOTTOM_ROOM, BOLT_ENGAGEMENT, BORE,
    CAM_BEARING_CLEARANCE, CAM_END_FLOAT, CAM_RUN_OUT, COIL_BIND_MARGIN, CONVERTER_GAP, CRANK_BOW,
    CRANK_END_PLAY, DAMPER_HUB_INTERFERENCE, DAMPER_MARK, DECK_CLEARANCE, DECK_FLATNESS,
    DISTRIBUTOR_FLOAT, FLYWHEEL_RUN_OUT, HEAD_FLATNESS, INSTALLED_HEIGHT, INTAKE_FIT,
    LIFTER_IN_BORE, LIFTER_PRELOAD, LINER_FIT, LINER_STAND_OUT, LOBE_LIFT, MAIN_BEARING_BORE,
    MAIN_CRUSH, MAIN_HOUSING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_LINE, MAIN_OIL_CLEARANCE,
    MAIN_SHELL_WALL, Measure, PICKUP_TO_PAN, PIN_IN_BUSH, PIN_IN_PISTON, PIN_LOCK_FLOAT, PIN_PRESS,
    PISTON_DIAMETER, PUMP_COVER_WEAR, PUMP_DRIVE_FLOAT, PUMP_END_CLEARANCE, PUMP_GEAR_TO_BODY,
    PUMP_TIP_CLEARANCE, PUSHROD_LENGTH, QUENCH, RETAINER_TO_SEAL, RING_BACK_CLEARANCE,
    RING_END_GAP, RING_SIDE_CLEARANCE, ROCKER_ROOM, ROCKER_SWEEP, ROD_BEARING_BORE, ROD_BEND,
    ROD_BOLT_FREE_LENGTH, ROD_BOLT_STRETCH, ROD_CRUSH, ROD_JOURNAL_DIAMETER, ROD_LENGTH,
    ROD_OIL_CLEARANCE, ROD_SHELL_WALL, ROD_SIDE_CLEARANCE, ROD_TWIST, SEAT_RUN_OUT, SEAT_WIDTH,
    STEM_GUIDE_EXHAUST, STEM_GUIDE_INTAKE, TIMING_CHAIN_SLACK, TIMING_COVER_STEP,
    TIMING_GEAR_BACKLASH, TIP_HEIGHT, VALVE_LASH, VALVE_TO_PISTON_EXHAUST, VALVE_TO_PISTON_INTAKE,
    VALVE_TO_VALVE,
};

/// Lengths by the way they are read. Other kinds of number name their tool by
/// themselves.
static LENGTHS: &[(&[Task], &[&Measure])] = &[
    (
        &[Task::OutsideSize],
        &[
            &MAIN_JOURNAL_DIAMETER,
            &ROD_JOURNAL_DIAMETER,
            &MAIN_SHELL_WALL,
            &ROD_SHELL_WALL,
            &PISTON_DIAMETER,
            &ROD_LENGTH,
            &PUSHROD_LENGTH,
            &SEAT_WIDTH,
            &ROCKER_SWEEP,
        ],
    ),
    (
        &[Task::InsideSize],
        &[
            &MAIN_HOUSING_BORE,
            &MAIN_BEARING_BORE,
            &BIG_END_BORE,
            &ROD_BEARING_BORE,
            &BORE,
            &INSTALLED_HEIGHT,
        ],
    ),
    (
        &[Task::Depth],
        &[
            &LINER_STAND_OUT,
            &DECK_CLEARANCE,
            &TIP_HEIGHT,
            &TIMING_COVER_STEP,
            &CONVERTER_GAP,
            &RING_BACK_CLEARANCE,
            &BOLT_ENGAGEMENT,
            &BOLT_BOTTOM_ROOM,
        ],
    ),
    (
        &[Task::Gap],
        &[
            &RING_END_GAP,
            &RING_SIDE_CLEARANCE,
            &ROD_SIDE_CLEARANCE,
            &MAIN_CRUSH,
            &ROD_CRUSH,
            &MAIN_LINE,
            &PUMP_END_CLEARANCE,
            &PUMP_GEAR_TO_BODY,
            &PUMP_TIP_CLEARANCE,
            &PUMP_COVER_WEAR,
            &VALVE_LASH,
            &ROCKER_ROOM,
            &INTAKE_FIT,
            &COIL_BIND_MARGIN,
            &RETAINER_TO_SEAL,
        ],
    ),
    (
        &[Task::Movement],
        &[
            &CRANK_END_PLAY,
            &CRANK_BOW,
            &CAM_END_FLOAT,
            &CAM_RUN_OUT,
            &LOBE_LIFT,
            &TIMING_GEAR_BACKLASH,
            &TIMING_CHAIN_SLACK,
            &FLYWHEEL_RUN_OUT,
            &BELLHOUSING_RUN_OUT,
            &SEAT_RUN_OUT,
            &STEM_GUIDE_INTAKE,
            &STEM_GUIDE_EXHAUST,
            &PIN_LOCK_FLOAT,
            &PUMP_DRIVE_FLOAT,
            &DISTRIBUTOR_FLOAT,
            &LIFTER_PRELOAD,
            &ROD_BEND,
            &ROD_TWIST,
            &BELT_DEFLECTION,
        ],
    ),
    (&[Task::Flatness], &[&DECK_FLATNESS, &HEAD_FLATNESS]),
    (
        &[Task::RunningClearance],
        &[&MAIN_OIL_CLEARANCE, &ROD_OIL_CLEARANCE],
    ),
    (
        &[Task::SqueezedGap],
        &[
            &VALVE_TO_PISTON_INTAKE,
            &VALVE_TO_PISTON_EXHAUST,
            &VALVE_TO_VALVE,
            &PICKUP_TO_PAN,
            &QUENCH,
        ],
    ),
    (
        &[Task::Stretch],
        &[&ROD_BOLT_FREE_LENGTH, &ROD_BOLT_STRETCH],
    ),
    (&[Task::CrankAngle], &[&DAMPER_MARK]),
    // Read as one size inside another, whichever way it is got at.
    (
        &[
            Task::InsideSize,
            Task::OutsideSize,
            Task::Gap,
            Task::Movement,
        ],
        &[
            &CAM_BEARING_CLEARANCE,
            &LIFTER_IN_BORE,
            &PIN_IN_PISTON,
            &PIN_IN_BUSH,
            &PIN_PRESS,
            &LINER_FIT,
            &DAMPER_HUB_INTERFERENCE,
        ],
    ),
];

impl Measure {
    /// What a tool must be able to do to read it: one of these. A measure of
    /// the builder's own is read with whatever reads such a kind of number.
    #[must_use]
    pub fn tasks(&self) -> &'static [Task] {
        match self.kind {
            Kind::Force => &[Task::SpringForce],
            Kind::Pressure => &[Task::Pressure],
            Kind::Volume => &[Task::Volume],
            Kind::Torque => &[Task::Torque],
            Kind::Angle => &[Task::CrankAngle],
            Kind::Temperature => &[Task::Temperature],
            Kind::Length => LENGTHS
                .iter()
                .find(|(_, measures)| measures.iter().any(|one| one.id == self.id))
                .map_or(ANY_LENGTH, |(tasks, _)| tasks),
            _ => &[],
        }
    }
}

/// Whatever reads a length.
const ANY_LENGTH: &[Task] = &[
    Task::OutsideSize,
    Task::InsideSize,
    Task::Depth,
    Task::Gap,
    Task::Movement,
    Task::Flatness,
    Task::SqueezedGap,
    Task::Stretch,
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::MEASURES;
    use assembly_core::tool::INSTRUMENTS;

    #[test]
    fn whatever_can_be_read_can_be_read_with_a_tool_that_is_known() {
        let readable = MEASURES.iter().filter(|one| one.can_be_read());
        for measure in readable.filter(|one| one.kind != Kind::Ratio) {
            let able = |task: &Task| INSTRUMENTS.iter().any(|tool| tool.can(*task));
            assert!(measure.tasks().iter().any(able), "{}", measure.id);
        }
    }

    #[test]
    fn every_length_of_the_trade_has_its_own_way_of_reading() {
        let lengths = MEASURES
            .iter()
            .filter(|one| one.can_be_read() && one.kind == Kind::Length);
        for measure in lengths {
            let listed = LENGTHS
                .iter()
                .filter(|(_, measures)| measures.iter().any(|one| one.id == measure.id));
            assert_eq!(listed.count(), 1, "{}", measure.id);
        }
    }
}
