//! Tools for angles, volumes, forces, torques, pressures and temperatures.

use super::INCH;
use crate::quantity::Kind;
use crate::tool::{Instrument, Spread, Task};

const DEGREE: f64 = std::f64::consts::PI / 180.0;
const CUBIC_CENTIMETRE: f64 = 1e-6;
const NEWTON_METRE: f64 = 1.0;
const POUND_FORCE: f64 = 0.453_592_37 * 9.806_65;
const PSI: f64 = POUND_FORCE / (INCH * INCH);

/// A degree wheel on the crank.
pub static DEGREE_WHEEL: Instrument = Instrument {
    id: "degree-wheel",
    label: "degree wheel and pointer",
    name: "degree wheel",
    kind: Kind::Angle,
    tasks: &[Task::CrankAngle],
    repeat: Spread::Always(0.5 * DEGREE),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: DEGREE,
    compares: false,
    trap: "The pointer shifts with where you stand, and slack in the chain hides: come from the same side every time.",
};

/// Top dead centre as the middle of two stops.
pub static POSITIVE_STOP: Instrument = Instrument {
    id: "positive-stop",
    label: "top dead centre by a positive stop",
    name: "positive stop",
    kind: Kind::Angle,
    tasks: &[Task::CrankAngle],
    repeat: Spread::Always(0.25 * DEGREE),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.5 * DEGREE,
    compares: false,
    trap: "Turn by hand only, plugs out: a starter bends the stop or the piston.",
};

/// A burette on a plate over the chamber.
pub static BURETTE: Instrument = Instrument {
    id: "burette",
    label: "burette",
    name: "burette",
    kind: Kind::Volume,
    tasks: &[Task::Volume],
    repeat: Spread::Always(0.4 * CUBIC_CENTIMETRE),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.1 * CUBIC_CENTIMETRE,
    compares: false,
    trap: "A bubble or a thick ring of grease takes room.",
};

/// A syringe on a plate over the chamber.
pub static SYRINGE: Instrument = Instrument {
    id: "syringe",
    label: "syringe",
    name: "syringe",
    kind: Kind::Volume,
    tasks: &[Task::Volume],
    repeat: Spread::Always(CUBIC_CENTIMETRE),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: CUBIC_CENTIMETRE,
    compares: false,
    trap: "A bubble or a thick ring of grease takes room, and what stays in the nozzle counts.",
};

/// A lever or gauge tester on the bench.
pub static BENCH_SPRING_TESTER: Instrument = Instrument {
    id: "bench-spring-tester",
    label: "bench spring tester",
    name: "spring tester",
    kind: Kind::Force,
    tasks: &[Task::SpringForce],
    repeat: Spread::OfReading(0.04),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 2.0 * POUND_FORCE,
    compares: false,
    trap: "An error in the height times the rate of the spring is most of the error: set the height with a block.",
};

/// A hydraulic tester squeezed in a vice.
pub static VICE_SPRING_TESTER: Instrument = Instrument {
    id: "vice-spring-tester",
    label: "vice spring tester",
    name: "spring tester",
    kind: Kind::Force,
    tasks: &[Task::SpringForce],
    repeat: Spread::OfReading(0.07),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 5.0 * POUND_FORCE,
    compares: false,
    trap: "An error in the height times the rate of the spring is most of the error: measure the height, do not judge it.",
};

/// A click wrench that was checked against a standard.
pub static CLICK_WRENCH_CHECKED: Instrument = Instrument {
    id: "click-wrench-checked",
    label: "click wrench, checked",
    name: "torque wrench",
    kind: Kind::Torque,
    tasks: &[Task::Torque],
    repeat: Spread::OfReading(0.02),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: NEWTON_METRE,
    compares: false,
    trap: "In the lowest fifth of its range it means little, and it only works the way it turns.",
};

/// A click wrench of unknown state.
pub static CLICK_WRENCH_UNCHECKED: Instrument = Instrument {
    id: "click-wrench-unchecked",
    label: "click wrench, never checked",
    name: "torque wrench",
    kind: Kind::Torque,
    tasks: &[Task::Torque],
    repeat: Spread::OfReading(0.045),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: NEWTON_METRE,
    compares: false,
    trap: "Left wound up or dropped it drifts: have it checked.",
};

/// A dial between wrench and socket.
pub static ANGLE_GAUGE: Instrument = Instrument {
    id: "angle-gauge",
    label: "torque angle gauge",
    name: "angle gauge",
    kind: Kind::Angle,
    tasks: &[Task::TurnAngle],
    repeat: Spread::Always(2.0 * DEGREE),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 2.0 * DEGREE,
    compares: false,
    trap: "The angle counts from snug: slack before that is not part of it.",
};

/// A paint mark and a good look.
pub static ANGLE_BY_EYE: Instrument = Instrument {
    id: "angle-by-eye",
    label: "angle by eye and paint mark",
    name: "eye",
    kind: Kind::Angle,
    tasks: &[Task::TurnAngle],
    repeat: Spread::Always(6.0 * DEGREE),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 5.0 * DEGREE,
    compares: false,
    trap: "The angle counts from snug: mark head and part first.",
};

/// A mechanical gauge on a tee.
pub static MECHANICAL_OIL_GAUGE: Instrument = Instrument {
    id: "mechanical-oil-gauge",
    label: "mechanical oil pressure gauge",
    name: "oil gauge",
    kind: Kind::Pressure,
    tasks: &[Task::Pressure],
    repeat: Spread::Always(2.5 * PSI),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 2.0 * PSI,
    compares: false,
    trap: "With the engine off it must stand at nothing.",
};

/// A sender and a dash gauge.
pub static DASH_OIL_SENDER: Instrument = Instrument {
    id: "dash-oil-sender",
    label: "dash gauge and sender",
    name: "dash gauge",
    kind: Kind::Pressure,
    tasks: &[Task::Pressure],
    repeat: Spread::Always(5.0 * PSI),
    shared_zero: 5.0 * PSI,
    setting_transfer: 0.0,
    graduation: 5.0 * PSI,
    compares: false,
    trap: "Sender, wiring and gauge each add their own: believe a mechanical gauge before you take the engine out.",
};

/// An infrared thermometer aimed at the part.
pub static INFRARED_THERMOMETER: Instrument = Instrument {
    id: "infrared-thermometer",
    label: "infrared thermometer",
    name: "thermometer",
    kind: Kind::Temperature,
    tasks: &[Task::Temperature],
    repeat: Spread::Always(2.0),
    shared_zero: 4.0,
    setting_transfer: 0.0,
    graduation: 0.1,
    compares: false,
    trap: "Shiny alloy reads low: aim at a patch of dull paint or tape.",
};
