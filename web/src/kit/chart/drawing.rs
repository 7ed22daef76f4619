//! The drawing of a chart, and its legend.

use super::{Chart, Line, Look};
use crate::kit::piece::{El, Piece, drawn, el};

const WIDTH: f64 = 360.0;
const HEIGHT: f64 = 300.0;
const LEFT: f64 = 46.0;
const RIGHT: f64 = 24.0;
const TOP: f64 = 30.0;
const FOOT: f64 = 52.0;

fn across(chart: &Chart, value: f64) -> f64 {
    LEFT + chart.x.part(value) * (WIDTH - LEFT - RIGHT)
}

fn up(chart: &Chart, value: f64) -> f64 {
    HEIGHT - FOOT - chart.y.part(value) * (HEIGHT - TOP - FOOT)
}

fn number(value: f64) -> String {
    format!("{value:.1}")
}

fn straight(class: &str, (x1, y1): (f64, f64), (x2, y2): (f64, f64)) -> El {
    drawn("line")
        .class(class)
        .attr("x1", &number(x1))
        .attr("y1", &number(y1))
        .attr("x2", &number(x2))
        .attr("y2", &number(y2))
}

fn words(class: &str, (x, y): (f64, f64), anchor: &str, text: &str) -> El {
    drawn("text")
        .class(class)
        .attr("x", &number(x))
        .attr("y", &number(y))
        .attr("text-anchor", anchor)
        .text(text)
}

/// The drawing.
pub(super) fn drawing(chart: &Chart) -> El {
    let (low, high) = (HEIGHT - FOOT, TOP);
    let x_ticks = chart.x.ticks().into_iter().map(|(at, shown)| {
        let x = across(chart, at);
        let word = words("chart-number", (x, low + 18.0), "middle", &shown);
        Piece::all([
            straight("chart-grid", (x, low), (x, high)).into(),
            word.into(),
        ])
    });
    let y_ticks = chart.y.ticks().into_iter().map(|(at, shown)| {
        let y = up(chart, at);
        let word = words("chart-number", (LEFT - 6.0, y + 5.0), "end", &shown);
        Piece::all([
            straight("chart-grid", (LEFT, y), (WIDTH - RIGHT, y)).into(),
            word.into(),
        ])
    });
    let label = |axis: &super::Axis| match axis.unit.symbol {
        "" => axis.label.to_owned(),
        symbol => format!("{}, {symbol}", axis.label),
    };
    let uprights = chart.uprights.iter().map(|mark| {
        let x = across(chart, mark.at);
        straight("chart-mark", (x, low), (x, high)).into()
    });
    let levels = chart.levels.iter().map(|mark| {
        let y = up(chart, mark.at);
        let word = words("chart-word", (WIDTH - RIGHT, y - 5.0), "end", &mark.name);
        Piece::all([
            straight("chart-mark", (LEFT, y), (WIDTH - RIGHT, y)).into(),
            word.into(),
        ])
    });
    let spots = chart.spots.iter().map(|spot| {
        drawn("circle")
            .class("chart-spot")
            .attr("cx", &number(across(chart, spot.x)))
            .attr("cy", &number(up(chart, spot.y)))
            .attr("r", "6")
            .into()
    });
    drawn("svg")
        .class("chart-drawing")
        .attr("viewBox", &format!("0 0 {WIDTH} {HEIGHT}"))
        .attr("role", "img")
        .attr("aria-label", &chart.says)
        .all(x_ticks)
        .all(y_ticks)
        .with(straight("chart-edge", (LEFT, low), (WIDTH - RIGHT, low)))
        .with(straight("chart-edge", (LEFT, low), (LEFT, high)))
        .with(words("chart-word", (4.0, 16.0), "start", &label(&chart.y)))
        .with(words(
            "chart-word",
            (WIDTH - RIGHT, HEIGHT - 8.0),
            "end",
            &label(&chart.x),
        ))
        .all(uprights)
        .all(chart.lines.iter().map(|line| band(chart, line).into()))
        .all(levels)
        .all(chart.lines.iter().map(|line| path(chart, line).into()))
        .all(spots)
}

