//! Any measure at any part, and what follows from others.

use super::written::{Written, book};
use super::*;
use crate::fact::samples::limits;
use crate::fact::{Body, EngineDescribed, LimitsSet, Struck};
use crate::id::FactId;
use assembly_core::measure::Verdict;
use assembly_core::quantity::Si;
use build_plan::measure::{
    BORE, BORE_OUT_OF_ROUND, BORE_TAPER, CRANK_END_PLAY, LINER_STAND_OUT, LINER_STEP, OIL_PRESSURE,
    PISTON_DIAMETER, PISTON_TO_WALL, ROD_BEARING_BORE, ROD_JOURNAL_DIAMETER, ROD_SIDE_CLEARANCE,
};
use build_plan::{At, Direction, Measure, Place, Station};

const THOU: f64 = 0.0254e-3;

book! {
    /// A vee eight with wet liners, and three tools.
    Book
}

const MICROMETER: u128 = 1;
const INDICATOR: u128 = 2;
const OIL_GAUGE: u128 = 3;

impl Book {
    fn new() -> Self {
        let engine = Body::EngineDescribed(EngineDescribed {
            name: "shop eight".to_owned(),
            cylinders: 8,
            layout: "vee".to_owned(),
            bank_angle: Some("90°".to_owned()),
            mains: None,
            built: vec![("liners", "wet-top-flange".to_owned())],
        });
        Self(Written::of(
            engine,
            &[
                (MICROMETER, "outside-micrometer-proved"),
                (INDICATOR, "dial-indicator"),
                (OIL_GAUGE, "mechanical-oil-gauge"),
            ],
        ))
    }

    fn read(&mut self, measure: &Measure, place: Place, typed: &str, tool: u128) -> FactId {
        let typed = (typed, measure.units.inch);
        self.reads((measure.id, place), typed, (tool, None), None)
    }

    fn bore(&mut self, cylinder: u8, station: Station, direction: Direction, typed: &str) {
        let place = Place::of(At::Cylinder(cylinder))
            .station(station)
            .direction(direction);
        self.read(&BORE, place, typed, MICROMETER);
    }

    fn build(&self) -> Build {
        fold(&self.journal)
    }

    /// Least and greatest of a measure, in thou.
    fn thou(&self, measure: &Measure, at: At) -> Option<(f64, f64)> {
        let build = self.build();
        let (least, greatest) = build.fit(measure, at)?.extent.clone()?;
        let in_thou = |si: f64| (si / THOU * 1e6).round() / 1e6;
        Some((
            in_thou(least.value().to_si()),
            in_thou(greatest.value().to_si()),
        ))
    }
}

#[test]
fn a_bores_taper_and_out_of_round_follow_from_its_readings() {
    let mut book = Book::new();
    for (station, thrust, axial) in [
        (Station::Top, "4.0312", "4.0304"),
        (Station::Middle, "4.0306", "4.0302"),
        (Station::Bottom, "4.0301", "4.0301"),
    ] {
        book.bore(3, station, Direction::Thrust, thrust);
        book.bore(3, station, Direction::Axial, axial);
    }
    let here = At::Cylinder(3);
    assert_eq!(book.thou(&BORE, here), Some((4030.1, 4031.2)));
    assert_eq!(book.thou(&BORE_TAPER, here), Some((1.1, 1.1)));
    assert_eq!(book.thou(&BORE_OUT_OF_ROUND, here), Some((0.8, 0.8)));
    assert_eq!(book.thou(&BORE, At::Cylinder(4)), None);
    let build = book.build();
    assert_eq!(build.fit(&BORE, here).unwrap().places, 6);
    let practice = build
        .fit(&BORE_TAPER, here)
        .unwrap()
        .common_practice
        .unwrap();
    assert!((practice.high().unwrap() - 0.5 * THOU).abs() < 1e-12);
}

#[test]
fn piston_to_wall_is_the_smallest_bore_less_the_piston() {
    let mut book = Book::new();
    book.bore(1, Station::Top, Direction::Thrust, "4.0310");
    book.bore(1, Station::Bottom, Direction::Thrust, "4.0305");
    assert_eq!(book.thou(&PISTON_TO_WALL, At::Cylinder(1)), None);
    book.read(
        &PISTON_DIAMETER,
        Place::of(At::Cylinder(1)),
        "4.0285",
        MICROMETER,
    );
    assert_eq!(
        book.thou(&PISTON_TO_WALL, At::Cylinder(1)),
        Some((2.0, 2.5))
    );
    // Both were read with one micrometer, so its zero is in neither difference.
    let build = book.build();
    let fit = build.fit(&PISTON_TO_WALL, At::Cylinder(1)).unwrap();
    let (least, _) = fit.extent.as_ref().unwrap();
    let bore = build.fit(&BORE, At::Cylinder(1)).unwrap();
    let bore = bore.extent.as_ref().unwrap().0.give_or_take().to_si();
    assert!(least.give_or_take().to_si() < bore * 2.0_f64.sqrt());
}

