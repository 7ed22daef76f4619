//! What is seen of a run from a metre away: the number, the lap, the bolts.

use assembly_core::fastener::stages::Stage;
use build_journal::fact::Way;
use build_journal::fold::tightening::Run;
use leptos::prelude::*;

use super::Running;
use crate::build::tighten::map::{Drawing, NEXT, map};
use crate::build::tighten::{words, wrenches};
use crate::kit::piece::{El, Piece, drawn, el};

/// The paper that the number is drawn on. Its figures come to 143 of its units
/// in height: on a phone 360 pixels wide that is 25 mm and more.
const PAPER: (f64, f64) = (340.0, 156.0);

/// When the button is pressed; where laps have wrenches of their own, with which.
pub fn how(run: &Run) -> Option<String> {
    let next = run.next()?;
    let when = match (run.way, next.stage) {
        (Way::Loosen, _) => "press when it is turned back",
        (_, Stage::Torque(_)) => "press when it clicks",
        (_, Stage::Angle(_)) => "press when it is turned on",
        (_, Stage::Stretch(_)) => "press when it is stretched",
    };
    let with = run
        .wrench(next.lap)
        .filter(|_| !run.sheet.others.is_empty());
    Some(match with {
        Some(held) => format!("{when} · {}", wrenches::name(&held.typed)),
        None => when.to_owned(),
    })
}

/// The number as large as the screen allows; long ones are drawn narrower, not
/// lower. With an adapter on the wrench it is what to set, and what the bolt
/// gets stands under it.
pub fn figures(number: &str, unit: &str, wanted: Option<&(String, &'static str)>) -> Piece {
    let narrow = number.chars().count() > 2;
    let figures = drawn("text")
        .class("run-figures")
        .attr("x", &(PAPER.0 / 2.0).to_string())
        .attr("y", "150")
        .attr("text-anchor", "middle")
        .text(number);
    let figures = if narrow {
        figures
            .attr("textLength", &(PAPER.0 - 6.0).to_string())
            .attr("lengthAdjust", "spacingAndGlyphs")
    } else {
        figures
    };
    let paper = drawn("svg")
        .class("run-number")
        .attr("viewBox", &format!("0 0 {} {}", PAPER.0, PAPER.1))
        .attr("aria-hidden", "true")
        .with(figures);
    let said = el("span")
        .class("run-unit")
        .test("run-number")
        .with(el("span").class("only-heard").text(&format!("{number} ")))
        .text(unit);
    let set = wanted.map(|_| el("span").class("run-set").text("Set the wrench to"));
    let at_the_bolt = wanted.map(|(wanted, unit)| {
        el("span")
            .class("run-set")
            .test("run-at-bolt")
            .text(&format!("for {wanted} {unit} at the bolt"))
    });
    Piece::all([set.into(), paper.into(), said.into(), at_the_bolt.into()])
}

/// Lap x of y, and how many of it are done.
pub fn progress(running: Running) -> El {
    let run = running.run;
    el("div")
        .class("run-progress")
        .with(el("strong").test("run-lap").live_text(move || {
            run.with(|run| {
                run.as_ref().map_or_else(String::new, |run| {
                    let lap = run.standing.lap_on().map_or(run.laps(), |lap| lap + 1);
                    format!("Lap {lap} of {}", run.laps())
                })
            })
        }))
        .with(el("span").test("run-done").live_text(move || {
            run.with(|run| {
                let next = run.as_ref().and_then(|run| Some((run, run.next()?)));
                next.map_or_else(String::new, |(run, next)| {
                    format!("{} of {} done", next.done_in_lap, run.bolts())
                })
            })
        }))
}

/// The bolts: done in this lap, next, passed over, open.
pub fn drawing(running: Running) -> Piece {
    let run = running.run;
    let Some(now) = running.now() else {
        return Piece::none();
    };
    let drawing = Drawing::as_it_sits(&now.sheet.layout);
    let says = move || run.with(|run| run.as_ref().map_or_else(String::new, words::where_it_is));
    let looks = move || run.with(|run| run.as_ref().map(looks).unwrap_or_default());
    map(&drawing, looks, says).into()
}

fn looks(run: &Run) -> Vec<&'static str> {
    let next = run.next();
    let passed = run.standing.passed_over();
    let lap = next.map_or(run.laps().saturating_sub(1), |next| next.lap);
    let look = |bolt: usize| {
        if next.is_some_and(|next| next.bolt == bolt) {
            NEXT
        } else if run.standing.is_done(bolt, lap) {
            "done"
        } else if passed.contains(&bolt) {
            "passed"
        } else {
            "open"
        }
    };
    (0..run.bolts()).map(look).collect()
}
