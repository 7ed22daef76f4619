//! The clock of the device, as a signal that runs on by itself.

use std::time::Duration;

use leptos::prelude::*;

use crate::device::chance;

const A_SECOND: Duration = Duration::from_secs(1);

/// The moment, in milliseconds since 1970: every second for as long as what is
/// being made stands, and at once when the page is seen again. Whatever slept
/// meanwhile, phone or page, the clock on the wall did not.
#[must_use]
pub fn now() -> ReadSignal<i64> {
    let (now, set_now) = signal(chance::now());
    let look = move || {
        let _ = set_now.try_set(chance::now());
    };
    if let Ok(ticking) = set_interval_with_handle(look, A_SECOND) {
        on_cleanup(move || ticking.clear());
    }
    for again in ["visibilitychange", "pageshow", "focus"] {
        let listening = window_event_listener_untyped(again, move |_| look());
        on_cleanup(move || listening.remove());
    }
    now
}
