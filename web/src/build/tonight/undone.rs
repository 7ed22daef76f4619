//! What no longer counts, why, and the way back: the same on every screen that
//! tells of it.

use build_journal::fold::{Job, Stale, WayBack};
use build_plan::At;

use super::Place;
use super::words::of_parts;
use crate::build::Opened;
use crate::kit::piece::{El, Piece, el, note, p};
use crate::kit::section::{fold, sentences};
use crate::kit::when;
use crate::route::{Page, Route};

/// As many results are named at once; the others are folded away.
const NAMED: usize = 6;

/// One result at all the parts where it no longer counts for the same reason.
struct Group<'a> {
    first: &'a Stale,
    parts: Vec<At>,
}

fn groups(stale: &[Stale]) -> Vec<Group<'_>> {
    let mut groups: Vec<Group> = Vec::new();
    for one in stale {
        let same = |group: &&mut Group| {
            group.first.proof == one.proof && group.first.chain.len() == one.chain.len()
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.parts.push(one.at),
            None => groups.push(Group {
                first: one,
                parts: vec![one.at],
            }),
        }
    }
    groups
}

/// The results, struck through, each with the way it came to that.
#[must_use]
pub fn results(stale: &[Stale]) -> Piece {
    let lines: Vec<Piece> = groups(stale).iter().map(line).collect();
    let mut lines = lines.into_iter();
    let first = el("ul").class("undone").all(lines.by_ref().take(NAMED));
    let more: Vec<Piece> = lines.collect();
    let rest = (!more.is_empty()).then(|| {
        let words = format!("{} more", more.len());
        fold(&words, el("ul").class("undone").all(more))
    });
    Piece::all([first.into(), rest.into()])
}

fn line(group: &Group) -> Piece {
    let words = of_parts(group.first.proof.label(), &group.parts);
    // The first link is the cause, and stands above all of them.
    let links = group.first.chain.get(1..).unwrap_or_default();
    let how = (!links.is_empty()).then(|| sentences("chain", links));
    el("li")
        .test("undone")
        .with(el("del").text(&words))
        .with(how)
        .into()
}

/// The cheapest way to have them count again.
#[must_use]
pub fn way_back(opened: Opened, way: &WayBack) -> Piece {
    let head = (!way.jobs.is_empty()).then(|| {
        note(
            "way-back-takes",
            &format!("Way back: {}", when::takes(way.minutes)),
        )
        .test("way-back")
    });
    let jobs = way.jobs.iter().map(|job| one_job(opened, job));
    let none: Vec<String> = (way.no_way.iter())
        .map(|one| {
            format!(
                "No step proves “{}” again: put it right by hand, or let it pass with a reason.",
                of_parts(one.proof.label(), &[one.at])
            )
        })
        .collect();
    let none = (!none.is_empty()).then(|| sentences("findings", &none));
    let jobs = (!way.jobs.is_empty()).then(|| el("ol").class("jobs").all(jobs));
    Piece::all([head.into(), jobs.into(), none.into()])
}

fn one_job(opened: Opened, job: &Job) -> Piece {
    let how = if job.in_the_way {
        "off first and on again, "
    } else {
        ""
    };
    step_link(opened, job.step.id, None, "job")
        .with(el("strong").text(&of_parts(job.step.label, &job.parts)))
        .with(el("span").text(&format!("{how}{}", when::takes(job.minutes))))
        .in_a_line()
}

/// A link to a step, to be filled: a whole line to be pressed.
#[must_use]
pub fn step_link(opened: Opened, step: &str, part: Option<String>, test: &str) -> El {
    let place = Place::Step(step.to_owned(), part);
    el("a")
        .class("entry")
        .attr(
            "href",
            &Route::Build(opened.id.to_string(), Page::Plan(place)).to_string(),
        )
        .test(test)
        .attr("data-step", step)
}

/// What stands in a line of a list.
pub trait InALine {
    /// It, in a line of a list.
    fn in_a_line(self) -> Piece;
}

impl InALine for El {
    fn in_a_line(self) -> Piece {
        el("li").with(self).into()
    }
}

/// What happened, once above all that came of it.
#[must_use]
pub fn cause(stale: &[Stale]) -> Piece {
    let cause = stale.first().and_then(|one| one.chain.first());
    cause
        .map(|cause| p(cause).class("cause").test("cause"))
        .into()
}
