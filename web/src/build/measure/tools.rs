//! The tools of this build, how they are set, and whether they can settle it.

use assembly_core::fit::running_clearance::DANGEROUS_SIDE;
use assembly_core::measure::Window;
use assembly_core::tool::{INSTRUMENTS, Task, which_could_settle};
use build_journal::fold::{Build, ListedTool};
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use leptos::prelude::*;

use super::tool_choice::{InHand, ToolChoice, able, kind_of, own_tools};
use super::zeroing::{Zeroing, setting_words, wants_setting};
use crate::build::Opened;
use crate::kit::section::{Fold, Section};

/// As many ways are named when the tools at hand would not do.
const WAYS_NAMED: usize = 3;

/// The page of the tools.
#[component]
pub fn ToolsPage() -> impl IntoView {
    let opened: Opened = expect_context();
    let in_hand = InHand::of(opened);
    let tools = Memo::new(move |_| opened.build.with(|build| build.tools.clone()));
    view! {
        <h1>"Tools"</h1>
        <p class="lead">
            "A reading counts with the tool it was read off: that says how far it may be off. The figures of each kind are common practice."
        </p>
        <Foreseen />
        <Section title="The surest chain">
            <p>
                "Measure the journal, lock the micrometer there, and zero the bore gauge between its anvils. Whatever the micrometer is off by is then in the journal and in the bore alike, and drops out of the clearance. With a micrometer for the journals and another for the bores, both errors count."
            </p>
        </Section>
        <Section title="On the list">
            {move || {
                let rows = tools.get().into_iter().map(|tool| view! { <ToolRow tool /> });
                let rows: Vec<_> = rows.collect();
                if rows.is_empty() {
                    view! { <p class="lead">"No tool yet: take one below."</p> }.into_any()
                } else {
                    view! { <ul class="entries">{rows}</ul> }.into_any()
                }
            }}
        </Section>
        <Section title="For journals">
            <ToolChoice measure=&MAIN_JOURNAL_DIAMETER in_hand />
        </Section>
        <Section title="For bores">
            <ToolChoice measure=&MAIN_BEARING_BORE in_hand />
        </Section>
        <Section title="For a second opinion">
            <ToolChoice measure=&MAIN_OIL_CLEARANCE in_hand />
        </Section>
    }
}

#[component]
fn ToolRow(tool: ListedTool) -> impl IntoView {
    let opened: Opened = expect_context();
    let kind = kind_of(&tool);
    let label = kind.map_or("a kind of tool that this version does not know", |kind| {
        kind.label
    });
    let setting = tool.settings.last().map(|setting| {
        opened
            .build
            .with_untracked(|build| setting_words(build, setting))
    });
    let wants = wants_setting(&tool);
    let fact = tool.fact;
    view! {
        <li class="card" data-test="tool">
            <p><strong>{tool.name.clone()}</strong>": "{label}</p>
            {kind.map(|kind| view! { <p class="trap">{kind.trap}</p> })}
            {setting.map(|words| view! { <p>{words}</p> })}
            {wants.then(|| {
                let tool = tool.clone();
                view! {
                    <Fold title=if tool.settings.is_empty() { "Set it" } else { "Set it anew" }>
                        <Zeroing tool=tool.clone() />
                    </Fold>
                }
            })}
            <div class="row">
                <button
                    type="button"
                    class="button quiet"
                    aria-label=format!("strike {} off the list", tool.name)
                    on:click=move |_| {
                        let _ = opened.strike(fact, None);
                    }
                >
                    "Strike off the list"
                </button>
            </div>
        </li>
    }
}

/// The window of the clearance that most mains have.
fn window(build: &Build) -> Option<Window> {
    build
        .mains
        .iter()
        .filter_map(|bearing| bearing.limits.first())
        .find_map(|limits| limits.window.as_ref().ok())
        .copied()
}

/// Says before the measuring starts when the tools at hand could never say good.
#[component]
pub fn Foreseen() -> impl IntoView {
    let opened: Opened = expect_context();
    let warning = Memo::new(move |_| {
        opened.build.with(|build| {
            let window = window(build)?;
            let enough = !able(build, Task::RunningClearance).is_empty()
                || (!able(build, Task::OutsideSize).is_empty()
                    && !able(build, Task::InsideSize).is_empty());
            let own = own_tools(build);
            let settle = |tools: &[_]| {
                which_could_settle(Task::RunningClearance, tools, &window, DANGEROUS_SIDE)
            };
            if !enough || !settle(&own).is_empty() {
                return None;
            }
            let ways =
                which_could_settle(Task::RunningClearance, INSTRUMENTS, &window, DANGEROUS_SIDE);
            let named: Vec<String> = ways
                .iter()
                .take(WAYS_NAMED)
                .map(|way| way.label().to_owned())
                .collect();
            Some(named)
        })
    });
    move || {
        warning.get().map(|named| {
            let words = if named.is_empty() {
                "Nor could any tool known here: the window is too narrow for the bench. Ask a shop to measure it.".to_owned()
            } else {
                format!("These could: {}.", named.join("; "))
            };
            view! {
                <p class="notice notice-caution" data-test="too-coarse">
                    "With the tools on the list no bearing could ever come out as good against these limits, however it turns out, from one reading of each place. "
                    {words}
                </p>
            }
        })
    }
}
