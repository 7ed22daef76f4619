//! Short words at the edge of the screen, and notices that stay.

use std::time::Duration;

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

use super::piece::{El, el, p};

/// Says one thing at a time, for a few seconds. It goes at once when the person
/// does the next thing: then it has been seen, and is in the way.
#[derive(Clone, Copy)]
pub struct Toast(RwSignal<Option<(u32, String)>>);

const STAYS: Duration = Duration::from_secs(6);

impl Toast {
    /// Nothing said yet.
    #[must_use]
    pub fn new() -> Self {
        Self(RwSignal::new(None))
    }

    /// Says something.
    pub fn say(self, words: impl Into<String>) {
        let words = words.into();
        let mut turn = 0;
        self.0.update(|said| {
            turn = said.as_ref().map_or(0, |(turn, _)| turn.wrapping_add(1));
            *said = Some((turn, words));
        });
        let signal = self.0;
        set_timeout(
            move || {
                // Something newer may have been said meanwhile.
                let mine = |said: &Option<(u32, String)>| {
                    said.as_ref().is_some_and(|(now, _)| *now == turn)
                };
                if signal.try_with_untracked(mine).unwrap_or(false) {
                    signal.set(None);
                }
            },
            STAYS,
        );
    }

    /// Listens for the next thing that is done, for as long as the page lives.
    fn follow_presses(self) {
        for what in ["pointerdown", "keydown"] {
            let heard = Closure::<dyn FnMut()>::new(move || {
                if self.0.with_untracked(Option::is_some) {
                    self.0.set(None);
                }
            });
            let listening = window().add_event_listener_with_callback_and_bool(
                what,
                heard.as_ref().unchecked_ref(),
                // Before the press itself says something new.
                true,
            );
            if listening.is_ok() {
                heard.forget();
            }
        }
    }
}

impl Default for Toast {
    fn default() -> Self {
        Self::new()
    }
}

/// The app's one toast.
#[must_use]
pub fn toast() -> Toast {
    expect_context()
}

/// Where the toast shows. Present from the start, so that screen readers listen to it.
#[must_use]
pub fn toast_place() -> El {
    let toast = toast();
    toast.follow_presses();
    let Toast(said) = toast;
    el("div")
        .class("toast")
        .attr("role", "status")
        .test("toast")
        .live(move || said.get().map(|(_, words)| p(&words)).into())
}

/// A notice that stays until what it is about is over: `danger`, `caution` or `note`.
#[must_use]
pub fn notice(tone: &str, test: &str) -> El {
    let role = if tone == "danger" { "alert" } else { "status" };
    el("div")
        .class(&format!("notice notice-{tone}"))
        .attr("role", role)
        .test(test)
}
