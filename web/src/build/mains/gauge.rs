//! Which tools the bearing is measured with, and what the bore tool was set on.

use assembly_core::fit::running_clearance::NeedleSense;
use assembly_core::tool::{INSTRUMENTS, Task, instrument};
use build_journal::fold::{ListedTool, MainBearing};
use build_journal::{Body, FactId, SettingId, ToolId};
use build_journal::fact::{SetOn, ToolListed, ToolSet};
use build_plan::measure::MAIN_JOURNAL_DIAMETER;
use leptos::prelude::*;

use crate::build::page::{Opened, opened};
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::pick::{Pick, Word};

/// The tool that a task is done with in this build.
#[derive(Clone, Copy)]
pub struct InUse {
    opened: Opened,
    /// What it is used for.
    pub task: Task,
    picked: Draft,
}

impl InUse {
    /// The tool in use for a task, as it was left.
    #[must_use]
    pub fn of(opened: Opened, task: Task) -> Self {
        let name = match task {
            Task::OutsideSize => "outside",
            Task::InsideSize => "inside",
            _ => "clearance",
        };
        Self {
            opened,
            task,
            picked: Draft::of(format!("build/{}/tool/{name}", opened.id)),
        }
    }

    /// The listed tools that can do it.
    #[must_use]
    pub fn able(self) -> Vec<ListedTool> {
        let can = |tool: &&ListedTool| {
            instrument(&tool.instrument).is_some_and(|kind| kind.can(self.task))
        };
        self.opened.build.with(|build| build.tools.iter().filter(can).cloned().collect())
    }

    /// The tool, followed: the one picked, or the only one there is.
    #[must_use]
    pub fn tool(self) -> Option<ListedTool> {
        let able = self.able();
        let picked = self.picked.get();
        match able.iter().find(|tool| tool.tool.to_string() == picked) {
            Some(tool) => Some(tool.clone()),
            None => match able.as_slice() {
                [only] => Some(only.clone()),
                _ => None,
            },
        }
    }

    fn pick(self, tool: ToolId) {
        self.picked.set(tool.to_string());
    }

    /// Puts a tool of a kind on the list and takes it into use.
    fn list(self, kind: &str) {
        let Some(known) = instrument(kind) else { return };
        let tool = ToolId::from_random(chance::bits());
        let listed = Body::ToolListed(ToolListed {
            tool,
            name: known.name.to_owned(),
            instrument: known.id.to_owned(),
        });
        if self.opened.write_down(listed).is_some() {
            self.pick(tool);
        }
    }
}

/// The question which tool does a task.
#[component]
pub fn ToolPick(
    /// The tool in use.
    in_use: InUse,
    /// The question.
    label: &'static str,
    /// Its name for tests.
    name: &'static str,
) -> impl IntoView {
    move || {
        let able = in_use.able();
        if able.is_empty() {
            let words = INSTRUMENTS
                .iter()
                .filter(|kind| kind.can(in_use.task))
                .map(|kind| Word::of(kind.id, kind.label))
                .collect();
            return view! {
                <Pick
                    name
                    label
                    hint="Picked once, it is on this build's list of tools."
                    words
                    picked=Signal::derive(String::new)
                    on_pick=Callback::new(move |kind: String| in_use.list(&kind))
                />
            }
            .into_any();
        }
        let words = able.iter().map(|tool| Word::of(tool.tool.to_string(), tool.name.clone())).collect();
        let now = in_use.tool().map_or_else(String::new, |tool| tool.tool.to_string());
        let trap = in_use.tool().and_then(|tool| instrument(&tool.instrument)).map(|kind| kind.trap);
        view! {
            <Pick
                name
                label
                words
                picked=Signal::derive(move || now.clone())
                on_pick=Callback::new(move |id: String| {
                    if let Ok(tool) = ToolId::parse(&id) {
                        in_use.pick(tool);
                    }
                })
            />
            {trap.map(|trap| view! { <p class="trap">{trap}</p> })}
        }
        .into_any()
    }
}

/// Whether a tool, as it is set now, shows a needle's way from zero and not whole sizes.
#[must_use]
pub fn shows_needle(tool: &ListedTool) -> bool {
    tool.settings.last().is_some_and(|one| one.set.needle.is_some())
}

/// The last journal reading of a bearing that was taken with a tool and counts.
fn last_journal_reading(bearing: &MainBearing, micrometer: ToolId) -> Option<(FactId, String)> {
    bearing.readings.iter().rev().find_map(|taken| {
        let journal = taken.measure.is_some_and(|one| one.id == MAIN_JOURNAL_DIAMETER.id);
        let counting = taken.counting()?;
        (journal && taken.reading.tool == Some(micrometer)).then(|| (taken.fact, counting.to_string()))
    })
}

/// What the bore tool was set on: it decides which errors cancel.
#[component]
pub fn SetOnPick(
    /// The bore tool.
    bore: InUse,
    /// The journal's tool.
    journal: InUse,
    /// The bearing being measured.
    number: u8,
) -> impl IntoView {
    let opened = opened();
    let set = move |set_on: SetOn, locked_at: Option<FactId>, needle: Option<NeedleSense>| {
        let Some(tool) = bore.tool() else { return };
        // What was written down is on the page; what was refused has been said.
        let _ = opened.write_down(Body::ToolSet(ToolSet {
            tool: tool.tool,
            setting: SettingId::from_random(chance::bits()),
            set_on,
            set_at: None,
            unit: None,
            locked_at,
            needle,
        }));
    };
    move || {
        let tool = bore.tool()?;
        if !instrument(&tool.instrument)?.compares {
            return None;
        }
        let micrometer = journal.tool()?;
        let locked = opened.build.with(|build| {
            let bearing = build.mains.iter().find(|one| one.main.number() == number)?;
            last_journal_reading(bearing, micrometer.tool)
        });
        let now = tool.settings.last().map_or("", |one| match (one.set.set_on, one.set.needle) {
            (SetOn::Tool(_), Some(_)) => "needle",
            (SetOn::Tool(on), None) if on == micrometer.tool => "micrometer",
            (SetOn::Tool(_), None) => "",
            (SetOn::Standard, _) => "standard",
        });
        let mut words = vec![
            Word::of("micrometer", "in the journal's micrometer; I type whole sizes"),
            Word::of("standard", "on a setting ring or standard; I type whole sizes"),
        ];
        if let Some((_, typed)) = &locked {
            words.insert(
                0,
                Word::of("needle", format!("in the journal's micrometer, still locked at {typed}; I type the needle")),
            );
        }
        let on_pick = Callback::new(move |picked: String| match picked.as_str() {
            "needle" => set(
                SetOn::Tool(micrometer.tool),
                locked.as_ref().map(|(fact, _)| *fact),
                Some(NeedleSense::ClockwiseIsSmaller),
            ),
            "micrometer" => set(SetOn::Tool(micrometer.tool), None, None),
            _ => set(SetOn::Standard, None, None),
        });
        Some(view! {
            <Pick
                name="set-on"
                label="The bore tool was last set"
                hint="Set in the journal's own micrometer, that micrometer's error cancels. Say it anew each time the tool is set."
                words
                picked=Signal::derive(move || now.to_owned())
                on_pick
            />
        })
    }
}
