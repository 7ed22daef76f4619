//! The meaning of last digits, and questions about slips, in whole builds.

use super::written::{With, Written, book};
use super::*;
use crate::fact::{Body, EngineDescribed, SetOn, Struck, ToolSet};
use crate::id::{FactId, SettingId, ToolId};
use assembly_core::fit::running_clearance::NeedleSense;
use assembly_core::quantity::unit;
use assembly_core::typing_sense::Slip;
use build_plan::measure::{BORE, MAIN_JOURNAL_DIAMETER, RING_END_GAP};
use build_plan::{At, Direction, Measure, Place, Ring, Station};

const MICROMETER: u128 = 1;
const GAUGE: u128 = 2;

book! {
    /// A vee eight, a micrometer and a gauge.
    Book
}

impl Book {
    fn new() -> Self {
        let engine = Body::EngineDescribed(EngineDescribed {
            name: "shop eight".to_owned(),
            cylinders: 8,
            layout: "vee".to_owned(),
            bank_angle: Some("90°".to_owned()),
            mains: None,
            built: vec![],
        });
        Self(Written::of(
            engine,
            &[
                (MICROMETER, "outside-micrometer-tenths"),
                (GAUGE, "bore-gauge-tenths"),
            ],
        ))
    }

    fn read(&mut self, measure: &Measure, place: Place, typed: &str, with: With) -> FactId {
        self.reads((measure.id, place), (typed, "in"), with, None)
    }

    fn journal(&mut self, main: u8, station: Station, typed: &str) -> FactId {
        let place = Place::main(main)
            .station(station)
            .direction(Direction::UpAndDown);
        self.read(&MAIN_JOURNAL_DIAMETER, place, typed, (MICROMETER, None))
    }

    fn meaning(
        &self,
        measure: &'static Measure,
        place: Place,
        text: &str,
        set: (u128, Option<u128>),
    ) -> Vec<String> {
        let set = (
            Some(ToolId::from_random(set.0)),
            set.1.map(SettingId::from_random),
        );
        let meant = fold(&self.journal)
            .beside(measure, place, set)
            .meaning(text, unit("in").unwrap());
        meant.iter().map(|one| one.text().to_owned()).collect()
    }

    fn asked(&self, fact: FactId) -> Vec<String> {
        let questions = fold(&self.journal).questions_of(fact);
        questions
            .iter()
            .map(|one| one.likely.text().to_owned())
            .collect()
    }
}

fn front(main: u8) -> Place {
    Place::main(main)
        .station(Station::Front)
        .direction(Direction::UpAndDown)
}

#[test]
fn last_digits_go_by_the_place_itself_then_by_the_latest_of_the_others() {
    let mut book = Book::new();
    let of = |book: &Book, main| {
        book.meaning(
            &MAIN_JOURNAL_DIAMETER,
            front(main),
            "91",
            (MICROMETER, None),
        )
    };
    assert!(of(&book, 1).is_empty(), "nothing to go by");
    book.journal(1, Station::Front, "2.4483");
    assert_eq!(of(&book, 2), ["2.4491"]);
    let last = book.journal(2, Station::Rear, "2.4683");
    assert_eq!(of(&book, 2), ["2.4691"]);
    assert_eq!(of(&book, 1), ["2.4491"]);
    book.write(Body::Struck(Struck {
        fact: last,
        reason: None,
    }));
    assert_eq!(of(&book, 2), ["2.4491"], "what is struck out says nothing");
}

#[test]
fn a_needle_stands_beside_its_own_setting_only() {
    let mut book = Book::new();
    let place = |cylinder| {
        Place::of(At::Cylinder(cylinder))
            .station(Station::Top)
            .direction(Direction::Thrust)
    };
    for (setting, needle) in [(1, Some(NeedleSense::ClockwiseIsSmaller)), (2, None)] {
        book.write(Body::ToolSet(ToolSet {
            tool: ToolId::from_random(GAUGE),
            setting: SettingId::from_random(setting),
            set_on: SetOn::Standard,
            set_at: Some("4.0000".to_owned()),
            unit: Some("in".to_owned()),
            locked_at: None,
            needle,
        }));
    }
    book.read(&BORE, place(1), "0.0012", (GAUGE, Some(1)));
    assert!(
        book.meaning(&BORE, place(2), "31", (GAUGE, Some(2)))
            .is_empty()
    );
    book.read(&BORE, place(1), "4.0028", (GAUGE, Some(2)));
    assert_eq!(
        book.meaning(&BORE, place(2), "31", (GAUGE, Some(2))),
        ["4.0031"]
    );
    // The sign turned round, among needle readings that agree.
    for cylinder in 2..6 {
        book.read(&BORE, place(cylinder), "0.0120", (GAUGE, Some(1)));
    }
    let turned = book.read(&BORE, place(6), "-0.0121", (GAUGE, Some(1)));
    let asked = fold(&book.journal).questions_of(turned);
    assert_eq!(asked[0].slip, Slip::Sign);
}

#[test]
fn a_turn_of_the_thimble_is_asked_about_and_an_ordinary_reading_is_not() {
    let mut book = Book::new();
    let first = book.journal(1, Station::Front, "2.4483");
    assert!(book.asked(first).is_empty(), "nothing to go by");
    for main in 2..5 {
        let ordinary = book.journal(main, Station::Front, "2.4481");
        assert!(book.asked(ordinary).is_empty(), "main {main}");
    }
    let slip = book.journal(5, Station::Front, "2.4733");
    let asked = fold(&book.journal).questions_of(slip);
    assert_eq!(
        (asked[0].slip, asked[0].likely.text()),
        (Slip::ThimbleTurn, "2.4483 in")
    );
    let ten = book.journal(5, Station::Rear, "24.483");
    assert_eq!(book.asked(ten)[0], "2.4483 in");
    book.write(Body::Struck(Struck {
        fact: ten,
        reason: None,
    }));
    let swapped = book.journal(5, Station::Rear, "2.4843");
    assert_eq!(book.asked(swapped)[0], "2.4483 in");
    // Worn by a thou and a half, and honest.
    let worn = book.journal(4, Station::Rear, "2.4466");
    assert!(book.asked(worn).is_empty());
    book.write(Body::Struck(Struck {
        fact: slip,
        reason: None,
    }));
    assert!(
        book.asked(slip).is_empty(),
        "what is struck out is not asked about"
    );
}

#[test]
fn a_gap_in_the_other_unit_is_asked_about() {
    let mut book = Book::new();
    let place = |cylinder| {
        Place::of(At::Ring {
            cylinder,
            ring: Ring::Top,
        })
    };
    for cylinder in 1..5 {
        let gap = book.read(&RING_END_GAP, place(cylinder), "0.017", (9, None));
        assert!(book.asked(gap).is_empty());
    }
    let slip = book.read(&RING_END_GAP, place(5), "0.17", (9, None));
    assert_eq!(book.asked(slip)[0], "0.017 in");
}
