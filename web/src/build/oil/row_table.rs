//! Rows of numbers as they were noted while it ran.

use build_journal::fold::{Number, RowNote};

use super::clock::minutes;
use super::page::Oil;
use super::said::words;
use crate::kit::chart::pushed_along;
use crate::kit::piece::{El, button, el};

/// Rows of numbers as a table, the latest first.
pub(super) fn table(oil: Oil, all: &[RowNote]) -> El {
    let head = ["at", "oil pressure", "speed", "coolant", "oil", "noted"];
    let head = head.map(|word| el("th").text(word).into());
    let said = |number: Option<&Number>| {
        number.map_or_else(|| "–".to_owned(), |number| words(&number.said))
    };
    let body = all.iter().rev().map(|one| {
        let at = one.seconds.map_or_else(
            || "–".to_owned(),
            |seconds| minutes(i64::from(seconds) * 1000),
        );
        let cells = [
            said(one.pressure.as_ref()),
            said(one.speed.as_ref()),
            said(one.coolant.as_ref()),
            said(one.oil.as_ref()),
            one.words.clone().unwrap_or_default(),
        ];
        let fact = one.fact;
        let strike = button("quiet", "Strike", "strike-row", move || {
            let _ = oil.opened.strike(fact, None);
        });
        el("tr")
            .test("run-row-note")
            .with(el("th").attr("scope", "row").text(&at))
            .all(cells.map(|text| el("td").text(&text).into()))
            .with(el("td").with(strike))
            .into()
    });
    pushed_along(
        "rows of numbers",
        el("table")
            .class("numbers")
            .with(el("thead").with(el("tr").all(head).with(el("td"))))
            .with(el("tbody").all(body)),
    )
}
