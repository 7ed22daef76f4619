//! The first screen: the builds on this device.

use leptos::prelude::*;

use super::card::BuildCard;
use super::import::ImportFile;
use super::room::Room;
use crate::device::keeping::keeping;
use crate::route::Route;

/// The bench.
#[component]
pub fn Bench() -> impl IntoView {
    let keeping = keeping();
    let cards = move || {
        let builds = keeping.builds();
        if builds.is_empty() {
            let words = if keeping.is_open() {
                "No build is on this device yet. Begin one by describing the engine, or bring in a file."
            } else {
                "Opening the book…"
            };
            return view! { <p class="lead" data-test="no-builds">{words}</p> }.into_any();
        }
        // The latest begun comes first.
        let cards = builds
            .into_iter()
            .rev()
            .map(|(id, journal)| view! { <BuildCard id journal /> });
        view! { <ul class="entries">{cards.collect_view()}</ul> }.into_any()
    };
    view! {
        <h1>"Bench"</h1>
        {cards}
        <div class="row">
            <a class="button" href=Route::NewBuild.to_string() data-test="new-build">"New build"</a>
            <a class="button quiet" href=Route::QuickChecks.to_string() data-test="quick-link">"Quick checks"</a>
            <ImportFile />
        </div>
        <Room />
    }
}