fn path(chart: &Chart, line: &Line) -> El {
    let mut way = String::new();
    for (x, y) in &line.points {
        let sign = if way.is_empty() { 'M' } else { 'L' };
        way.push(sign);
        way.push_str(&number(across(chart, *x)));
        way.push(' ');
        way.push_str(&number(up(chart, *y)));
    }
    drawn("path").class(line.look.class()).attr("d", &way)
}

/// One edge of a band; the line itself is within it, whatever it cannot exceed.
fn edge(line: &Line, sign: f64) -> Vec<(f64, f64)> {
    let top = line.at_most.unwrap_or(f64::INFINITY);
    let all = line.points.iter().zip(&line.give_or_take);
    all.map(|((x, y), off)| (*x, (*y + sign * 2.0 * off).min(top.max(*y))))
        .collect()
}

/// What a line may be off, as an area: two give-or-takes up and down.
fn band(chart: &Chart, line: &Line) -> Option<El> {
    if line.give_or_take.len() != line.points.len() || line.points.is_empty() {
        return None;
    }
    let way: Vec<String> = edge(line, 1.0)
        .into_iter()
        .chain(edge(line, -1.0).into_iter().rev())
        .map(|(x, y)| format!("{} {}", number(across(chart, x)), number(up(chart, y))))
        .collect();
    let d = format!("M{}Z", way.join("L"));
    Some(drawn("path").class("chart-band").attr("d", &d))
}

fn sample(look: Look) -> El {
    let line = straight(look.class(), (1.0, 8.0), (43.0, 8.0));
    key().with(line)
}

fn key() -> El {
    drawn("svg")
        .class("chart-key")
        .attr("viewBox", "0 0 44 16")
        .attr("aria-hidden", "true")
}

/// Which line is which.
pub(super) fn legend(chart: &Chart) -> El {
    let line = |sample: El, name: &str| -> Piece {
        el("li").with(sample).with(el("span").text(name)).into()
    };
    let lines = chart
        .lines
        .iter()
        .map(|one| line(sample(one.look), &one.name));
    let band = chart.lines.iter().any(|one| !one.give_or_take.is_empty());
    let band = band.then(|| {
        let area = drawn("rect").class("chart-band");
        let area = area.attr("x", "1").attr("y", "1");
        let area = area.attr("width", "42").attr("height", "14");
        line(key().with(area), "nineteen times of twenty it lies within")
    });
    let spots = (!chart.spots.is_empty()).then(|| {
        let spot = drawn("circle").class("chart-spot").attr("r", "6");
        let spot = spot.attr("cx", "22").attr("cy", "8");
        line(key().with(spot), chart.spots_are)
    });
    let marks = chart.uprights.first().map(|_| {
        let names: Vec<&str> = chart.uprights.iter().map(|one| one.name.as_str()).collect();
        let upright = straight("chart-mark", (22.0, 0.0), (22.0, 16.0));
        line(key().with(upright), &names.join(", "))
    });
    el("ul")
        .class("chart-legend")
        .all(lines)
        .all([band.into(), spots.into(), marks.into()])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_ends_where_a_valve_opens_and_never_below_its_line() {
        let mut line = Line {
            name: String::new(),
            look: Look::Whole,
            points: vec![(0.0, 1.0), (1.0, 4.0), (2.0, 6.0)],
            give_or_take: vec![0.5, 1.0, 1.0],
            at_most: None,
        };
        assert_eq!(edge(&line, 1.0), [(0.0, 2.0), (1.0, 6.0), (2.0, 8.0)]);
        line.at_most = Some(5.0);
        assert_eq!(edge(&line, 1.0), [(0.0, 2.0), (1.0, 5.0), (2.0, 6.0)]);
        assert_eq!(edge(&line, -1.0), [(0.0, 0.0), (1.0, 2.0), (2.0, 4.0)]);
    }
}
