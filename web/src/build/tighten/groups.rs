//! All groups of fasteners of a build.

use build_journal::fold::tightening::{Group, State, Tightenings};
use build_plan::measure::Per;
use build_plan::{At, Engine};

use super::place::{Place, part_name};
use super::{Tighten, words};
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, el, link, note, p, title};
use crate::kit::verdict::shape;

/// The list.
pub fn groups(context: Tighten) -> Piece {
    let new = link("", &context.to(Place::New), "Describe a group").test("new-group");
    Piece::all([
        title("Tighten").into(),
        Piece::live(move || {
            let opened = context.opened;
            let engine = opened
                .build
                .with(|build| build.engine.as_ref().map(|one| one.engine.clone()));
            context.all.with(|all| list(context, all, engine.as_ref()))
        }),
        p("").with(new).into(),
    ])
}

fn list(context: Tighten, all: &Tightenings, engine: Option<&Engine>) -> Piece {
    if all.groups.is_empty() {
        let lead = "Describe a group of bolts from the maker's sheet, then tighten it bolt by bolt. Every pull is kept the moment it is ticked: the place is never lost.";
        return note("lead", lead).test("no-groups").into();
    }
    let spots = all.groups.iter().flat_map(|group| {
        let parts = parts_of(group, engine);
        parts.into_iter().map(move |at| (group, at))
    });
    let spots: Vec<(&Group, At)> = spots.collect();
    let on = spots
        .iter()
        .find(|(group, at)| matches!(group.state(*at), State::On | State::ToBeSaid));
    let go_on = on.map(|(group, at)| {
        let to = Place::Run(group.own.to_string(), part_name(*at));
        el("a")
            .class("button go-on")
            .attr("href", &context.to(to).to_string())
            .test("run-go-on")
            .with(el("span").class("go-on-word").text("Go on"))
            .with(el("span").text(&format!(
                "{}: {}",
                words::name(group, *at),
                words::state(group, *at)
            )))
    });
    let rows = spots
        .iter()
        .map(|(group, at)| row_of(context, group, *at).into());
    Piece::all([
        go_on.into(),
        el("ul")
            .class("groups")
            .all(rows.collect::<Vec<_>>())
            .into(),
    ])
}

/// The parts that a group is at: those its description says, and any that
/// something happened at.
fn parts_of(group: &Group, engine: Option<&Engine>) -> Vec<At> {
    let per = group.made.per.as_deref().and_then(Per::from_id);
    let mut parts = match (per, engine) {
        (Some(per), Some(engine)) => per.parts(engine),
        _ => vec![At::Engine],
    };
    let others = group.parts.iter().filter(|(_, part)| !part.runs.is_empty());
    for (at, _) in others {
        if !parts.contains(at) {
            parts.push(*at);
        }
    }
    parts
}

fn row_of(context: Tighten, group: &Group, at: At) -> El {
    let to = Place::Part(group.own.to_string(), part_name(at));
    let mark = words::mark(group.state(at));
    let row = el("a")
        .class("main-row group-row")
        .attr("href", &context.to(to).to_string())
        .test("group")
        .attr("data-verdict", mark.name())
        .with(shape(mark))
        .with(
            el("span")
                .class("main-row-words")
                .with(el("strong").text(&capital(&words::name(group, at))))
                .with(el("span").text(&capital(&words::state(group, at)))),
        );
    el("li").with(row)
}
