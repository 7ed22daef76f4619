//! What need not be on the screen with the next frame: it follows a frame later,
//! so that a verdict never waits for the advice that goes with it.

use std::rc::Rc;
use std::time::Duration;

use leptos::prelude::*;

/// A copy of what changes that is a painted frame behind it.
#[must_use]
pub fn a_frame_later<T>(now: Memo<T>) -> ReadSignal<T>
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let (later, follow) = signal(now.get_untracked());
    behind(
        Box::new(move || now.track()),
        Rc::new(move || {
            // The screen may be gone by now.
            if let Some(now) = now.try_get_untracked()
                && later.try_with_untracked(|later| *later != now) == Some(true)
            {
                let _ = follow.try_set(now);
            }
        }),
    );
    later
}

/// Something that is worked out when a painted frame has gone by since what it
/// goes by has changed: not even the sum is waited for. `goes_by` reads the
/// signals, `work_out` is not followed.
#[must_use]
pub fn worked_out_later<T>(
    goes_by: impl Fn() + 'static,
    work_out: impl Fn() -> T + Send + Sync + 'static,
) -> Memo<T>
where
    T: PartialEq + Send + Sync + 'static,
{
    let (told, tell) = signal(());
    behind(
        Box::new(goes_by),
        Rc::new(move || {
            let _ = tell.try_set(());
        }),
    );
    Memo::new(move |_| {
        told.track();
        untrack(&work_out)
    })
}

/// Does something a painted frame after what is read in `follow` has changed.
fn behind(follow: Box<dyn Fn()>, arrive: Rc<dyn Fn()>) {
    let on_the_way = StoredValue::new(false);
    Effect::new(move |before: Option<()>| {
        follow();
        if before.is_some() && !on_the_way.get_value() {
            on_the_way.set_value(true);
            let arrive = Rc::clone(&arrive);
            let arrive = move || {
                let _ = on_the_way.try_set_value(false);
                arrive();
            };
            // A timeout that is set within a frame runs after its painting.
            request_animation_frame(move || set_timeout(arrive, Duration::ZERO));
        }
    });
}
