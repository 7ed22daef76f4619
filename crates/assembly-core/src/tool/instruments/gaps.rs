//! Tools for gaps, movements and faces.

use super::THOU;
use crate::quantity::Kind;
use crate::tool::{Instrument, Spread, Task};

/// A strip of soft plastic that the cap crushes.
pub static PLASTIC_GAUGE_STRIP: Instrument = Instrument {
    id: "plastic-gauge-strip",
    label: "plastic gauge strip",
    name: "plastic strip",
    kind: Kind::Length,
    tasks: &[Task::RunningClearance],
    repeat: Spread::Always(0.3 * THOU),
    shared_zero: 0.2 * THOU,
    setting_transfer: 0.0,
    graduation: 0.5 * THOU,
    compares: false,
    trap: "It shows one spot, in bands; an old or cold strip, oil, or the crank's weight make it read tight.",
};

/// Feeler blades up to about 20 thou.
pub static FEELER_BLADES: Instrument = Instrument {
    id: "feeler-blades",
    label: "feeler blades",
    name: "feeler",
    kind: Kind::Length,
    tasks: &[Task::Gap],
    repeat: Spread::Always(0.5 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "The set goes in whole thous, every blade of a stack adds its own error, and a worn blade reads large.",
};

/// A plunger indicator on a base.
pub static DIAL_INDICATOR: Instrument = Instrument {
    id: "dial-indicator",
    label: "dial indicator, a thou a graduation",
    name: "dial indicator",
    kind: Kind::Length,
    tasks: &[Task::Movement, Task::Depth],
    repeat: Spread::Always(0.5 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "A stem that leans reads large, and a base that creeps reads anything: go back to zero at the end.",
};

/// A lever indicator.
pub static TEST_INDICATOR: Instrument = Instrument {
    id: "test-indicator",
    label: "test indicator, half a thou a graduation",
    name: "test indicator",
    kind: Kind::Length,
    tasks: &[Task::Movement],
    repeat: Spread::Always(0.2 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.5 * THOU,
    compares: false,
    trap: "A lever that stands up from the face reads large: keep it nearly parallel to the face.",
};

/// A straightedge with feeler blades.
pub static STRAIGHTEDGE_AND_FEELER: Instrument = Instrument {
    id: "straightedge-and-feeler",
    label: "straightedge and feeler",
    name: "straightedge",
    kind: Kind::Length,
    tasks: &[Task::Flatness],
    repeat: Spread::Always(0.7 * THOU),
    shared_zero: 0.5 * THOU,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "A workshop edge may itself be out by a thou in a foot: turn it end for end and compare.",
};

/// Modelling clay squeezed in place.
pub static CLAY_AND_CALIPER: Instrument = Instrument {
    id: "clay-and-caliper",
    label: "clay, sectioned and measured with a caliper",
    name: "clay",
    kind: Kind::Length,
    tasks: &[Task::SqueezedGap],
    repeat: Spread::Always(4.0 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "Clay springs back and drags on dry metal: oil the metal and cut with a razor.",
};
