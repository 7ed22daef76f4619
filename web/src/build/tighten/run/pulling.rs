//! Pulling: the map, the number, and the lower half of the screen as the one
//! button.

use std::time::Duration;

use build_journal::fact::{Body, BoltPulled, RunMark};
use build_journal::fold::tightening::Run;
use leptos::prelude::*;
use leptos::task::spawn_local;
use send_wrapper::SendWrapper;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, KeyboardEvent};

use super::Running;
use super::shown::{drawing, figures, how, progress};
use crate::build::tighten::{words, wrenches};
use crate::device::headset::Headset;
use crate::device::senses::{Awake, Sound};
use crate::kit::heard::on_page;
use crate::kit::piece::{El, Piece, button, el, note};

/// Two presses closer than this are one of a shaking hand.
const GUARD: f64 = 500.0;
/// How long the screen lights up.
const FLASH: Duration = Duration::from_millis(220);
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
        headset: StoredValue::new_local(None),
        said: RwSignal::new(String::new()),
        in_hand: RwSignal::new(None),
    };
    press.stay_awake();
    press.follow_keys();
    press.follow_the_headset();
    press.speak();
    running.senses.make_ready();
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
    /// While a headset's button is listened to.
    headset: StoredValue<Option<Headset>, LocalStorage>,
    said: RwSignal<String>,
    /// The lap whose wrench somebody said is in the hand now.
    in_hand: RwSignal<Option<usize>>,
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
        if untrack(|| self.takes_up(&run)).is_some() {
            self.last.set_value(now);
            self.in_hand.set(Some(next.lap));
            senses.signal(Sound::Taken);
            self.said.set("It is in the hand.".to_owned());
            self.speak();
            return;
        }
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
        self.headset.with_value(|headset| {
            // A browser that let nothing sound before a press does so now.
            if let Some(headset) = headset {
                headset.sound();
            }
        });
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

    /// The wrench to take up before this lap's first bolt, until somebody says
    /// that it is in the hand.
    fn takes_up(self, run: &Run) -> Option<String> {
        let next = run.next()?;
        let held = run.takes_up(next.lap)?;
        let waits = next.done_in_lap == 0 && self.in_hand.get() != Some(next.lap);
        waits.then(|| wrenches::name(&held.typed))
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
        let mut said = words::spoken(&number, unit);
        if let Some((wanted, _)) = run.for_the_bolt(next.lap) {
            said = format!("set {said}, for {wanted} at the bolt");
        }
        let first = untrack(|| self.takes_up(&run));
        let first = match first {
            Some(name) => format!("change the wrench: {name}. Set it to"),
            None => format!("bolt {},", next.bolt + 1),
        };
        self.running.senses.say(&format!("{first} {said}"));
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

    /// The button of a headset pulls, when it is switched on: its sound takes the
    /// place of the builder's own.
    fn follow_the_headset(self) {
        Effect::new(move |_| {
            let on = self.running.senses.hears_the_headset();
            let listening = on.then(|| {
                Headset::listen(move || {
                    // A button that is leant on in a pocket is no pull.
                    if !document().hidden() {
                        self.pull();
                    }
                })
            });
            self.headset.set_value(listening.flatten());
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
        let taking_up =
            Memo::new(move |_| run.with(|run| run.as_ref().and_then(|run| self.takes_up(run))));
        // The number is drawn anew with each lap and not with each pull.
        let shown = Memo::new(move |_| {
            run.with(|run| {
                let run = run.as_ref()?;
                let lap = run.next()?.lap;
                Some((run.number(lap)?, run.for_the_bolt(lap)))
            })
        });
        let tap = el("button")
            .attr("type", "button")
            .class("run-tap")
            .test("run-tap")
            .live_class("flash", move || self.flash.get())
            .live_attr("data-takes-up", move || taking_up.get())
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
                        if taking_up.with(Option::is_some) {
                            return "Change the wrench".to_owned();
                        }
                        of_next(|run| Some(format!("Bolt {}", run.next()?.bolt + 1)))
                    }),
            )
            .live(move || {
                shown.with(|shown| {
                    let shown = shown.as_ref();
                    shown
                        .map(|((number, unit), wanted)| figures(number, unit, wanted.as_ref()))
                        .into()
                })
            })
            .with(
                el("span")
                    .class("run-how")
                    .test("run-how")
                    .live_text(move || {
                        if let Some(name) = taking_up.get() {
                            return format!("take {name}, set it, then press");
                        }
                        of_next(how)
                    }),
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
