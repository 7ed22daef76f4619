//! Where the oil goes, drawn on the engine map: a circle on each bearing, as large
//! as its part of all that leaks.

use assembly_core::oil::circuit::{Known, Share};
use build_plan::map::{Drawn, Frame, Part, Region, SHEET_WIDTH, overview};
use build_plan::{At, Engine};

use crate::kit::piece::{El, Piece, drawn, el};

/// A circle is not smaller than this: it still has to be seen.
const LEAST_RADIUS: f64 = 3.0;

/// The engine with the share of each leak on it. The list below says the same in
/// words, so that it is looked at only.
pub(super) fn share_map(engine: &Engine, all: &[Share]) -> El {
    let sheet = overview(engine);
    let bearing = |share: &&Share| leaks_at(&share.name).is_some();
    let most = all
        .iter()
        .filter(bearing)
        .map(|share| share.part)
        .fold(1e-9, f64::max);
    let regions = sheet
        .regions
        .iter()
        .map(|one| region(engine, one, all, most).into());
    let (x, from, to) = sheet.axis;
    let axis = rect("map-shaft", (x - 3.0, from), (6.0, to - from));
    let drawing = drawn("svg")
        .class("engine-map")
        .attr("viewBox", &format!("0 0 {SHEET_WIDTH} {:.1}", sheet.height))
        .attr("aria-hidden", "true")
        .with(axis)
        .all(regions.collect::<Vec<Piece>>());
    el("div")
        .class("map-scroll")
        .attr("tabindex", "0")
        .attr("role", "region")
        .attr(
            "aria-label",
            "the engine with the part of each leak, as in the list below",
        )
        .test("oil-share-map")
        .with(drawing)
}

/// The bearing that a leak is at; none for what lies all over the engine.
fn leaks_at(name: &str) -> Option<At> {
    let (what, number) = name.split_once(' ')?;
    let number = number.parse().ok()?;
    match what {
        "main" => Some(At::Main(number)),
        "rod" => Some(At::Rod(number)),
        _ => None,
    }
}

fn region(engine: &Engine, one: &Drawn, all: &[Share], most: f64) -> El {
    let Frame {
        x,
        y,
        width,
        height,
    } = one.frame;
    let middle = x + width / 2.0;
    let plate = rect("map-plate", (x, y), (width, height)).attr("fill-opacity", "0");
    let name = words("map-name", (middle, y + 18.0), &one.region.name(engine));
    let castings = one.spots.iter().filter_map(|spot| match spot.part {
        Part::At(At::Cylinder(_)) => Some(
            rect(
                "map-casting",
                (spot.frame.x, spot.frame.y),
                (spot.frame.width, spot.frame.height),
            )
            .into(),
        ),
        _ => None,
    });
    let circles = one.spots.iter().filter_map(|spot| {
        let Part::At(at) = spot.part else {
            return None;
        };
        let share = all.iter().find(|share| leaks_at(&share.name) == Some(at))?;
        Some(circle(spot.frame, share, most).into())
    });
    // What is not at one bearing stands in words where it is.
    let elsewhere: &[&str] = match one.region {
        Region::Cam => &["cam bearings", "lifters"],
        Region::Head(1) => &["rockers"],
        Region::Bores(1) => &["squirters"],
        _ => &[],
    };
    let elsewhere = elsewhere.iter().filter_map(|what| {
        let part: f64 = all
            .iter()
            .filter(|share| share.name == *what || is_one_of(&share.name, what))
            .map(|share| share.part)
            .sum();
        (part > 0.0).then(|| format!("{what} {}", per_cent(part)))
    });
    let below = y + height - 8.0;
    let lines = elsewhere.enumerate().flat_map(|(nth, line)| {
        // Two words below each other fit a narrow column.
        let above = 14.0 * (2.0 * nth as f64);
        let (word, part) = line.rsplit_once(' ').unwrap_or((&line, ""));
        let (word, number) = word.rsplit_once(' ').unwrap_or((word, ""));
        [
            words("map-small", (middle, below - above - 13.0), word).into(),
            words(
                "map-small",
                (middle, below - above),
                &format!("{number} {part}"),
            )
            .into(),
        ]
    });
    drawn("g")
        .with(plate)
        .all(castings.collect::<Vec<Piece>>())
        .with(name)
        .all(circles.collect::<Vec<Piece>>())
        .all(lines.collect::<Vec<Piece>>())
}

/// Whether "squirter 3" is one of the "squirters".
fn is_one_of(name: &str, all: &str) -> bool {
    let one = all.strip_suffix('s').unwrap_or(all);
    name.strip_prefix(one).is_some_and(|rest| {
        rest.strip_prefix(' ')
            .is_some_and(|number| number.parse::<u32>().is_ok())
    })
}

fn circle(frame: Frame, share: &Share, most: f64) -> El {
    let (x, y) = frame.middle();
    // The area goes with the part.
    let radius = (0.5 * frame.width * (share.part / most).sqrt()).max(LEAST_RADIUS);
    let round = |class: &str| {
        drawn("circle")
            .class(class)
            .attr("cx", &format!("{x:.1}"))
            .attr("cy", &format!("{y:.1}"))
            .attr("r", &format!("{radius:.1}"))
    };
    let measured = share.known == Known::Measured;
    let fill = measured.then(|| round("chart-band"));
    let edge = round("map-casting");
    let edge = if measured {
        edge
    } else {
        edge.attr("stroke-dasharray", "3 3")
    };
    drawn("g")
        .attr("data-share", &share.name)
        .with(fill)
        .with(edge)
        .with(words("map-small", (x, y + 4.0), &per_cent(share.part)))
}

fn per_cent(part: f64) -> String {
    let digits = usize::from(part < 0.1);
    format!("{:.digits$} %", 100.0 * part)
}

fn rect(class: &str, (x, y): (f64, f64), (width, height): (f64, f64)) -> El {
    drawn("rect")
        .class(class)
        .attr("x", &format!("{x:.1}"))
        .attr("y", &format!("{y:.1}"))
        .attr("width", &format!("{width:.1}"))
        .attr("height", &format!("{height:.1}"))
        .attr("rx", "3")
}

fn words(class: &str, (x, y): (f64, f64), text: &str) -> El {
    drawn("text")
        .class(class)
        .attr("x", &format!("{x:.1}"))
        .attr("y", &format!("{y:.1}"))
        .text(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_leak_is_drawn_where_it_is() {
        assert_eq!(leaks_at("main 3"), Some(At::Main(3)));
        assert_eq!(leaks_at("rod 8"), Some(At::Rod(8)));
        assert_eq!(leaks_at("cam bearings"), None);
        assert_eq!(leaks_at("squirter 1"), None);
        assert!(is_one_of("squirter 12", "squirters"));
        assert!(!is_one_of("rockers", "squirters") && !is_one_of("squirter x", "squirters"));
        assert_eq!(
            (per_cent(0.214), per_cent(0.041)),
            ("21 %".to_owned(), "4.1 %".to_owned())
        );
    }
}
