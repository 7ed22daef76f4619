//! The limits of everything that is measured on this engine, with where each came
//! from: what is missing is seen before the engine is on the stand.

use build_journal::fold::{Build, Limits};
use build_plan::Measure;
use build_plan::measure::MAIN_OIL_CLEARANCE;
use leptos::prelude::*;

use super::place::Place;
use super::walk;
use crate::build::Opened;
use crate::build::measure::limits::{in_both_units, origin_words};
use crate::device::settings::{UnitClass, settings};
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, el, note};
use crate::kit::section::{fold, section};
use crate::kit::verdict::{Mark, shape};
use crate::route::{Page, Route};

/// A measure with the limits in force.
type Row = (&'static Measure, Vec<Limits>);

/// The list, each row leading to where its limits are set.
#[must_use]
pub fn all_limits() -> El {
    let opened: Opened = expect_context();
    let settings = settings();
    let list = Piece::live(move || {
        let units = settings.units();
        let (set, open) = opened.build.with(rows);
        let shown = |rows: Vec<Row>| {
            el("ul")
                .class("entries")
                .all(rows.into_iter().map(|row| shown(opened, units, &row)))
        };
        let words = format!("Without limits: {} measures", open.len());
        let none = set
            .is_empty()
            .then(|| note("hint", "No other limits are set yet."));
        let missing = (!open.is_empty()).then(|| {
            el("div")
                .test("limits-missing")
                .with(fold(&words, shown(open)))
        });
        Piece::all([none.into(), shown(set).into(), missing.into()])
    });
    section("Everything else").with(list)
}

/// The measures of this engine but the one whose page this is, those with limits apart from those
/// without, and first of all those whose limits contradict each other.
fn rows(build: &Build) -> (Vec<Row>, Vec<Row>) {
    let Some(described) = &build.engine else {
        return (Vec::new(), Vec::new());
    };
    let rows = build
        .plan
        .measures(&described.engine)
        .filter(|measure| measure.id != MAIN_OIL_CLEARANCE.id)
        .filter(|measure| !walk::parts(build, measure).is_empty())
        .map(|measure| {
            let own = build
                .limits
                .iter()
                .filter(|one| one.set.measure == measure.id);
            (measure, own.cloned().collect::<Vec<_>>())
        });
    let (mut set, open): (Vec<Row>, Vec<Row>) = rows.partition(|(_, limits)| !limits.is_empty());
    set.sort_by_key(|(_, limits)| !contradict(limits));
    (set, open)
}

/// Whether two limits hold for one and the same place.
fn contradict(limits: &[Limits]) -> bool {
    limits.iter().enumerate().any(|(at, one)| {
        let rest = limits.iter().skip(at + 1);
        rest.into_iter()
            .any(|other| other.set.place == one.set.place)
    })
}

fn shown(opened: Opened, units: UnitClass, (measure, limits): &Row) -> Piece {
    let to = Page::Measure(Place::Limits(measure.id.to_owned()));
    let lines = limits.iter().map(|one| {
        let window = match &one.window {
            Ok(window) => in_both_units(window, measure, units),
            Err(problem) => problem.to_string(),
        };
        let from = format!("{}: {}", origin_words(one.set.origin), one.set.origin_note);
        Piece::all([
            el("span").class("limits-window").text(&window).into(),
            el("span").class("hint").text(&capital(&from)).into(),
        ])
    });
    let doubt = contradict(limits).then(|| {
        el("span")
            .class("tally-one")
            .with(shape(Mark::Close))
            .text("two that contradict each other")
    });
    let link = el("a")
        .class("entry")
        .attr("href", &Route::Build(opened.id.to_string(), to).to_string())
        .test(&format!("limits-of-{}", measure.id))
        .with(el("strong").text(&capital(measure.label)))
        .all(lines)
        .with(doubt);
    el("li").with(link).into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::{EngineDescribed, LimitsOrigin, LimitsSet};
    use build_journal::{Body, BuildId, DeviceId, Fact, Journal, Stamper, fold};
    use build_plan::measure::{BORE, RING_END_GAP};
    use build_plan::{Engine, Layout};

    fn limits(measure: &Measure, low: &str) -> Body {
        Body::LimitsSet(LimitsSet {
            measure: measure.id.to_owned(),
            place: None,
            low: Some(low.to_owned()),
            high: None,
            unit: "in".to_owned(),
            origin: LimitsOrigin::Sheet,
            origin_note: "page 3".to_owned(),
            replaces: Vec::new(),
        })
    }

    fn build(limits: Vec<Body>) -> Build {
        let mut journal = Journal::new(BuildId::from_random(1));
        let mut stamper = Stamper::new();
        let engine = Engine::new("orchard sprayer", 4, Layout::Inline, None).unwrap();
        let engine = Body::EngineDescribed(EngineDescribed::of(&engine));
        // Each from a device of its own: nobody took the others' place.
        for (device, body) in (1..).zip(std::iter::once(engine).chain(limits)) {
            let id = stamper.stamp(1, 1);
            let fact = Fact::new(id, DeviceId::from_random(device), 1, body);
            journal.append(fact).unwrap();
        }
        fold(&journal)
    }

    #[test]
    fn what_has_no_limits_is_listed_apart() {
        let (set, open) = rows(&build(vec![limits(&BORE, "3.5")]));
        let ids = |rows: &[Row]| rows.iter().map(|(one, _)| one.id).collect::<Vec<_>>();
        assert_eq!(ids(&set), [BORE.id]);
        assert!(ids(&open).contains(&RING_END_GAP.id));
        assert!(!ids(&open).contains(&BORE.id));
    }

    #[test]
    fn limits_that_contradict_each_other_come_first() {
        let bodies = vec![
            limits(&BORE, "3.5"),
            limits(&RING_END_GAP, "0.014"),
            limits(&RING_END_GAP, "0.016"),
        ];
        let (set, _) = rows(&build(bodies));
        let [(first, both), (second, one)] = set.as_slice() else {
            panic!("two measures have limits");
        };
        assert_eq!((first.id, second.id), (RING_END_GAP.id, BORE.id));
        assert!(contradict(both) && !contradict(one));
    }
}