#[test]
fn the_step_between_liners_is_looked_at_bank_by_bank() {
    let mut book = Book::new();
    // Numbered from side to side: 1, 3, 5, 7 stand in the first bank.
    for (cylinder, height) in [(1, "4.0"), (2, "9.0"), (3, "5.5"), (5, "4.5"), (7, "4.5")] {
        let place = Place::of(At::Cylinder(cylinder)).station(Station::FrontSide);
        book.read(&LINER_STAND_OUT, place, height, INDICATOR);
    }
    assert_eq!(book.thou(&LINER_STEP, At::Bank(1)), Some((1.5, 1.5)));
    assert_eq!(book.thou(&LINER_STEP, At::Bank(2)), None);
}

#[test]
fn limits_make_a_verdict_of_it_and_struck_readings_do_not_count() {
    let mut book = Book::new();
    let engine = Place::of(At::Engine);
    let slip = book.read(&CRANK_END_PLAY, engine, "40", INDICATOR);
    book.read(&CRANK_END_PLAY, engine, "5.5", INDICATOR);
    book.write(Body::LimitsSet(LimitsSet {
        measure: CRANK_END_PLAY.id.to_owned(),
        ..limits("4", "10")
    }));
    let verdict = |book: &Book| {
        let build = book.build();
        build
            .fit(&CRANK_END_PLAY, At::Engine)
            .unwrap()
            .standing
            .verdict()
    };
    assert_eq!(verdict(&book), Some(Verdict::Bad));
    book.write(Body::Struck(Struck {
        fact: slip,
        reason: None,
    }));
    assert_eq!(verdict(&book), Some(Verdict::Good));
}

#[test]
fn a_tool_that_does_not_read_such_a_thing_gives_no_verdict() {
    let mut book = Book::new();
    let idle = Place::of(At::Engine).station(Station::Idle);
    book.read(&OIL_PRESSURE, idle, "22", MICROMETER);
    let build = book.build();
    let fit = build.fit(&OIL_PRESSURE, At::Engine).unwrap();
    assert!(fit.extent.is_none());
    assert!(matches!(&fit.standing, FitStanding::Open(missing)
        if matches!(missing[0], Missing::KnownTool { .. })));
    let mut book = Book::new();
    book.read(&OIL_PRESSURE, idle, "22", OIL_GAUGE);
    let build = book.build();
    let (least, _) = build
        .fit(&OIL_PRESSURE, At::Engine)
        .unwrap()
        .extent
        .clone()
        .unwrap();
    assert!(
        (least.value().to_si() - 151_684.66).abs() < 0.01,
        "psi, by its exact factor"
    );
}

#[test]
fn two_rods_share_the_readings_of_their_crankpin() {
    let mut book = Book::new();
    let pin = Place::of(At::Crankpin(2))
        .station(Station::Front)
        .direction(Direction::UpAndDown);
    book.read(&ROD_JOURNAL_DIAMETER, pin, "2.1000", MICROMETER);
    for cylinder in [3, 4] {
        let rod = Place::of(At::Rod(cylinder))
            .station(Station::Front)
            .direction(Direction::UpAndDown);
        let tenths = format!("2.10{}", 20 + cylinder);
        book.read(&ROD_BEARING_BORE, rod, &tenths, MICROMETER);
    }
    let build = book.build();
    let clearance = |cylinder: usize| {
        let fit = &build.rods[cylinder - 1].fit;
        fit.by_size
            .as_ref()
            .map(|one| (one.least.value().to_si() / THOU * 10.0).round())
    };
    assert_eq!(
        (clearance(3), clearance(4), clearance(5)),
        (Some(23.0), Some(24.0), None)
    );
    assert_eq!(build.rods[3].crankpin, 2);
    let practice = build.rods[2].fit.common_practice.unwrap();
    assert!((practice.high().unwrap() / THOU - 2.1).abs() < 1e-9);
}

#[test]
fn a_reading_at_a_part_of_another_sort_is_shown_elsewhere() {
    let mut book = Book::new();
    book.read(&ROD_SIDE_CLEARANCE, Place::main(1), "12", INDICATOR);
    book.read(&BORE, Place::of(At::Cylinder(9)), "4.03", MICROMETER);
    let build = book.build();
    assert_eq!(build.elsewhere.len(), 2);
    assert_eq!(build.fits().count(), 0);
}
