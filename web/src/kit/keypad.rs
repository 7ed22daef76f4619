//! The app's own keypad, for wet gloves: big keys, the bench's units, the
//! fraction bar. It types into whichever field has been touched last; a
//! hardware keyboard types into the same field.

use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

use js_sys::Reflect;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, HtmlInputElement};

use super::keys::{Edited, Key, ends_touch};
use super::piece::{El, Piece, el};
use super::verdict::{Mark, shape};

/// Two presses of one key that come closer than this are one finger on a wet
/// screen: nobody taps the same key more than eight times a second.
const BOUNCE_MS: f64 = 100.0;
/// Two presses of Next that come closer than this are one.
const DOUBLE_NEXT_MS: f64 = 500.0;
const FLASH: Duration = Duration::from_millis(140);
const BUZZ_MS: u32 = 8;

/// The field that the keypad types into.
#[derive(Clone)]
pub struct Target {
    /// The element.
    pub input: HtmlInputElement,
    /// Takes the new text.
    pub changed: Rc<dyn Fn(String)>,
    /// Symbols on the unit keys.
    pub units: Vec<&'static str>,
    /// What Next does.
    pub next: Rc<dyn Fn()>,
    /// What is read on Next.
    pub next_word: &'static str,
}

/// What the screen wants seen while the keypad covers its lower half.
pub type Live = Option<(Mark, String)>;

/// The keypad's state: the field it types into, if any.
#[derive(Clone, Copy)]
pub struct Pad {
    target: RwSignal<Option<Target>, LocalStorage>,
    live: RwSignal<Live>,
    last_key: StoredValue<Option<(Key, f64)>>,
    last_next: StoredValue<f64>,
    /// Whether something was typed since then.
    typed_since: StoredValue<bool>,
    /// When a finger left the screen last, wherever on it.
    last_lift: StoredValue<f64>,
}

impl Pad {
    /// A keypad that is put away.
    #[must_use]
    pub fn new() -> Self {
        Self {
            target: RwSignal::new_local(None),
            live: RwSignal::new(None),
            last_key: StoredValue::new(None),
            last_next: StoredValue::new(f64::NEG_INFINITY),
            typed_since: StoredValue::new(false),
            last_lift: StoredValue::new(f64::NEG_INFINITY),
        }
    }

    /// Types into this field from now on.
    pub fn aim(self, target: Target) {
        self.target.set(Some(target));
    }

    /// Puts the keypad away if it types into this field.
    pub fn release(self, input: &HtmlInputElement) {
        let mine =
            |target: &Option<Target>| target.as_ref().is_some_and(|target| target.input == *input);
        if self.target.try_with_untracked(mine).unwrap_or(false) {
            self.target.set(None);
        }
    }

    /// Puts the keypad away.
    pub fn close(self) {
        self.target.set(None);
    }

    /// Whether it is out.
    #[must_use]
    pub fn is_open(self) -> bool {
        self.target.with(Option::is_some)
    }

    /// Shows a verdict above the keys while this screen lives.
    pub fn show_live(self, live: Live) {
        if self
            .live
            .try_with_untracked(|now| *now != live)
            .unwrap_or(false)
        {
            self.live.set(live);
        }
    }

    fn press(self, key: Key, at: f64) {
        let bounced = self.last_key.with_value(|last| {
            last.is_some_and(|(same, before)| same == key && at - before < BOUNCE_MS)
        });
        if bounced {
            return;
        }
        self.last_key.set_value(Some((key, at)));
        let Some(target) = self.target.get_untracked() else {
            return;
        };
        let input = &target.input;
        let text = input.value();
        let end = text.encode_utf16().count();
        let caret = |place: Result<Option<u32>, _>| {
            place
                .ok()
                .flatten()
                .and_then(|at| usize::try_from(at).ok())
                .unwrap_or(end)
        };
        let edited = Edited {
            start: caret(input.selection_start()),
            end: caret(input.selection_end()),
            text,
        }
        .after(key);
        input.set_value(&edited.text);
        let place = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
        // A field that has no caret gets its text all the same.
        let _ = input.set_selection_range(place(edited.start), place(edited.end));
        (target.changed)(edited.text);
        buzz();
    }

    /// Notes when fingers leave the screen, for as long as the page lives.
    fn follow_lifts(self) {
        for what in ["pointerup", "pointercancel"] {
            let heard = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
                self.last_lift.set_value(event.time_stamp());
            });
            let listening = window().add_event_listener_with_callback_and_bool(
                what,
                heard.as_ref().unchecked_ref(),
                // Before anything on the page can stop it.
                true,
            );
            if listening.is_ok() {
                heard.forget();
            }
        }
    }

    /// Notes that a field's text was changed by whatever types.
    pub fn note_typing(self) {
        self.typed_since.set_value(true);
    }

    /// What Enter on a hardware keyboard and the Next key do. A second press that
    /// comes at once is one finger, unless a number was typed in between: a gauge
    /// that types like a keyboard is faster than any hand.
    pub fn next(self, at: f64) {
        let typed = self.typed_since.get_value();
        if !typed && at - self.last_next.get_value() < DOUBLE_NEXT_MS {
            return;
        }
        self.last_next.set_value(at);
        self.typed_since.set_value(false);
        if let Some(target) = self.target.get_untracked() {
            (target.next)();
            buzz();
        }
    }
}

