//! Pulling: the map, the number, and the lower half of the screen as the one
//! button.

use std::time::Duration;

use assembly_core::fastener::stages::Stage;
use build_journal::fact::{Body, BoltPulled, RunMark, Way};
use build_journal::fold::tightening::Run;
use leptos::prelude::*;
use leptos::task::spawn_local;
use send_wrapper::SendWrapper;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, KeyboardEvent};

use super::Running;
use crate::build::tighten::map::{Drawing, Face, map};
use crate::build::tighten::words;
use crate::device::senses::{Awake, Sound};
use crate::kit::heard::on_page;
use crate::kit::piece::{El, Piece, button, drawn, el, note};

/// Two presses closer than this are one of a shaking hand.
const GUARD: f64 = 500.0;
/// How long the screen lights up.
const FLASH: Duration = Duration::from_millis(220);
/// The paper that the number is drawn on. Its figures come to 143 of its units
/// in height: on a phone 360 pixels wide that is 25 mm and more.
const PAPER: (f64, f64) = (340.0, 156.0);

/// Keys of keyboards, foot pedals and headsets that mean a pull.
const KEYS: [&str; 8] = [
    "Enter",
    " ",
    "PageDown",
    "ArrowRight",
    "ArrowDown",
    "MediaPlayPause",
    "MediaTrackNext",
    "MediaPlay",
];

/// The screen while bolts are pulled.
pub fn pulling(running: Running) -> Piece {
    let press = Press {
        running,
        last: StoredValue::new(f64::NEG_INFINITY),
        flash: RwSignal::new(false),
        said: RwSignal::new(String::new()),
    };
    press.stay_awake();
    press.follow_keys();
    press.speak();
    let upper = el("div")
        .class("run-upper")
        .with(progress(running))
        .with(drawing(running))
        .with(
            el("div")
                .class("run-line")
                .with(
                    note("run-said", "")
                        .attr("role", "status")
                        .test("run-said")
                        .live_text(move || press.said.get()),
                )
                .with(press.undo()),
        );
    Piece::all([upper.into(), press.button().into()])
}

/// What a press does.
#[derive(Clone, Copy)]
struct Press {
    running: Running,
    /// When the last press was taken, milliseconds since the page was opened.
    last: StoredValue<f64>,
    flash: RwSignal<bool>,
    said: RwSignal<String>,
}

fn since_start() -> f64 {
    window()
        .performance()
        .map_or_else(js_sys::Date::now, |clock| clock.now())
}

impl Press {
    /// One pull: written down, heard, felt and seen.
    fn pull(self) {
        let now = since_start();
        let senses = self.running.senses;
        if now - self.last.get_value() < GUARD {
            senses.signal(Sound::Refused);
            self.said
                .set("Pressed twice: the second was not taken.".to_owned());
            return;
        }
        let Some((run, next)) = self.running.now().and_then(|run| {
            let next = run.next()?;
            Some((run, next))
        }) else {
            return;
        };
        let from_one = |number: usize| u32::try_from(number + 1).unwrap_or(u32::MAX);
        let pulled = self
            .running
            .context
            .opened
            .write_down(Body::BoltPulled(BoltPulled {
                run: self.running.fact,
                bolt: from_one(next.bolt),
                lap: from_one(next.lap),
                sitting: self.running.sitting,
            }));
        if pulled.is_none() {
            return;
        }
        self.last.set_value(now);
        self.light_up();
        let lap_done = next.done_in_lap + 1 == run.bolts();
        senses.signal(if lap_done {
            Sound::LapDone
        } else {
            Sound::Taken
        });
        let words = match (lap_done, next.lap + 1 == run.laps()) {
            (true, true) => "All pulls are made.".to_owned(),
            (true, false) => format!("Lap {} is through.", next.lap + 1),
            (false, _) => format!("Bolt {} taken.", next.bolt + 1),
        };
        self.said.set(words);
        self.speak();
    }

    fn light_up(self) {
        self.flash.set(true);
        set_timeout(
            move || {
                let _ = self.flash.try_set(false);
            },
            FLASH,
        );
    }

    /// Says which bolt is next and to how much.
    fn speak(self) {
        let Some(run) = self.running.now() else {
            return;
        };
        let Some(next) = run.next() else {
            self.running.senses.say("All pulls are made");
            return;
        };
        let (number, unit) = run.number(next.lap).unwrap_or_default();
        let said = words::spoken(&number, unit);
        self.running
            .senses
            .say(&format!("bolt {}, {said}", next.bolt + 1));
    }

    fn stay_awake(self) {
        let awake = Rc::new(Awake::default());
        let ask = {
            let awake = Rc::clone(&awake);
            move || {
                let awake = Rc::clone(&awake);
                spawn_local(async move { awake.ask().await });
            }
        };
        ask();
        on_page("visibilitychange", move |_| {
            if !document().hidden() {
                ask();
            }
        });
        let held = SendWrapper::new(awake);
        on_cleanup(move || drop(held));
    }

    /// A key pulls, wherever the focus is, but for a control that takes the key
    /// itself.
    fn follow_keys(self) {
        on_page("keydown", move |event| {
            let key: &KeyboardEvent = event.unchecked_ref();
            let name = key.key();
            if key.repeat() || !KEYS.contains(&name.as_str()) {
                return;
            }
            let own = matches!(name.as_str(), "Enter" | " ");
            let target = event
                .target()
                .and_then(|target| target.dyn_into::<Element>().ok());
            let control =
                target.and_then(|target| target.closest("button, a, input").ok().flatten());
            if own && control.is_some() {
                return;
            }
            event.prevent_default();
            self.pull();
        });
    }

