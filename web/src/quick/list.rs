//! The list of quick checks.

use super::offered::OFFERED;
use leptos::prelude::*;

use crate::route::Route;

/// Every quick check, one link each.
#[component]
pub fn QuickChecks() -> impl IntoView {
    let links: Vec<_> = OFFERED
        .iter()
        .map(|one| {
            let to = Route::QuickCheck(one.id.to_owned()).to_string();
            view! {
                <li>
                    <a class="entry" href=to data-test=format!("check-{}", one.id)>
                        <strong>{one.title}</strong>
                        <span>{one.purpose}</span>
                    </a>
                </li>
            }
        })
        .collect();
    view! {
        <h1>"Quick checks"</h1>
        <p class="lead">"One answer, worked out as you type. Nothing is written into a build."</p>
        <ul class="entries">{links}</ul>
    }
}
