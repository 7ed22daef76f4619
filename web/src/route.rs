//! Which screen the address asks for.
//!
//! Addresses live behind the `#`, so that any static host and any sub-path
//! serves them, links are ordinary anchors, and the back button works.

use std::fmt;

use crate::build::tonight::Place;
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

use crate::build::{map, oil, parts, round, tighten};
use crate::device::painted::painted;

/// A screen.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Route {
    /// The builds on this device.
    Bench,
    /// Describing an engine, to begin a build.
    NewBuild,
    /// The list of quick checks.
    QuickChecks,
    /// One quick check, by the id of its calculation.
    QuickCheck(String),
    /// The words of the trade.
    Words,
    /// A page of a build.
    Build(String, Page),
    /// An address that leads nowhere.
    Nowhere(String),
}

/// A page of a build.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Page {
    /// A page of the plan: tonight, the steps, what was changed.
    Plan(Place),
    /// All main bearings along the crank line.
    Mains,
    /// One main bearing, counted from the front, from 1.
    Main(u8),
    /// The limits of the main bearings.
    Limits,
    /// The tools and their settings.
    Tools,
    /// Tightening.
    Tighten(tighten::Place),
    /// The oil.
    Oil(oil::Place),
    /// What is bought and what is given out.
    Parts(parts::Place),
    /// What a file brought, and what two devices say differently.
    Merge,
    /// The engine map.
    Map(map::Place),
    /// Everything else that is measured.
    Measure(round::Place),
    /// Everything that was written down.
    Book,
}

impl Route {
    /// Reads the part of an address from its `#` on.
    #[must_use]
    pub fn read(hash: &str) -> Self {
        let path = hash.trim_start_matches('#').trim_matches('/');
        let parts: Vec<&str> = path.split('/').collect();
        match parts.as_slice() {
            [""] => Self::Bench,
            ["new"] => Self::NewBuild,
            ["quick"] => Self::QuickChecks,
            ["words"] => Self::Words,
            ["quick", id] => Self::QuickCheck((*id).to_owned()),
            ["build", id, "mains"] => Self::Build((*id).to_owned(), Page::Mains),
            ["build", id, "mains", "limits"] => Self::Build((*id).to_owned(), Page::Limits),
            ["build", id, "mains", number] => match number.parse() {
                Ok(number) => Self::Build((*id).to_owned(), Page::Main(number)),
                Err(_) => Self::Nowhere(hash.to_owned()),
            },
            ["build", id, "measure", rest @ ..] => match round::Place::read(rest) {
                Some(place) => Self::Build((*id).to_owned(), Page::Measure(place)),
                None => Self::Nowhere(hash.to_owned()),
            },
            ["build", id, "map", rest @ ..] => match map::Place::read(rest) {
                Some(place) => Self::Build((*id).to_owned(), Page::Map(place)),
                None => Self::Nowhere(hash.to_owned()),
            },
            ["build", id, "tools"] => Self::Build((*id).to_owned(), Page::Tools),
            ["build", id, rest @ ..] if rest.first() == Some(&"tighten") => {
                tighten::Place::read(rest).map_or_else(
                    || Self::Nowhere(hash.to_owned()),
                    |place| Self::Build((*id).to_owned(), Page::Tighten(place)),
                )
            }
            ["build", id, "oil", rest @ ..] => match oil::Place::read(rest) {
                Some(place) => Self::Build((*id).to_owned(), Page::Oil(place)),
                None => Self::Nowhere(hash.to_owned()),
            },
            ["build", id, "book"] => Self::Build((*id).to_owned(), Page::Book),
            ["build", id, rest @ ..] if let Some(place) = Place::read(rest) => {
                Self::Build((*id).to_owned(), Page::Plan(place))
            }
            ["build", id, "merge"] => Self::Build((*id).to_owned(), Page::Merge),
            ["build", id, rest @ ..] if let Some(place) = parts::Place::read(rest) => {
                Self::Build((*id).to_owned(), Page::Parts(place))
            }
            _ => Self::Nowhere(hash.to_owned()),
        }
    }
}

/// The address of the screen, from the `#` on: what a link holds.
impl fmt::Display for Route {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Bench => f.write_str("#/"),
            Self::NewBuild => f.write_str("#/new"),
            Self::QuickChecks => f.write_str("#/quick"),
            Self::Words => f.write_str("#/words"),
            Self::QuickCheck(id) => write!(f, "#/quick/{id}"),
            Self::Build(id, Page::Plan(place)) => write!(f, "#/build/{id}/{place}"),
            Self::Build(id, Page::Mains) => write!(f, "#/build/{id}/mains"),
            Self::Build(id, Page::Main(number)) => write!(f, "#/build/{id}/mains/{number}"),
            Self::Build(id, Page::Limits) => write!(f, "#/build/{id}/mains/limits"),
            Self::Build(id, Page::Tools) => write!(f, "#/build/{id}/tools"),
            Self::Build(id, Page::Tighten(place)) => write!(f, "#/build/{id}/{place}"),
            Self::Build(id, Page::Oil(place)) => write!(f, "#/build/{id}/oil/{place}"),
            Self::Build(id, Page::Measure(place)) => write!(f, "#/build/{id}/measure{place}"),
            Self::Build(id, Page::Map(place)) => write!(f, "#/build/{id}/map{place}"),
            Self::Build(id, Page::Book) => write!(f, "#/build/{id}/book"),
            Self::Build(id, Page::Parts(place)) => write!(f, "#/build/{id}/{place}"),
            Self::Build(id, Page::Merge) => write!(f, "#/build/{id}/merge"),
            Self::Nowhere(hash) => f.write_str(hash),
        }
    }
}

