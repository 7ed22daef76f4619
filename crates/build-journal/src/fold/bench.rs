//! The builder's tools as `assembly_core` knows them, and readings with the
//! errors of the tools they were taken with.

use std::collections::{BTreeMap, BTreeSet};

use assembly_core::measure::{Measured, Sources};
use assembly_core::quantity::{Kind, Typed, read, unit_of};
use assembly_core::tool::{self, Setting, Tool, instrument};
use uom::si::f64::Length;

use super::readings::Taken;
use super::store::Readings;
use super::tools::{ListedTool, ToolSetting};
use crate::fact::SetOn;
use crate::id::{FactId, SettingId, ToolId};

/// Tools set on tools set on tools: no bench goes deeper, a forged file may.
const DEEPEST: usize = 6;

/// The tools of a build.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Bench {
    tools: BTreeMap<ToolId, (ListedTool, Option<Tool>)>,
    known: Vec<Tool>,
    /// Readings that a tool was locked at when another was set in it.
    locks: BTreeSet<FactId>,
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
struct Link<'a> {
    tool: &'a Tool,
    setting: Option<&'a ToolSetting>,
}

/// Readings of one part of the engine, made into measured values. Each reading
/// is made once, so that what two values share is shared.
pub(super) struct Measuring<'a> {
    bench: &'a Bench,
    readings: &'a Readings,
    sources: &'a mut Sources,
    made: BTreeMap<FactId, Measured<Length>>,
    zeroed_at: BTreeMap<SettingId, Measured<Length>>,
}

