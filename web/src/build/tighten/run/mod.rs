//! The run: one bolt after the other, for a phone that stands a metre away.
//!
//! Every press is a fact the moment it happens. What is shown is worked out
//! from the facts alone, so that nothing unticked is ever shown as done.

mod after;
mod pulling;
mod shown;
mod trouble;

use build_journal::fact::{Body, RunMark, RunMarked, RunOpened};
use build_journal::fold::tightening::Run;
use build_journal::{FactId, SittingId};
use leptos::prelude::*;

use super::asking::asking;
use super::begin::new_sitting;
use super::place::{Place, part_name};
use super::{Spot, Tighten, words};
use crate::device::senses::Senses;
use crate::kit::heard::on_page;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, link, note, p, row, title};

/// A run on the screen.
#[derive(Clone, Copy)]
pub struct Running {
    pub context: Tighten,
    pub spot: Spot,
    /// The fact that began it.
    pub fact: FactId,
    /// This screen's sitting.
    pub sitting: SittingId,
    /// How it stands.
    pub run: Memo<Option<Run>>,
    pub senses: Senses,
}

/// What the screen is about.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Phase {
    /// Bolts are pulled.
    Pulling,
    /// Somebody has to say how it stands.
    Asking,
    /// It was opened on another screen since.
    Elsewhere,
    /// All is pulled.
    Through,
    /// It is not there any more, or was given up.
    Gone,
}

/// The screen.
pub fn run_page(context: Tighten, spot: Spot) -> Piece {
    let group = context.group(spot.own);
    let part = group.as_ref().and_then(|group| group.part(spot.at));
    let Some(last) = part.and_then(|part| part.runs.last()) else {
        return nothing_is_on(context, spot, false);
    };
    let fact = last.fact;
    let running = Running {
        context,
        spot,
        fact,
        sitting: new_sitting(),
        run: Memo::new(move |_| context.all.with(|all| all.run(fact).cloned())),
        senses: Senses::load(),
    };
    if last.is_on() {
        running.open();
    }
    running.ask_when_it_was_out_of_sight();
    let name = group.map_or_else(String::new, |group| words::name(&group, spot.at));
    running.screen(&capital(&name)).into()
}

fn nothing_is_on(context: Tighten, spot: Spot, given_up: bool) -> Piece {
    let to = Place::Part(spot.own.to_string(), part_name(spot.at));
    let words = if given_up {
        "It was given up. The group says what is to be done with the bolts."
    } else {
        "Nothing was begun here, or it was struck out in the book."
    };
    Piece::all([
        title("No run is on").into(),
        note("lead", words).into(),
        p("").with(link("", &context.to(to), "To the group")).into(),
    ])
}

impl Running {
    /// Where one goes from here.
    pub fn group_page(self) -> crate::route::Route {
        let to = Place::Part(self.spot.own.to_string(), part_name(self.spot.at));
        self.context.to(to)
    }

    /// Takes the run into this screen's hands.
    fn open(self) {
        let _ = self.context.opened.write_down(Body::RunOpened(RunOpened {
            run: self.fact,
            sitting: self.sitting,
        }));
    }

    /// Says something of the run.
    pub fn mark(self, mark: RunMarked) -> bool {
        self.context
            .opened
            .write_down(Body::RunMarked(mark))
            .is_some()
    }

    /// A mark of this run without anything else.
    pub const fn plain(self, mark: RunMark) -> RunMarked {
        RunMarked {
            run: self.fact,
            mark,
            bolt: None,
            lap: None,
            knew: None,
            words: None,
        }
    }

    /// How it stands now; not followed.
    pub fn now(self) -> Option<Run> {
        self.run.get_untracked()
    }

    fn phase(self) -> Phase {
        self.run.with(|run| match run {
            None => Phase::Gone,
            Some(run) if run.left => Phase::Gone,
            Some(run) if run.is_through() && !run.has_to_be_said() => Phase::Through,
            Some(run) if !run.is_in(self.sitting) => Phase::Elsewhere,
            Some(run) if run.has_to_be_said() => Phase::Asking,
            Some(_) => Phase::Pulling,
        })
    }

    /// A call, another app, the screen off: whoever comes back says how it
    /// stands.
    fn ask_when_it_was_out_of_sight(self) {
        let was_hidden = StoredValue::new(false);
        on_page("visibilitychange", move |_| {
            if document().hidden() {
                was_hidden.set_value(true);
            } else if was_hidden.get_value() {
                was_hidden.set_value(false);
                let mine = self.now().is_some_and(|run| {
                    run.is_on() && run.is_in(self.sitting) && !run.has_to_be_said()
                });
                if mine {
                    self.mark(self.plain(RunMark::Interrupted));
                }
            }
        });
    }

    fn screen(self, name: &str) -> El {
        let phase = Memo::new(move |_| self.phase());
        let parts = Piece::live(move || {
            let phase = phase.get();
            untrack(|| match phase {
                Phase::Pulling => pulling::pulling(self),
                Phase::Asking => asking(self),
                Phase::Elsewhere => self.elsewhere(),
                Phase::Through => after::after(self),
                Phase::Gone => {
                    let left = self.now().is_some_and(|run| run.left);
                    el("div")
                        .class("run-panel")
                        .with(nothing_is_on(self.context, self.spot, left))
                        .into()
                }
            })
        });
        let close = el("a")
            .class("run-close")
            .attr("href", &self.group_page().to_string())
            .test("run-close")
            .with(el("span").attr("aria-hidden", "true").text("‹"))
            .with(el("span").text(name));
        let senses = self.senses;
        let sound = switch(
            "Sound",
            "run-sound",
            move || senses.sounds(),
            move || senses.switch_sound(),
        );
        let voice = switch(
            "Voice",
            "run-voice",
            move || senses.speaks(),
            move || {
                senses.switch_voice();
            },
        );
        let headset = switch(
            "Headset",
            "run-headset",
            move || senses.hears_the_headset(),
            move || senses.switch_headset(),
        )
        .attr(
            "aria-label",
            "The button of a headset is a press: it takes the place of other sound on this device",
        );
        el("section")
            .class("run")
            .test("run")
            .attr("aria-label", &format!("tightening {name}"))
            .with(
                el("div")
                    .class("run-top")
                    .with(close)
                    .with(sound)
                    .with(voice)
                    .with(headset),
            )
            .with(trouble::trouble(self))
            .with(parts)
    }

    fn elsewhere(self) -> Piece {
        let words = "This run was opened on another screen: another tab of this device, or another device. Two screens at one group lose the place. Go on there, or take it over here; then say how it stands.";
        el("div")
            .class("run-panel")
            .test("run-elsewhere")
            .attr("role", "alert")
            .with(el("h1").text("Open on another screen"))
            .with(p(words))
            .with(row([button(
                "",
                "Take it over here",
                "run-take-over",
                move || self.open(),
            )
            .into()]))
            .into()
    }
}

fn switch(
    word: &str,
    test: &str,
    on: impl Fn() -> bool + Copy + 'static,
    act: impl FnMut() + 'static,
) -> El {
    let shown = on;
    let word = word.to_owned();
    el("button")
        .attr("type", "button")
        .class("run-switch")
        .test(test)
        .live_flag("aria-pressed", on)
        .live_text(move || format!("{word} {}", if shown() { "on" } else { "off" }))
        .click(act)
}
