//! Plugs: how many came out of each sort of place, and how many are back.

use assembly_core::oil::running_in::MISSING_PLUG;
use assembly_core::oil::running_in::plugs::{PLUGS, Plug};
use build_journal::Body;
use build_journal::fact::{Outcome, PlugsCounted};
use build_journal::fold::PlugCounts;
use build_plan::check::PLUGS_IN;
use leptos::prelude::*;

use super::page::Oil;
use super::place::Place;
use super::prime::check;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, link, note, p, row, title};
use crate::kit::section::sentences;
use crate::kit::verdict::{Mark, shape};
use crate::route::go;

/// More plugs of one sort no engine has.
const MOST: u32 = 60;

/// Out or back in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Out,
    Back,
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let counts = Memo::new(move |_| oil.view.with(|view| view.build.oil.plugs.clone()));
    let state = Piece::live(move || counts.with(|counts| state(counts).into()));
    let all_back = Piece::when(
        move || counts.with(PlugCounts::all_back),
        move || {
            button(
                "",
                "All are back: into the book",
                "plugs-to-book",
                move || {
                    let body = check(PLUGS_IN.id, None, Outcome::Good, None);
                    if oil.opened.write_down(body).is_some() {
                        go(&oil.route(Place::Before));
                    }
                },
            )
            .into()
        },
    );
    let rows = PLUGS.iter().map(|plug| one(oil, plug, counts).into());
    Piece::all([
        title("Plugs").into(),
        note(
            "lead",
            "One plug left out takes all the pressure there is, and half of them cannot be seen later. Count each sort out at teardown, and back in as it goes in.",
        )
        .into(),
        state,
        el("ul")
            .class("entries")
            .all(rows.collect::<Vec<_>>())
            .into(),
        sentences("findings", MISSING_PLUG.cautions).into(),
        row([
            all_back,
            link("quiet", &oil.route(Place::Before), "Before firing").into(),
        ])
        .into(),
    ])
}

fn state(counts: &PlugCounts) -> El {
    let missing = counts.missing();
    let (mark, words) = if !counts.any_out() {
        (Mark::None, "None counted out yet.".to_owned())
    } else if missing.is_empty() {
        (Mark::Good, "As many are back as came out.".to_owned())
    } else {
        let lines: Vec<String> = missing
            .iter()
            .map(|(place, count)| format!("{count} of {place}"))
            .collect();
        let words = format!(
            "Still to go in: {}. It must not be fired.",
            lines.join("; ")
        );
        (Mark::Bad, words)
    };
    el("p")
        .class("mark-line")
        .attr("role", "status")
        .test("plugs-state")
        .attr("data-verdict", mark.name())
        .with(shape(mark))
        .with(el("strong").text(&words))
}

/// A sort of plug with its two counters.
fn one(oil: Oil, plug: &'static Plug, counts: Memo<PlugCounts>) -> El {
    let more = Piece::live(move || {
        let count = counts.with(|counts| counts.of(plug.id));
        let words = match (count.missing(), count.too_many()) {
            (0, 0) => return Piece::none(),
            (0, more) => format!(
                "{more} more went in than came out: one may block a passage, or it was not counted out."
            ),
            (missing, _) => format!("{missing} still out: {}.", plug.missing),
        };
        note("wrong", &words).into()
    });
    let late = (!plug.reachable).then(|| note("hint", "Cannot be reached once it is together."));
    el("li")
        .class("card")
        .test(&format!("plugs-{}", plug.id))
        .with(p("").with(el("strong").text(&capital(plug.place))))
        .with(note("hint", &format!("{}.", capital(plug.how))))
        .with(late)
        .with(counter(oil, plug, counts, Way::Out))
        .with(counter(oil, plug, counts, Way::Back))
        .with(more)
}

/// Each press is written down: nothing counted is lost.
fn counter(oil: Oil, plug: &'static Plug, counts: Memo<PlugCounts>, way: Way) -> El {
    let (word, id) = match way {
        Way::Out => ("came out", "out"),
        Way::Back => ("back in", "back"),
    };
    let of = move |counts: &PlugCounts| {
        let count = counts.of(plug.id);
        match way {
            Way::Out => count.out,
            Way::Back => count.back,
        }
    };
    let step = move |up: bool| {
        let now = counts.with_untracked(of);
        let next = match (now, up) {
            // Nothing counted yet: one, or that there were none.
            (None, up) => u32::from(up),
            (Some(now), true) => now.saturating_add(1).min(MOST),
            (Some(now), false) => now.saturating_sub(1),
        };
        if now == Some(next) {
            return;
        }
        let counted = Some(next);
        let (out, back) = match way {
            Way::Out => (counted, None),
            Way::Back => (None, counted),
        };
        let _ = oil.opened.write_down(Body::PlugsCounted(PlugsCounted {
            plugs: plug.id.to_owned(),
            out,
            back,
            words: None,
        }));
    };
    let name = format!("{}-{id}", plug.id);
    el("div")
        .class("counter")
        .attr("role", "group")
        .attr("aria-label", &format!("{word}: {}", plug.place))
        .with(el("span").class("counter-label").text(word))
        .with(
            button("quiet", "−", &format!("{name}-fewer"), move || {
                step(false)
            })
            .attr("aria-label", &format!("one fewer {word}: {}", plug.place)),
        )
        .with(
            el("output")
                .class("counter-count")
                .test(&format!("{name}-count"))
                .live_text(move || {
                    counts
                        .with(of)
                        .map_or_else(|| "–".to_owned(), |count| count.to_string())
                }),
        )
        .with(
            button("quiet", "+", &format!("{name}-more"), move || step(true))
                .attr("aria-label", &format!("one more {word}: {}", plug.place)),
        )
}
