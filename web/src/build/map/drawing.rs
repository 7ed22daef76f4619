//! The pieces that the map is drawn of.

use build_plan::map::{Frame, SHEET_WIDTH};

use super::standing::{PartStands, State};
use crate::kit::piece::{El, drawn};

/// A sheet of the map, which is a list to who cannot see it.
pub(super) fn sheet(height: f64, says: &str) -> El {
    drawn("svg")
        .class("engine-map")
        .attr("viewBox", &format!("0 0 {SHEET_WIDTH} {height:.1}"))
        .attr("role", "list")
        .attr("aria-label", says)
        .test("engine-map")
}

/// One thing on the sheet that leads somewhere.
pub(super) fn item(class: &str, to: &str, says: &str) -> (El, El) {
    let link = drawn("a")
        .class(class)
        .attr("href", to)
        .attr("aria-label", says);
    (drawn("g").attr("role", "listitem"), link)
}

pub(super) fn rect(class: &str, frame: Frame) -> El {
    drawn("rect")
        .class(class)
        .attr("x", &format!("{:.1}", frame.x))
        .attr("y", &format!("{:.1}", frame.y))
        .attr("width", &format!("{:.1}", frame.width))
        .attr("height", &format!("{:.1}", frame.height))
        .attr("rx", "3")
}

/// Words around a point.
pub(super) fn words(class: &str, (x, y): (f64, f64), text: &str) -> El {
    drawn("text")
        .class(class)
        .attr("x", &format!("{x:.1}"))
        .attr("y", &format!("{y:.1}"))
        .text(text)
}

/// The mark of a part. What is good so far is not filled in.
pub(super) fn mark(frame: Frame, stands: &PartStands) -> El {
    let mark = stands.state.mark();
    let (outline, sign) = mark.outline();
    let so_far = if stands.state == State::Good && stands.left > 0 {
        " map-so-far"
    } else {
        ""
    };
    let (x, y, scale) = (frame.x, frame.y, frame.width / 24.0);
    drawn("g")
        .class(&format!("mark mark-{}{so_far}", mark.name()))
        .attr(
            "transform",
            &format!("translate({x:.1} {y:.1}) scale({scale:.3})"),
        )
        .with(drawn("path").class("mark-outline").attr("d", outline))
        .with(drawn("path").class("mark-sign").attr("d", sign))
}

/// Words in lines that are short enough, two at most.
pub(super) fn lines(text: &str, at_most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ') {
        let full = lines.len() >= 2;
        match lines.last_mut() {
            Some(line) if full || line.chars().count() + 1 + word.chars().count() <= at_most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn verdicts_fit_below_their_marks_in_two_lines() {
        assert_eq!(lines("good", 12), ["good"]);
        assert_eq!(lines("not measured", 12), ["not measured"]);
        assert_eq!(lines("too close to call", 12), ["too close to", "call"]);
        assert_eq!(lines("no longer counts", 12), ["no longer", "counts"]);
        assert_eq!(lines("a bb ccc dddd", 3), ["a", "bb ccc dddd"]);
    }
}
