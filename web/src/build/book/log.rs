//! The log of a build, the latest first.

use std::collections::BTreeMap;

use build_journal::fact::{Body, Note};
use build_journal::{Build, Fact, FactId, Journal};
use js_sys::Date;
use leptos::prelude::*;
use wasm_bindgen::JsValue;

use super::aside::set_aside;
use super::filter::filter;
use super::photos::{all_photos, picture};
use super::sort::Wanted;
use super::words;
use crate::bench::name_of;
use crate::build::Opened;
use crate::build::merge::to_settle;
use crate::device::drafts::Draft;
use crate::device::exports::exports;
use crate::kit::piece::{El, Piece, button, el, note, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::toast::toast;
use crate::kit::words::{too_long, word_field};

/// As many lines are shown at once: ten thousand would keep a phone busy.
const LINES: usize = 200;
const NOTE_AT_MOST: usize = 2000;

/// The page of the book.
#[must_use]
pub fn book() -> Piece {
    let opened: Opened = expect_context();
    let exports = exports();
    let toast = toast();
    let shown = RwSignal::new(LINES);
    let journal = opened.journal;
    let export = button("", "Export", "export", move || {
        let name = opened.build.with_untracked(name_of);
        exports.hand_over(journal, name, toast);
    });
    let lead = el("p").class("lead").live_text(move || {
        format!(
            "{} lines, the latest first. Nothing is rubbed out: what is struck out stays readable and counts no more.",
            journal.with(Journal::len)
        )
    });
    let exported = el("p")
        .class("hint")
        .test("exported")
        .live_text(move || journal.with(|journal| exports.words(journal)));
    let problems = Piece::live(move || {
        let lines: Vec<String> = opened.build.with(|build| {
            build
                .problems
                .iter()
                .map(|problem| problem.text.clone())
                .collect()
        });
        (!lines.is_empty())
            .then(|| section("Could not be used").with(sentences("findings", &lines)))
            .into()
    });
    let wanted = RwSignal::new(Wanted::default());
    let found = Memo::new(move |_| {
        let wanted = wanted.get();
        journal.with(|journal| journal.facts().filter(|fact| wanted.holds(fact)).count())
    });
    let lines = el("ol")
        .class("log")
        .attr("reversed", "")
        .test("log")
        .live(move || {
            let (most, wanted) = (shown.get(), wanted.get());
            journal.with(|journal| {
                opened.build.with(|build| {
                    let facts = journal.facts().rev().filter(|fact| wanted.holds(fact));
                    let facts = facts.take(most);
                    let strikes = build.struck.iter().map(|one| (one.fact, one.by)).collect();
                    Piece::all(facts.map(|fact| line(opened, fact, journal, build, &strikes)))
                })
            })
        });
    let none = Piece::when(
        move || found.get() == 0,
        || note("lead", "No line is of this sort.").into(),
    );
    let earlier = Piece::when(
        move || found.get() > shown.get(),
        move || {
            button("quiet", "Earlier lines", "earlier", move || {
                shown.update(|shown| *shown += LINES);
            })
            .into()
        },
    );
    Piece::all([
        title("The book").into(),
        lead.into(),
        row([export.into()]).into(),
        exported.into(),
        to_settle(opened),
        write_note(opened).into(),
        problems,
        set_aside(),
        all_photos(opened),
        filter(journal, wanted),
        lines.into(),
        none,
        earlier,
    ])
}

fn line(
    opened: Opened,
    fact: &Fact,
    journal: &Journal,
    build: &Build,
    strikes: &BTreeMap<FactId, FactId>,
) -> Piece {
    let words = words::of(fact, journal, build);
    let by = strikes.get(&fact.id()).copied();
    let picture = match fact.body() {
        Body::Photo(photo) if by.is_none() => Some(picture(photo, &words)),
        _ => None,
    };
    let is_strike = matches!(fact.body(), Body::Struck(_));
    // What is struck is brought back by striking its strike.
    let (action, target, name) = match (by, is_strike) {
        (Some(strike), _) => ("Take the strike back", strike, "unstrike"),
        (None, true) => ("Take it back", fact.id(), "unstrike"),
        (None, false) => ("Strike out", fact.id(), "strike"),
    };
    let said = el(if by.is_some() { "del" } else { "span" }).text(&words);
    el("li")
        .class(if by.is_some() {
            "log-line struck"
        } else {
            "log-line"
        })
        .test("fact")
        .with(el("p").class("log-words").with(said))
        .with(picture)
        .with(note("hint", &time(fact)))
        .with(button("quiet", action, name, move || {
            let _ = opened.strike(target, None);
        }))
        .into()
}

/// When it was written, as the device's clock said.
pub fn time(fact: &Fact) -> String {
    let date = Date::new(&JsValue::from_f64(fact.clock() as f64));
    if date.get_time().is_nan() {
        return "at no time known".to_owned();
    }
    date.to_locale_string("default", &JsValue::UNDEFINED).into()
}

fn write_note(opened: Opened) -> El {
    let draft = Draft::of(opened.draft("note"));
    let write = move || {
        let text = draft.now().trim().to_owned();
        if !text.is_empty()
            && too_long(&text, NOTE_AT_MOST).is_none()
            && opened
                .write_down(Body::Note(Note {
                    text,
                    place: None,
                    step: None,
                }))
                .is_some()
        {
            draft.clear();
        }
    };
    el("div")
        .class("note")
        .with(word_field("note", "Note", "", draft, NOTE_AT_MOST, || None))
        .with(button("quiet", "Write it down", "note-write", write))
}
