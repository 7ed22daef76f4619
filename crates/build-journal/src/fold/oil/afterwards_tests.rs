//! Before and after the first fire: plugs, oil used, cylinders, and what proves the
//! plan.

use assembly_core::oil::circuit::BearingLoads;
use build_plan::measure::{COMPRESSION_PRESSURE, LEAK_DOWN};
use build_plan::proof::Proof;
use build_plan::{At, Place};

use super::tests::{Evening, said, system};
use super::*;
use crate::fact::*;
use crate::fold::{Folding, ResultState, fold};
use crate::id::{FactId, ToolId};

fn cylinder(number: u8) -> Spot {
    Spot::Known(Place::of(At::Cylinder(number)))
}

fn pumps(number: u8, psi: &str, state: BoreState) -> Body {
    Body::CompressionRead(CompressionRead {
        place: cylinder(number),
        pressure: said(psi, "psi"),
        state,
    })
}

fn leaks(number: u8, held: &str, orifice: Option<&str>) -> Body {
    Body::LeakDownRead(LeakDownRead {
        place: cylinder(number),
        supply: said("100", "psi"),
        held: said(held, "psi"),
        orifice: orifice.map(|size| said(size, "in")),
        heard: None,
    })
}

#[test]
fn what_is_read_beside_the_engine_proves_the_plans_measures_once() {
    let mut evening = Evening::new();
    let proved = |evening: &Evening, measure, at| {
        let build = fold(&evening.journal);
        build.result(Proof::Measure(measure), at) != ResultState::NotYet
    };
    let at = At::Cylinder(2);
    assert!(!proved(&evening, &COMPRESSION_PRESSURE, at));
    // Oil on the piston is a test of its own.
    evening.write(pumps(2, "150", BoreState::Wet));
    assert!(!proved(&evening, &COMPRESSION_PRESSURE, at));
    let dry = evening.write(pumps(2, "142", BoreState::Dry));
    let leak = evening.write(leaks(2, "93.5", None));
    assert!(proved(&evening, &COMPRESSION_PRESSURE, at) && proved(&evening, &LEAK_DOWN, at));
    assert!(!proved(&evening, &LEAK_DOWN, At::Cylinder(1)));
    let build = fold(&evening.journal);
    let typed = |measure, at| {
        let all = build.readings(measure, at);
        all.map(|taken| taken.reading.typed.clone())
            .collect::<Vec<_>>()
    };
    assert_eq!(typed(&COMPRESSION_PRESSURE, at), ["142"]);
    assert_eq!(typed(&LEAK_DOWN, at), ["6.5"]);
    assert!(build.problems.is_empty(), "{:?}", build.problems);
    // Struck out it proves nothing any more, also when taken in one by one.
    let mut folding = Folding::of(&evening.journal);
    for fact in [dry, leak] {
        evening.write(Body::Struck(Struck { fact, reason: None }));
        let last = evening.journal.facts().next_back().unwrap().clone();
        folding.append(&evening.journal, &last);
        assert_eq!(folding, Folding::of(&evening.journal));
    }
    assert!(!proved(&evening, &COMPRESSION_PRESSURE, at) && !proved(&evening, &LEAK_DOWN, at));
}

#[test]
fn taken_in_one_by_one_it_is_the_same() {
    let mut evening = Evening::new();
    let mut folding = Folding::of(&evening.journal);
    for body in [
        pumps(1, "140", BoreState::Dry),
        pumps(1, "150", BoreState::Dry),
        pumps(9, "150", BoreState::Dry),
        leaks(3, "94", Some("0.040")),
        leaks(3, "104", None),
    ] {
        evening.write(body);
        let last = evening.journal.facts().next_back().unwrap().clone();
        folding.append(&evening.journal, &last);
        assert_eq!(folding, Folding::of(&evening.journal));
    }
    // More is held than comes in: kept, and proves nothing.
    let build = folding.build();
    assert_eq!(build.oil.leak_downs[1].leak(), None);
    assert_eq!(build.readings(&LEAK_DOWN, At::Cylinder(3)).count(), 1);
}

#[test]
fn testers_with_other_orifices_are_not_compared() {
    let mut evening = Evening::new();
    evening.write(leaks(1, "96", Some("0.040")));
    evening.write(leaks(1, "80", Some("0.060")));
    let line = |evening: &Evening| {
        let view = evening.view();
        let mut lines = view.trends.into_iter();
        lines.find(|one| one.of == TrendOf::LeakDown(1)).unwrap()
    };
    // A fifth, not four per cent: another tester, no alarm.
    assert_eq!(
        (line(&evening).points.len(), line(&evening).alarm()),
        (1, None)
    );
    evening.write(leaks(1, "73", Some("1.524 mm")));
    let found = line(&evening);
    assert!(found.alarm().is_some(), "{found:?}");
    assert_eq!(found.points.len(), 2);
}

