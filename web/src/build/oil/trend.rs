//! What changes over time, with alarms on the change and not on the level.

use assembly_core::quantity::{Kind, Unit, show, unit_or_usual};
use build_journal::fold::{OilView, TrendLine, TrendOf};

use super::pressure::Units;
use crate::device::settings::UnitClass;
use crate::kit::piece::{El, Piece, el, note, p};
use crate::kit::section::{section, sentences};
use crate::kit::verdict::{Mark, shape};

/// What changes over time, alarms first.
pub(super) fn trends(view: &OilView, class: UnitClass) -> Option<El> {
    let mut lines: Vec<&TrendLine> = view.trends.iter().collect();
    if lines.is_empty() {
        return None;
    }
    lines.sort_by_key(|line| line.alarm().is_none());
    let (several, once): (Vec<_>, Vec<_>) =
        lines.into_iter().partition(|line| line.trend.is_some());
    let rows = several.into_iter().map(|line| trend(line, class).into());
    let once: Vec<String> = once
        .into_iter()
        .map(|line| {
            let (name, unit) = named(line, class);
            format!("{name}: {}", values(line, unit))
        })
        .collect();
    let once = (!once.is_empty()).then(|| {
        let words = "Read once so far, with nothing to compare it with:";
        Piece::all([note("hint", words).into(), sentences("", &once).into()])
    });
    Some(
        section("What changes")
            .with(note("hint", "An alarm comes of a change, not of a level: gauges differ, your own stays the same."))
            .with(el("ul").class("entries").test("trends").all(rows))
            .with(once),
    )
}

/// What a trend is of, and its unit.
fn named(line: &TrendLine, class: UnitClass) -> (String, &'static Unit) {
    let units = Units::of(class);
    let per_cent = unit_or_usual(Kind::Ratio, "%");
    match line.of {
        TrendOf::Compression(cylinder) => {
            (format!("Compression, cylinder {cylinder}"), units.pressure)
        }
        TrendOf::LeakDown(cylinder) => (format!("Leak-down, cylinder {cylinder}"), per_cent),
        TrendOf::Lash(at) => (format!("Lash, {at}"), class.clearance()),
        TrendOf::OilLeak => ("Oil leak, by the predicted one".to_owned(), per_cent),
    }
}

/// All its readings, the first one first.
fn values(line: &TrendLine, unit: &'static Unit) -> String {
    let values: Vec<String> = line
        .points
        .iter()
        .map(|(_, value)| show(*value, None, unit).number)
        .collect();
    format!("{} {}", values.join(" → "), unit.symbol)
}

fn trend(line: &TrendLine, class: UnitClass) -> El {
    let (name, unit) = named(line, class);
    let (mark, said) = match (line.alarm(), &line.trend) {
        (Some(words), _) => (Mark::Bad, words),
        (None, Some(_)) => (Mark::Good, "No alarm."),
        (None, None) => (Mark::None, "One reading: nothing to compare with yet."),
    };
    el("li")
        .class("card")
        .test("trend")
        .attr("data-verdict", mark.name())
        .with(
            el("div")
                .class("oil-line")
                .with(shape(mark))
                .with(el("strong").text(&name)),
        )
        .with(p(&values(line, unit)))
        .with(p(said))
}
