//! Where the oil goes: the part of each leak, along the crank from front to rear.

use assembly_core::oil::circuit::rule::{FOR_A_THOUSAND_TURNS, wanted};
use assembly_core::oil::circuit::{At, Circuit, Known, Pump, Share};
use assembly_core::quantity::{Kind, show, unit_or_usual};
use build_journal::fold::OilView;
use build_plan::engine::{CrankStop, Engine};

use super::pressure::Units;
use super::share_map::share_map;
use crate::build::measure::{journal_drawing, pin_drawing};
use crate::kit::piece::{El, Piece, drawn, el, note};
use crate::kit::section::section;

/// Turns a minute that the shares are worked out at.
const TURNS: f64 = 2000.0;

/// The shares, drawn on the crank.
pub(super) fn shares(
    view: &OilView,
    circuit: &Circuit,
    pump: Option<&Pump>,
    units: Units,
) -> Piece {
    let Some(engine) = view.build.engine.as_ref().map(|one| &one.engine) else {
        return Piece::none();
    };
    let at = At {
        speed: units.speed.to_si(TURNS),
        temperature: units.temperatures()[1],
    };
    let pressure = pump
        .and_then(|pump| circuit.pressure_and_slopes(pump, at).ok())
        .map_or_else(
            || wanted(at.speed, FOR_A_THOUSAND_TURNS),
            |found| found.pressure,
        );
    let all = circuit.shares(at, pressure.max(1.0));
    let most = all.iter().map(|share| share.part).fold(1e-9, f64::max);
    let one = |name: &str| all.iter().find(|share| share.name == name);
    let mut rows: Vec<Piece> = Vec::new();
    for stop in engine.crank_line() {
        rows.extend(along(engine, stop, &one, most));
    }
    let rest = all
        .iter()
        .filter(|share| !share.name.starts_with("main ") && !share.name.starts_with("rod "));
    let mut squirters: Option<Share> = None;
    for share in rest {
        if share.name.starts_with("squirter") {
            let sum = squirters.get_or_insert_with(|| Share {
                name: "squirters".to_owned(),
                flow: 0.0,
                part: 0.0,
                known: share.known,
            });
            sum.flow += share.flow;
            sum.part += share.part;
        } else {
            rows.push(bar(None, share, most).into());
        }
    }
    rows.extend(squirters.map(|share| bar(None, &share, most).into()));
    let words = format!(
        "At {}, oil at {}, {}: of all the oil that leaks.",
        show(at.speed, None, units.speed),
        show(at.temperature, None, units.temperature),
        show(pressure, None, units.pressure)
    );
    section("Where the oil goes")
        .with(note("hint", &words))
        .with(share_map(engine, &all))
        .with(note(
            "hint",
            "A circle is as large as its part. Dashed: not measured, estimated.",
        ))
        .with(el("ol").class("oil-shares").test("oil-shares").all(rows))
        .into()
}

fn along<'a>(
    engine: &Engine,
    stop: CrankStop,
    one: &impl Fn(&str) -> Option<&'a Share>,
    most: f64,
) -> Vec<Piece> {
    match stop {
        CrankStop::Main(main) => one(&format!("main {}", main.number()))
            .map(|share| bar(Some(journal_drawing()), share, most).into())
            .into_iter()
            .collect(),
        CrankStop::Crankpin(pin) => engine
            .on_crankpin(pin)
            .into_iter()
            .filter_map(|cylinder| one(&format!("rod {cylinder}")))
            .map(|share| bar(Some(pin_drawing(pin)), share, most).into())
            .collect(),
    }
}

fn bar(drawing: Option<El>, share: &Share, most: f64) -> El {
    let flow = unit_or_usual(Kind::Flow, "mL/min");
    let digits = usize::from(share.part < 0.1);
    let part = format!("{:.digits$} %", 100.0 * share.part);
    let width = format!("{:.1}", 100.0 * share.part / most);
    let guessed = share.known == Known::Estimated;
    let kind = if guessed {
        "oil-bar oil-bar-estimated"
    } else {
        "oil-bar"
    };
    let fill = drawn("rect")
        .attr("x", "0.5")
        .attr("y", "0.5")
        .attr("width", &width)
        .attr("height", "11");
    let bar = drawn("svg")
        .class(kind)
        .attr("viewBox", "0 0 101 12")
        .attr("preserveAspectRatio", "none")
        .attr("aria-hidden", "true")
        .with(fill);
    let known = if guessed { "estimated" } else { "measured" };
    let numbers = format!("{part}, {}, {known}", show(share.flow, None, flow));
    el("li")
        .class("oil-share")
        .test(&format!("oil-share-{}", share.name.replace(' ', "-")))
        .with(el("span").class("oil-share-part").with(drawing))
        .with(
            el("span")
                .class("oil-share-words")
                .with(el("strong").text(&share.name))
                .text(" ")
                .with(el("span").text(&numbers))
                .with(bar),
        )
}
