//! The numbers of a chart as a table, for those who cannot see it, and for paper.

use assembly_core::quantity::show;

use super::{Chart, Line};
use crate::kit::piece::{El, Piece, el};

/// The table: a row at each tick, a column a line; then spots and marks.
pub(super) fn table(chart: &Chart) -> Piece {
    let head = chart.lines.iter().map(|line| cell("th", &line.name).into());
    let first = format!("{}, {}", chart.x.label, chart.x.unit.symbol);
    let head = el("tr").with(cell("th", &first)).all(head);
    let rows = chart.x.ticks().into_iter().map(|(at, shown)| {
        let each = chart
            .lines
            .iter()
            .map(|line| cell("td", &value(chart, line, at)).into());
        el("tr")
            .with(el("th").attr("scope", "row").text(&shown))
            .all(each)
            .into()
    });
    let spots = chart.spots.iter().map(|spot| {
        let (x, y) = (
            show(spot.x, None, chart.x.unit).to_string(),
            show(spot.y, None, chart.y.unit).to_string(),
        );
        el("li").text(&format!("{}: {y} at {x}", spot.name)).into()
    });
    let marks = chart
        .uprights
        .iter()
        .map(|mark| (mark, chart.x.unit))
        .chain(chart.levels.iter().map(|mark| (mark, chart.y.unit)))
        .map(|(mark, unit)| {
            let at = show(mark.at, None, unit).to_string();
            el("li").text(&format!("{}: {at}", mark.name)).into()
        });
    let caption = format!("{}, {}", chart.y.label, chart.y.unit.symbol);
    Piece::all([
        pushed_along(
            &caption,
            el("table")
                .class("numbers")
                .with(el("caption").text(&caption))
                .with(el("thead").with(head))
                .with(el("tbody").all(rows)),
        )
        .into(),
        el("ul").class("sentences").all(spots).all(marks).into(),
    ])
}

/// A table that may be wider than the screen: it is pushed along by a finger, or
/// by the keys once it has the focus.
#[must_use]
pub fn pushed_along(name: &str, table: El) -> El {
    el("div")
        .class("chart-table")
        .attr("tabindex", "0")
        .attr("role", "group")
        .attr("aria-label", name)
        .with(table)
}

fn cell(tag: &str, text: &str) -> El {
    el(tag).text(text)
}

/// What a line is at a place across: at its nearest point.
fn value(chart: &Chart, line: &Line, at: f64) -> String {
    let step = (chart.x.to - chart.x.from) / 20.0;
    let nearest = line
        .points
        .iter()
        .enumerate()
        .min_by(|(_, (a, _)), (_, (b, _))| (a - at).abs().total_cmp(&(b - at).abs()));
    match nearest {
        Some((place, (x, y))) if (x - at).abs() <= step => {
            let off = line.give_or_take.get(place).copied();
            let shown = show(*y, off.filter(|off| *off > 0.0), chart.y.unit);
            match shown.give_or_take {
                Some(off) => format!("{} ± {off}", shown.number),
                None => shown.number,
            }
        }
        _ => "–".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Axis, Look};
    use super::*;
    use assembly_core::quantity::unit;

    #[test]
    fn a_cell_is_the_line_there_and_nothing_where_it_does_not_reach() {
        let psi = unit("psi").unwrap();
        let axis = Axis {
            label: "",
            unit: unit("rpm").unwrap(),
            from: 0.0,
            to: 100.0,
        };
        let up = Axis { unit: psi, ..axis };
        let points = vec![(10.0, psi.to_si(20.0)), (20.0, psi.to_si(40.0))];
        let chart = Chart::of("t", "", axis, up)
            .line("a", Look::Whole, points)
            .give_or_take(vec![psi.to_si(1.0); 2]);
        let line = &chart.lines[0];
        assert_eq!(value(&chart, line, 11.0), "20.0 ± 1.0");
        assert_eq!(value(&chart, line, 21.0), "40.0 ± 1.0");
        assert_eq!(value(&chart, line, 60.0), "–");
    }
}
