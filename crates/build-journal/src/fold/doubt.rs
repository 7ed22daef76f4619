//! Readings in doubt: the tool failed its zero afterwards.

use std::collections::BTreeMap;

use super::bench::Bench;
use super::tools::ListedTool;
use crate::fact::Outcome;
use crate::id::{FactId, ToolId};

use super::readings::Taken;

/// Why a reading is in doubt.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Doubt {
    /// The fact that says that the tool did not read right.
    pub by: FactId,
    /// The tool: the one it was taken with, or one that it was set in.
    pub tool: ToolId,
}

/// Every reading in doubt. A tool that failed was right when it was last seen
/// to be, or set; what it read or lent its size to since is in doubt.
pub(super) fn in_doubt<'a>(
    readings: impl Iterator<Item = &'a Taken>,
    tools: &[ListedTool],
    bench: &Bench,
) -> BTreeMap<FactId, Doubt> {
    let bad = |tool: &ListedTool| tool.checks.iter().any(|one| one.outcome == Outcome::Bad);
    if !tools.iter().any(bad) {
        return BTreeMap::new();
    }
    readings
        .filter_map(|taken| Some((taken.fact, doubt(taken, tools, bench)?)))
        .collect()
}

fn doubt(taken: &Taken, tools: &[ListedTool], bench: &Bench) -> Option<Doubt> {
    let first = taken.reading.tool?;
    let mut used = vec![(first, taken.fact)];
    // A tool of a sort that is not known here still has a diary.
    let chain = bench.chain(first, taken.reading.setting, taken.fact);
    for link in chain.iter().flatten() {
        if let Some(setting) = link.setting
            && let crate::fact::SetOn::Tool(other) = setting.set.set_on
        {
            used.push((other, setting.fact));
        }
    }
    used.into_iter()
        .find_map(|(tool, when)| failed_after(tools, tool, when).map(|by| Doubt { by, tool }))
}

/// The failure that comes next after this, when no good zero comes before it.
fn failed_after(tools: &[ListedTool], tool: ToolId, when: FactId) -> Option<FactId> {
    let listed = tools.iter().find(|one| one.tool == tool)?;
    let check = listed.checks.iter().find(|one| one.fact > when)?;
    let set = listed.settings.iter().find(|one| one.fact > when);
    let set_first = set.is_some_and(|set| set.fact < check.fact);
    (check.outcome == Outcome::Bad && !set_first).then_some(check.fact)
}
