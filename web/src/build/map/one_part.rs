//! One part of the engine: every measure that it has, each a way to its round.

use build_journal::fold::Build;
use build_plan::map::Part;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::{At, Engine, Measure};

use super::place::Place;
use super::region::back;
use crate::build::placing::put_on;
use crate::build::round::{self, Stands, parts_of, stands};
use crate::device::settings::UnitClass;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, el, note, title};
use crate::kit::verdict::{Mark, shape};
use crate::route::{Page, Route};

/// A part with its measures, the worst first, then in the order of the job.
pub(super) fn one_part(
    build: &Build,
    (engine, part): (&Engine, Part),
    units: UnitClass,
    to: &dyn Fn(Place) -> String,
) -> Piece {
    let measures = build.plan.measures(engine);
    let mut rows: Vec<(u8, &'static Measure, At, Stands)> = Vec::new();
    for measure in measures {
        for at in measure.spots.per.parts(engine) {
            if Part::of(measure, at) == part {
                let stands = stands(build, measure, at, units);
                rows.push((urgency(&stands), measure, at, stands));
            }
        }
    }
    rows.sort_by_key(|(urgency, ..)| *urgency);
    let back = part
        .region(engine)
        .map(|region| back(&to(Place::Region(region.id())), &region.name(engine)));
    let head = Piece::all([back.into(), heading(engine, part, to)]);
    if rows.is_empty() {
        let words = "There is nothing to measure here on this engine.";
        return Piece::all([head, note("lead", words).into()]);
    }
    let all = rows
        .iter()
        .map(|(_, measure, at, stands)| row(build, (measure, *at), stands).into());
    Piece::all([
        head,
        put_on(build, engine, part),
        note("hint", "Tap what you want to measure.").into(),
        el("ul")
            .class("entries")
            .test("part-measures")
            .all(all.collect::<Vec<Piece>>())
            .into(),
    ])
}

/// The name of the part, with the ones of its sort beside it.
fn heading(engine: &Engine, part: Part, to: &dyn Fn(Place) -> String) -> Piece {
    let name = title(&capital(&part.to_string()));
    let region = part.region(engine);
    let all = region.map_or_else(Vec::new, |region| region.parts(engine));
    let mut sort: Vec<Part> = all.into_iter().filter(|one| alike(*one, part)).collect();
    // Round a vee the numbers go from side to side; from one to the next all the same.
    sort.sort_unstable();
    let here = sort.iter().position(|one| *one == part);
    let beside = |step: isize, face: &str| {
        let next = here?.checked_add_signed(step)?;
        let next = sort.get(next)?;
        let link = el("a")
            .class("button quiet no-print")
            .attr("href", &to(Place::Part(next.id())))
            .attr("aria-label", &next.to_string())
            .test(&format!("part-{face}"));
        Some(link.text(if step < 0 { "‹" } else { "›" }))
    };
    el("div")
        .class("title-row")
        .with(beside(-1, "before"))
        .with(name)
        .with(beside(1, "after"))
        .into()
}

/// Whether two parts are of one sort: mains, rods, valves.
fn alike(one: Part, other: Part) -> bool {
    match (one, other) {
        (Part::At(one), Part::At(other)) => {
            std::mem::discriminant(&one) == std::mem::discriminant(&other)
        }
        _ => false,
    }
}

/// What wants looking at comes first.
fn urgency(stands: &Stands) -> u8 {
    match stands.mark() {
        Mark::Bad => 0,
        Mark::Stale => 1,
        Mark::Close => 2,
        Mark::None | Mark::Good => 3,
    }
}

fn row(build: &Build, (measure, at): (&'static Measure, At), stands: &Stands) -> El {
    let mark = stands.mark();
    let value = stands.judged.as_ref().map(|judged| {
        let class = if stands.stale.is_empty() {
            "strip-value"
        } else {
            "strip-value gone"
        };
        el("span").class(class).text(&judged.value_words())
    });
    let link = el("a")
        .class("entry map-row")
        .attr("href", &address(build, measure, at))
        .test(&format!("measure-{}", measure.id))
        .attr("data-verdict", mark.name())
        .with(shape(mark))
        .with(
            el("span")
                .with(el("strong").text(&capital(measure.label)))
                .with(value)
                .with(el("span").text(&stands.words())),
        );
    el("li").with(link)
}

/// Where a measure is taken: journal, bore and clearance of a main together.
fn address(build: &Build, measure: &'static Measure, at: At) -> String {
    let on_one_page = [
        MAIN_OIL_CLEARANCE.id,
        MAIN_JOURNAL_DIAMETER.id,
        MAIN_BEARING_BORE.id,
    ];
    let page = match at {
        At::Main(number) if on_one_page.contains(&measure.id) => Page::Main(number),
        _ => {
            let parts = parts_of(build, measure);
            let part = parts.iter().position(|one| *one == at).unwrap_or(0);
            Page::Measure(round::Place::Round(measure.id.to_owned(), part + 1))
        }
    };
    Route::Build(build.id.to_string(), page).to_string()
}
