//! Half-shells.

use assembly_core::measure::Verdict;
use build_plan::choice::{LASH_SHIMS, MAIN_SHELLS};
use build_plan::measure::{
    MAIN_BEARING_BORE, MAIN_HOUSING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE,
};
use build_plan::proof::Proof;
use build_plan::{At, Direction, Place, Station};

use super::*;
use crate::fact::{BenchSide, PartsPlaced, PlacedPart, Spot};

impl Book {
    fn shell(&mut self, number: u128, name: &str, wall: &str, side: BenchSide) {
        let part = self.part(&MAIN_SHELLS, number, name, wall);
        let side = Some(side);
        self.write(Body::PartOnBench(PartOnBench { side, ..part }));
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

// 56.000 − 52.000 − 2 × 1.980 = 0.040; 56.000 − 51.990 − 1.980 − 1.990 = 0.040.
#[test]
fn the_thick_half_goes_where_the_journal_is_thin() {
    let mut book = one_lunger();
    book.shell(1, "A", "1.990", BenchSide::Lower);
    book.shell(2, "B", "1.980", BenchSide::Lower);
    book.shell(3, "C", "1.980", BenchSide::Upper);
    book.shell(4, "D", "1.980", BenchSide::Upper);
    let chosen = book.choose(&MAIN_SHELLS);
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
    let said = book.missing(&MAIN_SHELLS);
    let has = |words: &str| assert!(said.iter().any(|one| one.contains(words)), "{said:?}");
    has("No limits are set yet");
    has("The main housing bore is not measured, or no longer counts: main 2.");
    has("The main journal diameter is not measured, or no longer counts: main 2.");
    has("4 half-shells are needed, and 1 is written down");
    has("The size of “A”:");
    book.limits(&MAIN_OIL_CLEARANCE, Some("0.03"), None);
    let said = book.missing(&MAIN_SHELLS);
    assert!(
        said.iter().any(|one| one.contains("one side only")),
        "{said:?}"
    );
    let said = book.missing(&LASH_SHIMS);
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
    let chosen = book.choose(&MAIN_SHELLS);
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
    let chosen = book.choose(&MAIN_SHELLS);
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
