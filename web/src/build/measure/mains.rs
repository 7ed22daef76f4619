//! All main bearings along the crank, front at the top.

use build_journal::fold::{Build, MainBearing};
use build_plan::engine::CrankStop;
use leptos::prelude::*;

use super::crank::{journal_drawing, pin_drawing};
use super::order;
use super::standing::Stands;
use crate::build::Opened;
use crate::device::settings::{UnitClass, settings};
use crate::kit::judged::window_words;
use crate::kit::piece::{El, Piece, el, note, title};
use crate::kit::verdict::shape;
use crate::route::{Page, Route};

/// The crank line: every main with its verdict, each a link to it.
#[must_use]
pub fn mains() -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    let id = opened.id.to_string();
    Piece::live(move || {
        let units = settings.units();
        opened.build.with(|build| line(&id, build, units))
    })
}

fn line(id: &str, build: &Build, units: UnitClass) -> Piece {
    let Some(described) = &build.engine else {
        let words = "The engine is not described in what is here of this build. Bring in the file it was exported to.";
        return Piece::all([title("Main bearings").into(), note("lead", words).into()]);
    };
    let stops = described
        .engine
        .crank_line()
        .into_iter()
        .map(|stop| match stop {
            CrankStop::Crankpin(number) => el("li")
                .class("crank-pin")
                .attr("aria-hidden", "true")
                .with(pin_drawing(number))
                .into(),
            CrankStop::Main(main) => {
                let bearing = build.mains.iter().find(|bearing| bearing.main == main);
                bearing
                    .map(|bearing| main_row(id, build, bearing, units))
                    .into()
            }
        });
    Piece::all([
        title(described.engine.name()).into(),
        go_on(id, build).into(),
        limits_line(id, build, units).into(),
        el("ol")
            .class("crank")
            .attr("aria-label", "main bearings, front to rear")
            .all(stops)
            .into(),
    ])
}

fn go_on(id: &str, build: &Build) -> Option<El> {
    let spot = order::first_open(build)?;
    let to = Route::Build(id.to_owned(), Page::Main(spot.main()?)).to_string();
    let where_to = format!("{}: {}", spot.measure.label, spot.place);
    let link = el("a")
        .class("button go-on")
        .attr("href", &to)
        .test("go-on")
        .with(el("span").class("go-on-word").text("Go on"))
        .with(el("span").text(&where_to));
    Some(link)
}

fn limits_line(id: &str, build: &Build, units: UnitClass) -> El {
    let limits = build
        .mains
        .first()
        .map_or(&[][..], |bearing| &bearing.limits);
    let words = match limits {
        [] => "No limits yet: type them from the maker's sheet".to_owned(),
        [one] if let Ok(window) = &one.window => {
            format!("Oil clearance {}", window_words(window, units.clearance()))
        }
        _ => "The limits can't be used as they are: look at them".to_owned(),
    };
    el("a")
        .class("line")
        .attr(
            "href",
            &Route::Build(id.to_owned(), Page::Limits).to_string(),
        )
        .test("limits-line")
        .text(&words)
}

fn main_row(id: &str, build: &Build, bearing: &MainBearing, units: UnitClass) -> El {
    let number = bearing.main.number();
    let stands = Stands::of(build, bearing, units);
    let (mark, words) = (stands.mark, stands.words());
    let tag = if stands.stale.is_some() {
        "del"
    } else {
        "span"
    };
    let value = stands
        .judged
        .map(|judged| el(tag).class("main-row-value").text(&judged.value_words()));
    let row = el("a")
        .class("main-row")
        .attr(
            "href",
            &Route::Build(id.to_owned(), Page::Main(number)).to_string(),
        )
        .test(&format!("bearing-{number}"))
        .attr("data-verdict", mark.name())
        .with(journal_drawing())
        .with(shape(mark))
        .with(
            el("span")
                .class("main-row-words")
                .with(el("strong").text(&format!("Main {number}")))
                .with(value)
                .with(el("span").text(&words)),
        );
    el("li").with(row)
}
