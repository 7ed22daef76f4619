//! One step: cautions first, what it waits for, what can be said of it, what it
//! proves, and all the rest the trade knows of it.

use build_journal::fold::Outlook;
use build_plan::caution::Harm;
use build_plan::proof::Proof;
use leptos::prelude::*;

use super::ask::Ask;
use super::checks::{self, Looking};
use super::doing::doing;
use super::measures;
use super::needs::{in_hand as bench, needs, takes, waits_for};
use super::notes::notes;
use super::state::{InHand, Stand};
use super::waive::{Waiving, let_pass};
use crate::build::Opened;
use crate::build::book::photo_strip;
use crate::build::tonight::words::slug;
use crate::build::tonight::{Place, now, step_link};
use crate::kit::piece::{El, Piece, el, link, note, p, row, title};
use crate::kit::section::{section, sentences};
use crate::route::{Page, Route};

/// A step, at one of its parts or at all.
#[must_use]
pub fn step_page(step: &str, part: Option<&str>) -> Piece {
    let opened: Opened = expect_context();
    let (step, part) = (step.to_owned(), part.map(str::to_owned));
    let found = Memo::new(move |_| {
        opened
            .build
            .with(|build| InHand::find(build, &step, part.as_deref()))
    });
    Piece::live(move || {
        let found = found.get();
        untrack(|| match found {
            Some(in_hand) => whole(opened, in_hand),
            None => Piece::all([
                title("No such step").into(),
                p("This engine, as it is described, has no such step or no such part.").into(),
                row([to_steps(opened)]).into(),
            ]),
        })
    })
}

fn to_steps(opened: Opened) -> Piece {
    let to = Route::Build(opened.id.to_string(), Page::Plan(Place::Steps));
    link("quiet", &to, "All steps").test("to-steps").into()
}

fn whole(opened: Opened, in_hand: InHand) -> Piece {
    let now = now();
    let minute = Memo::new(move |_| now.get() / 60_000);
    let outlook = Memo::new(move |_| {
        minute.track();
        opened
            .build
            .with(|build| build.outlook(now.get_untracked()))
    });
    let ask = Ask::new(opened);
    let step = in_hand.step;
    let looking = Looking { opened, now, ask };
    let head = title(step.label).with(
        in_hand
            .part
            .map(|at| el("span").class("title-of").text(&format!(", {at}"))),
    );
    let place = in_hand.part.map(build_plan::Place::of);
    let photos = photo_strip(Some(step.id), place);
    Piece::all([
        head.into(),
        note("lead", step.phase.label()).into(),
        cautions(&in_hand).into(),
        waits_for(&in_hand, outlook),
        doing(opened, in_hand.clone(), ask).into(),
        pass(opened, &in_hand),
        parts(opened, &in_hand, outlook),
        proves(looking, &in_hand),
        does(&in_hand).into(),
        bench(opened, step),
        takes(&in_hand).into(),
        needs(opened, &in_hand, outlook),
        section("Photos").with(photos).into(),
        notes(opened, in_hand).into(),
        row([to_steps(opened)]).into(),
        ask.dialog().into(),
    ])
}

/// The warnings, where they are seen before anything is done.
fn cautions(in_hand: &InHand) -> Option<El> {
    let step = in_hand.step;
    let lines: Vec<&str> = step.warnings().collect();
    if lines.is_empty() {
        return None;
    }
    let hurts = step.cautions.iter().any(|one| one.harm == Harm::Person);
    let (tone, word) = if hurts {
        ("danger", "▲ Somebody can get hurt")
    } else {
        ("caution", "▲ Mind")
    };
    let notice = el("section")
        .class(&format!("notice notice-{tone}"))
        .attr("aria-label", "cautions")
        .test("cautions")
        .with(el("strong").text(word))
        .with(sentences("", &lines));
    Some(notice)
}

/// A step that was done and no longer counts may be let pass.
fn pass(opened: Opened, in_hand: &InHand) -> Piece {
    let (step, targets) = (in_hand.step, StoredValue::new(in_hand.targets()));
    let waiving = Waiving {
        opened,
        proof: Proof::Step(step),
    };
    let undone = move || {
        opened.build.with(|build| {
            targets.with_value(|targets| {
                let undone =
                    |at: &&build_plan::At| matches!(Stand::of(build, step, **at), Stand::Undone(_));
                targets.iter().filter(undone).copied().collect::<Vec<_>>()
            })
        })
    };
    let_pass(waiving, undone)
}

/// The parts, each a link, with where it stands.
fn parts(opened: Opened, in_hand: &InHand, outlook: Memo<Outlook>) -> Piece {
    if in_hand.parts.len() < 2 {
        return Piece::none();
    }
    let (step, all, here) = (in_hand.step, in_hand.parts.clone(), in_hand.part);
    let cells = Piece::live(move || {
        outlook.track();
        opened.build.with(|build| {
            Piece::all(all.iter().map(|at| {
                let stand = Stand::of(build, step, *at);
                let cell = step_link(
                    opened,
                    step.id,
                    Some(slug(*at)),
                    &format!("part-{}", slug(*at)),
                )
                .class(if stand.is_settled() {
                    "place measured"
                } else {
                    "place"
                })
                .attr("data-state", stand.name())
                .with(el("strong").text(&at.to_string()))
                .with(el("span").class("place-word").text(&stand.words()));
                if here == Some(*at) {
                    cell.attr("aria-current", "true").into()
                } else {
                    cell.into()
                }
            }))
        })
    });
    let all = here.is_some().then(|| {
        row([step_link(opened, step.id, None, "part-all")
            .class("button quiet")
            .text("All parts at once")
            .into()])
    });
    section("Part by part")
        .with(el("div").class("place-cells").with(cells))
        .with(all)
        .into()
}

/// What the step proves.
fn proves(looking: Looking, in_hand: &InHand) -> Piece {
    let opened = looking.opened;
    let targets = in_hand.targets();
    let proves = opened.build.with_untracked(|build| {
        let engine = build.engine.as_ref().map(|one| &one.engine);
        let mut proves = build.plan.proves(in_hand.step);
        proves.retain(|proof| engine.is_some_and(|engine| proof.when().applies_to(engine)));
        proves
    });
    if proves.is_empty() {
        return Piece::none();
    }
    let lines = proves.iter().filter_map(|proof| match proof {
        Proof::Check(check) => Some(checks::one(looking, check, &targets).into()),
        Proof::Measure(measure) => Some(measures::one(opened, measure, &targets).into()),
        Proof::Step(_) => None,
    });
    section("What it proves")
        .with(el("ul").class("entries").all(lines))
        .into()
}

/// What it does to the engine, and so to earlier results.
fn does(in_hand: &InHand) -> Option<El> {
    let lines: Vec<String> = (in_hand.step.causes.iter())
        .map(|event| format!("{}. {}", event.label, event.why))
        .collect();
    (!lines.is_empty()).then(|| section("What it changes").with(sentences("findings", &lines)))
}
