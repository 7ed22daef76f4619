//! The builder's tools as `assembly_core` knows them, and what each was set on.

use std::collections::{BTreeMap, BTreeSet};

use assembly_core::quantity::{Kind, Typed, read, unit_of};
use assembly_core::tool::{self, Setting, Tool};
use smallvec::SmallVec;

use super::build::Build;
use super::tools::{ListedTool, ToolSetting};
use super::warmth::ToReference;
use crate::fact::SetOn;
use crate::id::{FactId, SettingId, ToolId};

/// Tools set on tools set on tools: no bench goes deeper, a forged file may.
pub(super) const DEEPEST: usize = 6;

/// The tools of a build.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Bench {
    tools: BTreeMap<ToolId, (ListedTool, Option<Tool>)>,
    known: Vec<Tool>,
    /// Readings that a tool was locked at when another was set in it.
    locks: BTreeSet<FactId>,
    /// What is brought to 20 °C.
    pub(super) to_reference: ToReference,
}

/// Why a reading has no give-or-take.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum NoGiveOrTake {
    /// It was not said which tool it was taken with.
    ToolNotSaid,
    /// The tool is not on the list, or of a sort not known here.
    ToolNotKnown,
    /// The needle's reading, but not the size it was zeroed at.
    SetAtNotSaid,
}

/// A tool and one of its settings; the tool that this one was set on comes next.
#[derive(Clone, Copy)]
pub(super) struct Link<'a> {
    pub(super) tool: &'a Tool,
    pub(super) setting: Option<&'a ToolSetting>,
}

/// A tool, what it was set on, and so on. Most are set on nothing or on one other.
pub(super) type Chain<'a> = SmallVec<[Link<'a>; 2]>;

impl Bench {
    pub(super) fn of(build: &Build) -> Self {
        let tools = &build.tools;
        let engine = build.engine.as_ref().map(|described| &described.engine);
        Self {
            to_reference: ToReference::of(&build.warmth, engine),
            known: tools.iter().filter_map(ListedTool::known).collect(),
            locks: tools
                .iter()
                .flat_map(|listed| &listed.settings)
                .filter_map(|setting| setting.set.locked_at)
                .collect(),
            tools: tools
                .iter()
                .map(|listed| (listed.tool, (listed.clone(), listed.known())))
                .collect(),
        }
    }

    /// The tools of sorts known here.
    pub(super) fn known(&self) -> &[Tool] {
        &self.known
    }

    /// Whether a tool was locked at this reading when another was set in it.
    pub(super) fn is_lock(&self, fact: FactId) -> bool {
        self.locks.contains(&fact)
    }

    /// A tool with the setting that held when a fact was written: the one it names,
    /// else the last one before.
    pub(super) fn link(
        &self,
        tool: ToolId,
        named: Option<SettingId>,
        before: FactId,
    ) -> Result<Link<'_>, NoGiveOrTake> {
        let (listed, tool) = self.tools.get(&tool).ok_or(NoGiveOrTake::ToolNotKnown)?;
        let tool = tool.as_ref().ok_or(NoGiveOrTake::ToolNotKnown)?;
        let named = named.and_then(|named| listed.setting(named));
        let setting = named.or_else(|| listed.setting_before(before));
        Ok(Link { tool, setting })
    }

    /// A tool with the setting that held when a fact was written, and what it
    /// was set on, and so on.
    pub(super) fn chain(
        &self,
        tool: ToolId,
        named: Option<SettingId>,
        before: FactId,
    ) -> Result<Chain<'_>, NoGiveOrTake> {
        let mut chain = Chain::new();
        let (mut next, mut named, mut before) = (tool, named, before);
        while chain.len() < DEEPEST {
            let link = self.link(next, named.take(), before)?;
            chain.push(link);
            match link
                .setting
                .map(|setting| (setting.fact, setting.set.set_on))
            {
                Some((fact, SetOn::Tool(other))) => {
                    next = other;
                    before = fact;
                }
                _ => return Ok(chain),
            }
        }
        Ok(chain)
    }
}

/// Calls with the setting of the first link, nested in those of the others.
pub(super) fn with_setting<R>(
    chain: &[Link],
    call: &mut dyn FnMut(&Tool, &Setting) -> R,
) -> Option<R> {
    fn nest<R>(
        chain: &[Link],
        on: tool::SetOn,
        call: &mut dyn FnMut(&Tool, &Setting) -> R,
    ) -> Option<R> {
        let (link, before) = chain.split_last()?;
        let key = link.setting.map_or("", |setting| &setting.key);
        let setting = Setting { key, on };
        if before.is_empty() {
            Some(call(link.tool, &setting))
        } else {
            nest(before, tool::SetOn::Tool(link.tool, &setting), call)
        }
    }
    nest(chain, tool::SetOn::Standard, call)
}

pub(super) fn typed_size(setting: &ToolSetting) -> Option<Typed> {
    let text = setting.set.set_at.as_deref()?;
    let read_in = |symbol: &str| read(text, Kind::Length, unit_of(Kind::Length, symbol)?).ok();
    match setting.set.unit.as_deref() {
        Some(unit) => read_in(unit),
        // Without the field's unit, the text has to have one of its own.
        None => read_in("in").filter(Typed::unit_was_typed),
    }
}
