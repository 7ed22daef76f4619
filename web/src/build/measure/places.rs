//! All places of one bearing: what was read there last, each a button.

use build_journal::fold::{Build, Taken};
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::{Direction, Measure, Place, Station};
use leptos::prelude::*;

use super::order::Spot;
use crate::build::Opened;
use crate::kit::piece::{El, Piece, el, note};
use crate::kit::section::{fold, section};

/// The readings at a spot, oldest first, those struck out included.
#[must_use]
pub fn readings_at(build: &Build, spot: &Spot) -> Vec<Taken> {
    build
        .readings(spot.measure, spot.place.at)
        .filter(|taken| taken.place == Some(spot.place))
        .cloned()
        .collect()
}

/// What the places of a bearing share: which main, which place is in hand, and
/// how another one is taken.
#[derive(Clone, Copy)]
pub struct Choosing {
    /// Which main, counted from the front.
    pub number: Memo<u8>,
    /// The place in hand.
    pub spot: Memo<Option<Spot>>,
    /// Takes another one in hand.
    pub choose: Callback<Spot>,
}

/// The grids of one bearing's places.
#[must_use]
pub fn places(choosing: Choosing) -> Piece {
    Piece::all([
        section("Journal")
            .all(grid(&MAIN_JOURNAL_DIAMETER, choosing))
            .into(),
        section("Bore, shells in, caps torqued")
            .all(grid(&MAIN_BEARING_BORE, choosing))
            .into(),
        fold("Plastic strip, as a second opinion", strip(choosing)).into(),
    ])
}

fn grid(measure: &'static Measure, choosing: Choosing) -> impl Iterator<Item = Piece> {
    measure.spots.stations.iter().map(move |station| {
        let cells = measure.spots.directions.iter().map(|direction| {
            let test = format!("{}-{}-{}", measure.id, station.id(), direction.id());
            let place = |main: u8| Place::main(main).station(*station).direction(*direction);
            cell(measure, place, short(*direction), &test, choosing)
        });
        el("div")
            .class("place-row")
            .with(note("place-station", station.label()))
            .with(el("div").class("place-cells").all(cells))
            .into()
    })
}

fn strip(choosing: Choosing) -> El {
    let measure = &MAIN_OIL_CLEARANCE;
    let widest = format!("{}-widest", measure.id);
    let end = |station: Station, label: &str| {
        let test = format!("{}-{}", measure.id, station.id());
        let place = move |main: u8| Place::main(main).station(station);
        cell(measure, place, label, &test, choosing)
    };
    el("div").class("place-cells").all([
        cell(measure, Place::main, "widest spot", &widest, choosing),
        end(Station::Front, "front end"),
        end(Station::Rear, "rear end"),
    ])
}

const fn short(direction: Direction) -> &'static str {
    match direction {
        Direction::UpAndDown => "up-down",
        Direction::Across => "across",
        Direction::JointLeft => "joint, left",
        Direction::JointRight => "joint, right",
        _ => direction.label(),
    }
}

/// What was read at a place: the last reading that counts, and how many do; or
/// the last one that counted until something changed.
#[derive(Clone, PartialEq, Eq)]
struct Read {
    place: String,
    last: Option<String>,
    count: usize,
    was: Option<String>,
}

impl Read {
    fn of(build: &Build, spot: &Spot) -> Self {
        let readings = || {
            let all = build.readings(spot.measure, spot.place.at);
            all.filter(|taken| taken.place == Some(spot.place))
        };
        let counting = || {
            let still = readings().filter(|taken| build.still_counts(taken));
            still.filter_map(|taken| taken.counting())
        };
        let mut before = readings().filter_map(|taken| taken.counting());
        Self {
            was: before.next_back().map(ToString::to_string),
            place: spot.place.to_string(),
            last: counting().next_back().map(ToString::to_string),
            count: counting().count(),
        }
    }

    fn spoken(&self) -> String {
        match (&self.last, self.count) {
            (Some(last), 1) => format!("{}: {last}", self.place),
            (Some(last), more) => format!("{}: {last}, {more} readings", self.place),
            (None, _) => match &self.was {
                Some(was) => format!("{}: {was}, which no longer counts", self.place),
                None => format!("{}: not measured", self.place),
            },
        }
    }
}

fn cell(
    measure: &'static Measure,
    place: impl Fn(u8) -> Place + Copy + Send + Sync + 'static,
    label: &str,
    test: &str,
    choosing: Choosing,
) -> Piece {
    let opened: Opened = expect_context();
    let own = move || Spot {
        measure,
        place: place(choosing.number.get()),
    };
    let read = Memo::new(move |_| opened.build.with(|build| Read::of(build, &own())));
    el("button")
        .attr("type", "button")
        .class("place")
        .live_class("measured", move || read.with(|read| read.count > 0))
        .test(&format!("place-{test}"))
        .live_attr("aria-label", move || Some(read.with(Read::spoken)))
        .live_flag("aria-pressed", move || choosing.spot.get() == Some(own()))
        .click(move || choosing.choose.run(untrack(own)))
        .with(el("span").class("place-word").text(label))
        .with(el("span").class("place-value").live(move || {
            read.with(|read| match (&read.last, &read.was) {
                (Some(last), _) => el("span").text(last).into(),
                (None, Some(was)) => el("del").text(was).into(),
                (None, None) => el("span").text("–").into(),
            })
        }))
        .live_text(move || match read.with(|read| read.count) {
            0 | 1 => String::new(),
            more => format!("mean of {more}"),
        })
        .into()
}
