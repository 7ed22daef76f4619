//! The measures of camshaft, lifters and their drive.

use super::bases::{ANGLE, FIT, GAP, SIZE, TIGHT_IS_DANGEROUS};
use super::per::Per;
use super::shape::{Measure, Spots};
use super::tripwire::Tripwire;
use crate::engine::{Feature, When};
use crate::place::Direction;

/// The room for oil in a cam bearing.
pub static CAM_BEARING_CLEARANCE: Measure = Measure {
    id: "cam-bearing-clearance",
    label: "cam bearing clearance",
    spots: Spots {
        per: Per::CamBearing,
        stations: &[],
        directions: &[Direction::UpAndDown, Direction::Across],
    },
    how: [
        "Bearing in its place, bore less journal, in two directions.",
        "Overhead with caps: caps torqued, or a plastic strip.",
        "The camshaft has to spin by hand without a wrench.",
    ],
    tripwire: Some(Tripwire::thou(1.0, 3.0, "1 to 3 thou; 5 is worn out")),
    too_little: "The camshaft binds and seizes.",
    too_much: "Oil pressure is lost before it reaches the mains.",
    cautions: &["Never scrape a cam bearing with wool or paper: grit beds in it."],
    ..TIGHT_IS_DANGEROUS
};

/// How far the camshaft moves from end to end.
pub static CAM_END_FLOAT: Measure = Measure {
    id: "cam-end-float",
    label: "cam end float",
    spots: Spots::each(Per::Camshaft),
    how: [
        "Indicator on the camshaft's nose, in line with it.",
        "Push rearward, zero, pull forward, read.",
        "With a button against the cover: cover on with its gasket.",
    ],
    tripwire: Some(
        Tripwire::thou(3.0, 9.0, "3 to 9 thou with a thrust plate; 15 is worn out")
            .from("TM 9-4310-397-14"),
    ),
    too_little: "The plate burns.",
    too_much: "The spark scatters, and lobes run on the wrong lifter's edge.",
    ..TIGHT_IS_DANGEROUS
};

/// How far the camshaft is bent.
pub static CAM_RUN_OUT: Measure = Measure {
    id: "cam-run-out",
    label: "cam run-out, full needle",
    spots: Spots::each(Per::Camshaft),
    how: [
        "End journals in vee blocks.",
        "Indicator on the middle journal, one slow turn.",
        "Note the whole way of the needle.",
    ],
    too_much: "The camshaft binds in its middle bearings.",
    ..FIT
};

/// How high a lobe lifts.
pub static LOBE_LIFT: Measure = Measure {
    id: "lobe-lift",
    label: "lobe lift",
    spots: Spots::each(Per::Valve),
    how: [
        "Across nose and heel, and across the heel at a right angle to that.",
        "The first less the second is the lift.",
        "Compare with the card, and all lobes of one kind with each other.",
    ],
    too_little: "The lobe is worn: camshaft and lifters are done.",
    cautions: &["A new camshaft gets new flat lifters, always."],
    ..SIZE
};

/// The room for a lifter in its bore.
pub static LIFTER_IN_BORE: Measure = Measure {
    id: "lifter-in-bore",
    label: "lifter in its bore",
    when: When::with(&[Feature::Pushrods]),
    spots: Spots::each(Per::Valve),
    how: [
        "Small-hole gauge in the bore, micrometer on the lifter.",
        "Bore less lifter.",
        "A clean dry lifter has to turn freely and fall by its own weight.",
    ],
    tripwire: Some(Tripwire::thou(1.2, 2.5, "1.2 to 2.5 thou")),
    too_little: "It does not spin, and the lobe is wiped.",
    too_much: "It ticks, and oil pressure leaks away.",
    ..TIGHT_IS_DANGEROUS
};

/// How far the timing chain can be pressed in.
pub static TIMING_CHAIN_SLACK: Measure = Measure {
    id: "timing-chain-slack",
    label: "timing chain slack",
    when: When::with(&[Feature::TimingChain]),
    how: [
        "Turn the crank one way until one side of the chain is tight.",
        "Press the slack side in and out at its middle.",
        "The whole way is the slack. A line-honed block has more.",
    ],
    too_much: "Spark and valve timing scatter; the chain may jump.",
    ..SIZE
};

