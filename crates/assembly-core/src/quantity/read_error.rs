//! What can be wrong with a typed quantity, a variant for every mistake.

use thiserror::Error;

use super::{Kind, Typed};

/// Why a text is not a quantity. Each error says what was read and what would
/// be right. [`ReadError::is_unfinished`] tells a text that only needs more
/// typing from one that is wrong.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum ReadError {
    /// Nothing but blanks.
    #[error("nothing is typed yet: type {} such as {}", .kind, like(*.kind))]
    Empty {
        /// What was wanted.
        kind: Kind,
    },
    /// A sign with nothing behind it.
    #[error("“{read}” has no number after the sign: type one such as {}", like(*.kind))]
    LoneSign {
        /// What was read.
        read: String,
        /// What was wanted.
        kind: Kind,
    },
    /// A decimal point with no digits after it.
    #[error("“{read}” has no digits after the decimal point: type them, or leave the point away")]
    OpenPoint {
        /// What was read.
        read: String,
    },
    /// A fraction that stops at its bar, or a whole number with a hyphen after it.
    #[error("“{read}” stops in the middle of a fraction: finish it, as in 2 7/16")]
    OpenFraction {
        /// What was read.
        read: String,
    },
    /// A power of ten with no power.
    #[error("“{read}” has no power of ten after it: finish it, as in 1.2e-5")]
    OpenExponent {
        /// What was read.
        read: String,
    },
    /// Nothing in it is a number.
    #[error("“{read}” is not a number: type {} such as {}", .kind, like(*.kind))]
    NotANumber {
        /// What was read.
        read: String,
        /// What was wanted.
        kind: Kind,
    },
    /// “NaN”, “infinity” and the like.
    #[error("“{read}” can't be measured: type a number such as {}", like(*.kind))]
    NotFinite {
        /// What was read.
        read: String,
        /// What was wanted.
        kind: Kind,
    },
    /// Two decimal points in one number.
    #[error("“{read}” has two decimal points: leave one away")]
    TwoPoints {
        /// What was read.
        read: String,
    },
    /// Points and commas that neither group thousands nor mark decimals.
    #[error(
        "the commas in “{read}” don't fit: they would have to part groups of three digits, as in 1,234.5; type the number with one decimal point and no commas"
    )]
    Separators {
        /// What was read.
        read: String,
        /// More digits could still make it right.
        unfinished: bool,
    },
    /// One comma and three digits: decimals or thousands.
    #[error("“{read}” can be read two ways: {} or {}? Type the one that is meant", .readings.0, .readings.1)]
    Ambiguous {
        /// What was read.
        read: String,
        /// The comma as a decimal point, and the comma between thousands.
        readings: Box<(Typed, Typed)>,
    },
    /// Two numbers where one is meant.
    #[error(
        "“{read}” holds two numbers, {first} and {second}: type one; a fraction is typed as in 2 7/16"
    )]
    TwoNumbers {
        /// What was read.
        read: String,
        /// The first of them.
        first: String,
        /// The second of them.
        second: String,
        /// It may be on the way to a fraction.
        unfinished: bool,
    },
    /// Zero under the bar.
    #[error(
        "“{read}” has zero under the fraction bar: the lower number says into how many parts the whole is cut, as in 7/16"
    )]
    ZeroDenominator {
        /// What was read.
        read: String,
    },
    /// A fraction of a fraction.
    #[error("“{read}” has two fraction bars: type one fraction, as in 7 3/8")]
    FractionOfFraction {
        /// What was read.
        read: String,
    },
    /// A decimal point in a fraction.
    #[error(
        "“{read}” has a decimal point or comma in a fraction: type whole numbers, as in 2 7/16, or a decimal, as in 2.4375"
    )]
    DecimalInFraction {
        /// What was read.
        read: String,
    },
    /// A whole number with a fraction of one or more: `2 9/8`. Nobody means
    /// that; a digit is wrong. (`9/8` alone is taken as it stands.)
    #[error(
        "“{read}” has a fraction that isn't less than one after a whole number: is a digit wrong? As typed it would be {improper}"
    )]
    ImproperAfterWhole {
        /// What was read.
        read: String,
        /// The same value as one fraction.
        improper: String,
        /// More digits below the bar could still make it right.
        unfinished: bool,
    },
    /// More digits than any tool reads.
    #[error("“{read}” has {digits} digits: no more than {most} are taken")]
    TooManyDigits {
        /// What was read.
        read: String,
        /// How many digits it has.
        digits: usize,
        /// How many are allowed.
        most: usize,
    },
    /// A very long text.
    #[error("“{read}” is too long to be one quantity: type at most {most} characters, such as {}", like(*.kind))]
    TooLong {
        /// The start of what was read.
        read: String,
        /// How many characters are allowed.
        most: usize,
        /// What was wanted.
        kind: Kind,
    },
    /// A number so large that it can't be worked with.
    #[error("“{read}” is too large a number: type {} such as {}", .kind, like(*.kind))]
    TooLarge {
        /// What was read.
        read: String,
        /// What was wanted.
        kind: Kind,
    },
    /// A number so small that it can't be told from zero.
    #[error("“{read}” is too small a number to be told from zero: type 0, or {} such as {}", .kind, like(*.kind))]
    TooSmall {
        /// What was read.
        read: String,
        /// What was wanted.
        kind: Kind,
    },
    /// A temperature below absolute zero.
    #[error("“{read}” is colder than absolute zero (−273.15 °C, −459.67 °F): check sign and unit")]
    BelowAbsoluteZero {
        /// What was read.
        read: String,
    },
    /// A count that is not a whole number, or less than none.
    #[error("“{read}” is not a count: type a whole number such as 4")]
    NotACount {
        /// What was read.
        read: String,
    },
    /// A unit that is in no list.
    #[error("“{unit}” is no unit known here{}: {} is typed as in {}", offered(.did_you_mean), .kind, like(*.kind))]
    UnknownUnit {
        /// What was read as the unit.
        unit: String,
        /// What was wanted.
        kind: Kind,
        /// The units it comes nearest to, nearest first; may be empty.
        did_you_mean: Vec<&'static str>,
        /// It may be on the way to a unit.
        unfinished: bool,
    },
    /// A unit that measures something else.
    #[error("“{unit}” is {}, and {} is wanted here, as in {}", .is, .kind, like(*.kind))]
    OtherKind {
        /// What was read as the unit.
        unit: String,
        /// What it is a unit of.
        is: Kind,
        /// What was wanted.
        kind: Kind,
        /// It may be on the way to a unit of the right kind.
        unfinished: bool,
    },
    /// A word that stands for two units.
    #[error("“{unit}” can mean {} or {}: type the one that is meant", .could_be.0, .could_be.1)]
    AmbiguousUnit {
        /// What was read as the unit.
        unit: String,
        /// The two units.
        could_be: (&'static str, &'static str),
        /// It may be on the way to a clear unit.
        unfinished: bool,
    },
    /// Something stands behind the unit.
    #[error("“{rest}” stands after the unit {unit}: type one number with one unit, as in {}", like(*.kind))]
    AfterUnit {
        /// The unit that was read.
        unit: String,
        /// What stands behind it.
        rest: String,
        /// What was wanted.
        kind: Kind,
    },
}

