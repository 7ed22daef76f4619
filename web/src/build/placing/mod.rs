//! Which part goes where: what lies on the bench, what every place would get
//! and give, and what was accepted.

mod bench;
mod choosing;
mod here;
mod words;

use build_journal::fact::SizedPart;
use build_plan::choice::Choice;
use leptos::prelude::*;

use self::bench::{bench, bench_form};
use self::choosing::choosing;
use self::here::accepted;
use crate::build::Opened;
use crate::build::measure::sizes::listed_sizes;
use crate::build::merge::to_settle;
use crate::build::round;
use crate::kit::judged::capital;
use crate::kit::piece::{Piece, link, note, p, title};
use crate::kit::section::{fold_later, section, sentences};
use crate::route::{Page, Route};

pub use self::here::{put_here, put_on};
pub use self::words::{on_bench_words, placed_words};

const LEAD: &str = "Every way of placing them is weighed: first the worst miss of the middle of the limits is made as small as it can be, then all are brought as close together as they go.";
const SHIMS: &str = "The shims that are there are used first: as few are bought as can be, then as few valves opened, then each lash comes as near to the middle as it goes.";

/// The page of a choice.
#[must_use]
pub fn placing_page(choice: &'static Choice) -> Piece {
    let opened: Opened = expect_context();
    let places = opened.build.with_untracked(|build| {
        let engine = build.engine.as_ref();
        engine.map_or_else(Vec::new, |one| choice.places(&one.engine))
    });
    let to = Page::Measure(round::Place::Round(choice.measure.id.to_owned(), 1));
    let to = Route::Build(opened.id.to_string(), to);
    let back = p("").with(link("quiet", &to, "To the readings"));
    let head = title(&capital(choice.label));
    if places.is_empty() {
        let none = p("This engine has no such parts.");
        return Piece::all([head.into(), none.into(), back.into()]);
    }
    let lead = match choice.by {
        build_plan::choice::ChosenBy::Shims => SHIMS,
        _ => LEAD,
    };
    Piece::all([
        head.into(),
        note("lead", lead).into(),
        to_settle(opened),
        choosing(
            opened,
            choice,
            section("On the bench")
                .with(bench(opened, choice))
                .with(bench_form(opened, choice, &places))
                .into(),
        ),
        accepted(opened, choice),
        SizedPart::of_choice(choice).map_or_else(Piece::none, |part| {
            let sizes = move || listed_sizes(part, choice.read_like);
            fold_later("Sizes that the sheet lists", sizes)
                .test("sizes-fold")
                .into()
        }),
        section("Mind").with(sentences("", choice.cautions)).into(),
        back.into(),
    ])
}
