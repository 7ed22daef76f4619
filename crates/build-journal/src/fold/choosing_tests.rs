//! Which part goes where: from readings and parts on the bench to what stands
//! there, and what another part makes stale.

use super::*;
use crate::fact::samples::Pen;
use crate::fact::{
    BenchSide, Body, EngineDescribed, LimitsOrigin, LimitsSet, PartOnBench, PartsPlaced,
    PlacedPart, Reading, Spot, Struck, ToolListed,
};
use crate::id::{BuildId, FactId, PartId, ToolId};
use crate::journal::Journal;
use assembly_core::measure::Verdict;
use assembly_core::quantity::Si;
use build_plan::choice::{Choice, LASH_SHIMS, MAIN_SHELLS, PISTONS_TO_BORES, RODS_TO_PINS};
use build_plan::measure::{
    BORE, MAIN_BEARING_BORE, MAIN_HOUSING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE,
    PISTON_DIAMETER, PISTON_TO_WALL, ROD_BEARING_BORE, ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE,
    VALVE_LASH,
};
use build_plan::proof::Proof;
use build_plan::{At, Direction, Measure, Place, Station, ValveSide};

pub(super) struct Book {
    pen: Pen,
    journal: Journal,
}

const MICROMETER: u128 = 1;
const BLADES: u128 = 2;

