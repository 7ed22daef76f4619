//! Setting a tool that has no scale of its own for sizes: what it was zeroed or
//! is read on, at which size, and which way its needle goes.

use assembly_core::fit::running_clearance::NeedleSense;
use assembly_core::quantity::Kind;
use assembly_core::tool::Task;
use build_journal::fact::{SetOn, ToolSet};
use build_journal::fold::{Build, ListedTool, Taken, ToolSetting};
use build_journal::{Body, FactId, SettingId, ToolId};
use build_plan::measure::MAIN_JOURNAL_DIAMETER;
use leptos::prelude::*;

use super::tool_choice::{able, kind_of};
use crate::build::Opened;
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::pick::{Pick, Word};

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
        set.locked_at.and_then(|fact| reading(build, fact)),
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

fn reading(build: &Build, fact: FactId) -> Option<&Taken> {
    build
        .mains
        .iter()
        .flat_map(|bearing| &bearing.readings)
        .find(|taken| taken.fact == fact)
}

/// The form that sets a tool.
#[component]
pub fn Zeroing(
    /// The tool.
    tool: ListedTool,
    /// Called when it is set.
    #[prop(optional)]
    done: Option<Callback<()>>,
) -> impl IntoView {
    let opened: Opened = expect_context();
    let settings = settings();
    let id = tool.tool;
    let dial = has_dial(&tool);
    let draft =
        |name: &str, start: &str| Draft::or(opened.draft(&format!("set/{id}/{name}")), start);
    let outside = opened
        .build
        .with_untracked(|build| able(build, Task::OutsideSize));
    let first = outside
        .first()
        .map_or_else(|| STANDARD.to_owned(), |tool| tool.tool.to_string());
    let on = draft("on", &first);
    let at = draft("at", "");
    let size = draft("size", "");
    let reads = draft("reads", if dial { NEEDLE } else { WHOLE });
    let sense = draft("sense", "smaller");
    let mut on_words: Vec<Word> = outside
        .iter()
        .map(|tool| Word::of(tool.tool.to_string(), tool.name.clone()))
        .collect();
    on_words.push(Word::of(STANDARD, "a setting ring or standard"));
    let on_tool = move || ToolId::parse(&on.get()).ok();
    // The newest readings that this micrometer took, to be still locked at.
    let journals = Memo::new(move |_| {
        let on = on_tool();
        opened.build.with(|build| {
            let mut found: Vec<(FactId, String)> = build
                .mains
                .iter()
                .flat_map(|bearing| &bearing.readings)
                .filter(|taken| on.is_some() && taken.reading.tool == on)
                .filter(|taken| {
                    taken
                        .measure
                        .is_some_and(|one| one.id == MAIN_JOURNAL_DIAMETER.id)
                })
                .filter_map(|taken| {
                    let (typed, place) = (taken.counting()?, taken.place?);
                    Some((taken.fact, format!("{typed}, {place}")))
                })
                .collect();
            found.sort_by_key(|one| std::cmp::Reverse(one.0));
            found.truncate(JOURNALS_OFFERED);
            found
        })
    });
    let needle = move || dial && reads.get() == NEEDLE;
    let locked = move || {
        FactId::parse(&at.get())
            .ok()
            .filter(|fact| journals.get().iter().any(|one| one.0 == *fact))
    };
    let asks_size = move || needle() && locked().is_none();
    let size_unit = Signal::derive(move || {
        settings
            .units()
            .of(Kind::Length, MAIN_JOURNAL_DIAMETER.units)
    });
    let size_typed = move || read_text(&size.get(), Kind::Length, size_unit.get());
    let ready = move || !asks_size() || matches!(size_typed(), Some(Ok(_)));
    let save = move |_| {
        let by_size = asks_size();
        let wrote = opened.write_down(Body::ToolSet(ToolSet {
            tool: id,
            setting: SettingId::from_random(chance::bits()),
            set_on: on_tool().map_or(SetOn::Standard, SetOn::Tool),
            set_at: by_size.then(|| size.now()),
            unit: by_size.then(|| size_unit.get_untracked().symbol.to_owned()),
            locked_at: locked().filter(|_| needle()),
            needle: needle().then(|| match sense.now().as_str() {
                "larger" => NeedleSense::ClockwiseIsLarger,
                _ => NeedleSense::ClockwiseIsSmaller,
            }),
        }));
        if wrote.is_some() {
            for draft in [at, size] {
                draft.clear();
            }
            if let Some(done) = done {
                done.run(());
            }
        }
    };
    let question = if dial { "Zeroed on" } else { "Read on" };
    view! {
        <div class="zeroing" data-test="zeroing">
            <Pick
                name=format!("set-on-{id}")
                label=question
                hint="On the micrometer that measured the journals, that micrometer's own error cancels in the clearance."
                words=on_words
                picked=Signal::derive(move || on.get())
                on_pick=Callback::new(move |id| on.set(id))
            />
            {dial.then(|| view! {
                <Pick
                    name=format!("reads-{id}")
                    label="What do you read off it?"
                    words=vec![Word::of(NEEDLE, "the needle, from zero"), Word::of(WHOLE, "whole sizes")]
                    picked=Signal::derive(move || reads.get())
                    on_pick=Callback::new(move |id| reads.set(id))
                />
            })}
            <Show when=needle>
                {move || {
                    let mut words: Vec<Word> = journals
                        .get()
                        .into_iter()
                        .map(|(fact, words)| Word::of(fact.to_string(), format!("still locked at {words}")))
                        .collect();
                    (!words.is_empty()).then(|| {
                        words.push(Word::of(OTHER_SIZE, "another size"));
                        view! {
                            <Pick
                                name=format!("at-{id}")
                                label="At which size?"
                                hint="Best: lock the micrometer at the journal and zero the gauge between its anvils without touching the thimble."
                                words
                                picked=Signal::derive(move || at.get())
                                on_pick=Callback::new(move |id| at.set(id))
                            />
                        }
                    })
                }}
                <Show when=asks_size>
                    <QuantityField
                        name=format!("size-{id}")
                        label="The size it was zeroed at"
                        draft=size
                        kind=Kind::Length
                        unit=size_unit
                        next_word="Done"
                    />
                </Show>
                <Pick
                    name=format!("sense-{id}")
                    label="Which way does the needle go?"
                    hint="Press the anvils together a little and watch: on most gauges clockwise is then smaller."
                    words=vec![Word::of("smaller", "clockwise is smaller"), Word::of("larger", "clockwise is larger")]
                    picked=Signal::derive(move || sense.get())
                    on_pick=Callback::new(move |id| sense.set(id))
                />
            </Show>
            {move || (!ready()).then(|| view! {
                <p class="hint">"Say at which size it was zeroed, and it can be used."</p>
            })}
            <button
                type="button"
                class="button"
                data-test="zeroed"
                disabled=move || !ready()
                on:click=save
            >
                {if dial { "It is zeroed" } else { "That is how it is read" }}
            </button>
        </div>
    }
}