impl ReadError {
    /// Whether more typing at the end could make it right: a live form waits
    /// with its complaint until the field is left.
    ///
    /// ```
    /// use assembly_core::quantity::{read, unit, Kind};
    /// let inch = unit("in").unwrap();
    /// let unfinished = |text| read(text, Kind::Length, inch).unwrap_err().is_unfinished();
    /// assert!(unfinished("-") && unfinished("2.") && unfinished("2 7/") && unfinished("2.1 th"));
    /// assert!(!unfinished("2.44.8") && !unfinished("abc") && !unfinished("7/0"));
    /// ```
    #[must_use]
    pub const fn is_unfinished(&self) -> bool {
        match self {
            Self::Empty { .. }
            | Self::LoneSign { .. }
            | Self::OpenPoint { .. }
            | Self::OpenFraction { .. }
            | Self::OpenExponent { .. } => true,
            Self::Separators { unfinished, .. }
            | Self::TwoNumbers { unfinished, .. }
            | Self::ImproperAfterWhole { unfinished, .. }
            | Self::UnknownUnit { unfinished, .. }
            | Self::OtherKind { unfinished, .. }
            | Self::AmbiguousUnit { unfinished, .. } => *unfinished,
            _ => false,
        }
    }
}

/// A typical text of a kind.
const fn like(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "2.4483 in, 62.20 mm or 2 7/16 in",
        Kind::Area => "0.85 in² or 5.5 cm²",
        Kind::Volume => "64.2 cc",
        Kind::Mass => "612.5 g",
        Kind::Temperature => "68 °F or 20 °C",
        Kind::TemperatureDifference => "80 °C or 144 °F",
        Kind::Torque => "65 ft-lb or 88 N·m",
        Kind::Pressure => "45 psi or 3.1 bar",
        Kind::Force => "300 lbf or 1330 N",
        Kind::Angle => "90°",
        Kind::RotationalSpeed => "2500 rpm",
        Kind::Stiffness => "300 lbf/in or 52 N/mm",
        Kind::DynamicViscosity => "12 mPa·s",
        Kind::KinematicViscosity => "11 cSt",
        Kind::Density => "0.87 g/cm³",
        Kind::Flow => "30 L/min",
        Kind::Expansion => "11.8 ppm/K",
        Kind::Ratio => "0.85 or 85 %",
        Kind::Count => "4",
    }
}

fn offered(units: &[&'static str]) -> String {
    if units.is_empty() {
        return String::new();
    }
    format!(" (is {} meant?)", units.join(" or "))
}
