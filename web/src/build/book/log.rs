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
/// As many readings at places that are not there are named.
const NAMED: usize = 20;

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
        elsewhere(opened),
        set_aside(),
        all_photos(opened),
        filter(journal, wanted),
        lines.into(),
        none,
        earlier,
    ])
}

/// Readings at places that this engine does not have, as from a file: they count for
/// nothing, and are named.
fn elsewhere(opened: Opened) -> Piece {
    let facts = Memo::new(move |_| {
        opened.build.with(|build| {
            let standing = build
                .elsewhere
                .iter()
                .filter(|taken| taken.struck.is_none());
            standing.map(|taken| taken.fact).collect::<Vec<FactId>>()
        })
    });
    Piece::live(move || {
        let facts = facts.get();
        if facts.is_empty() {
            return Piece::none();
        }
        let named = facts.iter().take(NAMED);
        let mut lines: Vec<String> = opened.journal.with_untracked(|journal| {
            opened.build.with_untracked(|build| {
                named
                    .filter_map(|fact| Some(words::of(journal.get(*fact)?, journal, build)))
                    .collect()
            })
        });
        if facts.len() > NAMED {
            lines.push(format!("and {} more", facts.len() - NAMED));
        }
        section("Read where this engine has nothing")
            .test("elsewhere")
            .with(note(
                "hint",
                "This engine has no such place or no such measure, as it is described. These readings are kept and count for nothing. Describe the engine as it is, or strike them out.",
            ))
            .with(sentences("findings", &lines))
            .into()
    })
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
        .with(note("hint", &time_words(fact)))
        .with(button("quiet", action, name, move || {
            let _ = opened.strike(target, None);
        }))
        .into()
}

/// From this far on, a device's clock was behind what it had written before, or had
/// seen of other devices: milliseconds.
const BEHIND: i64 = 60_000;

/// Whether the device's clock was behind the lines before this one. Its place in the
/// book is right all the same: the id goes by what was there before.
fn is_behind(fact: &Fact) -> bool {
    let in_order = i64::try_from(fact.id().milliseconds()).unwrap_or(i64::MAX);
    in_order.saturating_sub(fact.clock()) > BEHIND
}

/// When a line was written, and what is to be known of that clock.
fn time_words(fact: &Fact) -> String {
    let time = time(fact);
    if is_behind(fact) {
        format!("{time} (the clock of the device was behind: it comes after the lines below)")
    } else {
        time
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::{DeviceId, Stamper};

    #[test]
    fn a_clock_that_jumps_back_is_told_and_changes_no_order() {
        let mut stamper = Stamper::new();
        let mut write = |wall: u64| {
            let body = Body::Note(Note {
                text: String::new(),
                place: None,
                step: None,
            });
            let clock = i64::try_from(wall).unwrap();
            let id = stamper.stamp(wall, wall);
            Fact::new(id, DeviceId::from_random(1), clock, body)
        };
        let day = 24 * 60 * 60 * 1000;
        let now = 1_750_000_000_000;
        let (first, back, later) = (write(now), write(now - day), write(now + 1));
        assert!(first.id() < back.id() && back.id() < later.id());
        assert_eq!(
            [first, back, later].map(|fact| is_behind(&fact)),
            [false, true, false]
        );
    }
}