/// The play between the timing gears.
pub static TIMING_GEAR_BACKLASH: Measure = Measure {
    id: "timing-gear-backlash",
    label: "timing gear backlash",
    when: When::with(&[Feature::TimingGears]),
    how: [
        "Indicator on a tooth of the camshaft's gear, square to its flank.",
        "Crank held still, gear rocked to and fro.",
        "At four places round the gear; the least counts.",
    ],
    tripwire: Some(Tripwire::thou(2.0, 5.0, "2 to 5 thou")),
    too_little: "The gears whine and break.",
    too_much: "They rattle, and the timing scatters.",
    ..TIGHT_IS_DANGEROUS
};

/// How far the timing belt can be pressed in, or what its tester says.
pub static BELT_DEFLECTION: Measure = Measure {
    id: "belt-deflection",
    label: "timing belt deflection",
    when: When::with(&[Feature::TimingBelt]),
    how: [
        "Crank turned two full turns in its running direction, tensioner as the maker says.",
        "Press or twist the longest free run as the maker says.",
        "Belt cold and free of oil.",
    ],
    too_little: "The belt is too tight: it howls and wears the pump's bearing.",
    too_much: "The belt jumps a tooth.",
    cautions: &["Never turn the engine backwards on a belt."],
    ..SIZE
};

/// Where the intake lobe's middle comes, in crank degrees after the top.
pub static CAM_LOBE_CENTRE: Measure = Measure {
    id: "cam-lobe-centre",
    label: "intake lobe centre",
    spots: Spots::each(Per::Camshaft),
    how: [
        "True top by a positive stop, wheel read on both sides of it.",
        "Crank degrees at equal lift on the opening and the closing flank, always in running direction.",
        "The middle between the two is the centre. Compare with the card.",
    ],
    too_little: "The camshaft is early: the intake valve comes nearer the piston.",
    too_much: "The camshaft is late: the exhaust valve comes nearer the piston.",
    cautions: &["One tooth is 15 to 20 degrees of the crank."],
    ..ANGLE
};

/// How late an overhead camshaft is for having come nearer the crank.
pub static CAM_LATENESS: Measure = Measure {
    id: "cam-lateness",
    label: "camshaft lateness after milling",
    when: When::with(&[Feature::OverheadCam]),
    spots: Spots::each(Per::Bank),
    how: [
        "Everything taken off deck, head and gasket together.",
        "Over the pitch radius of the camshaft's wheel, as an angle; twice that at the crank.",
        "Or degree the camshaft afresh.",
    ],
    too_much: "Timing late: less power low down, exhaust valve nearer the piston.",
    ..ANGLE
};

/// The least room between intake valve and piston.
pub static VALVE_TO_PISTON_INTAKE: Measure = Measure {
    id: "valve-to-piston-intake",
    label: "valve to piston, intake",
    spots: Spots::each(Per::Cylinder),
    how: [
        "Light springs, gasket in or its thickness added, lash as it will run.",
        "Every few degrees around overlap, push the valve to touch and read how far it went.",
        "The least is the number, usually some 10° after the top.",
    ],
    tripwire: Some(Tripwire::at_least(80.0, "at least 80 thou")),
    too_little: "The valve hits the piston and bends.",
    cautions: &["A hydraulic lifter gives way: use a solid one or a checker."],
    ..GAP
};

/// The least room between exhaust valve and piston.
pub static VALVE_TO_PISTON_EXHAUST: Measure = Measure {
    id: "valve-to-piston-exhaust",
    label: "valve to piston, exhaust",
    spots: Spots::each(Per::Cylinder),
    how: [
        "Light springs, gasket in or its thickness added, lash as it will run.",
        "Every few degrees around overlap, push the valve to touch and read how far it went.",
        "The least is the number, usually some 10° before the top.",
    ],
    tripwire: Some(Tripwire::at_least(
        100.0,
        "at least 100 thou with steel rods, more with alloy ones",
    )),
    too_little: "The valve hits the piston and bends.",
    cautions: &["A hydraulic lifter gives way: use a solid one or a checker."],
    ..GAP
};

/// The least room between the valves of a cylinder at overlap.
pub static VALVE_TO_VALVE: Measure = Measure {
    id: "valve-to-valve",
    label: "valve to valve at overlap",
    when: When::with(&[Feature::TwinCam]),
    spots: Spots::each(Per::Cylinder),
    how: [
        "Both camshafts at their timing, light springs.",
        "Turn through overlap and feel for the least room with a wire.",
        "Check again after either camshaft was moved.",
    ],
    tripwire: Some(Tripwire::at_least(60.0, "at least 60 thou")),
    too_little: "The valves hit each other and bend.",
    ..GAP
};
