//! The frame around the pages of the oil.

use build_journal::fold::OilView;
use leptos::prelude::*;

use super::place::Place;
use super::{after, before, film, gauge, oils, plugs, pressure, prime, run, system};
use crate::build::Opened;
use crate::kit::piece::{Piece, el};
use crate::route::{Page, Route};

/// What the pages of the oil share.
#[derive(Clone, Copy)]
pub(super) struct Oil {
    /// The build that is open.
    pub opened: Opened,
    /// What follows from its facts for the oil.
    pub view: Memo<OilView>,
}

impl Oil {
    /// The address of one of its pages.
    pub fn route(self, place: Place) -> Route {
        Route::Build(self.opened.id.to_string(), Page::Oil(place))
    }
}

/// A page of the oil, with the way to the others.
#[must_use]
pub fn oil_page(place: Memo<Place>) -> Piece {
    let opened: Opened = expect_context();
    let oil = Oil {
        opened,
        view: Memo::new(move |_| opened.journal.with(OilView::of)),
    };
    let ways = Place::ALL.into_iter().map(|to| {
        el("a")
            .attr("href", &oil.route(to).to_string())
            .live_attr("aria-current", move || {
                (place.get() == to).then(|| "page".to_owned())
            })
            .test(&format!("oil-{to}"))
            .text(to.label())
            .into()
    });
    let ways = el("nav")
        .class("oil-ways")
        .attr("aria-label", "oil")
        .all(ways);
    let page = Piece::live(move || {
        let place = place.get();
        untrack(|| match place {
            Place::Pressure => pressure::page(oil),
            Place::System => system::page(oil),
            Place::Film => film::page(oil),
            Place::Oils => oils::page(oil),
            Place::Gauge => gauge::page(oil),
            Place::Plugs => plugs::page(oil),
            Place::Prime => prime::page(oil),
            Place::Before => before::page(oil),
            Place::Run => run::page(oil),
            Place::After => after::page(oil),
        })
    });
    // Beside a running engine the numbers come first.
    el("div")
        .class("oil")
        .live_class("oil-at-run", move || place.get() == Place::Run)
        .with(ways)
        .with(page)
        .into()
}
