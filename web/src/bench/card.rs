//! One build on the bench.

use build_journal::sample::is_sample;
use build_journal::summary::{LastExport, Summary};
use build_journal::{Build, BuildId, Journal, fold};
use leptos::prelude::*;

use super::sample::{remove_sample, says_sample};
use super::wipe::wipe;
use crate::build::book::words as told;
use crate::build::measure::Stands;
use crate::build::tonight::Place;
use crate::device::chance;
use crate::device::exports::exports;
use crate::device::settings::UnitClass;
use crate::kit::piece::{El, Piece, button, el, row};
use crate::kit::toast::toast;
use crate::kit::verdict::{Mark, shape};
use crate::kit::when;
use crate::route::{Page, Route};

/// A build: its name opens it; export and wipe stand beside.
#[must_use]
pub fn card(id: BuildId, journal: RwSignal<Journal>) -> El {
    let build = Memo::new(move |_| journal.with(fold));
    let name = move || build.with(name_of);
    let exports = exports();
    let toast = toast();
    let wiping = RwSignal::new(false);
    let open = el("a")
        .class("entry")
        .attr(
            "href",
            &Route::Build(id.to_string(), Page::Plan(Place::Tonight)).to_string(),
        )
        .test("build-link")
        .with(el("strong").live_text(name))
        .with(el("span").live_text(move || build.with(engine_words)))
        .live(move || {
            let last = exports.last(id);
            build.with(|build| journal.with(|journal| lines(journal, build, last)))
        })
        .live(move || build.with(tally).into());
    let export = button("quiet", "Export", "export", move || {
        exports.hand_over(journal, build.with_untracked(name_of), toast);
    })
    .live_attr("aria-label", move || Some(format!("export {}", name())));
    let wipe_it = if is_sample(id) {
        remove_sample()
    } else {
        button("quiet", "Wipe…", "wipe", move || wiping.set(true))
            .live_attr("aria-label", move || {
                Some(format!("wipe {} off this device", name()))
            })
    };
    el("li")
        .class("card")
        .test("build")
        .attr("data-build", &id.to_string())
        .with(open)
        .with(says_sample(id))
        .with(
            el("p")
                .class("hint")
                .test("exported")
                .live_text(move || journal.with(|journal| exports.words(journal))),
        )
        .with(row([export.into(), wipe_it.into()]))
        .with(wipe(id, journal, name, wiping))
}

/// What the builder calls it.
pub fn name_of(build: &Build) -> String {
    build.engine.as_ref().map_or_else(
        || "An engine not described yet".to_owned(),
        |one| one.engine.name().to_owned(),
    )
}

fn engine_words(build: &Build) -> String {
    build.engine.as_ref().map_or_else(String::new, |described| {
        let engine = &described.engine;
        let cylinders = match engine.cylinders() {
            1 => "one cylinder".to_owned(),
            more => format!("{more} cylinders"),
        };
        format!(
            "{}, {cylinders}, {} mains",
            engine.layout(),
            engine.number_of_mains()
        )
    })
}

/// The build in a few lines: what happened last, what is next, what no longer
/// counts.
fn lines(journal: &Journal, build: &Build, last: Option<LastExport>) -> Piece {
    let summary = Summary::of(journal, build, chance::now(), last);
    let line = |test: &str, words: &str| el("span").class("card-line").test(test).text(words);
    let fact = journal.facts().next_back().map(|fact| {
        let when = when::ago(chance::now().saturating_sub(fact.clock()));
        let words = format!("Last: {}, {when}", told::of(fact, journal, build));
        line("card-last", &words)
    });
    let next = summary
        .next
        .map(|step| line("card-next", &format!("Next: {}", step.label)));
    let stale = match summary.stale + summary.run_out {
        0 => None,
        1 => Some("▲ One result no longer counts".to_owned()),
        more => Some(format!("▲ {more} results no longer count")),
    };
    let stale = stale.map(|words| line("card-stale", &words).class("card-line card-stale"));
    // Nobody misses a sample.
    let export = (summary.export_now && !is_sample(build.id))
        .then(|| line("card-export-now", "Time to export it"));
    Piece::all([next.into(), stale.into(), fact.into(), export.into()])
}

/// How many bearings stand how.
fn tally(build: &Build) -> El {
    let stands = |bearing| Stands::of(build, bearing, UnitClass::Inch).mark;
    let marks: Vec<Mark> = build.mains.iter().map(stands).collect();
    let counts = [Mark::Good, Mark::Close, Mark::Bad, Mark::Stale, Mark::None]
        .into_iter()
        .filter_map(|mark| {
            let count = marks.iter().filter(|one| **one == mark).count();
            let one = el("span")
                .class("tally-one")
                .with(shape(mark))
                .text(&format!("{count} {}", mark.words()));
            (count > 0).then(|| one.into())
        });
    el("span").class("tally").all(counts)
}