impl Default for Pad {
    fn default() -> Self {
        Self::new()
    }
}

/// The app's one keypad.
#[must_use]
pub fn pad() -> Pad {
    expect_context()
}

/// A short buzz, on phones that have one.
fn buzz() {
    let navigator = window().navigator();
    if Reflect::has(&navigator, &"vibrate".into()).unwrap_or(false) {
        navigator.vibrate_with_duration(BUZZ_MS);
    }
}

fn flash(event: &Event) {
    let Some(key) = event
        .current_target()
        .and_then(|key| key.dyn_into::<Element>().ok())
    else {
        return;
    };
    let _ = key.class_list().add_1("pressed");
    set_timeout(
        move || {
            let _ = key.class_list().remove_1("pressed");
        },
        FLASH,
    );
}

/// A key that types. It acts when it is touched, as a keyboard does; a press
/// that comes without a touch (a screen reader, a hardware Enter) acts too. A
/// finger that slides off the key and lifts elsewhere ends in no press at all;
/// the next one must not be taken for it.
fn typing_key(pad: Pad, key: Key, face: &str, name: &str, place: &str) -> El {
    let touched = Rc::new(Cell::new(false));
    let was_touched = Rc::clone(&touched);
    el("button")
        .attr("type", "button")
        .class(&format!("key {place}"))
        .attr("aria-label", name)
        .text(face)
        .on("pointerdown", move |event| {
            event.prevent_default();
            touched.set(true);
            flash(&event);
            pad.press(key, event.time_stamp());
        })
        .on("click", move |event| {
            let at = event.time_stamp();
            let of_touch = was_touched.replace(false) && ends_touch(pad.last_lift.get_value(), at);
            if !of_touch {
                pad.press(key, at);
            }
        })
}

fn digits(pad: Pad) -> impl Iterator<Item = Piece> {
    "789456123".chars().map(move |digit| {
        let face = digit.to_string();
        typing_key(pad, Key::Sign(digit), &face, &face, "").into()
    })
}

fn units(pad: Pad) -> Piece {
    let units = pad
        .target
        .with(|target| target.as_ref().map(|target| target.units.clone()))
        .unwrap_or_default();
    let keys = units
        .into_iter()
        .map(|unit| typing_key(pad, Key::Unit(unit), unit, unit, "key-unit").into());
    Piece::all(keys)
}

/// The verdict above the keys. Its line stands from one verdict to the next: only
/// what is said in it changes.
fn live(pad: Pad) -> Piece {
    let mark = Memo::new(move |_| pad.live.with(|live| live.as_ref().map(|(mark, _)| *mark)));
    Piece::when(
        move || mark.with(Option::is_some),
        move || {
            let words = move || {
                let of = |live: &Live| live.as_ref().map(|(_, words)| words.clone());
                pad.live.with(of).unwrap_or_default()
            };
            el("p")
                .class("live")
                .test("live")
                .live(move || mark.get().map(shape).into())
                .with(el("span").live_text(words))
                .into()
        },
    )
}

fn next_key(pad: Pad) -> El {
    el("button")
        .attr("type", "button")
        .class("key key-next")
        .test("keypad-next")
        .live_text(move || {
            let word = pad
                .target
                .with(|target| target.as_ref().map_or("Next", |target| target.next_word));
            word.to_owned()
        })
        .on("pointerdown", |event| {
            event.prevent_default();
            flash(&event);
        })
        .on("click", move |event| pad.next(event.time_stamp()))
}

/// The keypad, out while some field wants it.
#[must_use]
pub fn keypad() -> Piece {
    let pad = pad();
    pad.follow_lifts();
    let keys = [
        (Key::Sign('0'), "0", "0", "key-zero"),
        (Key::Sign('.'), ".", "point", "key-point"),
        (Key::Sign('/'), "⁄", "fraction bar", "key-bar"),
        (Key::Sign(' '), "␣", "space", "key-space"),
        (Key::Minus, "±", "plus or minus", "key-minus"),
        (Key::Back, "⌫", "take back", "key-back"),
    ];
    Piece::when(
        move || pad.is_open(),
        move || {
            let keys =
                keys.map(|(key, face, name, place)| typing_key(pad, key, face, name, place).into());
            let hide = el("button")
                .attr("type", "button")
                .class("key key-hide")
                .attr("aria-label", "put the keypad away")
                .test("keypad-hide")
                .text("▾")
                .click(move || pad.close());
            let block = el("div")
                .class("keys")
                .all(digits(pad))
                .all(keys)
                .with(hide)
                .with(next_key(pad));
            el("div")
                .class("keypad")
                .attr("role", "region")
                .attr("aria-label", "keypad")
                .test("keypad")
                .with(live(pad))
                .with(el("div").class("units").live(move || units(pad)))
                .with(block)
                .into()
        },
    )
}