impl Bench {
    pub(super) fn new(tools: &[ListedTool]) -> Self {
        let known = |listed: &ListedTool| {
            let kind = instrument(&listed.instrument)?;
            Some(Tool::new(listed.tool.to_string(), &listed.name, kind))
        };
        Self {
            known: tools.iter().filter_map(known).collect(),
            locks: tools
                .iter()
                .flat_map(|listed| &listed.settings)
                .filter_map(|setting| setting.set.locked_at)
                .collect(),
            tools: tools
                .iter()
                .map(|listed| (listed.tool, (listed.clone(), known(listed))))
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

    /// A tool with the setting that held when a fact was written, and what it
    /// was set on, and so on.
    fn chain(
        &self,
        tool: ToolId,
        named: Option<SettingId>,
        before: FactId,
    ) -> Result<Vec<Link<'_>>, NoGiveOrTake> {
        let mut chain = Vec::new();
        let (mut next, mut named, mut before) = (tool, named, before);
        while chain.len() < DEEPEST {
            let (listed, tool) = self.tools.get(&next).ok_or(NoGiveOrTake::ToolNotKnown)?;
            let tool = tool.as_ref().ok_or(NoGiveOrTake::ToolNotKnown)?;
            let setting = match named.take() {
                Some(named) => listed
                    .setting(named)
                    .or_else(|| listed.setting_before(before)),
                None => listed.setting_before(before),
            };
            chain.push(Link { tool, setting });
            match setting.map(|setting| (setting.fact, setting.set.set_on)) {
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
fn with_setting<R>(chain: &[Link], call: &mut dyn FnMut(&Tool, &Setting) -> R) -> Option<R> {
    fn nest<R>(
        chain: &[Link],
        on: tool::SetOn,
        call: &mut dyn FnMut(&Tool, &Setting) -> R,
    ) -> Option<R> {
        let (link, before) = chain.split_last()?;
        let key = link
            .setting
            .map(|setting| setting.set.setting.to_string())
            .unwrap_or_default();
        let setting = Setting { key: &key, on };
        if before.is_empty() {
            Some(call(link.tool, &setting))
        } else {
            nest(before, tool::SetOn::Tool(link.tool, &setting), call)
        }
    }
    nest(chain, tool::SetOn::Standard, call)
}

impl<'a> Measuring<'a> {
    pub(super) fn new(bench: &'a Bench, readings: &'a Readings, sources: &'a mut Sources) -> Self {
        Self {
            bench,
            readings,
            sources,
            made: BTreeMap::new(),
            zeroed_at: BTreeMap::new(),
        }
    }

    /// A reading as a measured value.
    pub(super) fn measured(
        &mut self,
        taken: &Taken,
        typed: &Typed,
    ) -> Result<Measured<Length>, NoGiveOrTake> {
        self.reading(taken, typed, 0)
    }

    fn reading(
        &mut self,
        taken: &Taken,
        typed: &Typed,
        deep: usize,
    ) -> Result<Measured<Length>, NoGiveOrTake> {
        if let Some(made) = self.made.get(&taken.fact) {
            return Ok(made.clone());
        }
        let tool = taken.reading.tool.ok_or(NoGiveOrTake::ToolNotSaid)?;
        let chain = self.bench.chain(tool, taken.reading.setting, taken.fact)?;
        let reads = chain.first().map(|link| link.tool.instrument().kind);
        if reads != taken.measure.map(|measure| measure.kind) {
            // A pressure was not read off a micrometer.
            return Err(NoGiveOrTake::ToolNotKnown);
        }
        let setting = chain.first().and_then(|link| link.setting);
        let sense = setting.and_then(|setting| setting.set.needle);
        let measured = match (sense, setting) {
            (Some(sense), Some(setting)) => {
                let zeroed_at = self.zeroed_at(setting, chain.get(1..).unwrap_or(&[]), deep)?;
                let needle = with_setting(&chain, &mut |tool, setting| {
                    tool.needle(self.sources, setting, typed.si(), typed.resolution())
                });
                needle.map(|needle| sense.bore(&zeroed_at, &needle))
            }
            _ => with_setting(&chain, &mut |tool, setting| {
                tool.reading_typed(self.sources, setting, typed)
            }),
        }
        .ok_or(NoGiveOrTake::ToolNotKnown)?;
        self.made.insert(taken.fact, measured.clone());
        Ok(measured)
    }

    /// The size that a tool was zeroed at: what the other tool was still locked
    /// at, or what was typed.
    fn zeroed_at(
        &mut self,
        setting: &ToolSetting,
        set_on: &[Link],
        deep: usize,
    ) -> Result<Measured<Length>, NoGiveOrTake> {
        if let Some(made) = self.zeroed_at.get(&setting.set.setting) {
            return Ok(made.clone());
        }
        let size = match self.locked_at(setting, deep) {
            Some(size) => size,
            None => {
                let typed = typed_size(setting).ok_or(NoGiveOrTake::SetAtNotSaid)?;
                with_setting(set_on, &mut |tool, setting| {
                    tool.standing_at(self.sources, setting, typed.si(), typed.resolution())
                })
                // A standard is as long as it says.
                .unwrap_or_else(|| Measured::exact(typed.quantity()))
            }
        };
        self.zeroed_at.insert(setting.set.setting, size.clone());
        Ok(size)
    }

    /// The reading that the other tool was still locked at, without its feel.
    fn locked_at(&mut self, setting: &ToolSetting, deep: usize) -> Option<Measured<Length>> {
        let taken = self.readings.get(setting.set.locked_at?)?;
        if deep >= DEEPEST || taken.fact >= setting.fact {
            return None;
        }
        let reading = self.reading(taken, taken.counting()?, deep + 1).ok()?;
        Some(Tool::still_locked_at(&reading, self.sources))
    }
}

fn typed_size(setting: &ToolSetting) -> Option<Typed> {
    let text = setting.set.set_at.as_deref()?;
    let read_in = |symbol: &str| read(text, Kind::Length, unit_of(Kind::Length, symbol)?).ok();
    match setting.set.unit.as_deref() {
        Some(unit) => read_in(unit),
        // Without the field's unit, the text has to have one of its own.
        None => read_in("in").filter(Typed::unit_was_typed),
    }
}
