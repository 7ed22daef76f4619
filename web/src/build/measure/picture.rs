//! Where to measure, drawn: along the bearing and around it.

use build_plan::measure::{MAIN_JOURNAL_DIAMETER, ROD_JOURNAL_DIAMETER};
use build_plan::{At, Direction, Station};

use super::order::Spot;
use crate::kit::piece::{El, drawn};

fn path(class: &str, d: &str) -> El {
    drawn("path").class(class).attr("d", d)
}

fn circle(class: &str, (x, y): (&str, &str), radius: &str) -> El {
    drawn("circle")
        .class(class)
        .attr("cx", x)
        .attr("cy", y)
        .attr("r", radius)
}

/// The place of a spot on a bearing: which side of the oil hole, and in which
/// direction. Other parts are not drawn.
#[must_use]
pub fn picture(spot: &Spot) -> Option<El> {
    if !matches!(spot.place.at, At::Main(_) | At::Crankpin(_) | At::Rod(_)) {
        return None;
    }
    spot.place.station?;
    let is_journal = [&MAIN_JOURNAL_DIAMETER, &ROD_JOURNAL_DIAMETER]
        .iter()
        .any(|one| one.id == spot.measure.id);
    let turned = match spot.place.direction {
        Some(Direction::Across) => "rotate(90 132 40)",
        // 25° above the joint, left and right.
        Some(Direction::JointLeft) => "rotate(-65 132 40)",
        Some(Direction::JointRight) => "rotate(65 132 40)",
        _ => "rotate(0)",
    };
    let band = match spot.place.station {
        Some(Station::Front) => "M14 10h14v60H14z",
        Some(Station::Rear) => "M52 10h14v60H52z",
        _ => "M10 10h60v60H10z",
    };
    let arrow = path("spot-arrow", "M132 12v56M126 19l6-8 6 8M126 61l6 8 6-8");
    let drawing = drawn("svg")
        .class("spot-picture")
        .attr("viewBox", "0 0 176 80")
        .attr("aria-hidden", "true")
        .with(path("spot-part", "M10 10h60v60H10z"))
        .with(path("spot-band", band))
        .with(circle("spot-hole", ("40", "40"), "4"))
        .with(circle("spot-part", ("132", "40"), "30"))
        .with((!is_journal).then(|| path("spot-joint", "M94 40h76")))
        .with(drawn("g").attr("transform", turned).with(arrow));
    Some(drawing)
}