impl Book {
    pub(super) fn new(cylinders: u32, built: Vec<(&'static str, String)>) -> Self {
        let mut book = Self {
            pen: Pen::new(1),
            journal: Journal::new(BuildId::from_random(7)),
        };
        book.write(Body::EngineDescribed(EngineDescribed {
            name: "shed twin".to_owned(),
            cylinders,
            layout: "inline".to_owned(),
            bank_angle: None,
            mains: Some(2),
            built,
        }));
        for (tool, instrument) in [
            (MICROMETER, "outside-micrometer-proved"),
            (BLADES, "feeler-blades"),
        ] {
            book.write(Body::ToolListed(ToolListed {
                tool: ToolId::from_random(tool),
                name: instrument.to_owned(),
                instrument: instrument.to_owned(),
                mark: None,
            }));
        }
        book
    }

    fn write(&mut self, body: Body) -> FactId {
        let fact = self.pen.write(body);
        let id = fact.id();
        self.journal.take(fact);
        id
    }

    pub(super) fn read(&mut self, measure: &Measure, place: Place, typed: &str) -> FactId {
        let tool = if measure.id == VALVE_LASH.id {
            BLADES
        } else {
            MICROMETER
        };
        self.write(Body::Reading(
            Reading {
                measure: measure.id.to_owned(),
                place: Spot::Known(place),
                typed: typed.to_owned(),
                unit: "mm".to_owned(),
                tool: Some(ToolId::from_random(tool)),
                setting: None,
                temperature: None,
                condition: None,
                keyed: None,
            }
            .into(),
        ))
    }

    pub(super) fn limits(&mut self, measure: &Measure, low: Option<&str>, high: Option<&str>) {
        self.write(Body::LimitsSet(LimitsSet {
            measure: measure.id.to_owned(),
            place: None,
            low: low.map(str::to_owned),
            high: high.map(str::to_owned),
            unit: "mm".to_owned(),
            origin: LimitsOrigin::Sheet,
            origin_note: "page 12".to_owned(),
            replaces: Vec::new(),
        }));
    }

    fn part(&mut self, choice: &Choice, number: u128, name: &str, size: &str) -> PartOnBench {
        let part = PartOnBench {
            part: PartId::from_random(number),
            choice: choice.id.to_owned(),
            name: name.to_owned(),
            size: size.to_owned(),
            unit: "mm".to_owned(),
            tool: Some(ToolId::from_random(MICROMETER)),
            setting: None,
            side: None,
            steps: None,
            make: None,
            place: None,
        };
        self.write(Body::PartOnBench(part.clone()));
        part
    }

    fn shell(&mut self, number: u128, name: &str, wall: &str, side: BenchSide) {
        let part = self.part(&MAIN_SHELLS, number, name, wall);
        let side = Some(side);
        self.write(Body::PartOnBench(PartOnBench { side, ..part }));
    }

    pub(super) fn build(&self) -> Build {
        let build = fold(&self.journal);
        assert!(build.problems.is_empty(), "{:?}", build.problems);
        build
    }

    /// Accepts what was chosen, as the screen does.
    fn accept(&mut self, chosen: &Chosen) -> FactId {
        let words = |_: &ChosenPlace| ("in words".to_owned(), "0.04 mm".to_owned());
        let placed = self.build().accepted(chosen, words);
        self.write(Body::PartsPlaced(placed))
    }
}

fn on_main(main: u8, direction: Direction) -> Place {
    Place::main(main)
        .station(Station::Front)
        .direction(direction)
}

/// A one-lunger with two mains: housings 56.000, journals 52.000 and 51.990.
fn one_lunger() -> Book {
    let mut book = Book::new(1, Vec::new());
    book.limits(&MAIN_OIL_CLEARANCE, Some("0.03"), Some("0.05"));
    for (main, journal) in [(1, "52.000"), (2, "51.990")] {
        book.read(
            &MAIN_HOUSING_BORE,
            on_main(main, Direction::UpAndDown),
            "56.000",
        );
        // Stretched across: it says nothing of the clearance.
        book.read(
            &MAIN_HOUSING_BORE,
            on_main(main, Direction::SixtyLeft),
            "55.900",
        );
        book.read(
            &MAIN_JOURNAL_DIAMETER,
            on_main(main, Direction::Across),
            journal,
        );
    }
    book
}

fn words(missing: &[Lacking]) -> Vec<String> {
    missing.iter().map(ToString::to_string).collect()
}

fn millimetres(place: &ChosenPlace) -> f64 {
    (place.gives.value().to_si() * 1e6).round() / 1e3
}

// 56.000 − 52.000 − 2 × 1.980 = 0.040; 56.000 − 51.990 − 1.980 − 1.990 = 0.040.
#[test]
fn the_thick_half_goes_where_the_journal_is_thin() {
    let mut book = one_lunger();
    book.shell(1, "A", "1.990", BenchSide::Lower);
    book.shell(2, "B", "1.980", BenchSide::Lower);
    book.shell(3, "C", "1.980", BenchSide::Upper);
    book.shell(4, "D", "1.980", BenchSide::Upper);
    let chosen = book
        .build()
        .choose(&MAIN_SHELLS, Wishes::default())
        .unwrap();
    let lower: Vec<&str> = (chosen.places.iter())
        .map(|one| match &one.part {
            ChosenPart::Halves([_, (_, lower)]) => lower.as_str(),
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(lower, ["B", "A"]);
    assert_eq!(
        chosen.places.iter().map(millimetres).collect::<Vec<_>>(),
        [0.04, 0.04]
    );
    let said = chosen.places[0].said.unwrap();
    assert_eq!(said.verdict, Verdict::Good);
    assert!(chosen.places[0].gives.give_or_take().to_si() > 0.0);
}

#[test]
fn whatever_is_missing_is_named() {
    let mut book = Book::new(1, Vec::new());
    book.read(
        &MAIN_HOUSING_BORE,
        on_main(1, Direction::UpAndDown),
        "56.000",
    );
    book.read(
        &MAIN_HOUSING_BORE,
        on_main(2, Direction::SixtyLeft),
        "56.000",
    );
    book.read(
        &MAIN_JOURNAL_DIAMETER,
        on_main(1, Direction::Across),
        "52.000",
    );
    book.shell(1, "A", "1.99O", BenchSide::Lower);
    let said = words(
        &book
            .build()
            .choose(&MAIN_SHELLS, Wishes::default())
            .unwrap_err(),
    );
    let has = |words: &str| assert!(said.iter().any(|one| one.contains(words)), "{said:?}");
    has("No limits are set yet");
    has("The main housing bore is not measured, or no longer counts: main 2.");
    has("The main journal diameter is not measured, or no longer counts: main 2.");
    has("4 half-shells are needed, and 1 is written down");
    has("The size of “A”:");
    book.limits(&MAIN_OIL_CLEARANCE, Some("0.03"), None);
    let said = words(
        &book
            .build()
            .choose(&MAIN_SHELLS, Wishes::default())
            .unwrap_err(),
    );
    assert!(
        said.iter().any(|one| one.contains("one side only")),
        "{said:?}"
    );
    let said = words(
        &book
            .build()
            .choose(&LASH_SHIMS, Wishes::default())
            .unwrap_err(),
    );
    assert_eq!(said, ["This engine has no such parts."]);
}

#[test]
fn a_wall_that_was_not_measured_gives_no_verdict() {
    let mut book = one_lunger();
    for (number, side) in [
        (1, BenchSide::Lower),
        (2, BenchSide::Lower),
        (3, BenchSide::Upper),
    ] {
        book.shell(number, "measured", "1.980", side);
    }
    let part = book.part(&MAIN_SHELLS, 4, "boxed", "1.980");
    book.write(Body::PartOnBench(PartOnBench {
        tool: None,
        side: Some(BenchSide::Upper),
        ..part
    }));
    let chosen = book
        .build()
        .choose(&MAIN_SHELLS, Wishes::default())
        .unwrap();
    assert_eq!(chosen.not_measured, ["boxed"]);
    assert!(chosen.places.iter().all(|one| one.said.is_none()));
}

#[test]
fn other_shells_make_the_bearing_stale_and_the_same_ones_do_not() {
    let mut book = one_lunger();
    for (number, side) in [
        (1, BenchSide::Lower),
        (2, BenchSide::Lower),
        (3, BenchSide::Upper),
        (4, BenchSide::Upper),
    ] {
        book.shell(number, "half", "1.980", side);
    }
    book.read(
        &MAIN_BEARING_BORE,
        on_main(1, Direction::UpAndDown),
        "52.040",
    );
    let stale = |book: &Book| {
        let proof = Proof::Measure(&MAIN_BEARING_BORE);
        matches!(
            book.build().result(proof, At::Main(1)),
            ResultState::Stale(_)
        )
    };
    let chosen = book
        .build()
        .choose(&MAIN_SHELLS, Wishes::default())
        .unwrap();
    let accepted = book.accept(&chosen);
    assert!(stale(&book));
    let put = book
        .build()
        .places
        .put_at(&MAIN_SHELLS, At::Main(1))
        .unwrap()
        .clone();
    assert_eq!(
        (put.fact, put.parts.len(), put.what.as_str()),
        (accepted, 2, "in words")
    );
    book.read(
        &MAIN_BEARING_BORE,
        on_main(1, Direction::UpAndDown),
        "52.041",
    );
    assert!(!stale(&book));
    book.accept(&chosen);
    assert!(!stale(&book));
}

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
    let chosen = book
        .build()
        .choose(&PISTONS_TO_BORES, Wishes::default())
        .unwrap();
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
    let lost = words(
        &book
            .build()
            .choose(&PISTONS_TO_BORES, Wishes::default())
            .unwrap_err(),
    );
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
    let chosen = book
        .build()
        .choose(&PISTONS_TO_BORES, Wishes::default())
        .unwrap();
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
    let chosen = book
        .build()
        .choose(&RODS_TO_PINS, Wishes::default())
        .unwrap();
    assert_eq!(chosen.places[0].part, ChosenPart::Of(At::Rod(2)));
    assert_eq!(
        chosen.places.iter().map(millimetres).collect::<Vec<_>>(),
        [0.04, 0.04]
    );
}

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
            let said = words(
                &book
                    .build()
                    .choose(&LASH_SHIMS, Wishes::default())
                    .unwrap_err(),
            );
            assert!(
                said.iter().any(|one| one.contains("which shim is in now")),
                "{said:?}"
            );
        }
        let place = Some(Spot::Known(Place::of(*at)));
        book.write(Body::PartOnBench(PartOnBench { place, ..part }));
    }
    let chosen = book.build().choose(&LASH_SHIMS, Wishes::default()).unwrap();
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
    let said = words(
        &book
            .build()
            .choose(&LASH_SHIMS, Wishes::default())
            .unwrap_err(),
    );
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

#[test]
fn what_is_not_of_this_engine_or_not_known_here_is_told() {
    let mut book = one_lunger();
    let placed = |choice: &str, at: At| {
        Body::PartsPlaced(PartsPlaced {
            choice: choice.to_owned(),
            placed: vec![PlacedPart {
                place: Spot::Known(Place::of(at)),
                what: "a part".to_owned(),
                parts: Vec::new(),
                from: None,
                gives: None,
            }],
        })
    };
    book.write(placed("main-shells", At::Main(9)));
    book.write(placed("gudgeon-left", At::Main(1)));
    let build = fold(&book.journal);
    let said: Vec<&str> = build.problems.iter().map(|one| one.text.as_str()).collect();
    assert_eq!(said.len(), 2, "{said:?}");
    assert!(said[0].contains("this engine does not have"), "{said:?}");
    assert!(said[1].contains("gudgeon-left"), "{said:?}");
}
