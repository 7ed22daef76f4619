//! Tonight: what a person sees on opening the garage.

use build_journal::fold::{Clock, Outlook};
use build_journal::summary::Summary;
use leptos::prelude::*;

use super::Place;
use super::clocks::clocks;
use super::next::next;
use super::now::now;
use super::stale::stale;
use super::stopped::stopped;
use super::waiting::{ahead, waiting};
use crate::bench::name_of;
use crate::build::Opened;
use crate::device::exports::exports;
use crate::kit::piece::{Piece, button, link, note, p, row, title};
use crate::kit::toast::{notice, toast};
use crate::route::{Page, Route};

const HOUR: i64 = 60 * 60 * 1000;

/// What the parts of the page share.
#[derive(Clone, Copy)]
pub struct Tonight {
    /// The build.
    pub opened: Opened,
    /// The moment, running on.
    pub now: ReadSignal<i64>,
    /// Where the whole job stands.
    pub outlook: Memo<Outlook>,
    /// The states that do not last.
    pub clocks: Memo<Vec<Clock>>,
}

impl Tonight {
    fn of(opened: Opened) -> Self {
        let now = now();
        let clocks = Memo::new(move |_| opened.build.with(|build| build.clocks()));
        // The job is looked at again when something has run out, and now and
        // then for the dates; not every second.
        let run_out = Memo::new(move |_| {
            let now = now.get();
            clocks.with(|clocks| {
                clocks
                    .iter()
                    .map(|one| one.has_run_out(now))
                    .collect::<Vec<bool>>()
            })
        });
        let hour = Memo::new(move |_| now.get() / HOUR);
        let outlook = Memo::new(move |_| {
            run_out.track();
            hour.track();
            opened
                .build
                .with(|build| build.outlook(now.get_untracked()))
        });
        Self {
            opened,
            now,
            outlook,
            clocks,
        }
    }

    /// The address of a page of the plan.
    #[must_use]
    pub fn to(self, place: Place) -> Route {
        Route::Build(self.opened.id.to_string(), Page::Plan(place))
    }
}

/// The page.
#[must_use]
pub fn tonight() -> Piece {
    let opened: Opened = expect_context();
    let described = Memo::new(move |_| opened.build.with(|build| build.engine.is_some()));
    Piece::live(move || {
        if !described.get() {
            let words = "The engine is not described in what is here of this build. Bring in the file it was exported to, or describe it.";
            let to = Route::Build(opened.id.to_string(), Page::Plan(Place::Engine));
            return Piece::all([
                title("Tonight").into(),
                note("lead", words).into(),
                row([link("", &to, "Describe the engine").into()]).into(),
            ]);
        }
        untrack(|| whole(Tonight::of(opened)))
    })
}

fn whole(tonight: Tonight) -> Piece {
    let name = title("").live_text(move || tonight.opened.build.with(name_of));
    let ways = row([
        link(
            "quiet",
            &tonight.to(Place::Change(None)),
            "I changed something",
        )
        .test("to-change")
        .into(),
        link("quiet", &tonight.to(Place::Steps), "All steps")
            .test("to-steps")
            .into(),
        link("quiet", &tonight.to(Place::Engine), "The engine")
            .test("to-engine")
            .into(),
    ]);
    Piece::all([
        name.into(),
        stopped(tonight),
        clocks(tonight),
        stale(tonight),
        next(tonight),
        ways.into(),
        waiting(tonight),
        ahead(tonight),
        export_reminder(tonight),
    ])
}

/// After a sitting what was written is exported.
fn export_reminder(tonight: Tonight) -> Piece {
    let (exports, toast) = (exports(), toast());
    let journal = tonight.opened.journal;
    let summary = Memo::new(move |_| {
        // A sitting is over after an hour: looked at once a minute.
        let minute = tonight.now.get() / 60_000 * 60_000;
        let last = journal.with(|journal| exports.last(journal.build()));
        tonight.opened.build.with(|build| {
            journal.with(|journal| {
                let summary = Summary::of(journal, build, minute, last);
                (summary.export_now, summary.since_export)
            })
        })
    });
    let due = Memo::new(move |_| summary.get().0);
    Piece::when(
        move || due.get(),
        move || {
            let export = button("", "Export", "export", move || {
                let name = tonight.opened.build.with_untracked(name_of);
                exports.hand_over(journal, name, toast);
            });
            let words = move || match summary.get().1 {
                1 => {
                    "One line is in no export yet. A phone can fall into the drain pan.".to_owned()
                }
                lines => format!(
                    "{lines} lines are in no export yet. A phone can fall into the drain pan."
                ),
            };
            notice("caution", "export-now")
                .with(p("").live_text(words))
                .with(row([export.into()]))
                .into()
        },
    )
}
