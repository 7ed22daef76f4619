//! What measures of a kind have in common. A measure's item names what is its
//! own and takes the rest from here.

use assembly_core::describe::UsualUnits;
use assembly_core::measure::DangerousSide;
use assembly_core::quantity::Kind;

use super::per::Per;
use super::shape::{Found, Measure, Spots};
use crate::engine::ALWAYS;

const NOTHING: Measure = Measure {
    id: "",
    label: "",
    kind: Kind::Length,
    units: UsualUnits::of("in", "mm"),
    when: ALWAYS,
    found: Found::Read,
    dangerous: DangerousSide::Neither,
    spots: Spots::each(Per::Engine),
    how: ["", "", ""],
    tripwire: None,
    too_little: "",
    too_much: "",
    cautions: &[],
};

/// A size, in inches or millimetres.
pub(super) const SIZE: Measure = NOTHING;

/// A clearance or another small difference, in thou or micrometres.
pub(super) const FIT: Measure = Measure {
    units: UsualUnits::of("thou", "µm"),
    ..NOTHING
};

/// A clearance in which metal touches when there is too little of it.
pub(super) const TIGHT_IS_DANGEROUS: Measure = Measure {
    dangerous: DangerousSide::TooLittle,
    ..FIT
};

/// A gap that is set with blades, in inches or millimetres, and is dangerous
/// when it is too small.
pub(super) const GAP: Measure = Measure {
    dangerous: DangerousSide::TooLittle,
    ..NOTHING
};

/// A force.
pub(super) const FORCE: Measure = Measure {
    kind: Kind::Force,
    units: UsualUnits::of("lbf", "N"),
    ..NOTHING
};

/// A pressure.
pub(super) const PRESSURE: Measure = Measure {
    kind: Kind::Pressure,
    units: UsualUnits::of("psi", "bar"),
    ..NOTHING
};

/// An angle of crank or camshaft.
pub(super) const ANGLE: Measure = Measure {
    kind: Kind::Angle,
    units: UsualUnits::of("°", "°"),
    ..NOTHING
};

/// A part of a whole.
pub(super) const SHARE: Measure = Measure {
    kind: Kind::Ratio,
    units: UsualUnits::of("%", "%"),
    ..NOTHING
};
