//! Which tool is in hand for a measure, and listing one.

use assembly_core::tool::{INSTRUMENTS, Instrument, Task, Tool, instrument};
use build_journal::fact::ToolListed;
use build_journal::fold::{Build, ListedTool};
use build_journal::{Body, ToolId};
use build_plan::Measure;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, Per};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::Piece;

/// What a tool must be able to do to read this measure.
#[must_use]
pub fn task_of(measure: &Measure) -> Task {
    if measure.id == MAIN_JOURNAL_DIAMETER.id {
        Task::OutsideSize
    } else if measure.id == MAIN_BEARING_BORE.id {
        Task::InsideSize
    } else {
        Task::RunningClearance
    }
}

/// The kind of a listed tool, when this version knows it.
#[must_use]
pub fn kind_of(tool: &ListedTool) -> Option<&'static Instrument> {
    instrument(&tool.instrument)
}

/// The listed tools that can do this.
#[must_use]
pub fn able(build: &Build, task: Task) -> Vec<ListedTool> {
    build
        .tools
        .iter()
        .filter(|tool| kind_of(tool).is_some_and(|kind| kind.can(task)))
        .cloned()
        .collect()
}

/// The listed tools, as what is known of them.
#[must_use]
pub fn own_tools(build: &Build) -> Vec<Tool> {
    let known =
        |tool: &ListedTool| Some(Tool::new(tool.tool.to_string(), &tool.name, kind_of(tool)?));
    build.tools.iter().filter_map(known).collect()
}

/// The tool in hand for a measure: the one picked last, else the one read with
/// last, else the only one there is.
#[derive(Clone, Copy)]
pub struct InHand {
    opened: Opened,
    picked: StoredValue<Vec<(&'static str, Draft)>>,
}

impl InHand {
    /// What is in hand in this build.
    #[must_use]
    pub fn of(opened: Opened) -> Self {
        let of_mains = build_plan::MEASURES
            .iter()
            .filter(|measure| measure.spots.per == Per::Main && measure.can_be_read());
        let picked = of_mains.map(|measure| {
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
            let able = able(build, task_of(measure));
            let find = |id: ToolId| able.iter().find(|tool| tool.tool == id).cloned();
            let read_last = || {
                let readings = build.mains.iter().flat_map(|bearing| &bearing.readings);
                readings
                    .filter(|taken| taken.measure.is_some_and(|one| one.id == measure.id))
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

/// Puts a tool of this kind on the list. A second one of a kind gets a number.
pub fn list_tool(opened: Opened, kind: &'static Instrument) -> Option<ToolId> {
    let tool = ToolId::from_random(chance::bits());
    let name = opened.build.with_untracked(|build| {
        let taken = |name: &str| build.tools.iter().any(|tool| tool.name == name);
        let numbered = (2..).map(|number| format!("{} {number}", kind.name));
        std::iter::once(kind.name.to_owned())
            .chain(numbered)
            .find(|name| !taken(name))
    })?;
    opened.write_down(Body::ToolListed(ToolListed {
        tool,
        name,
        instrument: kind.id.to_owned(),
    }))?;
    Some(tool)
}

/// Picks the tool for a measure: one from the list, or a kind to put on it.
#[must_use]
pub fn tool_choice(measure: &'static Measure, in_hand: InHand) -> Piece {
    let opened: Opened = expect_context();
    let task = task_of(measure);
    let (question, take_one) = match task {
        Task::OutsideSize => ("Journals are measured with", "Take a tool for journals"),
        Task::InsideSize => ("Bores are measured with", "Take a tool for bores"),
        _ => ("Measured with", "Take a tool"),
    };
    let picked = move || {
        let tool = in_hand.tool(measure);
        tool.map(|tool| tool.tool.to_string()).unwrap_or_default()
    };
    let listed = Memo::new(move |_| opened.build.with(|build| able(build, task)));
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
        .filter(|kind| kind.can(task))
        .map(|kind| Word::of(kind.id, kind.label))
        .collect();
    let add = move |id: String| {
        if let Some(tool) = instrument(&id).and_then(|kind| list_tool(opened, kind)) {
            in_hand.take(measure, tool);
        }
    };
    let list = pick(
        &format!("list-{}", measure.id),
        take_one,
        "It goes on the list of this build's tools.",
        kinds,
        String::new,
        add,
    );
    Piece::all([hand, list.into()])
}
