//! What is in sight all the while it runs: what stops it, and the numbers as large
//! as they go.

use assembly_core::oil::running_in::first_minutes::{HOTTEST, LEAST, Note, Stop, stops};
use assembly_core::quantity::{Unit, show};
use build_journal::fold::{Number, RowNote};
use leptos::prelude::Get;

use super::clock::minutes;
use super::pressure::Units;
use super::run::Run;
use super::said::words;
use crate::kit::piece::{El, Piece, el};
use crate::kit::verdict::{Mark, plate};

/// A round figure of the trade, without digits that say nothing.
pub(super) fn round(si: f64, unit: &'static Unit) -> String {
    let shown = show(si, None, unit);
    let number = shown.number.trim_end_matches('0').trim_end_matches('.');
    if shown.number.contains('.') {
        format!("{number} {}", unit.symbol)
    } else {
        shown.to_string()
    }
}

/// What stops it, in as few words as go.
pub(super) fn stop_list(run: Run) -> El {
    let list = Piece::live(move || {
        let units = Units::of(run.settings.units());
        let least = round(LEAST.0, units.pressure);
        let coolant = show(HOTTEST.0, None, units.temperature);
        let oil = show(HOTTEST.1, None, units.temperature);
        let stops = [
            format!("under {least}, or a third less at once"),
            format!("coolant over {coolant}, or hot with a cold heater"),
            format!("oil over {oil}"),
            "knock that follows the speed".to_owned(),
            "one valve louder and louder".to_owned(),
            "milky oil, sweet white smoke".to_owned(),
            "any fuel leak".to_owned(),
            "smoke from wiring".to_owned(),
            "popping through the intake".to_owned(),
            "starter hangs".to_owned(),
        ];
        let items = stops.map(|words| el("li").text(&words).into());
        el("ul").all(items).into()
    });
    el("aside")
        .class("stop-list")
        .attr("aria-label", "Switch it off at once")
        .test("stop-list")
        .with(el("strong").text("OFF at once:"))
        .with(list)
}

/// What the last row says to do.
pub(super) fn alarms(run: Run) -> Option<El> {
    let notes: Vec<Note> = run.rows().iter().map(RowNote::note).collect();
    let found = stops(&notes);
    if found.is_empty() {
        return None;
    }
    let words: Vec<String> = found
        .into_iter()
        .map(Stop::words)
        .map(str::to_owned)
        .collect();
    Some(
        plate(Mark::Bad, "OFF NOW", &words)
            .test("run-alarm")
            .attr("role", "alert"),
    )
}

fn last(rows: &[RowNote], of: impl Fn(&RowNote) -> Option<&Number>) -> String {
    let found = rows.iter().rev().find_map(of);
    found.map_or_else(|| "–".to_owned(), |number| words(&number.said))
}

pub(super) fn large(run: Run) -> El {
    let cell = |label: &'static str, test: &str, text: Box<dyn Fn() -> String>| -> Piece {
        el("div")
            .class("large-one")
            .with(el("span").class("large-label").text(label))
            .with(el("span").class("large-number").test(test).live_text(text))
            .into()
    };
    let pressure = move || last(&run.rows(), |row| row.pressure.as_ref());
    let coolant = move || last(&run.rows(), |row| row.coolant.as_ref().or(row.oil.as_ref()));
    let time = move || match (run.running(), run.fired()) {
        (Some(_), Some((_, clock))) => minutes(run.time.get() - clock),
        _ => "off".to_owned(),
    };
    el("div").class("large").all([
        cell("oil pressure", "large-pressure", Box::new(pressure)),
        cell("coolant", "large-coolant", Box::new(coolant)),
        cell("running", "large-time", Box::new(time)),
    ])
}
