//! The crank, drawn piece by piece along its line: a journal for each main, a
//! throw for each crankpin. Front is at the top.

use leptos::prelude::*;

/// A main journal with a web above and below.
#[component]
pub fn JournalDrawing() -> impl IntoView {
    view! {
        <svg class="crank-drawing" viewBox="0 0 72 72" preserveAspectRatio="none" aria-hidden="true">
            <path class="crank-body" d="M26 0h20v72H26z" />
            <path class="crank-edge" d="M26 0v72M46 0v72" />
            <path class="crank-cap" d="M16 16h6v40h-6zM50 16h6v40h-6z" />
            <circle class="crank-hole" cx="36" cy="36" r="3" />
        </svg>
    }
}

/// A crankpin between its two webs, thrown to one side and the other in turn.
#[component]
pub fn PinDrawing(
    /// Counted from the front, from 1.
    number: u8,
) -> impl IntoView {
    let (web, pin) = if number % 2 == 1 {
        ("M6 0h40v9H6zM6 33h40v9H6z", "M6 9h18v24H6z")
    } else {
        ("M26 0h40v9H26zM26 33h40v9H26z", "M48 9h18v24H48z")
    };
    view! {
        <svg class="crank-drawing" viewBox="0 0 72 42">
            <path class="crank-web" d=web />
            <path class="crank-body crank-edge" d=pin />
        </svg>
    }
}