/// What the address bar says now.
#[must_use]
pub fn current() -> Route {
    Route::read(&window().location().hash().unwrap_or_default())
}

/// The route as a signal that follows the address bar for as long as the page lives.
#[must_use]
pub fn follow() -> ReadSignal<Route> {
    let (route, set_route) = signal(current());
    let changed = Closure::<dyn FnMut()>::new(move || {
        let now = current();
        if set_route.try_update(|was| *was = now).is_none() {
            leptos::logging::warn!("the address changed after the page was gone");
        }
    });
    let heard =
        window().add_event_listener_with_callback("hashchange", changed.as_ref().unchecked_ref());
    if heard.is_ok() {
        changed.forget();
    }
    route
}

/// Goes to a screen, as a link would.
pub fn go(route: &Route) {
    let _ = window().location().set_hash(&route.to_string());
}

/// The same once what has just changed is on the screen: for another address the
/// browser lays the whole page out, and a verdict need not wait for that. Who has
/// gone elsewhere by then stays there.
pub fn go_when_painted(route: Route) {
    let here = window().location().hash().ok();
    spawn_local(async move {
        painted().await;
        if window().location().hash().ok() == here {
            go(&route);
        }
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_address_reads_back_as_the_screen_it_was_written_for() {
        let id = || "0192f0c1-aaaa-7bbb-8ccc-0123456789ab".to_owned();
        for route in [
            Route::Bench,
            Route::NewBuild,
            Route::QuickChecks,
            Route::Words,
            Route::QuickCheck("running-clearance".to_owned()),
            Route::Build(id(), Page::Mains),
            Route::Build(id(), Page::Main(5)),
            Route::Build(id(), Page::Limits),
            Route::Build(id(), Page::Measure(round::Place::List)),
            Route::Build(
                id(),
                Page::Measure(round::Place::Round("ring-end-gap".to_owned(), 12)),
            ),
            Route::Build(
                id(),
                Page::Measure(round::Place::Limits("ring-end-gap".to_owned())),
            ),
            Route::Build(
                id(),
                Page::Measure(round::Place::Choice("main-shells".to_owned())),
            ),
            Route::Build(id(), Page::Map(map::Place::Whole)),
            Route::Build(id(), Page::Map(map::Place::Region("bores-1".to_owned()))),
            Route::Build(id(), Page::Map(map::Place::Part("main-3".to_owned()))),
            Route::Build(id(), Page::Tools),
            Route::Build(id(), Page::Tighten(tighten::Place::New)),
            Route::Build(id(), Page::Oil(oil::Place::Film)),
            Route::Build(id(), Page::Book),
            Route::Build(id(), Page::Plan(Place::Tonight)),
            Route::Build(id(), Page::Plan(Place::Steps)),
            Route::Build(id(), Page::Plan(Place::Step("wash".to_owned(), None))),
            Route::Build(
                id(),
                Page::Plan(Place::Step(
                    "crank-in".to_owned(),
                    Some("main-3".to_owned()),
                )),
            ),
            Route::Build(id(), Page::Plan(Place::Change(None))),
            Route::Build(
                id(),
                Page::Plan(Place::Change(Some("bores-honed".to_owned()))),
            ),
            Route::Build(id(), Page::Plan(Place::Engine)),
            Route::Build(id(), Page::Parts(parts::Place::List)),
            Route::Build(id(), Page::Parts(parts::Place::Shop)),
            Route::Build(id(), Page::Merge),
        ] {
            assert_eq!(Route::read(&route.to_string()), route);
        }
    }

    #[test]
    fn a_build_opens_with_tonight() {
        assert_eq!(
            Route::read("#/build/x"),
            Route::Build("x".to_owned(), Page::Plan(Place::Tonight))
        );
    }

    #[test]
    fn an_empty_address_is_the_bench_and_nonsense_is_nowhere() {
        assert_eq!(Route::read(""), Route::Bench);
        assert_eq!(Route::read("#"), Route::Bench);
        assert_eq!(
            Route::read("#/build/x/mains/three"),
            Route::Nowhere("#/build/x/mains/three".to_owned())
        );
        assert!(matches!(Route::read("#/build"), Route::Nowhere(_)));
    }
}
