//! The log of a build, the latest first.

use build_journal::fact::{Body, Note};
use build_journal::{Fact, FactId, Journal};
use js_sys::Date;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

use super::aside::SetAside;
use super::words;
use crate::bench::name_of;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::exports::exports;
use crate::kit::field::WordField;
use crate::kit::section::{Section, Sentences};
use crate::kit::toast::toast;

/// As many lines are shown at once.
const LINES: usize = 60;

/// The page of the book.
#[component]
pub fn Book() -> impl IntoView {
    let opened: Opened = expect_context();
    let exports = exports();
    let toast = toast();
    let shown = RwSignal::new(LINES);
    let journal = opened.journal;
    let export = move |_| {
        let name = opened.build.with_untracked(name_of);
        let done = journal.with_untracked(|journal| exports.export(journal, &name));
        toast.say(
            done.err()
                .unwrap_or_else(|| "Exported to your downloads.".to_owned()),
        );
    };
    let problems = move || {
        let lines: Vec<String> = opened.build.with(|build| {
            build
                .problems
                .iter()
                .map(|problem| problem.text.clone())
                .collect()
        });
        (!lines.is_empty()).then(|| {
            view! {
                <Section title="Could not be used">
                    <Sentences lines class="sentences findings" />
                </Section>
            }
        })
    };
    let any_earlier = move || journal.with(Journal::len) > shown.get();
    view! {
        <h1>"The book"</h1>
        <p class="lead">
            {move || journal.with(Journal::len)}" lines, the latest first. Nothing is rubbed out: what is struck out stays readable and counts no more."
        </p>
        <div class="row">
            <button type="button" class="button" data-test="export" on:click=export>"Export"</button>
        </div>
        <p class="hint" data-test="exported">{move || journal.with(|journal| exports.words(journal))}</p>
        <WriteNote />
        {problems}
        <SetAside />
        <ol class="log" reversed data-test="log">
            {move || {
                let most = shown.get();
                journal.with(|journal| {
                    opened.build.with(|build| {
                        let rows: Vec<_> = journal
                            .facts()
                            .rev()
                            .take(most)
                            .map(|fact| {
                                let words = words::of(fact, journal, build);
                                let struck = build.struck.iter().find(|one| one.fact == fact.id());
                                let by = struck.map(|one| one.by);
                                let is_strike = matches!(fact.body(), Body::Struck(_));
                                view! { <Line id=fact.id() time=time(fact) words by is_strike /> }
                            })
                            .collect();
                        rows
                    })
                })
            }}
        </ol>
        <Show when=any_earlier>
            <button type="button" class="button quiet" on:click=move |_| shown.update(|shown| *shown += LINES)>
                "Earlier lines"
            </button>
        </Show>
    }
}

#[component]
fn Line(
    id: FactId,
    time: String,
    words: String,
    by: Option<FactId>,
    is_strike: bool,
) -> impl IntoView {
    let opened: Opened = expect_context();
    let words = if by.is_some() {
        view! { <del>{words.clone()}</del> }.into_any()
    } else {
        words.clone().into_any()
    };
    // What is struck is brought back by striking its strike.
    let (action, target, name) = match (by, is_strike) {
        (Some(strike), _) => ("Take the strike back", strike, "unstrike"),
        (None, true) => ("Take it back", id, "unstrike"),
        (None, false) => ("Strike out", id, "strike"),
    };
    view! {
        <li class="log-line" class:struck=by.is_some() data-test="fact">
            <p class="log-words">{words}</p>
            <p class="hint">{time}</p>
            <button
                type="button"
                class="button quiet"
                data-test=name
                on:click=move |_| {
                    let _ = opened.strike(target, None);
                }
            >
                {action}
            </button>
        </li>
    }
}

/// When it was written, as the device's clock said.
fn time(fact: &Fact) -> String {
    let date = Date::new(&JsValue::from_f64(fact.clock() as f64));
    if date.get_time().is_nan() {
        return "at no time known".to_owned();
    }
    date.to_locale_string("default", &JsValue::UNDEFINED).into()
}

#[component]
fn WriteNote() -> impl IntoView {
    let opened: Opened = expect_context();
    let draft = Draft::of(opened.draft("note"));
    let write = move |_| {
        let text = draft.now().trim().to_owned();
        if !text.is_empty()
            && opened
                .write_down(Body::Note(Note { text, place: None }))
                .is_some()
        {
            draft.clear();
        }
    };
    view! {
        <div class="note">
            <WordField name="note" label="Note" draft at_most=2000 />
            <button type="button" class="button quiet" data-test="note-write" on:click=write>"Write it down"</button>
        </div>
    }
}
