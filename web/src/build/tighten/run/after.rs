//! The end of a run: whether it counts, the stripes, and the book.

use build_journal::fact::{Body, CheckMade, Outcome, RunMark, RunMarked, Way};
use build_journal::fold::tightening::Run;
use build_plan::{At, Place as EnginePlace};
use leptos::prelude::*;

use super::Running;
use crate::build::book::photo_strip;
use crate::build::tighten::begin::place_of;
use crate::build::tighten::map::{Drawing, Face, press_map};
use crate::build::tighten::place::Place;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, link, note, p, row};
use crate::kit::section::{section, sentences};
use crate::kit::toast::toast;
use crate::kit::verdict::{Mark, shape};
use crate::route;

/// The screen when all pulls are made.
pub fn after(running: Running) -> Piece {
    let run = running.run;
    let said =
        Piece::live(move || run.with(|run| run.as_ref().map(|run| credit(running, run)).into()));
    let loosened = running.now().is_some_and(|run| run.way == Way::Loosen);
    let rest = if loosened {
        p("Run them out by hand in the same order. A gasket that was clamped is done: take a new one.").into()
    } else {
        Piece::all([stripes(running), end(running).into()])
    };
    let back = button(
        "quiet",
        "The last one was not pulled: take it back",
        "run-undo",
        move || {
            running.mark(running.plain(RunMark::TakenBack));
        },
    );
    el("div")
        .class("run-panel")
        .test("run-through")
        .with(said)
        .with(rest)
        .with(row([
            back.into(),
            link("quiet", &running.group_page(), "To the group").into(),
        ]))
        .into()
}

fn credit(running: Running, run: &Run) -> Piece {
    let heading = |mark: Mark, words: &str| {
        el("h1")
            .class("mark-line")
            .test("run-credit")
            .attr("data-verdict", mark.name())
            .with(shape(mark))
            .with(el("span").text(words))
    };
    if run.way == Way::Loosen {
        return heading(Mark::None, "All are let go").into();
    }
    if run.against.is_empty() {
        let words = format!("All {} pulls are made, and they count", run.plan.ticks());
        return heading(Mark::Good, &words).into();
    }
    let lines: Vec<String> = (run.against.iter())
        .map(|one| capital(&one.to_string()))
        .collect();
    let describe = Place::Describe(running.spot.own.to_string());
    Piece::all([
        heading(Mark::Bad, "All pulls are made, but they do not count yet").into(),
        sentences("findings", &lines).test("run-against").into(),
        p("What was left out of the sheet can be written down now, if it is known. What is not known stays so.").into(),
        row([link("quiet", &running.context.to(describe), "Complete the sheet").into()]).into(),
    ])
}

/// The lap of the eye: each stripe looked at.
fn stripes(running: Running) -> Piece {
    let Some(now) = running.now() else {
        return Piece::none();
    };
    let drawing = Drawing::of(&now.sheet.layout);
    let seen = Memo::new(move |_| {
        running.run.with(|run| {
            run.as_ref()
                .map(|run| run.stripes.clone())
                .unwrap_or_default()
        })
    });
    let face = move |bolt: usize| {
        let is_seen = seen.with(|seen| seen.contains(&bolt));
        let (look, said) = if is_seen {
            ("done", "stripe seen")
        } else {
            ("open", "stripe not seen yet")
        };
        Face {
            look,
            words: (bolt + 1).to_string(),
            said: said.to_owned(),
        }
    };
    let act = move |bolt: usize| {
        if !seen.with_untracked(|seen| seen.contains(&bolt)) {
            running.mark(RunMarked {
                bolt: u32::try_from(bolt + 1).ok(),
                ..running.plain(RunMark::StripeSeen)
            });
        }
    };
    section("Stripe it")
        .with(note("lead", "Paint a stripe over head and casting. Then look at each once more and tap it here: a stripe that is missing is a bolt that was missed."))
        .with(press_map(&drawing, face, act))
        .with(note("hint", "").test("stripes-seen").live_text(move || {
            format!("{} of {} seen.", seen.with(|seen| seen.len()), now.bolts())
        }))
        .with(note("hint", "A photo of all stripes shows later what was seen today."))
        .with(stripe_photos(running))
        .into()
}

/// Photos of the stripes, kept with the group and its part of the engine.
fn stripe_photos(running: Running) -> Piece {
    let group = format!("own:{}", running.spot.own);
    let at = running.spot.at;
    photo_strip(
        Some(&group),
        (at != At::Engine).then(|| EnginePlace::of(at)),
    )
}

/// Into the book as a check of its own.
fn end(running: Running) -> El {
    let toast = toast();
    let put = move || {
        let made = CheckMade {
            check: format!("own:{}", running.spot.own),
            place: place_of(running.spot.at),
            outcome: Outcome::Good,
            words: running.now().map(|run| {
                format!(
                    "{} pulls, stripe seen on {}",
                    run.plan.ticks(),
                    run.stripes.len()
                )
            }),
            lasts: None,
        };
        if running
            .context
            .opened
            .write_down(Body::CheckMade(made))
            .is_some()
        {
            toast.say("It is in the book: tight.");
            route::go(&running.group_page());
        }
    };
    let counts = move || {
        running
            .run
            .with(|run| run.as_ref().is_some_and(Run::counts))
    };
    row([Piece::when(counts, move || {
        button("", "It is tight: into the book", "run-to-book", put).into()
    })])
}
