//! The photos of a build, as they were written down.

use crate::fact::Photo;
use crate::id::FactId;

/// A photo that was taken.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct KeptPhoto {
    /// The fact.
    pub fact: FactId,
    /// What was written down of it.
    pub photo: Photo,
}
