//! The measures of the running engine.

use super::bases::{PRESSURE, SHARE};
use super::per::Per;
use super::shape::{Measure, Spots};
use crate::engine::{Feature, When};
use crate::place::Station;

/// Oil pressure at a speed and an oil temperature.
pub static OIL_PRESSURE: Measure = Measure {
    id: "oil-pressure",
    label: "oil pressure, hot",
    spots: Spots::at(
        Per::Engine,
        &[Station::Idle, Station::TwoThousand, Station::ThreeThousand],
    ),
    how: [
        "A mechanical gauge, proved against zero with the engine off.",
        "Oil at the temperature it runs at; write the temperature down.",
        "At idle, at 2,000 and at 3,000 turns a minute.",
    ],
    too_little: "Bearings starve: shut off.",
    too_much: "The relief is stuck or the oil cold and thick.",
    cautions: &[
        "A number without the oil's temperature says nothing.",
        "Hands, hair and sleeves away from fan and belts.",
    ],
    ..PRESSURE
};

/// What a cylinder pumps up to.
pub static COMPRESSION_PRESSURE: Measure = Measure {
    id: "compression-pressure",
    label: "compression",
    spots: Spots::each(Per::Cylinder),
    how: [
        "Warm engine, all plugs out, throttle open, battery good, fuel and spark off.",
        "The same four to six pulses for each cylinder.",
        "Compare the cylinders with each other, and with last time.",
    ],
    too_little: "Rings, valves or gasket leak; all even and low, look at timing and throttle.",
    cautions: &["Cranking with plugs out sprays fuel: spark off, no flame near."],
    ..PRESSURE
};

/// How much of the air let into a cylinder leaks out.
pub static LEAK_DOWN: Measure = Measure {
    id: "leak-down",
    label: "leak-down",
    spots: Spots::each(Per::Cylinder),
    how: [
        "Piston at the top of its compression stroke, crank held.",
        "100 in, read what is left: what is missing is the leak.",
        "Listen where it goes: intake, exhaust, filler, radiator, neighbour.",
    ],
    too_much: "It says which: rings, valves or gasket.",
    cautions: &[
        "The air can turn the crank with a wrench on it: stand clear, lock it.",
        "Testers differ: compare with the same one only.",
    ],
    ..SHARE
};

/// What the engine draws at idle.
pub static INTAKE_VACUUM: Measure = Measure {
    id: "intake-vacuum",
    label: "intake vacuum at idle",
    when: When::with(&[Feature::SparkIgnition]),
    how: [
        "Warm engine at its idle, gauge below the throttle.",
        "Read the middle, and how the needle moves.",
        "Note the height above the sea: it takes some away.",
    ],
    too_little: "A leak, late timing, or a valve that does not shut.",
    cautions: &["Hands, hair and sleeves away from fan and belts."],
    ..PRESSURE
};
