//! The tools of the builder, and how they were set.

use crate::fact::{Outcome, ToolChecked, ToolListed, ToolSet};
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
    /// When it was looked at, and how it was; its diary.
    pub checks: Vec<ToolSeen>,
}

/// A tool was held against its zero or a standard.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolSeen {
    /// The fact.
    pub fact: FactId,
    /// Whether it read right.
    pub outcome: Outcome,
    /// What the builder added.
    pub words: Option<String>,
}

/// One setting of a tool.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ToolSetting {
    /// The fact that made it.
    pub fact: FactId,
    /// How the tool was set.
    pub set: ToolSet,
    /// The setting's name as text.
    pub(super) key: String,
}

pub(super) fn list(tools: &mut Vec<ListedTool>, fact: FactId, listed: &ToolListed) {
    let (settings, checks) = match tools.iter().position(|one| one.tool == listed.tool) {
        // Listed once more, as after a change of its name.
        Some(at) => {
            let listed = tools.remove(at);
            (listed.settings, listed.checks)
        }
        None => (Vec::new(), Vec::new()),
    };
    tools.push(ListedTool {
        fact,
        tool: listed.tool,
        name: listed.name.clone(),
        instrument: listed.instrument.clone(),
        settings,
        checks,
    });
}

/// Adds a setting to its tool; says no when the tool is not on the list.
pub(super) fn set(tools: &mut [ListedTool], fact: FactId, set: &ToolSet) -> bool {
    let Some(tool) = tools.iter_mut().find(|one| one.tool == set.tool) else {
        return false;
    };
    tool.settings.push(ToolSetting {
        fact,
        set: set.clone(),
        key: set.setting.to_string(),
    });
    true
}

/// Adds to the diary of a tool; says no when the tool is not on the list.
pub(super) fn seen(tools: &mut [ListedTool], fact: FactId, seen: &ToolChecked) -> bool {
    let Some(tool) = tools.iter_mut().find(|one| one.tool == seen.tool) else {
        return false;
    };
    tool.checks.push(ToolSeen {
        fact,
        outcome: seen.outcome,
        words: seen.words.clone(),
    });
    true
}

impl ListedTool {
    /// The setting with this name.
    #[must_use]
    pub fn setting(&self, setting: SettingId) -> Option<&ToolSetting> {
        self.settings.iter().find(|one| one.set.setting == setting)
    }

    /// The last setting made before a fact.
    #[must_use]
    pub fn setting_before(&self, fact: FactId) -> Option<&ToolSetting> {
        self.settings.iter().rev().find(|one| one.fact < fact)
    }
}
