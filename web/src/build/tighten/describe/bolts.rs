//! How many bolts there are and where they sit.

use build_journal::fact::BoltLayout;
use build_journal::fold::tightening::{Field, MOST_BOLTS};
use leptos::prelude::*;

use super::Describing;
use super::arrange::arrange;
use crate::build::tighten::typed::numbers;
use crate::build::tighten::typing::ROWS_AT_MOST;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, row};
use crate::kit::section::section;

/// The second step: rows with a counter each, or a circle.
pub fn bolts(describing: Describing) -> El {
    let typing = describing.typing;
    let shape = pick(
        "shape",
        "How they sit",
        "",
        vec![
            Word::of("rows", "in rows"),
            Word::of("circle", "around a circle"),
        ],
        move || {
            if typing.circle.get().is_empty() {
                "rows"
            } else {
                "circle"
            }
            .to_owned()
        },
        move |id| {
            typing.circle.set(if id == "circle" {
                "6".to_owned()
            } else {
                String::new()
            });
            typing.no_longer_drawn();
        },
    );
    let counters = Piece::live(move || match typing.layout() {
        BoltLayout::Circle(_) => counter(
            "bolts on the circle".to_owned(),
            "circle".to_owned(),
            move || typing.circle.get(),
            move |up| step_circle(describing, up),
        )
        .into(),
        _ => rows(describing),
    });
    section("2 · The bolts")
        .with(shape)
        .with(counters)
        .with(
            el("p")
                .class("hint")
                .test("bolts-total")
                .live_text(move || {
                    format!("{} bolts in all, as on the drawing below.", typing.bolts())
                }),
        )
        .with(arrange(describing))
        .with(describing.wrong(Field::Bolts))
}

fn rows(describing: Describing) -> Piece {
    let typing = describing.typing;
    // Made anew when a row comes or goes, not when one is counted up.
    let count = typing.counts().len();
    let counters = (0..count).map(|at| {
        counter(
            format!("row {}", at + 1),
            format!("row-{}", at + 1),
            move || {
                typing
                    .counts()
                    .get(at)
                    .map_or_else(String::new, u32::to_string)
            },
            move |up| {
                change(describing, |rows| {
                    if let Some(row) = rows.get_mut(at) {
                        *row = stepped(*row, up);
                    }
                })
            },
        )
        .into()
    });
    let more = (count < ROWS_AT_MOST).then(|| {
        button("quiet", "One more row", "row-more", move || {
            change(describing, |rows| {
                rows.push(rows.last().copied().unwrap_or(1))
            });
        })
    });
    let less = (count > 1).then(|| {
        button("quiet", "One row less", "row-less", move || {
            change(describing, |rows| {
                rows.pop();
            });
        })
    });
    Piece::all([
        note(
            "hint",
            "Count along each row, the farthest row from you first, left to right.",
        )
        .into(),
        el("div")
            .class("counters")
            .all(counters.collect::<Vec<_>>())
            .into(),
        row([more.into(), less.into()]).into(),
    ])
}

/// Changes the rows. An order over other bolts is none.
fn change(describing: Describing, act: impl FnOnce(&mut Vec<u32>)) {
    let typing = describing.typing;
    let mut rows = untrack(|| typing.counts());
    act(&mut rows);
    typing.rows.set(numbers(&rows));
    typing.no_longer_drawn();
}

fn step_circle(describing: Describing, up: bool) {
    let typing = describing.typing;
    let count = typing.circle.now().trim().parse().unwrap_or(1);
    typing.circle.set(stepped(count, up).to_string());
    typing.no_longer_drawn();
}

fn stepped(count: u32, up: bool) -> u32 {
    let count = if up {
        count.saturating_add(1)
    } else {
        count.saturating_sub(1)
    };
    count.clamp(1, MOST_BOLTS)
}

fn counter(
    label: String,
    test: String,
    count: impl Fn() -> String + 'static,
    step: impl Fn(bool) + Clone + 'static,
) -> El {
    let less = step.clone();
    el("div")
        .class("counter")
        .attr("role", "group")
        .attr("aria-label", &label)
        .with(el("span").class("counter-label").text(&label))
        .with(
            button("quiet", "−", &format!("{test}-fewer"), move || {
                less(false)
            })
            .attr("aria-label", &format!("one fewer in {label}")),
        )
        .with(
            el("output")
                .class("counter-count")
                .test(&format!("{test}-count"))
                .live_text(count),
        )
        .with(
            button("quiet", "+", &format!("{test}-more"), move || step(true))
                .attr("aria-label", &format!("one more in {label}")),
        )
}
