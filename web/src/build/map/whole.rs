//! The whole engine on one sheet: each region leads to itself, enlarged.

use build_plan::map::{Drawn, Frame, Overview, Part, Region, leaning, overview};
use build_plan::{At, Engine, Layout};

use super::drawing::{item, mark, rect, sheet, words};
use super::place::Place;
use super::standing::{EngineStands, SO_FAR, State};
use crate::kit::piece::{El, Piece, drawn, el, note, title};
use crate::kit::section::section;
use crate::kit::verdict::shape;

/// No more parts than this are named as the worst at once.
const WORST_SHOWN: usize = 8;

/// The whole engine.
pub(super) fn whole(stands: &EngineStands, to: &dyn Fn(Place) -> String) -> Piece {
    let engine = &stands.engine;
    let words = format!(
        "{} Front at the top. Tap what you want to see larger.",
        described(engine)
    );
    let map = el("div")
        .class("map-half")
        .with(note("hint", &words))
        .with(el("div").class("map-scroll").with(sheet_of(stands, to)))
        .with(legend(stands));
    let worst = el("div").class("map-half").with(worst(stands, to));
    Piece::all([
        title("Engine map").into(),
        el("div").class("map-halves").with(map).with(worst).into(),
    ])
}

fn described(engine: &Engine) -> String {
    let cylinders = match engine.cylinders() {
        1 => "one cylinder".to_owned(),
        more => format!("{more} cylinders"),
    };
    let layout = match engine.layout() {
        Layout::Inline => "In line",
        Layout::Vee { .. } => "Vee",
        _ => "Flat",
    };
    format!("{layout}, {cylinders}, {} mains.", engine.number_of_mains())
}

fn sheet_of(stands: &EngineStands, to: &dyn Fn(Place) -> String) -> El {
    let drawn_engine = overview(&stands.engine);
    let regions = drawn_engine
        .regions
        .iter()
        .map(|one| region(stands, one, drawn_engine.axis, to).into());
    sheet(drawn_engine.height, "the engine, region by region")
        .all(regions.collect::<Vec<Piece>>())
        .with(background(&stands.engine, &drawn_engine))
}

/// The crank's axis and the engine seen from the flywheel: looked at, not tapped.
fn background(engine: &Engine, drawn_engine: &Overview) -> El {
    let Frame {
        x,
        y,
        width,
        height,
    } = drawn_engine.end_view;
    let foot = (x + width * 0.36, y + height - 12.0);
    let banks = leaning(engine).into_iter().map(|(bank, degrees)| {
        let turned = format!(
            "translate({:.1} {:.1}) rotate({degrees:.1})",
            foot.0, foot.1
        );
        let cylinder = drawn("path")
            .class("map-casting")
            .attr("d", "M-7 -10V-44H7V-10");
        let name = (engine.layout().banks() > 1).then(|| {
            let upright = format!("translate(0 -32) rotate({:.1})", -degrees);
            words("map-small", (0.0, 4.0), &bank.to_string()).attr("transform", &upright)
        });
        drawn("g")
            .attr("transform", &turned)
            .with(cylinder)
            .with(name)
            .into()
    });
    let crankcase = drawn("circle")
        .class("map-casting")
        .attr("cx", &format!("{:.1}", foot.0))
        .attr("cy", &format!("{:.1}", foot.1))
        .attr("r", "10");
    let says = x + width - 4.0;
    drawn("g")
        .attr("aria-hidden", "true")
        .all(banks.collect::<Vec<Piece>>())
        .with(crankcase)
        .with(words("map-small map-right", (says, y + 16.0), "from the"))
        .with(words("map-small map-right", (says, y + 30.0), "flywheel"))
}

