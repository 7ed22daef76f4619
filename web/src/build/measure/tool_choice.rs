//! Which tool is in hand for a measure, and listing one.

use assembly_core::tool::{INSTRUMENTS, Instrument, Task, Tool, instrument};
use build_journal::ToolId;
use build_journal::fold::{Build, ListedTool};
use build_plan::Measure;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, Per};
use leptos::prelude::*;

use super::naming::{list_tool, same_on_the_list, second_of_a_name};
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::Piece;

/// The kind of a listed tool, when this version knows it.
#[must_use]
pub fn kind_of(tool: &ListedTool) -> Option<&'static Instrument> {
    instrument(&tool.instrument)
}

/// The listed tools that can do one of these.
#[must_use]
pub fn able(build: &Build, tasks: &[Task]) -> Vec<ListedTool> {
    build
        .tools
        .iter()
        .filter(|tool| kind_of(tool).is_some_and(|kind| can(kind, tasks)))
        .cloned()
        .collect()
}

/// Whether a kind of tool can do one of these.
fn can(kind: &Instrument, tasks: &[Task]) -> bool {
    tasks.iter().any(|task| kind.can(*task))
}

/// Whether there is any kind of tool for a measure.
#[must_use]
pub fn has_tools(measure: &Measure) -> bool {
    INSTRUMENTS.iter().any(|kind| can(kind, measure.tasks()))
}

/// The listed tools, as what is known of them.
#[must_use]
pub fn own_tools(build: &Build) -> Vec<Tool> {
    build.tools.iter().filter_map(ListedTool::known).collect()
}

/// The tool in hand for a measure: the one picked last, else the one read with
/// last, else the only one there is.
#[derive(Clone, Copy)]
pub struct InHand {
    opened: Opened,
    picked: StoredValue<Vec<(&'static str, Draft)>>,
}

impl InHand {
    /// What is in hand for the main bearings of this build.
    #[must_use]
    pub fn of_mains(opened: Opened) -> Self {
        let read = |measure: &&&Measure| measure.spots.per == Per::Main && measure.can_be_read();
        Self::of(opened, build_plan::MEASURES.iter().filter(read).copied())
    }

    /// What is in hand for these measures.
    #[must_use]
    pub fn of(opened: Opened, measures: impl IntoIterator<Item = &'static Measure>) -> Self {
        let picked = measures.into_iter().map(|measure| {
            (
                measure.id,
                Draft::of(opened.draft(&format!("tool/{}", measure.id))),
            )
        });
        Self {
            opened,
            picked: StoredValue::new(picked.collect()),
        }
    }

    fn draft(self, measure: &Measure) -> Option<Draft> {
        self.picked.with_value(|picked| {
            picked
                .iter()
                .find_map(|(id, draft)| (*id == measure.id).then_some(*draft))
        })
    }

    /// The tool for a measure, followed.
    #[must_use]
    pub fn tool(self, measure: &'static Measure) -> Option<ListedTool> {
        let picked = self
            .draft(measure)
            .and_then(|draft| ToolId::parse(&draft.get()).ok());
        self.opened.build.with(|build| {
            let able = able(build, measure.tasks());
            let find = |id: ToolId| able.iter().find(|tool| tool.tool == id).cloned();
            let read_last = || {
                let engine = &build.engine.as_ref()?.engine;
                let parts = measure.spots.per.parts(engine).into_iter();
                parts
                    .flat_map(|at| build.readings(measure, at))
                    .max_by_key(|taken| taken.fact)
                    .and_then(|taken| taken.reading.tool)
            };
            let only = || match able.as_slice() {
                [one] => Some(one.clone()),
                _ => None,
            };
            picked
                .and_then(find)
                .or_else(|| read_last().and_then(find))
                .or_else(only)
        })
    }

    /// Takes a tool in hand.
    pub fn take(self, measure: &'static Measure, tool: ToolId) {
        if let Some(draft) = self.draft(measure) {
            draft.set(tool.to_string());
        }
    }
}

/// Picks the tool for a measure: one from the list, or a kind to put on it.
#[must_use]
pub fn tool_choice(measure: &'static Measure, in_hand: InHand) -> Piece {
    let opened: Opened = expect_context();
    let tasks = measure.tasks();
    let (question, take_one) = if measure.id == MAIN_JOURNAL_DIAMETER.id {
        ("Journals are measured with", "Take a tool for journals")
    } else if measure.id == MAIN_BEARING_BORE.id {
        ("Bores are measured with", "Take a tool for bores")
    } else {
        ("Measured with", "Take a tool")
    };
    let picked = move || {
        let tool = in_hand.tool(measure);
        tool.map(|tool| tool.tool.to_string()).unwrap_or_default()
    };
    let listed = Memo::new(move |_| opened.build.with(|build| able(build, tasks)));
    let hand = Piece::live(move || {
        let words: Vec<Word> = listed
            .get()
            .into_iter()
            .map(|tool| Word::of(tool.tool.to_string(), tool.name))
            .collect();
        if words.is_empty() {
            return Piece::none();
        }
        let take = move |id: String| {
            if let Ok(tool) = ToolId::parse(&id) {
                in_hand.take(measure, tool);
            }
        };
        pick(
            &format!("hand-{}", measure.id),
            question,
            "",
            words,
            picked,
            take,
        )
        .into()
    });
    let kinds = INSTRUMENTS
        .iter()
        .filter(|kind| can(kind, tasks))
        .map(|kind| Word::of(kind.id, kind.label))
        .collect();
    // A kind that was picked and is on the list already: it is asked about first.
    let doubled = RwSignal::new(None::<&'static Instrument>);
    let add = move |id: String| {
        let Some(kind) = instrument(&id) else {
            return;
        };
        let there = opened
            .build
            .with_untracked(|build| same_on_the_list(build, kind));
        if there.is_some() {
            doubled.set(Some(kind));
        } else if let Some(tool) = list_tool(opened, kind, None) {
            in_hand.take(measure, tool);
        }
    };
    let asked = Piece::live(move || {
        let Some(kind) = doubled.get() else {
            return Piece::none();
        };
        untrack(|| {
            let there = opened
                .build
                .with_untracked(|build| same_on_the_list(build, kind))?;
            let take = move |tool: ToolId| {
                in_hand.take(measure, tool);
                doubled.set(None);
            };
            Some(second_of_a_name(opened, (kind, &there), take))
        })
        .into()
    });
    let list = pick(
        &format!("list-{}", measure.id),
        take_one,
        "It goes on the list of this build's tools.",
        kinds,
        move || {
            doubled
                .get()
                .map(|kind| kind.id.to_owned())
                .unwrap_or_default()
        },
        add,
    );
    Piece::all([hand, list.into(), asked])
}
