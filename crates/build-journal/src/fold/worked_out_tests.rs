//! What stands behind a result: its workings with the numbers, and what would
//! settle it.

use super::choosing_tests::Book;
use super::*;
use assembly_core::measure::{MoreReadings, Verdict};
use assembly_core::quantity::unit;
use build_plan::measure::{BORE, BORE_TAPER, PISTON_DIAMETER, PISTON_TO_WALL};
use build_plan::{At, Direction, Measure, Place, Station};

const CYLINDER: At = At::Cylinder(1);

fn at(station: Station) -> Place {
    Place::of(CYLINDER)
        .station(station)
        .direction(Direction::Thrust)
}

/// A bore of 92.000 at the top, twice read, and 92.020 at the bottom; a piston.
fn book(piston: &str) -> Book {
    let mut book = Book::new(1, Vec::new());
    book.limits(&PISTON_TO_WALL, Some("0.04"), Some("0.09"));
    book.read(&BORE, at(Station::Bottom), "92.020");
    book.read(&BORE, at(Station::Top), "92.001");
    book.read(&BORE, at(Station::Top), "91.999");
    book.read(&PISTON_DIAMETER, Place::of(CYLINDER), piston);
    book
}

fn workings(build: &Build, measure: &'static Measure) -> Vec<String> {
    let fit = build.fit(measure, CYLINDER).unwrap();
    let (least, greatest) = fit.extent.clone().unwrap();
    let mm = unit("mm").unwrap();
    build.workings(
        measure,
        CYLINDER,
        (least.estimate(), greatest.estimate()),
        mm,
    )
}

#[test]
fn a_difference_says_every_reading_and_what_was_taken_from_what() {
    let build = book("91.950").build();
    let lines = workings(&build, &PISTON_TO_WALL);
    assert_eq!(lines.len(), 5, "{lines:?}");
    assert!(
        lines[0].starts_with(
            "cylinder bore, top of ring travel, thrust, across the crank: 92.001 mm, 91.999 mm; mean 92.000"
        ),
        "{lines:?}"
    );
    assert_eq!(
        lines[1],
        "cylinder bore, bottom, thrust, across the crank: 92.020 mm"
    );
    assert_eq!(lines[2], "piston diameter, cylinder 1: 91.950 mm");
    assert!(
        lines[3].starts_with("least = smallest cylinder bore − largest piston diameter = 0.050"),
        "{lines:?}"
    );
    assert!(lines[4].starts_with("greatest 0.070"), "{lines:?}");
}

#[test]
fn a_spread_and_what_was_read_itself_have_their_workings_too() {
    let build = book("91.950").build();
    let taper = workings(&build, &BORE_TAPER);
    assert!(taper[2].contains("largest − smallest = 0.020"), "{taper:?}");
    let bore = workings(&build, &BORE);
    assert!(bore[2].starts_with("least 92.000"), "{bore:?}");
    assert!(bore[3].starts_with("greatest 92.020"), "{bore:?}");
    // Nothing was read at the second cylinder.
    assert_eq!(build.read_at(&BORE, At::Cylinder(2)), []);
}

#[test]
fn what_is_read_at_a_place_is_the_mean_with_its_doubt() {
    let read = book("91.950").build().read_at(&BORE, CYLINDER);
    let top = &read[0];
    assert_eq!((top.place, top.typed.len()), (at(Station::Top), 2));
    assert!((top.mean.value() - 0.092).abs() < 1e-9 && top.mean.deviation() > 0.0);
}

#[test]
fn what_is_too_close_to_call_says_what_would_settle_it_and_what_is_clear_does_not() {
    let settling = |piston: &str| {
        let build = book(piston).build();
        let fit = build.fit(&PISTON_TO_WALL, CYLINDER).unwrap();
        (fit.standing.verdict(), build.settling(fit))
    };
    assert_eq!(settling("91.940"), (Some(Verdict::Good), None));
    // A micrometre from the limit, with one piston read once.
    let (verdict, found) = settling("91.959");
    assert_eq!(verdict, Some(Verdict::TooCloseToCall));
    let found = found.unwrap();
    assert_ne!(found.more, MoreReadings::NotNeeded);
    assert!(
        found.sentence().contains("settle it"),
        "{}",
        found.sentence()
    );
}
