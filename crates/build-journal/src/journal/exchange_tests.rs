//! Three devices that edit one build apart and exchange files.

use proptest::prelude::*;

use super::*;
use crate::fact::samples::{Pen, body, sprayer};
use crate::fact::{
    Body, LimitsOrigin, LimitsSet, Reading, ReadingsStand, Spot, Struck, ToolListed,
};
use crate::file::{export, import};
use crate::fold::{Conflict, conflicts, fold};
use crate::id::{BuildId, ToolId};
use build_plan::{Direction, Place, Station};

/// What goes on in two garages and a shop.
#[derive(Clone, Debug)]
enum Turn {
    /// A device writes something down.
    Writes(usize, Box<Body>),
    /// A device hands its file to another, which has seen it then.
    Hands(usize, usize),
}

const DEVICES: usize = 3;

fn turns() -> impl Strategy<Value = Vec<Turn>> {
    let turn = prop_oneof![
        3 => (0..DEVICES, body()).prop_map(|(device, body)| Turn::Writes(device, Box::new(body))),
        2 => (0..DEVICES, 0..DEVICES).prop_map(|(from, to)| Turn::Hands(from, to)),
    ];
    prop::collection::vec(turn, 0..40)
}

struct Device {
    journal: Journal,
    pen: Pen,
}

fn devices() -> Vec<Device> {
    (0..DEVICES)
        .map(|number| Device {
            journal: Journal::new(BuildId::from_random(7)),
            pen: Pen::new(u128::try_from(number).unwrap()),
        })
        .collect()
}

/// A file goes from one device to another.
fn hand(devices: &mut [Device], from: usize, to: usize) {
    let file = export(&devices[from].journal);
    let came = import(file.as_bytes()).unwrap().journal;
    for fact in came.facts() {
        devices[to].pen.observe(fact);
    }
    devices[to].journal.merge(&came).unwrap();
}

proptest! {
    #[test]
    fn whoever_edits_and_whoever_hands_on_all_end_equal_byte_for_byte(
        turns in turns(),
        order in Just((0..DEVICES).flat_map(|from| (0..DEVICES).map(move |to| (from, to)))
            .collect::<Vec<_>>()).prop_shuffle(),
    ) {
        let mut devices = devices();
        for turn in turns {
            match turn {
                Turn::Writes(device, body) => {
                    // As the app does: with what is in view.
                    let journal = &devices[device].journal;
                    let in_view = fold(journal).in_view(journal, &body);
                    let fact = devices[device].pen.write_in_view(*body, in_view);
                    devices[device].journal.take(fact);
                }
                Turn::Hands(from, to) => hand(&mut devices, from, to),
            }
        }
        // Any order at all, twice: what one has not, another hands on.
        for (from, to) in order.iter().chain(order.iter()) {
            hand(&mut devices, *from, *to);
        }
        let file = export(&devices[0].journal);
        let build = fold(&devices[0].journal);
        for device in &devices[1..] {
            prop_assert_eq!(&export(&device.journal), &file);
            prop_assert_eq!(&fold(&device.journal), &build);
            prop_assert!(conflicts(&device.journal) == conflicts(&devices[0].journal));
        }
    }
}

fn reading(typed: &str) -> Body {
    let place = Place::main(2)
        .station(Station::Front)
        .direction(Direction::UpAndDown);
    Body::Reading(
        Reading {
            measure: "main-journal-diameter".to_owned(),
            place: Spot::Known(place),
            typed: typed.to_owned(),
            unit: "in".to_owned(),
            tool: Some(ToolId::from_random(1)),
            setting: None,
            temperature: None,
            condition: None,
            keyed: None,
        }
        .into(),
    )
}

fn limits(high: &str) -> Body {
    Body::LimitsSet(LimitsSet {
        measure: "main-oil-clearance".to_owned(),
        place: None,
        low: Some("1.5".to_owned()),
        high: Some(high.to_owned()),
        unit: "thou".to_owned(),
        origin: LimitsOrigin::Sheet,
        origin_note: "page 41".to_owned(),
        replaces: Vec::new(),
    })
}

