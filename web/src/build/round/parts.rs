//! The places of one part: what was read there last, each a button.

use build_journal::fold::{Build, Taken};
use build_plan::{At, Measure};
use leptos::prelude::*;

use crate::build::Opened;
use crate::build::measure::order::Spot;
use crate::build::measure::places::readings_at;
use crate::kit::piece::{El, Piece, el};

/// Which part is gone over, which place is in hand, how another is taken.
#[derive(Clone, Copy)]
pub struct Choosing {
    /// What is measured.
    pub measure: &'static Measure,
    /// On which part.
    pub at: Memo<Option<At>>,
    /// The place in hand.
    pub spot: Memo<Option<Spot>>,
    /// Takes another one in hand.
    pub choose: Callback<Spot>,
}

/// A button for every place of the part.
#[must_use]
pub fn places(choosing: Choosing) -> Piece {
    Piece::live(move || {
        let Some(at) = choosing.at.get() else {
            return Piece::none();
        };
        untrack(|| {
            let places = choosing.measure.spots.on(at).into_iter();
            let cells = places.enumerate().map(|(number, place)| {
                let spot = Spot {
                    measure: choosing.measure,
                    place,
                };
                cell(number + 1, spot, choosing).into()
            });
            el("div").class("place-cells").all(cells).into()
        })
    })
}

/// What was read at a place: the last reading that counts, and how many do.
#[derive(Clone, PartialEq, Eq)]
struct Read {
    last: Option<String>,
    count: usize,
}

impl Read {
    fn of(build: &Build, spot: &Spot) -> Self {
        let readings = readings_at(build, spot);
        let counting = || readings.iter().filter_map(Taken::counting);
        Self {
            last: counting().next_back().map(ToString::to_string),
            count: counting().count(),
        }
    }
}

fn cell(number: usize, spot: Spot, choosing: Choosing) -> El {
    let opened: Opened = expect_context();
    let read = Memo::new(move |_| opened.build.with(|build| Read::of(build, &spot)));
    let name = spot.on_its_part();
    let spoken = spot.place.to_string();
    el("button")
        .attr("type", "button")
        .class("place")
        .live_class("measured", move || read.with(|read| read.count > 0))
        .test(&format!("place-{number}"))
        .live_attr("aria-label", move || {
            let last = read.with(|read| read.last.clone());
            Some(match last {
                Some(last) => format!("{spoken}: {last}"),
                None => format!("{spoken}: not measured"),
            })
        })
        .live_flag("aria-pressed", move || choosing.spot.get() == Some(spot))
        .click(move || choosing.choose.run(spot))
        .with(el("span").class("place-word").text(&name))
        .with(el("span").class("place-value").live_text(move || {
            read.with(|read| read.last.clone())
                .unwrap_or_else(|| "–".to_owned())
        }))
        .live_text(move || match read.with(|read| read.count) {
            0 | 1 => String::new(),
            more => format!("mean of {more}"),
        })
}
