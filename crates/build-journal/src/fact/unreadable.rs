//! Why a text is no fact, or a fact not one that can be used.

use thiserror::Error;

/// Why a text could not be read as a fact. It is kept all the same.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[non_exhaustive]
pub enum Unreadable {
    /// Not JSON, or not the whole of it.
    #[error("It is not whole JSON: {reason}.")]
    NotJson {
        /// What the JSON reader said, with line and column.
        reason: String,
    },
    /// JSON, but nothing with named fields.
    #[error("It is JSON, but no set of named fields.")]
    NoFields,
    /// A field that every such fact has is not there.
    #[error("The field “{field}” is missing; it should hold {wanted}.")]
    Missing {
        /// The field.
        field: &'static str,
        /// What should be in it.
        wanted: &'static str,
    },
    /// A field holds something else than it should.
    #[error("The field “{field}” holds {read}; it should hold {wanted}.")]
    Wrong {
        /// The field.
        field: &'static str,
        /// What should be in it.
        wanted: &'static str,
        /// The start of what was read.
        read: String,
    },
}
