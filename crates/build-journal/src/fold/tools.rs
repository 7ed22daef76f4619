//! The tools of the builder, and how they were set.

use crate::fact::{SetOn, ToolListed, ToolSet};
use crate::id::{FactId, SettingId, ToolId};

/// A tool on the list.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ListedTool {
    /// The fact that listed it last.
    pub fact: FactId,
    /// The tool.
    pub tool: ToolId,
    /// What the builder calls it.
    pub name: String,
    /// The id of what sort of instrument it is.
    pub instrument: String,
    /// Its settings, in the order they were made.
    pub settings: Vec<ToolSetting>,
}

/// One setting of a tool.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolSetting {
    /// The fact that made it.
    pub fact: FactId,
    /// Its name.
    pub setting: SettingId,
    /// What it was set on.
    pub set_on: SetOn,
    /// The size it was set to, as typed.
    pub set_at: Option<String>,
    /// The unit of a lone number in it.
    pub unit: Option<String>,
}

pub(super) fn list(tools: &mut Vec<ListedTool>, fact: FactId, listed: &ToolListed) {
    let settings = match tools.iter().position(|one| one.tool == listed.tool) {
        // Listed once more, as after a change of its name.
        Some(at) => tools.remove(at).settings,
        None => Vec::new(),
    };
    tools.push(ListedTool {
        fact,
        tool: listed.tool,
        name: listed.name.clone(),
        instrument: listed.instrument.clone(),
        settings,
    });
}

/// Adds a setting to its tool; says no when the tool is not on the list.
pub(super) fn set(tools: &mut [ListedTool], fact: FactId, set: &ToolSet) -> bool {
    let Some(tool) = tools.iter_mut().find(|one| one.tool == set.tool) else {
        return false;
    };
    tool.settings.push(ToolSetting {
        fact,
        setting: set.setting,
        set_on: set.set_on,
        set_at: set.set_at.clone(),
        unit: set.unit.clone(),
    });
    true
}
