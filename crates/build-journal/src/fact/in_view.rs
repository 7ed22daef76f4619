//! What a device had in view when it said something.

use super::body::Body;
use super::fields::Fields;
use super::unreadable::Unreadable;
use super::write::Line;
use crate::id::FactId;

/// What a device had in view when it said something of a step, of a check, of the
/// engine as a whole or of which part goes where. From it a later change is told from a contradiction: who
/// says otherwise and had the earlier word in view has changed his mind; who had
/// not contradicts it, and a person has to say which holds.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct InView {
    /// What had been said of the same thing, and takes second place now. What
    /// those had in view themselves is not named again.
    pub replaces: Vec<FactId>,
    /// That a person decided between those that it replaces. Nothing was done or
    /// looked at anew: what says the same holds, what says otherwise does not count.
    pub settles: bool,
}

impl InView {
    /// Whether facts of this kind say what they had in view.
    #[must_use]
    pub const fn goes_with(body: &Body) -> bool {
        matches!(
            body,
            Body::StepMarked(_)
                | Body::CheckMade(_)
                | Body::EngineDescribed(_)
                | Body::PartsPlaced(_)
        )
    }

    /// `None` when nothing is said of it, as in the first version.
    pub(super) fn read(body: &Body, fields: &Fields) -> Result<Option<Self>, Unreadable> {
        if !Self::goes_with(body) || fields.json("replaces").is_none() {
            return Ok(None);
        }
        Ok(Some(Self {
            replaces: fields.facts("replaces", "a list of ids of facts")?,
            settles: fields.flag("settles", "true or false")?,
        }))
    }

    pub(super) fn write(&self, line: Line) -> Line {
        let line = line.facts("replaces", &self.replaces);
        if self.settles {
            line.json("settles", "true")
        } else {
            line
        }
    }
}
