//! How the cylinders of an engine lie.

use std::fmt;

use uom::si::f64::Angle;

/// How the cylinders lie around the crank.
#[derive(Clone, Copy, PartialEq, Debug)]
#[non_exhaustive]
pub enum Layout {
    /// All in one row.
    Inline,
    /// Two banks at an angle, two rods side by side on each crankpin.
    Vee {
        /// The angle between the banks.
        bank_angle: Angle,
    },
    /// Two banks lying opposite each other, each rod on a crankpin of its own.
    Flat,
}

impl Layout {
    /// The layout's name at the bench.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Inline => "inline",
            Self::Vee { .. } => "vee",
            Self::Flat => "flat",
        }
    }

    /// Number of rows of cylinders.
    #[must_use]
    pub const fn banks(self) -> u8 {
        match self {
            Self::Inline => 1,
            Self::Vee { .. } | Self::Flat => 2,
        }
    }

    /// The number of main bearings such an engine usually has.
    ///
    /// - Inline: one between every two crankpins and one at each end, so one
    ///   more than the cylinders.
    /// - Vee: the same for crankpins that two rods share, so one more than half
    ///   the cylinders.
    /// - Flat: the two crankpins of a pair of cylinders lie between the same two
    ///   mains, so again one more than half the cylinders. Some flat engines
    ///   have a main between every two crankpins: count them.
    ///
    /// Common practice; the crank on the bench decides.
    #[must_use]
    pub const fn usual_mains(self, cylinders: u8) -> u8 {
        match self {
            Self::Inline => cylinders.saturating_add(1),
            Self::Vee { .. } | Self::Flat => cylinders.div_ceil(2).saturating_add(1),
        }
    }

    /// The number of crankpins.
    #[must_use]
    pub const fn crankpins(self, cylinders: u8) -> u8 {
        match self {
            Self::Inline | Self::Flat => cylinders,
            Self::Vee { .. } => cylinders.div_ceil(2),
        }
    }
}

impl fmt::Display for Layout {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}
