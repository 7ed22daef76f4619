//! Why a file is not taken in.

use thiserror::Error;

use super::read::Imported;
use crate::journal::DifferentBuilds;

/// Why a file was not taken in. Nothing is changed by a file that was not.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[non_exhaustive]
pub enum ImportError {
    /// Far larger than any build.
    #[error(
        "The file has {} MB; a build has a few, and more than {} MB is not opened. Is it the right file?",
        megabytes(*.bytes),
        megabytes(*.at_most)
    )]
    TooBig {
        /// Its size.
        bytes: usize,
        /// The most that is opened.
        at_most: usize,
    },
    /// Nothing in it.
    #[error("The file is empty.")]
    Empty,
    /// Bytes that are no text.
    #[error("The file is not text, so it is no exported build.")]
    NotText,
    /// Text that is not JSON.
    #[error("The file is no exported build: {reason}.")]
    NotJson {
        /// What the reader met, and where.
        reason: String,
    },
    /// It stops in the middle.
    #[error(
        "The file stops in the middle, in line {line} after {column} characters: a part of it is missing. {}",
        can_be_saved(rescued.as_deref())
    )]
    CutShort {
        /// The last line.
        line: usize,
        /// How many characters of it are there.
        column: usize,
        /// The facts before the break, when the file said which build it is.
        rescued: Option<Box<Imported>>,
    },
    /// JSON of another program.
    #[error("The file is JSON, but no exported build: {found}.")]
    NotOurs {
        /// What it is instead.
        found: String,
    },
    /// An export by a later version.
    #[error(
        "The file was written by a newer version of the book (version {version} of the file; this one knows {known}). Bring this device up to date to open it. The file is left as it is."
    )]
    Newer {
        /// Its version.
        version: u64,
        /// The version known here.
        known: u32,
    },
    /// An export with something missing or in the wrong place.
    #[error("The file is an exported build with an error in it: {reason}.")]
    Damaged {
        /// What is wrong.
        reason: String,
    },
    /// A copy of another build.
    #[error(transparent)]
    OtherBuild(#[from] DifferentBuilds),
}

const fn megabytes(bytes: usize) -> usize {
    bytes.div_ceil(1_000_000)
}

fn can_be_saved(rescued: Option<&Imported>) -> String {
    match rescued.map(|one| one.journal.len()) {
        None | Some(0) => "Nothing in it can be used: export it once more.".to_owned(),
        Some(count) => {
            format!(
                "{count} facts before that are whole and can be taken in; better export it once more."
            )
        }
    }
}
