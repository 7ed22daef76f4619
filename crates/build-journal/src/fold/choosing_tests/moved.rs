//! Pistons and rods that change places.

use build_plan::choice::{PISTONS_TO_BORES, RODS_TO_PINS};
use build_plan::measure::{
    BORE, PISTON_DIAMETER, PISTON_TO_WALL, ROD_BEARING_BORE, ROD_JOURNAL_DIAMETER,
    ROD_OIL_CLEARANCE,
};
use build_plan::proof::Proof;
use build_plan::{At, Direction, Place, Station};

use super::*;
use crate::fact::Struck;

#[test]
fn pistons_that_change_places_are_measured_again_and_those_that_stay_are_not() {
    let mut book = Book::new(3, Vec::new());
    book.limits(&PISTON_TO_WALL, Some("0.04"), Some("0.06"));
    for (cylinder, bore, piston) in [
        (1, "92.020", "91.950"),
        (2, "92.000", "91.970"),
        (3, "92.010", "91.960"),
    ] {
        let place = Place::of(At::Cylinder(cylinder));
        let bore_at = place.station(Station::Middle).direction(Direction::Thrust);
        book.read(&BORE, bore_at, bore);
        book.read(&PISTON_DIAMETER, place, piston);
    }
    let chosen = book.choose(&PISTONS_TO_BORES);
    let parts: Vec<&ChosenPart> = chosen.places.iter().map(|one| &one.part).collect();
    let (first, second) = (At::Cylinder(1), At::Cylinder(2));
    assert_eq!(
        parts,
        [
            &ChosenPart::Of(second),
            &ChosenPart::Of(first),
            &ChosenPart::Stays
        ]
    );
    let accepted = book.accept(&chosen);
    let lost = book.missing(&PISTONS_TO_BORES);
    assert_eq!(
        lost,
        ["The piston diameter is not measured, or no longer counts: cylinder 1, cylinder 2."]
    );
    let said: Vec<String> = (book.build().stale().iter())
        .filter(|one| one.proof == Proof::Measure(&PISTON_DIAMETER))
        .flat_map(|one| one.chain.clone())
        .collect();
    assert!(
        said[0].starts_with("Pistons moved from one cylinder to another"),
        "{said:?}"
    );
    // Struck out, everything counts again.
    book.write(Body::Struck(Struck {
        fact: accepted,
        reason: None,
    }));
    assert!(
        book.build()
            .choose(&PISTONS_TO_BORES, Wishes::default())
            .is_ok()
    );
    assert_eq!(book.build().places.put_at(&PISTONS_TO_BORES, first), None);
}

#[test]
fn a_spare_piston_from_the_bench_is_taken_where_it_fits_better() {
    let mut book = Book::new(1, Vec::new());
    book.limits(&PISTON_TO_WALL, Some("0.04"), Some("0.06"));
    let place = Place::of(At::Cylinder(1));
    let bore_at = place.station(Station::Middle).direction(Direction::Thrust);
    book.read(&BORE, bore_at, "92.020");
    book.read(&PISTON_DIAMETER, place, "91.920");
    let spare = book.part(&PISTONS_TO_BORES, 5, "spare", "91.970");
    let chosen = book.choose(&PISTONS_TO_BORES);
    assert_eq!(
        chosen.places[0].part,
        ChosenPart::OnBench(spare.part, "spare".to_owned())
    );
    assert_eq!(millimetres(&chosen.places[0]), 0.05);
    book.accept(&chosen);
    let state = book
        .build()
        .result(Proof::Measure(&PISTON_DIAMETER), At::Cylinder(1));
    assert!(matches!(state, ResultState::Stale(_)), "{state:?}");
}

#[test]
fn rods_go_by_their_bores_square_to_the_joint_and_the_thickest_of_the_pin() {
    let mut book = Book::new(2, Vec::new());
    book.limits(&ROD_OIL_CLEARANCE, Some("0.03"), Some("0.05"));
    for (rod, bore, pin) in [(1, "48.030", "47.980"), (2, "48.020", "47.990")] {
        let place = Place::of(At::Rod(rod)).station(Station::Front);
        book.read(
            &ROD_BEARING_BORE,
            place.direction(Direction::UpAndDown),
            bore,
        );
        book.read(
            &ROD_BEARING_BORE,
            place.direction(Direction::JointLeft),
            "48.000",
        );
        let place = Place::of(At::Crankpin(rod)).station(Station::Front);
        book.read(
            &ROD_JOURNAL_DIAMETER,
            place.direction(Direction::Across),
            pin,
        );
        book.read(
            &ROD_JOURNAL_DIAMETER,
            place.direction(Direction::UpAndDown),
            "47.900",
        );
    }
    let chosen = book.choose(&RODS_TO_PINS);
    assert_eq!(chosen.places[0].part, ChosenPart::Of(At::Rod(2)));
    assert_eq!(
        chosen.places.iter().map(millimetres).collect::<Vec<_>>(),
        [0.04, 0.04]
    );
}
