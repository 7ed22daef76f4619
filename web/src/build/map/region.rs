//! One region, enlarged: each part as large as a thumb, a way to its measures.

use build_plan::map::{Frame, Part, Region, SHEET_WIDTH, Spot, zoomed};

use super::drawing::{item, lines, mark, rect, sheet, words};
use super::place::Place;
use super::standing::{EngineStands, State};
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, el, note, title};

/// How large a mark is drawn.
const MARK: f64 = 40.0;
/// How wide a letter of a verdict may be.
const LETTER: f64 = 7.4;
/// Between a part and the one below it, where the crank shows.
const BETWEEN: f64 = 9.0;

/// A region by itself.
pub(super) fn enlarged(
    stands: &EngineStands,
    region: Region,
    to: &dyn Fn(Place) -> String,
    measured_at: &dyn Fn(Part) -> Option<String>,
) -> Piece {
    let engine = &stands.engine;
    let drawing = zoomed(engine, region);
    let name = region.name(engine);
    let shaft = match region {
        Region::Crank => Some(rect(
            "map-shaft",
            Frame {
                x: SHEET_WIDTH / 2.0 - 7.0,
                y: 20.0,
                width: 14.0,
                height: drawing.height - 100.0,
            },
        )),
        _ => None,
    };
    let headings = (drawing.headings.iter())
        .map(|one| words("map-heading", (2.0, one.y), &one.words).attr("aria-hidden", "true"));
    let parts = drawing.spots.iter().map(|spot| {
        // A main is measured on one page, which is one tap away.
        let address = measured_at(spot.part);
        let address = address.unwrap_or_else(|| to(Place::Part(spot.part.id())));
        part(stands, spot, &address)
    });
    let map = sheet(drawing.height, &format!("{name}, front to rear"))
        .with(shaft.map(|one| one.attr("aria-hidden", "true")))
        .all(headings.map(Into::into).collect::<Vec<Piece>>())
        .all(parts.map(Into::into).collect::<Vec<Piece>>());
    Piece::all([
        back(&to(Place::Whole), "The whole engine").into(),
        title(&name).into(),
        note("hint", "Front at the top. Tap a part for its measures.").into(),
        el("div").class("map-scroll").with(map).into(),
    ])
}

/// The way one step back.
pub(super) fn back(to: &str, words: &str) -> El {
    el("div").class("row no-print").with(
        el("a")
            .class("button quiet")
            .attr("href", to)
            .test("map-back")
            .text(&format!("‹ {words}")),
    )
}

fn part(stands: &EngineStands, spot: &Spot, address: &str) -> El {
    let one = stands.at(spot.part);
    let id = spot.part.id();
    let says = format!("{}: {}", capital(&spot.part.to_string()), one.sentence());
    let (listed, link) = item("map-part", address, &says);
    let frame = spot.frame;
    let middle = frame.x + frame.width / 2.0;
    let mark_frame = Frame {
        x: middle - MARK / 2.0,
        y: frame.y + 4.0,
        width: MARK,
        height: MARK,
    };
    let plate = Frame {
        x: frame.x + 1.0,
        y: frame.y + 1.0,
        width: frame.width - 2.0,
        height: frame.height - BETWEEN,
    };
    let name = words(
        "map-name",
        (middle, frame.y + 59.0),
        &spot.part.short(&stands.engine),
    );
    // How much is left says by itself that it is good so far only.
    let word = match one.state {
        State::Good => State::Good.words(),
        _ => one.words(),
    };
    let mut said = lines(word, (frame.width / LETTER) as usize);
    if one.left > 0 && one.left < one.all {
        said.push(format!("{} left", one.left));
    }
    let said = said.into_iter().enumerate().map(|(nth, line)| {
        let below = [73.0, 85.0, 97.0].get(nth).copied().unwrap_or(97.0);
        words("map-small", (middle, frame.y + below), &line).into()
    });
    let link = link
        .attr("data-verdict", one.state.mark().name())
        .with(rect("map-plate", plate).test(&format!("part-{id}")))
        .with(mark(mark_frame, &one))
        .with(name)
        .all(said.collect::<Vec<Piece>>());
    listed.with(link)
}
