//! The book: everything that was written down, latest first, and the way to
//! strike a mistake out.

use build_journal::fact::{LimitsOrigin, SetOn, Spot, Struck};
use build_journal::fold::StruckOut;
use build_journal::{Body, Fact, export};
use build_plan::measure;
use leptos::prelude::*;

use super::page::{Opened, opened};
use crate::device::files;
use crate::kit::section::{Section, Sentences};
use crate::kit::toast::toast;

/// As many facts as are shown at first.
const SHOWN: usize = 60;

/// The page of the book.
#[component]
pub fn Book() -> impl IntoView {
    let opened = opened();
    let shown = RwSignal::new(SHOWN);
    let count = move || opened.journal.with(build_journal::Journal::len);
    let rows = move || {
        let struck = opened.build.with(|build| build.struck.clone());
        opened.journal.with(|journal| {
            journal
                .facts()
                .rev()
                .take(shown.get())
                .map(|fact| {
                    let by = struck.iter().find(|one| one.fact == fact.id()).cloned();
                    view! { <FactRow fact=fact.clone() by /> }
                })
                .collect_view()
        })
    };
    let odd = move || {
        let mut lines: Vec<String> = opened.build.with(|build| {
            let problems = build.problems.iter().map(|one| one.text.clone());
            let elsewhere = build.elsewhere.iter().map(|taken| {
                format!("A reading at a place or of a measure that this engine does not have: {} {}", taken.reading.typed, taken.reading.unit)
            });
            problems.chain(elsewhere).collect()
        });
        lines.dedup();
        (!lines.is_empty()).then(|| view! { <Section title="Cannot be used as it is"><Sentences lines /></Section> })
    };
    view! {
        <h1>"Book"</h1>
        <p class="row">
            <button type="button" class="button" data-test="export" on:click=move |_| give(opened)>"Export to a file"</button>
        </p>
        {odd}
        <SetAside />
        <Section title="Written down">
            <ol class="facts" data-test="facts">{rows}</ol>
            <Show when=move || { count() > shown.get() }>
                <p><button type="button" class="button quiet" on:click=move |_| shown.update(|shown| *shown += SHOWN)>"Older ones"</button></p>
            </Show>
        </Section>
    }
}

fn give(opened: Opened) {
    let text = opened.journal.with_untracked(export);
    let name = opened.build.with_untracked(|build| {
        let name = build.engine.as_ref().map_or("build", |one| one.engine.name());
        let plain: String = name
            .chars()
            .map(|sign| if sign.is_alphanumeric() { sign } else { '-' })
            .take(40)
            .collect();
        format!("thoubook-{plain}.json")
    });
    match files::give(&name, &text) {
        Ok(()) => toast().say(format!("{name} is in the downloads of this device.")),
        Err(_) => toast().say("The browser did not take the file. Everything is still in the book."),
    }
}

/// What could not be read: shown as it is, and exported with the rest.
#[component]
fn SetAside() -> impl IntoView {
    let opened = opened();
    move || {
        let aside: Vec<(String, String)> = opened.journal.with(|journal| {
            journal.set_aside().map(|(text, reason)| (text.to_owned(), reason.to_owned())).collect()
        });
        (!aside.is_empty()).then(|| {
            view! {
                <Section title="Set aside">
                    <p class="hint">"These texts stood among the facts and are none that can be read. They are kept, and go along when the build is exported."</p>
                    <ul class="aside" data-test="set-aside">
                        {aside.into_iter().map(|(text, reason)| view! {
                            <li><p>{reason}</p><pre tabindex="0">{text}</pre></li>
                        }).collect_view()}
                    </ul>
                </Section>
            }
        })
    }
}

#[component]
fn FactRow(fact: Fact, by: Option<StruckOut>) -> impl IntoView {
    let opened = opened();
    let id = fact.id();
    let struck = by.is_some();
    let is_strike = matches!(fact.body(), Body::Struck(_));
    // Bringing back strikes the strike.
    let target = by.as_ref().map_or(id, |by| by.by);
    let press = move |_| {
        let _ = opened.write_down(Body::Struck(Struck { fact: target, reason: None }));
    };
    view! {
        <li class="fact" class:struck=struck data-test="fact" data-struck=struck.to_string()>
            <p class="fact-when">{when_words(fact.clock())}</p>
            <p class="fact-words">{words(opened, &fact)}</p>
            {struck.then(|| view! { <p class="hint">"struck out"</p> })}
            {(!is_strike).then(|| view! {
                <button type="button" class="button quiet" data-test="strike" on:click=press>
                    {if struck { "Bring back" } else { "Strike out" }}
                </button>
            })}
        </li>
    }
}

/// The time that the device's clock said, as this device writes times.
fn when_words(milliseconds: i64) -> String {
    let date = js_sys::Date::new(&wasm_bindgen::JsValue::from_f64(milliseconds as f64));
    date.to_locale_string("default", &wasm_bindgen::JsValue::UNDEFINED).into()
}

/// A fact in words.
fn words(opened: Opened, fact: &Fact) -> String {
    let tool_name = |id| {
        opened.build.with(|build| {
            build.tools.iter().find(|tool| tool.tool == id).map_or_else(|| "a tool that is not on the list".to_owned(), |tool| tool.name.clone())
        })
    };
    let place_words = |spot: &Spot| spot.place().map_or_else(|| "a place not known here".to_owned(), |place| place.to_string());
    match fact.body() {
        Body::EngineDescribed(engine) => {
            let mains = engine.mains.map_or_else(String::new, |mains| format!(", {mains} main bearings"));
            format!("Engine described: {}, {} cylinders, {}{mains}", engine.name, engine.cylinders, engine.layout)
        }
        Body::ToolListed(tool) => format!("Tool listed: {}", tool.name),
        Body::ToolSet(set) => match set.set_on {
            SetOn::Standard => format!("{} set on a standard", tool_name(set.tool)),
            SetOn::Tool(other) => format!("{} set in the {}", tool_name(set.tool), tool_name(other)),
        },
        Body::Reading(reading) => {
            let label = measure(&reading.measure).map_or(reading.measure.as_str(), |one| one.label);
            let tool = reading.tool.map_or_else(String::new, |id| format!(", with the {}", tool_name(id)));
            format!("{label}, {}: {} (lone numbers in {}){tool}", place_words(&reading.place), reading.typed, reading.unit)
        }
        Body::LimitsSet(limits) => {
            let label = measure(&limits.measure).map_or(limits.measure.as_str(), |one| one.label);
            let origin = match limits.origin {
                LimitsOrigin::Sheet => "the maker's sheet",
                LimitsOrigin::PartSheet => "the part's sheet",
                LimitsOrigin::OwnChoice => "own choice",
            };
            let side = |text: &Option<String>| text.clone().unwrap_or_else(|| "–".to_owned());
            format!("Limits of {label}: {} to {} (lone numbers in {}), {origin} {}", side(&limits.low), side(&limits.high), limits.unit, limits.origin_note)
        }
        Body::Struck(_) => "A strike".to_owned(),
        Body::Note(note) => format!("Note: {}", note.text),
        Body::Unknown(unknown) => format!("A “{}”, which this version does not know. It is kept as it came.", unknown.kind()),
        Body::Unreadable(unreadable) => format!("A “{}” that cannot be read: {}", unreadable.kind(), unreadable.reason()),
        _ => "Something this version cannot show. It is kept as it came.".to_owned(),
    }
}
