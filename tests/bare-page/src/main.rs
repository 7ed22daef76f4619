//! The least that a page of the same framework can be. `cargo xtask report`
//! builds it with the same profile, policy and service worker as the app and
//! gives the app's start-up time as a multiple of this page's.

use leptos::prelude::*;

/// One button and one number.
#[component]
fn Bare() -> impl IntoView {
    let count = RwSignal::new(0);
    view! { <button on:click=move |_| count.update(|count| *count += 1)>{count}</button> }
}

fn main() {
    mount_to_body(Bare);
    if let Some(waiting) = document().get_element_by_id("before-start") {
        waiting.remove();
    }
    if let Some(performance) = web_sys::window().and_then(|window| window.performance()) {
        // The report says so when it finds no mark.
        let _ = performance.mark("thoubook-ready");
    }
}
