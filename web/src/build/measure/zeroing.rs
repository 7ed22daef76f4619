//! Setting a tool that has no scale of its own for sizes: what it was zeroed or
//! is read on, at which size, and which way its needle goes.

use assembly_core::fit::running_clearance::NeedleSense;
use assembly_core::quantity::{Kind, Typed, Unit, unit_of};
use assembly_core::tool::Task;
use build_journal::fact::{SetOn, ToolSet};
use build_journal::fold::{Build, ListedTool, ToolSetting};
use build_journal::{Body, FactId, SettingId, ToolId};
use build_plan::At;
use build_plan::measure::MAIN_JOURNAL_DIAMETER;
use leptos::prelude::*;

use super::tool_choice::{able, kind_of};
use crate::build::Opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note};

/// As many readings of journals are offered to be locked at.
const JOURNALS_OFFERED: usize = 4;
const STANDARD: &str = "standard";
const OTHER_SIZE: &str = "other";
const NEEDLE: &str = "needle";
const WHOLE: &str = "whole";

/// Whether a tool has to be set before its readings mean anything.
#[must_use]
pub fn wants_setting(tool: &ListedTool) -> bool {
    kind_of(tool).is_some_and(|kind| kind.compares)
}

/// Whether it has a dial that is zeroed; else it is read on another tool each time.
fn has_dial(tool: &ListedTool) -> bool {
    kind_of(tool).is_some_and(|kind| kind.setting_transfer > 0.0)
}

/// The setting in force, in words.
#[must_use]
pub fn setting_words(build: &Build, setting: &ToolSetting) -> String {
    setting_words_of(build, &setting.set)
}

/// A setting in words.
#[must_use]
pub fn setting_words_of(build: &Build, set: &ToolSet) -> String {
    let on = match set.set_on {
        SetOn::Standard => "a standard".to_owned(),
        SetOn::Tool(id) => build.tools.iter().find(|tool| tool.tool == id).map_or_else(
            || "a tool not on the list".to_owned(),
            |tool| format!("the {}", tool.name),
        ),
    };
    let at = match (
        set.locked_at.and_then(|fact| build.reading(fact)),
        &set.set_at,
    ) {
        (Some(taken), _) => {
            let place = taken
                .place
                .map(|place| format!(" at {place}"))
                .unwrap_or_default();
            format!(", locked{place}, {}", taken.reading.typed)
        }
        (None, Some(text)) => {
            format!(" at {text} {}", set.unit.as_deref().unwrap_or_default())
        }
        (None, None) => String::new(),
    };
    let reads = match set.needle {
        Some(NeedleSense::ClockwiseIsSmaller) => "; its needle is read, clockwise is smaller",
        Some(NeedleSense::ClockwiseIsLarger) => "; its needle is read, clockwise is larger",
        None => "; whole sizes are read",
    };
    format!("Set on {on}{at}{reads}.")
}

/// The size at a setting's zero, when it can be read.
#[must_use]
pub fn zero_of(build: &Build, set: &ToolSet) -> Option<Typed> {
    if let Some(locked) = set.locked_at {
        return build.reading(locked)?.counting().cloned();
    }
    let lone = unit_of(Kind::Length, set.unit.as_deref()?)?;
    read_text(set.set_at.as_deref()?, Kind::Length, lone)?.ok()
}

/// The form that sets a tool.
#[must_use]
pub fn zeroing(tool: &ListedTool) -> El {
    let opened: Opened = expect_context();
    let settings = settings();
    let id = tool.tool;
    let dial = has_dial(tool);
    let draft =
        |name: &str, start: &str| Draft::or(opened.draft(&format!("set/{id}/{name}")), start);
    let outside = opened
        .build
        .with_untracked(|build| able(build, &[Task::OutsideSize]));
    let first = outside
        .first()
        .map_or_else(|| STANDARD.to_owned(), |tool| tool.tool.to_string());
    let form = Form {
        opened,
        tool: id,
        dial,
        on: draft("on", &first),
        at: draft("at", ""),
        size: draft("size", ""),
        reads: draft("reads", if dial { NEEDLE } else { WHOLE }),
        sense: draft("sense", "smaller"),
    };
    let mut on_words: Vec<Word> = outside
        .iter()
        .map(|tool| Word::of(tool.tool.to_string(), tool.name.clone()))
        .collect();
    on_words.push(Word::of(STANDARD, "a setting ring or standard"));
    let on = choice(
        &format!("set-on-{id}"),
        if dial { "Zeroed on" } else { "Read on" },
        "On the micrometer that measured the journals, that micrometer's own error cancels in the clearance.",
        on_words,
        form.on,
    );
    let reads = dial.then(|| {
        let words = vec![
            Word::of(NEEDLE, "the needle, from zero"),
            Word::of(WHOLE, "whole sizes"),
        ];
        choice(
            &format!("reads-{id}"),
            "What do you read off it?",
            "",
            words,
            form.reads,
        )
    });
    let unit = move || {
        settings
            .units()
            .of(Kind::Length, MAIN_JOURNAL_DIAMETER.units)
    };
    let needle = Piece::when(move || form.needle(), move || form.needle_part(unit));
    let missing = Piece::when(
        move || !form.is_ready(unit()),
        || {
            note(
                "hint",
                "Say at which size it was zeroed, and it can be used.",
            )
            .into()
        },
    );
    let word = if dial {
        "It is zeroed"
    } else {
        "That is how it is read"
    };
    let save = button("", word, "zeroed", move || form.save(untrack(unit)))
        .live_attr("disabled", move || {
            (!form.is_ready(unit())).then(String::new)
        });
    el("div")
        .class("zeroing")
        .test("zeroing")
        .with(on)
        .with(reads)
        .with(needle)
        .with(missing)
        .with(save)
}

