//! What was accepted: all of a choice on its page, and one part's wherever the
//! part is shown.

use build_journal::fold::{Build, PutThere};
use build_plan::choice::{CHOICES, Choice};
use build_plan::map::Part as MapPart;
use build_plan::{At, Engine, Measure};
use leptos::prelude::*;

use crate::build::Opened;
use crate::build::round;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, p, row};
use crate::kit::section::section;
use crate::route::{Page, Route};

/// What goes where by the last choice that was accepted, to be struck out.
pub fn accepted(opened: Opened, choice: &'static Choice) -> Piece {
    Piece::live(move || {
        opened
            .build
            .with(|build| {
                let engine = &build.engine.as_ref()?.engine;
                let put: Vec<(At, &PutThere)> = (choice.places(engine).into_iter())
                    .filter_map(|at| Some((at, build.places.put_at(choice, at)?)))
                    .collect();
                let fact = put.iter().map(|(_, one)| one.fact).max()?;
                let rows = put.iter().map(|(at, one)| {
                    let words = format!(": {}", one_line(one));
                    el("li")
                        .test("put-there")
                        .with(el("strong").text(&capital(&at.to_string())))
                        .text(&words)
                        .into()
                });
                let strike = button("quiet", "Strike it out", "strike-placed", move || {
                    let _ = opened.strike(fact, None);
                });
                Some(
                    section("Written down")
                        .test("placed")
                        .with(el("ul").class("sentences").all(rows))
                        .with(row([strike.into()])),
                )
            })
            .into()
    })
}

fn one_line(put: &PutThere) -> String {
    match &put.gives {
        Some(gives) => format!("{}, worked out to give {gives}", put.what),
        None => put.what.clone(),
    }
}

/// The choices that a measure is about.
fn choices_of(opened: Opened, measure: &Measure) -> Vec<&'static Choice> {
    opened.build.with(|build| {
        let Some(described) = &build.engine else {
            return Vec::new();
        };
        (CHOICES.iter().copied())
            .filter(|one| one.goes_by(measure))
            .filter(|one| !one.places(&described.engine).is_empty())
            .collect()
    })
}

/// What was put at a part of the map, a line for each choice.
#[must_use]
pub fn put_on(build: &Build, engine: &Engine, part: MapPart) -> Piece {
    let lines = CHOICES.iter().flat_map(|choice| {
        let here = choice.places(engine).into_iter();
        here.filter(|at| MapPart::of(choice.measure, *at) == part)
            .filter_map(|at| build.places.put_at(choice, at))
            .map(|put| goes_here(put).into())
    });
    Piece::all(lines)
}

fn goes_here(put: &PutThere) -> El {
    p(&format!("Goes here: {}.", one_line(put))).test("put-here")
}

/// What was put at a part, and the ways to choose anew: for the screens of a
/// measure that is chosen by.
#[must_use]
pub fn put_here(
    opened: Opened,
    measure: &'static Measure,
    at: impl Fn() -> Option<At> + 'static,
) -> Piece {
    let choices = untrack(|| choices_of(opened, measure));
    if choices.is_empty() {
        return Piece::none();
    }
    let links = choices.clone();
    let put = Piece::live(move || {
        let at = at();
        opened.build.with(|build| {
            let lines = choices.iter().filter_map(|choice| {
                let put = build.places.put_at(choice, at?)?;
                Some(goes_here(put).into())
            });
            Piece::all(lines)
        })
    });
    let links = links.into_iter().map(|choice| to(opened, choice).into());
    Piece::all([put, Piece::all(links)])
}

/// The way to a choice.
fn to(opened: Opened, choice: &Choice) -> El {
    let place = round::Place::Choice(choice.id.to_owned());
    let to = Route::Build(opened.id.to_string(), Page::Measure(place));
    el("a")
        .class("line")
        .attr("href", &to.to_string())
        .test(&format!("choice-{}", choice.id))
        .text(&format!("Choose {}", choice.label))
}
