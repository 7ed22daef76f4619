//! What can go wrong with a device's storage.

use thiserror::Error;

/// Why something was not read or written.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[non_exhaustive]
pub enum StorageError {
    /// No room.
    #[error(
        "The storage of this device is full. Export the build, then make room: remove other sites' data, or builds that are exported."
    )]
    Full,
    /// The browser does not let the page keep anything.
    #[error(
        "This browser does not let the page keep anything, as in a private window. Export before you close it."
    )]
    Blocked,
    /// The connection to the storage broke off; opening it again may help.
    #[error("The connection to the storage of this device broke off.")]
    Gone,
    /// Something else.
    #[error("The storage of this device reports: {reason}.")]
    Failed {
        /// What it said.
        reason: String,
    },
}