fn choice(name: &str, label: &str, hint: &str, words: Vec<Word>, draft: Draft) -> El {
    pick(
        name,
        label,
        hint,
        words,
        move || draft.get(),
        move |id| draft.set(id),
    )
}

/// What is being said of how a tool is set.
#[derive(Clone, Copy)]
struct Form {
    opened: Opened,
    tool: ToolId,
    dial: bool,
    on: Draft,
    at: Draft,
    size: Draft,
    reads: Draft,
    sense: Draft,
}

impl Form {
    /// The tool it is set on; `None` for a standard.
    fn on_tool(self) -> Option<ToolId> {
        ToolId::parse(&self.on.get()).ok()
    }

    /// The newest readings that the other tool took, to be still locked at.
    fn journals(self) -> Vec<(FactId, String)> {
        let Some(on) = self.on_tool() else {
            return Vec::new();
        };
        self.opened.build.with(|build| {
            let mut found: Vec<(FactId, String)> = build
                .mains
                .iter()
                .map(|bearing| At::Main(bearing.main.number()))
                .flat_map(|main| build.readings(&MAIN_JOURNAL_DIAMETER, main))
                .filter(|taken| taken.reading.tool == Some(on))
                .filter_map(|taken| {
                    let (typed, place) = (taken.counting()?, taken.place?);
                    Some((taken.fact, format!("{typed}, {place}")))
                })
                .collect();
            found.sort_unstable_by_key(|one| std::cmp::Reverse(one.0));
            found.truncate(JOURNALS_OFFERED);
            found
        })
    }

    fn needle(self) -> bool {
        self.dial && self.reads.get() == NEEDLE
    }

    fn locked_at(self) -> Option<FactId> {
        let fact = FactId::parse(&self.at.get()).ok()?;
        self.journals()
            .iter()
            .any(|one| one.0 == fact)
            .then_some(fact)
    }

    fn asks_size(self) -> bool {
        self.needle() && self.locked_at().is_none()
    }

    fn is_ready(self, unit: &'static Unit) -> bool {
        let size = || read_text(&self.size.get(), Kind::Length, unit);
        !self.asks_size() || matches!(size(), Some(Ok(_)))
    }

    fn needle_part(self, unit: impl Fn() -> &'static Unit + Copy + 'static) -> Piece {
        let id = self.tool;
        let at = Piece::live(move || {
            let journals = self.journals();
            if journals.is_empty() {
                return Piece::none();
            }
            let mut words: Vec<Word> = journals
                .into_iter()
                .map(|(fact, words)| Word::of(fact.to_string(), format!("still locked at {words}")))
                .collect();
            words.push(Word::of(OTHER_SIZE, "another size"));
            let best = "Best: lock the micrometer at the journal and zero the gauge between its anvils without touching the thimble.";
            choice(&format!("at-{id}"), "At which size?", best, words, self.at).into()
        });
        let size = Piece::when(
            move || self.asks_size(),
            move || {
                let label = "The size it was zeroed at";
                QuantityField::new(format!("size-{id}"), label, self.size, Kind::Length, unit)
                    .next_word("Done")
                    .piece()
                    .into()
            },
        );
        let senses = vec![
            Word::of("smaller", "clockwise is smaller"),
            Word::of("larger", "clockwise is larger"),
        ];
        let sense = choice(
            &format!("sense-{id}"),
            "Which way does the needle go?",
            "Press the anvils together a little and watch: on most gauges clockwise is then smaller.",
            senses,
            self.sense,
        );
        Piece::all([at, size, sense.into()])
    }

    fn save(self, unit: &'static Unit) {
        let (by_size, needle, on, locked) = untrack(|| {
            (
                self.asks_size(),
                self.needle(),
                self.on_tool(),
                self.locked_at(),
            )
        });
        let wrote = self.opened.write_down(Body::ToolSet(ToolSet {
            tool: self.tool,
            setting: SettingId::from_random(chance::bits()),
            set_on: on.map_or(SetOn::Standard, SetOn::Tool),
            set_at: by_size.then(|| self.size.now()),
            unit: by_size.then(|| unit.symbol.to_owned()),
            locked_at: locked.filter(|_| needle),
            needle: needle.then(|| match self.sense.now().as_str() {
                "larger" => NeedleSense::ClockwiseIsLarger,
                _ => NeedleSense::ClockwiseIsSmaller,
            }),
        }));
        if wrote.is_some() {
            self.at.clear();
            self.size.clear();
        }
    }
}