/// What a phone and a tablet say of the same thing, after an exchange.
fn both(here: Body, there: Body) -> Vec<Conflict> {
    let mut devices = devices();
    let start = [
        sprayer(),
        Body::ToolListed(ToolListed {
            tool: ToolId::from_random(1),
            name: "micrometer".to_owned(),
            instrument: "outside-micrometer-tenths".to_owned(),
            mark: None,
        }),
    ];
    for body in start {
        let fact = devices[0].pen.write(body);
        devices[0].journal.take(fact);
    }
    hand(&mut devices, 0, 1);
    for (device, body) in [(0, here), (1, there)] {
        let fact = devices[device].pen.write(body);
        devices[device].journal.take(fact);
    }
    hand(&mut devices, 0, 1);
    hand(&mut devices, 1, 0);
    assert_eq!(export(&devices[0].journal), export(&devices[1].journal));
    conflicts(&devices[0].journal)
}

#[test]
fn limits_that_two_devices_set_differently_are_shown_and_not_decided() {
    let found = both(limits("2.5"), limits("3.0"));
    assert!(matches!(&found[..], [Conflict::Limits { limits }] if limits.len() == 2));
    assert_eq!(found[0].facts().len(), 2);
    assert!(
        both(limits("2.5"), limits("2.50")).is_empty(),
        "the same limits"
    );
}

#[test]
fn readings_of_one_place_too_far_apart_are_shown_and_near_ones_are_not() {
    let found = both(reading("2.4500"), reading("2.4530"));
    assert!(
        matches!(&found[..], [Conflict::Readings { readings, .. }] if readings.len() == 2),
        "{found:?}"
    );
    assert!(both(reading("2.4500"), reading("2.4501")).is_empty());
}

#[test]
fn readings_that_were_said_to_stand_side_by_side_are_not_asked_about_again() {
    let mut devices = devices();
    let write = |devices: &mut [Device], device: usize, body: Body| {
        let fact = devices[device].pen.write(body);
        devices[device].journal.take(fact.clone());
        fact.id()
    };
    write(&mut devices, 0, sprayer());
    write(
        &mut devices,
        0,
        Body::ToolListed(ToolListed {
            tool: ToolId::from_random(1),
            name: "micrometer".to_owned(),
            instrument: "outside-micrometer-tenths".to_owned(),
            mark: None,
        }),
    );
    hand(&mut devices, 0, 1);
    let low = write(&mut devices, 0, reading("2.4500"));
    let high = write(&mut devices, 1, reading("2.4530"));
    hand(&mut devices, 1, 0);
    assert_eq!(conflicts(&devices[0].journal).len(), 1);
    let before = fold(&devices[0].journal);
    let stand = Body::ReadingsStand(ReadingsStand {
        readings: vec![low, high],
        words: None,
    });
    let stand = write(&mut devices, 0, stand);
    assert!(conflicts(&devices[0].journal).is_empty());
    // They stay averaged: nothing else has changed.
    let after = fold(&devices[0].journal);
    assert_eq!(after.mains, before.mains);
    assert!(after.fits().eq(before.fits()));
    // One that lies near one of them raises nothing by itself; one far off does.
    hand(&mut devices, 0, 1);
    write(&mut devices, 1, reading("2.4529"));
    hand(&mut devices, 1, 0);
    let again = conflicts(&devices[0].journal);
    assert_eq!(again.len(), 1, "the third is as far from the first");
    write(
        &mut devices,
        0,
        Body::Struck(Struck {
            fact: low,
            reason: None,
        }),
    );
    assert!(conflicts(&devices[0].journal).is_empty());
    // Who takes it back is asked again.
    let mut alone = devices.remove(0);
    let strike = |fact| Body::Struck(Struck { fact, reason: None });
    let strike_of_low = alone.journal.facts().next_back().unwrap().id();
    for fact in [strike_of_low, stand] {
        let fact = alone.pen.write(strike(fact));
        alone.journal.take(fact);
    }
    assert_eq!(conflicts(&alone.journal).len(), 1);
}
