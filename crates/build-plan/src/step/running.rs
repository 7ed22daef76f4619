//! First start, running in, closing the book.

use super::bottom_end::DAMPER_ON;
use super::shape::{PLAIN, Phase, Sitting, Step, after, better_after};
use super::top_end::{BOLT_ONS, COVERS_ON, FLYWHEEL_ON, IGNITION_SET, INTAKE_ON, PRIME};
use crate::caution::{engine, person};
use crate::check::{
    BOOK_CLOSED, FIRED, FLUIDS_IN, INSTALLED, OIL_AT_ROCKERS, OIL_CHANGED, PRE_FIRE_LIST, PRIMED,
    RUN_IN,
};
use crate::measure::{
    BELLHOUSING_RUN_OUT, COMPRESSION_PRESSURE, CONVERTER_GAP, CRANK_END_PLAY, INTAKE_VACUUM,
    LEAK_DOWN, OIL_PRESSURE, VALVE_LASH,
};
use crate::proof::Proof;
use crate::supply::FIRST_OIL;

const RUNNING: Step = Step {
    phase: Phase::Running,
    ..PLAIN
};

/// In the machine.
pub static INSTALL: Step = Step {
    id: "install",
    label: "Install it; converter or clutch home in steps",
    needs: &[
        after(&FLYWHEEL_ON),
        after(&BOLT_ONS),
        after(&COVERS_ON),
        after(&INTAKE_ON),
        after(&DAMPER_ON),
    ],
    proves: &[
        Proof::Check(&INSTALLED),
        Proof::Measure(&CONVERTER_GAP),
        Proof::Measure(&BELLHOUSING_RUN_OUT),
        Proof::Measure(&CRANK_END_PLAY),
    ],
    tools: &["hoist", "helper"],
    minutes: (240, 600),
    cautions: &[
        person("Never under a hanging engine, no hand between engine and housing."),
        engine(
            "Never draw the housing up with its bolts: a converter that is not home wrecks pump and thrust.",
        ),
    ],
    ..RUNNING
};

/// Oil and coolant.
pub static FLUIDS: Step = Step {
    id: "fluids",
    label: "Oil for running in, coolant filled and bled",
    needs: &[after(&INSTALL)],
    in_hand: &[&FIRST_OIL],
    proves: &[Proof::Check(&FLUIDS_IN)],
    minutes: (60, 120),
    cautions: &[
        engine("Air behind the thermostat boils unseen."),
        person("Coolant is poison to people and animals: wipe up what is spilt."),
    ],
    ..RUNNING
};

/// Priming once more.
pub static PRIME_AGAIN: Step = Step {
    id: "prime-again",
    label: "Prime again after two weeks, or when pump, filter, pan or distributor was disturbed",
    optional: true,
    needs: &[after(&PRIME), after(&FLUIDS)],
    proves: &[Proof::Check(&PRIMED), Proof::Check(&OIL_AT_ROCKERS)],
    tools: &["drill or pressure pot", "mechanical oil gauge"],
    minutes: (25, 40),
    cautions: &[engine(
        "Set the timing again when the distributor came out for it.",
    )],
    ..RUNNING
};

/// The list before the key.
pub static PRE_FIRE: Step = Step {
    id: "pre-fire",
    label: "Go through the list before the key is turned",
    needs: &[
        after(&INSTALL),
        after(&FLUIDS),
        after(&IGNITION_SET),
        after(&PRIME),
        better_after(&PRIME_AGAIN),
    ],
    proves: &[Proof::Check(&PRE_FIRE_LIST)],
    tools: &["the list", "extinguisher", "helper"],
    minutes: (25, 40),
    cautions: &[person(
        "Fuel leaks burn, exhaust gas kills: extinguisher in reach, doors open, machine chocked.",
    )],
    ..RUNNING
};

/// First start.
pub static FIRST_FIRE: Step = Step {
    id: "first-fire",
    label: "First start",
    needs: &[after(&PRE_FIRE)],
    proves: &[Proof::Check(&FIRED), Proof::Measure(&OIL_PRESSURE)],
    tools: &["gauges", "light", "clock"],
    minutes: (10, 15),
    sitting: Sitting::InOneGo("A flat camshaft goes from first start straight into its run-in."),
    cautions: &[
        person("Hands, hair and sleeves away from fan and belts. A helper at the switch."),
        engine("No oil pressure within seconds: off. Stopping is always right."),
    ],
    ..RUNNING
};

