//! The crank, drawn piece by piece along its line: a journal for each main, a
//! throw for each crankpin. Front is at the top.

use crate::kit::piece::{El, drawn};

fn drawing(view: &str) -> El {
    drawn("svg")
        .class("crank-drawing")
        .attr("viewBox", view)
        .attr("preserveAspectRatio", "none")
        .attr("aria-hidden", "true")
}

fn path(class: &str, d: &str) -> El {
    drawn("path").class(class).attr("d", d)
}

/// A main journal in its cap.
#[must_use]
pub fn journal_drawing() -> El {
    drawing("0 0 72 72")
        .with(path("crank-body", "M26 0h20v72H26z"))
        .with(path("crank-edge", "M26 0v72M46 0v72"))
        .with(path("crank-cap", "M16 16h6v40h-6zM50 16h6v40h-6z"))
}

/// A crankpin between its two webs, thrown to one side and the other in turn.
/// Counted from the front, from 1.
#[must_use]
pub fn pin_drawing(number: u8) -> El {
    let (web, pin) = if number % 2 == 1 {
        ("M6 0h40v9H6zM6 33h40v9H6z", "M6 9h18v24H6z")
    } else {
        ("M26 0h40v9H26zM26 33h40v9H26z", "M48 9h18v24H48z")
    };
    drawing("0 0 72 42")
        .with(path("crank-web", web))
        .with(path("crank-body crank-edge", pin))
}
