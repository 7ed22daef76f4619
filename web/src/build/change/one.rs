//! One change: where it was, what exactly, and what it undoes, before it is
//! written down.

use build_journal::Body;
use build_journal::fact::{EventHappened, Spot};
use build_plan::event::{Event, event as event_of};
use build_plan::measure::Per;
use build_plan::{At, Place as Where};
use leptos::prelude::*;

use super::written::written;
use crate::build::Opened;
use crate::build::tonight::words::slug;
use crate::build::tonight::{Place, results, way_back};
use crate::device::drafts::Draft;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, link, note, p, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::toast::toast;
use crate::kit::words::{too_long, word_field};
use crate::route::{self, Page, Route};

const WORDS_AT_MOST: usize = 400;

/// A change that is about to be written down.
#[derive(Clone, Copy)]
struct Change {
    opened: Opened,
    event: &'static Event,
    /// All parts that it can happen to.
    all: StoredValue<Vec<At>>,
    /// Those it happened to.
    chosen: RwSignal<Vec<At>>,
    words: Draft,
}

fn to(opened: Opened, place: Place) -> Route {
    Route::Build(opened.id.to_string(), Page::Plan(place))
}

/// The page of one change.
#[must_use]
pub fn one(opened: Opened, event: &str) -> Piece {
    let parts = opened.build.with_untracked(|build| {
        let engine = &build.engine.as_ref()?.engine;
        let event = event_of(event).filter(|event| event.when.applies_to(engine))?;
        Some((event, event.per.parts(engine)))
    });
    let Some((event, all)) = parts else {
        return Piece::all([
            title("No such change").into(),
            p("This engine, as it is described, can have no such change.").into(),
            row([link("", &to(opened, Place::Change(None)), "All changes").into()]).into(),
        ]);
    };
    let change = Change {
        opened,
        event,
        all: StoredValue::new(all),
        chosen: RwSignal::new(Vec::new()),
        words: Draft::of(opened.draft(&format!("change/{}/words", event.id))),
    };
    let field = word_field(
        "change-words",
        "What exactly? (may stay empty)",
        "",
        change.words,
        WORDS_AT_MOST,
        || None,
    );
    Piece::all([
        title(&capital(event.label)).into(),
        note("lead", event.why).into(),
        change.places(),
        change.looked_ahead().into(),
        field.into(),
        change.buttons().into(),
        written(opened),
    ])
}

impl Change {
    fn has_parts(self) -> bool {
        self.event.per != Per::Engine
    }

    /// The places: each a button that is in or out.
    fn places(self) -> Piece {
        if !self.has_parts() {
            return Piece::none();
        }
        let all = self.all.get_value();
        let cells = all.iter().map(|at| self.cell(*at));
        let every = button("quiet", "All of them", "places-all", move || {
            let all = self.all.get_value();
            self.chosen
                .update(|chosen| *chosen = if *chosen == all { Vec::new() } else { all });
        });
        let lead = if self.event.id.ends_with("-moved") {
            "Tap every place that one came from or went to."
        } else {
            "Tap every place it was done at."
        };
        section("Where?")
            .with(p(lead))
            .with(el("div").class("place-cells").all(cells))
            .with(row([every.into()]))
            .into()
    }

    fn cell(self, at: At) -> Piece {
        el("button")
            .attr("type", "button")
            .class("place")
            .test(&format!("at-{}", slug(at)))
            .live_flag("aria-pressed", move || {
                self.chosen.with(|chosen| chosen.contains(&at))
            })
            .click(move || {
                self.chosen.update(|chosen| {
                    if chosen.contains(&at) {
                        chosen.retain(|one| *one != at);
                    } else {
                        chosen.push(at);
                        chosen.sort_unstable();
                    }
                });
            })
            .with(el("strong").text(&at.to_string()))
            .live_text(move || {
                let on = self.chosen.with(|chosen| chosen.contains(&at));
                if on { "✓ here" } else { "–" }.to_owned()
            })
            .into()
    }

    /// What would be written down; nothing while no place is chosen.
    fn body(self) -> Option<Body> {
        let chosen = self.chosen.get();
        if self.has_parts() && chosen.is_empty() {
            return None;
        }
        let places = chosen.iter().map(|at| Spot::Known(Where::of(*at)));
        let words = self.words.now().trim().to_owned();
        Some(Body::EventHappened(EventHappened {
            event: self.event.id.to_owned(),
            places: places.collect(),
            words: Some(words).filter(|words| !words.is_empty()),
        }))
    }

    /// What it undoes, before it is written down.
    fn looked_ahead(self) -> El {
        let preview = Memo::new(move |_| {
            // What was struck meanwhile counts as well.
            self.opened.journal.track();
            let body = self.body()?;
            Some(self.opened.preview(&[body]))
        });
        let inside = Piece::live(move || {
            let Some(preview) = preview.get() else {
                return note("lead", "Say where first.").test("say-where").into();
            };
            untrack(|| {
                if preview.stale.is_empty() {
                    let words = "Nothing that was proved so far comes undone by it. It goes into the book all the same.";
                    return p(words).test("undoes-nothing").into();
                }
                let problems = (!preview.problems.is_empty())
                    .then(|| sentences("findings", &preview.problems));
                let count = match preview.stale.len() {
                    1 => "One result no longer counts then:".to_owned(),
                    more => format!("{more} results no longer count then:"),
                };
                Piece::all([
                    note("undone-lead", &count).test("undone-count").into(),
                    results(&preview.stale),
                    way_back(self.opened, &preview.way_back),
                    problems.into(),
                ])
            })
        });
        section("What it undoes").with(
            el("div")
                .class("looked-ahead")
                .test("looked-ahead")
                .with(inside),
        )
    }

    fn buttons(self) -> El {
        let toast = toast();
        let write = button("", "It was so: write it down", "change-write", move || {
            if too_long(&self.words.now(), WORDS_AT_MOST).is_some() {
                return;
            }
            let Some(body) = untrack(|| self.body()) else {
                toast.say("Say where first: tap every place.");
                return;
            };
            if self.opened.write_down(body).is_some() {
                self.words.clear();
                self.chosen.set(Vec::new());
                toast.say("Written down. It can be struck out again.");
                // Away from the button: a second tap must not write it twice.
                route::go(&to(self.opened, Place::Change(None)));
            }
        });
        let away = link(
            "quiet",
            &to(self.opened, Place::Change(None)),
            "It was something else",
        );
        row([write.into(), away.into()])
    }
}