/// Run-in.
pub static RUN_IN_FIRST: Step = Step {
    id: "run-in-first",
    label: "First run-in: flat lifters at varied speed, others warm and look for leaks",
    needs: &[after(&FIRST_FIRE)],
    proves: &[
        Proof::Check(&RUN_IN),
        Proof::Measure(&OIL_PRESSURE),
        Proof::Measure(&INTAKE_VACUUM),
    ],
    tools: &["clock", "thermometer", "gauges"],
    minutes: (30, 60),
    sitting: Sitting::InOneGo(
        "For a flat camshaft its first minutes decide; resume them if it has to stop.",
    ),
    cautions: &[
        engine("Do not idle a new flat camshaft. Stop when it overheats, and resume later."),
        person("Hot surfaces, moving belts, exhaust gas: doors open."),
    ],
    ..RUNNING
};

/// After the run-in.
pub static AFTER_RUN_IN: Step = Step {
    id: "after-run-in",
    label: "Cool; oil and filter, cut the filter; retorque if its maker says so; lash",
    needs: &[after(&RUN_IN_FIRST)],
    proves: &[Proof::Check(&OIL_CHANGED), Proof::Measure(&VALVE_LASH)],
    tools: &["filter cutter", "feeler blades", "torque wrench"],
    minutes: (120, 180),
    cautions: &[
        person("Hot oil burns."),
        engine("Alloy heads are retorqued cold. One valve's lash that opened up is a lobe going."),
    ],
    ..RUNNING
};

/// Rings seated.
pub static SEAT_RINGS: Step = Step {
    id: "seat-rings",
    label: "Seat the rings: pulls and coasts at part throttle, no long idle or cruise",
    needs: &[after(&AFTER_RUN_IN)],
    proves: &[Proof::Check(&RUN_IN)],
    minutes: (60, 120),
    cautions: &[person(
        "Brakes, tyres and steering first. Where the road and the law allow.",
    )],
    ..RUNNING
};

/// First baseline.
pub static BASELINE: Step = Step {
    id: "baseline",
    label: "Compression and leak-down, warm: the baseline",
    needs: &[after(&SEAT_RINGS)],
    proves: &[
        Proof::Measure(&COMPRESSION_PRESSURE),
        Proof::Measure(&LEAK_DOWN),
    ],
    tools: &["compression gauge", "leak-down tester"],
    minutes: (45, 75),
    cautions: &[person(
        "Air in a cylinder can turn the crank with a wrench on it: stand clear.",
    )],
    ..RUNNING
};

/// Look over.
pub static LOOK_OVER: Step = Step {
    id: "look-over",
    label: "After 100 miles: leaks, manifold bolts, lash",
    needs: &[after(&BASELINE)],
    proves: &[Proof::Measure(&VALVE_LASH)],
    minutes: (45, 75),
    ..RUNNING
};

/// First service.
pub static FIRST_SERVICE: Step = Step {
    id: "first-service",
    label: "After 500 miles: oil, cut the filter, lash, hot pressure against the baseline",
    needs: &[after(&LOOK_OVER)],
    proves: &[
        Proof::Check(&OIL_CHANGED),
        Proof::Measure(&OIL_PRESSURE),
        Proof::Measure(&VALVE_LASH),
    ],
    tools: &["filter cutter", "feeler blades", "mechanical oil gauge"],
    minutes: (75, 105),
    cautions: &[person("Hot oil burns.")],
    ..RUNNING
};

/// The book closed.
pub static CLOSE_BOOK: Step = Step {
    id: "close-book",
    label: "Close the book: print, export, what to do differently next time",
    needs: &[better_after(&FIRST_SERVICE), after(&FIRST_FIRE)],
    proves: &[Proof::Check(&BOOK_CLOSED)],
    minutes: (25, 40),
    ..RUNNING
};
