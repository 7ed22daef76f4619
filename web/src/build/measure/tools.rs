//! The tools of this build, how they are set, and whether they can settle it.

use assembly_core::fit::running_clearance::DANGEROUS_SIDE;
use assembly_core::measure::Window;
use assembly_core::tool::{INSTRUMENTS, Task, Tool, Way, which_could_settle};
use build_journal::fold::{Build, ListedTool};
use build_plan::Measure;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use leptos::prelude::*;

use super::diary::diary;
use super::naming::rename;
use super::tool_choice::{InHand, able, kind_of, own_tools, tool_choice};
use super::trial::trial;
use super::zeroing::{setting_words, wants_setting, zeroing};
use crate::build::Opened;
use crate::kit::piece::{Piece, button, el, note, p, row, title};
use crate::kit::section::{fold, section};

/// As many ways are named when the tools at hand would not do.
const WAYS_NAMED: usize = 3;

const CHAIN: &str = "Measure the journal, lock the micrometer there, and zero the bore gauge between its anvils. Whatever the micrometer is off by is then in the journal and in the bore alike, and drops out of the clearance. With a micrometer for the journals and another for the bores, both errors count.";

/// The page of the tools.
#[must_use]
pub fn tools_page() -> Piece {
    let opened: Opened = expect_context();
    let in_hand = InHand::of_mains(opened);
    let tools = Memo::new(move |_| opened.build.with(|build| build.tools.clone()));
    let listed = Piece::live(move || {
        let tools = tools.get();
        untrack(|| {
            if tools.is_empty() {
                return note("lead", "No tool yet: take one below.").into();
            }
            let rows = tools.iter().map(|tool| tool_row(opened, tool));
            el("ul").class("entries").all(rows).into()
        })
    });
    let choice = |title: &str, measure: &'static Measure| {
        section(title).with(tool_choice(measure, in_hand)).into()
    };
    let lead = "A reading counts with the tool it was read off: that says how far it may be off. The figures of each kind are common practice.";
    Piece::all([
        title("Tools").into(),
        note("lead", lead).into(),
        foreseen(),
        section("The surest chain").with(p(CHAIN)).into(),
        section("On the list").with(listed).into(),
        choice("For journals", &MAIN_JOURNAL_DIAMETER),
        choice("For bores", &MAIN_BEARING_BORE),
        choice("For a second opinion", &MAIN_OIL_CLEARANCE),
    ])
}

fn tool_row(opened: Opened, tool: &ListedTool) -> Piece {
    let kind = kind_of(tool);
    let label = kind.map_or("a kind of tool that this version does not know", |kind| {
        kind.label
    });
    let setting = tool.settings.last().map(|setting| {
        p(&opened
            .build
            .with_untracked(|build| setting_words(build, setting)))
    });
    let set = wants_setting(tool).then(|| {
        let word = if tool.settings.is_empty() {
            "Set it"
        } else {
            "Set it anew"
        };
        fold(word, zeroing(tool))
    });
    let fact = tool.fact;
    let strike = button("quiet", "Strike off the list", "strike-tool", move || {
        let _ = opened.strike(fact, None);
    })
    .attr("aria-label", &format!("strike {} off the list", tool.name));
    el("li")
        .class("card")
        .test("tool")
        .with(
            el("p")
                .with(el("strong").text(&tool.name))
                .text(&format!(": {label}")),
        )
        .with(kind.map(|kind| note("trap", kind.trap)))
        .with(setting)
        .with(set)
        .with(trial(opened, tool))
        .with(diary(opened, tool))
        .with(rename(opened, tool))
        .with(row([strike.into()]))
        .into()
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
#[must_use]
pub fn foreseen() -> Piece {
    let opened: Opened = expect_context();
    // What it goes by; a reading changes nothing of it.
    let by = Memo::new(move |_| {
        let by = |build: &Build| (window(build), build.tools.clone());
        opened.build.with(by)
    });
    Piece::live(move || {
        by.track();
        opened
            .build
            .with_untracked(never_good)
            .map(|words| note("notice notice-caution", &words).test("too-coarse"))
            .into()
    })
}

fn never_good(build: &Build) -> Option<String> {
    let window = window(build)?;
    let has = |task| !able(build, &[task]).is_empty();
    let enough = has(Task::RunningClearance) || (has(Task::OutsideSize) && has(Task::InsideSize));
    let settle_with =
        |own: &[Tool]| which_could_settle(Task::RunningClearance, own, &window, DANGEROUS_SIDE);
    if !enough || !settle_with(&own_tools(build)).is_empty() {
        return None;
    }
    let all: Vec<Tool> = INSTRUMENTS.iter().map(|kind| Tool::from(*kind)).collect();
    let ways = settle_with(&all);
    let named: Vec<&str> = ways.iter().take(WAYS_NAMED).map(Way::label).collect();
    let others = if named.is_empty() {
        "Nor could any tool known here: the window is too narrow for the bench. Ask a shop to measure it.".to_owned()
    } else {
        format!("These could: {}.", named.join("; "))
    };
    Some(format!(
        "With the tools on the list no bearing could ever come out as good against these limits, however it turns out, from one reading of each place. {others}"
    ))
}