#[test]
fn plugs_are_missing_until_as_many_are_back() {
    let mut evening = Evening::new();
    let mut count = |plugs: &str, out, back| {
        evening.write(Body::PlugsCounted(PlugsCounted {
            plugs: plugs.to_owned(),
            out,
            back,
            words: None,
        }))
    };
    count("gallery-front", Some(3), None);
    count("core", Some(5), Some(5));
    count("of-tomorrow", Some(1), None);
    count("gallery-front", None, Some(2));
    let book = fold(&evening.journal).oil;
    assert!(book.plugs.any_out() && !book.plugs.all_back());
    assert_eq!(book.plugs.of("gallery-front").missing(), 1);
    let missing = book.plugs.missing();
    assert_eq!(missing.len(), 2);
    assert!(missing[0].0.contains("front ends") && missing[1].0 == "of-tomorrow");
    evening.write(Body::PlugsCounted(PlugsCounted {
        plugs: "gallery-front".to_owned(),
        out: None,
        back: Some(4),
        words: None,
    }));
    let book = fold(&evening.journal).oil;
    assert_eq!(book.plugs.of("gallery-front").missing(), 0);
    assert_eq!(book.plugs.of("gallery-front").too_many(), 1);
    assert!(!Evening::new().view().build.oil.plugs.any_out());
}

fn noted(what: OilDoing, amount: Option<&str>, meter: Option<(&str, &str)>) -> Body {
    Body::OilNoted(OilNoted {
        what,
        amount: amount.map(|litres| said(litres, "L")),
        meter: meter.map(|(typed, unit)| said(typed, unit)),
        kind: None,
        words: None,
    })
}

#[test]
fn oil_used_goes_by_the_meter_that_was_written_down() {
    let mut evening = Evening::new();
    let write = |evening: &mut Evening, all: &[Body]| -> Vec<FactId> {
        all.iter().map(|body| evening.write(body.clone())).collect()
    };
    write(
        &mut evening,
        &[
            noted(OilDoing::Drained, None, None),
            noted(OilDoing::Filled, Some("4.5"), Some(("12000", "km"))),
            noted(OilDoing::Added, Some("0.5"), Some(("12500", "km"))),
            noted(OilDoing::FilterChanged, None, None),
            noted(OilDoing::Added, Some("0.3"), Some(("13500", "km"))),
        ],
    );
    let book = fold(&evening.journal).oil;
    assert!((book.filled().unwrap() - 5.3e-3).abs() < 1e-12);
    // Filled means from empty; drained means that nothing is in it.
    let mut again = Evening::new();
    again.write(noted(OilDoing::Added, Some("0.5"), None));
    assert_eq!(fold(&again.journal).oil.filled(), None);
    for (what, amount, there) in [
        (OilDoing::Filled, Some("4.5"), Some(4.5e-3)),
        (OilDoing::Filled, Some("4.6"), Some(4.6e-3)),
        (OilDoing::Added, None, None),
        (OilDoing::Drained, Some("4"), None),
    ] {
        again.write(noted(what, amount, None));
        assert_eq!(fold(&again.journal).oil.filled(), there);
    }
    let used = book.used();
    assert_eq!(used.len(), 1);
    let by_thousand: Vec<f64> = used[0]
        .used
        .iter()
        .map(|(_, one)| one.rate() * used[0].of.usual() * 1e3)
        .collect();
    assert!((by_thousand[0] - 1.0).abs() < 1e-9 && (by_thousand[1] - 0.3).abs() < 1e-9);
    assert!(!used[0].trend.unwrap().alarm);
    write(
        &mut evening,
        &[
            noted(OilDoing::Added, Some("0.5"), Some(("14500", "km"))),
            noted(OilDoing::Added, Some("0.5"), Some(("1400", "furlongs"))),
        ],
    );
    let build = fold(&evening.journal);
    assert!(build.oil.used()[0].trend.unwrap().alarm);
    assert_eq!(build.problems.len(), 1);
    // Added by nobody knows what meter: the chain is broken, not guessed.
    assert_eq!(build.oil.used()[0].used.len(), 3);
}

