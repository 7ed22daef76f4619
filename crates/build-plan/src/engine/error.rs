//! What can be wrong with the description of an engine.

use thiserror::Error;

/// Why a description is not that of an engine. Each names its field, says what
/// was read and what would be right.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum EngineError {
    /// No name.
    #[error("The engine has no name yet: type one, such as the machine it came from.")]
    NameMissing,
    /// A name too long to show anywhere.
    #[error("The name has {read} characters; {at_most} is the most there is room for.")]
    NameTooLong {
        /// Characters in the name.
        read: usize,
        /// The most there may be.
        at_most: usize,
    },
    /// A number of cylinders outside what is known here.
    #[error("{read} cylinders was read; this book is for engines of 1 to {at_most}.")]
    Cylinders {
        /// What was read.
        read: u32,
        /// The most there may be.
        at_most: u8,
    },
    /// One cylinder cannot stand in two banks.
    #[error("A vee engine has at least 2 cylinders, and {read} was read.")]
    TooFewForVee {
        /// What was read.
        read: u8,
    },
    /// A flat engine has its cylinders in pairs.
    #[error("A flat engine has an even number of cylinders, and {read} was read.")]
    OddFlat {
        /// What was read.
        read: u8,
    },
    /// An angle that no two banks have.
    #[error(
        "A bank angle of {degrees}° was read; it is more than 0° and at most 180°, often 60° or 90°."
    )]
    BankAngle {
        /// What was read, degrees.
        degrees: f64,
    },
    /// A number of main bearings that no such crank has.
    #[error(
        "{read} main bearings was read; this engine has {least} to {most}, usually {usual}. Count the caps."
    )]
    Mains {
        /// What was read.
        read: u32,
        /// The least there may be.
        least: u8,
        /// The most there may be.
        most: u8,
        /// What such an engine usually has.
        usual: u8,
    },
    /// Valves that no cylinder has.
    #[error("{read} valves of one kind in a cylinder was read; there are 1 to {at_most}.")]
    Valves {
        /// The field.
        field: &'static str,
        /// What was read.
        read: u8,
        /// The most there may be.
        at_most: u8,
    },
}

impl EngineError {
    /// The field to look at: `name`, `cylinders`, `bank_angle`, `mains`,
    /// `intake_valves` or `exhaust_valves`.
    #[must_use]
    pub const fn field(&self) -> &'static str {
        match self {
            Self::NameMissing | Self::NameTooLong { .. } => "name",
            Self::Cylinders { .. } | Self::TooFewForVee { .. } | Self::OddFlat { .. } => {
                "cylinders"
            }
            Self::BankAngle { .. } => "bank_angle",
            Self::Mains { .. } => "mains",
            Self::Valves { field, .. } => field,
        }
    }
}
