//! Tools for sizes and lengths.

use super::THOU;
use crate::quantity::Kind;
use crate::tool::{Instrument, Spread, Task};

/// An outside micrometer that reads tenths, set on a standard today.
pub static OUTSIDE_MICROMETER_PROVED: Instrument = Instrument {
    id: "outside-micrometer-proved",
    label: "outside micrometer, reads tenths, zero proved on a standard today",
    name: "micrometer",
    kind: Kind::Length,
    tasks: &[Task::OutsideSize],
    repeat: Spread::Always(0.1 * THOU),
    shared_zero: 0.05 * THOU,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: false,
    trap: "Feel decides: turn the ratchet or friction thimble the same way every time, and never clamp.",
};

/// An outside micrometer that reads tenths, zero taken on trust.
pub static OUTSIDE_MICROMETER_TENTHS: Instrument = Instrument {
    id: "outside-micrometer-tenths",
    label: "outside micrometer, reads tenths, zero not proved",
    name: "micrometer",
    kind: Kind::Length,
    tasks: &[Task::OutsideSize],
    repeat: Spread::Always(0.2 * THOU),
    shared_zero: 0.2 * THOU,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: false,
    trap: "Its zero may be off by two to four tenths, the same in every reading: prove it on a standard first.",
};

/// An outside micrometer without a vernier for tenths.
pub static OUTSIDE_MICROMETER_THOU: Instrument = Instrument {
    id: "outside-micrometer-thou",
    label: "outside micrometer, reads thous only",
    name: "micrometer",
    kind: Kind::Length,
    tasks: &[Task::OutsideSize],
    repeat: Spread::Always(0.35 * THOU),
    shared_zero: 0.3 * THOU,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "It cannot judge a running clearance alone.",
};

/// A caliper on an outside size.
pub static CALIPER_OUTSIDE: Instrument = Instrument {
    id: "caliper-outside",
    label: "caliper, outside jaws",
    name: "caliper",
    kind: Kind::Length,
    tasks: &[Task::OutsideSize],
    repeat: Spread::Always(1.0 * THOU),
    shared_zero: 0.5 * THOU,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "Jaws that spring apart read large: it is for sanity checks, not for fits.",
};

/// A dial bore gauge with a tenth a graduation.
pub static BORE_GAUGE_TENTHS: Instrument = Instrument {
    id: "bore-gauge-tenths",
    label: "dial bore gauge, reads tenths",
    name: "bore gauge",
    kind: Kind::Length,
    tasks: &[Task::InsideSize],
    repeat: Spread::Always(0.15 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.1 * THOU,
    graduation: 0.1 * THOU,
    compares: true,
    trap: "On most the needle goes clockwise when the bore is smaller: look which way yours goes.",
};

/// A dial bore gauge with half a thou a graduation.
pub static BORE_GAUGE_HALF_THOU: Instrument = Instrument {
    id: "bore-gauge-half-thou",
    label: "dial bore gauge, reads half thous",
    name: "bore gauge",
    kind: Kind::Length,
    tasks: &[Task::InsideSize],
    repeat: Spread::Always(0.22 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.15 * THOU,
    graduation: 0.5 * THOU,
    compares: true,
    trap: "On most the needle goes clockwise when the bore is smaller: look which way yours goes.",
};

/// A telescoping gauge in a practised hand.
pub static TELESCOPING_GAUGE_PRACTISED: Instrument = Instrument {
    id: "telescoping-gauge-practised",
    label: "telescoping gauge read on a micrometer, practised hand",
    name: "telescoping gauge",
    kind: Kind::Length,
    tasks: &[Task::InsideSize],
    repeat: Spread::Always(0.3 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: true,
    trap: "Tilted it reads large, squeezed in the micrometer it reads small: take it three times.",
};

/// A telescoping gauge in a hand that is new to it.
pub static TELESCOPING_GAUGE_NOVICE: Instrument = Instrument {
    id: "telescoping-gauge-novice",
    label: "telescoping gauge read on a micrometer, first tries",
    name: "telescoping gauge",
    kind: Kind::Length,
    tasks: &[Task::InsideSize],
    repeat: Spread::Always(0.6 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: true,
    trap: "Tilted it reads large, squeezed in the micrometer it reads small: take it three times.",
};

/// A split-ball gauge for guides and other small holes.
pub static SMALL_HOLE_GAUGE: Instrument = Instrument {
    id: "small-hole-gauge",
    label: "small-hole gauge read on a micrometer",
    name: "small-hole gauge",
    kind: Kind::Length,
    tasks: &[Task::InsideSize],
    repeat: Spread::Always(0.3 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: true,
    trap: "Too much drag in the hole springs the halves: it reads large.",
};

/// A caliper in a bore.
pub static CALIPER_INSIDE: Instrument = Instrument {
    id: "caliper-inside",
    label: "caliper, inside jaws",
    name: "caliper",
    kind: Kind::Length,
    tasks: &[Task::InsideSize],
    repeat: Spread::Always(1.75 * THOU),
    shared_zero: 0.5 * THOU,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "Flat inside jaws read small in a round bore: it is for sanity checks, not for fits.",
};

/// A depth micrometer, or a bridge with a dial.
pub static DEPTH_MICROMETER: Instrument = Instrument {
    id: "depth-micrometer",
    label: "depth micrometer, or deck bridge and dial",
    name: "depth micrometer",
    kind: Kind::Length,
    tasks: &[Task::Depth],
    repeat: Spread::Always(0.5 * THOU),
    shared_zero: 0.2 * THOU,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: false,
    trap: "Off the pin axis a rocking piston adds one to four thou: measure over the pin, or on both sides and take the mean.",
};

/// A caliper as a depth gauge.
pub static CALIPER_DEPTH: Instrument = Instrument {
    id: "caliper-depth",
    label: "caliper, depth rod",
    name: "caliper",
    kind: Kind::Length,
    tasks: &[Task::Depth],
    repeat: Spread::Always(1.5 * THOU),
    shared_zero: 0.5 * THOU,
    setting_transfer: 0.0,
    graduation: 1.0 * THOU,
    compares: false,
    trap: "The rod tilts with the beam: it reads deep.",
};

/// A dial gauge over both ends of a bolt.
pub static STRETCH_GAUGE: Instrument = Instrument {
    id: "stretch-gauge",
    label: "bolt stretch gauge",
    name: "stretch gauge",
    kind: Kind::Length,
    tasks: &[Task::Stretch],
    repeat: Spread::Always(0.3 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: false,
    trap: "Zero it on each bolt, relaxed.",
};

/// A micrometer over the ends of a bolt.
pub static MICROMETER_OVER_BOLT: Instrument = Instrument {
    id: "micrometer-over-bolt",
    label: "micrometer over the bolt",
    name: "micrometer",
    kind: Kind::Length,
    tasks: &[Task::Stretch],
    repeat: Spread::Always(0.6 * THOU),
    shared_zero: 0.0,
    setting_transfer: 0.0,
    graduation: 0.1 * THOU,
    compares: false,
    trap: "Find the same spots of both ends again: write on the bolt where you held it.",
};
