//! The tools of a build: what things are measured with, and how far off each may be.

use assembly_core::quantity::{Kind, show};
use assembly_core::tool::{INSTRUMENTS, Instrument, Task, instrument};
use build_journal::fact::{SetOn, ToolListed};
use build_journal::fold::ListedTool;
use build_journal::{Body, ToolId};
use build_plan::measure::MAIN_OIL_CLEARANCE;
use leptos::prelude::*;

use super::page::opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::pick::{Pick, Word};
use crate::kit::section::Section;
use crate::kit::toast::toast;

const TASKS: [Task; 3] = [Task::OutsideSize, Task::InsideSize, Task::RunningClearance];

fn offered() -> Vec<&'static Instrument> {
    INSTRUMENTS.iter().copied().filter(|kind| TASKS.iter().any(|task| kind.can(*task))).collect()
}

/// The page of the tools.
#[component]
pub fn ToolsPage() -> impl IntoView {
    let opened = opened();
    let key = format!("build/{}/new-tool", opened.id);
    let kind = Draft::of(format!("{key}/kind"));
    let name = Draft::of(format!("{key}/name"));
    let add = move || {
        let Some(known) = instrument(&kind.now()) else {
            toast().say("First pick what sort of tool it is.");
            return;
        };
        let typed = name.now();
        let name_of_it = if typed.trim().is_empty() { known.name.to_owned() } else { typed };
        let same = opened.build.with_untracked(|build| build.tools.iter().any(|tool| tool.name == name_of_it));
        if same {
            toast().say(format!("There is a tool called “{name_of_it}” already: give this one another name, so that they can be told apart."));
            return;
        }
        let written = opened.write_down(Body::ToolListed(ToolListed {
            tool: ToolId::from_random(chance::bits()),
            name: name_of_it,
            instrument: known.id.to_owned(),
        }));
        if written.is_some() {
            name.clear();
            kind.clear();
        }
    };
    let tools = move || {
        let tools = opened.build.with(|build| build.tools.clone());
        if tools.is_empty() {
            return view! { <p class="hint">"None yet. A reading counts only with its tool: without, nobody knows how far it may be off."</p> }.into_any();
        }
        let all = tools.clone();
        view! {
            <ul class="tools" data-test="tools">
                {tools.into_iter().map(|tool| view! { <ToolRow tool all=all.clone() /> }).collect_view()}
            </ul>
        }
        .into_any()
    };
    view! {
        <h1>"Tools"</h1>
        <Section title="On the list">{tools}</Section>
        <Section title="Add one">
            <Pick
                name="new-tool"
                label="What sort of tool"
                words=offered().into_iter().map(|one| Word::of(one.id, one.label)).collect()
                picked=Signal::derive(move || kind.get())
                on_pick=Callback::new(move |id| kind.set(id))
            />
            <div class="field">
                <label for="tool-name">"What you call it"</label>
                <div class="field-box">
                    <input
                        id="tool-name"
                        type="text"
                        data-test="tool-name"
                        autocomplete="off"
                        prop:value=move || name.get()
                        on:input=move |event| name.set(event_target_value(&event))
                    />
                </div>
            </div>
            <p><button type="button" class="button" data-test="tool-add" on:click=move |_| add()>"Put it on the list"</button></p>
        </Section>
    }
}

#[component]
fn ToolRow(tool: ListedTool, all: Vec<ListedTool>) -> impl IntoView {
    let settings = settings();
    let known = instrument(&tool.instrument);
    let spread = move || {
        let unit = settings.units().of(Kind::Length, MAIN_OIL_CLEARANCE.units);
        known.map(|kind| format!("one reading give or take {}", show(kind.deviation(0.0), None, unit)))
    };
    let sort = known.map_or_else(|| format!("a sort not known here: “{}”", tool.instrument), |kind| kind.label.to_owned());
    let set = tool.settings.last().map(|last| {
        let on = match last.set.set_on {
            SetOn::Standard => "on a standard".to_owned(),
            SetOn::Tool(other) => all
                .iter()
                .find(|one| one.tool == other)
                .map_or_else(|| "in a tool that is not on the list".to_owned(), |one| format!("in the {}", one.name)),
        };
        let needle = if last.set.needle.is_some() { ", its needle is read" } else { "" };
        format!("Last set {on}{needle}.")
    });
    view! {
        <li class="tool">
            <p><strong>{tool.name.clone()}</strong>": "{sort}</p>
            <p class="hint">{spread}" (common practice)"</p>
            {set.map(|set| view! { <p class="hint">{set}</p> })}
            {known.map(|kind| view! { <p class="trap">{kind.trap}</p> })}
        </li>
    }
}
