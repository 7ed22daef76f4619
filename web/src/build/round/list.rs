//! All measures of the engine, by the part of the job, with how far each is.

use build_journal::fold::Build;
use build_plan::measure::{
    CAM_BEARING_CLEARANCE, CHAMBER_VOLUME, DAMPER_MARK, MAIN_JOURNAL_DIAMETER, MEASURES,
    OIL_PRESSURE, PISTON_DIAMETER, PUMP_END_CLEARANCE, ROD_JOURNAL_DIAMETER, STEM_GUIDE_INTAKE,
};
use build_plan::{At, Measure, measure};
use leptos::prelude::*;

use super::place::Place;
use super::standing::stands;
use super::walk;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::{UnitClass, settings};
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, el, note, title};
use crate::kit::section::section;
use crate::kit::verdict::{Mark, shape};
use crate::kit::words::word_field;
use crate::route::{Page, Route};

/// Words to find a measure by: more is no word of the trade.
const WORDS_AT_MOST: usize = 60;

/// The parts of the job, each with the first of its measures.
static PARTS: &[(&str, &Measure)] = &[
    ("Crank and mains", &MAIN_JOURNAL_DIAMETER),
    ("Rods", &ROD_JOURNAL_DIAMETER),
    ("Pistons, rings and bores", &PISTON_DIAMETER),
    ("Chambers", &CHAMBER_VOLUME),
    ("Camshaft and timing", &CAM_BEARING_CLEARANCE),
    ("Head and valve gear", &STEM_GUIDE_INTAKE),
    ("Oil pump and pickup", &PUMP_END_CLEARANCE),
    ("Damper, flywheel and covers", &DAMPER_MARK),
    ("Running", &OIL_PRESSURE),
];

const OWN: &str = "Your own";

/// The list of all measures.
#[must_use]
pub fn list() -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    let words = Draft::of(opened.draft("find-measure"));
    let field = word_field(
        "find-measure",
        "Find a measure",
        "By a word of the trade, such as gap, bore, float or spring.",
        words,
        WORDS_AT_MOST,
        || None,
    );
    let found = Piece::live(move || {
        let units = settings.units();
        let wanted = words.get().trim().to_lowercase();
        opened
            .build
            .with(|build| parts_of_the_job(opened, build, units, &wanted))
    });
    Piece::all([
        title("Everything to measure").into(),
        note(
            "lead",
            "Pick one: the round then goes from part to part by itself. Nothing here is called good before it is measured and held against limits that you typed.",
        )
        .into(),
        field.into(),
        found,
    ])
}

fn parts_of_the_job(opened: Opened, build: &Build, units: UnitClass, wanted: &str) -> Piece {
    let Some(described) = &build.engine else {
        let words = "The engine is not described in what is here of this build. Bring in the file it was exported to.";
        return note("lead", words).into();
    };
    let mut sections: Vec<(&str, Vec<El>)> = Vec::new();
    // The part of the job that a measure opens may not be on this engine.
    let all = MEASURES.iter().copied();
    let own = build
        .plan
        .measures(&described.engine)
        .filter(|one| measure(one.id).is_none());
    for (measure, is_own) in all
        .map(|one| (one, false))
        .chain(own.map(|one| (one, true)))
    {
        let opens = PARTS.iter().find(|(_, first)| first.id == measure.id);
        match opens {
            Some((name, _)) => sections.push((name, Vec::new())),
            None if is_own && sections.last().is_none_or(|(name, _)| *name != OWN) => {
                sections.push((OWN, Vec::new()));
            }
            None => {}
        }
        let parts = walk::parts(build, measure);
        let matches = wanted.is_empty() || measure.label.to_lowercase().contains(wanted);
        if parts.is_empty() || !matches {
            continue;
        }
        if let Some((_, rows)) = sections.last_mut() {
            rows.push(row(opened, build, (measure, &parts), units));
        }
    }
    sections.retain(|(_, rows)| !rows.is_empty());
    if sections.is_empty() {
        return note("hint", "No measure answers to that. Try a shorter word.")
            .attr("role", "status")
            .into();
    }
    Piece::all(sections.into_iter().map(|(name, rows)| {
        section(name)
            .with(
                el("ul")
                    .class("entries")
                    .all(rows.into_iter().map(Into::into)),
            )
            .into()
    }))
}

fn row(
    opened: Opened,
    build: &Build,
    (measure, parts): (&'static Measure, &[At]),
    units: UnitClass,
) -> El {
    let to = Page::Measure(Place::Round(measure.id.to_owned(), 1));
    let marks: Vec<Mark> = parts
        .iter()
        .map(|at| stands(build, measure, *at, units).mark())
        .collect();
    let counts = [Mark::Bad, Mark::Stale, Mark::Close, Mark::Good]
        .into_iter()
        .filter_map(|mark| {
            let count = marks.iter().filter(|one| **one == mark).count();
            let one = el("span")
                .class("tally-one")
                .with(shape(mark))
                .text(&format!("{count} {}", mark.words()));
            (count > 0).then(|| one.into())
        });
    let all = walk::places(build, measure).len();
    let done = all - walk::left(build, measure);
    let far = match (measure.can_be_read(), done) {
        (false, _) => "worked out from other measures".to_owned(),
        (true, 0) => format!("{all} to read"),
        (true, done) if done == all => format!("all {all} read"),
        (true, done) => format!("{done} of {all} read"),
    };
    let link = el("a")
        .class("entry")
        .attr("href", &Route::Build(opened.id.to_string(), to).to_string())
        .test(&format!("measure-{}", measure.id))
        .with(el("strong").text(&capital(measure.label)))
        .with(el("span").text(&far))
        .with(el("span").class("tally").all(counts));
    el("li").with(link)
}
