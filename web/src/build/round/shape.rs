//! The shape of a journal or a bore from its readings, drawn exaggerated, with
//! the same numbers as a table.

use assembly_core::metrology::exaggerated::{Diameter, Exaggerated, exaggerate};
use assembly_core::quantity::{Kind, show};
use build_journal::fold::ReadAt;
use build_plan::measure::{BORE, Found};
use build_plan::{At, Direction, Measure, Station};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::settings::{UnitClass, settings};
use crate::kit::aside::worked_out_later;
use crate::kit::chart::pushed_along;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, drawn, el, note};
use crate::kit::section::{fold_later, section};

/// The size of one drawing, and a radius in it.
const SIDE: f64 = 120.0;
const RADIUS: f64 = 42.0;

/// The measure whose readings have a shape: it is read at stations or in
/// directions, or is worked out from one that is.
fn shaped(measure: &'static Measure) -> Option<&'static Measure> {
    let of = match measure.found {
        Found::Spread { of, .. } => of,
        _ => measure,
    };
    let spots = &of.spots;
    let sized = of.kind == Kind::Length && of.can_be_read();
    let round = spots
        .directions
        .iter()
        .any(|one| one.from_upright().is_some());
    (sized && round).then_some(of)
}

/// The drawings of a part, as its readings come in.
#[must_use]
pub fn drawn_shape(
    opened: Opened,
    measure: &'static Measure,
    at: impl Fn() -> Option<At> + Copy + Send + Sync + 'static,
) -> Piece {
    let Some(of) = shaped(measure) else {
        return Piece::none();
    };
    let settings = settings();
    // It stands below what a key waits for, and most readings belong elsewhere.
    let read = worked_out_later(
        move || {
            opened.build.track();
            let _ = at();
        },
        move || {
            let at = at()?;
            let read = opened.build.with(|build| build.read_at(of, at));
            Some((at, read))
        },
    );
    Piece::live(move || {
        let units = settings.units();
        read.with(|read| {
            let (at, read) = read.as_ref()?;
            drawings(read, (of, *at), units)
        })
        .into()
    })
}

fn drawings(
    read: &[ReadAt],
    (measure, at): (&'static Measure, At),
    units: UnitClass,
) -> Option<El> {
    // Near its joint a bearing is wider on purpose: that is no fault of its shape.
    let meant: Vec<&ReadAt> = (read.iter())
        .filter(|one| {
            one.place
                .direction
                .is_none_or(|it| it.from_upright().is_some())
        })
        .collect();
    let stations = measure.spots.stations;
    let diameters: Vec<Diameter> = meant
        .iter()
        .map(|one| Diameter {
            station: (one.place.station)
                .and_then(|station| stations.iter().position(|it| *it == station))
                .unwrap_or(0),
            degrees: one.place.direction.and_then(Direction::from_upright),
            size: one.mean.value(),
        })
        .collect();
    let drawn = exaggerate(&diameters)?;
    let is_bore = measure.id == BORE.id;
    let outlines = (drawn.outlines.iter().enumerate())
        .filter(|(_, outline)| !outline.is_empty())
        .map(|(station, outline)| {
            let name = stations.get(station).map_or("", |one| one.label());
            outline_drawing(name, outline).into()
        });
    let outlines: Vec<Piece> = outlines.collect();
    let side = side_drawing(&drawn, stations, is_bore);
    let said = if drawn.times > 1.0 {
        format!(
            "Drawn {} times: the differences, not the size. The dashed line is the mean.",
            drawn.times
        )
    } else {
        "All readings are the same: round and without taper, as far as they tell.".to_owned()
    };
    let meant: Vec<ReadAt> = meant.into_iter().cloned().collect();
    let mean = drawn.mean;
    let in_numbers = move || table(&meant, mean, (measure, at), units).into();
    Some(
        section("Its shape, exaggerated")
            .test("shape")
            .with(el("div").class("holding").all(outlines).with(side))
            .with(note("hint", &said).test("shape-times"))
            .with(fold_later("The same in numbers", in_numbers)),
    )
}

/// One end of the part, or a section of a bore seen from above.
fn outline_drawing(name: &str, outline: &[(f64, f64)]) -> El {
    let points: Vec<String> = outline
        .iter()
        .map(|(x, y)| format!("{:.1},{:.1}", RADIUS * x, -RADIUS * y))
        .collect();
    let circle = drawn("circle")
        .class("spot-joint")
        .attr("r", &RADIUS.to_string());
    let oval = drawn("polygon")
        .class("holding-tool")
        .attr("points", &points.join(" "));
    figure(name, [circle.into(), oval.into()])
}

/// The part from its side: a bore stands, a journal lies.
fn side_drawing(drawn_shape: &Exaggerated, stations: &[Station], upright: bool) -> Option<El> {
    let known: Vec<(f64, f64)> = (drawn_shape.sides.iter().enumerate())
        .filter_map(|(station, side)| Some((along(station, stations.len()), (*side)?)))
        .collect();
    if known.len() < 2 {
        return None;
    }
    let point = |along: f64, out: f64| {
        if upright {
            format!("{:.1},{along:.1}", RADIUS * out)
        } else {
            format!("{along:.1},{:.1}", -RADIUS * out)
        }
    };
    let there = known.iter().map(|(at, out)| point(*at, *out));
    let back = known.iter().rev().map(|(at, out)| point(*at, -out));
    let points: Vec<String> = there.chain(back).collect();
    let side = drawn("polygon")
        .class("holding-tool")
        .attr("points", &points.join(" "));
    let ends = (
        known.first().map_or(0.0, |(at, _)| *at),
        known.last().map_or(0.0, |(at, _)| *at),
    );
    let means = [1.0, -1.0].map(|out| {
        drawn("polyline").class("spot-joint").attr(
            "points",
            &format!("{} {}", point(ends.0, out), point(ends.1, out)),
        )
    });
    let pieces = means.into_iter().map(Into::into).chain([side.into()]);
    Some(figure("from the side", pieces))
}

/// Where a station lies along the drawing.
fn along(station: usize, of: usize) -> f64 {
    let share = station as f64 / of.saturating_sub(1).max(1) as f64;
    (share - 0.5) * 2.0 * RADIUS
}

fn figure(name: &str, pieces: impl IntoIterator<Item = Piece>) -> El {
    let half = SIDE / 2.0;
    let picture = drawn("svg")
        .attr("viewBox", &format!("{} {} {SIDE} {SIDE}", -half, -half))
        .attr("aria-hidden", "true")
        .all(pieces);
    el("div")
        .class("spot-picture")
        .with(picture)
        .with(note("hint", name))
}

/// What was read, and how far each lies from the mean.
fn table(read: &[ReadAt], mean: f64, (measure, at): (&Measure, At), units: UnitClass) -> El {
    let unit = units.of(measure.kind, measure.units);
    let fine = units.clearance();
    let head = el("tr")
        .with(el("th").attr("scope", "col").text("Where"))
        .with(el("th").attr("scope", "col").text("Mean"))
        .with(el("th").attr("scope", "col").text("Off the mean of all"));
    let rows = read.iter().map(|one| {
        let station = one.place.station.map(Station::label);
        let direction = one.place.direction.map(Direction::label);
        let place: Vec<&str> = station.into_iter().chain(direction).collect();
        let off = one.mean.value() - mean;
        let deviation = Some(one.mean.deviation()).filter(|it| *it > 0.0);
        let mut off = show(off, deviation, fine);
        off.give_or_take = None;
        el("tr")
            .with(
                el("th")
                    .attr("scope", "row")
                    .text(&capital(&place.join(", "))),
            )
            .with(el("td").text(&show(one.mean.value(), deviation, unit).to_string()))
            .with(el("td").text(&off.to_string()))
            .into()
    });
    let caption = format!("{}, {at}", capital(measure.label));
    pushed_along(
        &caption,
        el("table")
            .class("numbers")
            .test("shape-table")
            .with(el("caption").text(&caption))
            .with(el("thead").with(head))
            .with(el("tbody").all(rows)),
    )
}
