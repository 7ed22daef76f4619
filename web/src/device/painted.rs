//! Letting the screen come first: what a person waits for is painted before work
//! is begun that nobody sees.

use std::time::Duration;

use js_sys::{Function, Promise};
use leptos::prelude::{request_animation_frame, set_timeout};
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// A page that is out of sight is not painted: no longer than this is waited.
const AT_MOST: Duration = Duration::from_millis(100);

/// Waits until what has just changed is on the screen.
pub async fn painted() {
    let painted = Promise::new(&mut |resolve: Function, _| {
        let late = resolve.clone();
        let tell = |resolve: &Function| {
            let _ = resolve.call0(&JsValue::UNDEFINED);
        };
        // A timeout that is set within a frame runs after its painting.
        request_animation_frame(move || {
            set_timeout(move || tell(&resolve), Duration::ZERO);
        });
        set_timeout(move || tell(&late), AT_MOST);
    });
    // It is never refused.
    let _ = JsFuture::from(painted).await;
}
