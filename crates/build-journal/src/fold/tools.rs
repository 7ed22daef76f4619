//! The tools of the builder, how they were set, and what they are called.

use std::collections::BTreeMap;

use super::trials::ToolTrial;
use crate::day::Day;
use crate::fact::{Body, Fact, Outcome, ToolChecked, ToolListed, ToolSet, ToolTried};
use crate::id::{FactId, SettingId, ToolId};

/// A tool on the list.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ListedTool {
    /// The fact that listed it last.
    pub fact: FactId,
    /// The tool.
    pub tool: ToolId,
    /// The fact that listed it first.
    pub since: FactId,
    /// What it is called on the screen: no other tool on the list is called so.
    pub name: String,
    /// What the builder calls it, as typed.
    pub called: String,
    /// What the builder says tells it from others of its name.
    pub mark: Option<String>,
    /// The id of what sort of instrument it is.
    pub instrument: String,
    /// Its settings, in the order they were made.
    pub settings: Vec<ToolSetting>,
    /// When it was looked at, and how it was; its diary.
    pub checks: Vec<ToolSeen>,
    /// When it was tried out, oldest first.
    pub trials: Vec<ToolTrial>,
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
    // Listed once more, as after a change of its name.
    let before = tools.iter().position(|one| one.tool == listed.tool);
    let before = before.map(|at| tools.remove(at));
    let (since, settings, checks, trials) = match before {
        Some(old) => (old.since, old.settings, old.checks, old.trials),
        None => (fact, Vec::new(), Vec::new(), Vec::new()),
    };
    tools.push(ListedTool {
        fact,
        tool: listed.tool,
        since,
        name: listed.name.clone(),
        called: listed.name.clone(),
        mark: listed.mark.clone(),
        instrument: listed.instrument.clone(),
        settings,
        checks,
        trials,
    });
}

/// The tools that these facts list, with their trials.
pub(super) fn listed<'a>(facts: impl Iterator<Item = &'a Fact>) -> Vec<ListedTool> {
    let mut tools = Vec::new();
    for fact in facts {
        match fact.body() {
            Body::ToolListed(made) => list(&mut tools, fact.id(), made),
            Body::ToolTried(made) => {
                // One that is not on the list is told of elsewhere.
                tried(&mut tools, fact.id(), made);
            }
            _ => {}
        }
    }
    tell_apart(&mut tools);
    tools
}

/// Whether two names are one at the bench: capitals and blanks tell nobody
/// anything.
#[must_use]
pub fn is_one_name(one: &str, other: &str) -> bool {
    plain(one) == plain(other)
}

fn plain(name: &str) -> String {
    let words: Vec<&str> = name.split_whitespace().collect();
    words.join(" ").to_lowercase()
}

/// Gives every tool a name that no other has: its own, with its mark; where that
/// is not enough with its kind, else with the day it was listed, else with a
/// number. The same facts give the same names, in whatever order they came.
pub(super) fn tell_apart(tools: &mut [ListedTool]) {
    for tool in &mut *tools {
        tool.name = tool.with_mark();
    }
    let more: [fn(&ListedTool) -> String; 2] = [ListedTool::kind_words, ListedTool::day_words];
    for words in more {
        for alike in alike(tools) {
            let told: Vec<String> = alike.iter().map(|tool| words(tool)).collect();
            if told.iter().any(|one| Some(one) != told.first()) {
                for (tool, words) in alike.into_iter().zip(told) {
                    tool.name = format!("{}, {words}", tool.name);
                }
            }
        }
    }
    for mut alike in alike(tools) {
        alike.sort_unstable_by_key(|tool| (tool.since, tool.tool));
        for (at, tool) in alike.into_iter().enumerate() {
            tool.name = format!("{}, number {}", tool.name, at + 1);
        }
    }
}

/// The tools that share a name, two or more of each.
fn alike(tools: &mut [ListedTool]) -> Vec<Vec<&mut ListedTool>> {
    let mut groups: BTreeMap<String, Vec<&mut ListedTool>> = BTreeMap::new();
    for tool in tools {
        groups.entry(plain(&tool.name)).or_default().push(tool);
    }
    groups
        .into_values()
        .filter(|group| group.len() > 1)
        .collect()
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

/// Adds a trial to its tool; says no when the tool is not on the list.
pub(super) fn tried(tools: &mut [ListedTool], fact: FactId, tried: &ToolTried) -> bool {
    let Some(tool) = tools.iter_mut().find(|one| one.tool == tried.tool) else {
        return false;
    };
    tool.trials.push(ToolTrial {
        fact,
        tried: tried.clone(),
    });
    true
}

impl ListedTool {
    /// What the builder calls it, with its mark.
    fn with_mark(&self) -> String {
        match self.mark.as_deref().map(str::trim) {
            Some(mark) if !mark.is_empty() => format!("{} ({mark})", self.called),
            _ => self.called.clone(),
        }
    }

    fn kind_words(&self) -> String {
        let label = self.kind().map(|kind| kind.label);
        label.unwrap_or("a kind not known here").to_owned()
    }

    fn day_words(&self) -> String {
        let moment = i64::try_from(self.since.milliseconds()).unwrap_or(i64::MAX);
        let (year, month, day) = Day::of(moment).date();
        format!("listed {year:04}-{month:02}-{day:02}")
    }

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
