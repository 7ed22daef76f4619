//! Parts that lie on the bench to choose from, and which part goes where.

use super::body::Spot;
use super::words::words;
use crate::id::{PartId, SettingId, ToolId};

words! {
    /// Where a half-shell fits.
    BenchSide {
        /// In the block or rod only.
        Upper = "upper";
        /// In the cap only.
        Lower = "lower";
        /// On either side: both halves are drilled alike.
        Either = "either";
    }
}

/// A part that can be chosen. Written down again it takes its own place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PartOnBench {
    /// Its id.
    pub part: PartId,
    /// What it can be chosen for: the id of a choice in `build_plan`.
    pub choice: String,
    /// What is marked on it.
    pub name: String,
    /// Its size, as typed: a shell's wall at the crown, a piston at its gauge
    /// height, a rod's bore with its shells in, a shim's thickness.
    pub size: String,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
    /// The tool it was measured with; none when the size is the box's.
    pub tool: Option<ToolId>,
    /// The setting of the tool, when it was said.
    pub setting: Option<SettingId>,
    /// Where a half-shell fits; on either side when not said.
    pub side: Option<BenchSide>,
    /// The size mark of a half-shell: steps of a set, 1 is one step under
    /// (thicker), -1 one step of extra clearance.
    pub steps: Option<i32>,
    /// Its make and material, as on the box.
    pub make: Option<String>,
    /// The place it is in now, when it is in one.
    pub place: Option<Spot>,
}

/// Which part goes where, as it was chosen and accepted.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PartsPlaced {
    /// The id of the choice in `build_plan`.
    pub choice: String,
    /// What goes where, place by place.
    pub placed: Vec<PlacedPart>,
}

impl PartsPlaced {
    /// Whether both put the same parts at the same places, whatever they give there.
    #[must_use]
    pub fn puts_the_same_as(&self, other: &Self) -> bool {
        let each = |one: &Self, other: &Self| {
            let is_in = |it: &PlacedPart| other.placed.iter().any(|same| it.is_the_same_as(same));
            one.placed.iter().all(is_in)
        };
        self.choice == other.choice && each(self, other) && each(other, self)
    }

    /// Whether both cannot be right: a place gets two parts, or a part two places.
    #[must_use]
    pub fn is_against(&self, other: &Self) -> bool {
        let against = |one: &PlacedPart, other: &PlacedPart| {
            let same_part = one.is_the_part_of(other);
            if one.place == other.place {
                !one.is_the_same_as(other)
            } else {
                same_part
            }
        };
        let mut pairs =
            (self.placed.iter()).flat_map(|one| other.placed.iter().map(move |other| (one, other)));
        self.choice == other.choice && pairs.any(|(one, other)| against(one, other))
    }
}

impl PlacedPart {
    /// Whether this is the same part at the same place.
    fn is_the_same_as(&self, other: &Self) -> bool {
        // What came neither off the bench nor from a place is known by its words.
        let bought = self.parts.is_empty() && self.from.is_none();
        self.place == other.place
            && self.parts == other.parts
            && self.from == other.from
            && (!bought || self.what == other.what)
    }

    /// Whether both are one part.
    fn is_the_part_of(&self, other: &Self) -> bool {
        let one_of = |part: &PartId| other.parts.contains(part);
        self.parts.iter().any(one_of) || (self.from.is_some() && self.from == other.from)
    }
}

/// What goes to a place.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PlacedPart {
    /// The place.
    pub place: Spot,
    /// What goes there, in words.
    pub what: String,
    /// The parts off the bench that it is.
    pub parts: Vec<PartId>,
    /// The place that the part was at and was measured at: the same one, when
    /// it stays. None for a part off the bench.
    pub from: Option<Spot>,
    /// What it was worked out to give there, as it was shown.
    pub gives: Option<String>,
}
