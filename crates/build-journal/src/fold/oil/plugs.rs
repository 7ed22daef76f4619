//! Plugs counted out and back in.

use std::collections::BTreeMap;

use assembly_core::oil::running_in::plugs::{PLUGS, Plug};

use crate::fact::PlugsCounted;

/// The counts of each sort of plug, by its id.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct PlugCounts(BTreeMap<String, Count>);

/// How many of a sort came out, and how many are back.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Count {
    /// Out.
    pub out: Option<u32>,
    /// Back in.
    pub back: Option<u32>,
}

impl Count {
    /// How many are still to go in: more came out than went in. Nothing counted
    /// back in yet is none back.
    #[must_use]
    pub fn missing(self) -> u32 {
        let out = self.out.unwrap_or_default();
        out.saturating_sub(self.back.unwrap_or_default())
    }

    /// How many more went in than came out, where both were counted.
    #[must_use]
    pub fn too_many(self) -> u32 {
        let counted = self.out.zip(self.back);
        counted.map_or(0, |(out, back)| back.saturating_sub(out))
    }
}

impl PlugCounts {
    /// A count; what it does not say stays as it was.
    pub(super) fn take(&mut self, made: &PlugsCounted) {
        let count = self.0.entry(made.plugs.clone()).or_default();
        count.out = made.out.or(count.out);
        count.back = made.back.or(count.back);
    }

    /// The count of a sort.
    #[must_use]
    pub fn of(&self, id: &str) -> Count {
        self.0.get(id).copied().unwrap_or_default()
    }

    /// Whether any were counted out: from then on the counts decide.
    #[must_use]
    pub fn any_out(&self) -> bool {
        self.0.values().any(|count| count.out.is_some())
    }

    /// The sorts of which some are still to go in, with how many. Sorts that this
    /// version does not know are told by their id.
    #[must_use]
    pub fn missing(&self) -> Vec<(&str, u32)> {
        self.0
            .iter()
            .filter(|(_, count)| count.missing() > 0)
            .map(|(id, count)| {
                (
                    known(id).map_or(id.as_str(), |plug| plug.place),
                    count.missing(),
                )
            })
            .collect()
    }

    /// Whether all that were counted out are back.
    #[must_use]
    pub fn all_back(&self) -> bool {
        self.any_out() && self.missing().is_empty()
    }
}

fn known(id: &str) -> Option<&'static Plug> {
    PLUGS.iter().find(|plug| plug.id == id)
}
