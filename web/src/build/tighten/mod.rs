//! Tightening: the groups of fasteners, their sheets, and the run over one.
//!
//! Everything shown is worked out by a [`Gathering`], apart from the rest of a
//! build and fact by fact: a press in a run waits for nothing else.

mod asking;
mod begin;
mod describe;
mod drag;
mod give_up;
mod groups;
mod history;
mod lengths;
mod log;
mod map;
mod part;
mod place;
mod run;
mod sealant;
mod typed;
mod typing;
mod words;
mod wrenches;

use build_journal::fold::tightening::{Gathering, Group, Tightenings};
use build_journal::{Journal, OwnId};
use build_plan::At;
use leptos::prelude::*;

use crate::build::Opened;
use crate::kit::piece::{Piece, link, note, p, title};
use crate::route::{Page, Route};

pub use log::in_the_log;
pub use place::Place;

/// The groups of the build that is open.
#[derive(Clone, Copy)]
struct Tighten {
    opened: Opened,
    all: All,
}

/// All groups as they stand, worked out from the facts as these grow.
#[derive(Clone, Copy)]
struct All(Memo<Gathering>);

impl All {
    fn of(journal: RwSignal<Journal>) -> Self {
        Self(Memo::new_owning(move |last: Option<Gathering>| {
            let gathering = journal.with(|journal| match last {
                Some(gathering) => gathering.further(journal),
                None => Gathering::of(journal),
            });
            (gathering, true)
        }))
    }

    /// Reads them, and follows them.
    fn with<T>(self, read: impl FnOnce(&Tightenings) -> T) -> T {
        self.0.with(|gathering| read(gathering.all()))
    }

    /// Reads them as they are now.
    fn with_untracked<T>(self, read: impl FnOnce(&Tightenings) -> T) -> T {
        self.0.with_untracked(|gathering| read(gathering.all()))
    }
}

impl Tighten {
    /// The address of a screen.
    fn to(self, place: Place) -> Route {
        Route::Build(self.opened.id.to_string(), Page::Tighten(place))
    }

    /// A group, not followed.
    fn group(self, own: OwnId) -> Option<Group> {
        self.all.with_untracked(|all| all.group(own).cloned())
    }
}

/// The screens of tightening.
#[must_use]
pub fn tighten(place: Memo<Place>) -> Piece {
    let opened: Opened = expect_context();
    let journal = opened.journal;
    let context = Tighten {
        opened,
        all: All::of(journal),
    };
    provide_context(context);
    Piece::live(move || {
        let place = place.get();
        untrack(|| match &place {
            Place::Groups => groups::groups(context),
            Place::New => describe::describe(context, None),
            Place::Describe(own) => {
                of_group(context, own, |own| describe::describe(context, Some(own)))
            }
            Place::Part(own, part) => of_part(context, (own, part), part::part_page),
            Place::Run(own, part) => of_part(context, (own, part), run::run_page),
            Place::Lengths(own, part) => of_part(context, (own, part), lengths::lengths_page),
            Place::Sealant(own, part) => of_part(context, (own, part), sealant::sealant_page),
        })
    })
}

fn of_group(context: Tighten, own: &str, make: impl Fn(OwnId) -> Piece) -> Piece {
    let known = |own: &OwnId| context.group(*own).is_some();
    match OwnId::parse(own).ok().filter(known) {
        Some(own) => make(own),
        None => not_there(context),
    }
}

/// A group at a part: what its screens are about.
#[derive(Clone, Copy)]
struct Spot {
    own: OwnId,
    at: At,
}

fn of_part(context: Tighten, (own, part): (&str, &str), make: fn(Tighten, Spot) -> Piece) -> Piece {
    match place::part_of(part) {
        Some(at) => of_group(context, own, |own| make(context, Spot { own, at })),
        None => not_there(context),
    }
}

fn not_there(context: Tighten) -> Piece {
    Piece::all([
        title("No such group").into(),
        note(
            "lead",
            "This group of bolts is not in the book on this device.",
        )
        .into(),
        p("")
            .with(link("", &context.to(Place::Groups), "To the groups"))
            .into(),
    ])
}
