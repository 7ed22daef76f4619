//! Mounts the page and says when it is ready.

use leptos::prelude::*;
use thoubook_web::app::app;

/// Tells the start-up report that the first screen stands.
fn mark_ready() {
    if let Some(performance) = web_sys::window().and_then(|window| window.performance()) {
        // A browser without marks loses nothing but a figure in a report.
        let _ = performance.mark("thoubook-ready");
    }
}

fn main() {
    // The app puts itself into the page; Leptos gets an empty view, and lends
    // its owner and its executor.
    mount_to_body(|| app().show());
    // What the page showed while this was on its way is no longer true. It
    // goes last, so that it can still say so if mounting fails.
    if let Some(waiting) = document().get_element_by_id("before-start") {
        waiting.remove();
    }
    mark_ready();
}