fn region(
    stands: &EngineStands,
    drawn_region: &Drawn,
    crank: (f64, f64, f64),
    to: &dyn Fn(Place) -> String,
) -> El {
    let engine = &stands.engine;
    let Drawn {
        region,
        frame,
        spots,
    } = drawn_region;
    let id = region.id();
    let name = region.name(engine);
    let says = format!("{name}: {}", tally(stands, *region));
    let link_to = to(Place::Region(id.clone()));
    let (listed, link) = item("map-region", &link_to, &says);
    let middle = frame.x + frame.width / 2.0;
    let castings = spots.iter().filter_map(|spot| {
        let class = match spot.part {
            Part::At(At::Main(_)) => "map-journal",
            Part::At(At::Cylinder(_)) => "map-casting",
            _ => return None,
        };
        Some(around(class, spot.frame).into())
    });
    let axis = match region {
        Region::Crank => Some(axis(crank)),
        _ => None,
    };
    let marks = spots.iter().map(|spot| {
        mark(spot.frame, &stands.at(spot.part))
            .attr("data-part", &spot.part.id())
            .into()
    });
    let link = link
        .with(rect("map-plate", *frame).test(&format!("region-{id}")))
        .with(axis)
        .all(castings.collect::<Vec<Piece>>())
        .with(words("map-name", (middle, frame.y + 18.0), &name))
        .all(marks.collect::<Vec<Piece>>());
    listed.with(link)
}

fn axis((x, from, down_to): (f64, f64, f64)) -> El {
    rect(
        "map-shaft",
        Frame {
            x: x - 4.0,
            y: from,
            width: 8.0,
            height: down_to - from,
        },
    )
}

/// A little more than the mark itself.
fn around(class: &str, frame: Frame) -> El {
    let more = if class == "map-journal" { 3.0 } else { 1.0 };
    rect(
        class,
        Frame {
            x: frame.x - more,
            y: frame.y,
            width: frame.width + 2.0 * more,
            height: frame.height,
        },
    )
}

/// How a part may stand, the worst first, in words.
static SHOWN: [(State, &str); 8] = [
    (State::Bad, State::Bad.words()),
    (State::Stale, State::Stale.words()),
    (State::Close, State::Close.words()),
    (State::NoVerdict, State::NoVerdict.words()),
    (State::Good, State::Good.words()),
    (State::Good, SO_FAR),
    (State::NotMeasured, State::NotMeasured.words()),
    (State::NotMeasured, "let pass"),
];

/// How the parts of a region stand, in words.
fn tally(stands: &EngineStands, region: Region) -> String {
    let parts = region.parts(&stands.engine).into_iter();
    let said: Vec<&str> = parts
        .map(|part| stands.at(part))
        .filter(|one| one.all > 0)
        .map(|one| one.words())
        .collect();
    let counts = SHOWN.iter().filter_map(|(_, words)| {
        let count = said.iter().filter(|one| *one == words).count();
        (count > 0).then(|| format!("{count} {words}"))
    });
    counts.collect::<Vec<String>>().join(", ")
}

/// What the marks mean, with how many parts stand like that.
fn legend(stands: &EngineStands) -> El {
    let rows = SHOWN.iter().filter_map(|(state, words)| {
        let count = stands.count_of(words);
        let class = if *words == SO_FAR {
            "tally-one map-so-far"
        } else {
            "tally-one"
        };
        let row = el("li")
            .class(class)
            .with(shape(state.mark()))
            .text(&format!("{count} {words}"));
        (count > 0).then(|| row.into())
    });
    el("ul")
        .class("tally map-legend")
        .test("map-legend")
        .attr("aria-label", "parts by how they stand")
        .all(rows.collect::<Vec<Piece>>())
}

/// The parts that want looking at, each a way to its measures.
fn worst(stands: &EngineStands, to: &dyn Fn(Place) -> String) -> El {
    let all = stands.worst();
    let more = all.len().saturating_sub(WORST_SHOWN);
    let rows = all.iter().take(WORST_SHOWN).map(|(part, one)| {
        let link = el("a")
            .class("entry map-row")
            .attr("href", &to(Place::Part(part.id())))
            .test(&format!("worst-{}", part.id()))
            .attr("data-verdict", one.state.mark().name())
            .with(shape(one.state.mark()))
            .with(
                el("span")
                    .with(el("strong").text(&crate::kit::judged::capital(&part.to_string())))
                    .with(el("span").text(&one.sentence())),
            );
        el("li").with(link).into()
    });
    let section = section("To look at");
    if all.is_empty() {
        let good = stands.count_of(State::Good.words());
        let words = if good + stands.count_of(SO_FAR) > 0 {
            "Nothing that was measured so far is bad, undecided or out of date."
        } else {
            "Nothing is measured yet. Tap the crank to begin with the mains."
        };
        return section.with(note("lead", words));
    }
    section
        .with(
            el("ul")
                .class("entries")
                .test("map-worst")
                .all(rows.collect::<Vec<Piece>>()),
        )
        .with((more > 0).then(|| note("hint", &format!("And {more} more on the map."))))
}