#[test]
fn what_was_measured_of_the_cylinder_need_not_be_typed() {
    let mut evening = Evening::new();
    evening.mains();
    let mut read = |measure: &str, place: Place, typed: &str, tool: u128| {
        evening.write(Body::Reading(
            Reading {
                measure: measure.to_owned(),
                place: Spot::Known(place),
                typed: typed.to_owned(),
                unit: "in".to_owned(),
                tool: Some(ToolId::from_random(tool)),
                setting: None,
                temperature: None,
                condition: None,
                keyed: None,
            }
            .into(),
        ));
    };
    for (cylinder, typed) in [(1, "4.0010"), (2, "4.0030")] {
        let place = Place::of(At::Cylinder(cylinder))
            .station(build_plan::Station::Top)
            .direction(build_plan::Direction::Thrust);
        read("bore", place, typed, 1);
    }
    read("rod-length", Place::of(At::Rod(3)), "5.700", 1);
    evening.tell(OilSystem {
        up_and_down: Some(said("700", "g")),
        round: Some(said("450", "g")),
        compression_ratio: Some(said("9", "")),
        ..system()
    });
    let inputs = evening.view().inputs;
    assert_eq!(inputs.cylinder_lacks, Vec::<&str>::new());
    let cylinder = inputs.cylinder.unwrap();
    assert!(
        (cylinder.bore - 4.002 * 0.0254).abs() < 1e-9,
        "{cylinder:?}"
    );
    assert!((cylinder.rod - 5.7 * 0.0254).abs() < 1e-9);
    let of = |what: &str| {
        let found = |one: &&CylinderNumber| one.what == what;
        *inputs.cylinder_numbers.iter().find(found).unwrap()
    };
    let (readings, parts) = (2, 2);
    assert_eq!(of("bore").from, NumberFrom::Measured { readings, parts });
    assert_eq!(of("stroke").from, NumberFrom::Typed);
    // What is typed wins, and what was measured is still told beside it.
    evening.tell(OilSystem {
        bore: Some(said("4.060", "in")),
        ..system()
    });
    let inputs = evening.view().inputs;
    let bore = inputs
        .cylinder_numbers
        .iter()
        .find(|one| one.what == "bore");
    assert_eq!(bore.unwrap().from, NumberFrom::Typed);
    assert!((bore.unwrap().value - 4.06 * 0.0254).abs() < 1e-9);
    assert!((inputs.measured.bore.unwrap().value - 4.002 * 0.0254).abs() < 1e-9);
    assert!(inputs.cylinder_lacks.contains(&"compression ratio"));
}

#[test]
fn a_described_cylinder_gives_the_load_and_says_what_it_lacks() {
    let mut evening = Evening::new();
    evening.mains();
    evening.tell(system());
    let inputs = evening.view().inputs;
    assert!(inputs.cylinder.is_none());
    assert!(
        inputs.cylinder_lacks.contains(&"bore"),
        "{:?}",
        inputs.cylinder_lacks
    );
    assert!(!inputs.cylinder_lacks.contains(&"stroke"));
    let whole = OilSystem {
        bore: Some(said("4", "in")),
        rod_length: Some(said("5.7", "in")),
        up_and_down: Some(said("700", "g")),
        round: Some(said("450", "g")),
        compression_ratio: Some(said("9", "")),
        ..system()
    };
    evening.tell(whole.clone());
    let inputs = evening.view().inputs;
    assert_eq!(inputs.cylinder_lacks, Vec::<&str>::new());
    let cylinder = inputs.cylinder.unwrap();
    assert!((cylinder.stroke - 0.0889).abs() < 1e-12 && cylinder.peak_gas.is_none());
    let circuit = inputs.circuit.unwrap();
    assert!(matches!(circuit.loads, BearingLoads::Cylinder(_)));
    // A load that was typed wins over what is worked out.
    evening.tell(OilSystem {
        load: Some(said("8000", "N")),
        ..whole.clone()
    });
    let circuit = evening.view().inputs.circuit.unwrap();
    assert!(matches!(circuit.loads, BearingLoads::Steady(_, rod) if rod == 8000.0));
    // A rod that cannot swing is told, and not worked with.
    evening.tell(OilSystem {
        rod_length: Some(said("1.5", "in")),
        ..whole
    });
    let inputs = evening.view().inputs;
    assert!(inputs.cylinder.is_none());
    assert_eq!(inputs.cylinder_lacks, ["a rod longer than the throw"]);
}
