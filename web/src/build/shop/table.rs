//! Wanted, received and measured at home, in three columns.

use super::rows::{Back, Row};
use crate::kit::piece::{El, Piece, el};
use crate::kit::verdict::{Mark, shape};

const APART: &str = "The shop's number and yours are further apart than your tool explains. Measure once more, with the shop's tool beside yours if you can, before it is paid.";

/// The table of a piece of work.
#[must_use]
pub fn table(rows: &[Row]) -> El {
    let head = ["Wanted", "Received", "At home"]
        .map(|word| el("th").attr("scope", "col").text(word).into());
    let body = rows.iter().map(lines);
    el("table")
        .class("sheet")
        .test("sheet")
        .with(el("thead").with(el("tr").all(head)))
        .with(el("tbody").all(body))
}

fn lines(row: &Row) -> Piece {
    let title = el("tr").with(
        el("th")
            .attr("colspan", "3")
            .attr("scope", "rowgroup")
            .class("sheet-title")
            .text(&row.title()),
    );
    let cells = el("tr")
        .test("sheet-row")
        .attr("data-row", &row.name())
        .with(el("td").text(&row.wanted))
        .with(received(&row.back))
        .with(home(row));
    let apart = row.apart.then(|| {
        el("tr").test("apart").with(
            el("td")
                .attr("colspan", "3")
                .class("sheet-apart")
                .with(shape(Mark::Close))
                .with(el("span").text(APART)),
        )
    });
    Piece::all([title.into(), cells.into(), apart.into()])
}

fn received(back: &[Back]) -> El {
    let cell = el("td");
    if back.is_empty() {
        return cell.class("sheet-open").text("not yet");
    }
    cell.all(back.iter().map(|one| {
        let (mark, word) = match (one.within, &one.problem) {
            (Some(true), _) => (Mark::Good, "inside".to_owned()),
            (Some(false), _) => (Mark::Bad, "outside".to_owned()),
            (None, Some(problem)) => (Mark::None, problem.clone()),
            (None, None) => (Mark::None, "nothing to hold it against".to_owned()),
        };
        el("div")
            .class("sheet-number")
            .test("received")
            .attr("data-mark", mark.name())
            .with(shape(mark))
            .with(el("span").text(&format!("{}, {word}", one.words)))
            .into()
    }))
}

fn home(row: &Row) -> El {
    let cell = el("td").test("home");
    match &row.home {
        None => cell.class("sheet-open").text("not measured"),
        Some((words, mark)) => cell.with(
            el("div")
                .class("sheet-number")
                .attr("data-mark", mark.name())
                .with(shape(*mark))
                .with(el("span").text(&format!("{words}, {}", mark.words()))),
        ),
    }
}
