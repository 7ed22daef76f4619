//! Typing the numbers that the shop gave back, one part after the other.

use build_journal::fact::WorkReturned;
use build_journal::{Body, WorkId};
use leptos::prelude::*;

use super::rows::Row;
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::pick::Word;
use crate::kit::piece::{El, Piece, button, el, note, row};
use crate::kit::select::select;

/// The place in hand: the first that nothing came back for, behind this one.
fn next_open(rows: &[Row], behind: Option<usize>) -> Option<usize> {
    let start = behind.map_or(0, |at| at + 1);
    let open = |at: &usize| rows.get(*at).is_some_and(|row| row.back.is_empty());
    (start..rows.len())
        .find(open)
        .or_else(|| (0..start).find(open))
}

/// The panel that takes the shop's numbers; `done` closes it.
#[must_use]
pub fn receiving(
    opened: Opened,
    work: WorkId,
    rows: Memo<Vec<Row>>,
    done: impl Fn() + Copy + Send + Sync + 'static,
) -> El {
    let first = rows.with_untracked(|rows| next_open(rows, None).unwrap_or(0));
    let at = RwSignal::new(first);
    let kind = Memo::new(move |_| rows.with(|rows| rows.get(at.get()).map(|row| row.measure.kind)));
    let choose = Piece::live(move || {
        let titles = rows.with(|rows| rows.iter().map(Row::title).collect::<Vec<_>>());
        let words = titles
            .into_iter()
            .enumerate()
            .map(|(index, title)| Word::of(index.to_string(), title));
        select(
            "received-row",
            "Which number",
            words,
            move || at.get().to_string(),
            move |id| at.set(id.parse().unwrap_or_default()),
        )
        .into()
    });
    let field = Piece::live(move || {
        let Some(kind) = kind.get() else {
            return Piece::none();
        };
        untrack(|| {
            let now = move || rows.with(|rows| rows.get(at.get()).cloned());
            let draft = Memo::new(move |_| {
                let name = now().map(|row| row.name()).unwrap_or_default();
                Draft::of(opened.draft(&format!("received/{work}/{name}")))
            });
            let unit = move || {
                now().map_or_else(
                    || super::rows::unit_for(None, crate::device::settings::UnitClass::Metric),
                    |row| row.unit,
                )
            };
            let accept = move || {
                let Some(row) = untrack(now) else {
                    return;
                };
                let index = at.get_untracked();
                let go_on = || match rows.with_untracked(|rows| next_open(rows, Some(index))) {
                    Some(next) => at.set(next),
                    None => done(),
                };
                let text = draft.get_untracked().now();
                match read_text(&text, kind, row.unit) {
                    None => {
                        // Nothing typed: this one stays open.
                        let count = rows.with_untracked(Vec::len);
                        at.set(if index + 1 < count { index + 1 } else { 0 });
                    }
                    Some(Err(_)) => {}
                    Some(Ok(_)) => {
                        let wrote = opened.write_down(Body::WorkReturned(WorkReturned {
                            work,
                            measure: row.measure.id.to_owned(),
                            place: row.spot(),
                            typed: text.trim().to_owned(),
                            unit: row.unit.symbol.to_owned(),
                        }));
                        if wrote.is_some() {
                            draft.get_untracked().clear();
                            go_on();
                        }
                    }
                }
            };
            QuantityField::new("received", "", draft.get_untracked(), kind, unit)
                .live_draft(move || draft.get())
                .live_label(move || {
                    now().map_or_else(String::new, |row| {
                        format!("The shop's number: {}", row.title())
                    })
                })
                .on_next(accept)
                .begin_here()
                .piece()
                .into()
        })
    });
    let wanted = el("p").class("hint").live_text(move || {
        rows.with(|rows| {
            rows.get(at.get())
                .map(|row| format!("Wanted: {}.", row.wanted))
                .unwrap_or_default()
        })
    });
    let here = Piece::live(move || {
        let back = rows.with(|rows| rows.get(at.get()).map(|row| row.back.clone()));
        let back = back.unwrap_or_default();
        untrack(|| {
            let lines = back.iter().map(|one| {
                let fact = one.fact;
                let strike = button("quiet", "Strike out", "strike-received", move || {
                    let _ = opened.strike(fact, None);
                })
                .attr("aria-label", &format!("strike out {}", one.words));
                el("li")
                    .class("reading-here")
                    .with(el("span").text(&one.words))
                    .with(strike)
                    .into()
            });
            (!back.is_empty())
                .then(|| el("ul").class("readings-here").all(lines))
                .into()
        })
    });
    el("div")
        .class("inset")
        .test("receiving")
        .with(field)
        .with(wanted)
        .with(here)
        .with(choose)
        .with(note(
            "hint",
            "Least and greatest can both be typed: choose the same number once more.",
        ))
        .with(row([button(
            "quiet",
            "Enough for now",
            "received-done",
            done,
        )
        .into()]))
}

#[cfg(test)]
mod tests {
    use super::super::rows::Back;
    use super::*;
    use assembly_core::quantity::{Kind, unit_or_usual};
    use build_journal::Stamper;
    use build_plan::At;
    use build_plan::measure::BORE;

    #[test]
    fn what_is_open_is_offered_next_and_then_from_the_front_again() {
        let row = |cylinder: u8, typed: bool| Row {
            measure: &BORE,
            at: At::Cylinder(cylinder),
            wanted: String::new(),
            unit: unit_or_usual(Kind::Length, "in"),
            back: typed
                .then(|| Back {
                    fact: Stamper::new().stamp(1, 1),
                    words: String::new(),
                    within: None,
                    problem: None,
                })
                .into_iter()
                .collect(),
            home: None,
            apart: false,
        };
        let rows = [row(1, false), row(2, true), row(3, false)];
        assert_eq!(next_open(&rows, None), Some(0));
        assert_eq!(next_open(&rows, Some(0)), Some(2));
        assert_eq!(next_open(&rows, Some(2)), Some(0));
        assert_eq!(next_open(&[row(1, true)], Some(0)), None);
    }
}
