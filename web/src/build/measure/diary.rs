//! The diary of a tool: when it was held against its zero, how it was, and what
//! a bad zero puts in doubt.

use build_journal::fact::{Outcome, ToolChecked};
use build_journal::fold::{Build, ListedTool};
use build_journal::{Body, FactId, Journal, ToolId};
use leptos::prelude::*;

use crate::build::Opened;
use crate::build::book::{time, words_of};
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, note, row};
use crate::kit::section::{fold, sentences};
use crate::kit::verdict::{Mark, shape};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;
const HOW: &str = "Wipe both faces, close it or hold it on its standard, feel it twice. Do it before each sitting and once more after.";
/// As many readings in doubt are named.
const NAMED: usize = 3;

/// The diary of a tool, with the way to write in it.
#[must_use]
pub fn diary(opened: Opened, tool: &ListedTool) -> Piece {
    let id = tool.tool;
    let lines = tool.checks.iter().rev().map(|seen| {
        let (mark, word) = match seen.outcome {
            Outcome::Good => (Mark::Good, "read right"),
            Outcome::Bad => (Mark::Bad, "was off"),
        };
        let when = opened
            .journal
            .with_untracked(|journal| journal.get(seen.fact).map(time));
        let said = seen.words.as_deref().map(|words| format!(": {words}"));
        el("li")
            .test("zero-seen")
            .attr("data-mark", mark.name())
            .with(shape(mark))
            .with(el("span").text(&format!(
                "{}: {word}{}",
                when.unwrap_or_default(),
                said.unwrap_or_default()
            )))
            .into()
    });
    let lines: Vec<Piece> = lines.collect();
    let seen = (!lines.is_empty()).then(|| el("ul").class("diary").all(lines));
    let title = match tool.checks.last() {
        None => "Check its zero".to_owned(),
        Some(_) => "Check its zero again".to_owned(),
    };
    Piece::all([
        doubts(opened, id),
        seen.into(),
        fold(&title, checking(opened, tool))
            .test("check-zero")
            .into(),
    ])
}

fn checking(opened: Opened, tool: &ListedTool) -> El {
    let id = tool.tool;
    let words = Draft::of(opened.draft(&format!("zero/{id}")));
    let say = move |outcome: Outcome| {
        let said = words.now().trim().to_owned();
        if too_long(&said, WORDS_AT_MOST).is_some() {
            return;
        }
        let checked = ToolChecked {
            tool: id,
            outcome,
            words: Some(said).filter(|said| !said.is_empty()),
        };
        if opened.write_down(Body::ToolChecked(checked)).is_some() {
            words.clear();
        }
    };
    el("div")
        .class("inset")
        .with(note("hint", HOW))
        .with(word_field(
            &format!("zero-{id}"),
            "Against what, and by how much it is off",
            "",
            words,
            WORDS_AT_MOST,
            || None,
        ))
        .with(row([
            button("", "It reads right", "zero-good", move || {
                say(Outcome::Good)
            })
            .into(),
            button("quiet", "It is off", "zero-bad", move || say(Outcome::Bad)).into(),
        ]))
}

/// The readings that this tool's bad zero puts in doubt.
fn in_doubt(build: &Build, tool: ToolId) -> Vec<FactId> {
    let doubted = build.doubted.iter();
    doubted
        .filter(|(_, doubt)| doubt.tool == tool)
        .map(|(fact, _)| *fact)
        .collect()
}

fn doubts(opened: Opened, tool: ToolId) -> Piece {
    let found = Memo::new(move |_| opened.build.with(|build| in_doubt(build, tool)));
    Piece::live(move || {
        let facts = found.get();
        if facts.is_empty() {
            return Piece::none();
        }
        let lines = opened.journal.with_untracked(|journal| {
            opened
                .build
                .with_untracked(|build| named(&facts, journal, build))
        });
        let count = match facts.len() {
            1 => "One reading is in doubt".to_owned(),
            more => format!("{more} readings are in doubt"),
        };
        let words = format!(
            "{count}: the tool was last known to be right before they were taken, and was off afterwards. Set it right and measure them again. If the check itself was a slip, strike it out in the book."
        );
        el("div")
            .class("notice notice-caution")
            .attr("role", "status")
            .test("in-doubt")
            .with(el("p").text(&words))
            .with(sentences("", &lines))
            .into()
    })
}

fn named(facts: &[FactId], journal: &Journal, build: &Build) -> Vec<String> {
    let said = |id: &FactId| journal.get(*id).map(|fact| words_of(fact, journal, build));
    let mut lines: Vec<String> = facts.iter().take(NAMED).filter_map(said).collect();
    if facts.len() > NAMED {
        lines.push(format!("and {} more", facts.len() - NAMED));
    }
    lines
}
