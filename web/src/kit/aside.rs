//! What need not be on the screen with the next frame: it follows a frame later,
//! so that a verdict never waits for the advice that goes with it.

use std::time::Duration;

use leptos::prelude::*;

/// A copy of what changes that is a painted frame behind it.
#[must_use]
pub fn a_frame_later<T>(now: Memo<T>) -> ReadSignal<T>
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let (later, follow) = signal(now.get_untracked());
    let on_the_way = StoredValue::new(false);
    let arrive = move || {
        // The screen may be gone by now.
        let _ = on_the_way.try_set_value(false);
        if let Some(now) = now.try_get_untracked()
            && later.try_with_untracked(|later| *later != now) == Some(true)
        {
            let _ = follow.try_set(now);
        }
    };
    Effect::new(move |before: Option<()>| {
        now.track();
        if before.is_some() && !on_the_way.get_value() {
            on_the_way.set_value(true);
            // A timeout that is set within a frame runs after its painting.
            request_animation_frame(move || set_timeout(arrive, Duration::ZERO));
        }
    });
    later
}