    fn undo(self) -> El {
        let last = move || {
            self.running
                .run
                .with(|run| run.as_ref().and_then(|run| run.standing.last()))
        };
        button("quiet", "", "run-undo", move || {
            if untrack(last).is_some() {
                self.running.mark(self.running.plain(RunMark::TakenBack));
                self.said.set("Taken back: pull it again.".to_owned());
                self.last.set_value(f64::NEG_INFINITY);
                self.speak();
            }
        })
        .live_attr("disabled", move || last().is_none().then(String::new))
        .live_text(move || match last() {
            Some((bolt, _)) => format!("Take back bolt {}", bolt + 1),
            None => "Nothing to take back".to_owned(),
        })
    }

    /// The lower half of the screen.
    fn button(self) -> El {
        let run = self.running.run;
        let of_next = move |say: fn(&Run) -> Option<String>| {
            run.with(|run| run.as_ref().and_then(say).unwrap_or_default())
        };
        // The number is drawn anew with each lap and not with each pull.
        let shown = Memo::new(move |_| {
            let number = run.with(|run| {
                let run = run.as_ref()?;
                run.number(run.next()?.lap)
            });
            number.unwrap_or_default()
        });
        let tap = el("button")
            .attr("type", "button")
            .class("run-tap")
            .test("run-tap")
            .live_class("flash", move || self.flash.get())
            .live_attr("data-bolt", move || {
                Some(of_next(|run| Some((run.next()?.bolt + 1).to_string())))
            })
            .live_attr("data-lap", move || {
                Some(of_next(|run| Some((run.next()?.lap + 1).to_string())))
            })
            .with(
                el("span")
                    .class("run-bolt")
                    .test("run-next")
                    .live_text(move || {
                        of_next(|run| Some(format!("Bolt {}", run.next()?.bolt + 1)))
                    }),
            )
            .live(move || shown.with(|(number, unit)| figures(number, unit)))
            .with(
                el("span")
                    .class("run-how")
                    .live_text(move || of_next(|run| Some(how(run)?.to_owned()))),
            )
            .click(move || self.pull());
        let element: HtmlElement = tap.element();
        // At hand for the keyboard as soon as it is on the screen.
        request_animation_frame(move || {
            let _ = element.focus();
        });
        tap
    }
}

/// When the button is pressed.
fn how(run: &Run) -> Option<&'static str> {
    Some(match (run.way, run.next()?.stage) {
        (Way::Loosen, _) => "press when it is turned back",
        (_, Stage::Torque(_)) => "press when it clicks",
        (_, Stage::Angle(_)) => "press when it is turned on",
        (_, Stage::Stretch(_)) => "press when it is stretched",
    })
}

/// The number as large as the screen allows; long ones are drawn narrower, not
/// lower.
fn figures(number: &str, unit: &str) -> Piece {
    let narrow = number.chars().count() > 2;
    let figures = drawn("text")
        .class("run-figures")
        .attr("x", &(PAPER.0 / 2.0).to_string())
        .attr("y", "150")
        .attr("text-anchor", "middle")
        .text(number);
    let figures = if narrow {
        figures
            .attr("textLength", &(PAPER.0 - 6.0).to_string())
            .attr("lengthAdjust", "spacingAndGlyphs")
    } else {
        figures
    };
    let paper = drawn("svg")
        .class("run-number")
        .attr("viewBox", &format!("0 0 {} {}", PAPER.0, PAPER.1))
        .attr("aria-hidden", "true")
        .with(figures);
    let said = el("span")
        .class("run-unit")
        .test("run-number")
        .with(el("span").class("only-heard").text(&format!("{number} ")))
        .text(unit);
    Piece::all([paper.into(), said.into()])
}

/// Lap x of y, and how many of it are done.
fn progress(running: Running) -> El {
    let run = running.run;
    el("div")
        .class("run-progress")
        .with(el("strong").test("run-lap").live_text(move || {
            run.with(|run| {
                run.as_ref().map_or_else(String::new, |run| {
                    let lap = run.standing.lap_on().map_or(run.laps(), |lap| lap + 1);
                    format!("Lap {lap} of {}", run.laps())
                })
            })
        }))
        .with(el("span").test("run-done").live_text(move || {
            run.with(|run| {
                let next = run.as_ref().and_then(|run| Some((run, run.next()?)));
                next.map_or_else(String::new, |(run, next)| {
                    format!("{} of {} done", next.done_in_lap, run.bolts())
                })
            })
        }))
}

/// The bolts: done in this lap, next, passed over, open.
fn drawing(running: Running) -> Piece {
    let run = running.run;
    let Some(now) = running.now() else {
        return Piece::none();
    };
    let drawing = Drawing::as_it_sits(&now.sheet.layout);
    let says = move || run.with(|run| run.as_ref().map_or_else(String::new, words::where_it_is));
    let looks = Memo::new(move |_| run.with(|run| run.as_ref().map(looks).unwrap_or_default()));
    let face = move |bolt: usize| Face {
        look: looks.with(|looks| looks.get(bolt).copied().unwrap_or("open")),
        words: (bolt + 1).to_string(),
        said: String::new(),
    };
    map(&drawing, face, says).into()
}

fn looks(run: &Run) -> Vec<&'static str> {
    let next = run.next();
    let passed = run.standing.passed_over();
    let lap = next.map_or(run.laps().saturating_sub(1), |next| next.lap);
    let look = |bolt: usize| {
        if next.is_some_and(|next| next.bolt == bolt) {
            "next"
        } else if run.standing.is_done(bolt, lap) {
            "done"
        } else if passed.contains(&bolt) {
            "passed"
        } else {
            "open"
        }
    };
    (0..run.bolts()).map(look).collect()
}
