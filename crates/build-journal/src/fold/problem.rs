//! What could not be made sense of.

use crate::id::FactId;

/// A fact that could not be used, and why. It is still kept and exported.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Problem {
    /// The fact.
    pub fact: FactId,
    /// A sentence for the person.
    pub text: String,
}

impl Problem {
    pub(super) fn new(fact: FactId, text: impl Into<String>) -> Self {
        Self {
            fact,
            text: text.into(),
        }
    }
}
