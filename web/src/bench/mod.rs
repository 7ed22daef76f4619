//! The bench: the builds on this device.

use leptos::prelude::*;

use crate::route::Route;

/// The first screen.
#[component]
pub fn Bench() -> impl IntoView {
    view! {
        <h1>"Bench"</h1>
        <p><a class="button" href=Route::QuickChecks.to_string() data-test="quick-link">"Quick checks"</a></p>
    }
}
