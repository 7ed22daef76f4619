//! How much oil is in it by the log, and how much it uses.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, show};
use build_journal::fold::{MeterOf, OilBook, OilUse};

use crate::device::settings::UnitClass;
use crate::kit::piece::{El, el, note, p};
use crate::kit::section::sentences;
use crate::kit::verdict::{Mark, shape};

/// A volume of oil, in words.
fn volume(amount: f64, class: UnitClass) -> String {
    let unit = class.of(Kind::Volume, UsualUnits::of("US qt", "L"));
    show(amount, None, unit).to_string()
}

/// What a meter's number is told for: "1000 km".
fn usual(of: MeterOf) -> String {
    format!("{:.0} {}", of.usual(), of.symbol())
}

/// What the log of fillings comes to; nothing before the first.
pub(super) fn used(book: &OilBook, class: UnitClass) -> Option<El> {
    let filled = book.filled();
    let used = book.used();
    if filled.is_none() && used.is_empty() {
        return None;
    }
    let filled = filled.map(|amount| {
        p(&format!(
            "In it by the log, filled and added: {}. The stick decides.",
            volume(amount, class)
        ))
        .test("oil-filled")
    });
    let lines = used.iter().map(|one| line(one, class).into());
    Some(
        el("div")
            .test("oil-used")
            .with(filled)
            .all(lines.collect::<Vec<_>>()),
    )
}

fn line(one: &OilUse, class: UnitClass) -> El {
    let for_usual = usual(one.of);
    let each: Vec<String> = one
        .used
        .iter()
        .map(|(_, used)| volume(used.rate() * one.of.usual(), class))
        .collect();
    let (mark, words) = match &one.trend {
        Some(trend) if trend.alarm => (
            Mark::Bad,
            "It uses half as much again as it did at its least: leaks first, then guides and seals, then rings.",
        ),
        Some(_) => (Mark::Good, "No alarm."),
        None => (Mark::None, "Once so far: nothing to compare with yet."),
    };
    let said = vec![words.to_owned()];
    let heading = format!("Oil used for {for_usual}: {}", each.join(" → "));
    el("div")
        .class("card")
        .attr("data-verdict", mark.name())
        .test("oil-use")
        .with(
            p("")
                .class("mark-line")
                .with(shape(mark))
                .with(el("strong").text(&heading)),
        )
        .with(sentences("", &said))
        .with(note(
            "hint",
            "New rings use more for the first hours. A level that rises is fuel or water in the oil: stop and find it.",
        ))
}
