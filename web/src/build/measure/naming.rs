//! What a tool is called: the question when a second of one name comes on the
//! list, and giving a tool another name.

use assembly_core::tool::Instrument;
use build_journal::fact::ToolListed;
use build_journal::fold::{Build, ListedTool, is_one_name};
use build_journal::{Body, ToolId};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, p, row};
use crate::kit::section::fold;
use crate::kit::words::{too_long, word_field};

const NAME_AT_MOST: usize = 60;
const MARK_AT_MOST: usize = 60;
const MARK_LABEL: &str = "What tells it apart: its range, or what is engraved on it";

/// The tool on the list that is of this kind and bears its plain name, when there
/// is one: a second would be taken for it.
#[must_use]
pub fn same_on_the_list(build: &Build, kind: &Instrument) -> Option<ListedTool> {
    let same =
        |tool: &&ListedTool| tool.instrument == kind.id && is_one_name(&tool.called, kind.name);
    build.tools.iter().find(same).cloned()
}

/// Puts a tool of this kind on the list.
pub fn list_tool(
    opened: Opened,
    kind: &'static Instrument,
    mark: Option<String>,
) -> Option<ToolId> {
    let tool = ToolId::from_random(chance::bits());
    opened.write_down(Body::ToolListed(ToolListed {
        tool,
        name: kind.name.to_owned(),
        instrument: kind.id.to_owned(),
        mark,
    }))?;
    Some(tool)
}

/// What is wrong with a name and a mark for a tool; `None` when no other tool could
/// be taken for it. `own` is the tool itself when it is on the list already.
fn wrong(build: &Build, own: Option<ToolId>, name: &str, mark: &str) -> Option<String> {
    let mut others = build.tools.iter().filter(|tool| Some(tool.tool) != own);
    let same = others.find(|tool| {
        let its = tool.mark.as_deref().unwrap_or_default();
        is_one_name(&tool.called, name) && is_one_name(its, mark)
    })?;
    Some(if mark.trim().is_empty() {
        format!(
            "Another tool on the list is called “{}”: say what tells this one apart.",
            same.name
        )
    } else {
        format!(
            "The other one is called “{}” as well: say what tells them apart.",
            same.name
        )
    })
}

/// The question when a tool is taken that is on the list already: the same one, or
/// another, and how to tell them apart.
#[must_use]
pub fn second_of_a_name(
    opened: Opened,
    (kind, there): (&'static Instrument, &ListedTool),
    take: impl Fn(ToolId) + Copy + 'static,
) -> El {
    let mark = Draft::of(opened.draft(&format!("second/{}", kind.id)));
    let (same, name) = (there.tool, there.name.clone());
    let wrong_now = move || {
        let mark = mark.get();
        opened
            .build
            .with(|build| wrong(build, None, kind.name, &mark))
            .filter(|_| !mark.trim().is_empty())
    };
    let ready = move || {
        let mark = mark.get();
        !mark.trim().is_empty()
            && too_long(&mark, MARK_AT_MOST).is_none()
            && opened
                .build
                .with(|build| wrong(build, None, kind.name, &mark).is_none())
    };
    let add = move || {
        if !untrack(ready) {
            return;
        }
        let told = mark.now().trim().to_owned();
        if let Some(tool) = list_tool(opened, kind, Some(told)) {
            mark.clear();
            take(tool);
        }
    };
    let that_one = button("", &format!("It is the {name}"), "same-tool", move || {
        mark.clear();
        take(same);
    });
    let another = button("quiet", "It is another one", "second-tool", add)
        .live_attr("disabled", move || (!ready()).then(String::new));
    el("div")
        .class("notice notice-caution")
        .attr("role", "status")
        .test("same-name")
        .with(p(&format!(
            "A tool of this kind is on the list already: the {name}. Two of one name would be mixed up, and their errors with them."
        )))
        .with(row([that_one.into()]))
        .with(word_field(
            &format!("second-{}", kind.id),
            MARK_LABEL,
            "",
            mark,
            MARK_AT_MOST,
            wrong_now,
        ))
        .with(row([another.into()]))
}

/// Gives a tool another name, or says what tells it apart.
#[must_use]
pub fn rename(opened: Opened, tool: &ListedTool) -> Piece {
    let id = tool.tool;
    let draft =
        |part: &str, start: &str| Draft::or(opened.draft(&format!("rename/{id}/{part}")), start);
    let name = draft("name", &tool.called);
    let mark = draft("mark", tool.mark.as_deref().unwrap_or_default());
    let instrument = tool.instrument.clone();
    let says = move || {
        let (name, mark) = (name.get(), mark.get());
        if name.trim().is_empty() {
            return Some("A tool needs a name.".to_owned());
        }
        opened
            .build
            .with(|build| wrong(build, Some(id), &name, &mark))
    };
    let ready = move || {
        says().is_none()
            && too_long(&name.get(), NAME_AT_MOST).is_none()
            && too_long(&mark.get(), MARK_AT_MOST).is_none()
    };
    let save = button("", "That is its name", "rename-save", move || {
        if !untrack(ready) {
            return;
        }
        let told = mark.now().trim().to_owned();
        let listed = ToolListed {
            tool: id,
            name: name.now().trim().to_owned(),
            instrument: instrument.clone(),
            mark: Some(told).filter(|told| !told.is_empty()),
        };
        if opened.write_down(Body::ToolListed(listed)).is_some() {
            name.clear();
            mark.clear();
        }
    })
    .live_attr("disabled", move || (!ready()).then(String::new));
    let inside = el("div")
        .class("inset")
        .with(word_field(
            &format!("name-{id}"),
            "Name",
            "",
            name,
            NAME_AT_MOST,
            says,
        ))
        .with(word_field(
            &format!("mark-{id}"),
            MARK_LABEL,
            "",
            mark,
            MARK_AT_MOST,
            || None,
        ))
        .with(row([save.into()]));
    fold("Rename it", inside).test("rename").into()
}
