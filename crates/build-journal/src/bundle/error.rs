//! Why a bundle cannot be written or read.

use thiserror::Error;

use crate::file::ImportError;

/// Why a bundle cannot be written or read.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum BundleError {
    /// It stops before its end.
    #[error("The file stops before its end. Ask for it once more.")]
    CutShort,
    /// Its list and its contents do not go together.
    #[error("The file is damaged: its list does not go with what is in it.")]
    Damaged,
    /// Something in it is compressed.
    #[error(
        "“{name}” is compressed in this file. A build is packed without compression: open it on a computer and import the .json and the pictures one by one."
    )]
    Compressed {
        /// The entry.
        name: String,
    },
    /// It is larger than such a file can be.
    #[error("This is more than one file can hold: 4 GB, or 65535 pictures.")]
    TooLarge,
    /// There is no journal in it.
    #[error("There is no build in this file: no entry {wanted}.")]
    NoJournal {
        /// The entry that is looked for.
        wanted: &'static str,
    },
    /// The journal in it cannot be read.
    #[error(transparent)]
    Journal(#[from] ImportError),
}
