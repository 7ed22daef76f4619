//! The measures of the oil pump and its drive.

use super::bases::{FIT, SIZE, TIGHT_IS_DANGEROUS};
use super::per::Per;
use super::shape::{Found, Measure, Spots};
use super::tripwire::Tripwire;
use crate::engine::{Feature, When};
use crate::place::Station;

/// The room above the pump's gears.
pub static PUMP_END_CLEARANCE: Measure = Measure {
    id: "pump-end-clearance",
    label: "pump end clearance",
    how: [
        "Gears in, straightedge over the body.",
        "Feeler blade between gears and straightedge.",
        "Add the gasket's thickness when the cover has one.",
    ],
    tripwire: Some(Tripwire::thou(
        1.5,
        3.0,
        "1.5 to 3 thou; gasketed covers more",
    )),
    too_little: "The gears seize and score.",
    too_much: "Weak pressure at idle, slow to prime.",
    ..TIGHT_IS_DANGEROUS
};

/// The room between the pump's gears and its body.
pub static PUMP_GEAR_TO_BODY: Measure = Measure {
    id: "pump-gear-to-body",
    label: "pump gear to body",
    how: [
        "Feeler blade between gear teeth and body.",
        "At several teeth, gear pushed away from the blade.",
        "The least counts for touching, the largest for leaking.",
    ],
    tripwire: Some(Tripwire::thou(2.0, 5.0, "2 to 5 thou").from("TM 5-6115-400-35")),
    too_little: "The gears score the body.",
    too_much: "Weak pressure.",
    ..TIGHT_IS_DANGEROUS
};

/// The room at the tips of a pump's rotors.
pub static PUMP_TIP_CLEARANCE: Measure = Measure {
    id: "pump-tip-clearance",
    label: "pump rotor tip clearance",
    how: [
        "Rotor pumps only: lobes point to point.",
        "Feeler blade between the two points.",
        "At every lobe.",
    ],
    tripwire: Some(Tripwire::at_most(7.0, "at most 7 thou").from("TM 10-3930-664-24")),
    too_much: "Weak pressure.",
    ..FIT
};

/// How deep the gears have worn into the pump's cover.
pub static PUMP_COVER_WEAR: Measure = Measure {
    id: "pump-cover-wear",
    label: "pump cover wear",
    how: [
        "Straightedge over the cover's inside.",
        "Feeler blade where the gears ran.",
        "A nail that catches is already a thou.",
    ],
    tripwire: Some(Tripwire::at_most(1.0, "at most a thou")),
    too_much: "Weak pressure at idle.",
    ..FIT
};

/// How far the pickup's foot is above the pan's floor.
pub static PICKUP_TO_PAN: Measure = Measure {
    id: "pickup-to-pan",
    label: "pickup to pan",
    when: When::with(&[Feature::Pan]),
    found: Found::WorkedOut {
        calculation: "pickup-to-pan",
        from: &[],
        or_read_by: &["pickup-to-pan"],
    },
    spots: Spots::at(Per::Engine, &[Station::Front, Station::Rear]),
    how: [
        "Pump torqued on its block. Clay on the foot, oil on the metal.",
        "Pan on with the real gasket and tray and some bolts, and off again.",
        "Slice the clay and measure at both ends of the foot.",
    ],
    tripwire: Some(Tripwire::thou(
        250.0,
        500.0,
        "1/4 to 1/2 in; the pump's sheet comes first",
    )),
    too_little: "It starves as the engine turns faster.",
    too_much: "It sucks air under braking.",
    cautions: &["Clay crumbs: clean again before the pan goes on for good."],
    ..TIGHT_IS_DANGEROUS_SIZE
};

const TIGHT_IS_DANGEROUS_SIZE: Measure = Measure {
    dangerous: assembly_core::measure::DangerousSide::TooLittle,
    ..SIZE
};

/// How far the pump's drive rod can move up and down.
pub static PUMP_DRIVE_FLOAT: Measure = Measure {
    id: "pump-drive-float",
    label: "pump drive float",
    when: When::with(&[Feature::PumpDriveShaft]),
    found: Found::WorkedOut {
        calculation: "pump-drive-float",
        from: &[],
        or_read_by: &["pump-drive-float"],
    },
    how: [
        "Distributor or drive clamped down on its gasket.",
        "Feel or read how far the rod moves up and down.",
        "More than nothing in every stack of gaskets; spin the pump by its drive afterwards.",
    ],
    too_little: "The pump is driven down: gears wear and bind.",
    too_much: "The tang slips out.",
    cautions: &["An intake that was milled brings the distributor down: measure again."],
    ..TIGHT_IS_DANGEROUS_SIZE
};

/// How far the distributor's gear can move up and down.
pub static DISTRIBUTOR_FLOAT: Measure = Measure {
    id: "distributor-float",
    label: "distributor gear float",
    when: When::with(&[Feature::Distributor]),
    found: Found::WorkedOut {
        calculation: "distributor-depth",
        from: &[],
        or_read_by: &["distributor-depth"],
    },
    how: [
        "A washer of known thickness under the gear, pedestal in without its packing.",
        "Feeler blade at the flange; washer less gap is the float.",
        "Packing makes up what is missing. Clamp it as it will be clamped.",
    ],
    tripwire: Some(Tripwire::thou(
        3.0,
        7.0,
        "3 to 7 thou of one type; others 24 to 35",
    )),
    too_little: "Gear and thrust burn.",
    too_much: "The spark scatters.",
    ..TIGHT_IS_DANGEROUS
};
