//! Lash shims.

use build_plan::choice::LASH_SHIMS;
use build_plan::measure::VALVE_LASH;
use build_plan::proof::Proof;
use build_plan::{At, Place, ValveSide};

use super::*;
use crate::fact::Spot;

fn valve(side: ValveSide) -> At {
    At::Valve {
        cylinder: 1,
        side,
        number: 1,
    }
}

#[test]
fn shims_change_places_and_are_found_where_they_were_put() {
    let built = vec![("valve_gear", "twin-overhead-bucket".to_owned())];
    let mut book = Book::new(1, built);
    book.limits(&VALVE_LASH, Some("0.15"), Some("0.25"));
    let valves = LASH_SHIMS.places(&book.build().engine.unwrap().engine);
    assert!(valves.contains(&valve(ValveSide::Intake)), "{valves:?}");
    for (number, at) in (1_u128..).zip(&valves) {
        let (size, lash) = match number {
            1 => ("2.50", "0.30"),
            2 => ("2.60", "0.10"),
            _ => ("2.55", "0.20"),
        };
        book.read(&VALVE_LASH, Place::of(*at), lash);
        let part = book.part(&LASH_SHIMS, number, &format!("shim {number}"), size);
        if number == 1 {
            let said = book.missing(&LASH_SHIMS);
            assert!(
                said.iter().any(|one| one.contains("which shim is in now")),
                "{said:?}"
            );
        }
        let place = Some(Spot::Known(Place::of(*at)));
        book.write(Body::PartOnBench(PartOnBench { place, ..part }));
    }
    let chosen = book.choose(&LASH_SHIMS);
    assert_eq!(chosen.places[0].part, ChosenPart::Of(valves[1]));
    assert_eq!(chosen.places[1].part, ChosenPart::Of(valves[0]));
    assert!(
        chosen.places[2..]
            .iter()
            .all(|one| one.part == ChosenPart::Stays)
    );
    book.accept(&chosen);
    let build = book.build();
    let sits = build.places.sits_at(&LASH_SHIMS, valves[0]).unwrap();
    assert_eq!(sits.listed.name, "shim 2");
    let state = |at: At| build.result(Proof::Measure(&VALVE_LASH), at);
    assert!(matches!(state(valves[0]), ResultState::Stale(_)));
    if let Some(third) = valves.get(2) {
        assert_eq!(state(*third), ResultState::Stands);
    }
}

#[test]
fn a_shim_is_bought_only_in_the_step_they_are_sold_in() {
    let built = vec![("valve_gear", "twin-overhead-bucket".to_owned())];
    let mut book = Book::new(1, built);
    book.limits(&VALVE_LASH, Some("0.15"), Some("0.25"));
    let valves = LASH_SHIMS.places(&book.build().engine.unwrap().engine);
    for (number, at) in (1_u128..).zip(&valves) {
        book.read(&VALVE_LASH, Place::of(*at), "0.43");
        let part = book.part(&LASH_SHIMS, number, "shim", "2.50");
        let place = Some(Spot::Known(Place::of(*at)));
        book.write(Body::PartOnBench(PartOnBench { place, ..part }));
    }
    let said = book.missing(&LASH_SHIMS);
    assert!(
        said[0].starts_with("No way of placing the parts"),
        "{said:?}"
    );
    let wishes = Wishes {
        sold_in: Some(uom::si::f64::Length::from_si(0.05e-3)),
        ..Wishes::default()
    };
    let chosen = book.build().choose(&LASH_SHIMS, wishes).unwrap();
    assert!(
        matches!(chosen.places[0].part, ChosenPart::Bought(size) if (size - 2.75e-3).abs() < 1e-9)
    );
    assert_eq!(millimetres(&chosen.places[0]), 0.18);
}
