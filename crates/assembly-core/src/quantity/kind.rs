//! The kinds of quantity that are measured or typed while an engine is built.

use std::fmt;

/// What a number is a number of. Each kind has one SI unit in which all
/// arithmetic is done; [`Kind::si_symbol`] names it.
#[derive(Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Debug)]
#[non_exhaustive]
pub enum Kind {
    /// A size, a gap, a length. Metres.
    Length,
    /// An area. Square metres.
    Area,
    /// A volume. Cubic metres.
    Volume,
    /// A mass. Kilograms.
    Mass,
    /// A temperature on a scale. Kelvin.
    Temperature,
    /// A difference of temperatures. Kelvin.
    TemperatureDifference,
    /// A tightening torque. Newton metres.
    Torque,
    /// A pressure or a stress. Pascals.
    Pressure,
    /// A force. Newtons.
    Force,
    /// An angle. Radians.
    Angle,
    /// A speed of rotation. Radians a second.
    RotationalSpeed,
    /// A spring rate or joint stiffness. Newtons a metre.
    Stiffness,
    /// A dynamic viscosity. Pascal seconds.
    DynamicViscosity,
    /// A kinematic viscosity. Square metres a second.
    KinematicViscosity,
    /// A density. Kilograms a cubic metre.
    Density,
    /// A flow. Cubic metres a second.
    Flow,
    /// A coefficient of thermal expansion. One a kelvin.
    Expansion,
    /// A plain number: a ratio, a share, a factor.
    Ratio,
    /// A count of things.
    Count,
}

impl Kind {
    /// The kind's name in a sentence: "a length", "a torque".
    #[must_use]
    pub const fn with_article(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Volume => "a volume",
            Self::Mass => "a mass",
            Self::Temperature => "a temperature",
            Self::TemperatureDifference => "a temperature difference",
            Self::Torque => "a torque",
            Self::Pressure => "a pressure",
            Self::Force => "a force",
            Self::Angle => "an angle",
            Self::RotationalSpeed => "a speed of rotation",
            Self::Stiffness => "a spring rate",
            Self::DynamicViscosity => "a dynamic viscosity",
            Self::KinematicViscosity => "a kinematic viscosity",
            Self::Density => "a density",
            Self::Flow => "a flow",
            Self::Expansion => "an expansion coefficient",
            Self::Ratio => "a plain number",
            Self::Count => "a count",
        }
    }

    /// The symbol of the SI unit that arithmetic uses; empty for plain numbers.
    #[must_use]
    pub const fn si_symbol(self) -> &'static str {
        match self {
            Self::Length => "m",
            Self::Area => "m²",
            Self::Volume => "m³",
            Self::Mass => "kg",
            Self::Temperature | Self::TemperatureDifference => "K",
            Self::Torque => "N·m",
            Self::Pressure => "Pa",
            Self::Force => "N",
            Self::Angle => "rad",
            Self::RotationalSpeed => "rad/s",
            Self::Stiffness => "N/m",
            Self::DynamicViscosity => "Pa·s",
            Self::KinematicViscosity => "m²/s",
            Self::Density => "kg/m³",
            Self::Flow => "m³/s",
            Self::Expansion => "1/K",
            Self::Ratio | Self::Count => "",
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.with_article())
    }
}
