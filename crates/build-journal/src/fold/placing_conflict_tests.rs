//! Which part goes where, accepted in two ways by two devices.

use build_plan::choice::{LASH_SHIMS, PISTONS_TO_BORES};
use build_plan::measure::PISTON_DIAMETER;
use build_plan::proof::Proof;
use build_plan::{At, Place};
use proptest::prelude::*;

use super::devices::{Device, assert_none, exchange, two};
use super::{Conflict, Folding, ResultState, conflicts, fold};
use crate::fact::samples::{reading, sprayer};
use crate::fact::{Body, EngineDescribed, PartsPlaced, PlacedPart, Spot, Struck};
use crate::id::PartId;
use crate::journal::Journal;

fn cylinder(number: u8) -> Spot {
    Spot::Known(Place::of(At::Cylinder(number)))
}

/// The pistons that the cylinders get, from the first on, by where they came from.
pub(super) fn pistons(from: &[u8]) -> PartsPlaced {
    let placed = (1..).zip(from).map(|(at, from)| PlacedPart {
        place: cylinder(at),
        what: format!("the piston of cylinder {from}"),
        parts: Vec::new(),
        from: Some(cylinder(*from)),
        gives: Some("0.04 mm".to_owned()),
    });
    PartsPlaced {
        choice: PISTONS_TO_BORES.id.to_owned(),
        placed: placed.collect(),
    }
}

fn accepts(device: &mut Device, from: &[u8]) -> crate::id::FactId {
    device.write(Body::PartsPlaced(pistons(from)))
}

/// Where the pistons came from that go to the first two cylinders.
fn goes(device: &Device) -> [Option<At>; 2] {
    let build = device.build();
    [1, 2].map(|number| {
        let put = build.places.put_at(&PISTONS_TO_BORES, At::Cylinder(number));
        put.and_then(|put| put.from)
    })
}

const SWAPPED: [Option<At>; 2] = [Some(At::Cylinder(2)), Some(At::Cylinder(1))];
const AS_THEY_WERE: [Option<At>; 2] = [Some(At::Cylinder(1)), Some(At::Cylinder(2))];

#[test]
fn two_ways_unseen_by_each_other_are_shown_and_one_tap_lets_one_hold() {
    let mut devices = two();
    for main in [1, 2] {
        let place = Place::of(At::Cylinder(main));
        devices[0].write(reading(PISTON_DIAMETER.id, place, "3.4970"));
    }
    exchange(&mut devices);
    let stay = accepts(&mut devices[0], &[1, 2, 3, 4]);
    let swap = accepts(&mut devices[1], &[2, 1, 3, 4]);
    exchange(&mut devices);
    for device in &devices {
        let found = conflicts(&device.journal);
        assert!(
            matches!(&found[..], [Conflict::Placings { choice, said }]
                if choice.id == "pistons" && said.len() == 2),
            "{found:?}"
        );
        assert_eq!(found[0].facts(), [stay, swap]);
        assert_eq!(goes(device), SWAPPED, "until then the later counts");
    }
    let moved = |device: &Device| {
        let proof = Proof::Measure(&PISTON_DIAMETER);
        let state = device.build().result(proof, At::Cylinder(1));
        matches!(state, ResultState::Stale(_))
    };
    assert!(moved(&devices[0]));
    devices[0].settle(stay);
    assert_none(&devices[0]);
    assert_eq!(goes(&devices[0]), AS_THEY_WERE);
    assert!(!moved(&devices[0]), "what it undid counts again");
    exchange(&mut devices);
    assert_none(&devices[1]);
    assert_eq!(devices[0].build(), devices[1].build());
    // Struck out, the decision is open again.
    let last = devices[1].journal.facts().next_back().unwrap().id();
    devices[1].write(Body::Struck(Struck {
        fact: last,
        reason: None,
    }));
    assert_eq!(conflicts(&devices[1].journal)[0].facts(), [stay, swap]);
}

#[test]
fn the_same_way_twice_and_another_way_by_who_knew_of_the_first_are_no_contradiction() {
    let mut devices = two();
    accepts(&mut devices[0], &[2, 1, 3, 4]);
    let mut elsewhere = pistons(&[2, 1, 3, 4]);
    for one in &mut elsewhere.placed {
        // Worked out from other readings: it gives something else.
        one.gives = Some("0.05 mm".to_owned());
    }
    elsewhere.placed.reverse();
    devices[1].write(Body::PartsPlaced(elsewhere));
    exchange(&mut devices);
    assert_none(&devices[0]);
    accepts(&mut devices[0], &[1, 2, 3, 4]);
    exchange(&mut devices);
    assert_none(&devices[1]);
    assert_eq!(goes(&devices[1]), AS_THEY_WERE);
    // Facts of the first version had everything before them in view.
    devices[0].write_with(Body::PartsPlaced(pistons(&[2, 1])), None);
    devices[1].write_with(Body::PartsPlaced(pistons(&[1, 2])), None);
    exchange(&mut devices);
    assert_none(&devices[0]);
}

#[test]
fn one_part_in_two_places_is_a_contradiction_and_other_places_are_none() {
    let part = |at: u8, part: u128, what: &str| PlacedPart {
        place: cylinder(at),
        what: what.to_owned(),
        parts: if part == 0 {
            Vec::new()
        } else {
            vec![PartId::from_random(part)]
        },
        from: None,
        gives: None,
    };
    let told = |one: PlacedPart, other: PlacedPart| {
        let mut devices = two();
        for (device, placed) in devices.iter_mut().zip([one, other]) {
            device.write(Body::PartsPlaced(PartsPlaced {
                choice: PISTONS_TO_BORES.id.to_owned(),
                placed: vec![placed],
            }));
        }
        exchange(&mut devices);
        conflicts(&devices[0].journal).len()
    };
    let spare = "piston “spare” off the bench";
    assert_eq!(told(part(1, 5, spare), part(2, 5, spare)), 1);
    assert_eq!(told(part(1, 5, spare), part(1, 6, spare)), 1);
    assert_eq!(told(part(1, 5, spare), part(2, 6, spare)), 0);
    // What was bought is told apart by its size.
    let new = |size: &str| part(1, 0, &format!("a new piston of {size}"));
    assert_eq!(told(new("92.0 mm"), new("92.5 mm")), 1);
    assert_eq!(told(new("92.0 mm"), new("92.0 mm")), 0);
}

#[test]
fn what_is_not_of_this_engine_contradicts_nothing() {
    let mut devices = two();
    accepts(&mut devices[0], &[1, 2]);
    accepts(&mut devices[1], &[9, 1]);
    let shims = PartsPlaced {
        choice: LASH_SHIMS.id.to_owned(),
        ..pistons(&[1, 2])
    };
    devices[1].write(Body::PartsPlaced(shims));
    exchange(&mut devices);
    assert_none(&devices[0]);
    assert_eq!(devices[0].build().problems.len(), 2);
    assert_eq!(goes(&devices[0]), AS_THEY_WERE);
}

#[test]
fn another_engine_described_afterwards_takes_its_places_with_it() {
    let mut devices = two();
    accepts(&mut devices[0], &[1, 2, 4, 3]);
    accepts(&mut devices[1], &[2, 1, 3, 4]);
    exchange(&mut devices);
    let Body::EngineDescribed(four) = sprayer() else {
        panic!()
    };
    devices[0].write(Body::EngineDescribed(EngineDescribed {
        cylinders: 2,
        mains: Some(3),
        ..four
    }));
    assert_none(&devices[0]);
}

/// What goes on between two devices.
#[derive(Clone, Debug)]
enum Turn {
    Accepts(usize, Vec<u8>),
    Exchange,
    Settles(usize, usize),
    Strikes(usize, usize),
}

fn turns() -> impl Strategy<Value = Vec<Turn>> {
    let ways = prop::sample::select(vec![
        vec![1, 2, 3, 4],
        vec![2, 1, 3, 4],
        vec![2, 1],
        vec![4, 3, 2, 1],
        vec![9],
    ]);
    let turn = prop_oneof![
        5 => (0..2_usize, ways).prop_map(|(device, from)| Turn::Accepts(device, from)),
        3 => Just(Turn::Exchange),
        2 => (0..2_usize, 0..2_usize).prop_map(|(device, which)| Turn::Settles(device, which)),
        1 => (0..2_usize, 0..6_usize).prop_map(|(device, back)| Turn::Strikes(device, back)),
    ];
    prop::collection::vec(turn, 1..16)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn after_an_exchange_both_devices_show_the_same(turns in turns()) {
        let mut devices = two();
        for turn in turns {
            match turn {
                Turn::Accepts(device, from) => {
                    accepts(&mut devices[device], &from);
                }
                Turn::Exchange => exchange(&mut devices),
                Turn::Settles(device, which) => {
                    let found = conflicts(&devices[device].journal);
                    let Some(one) = found.first() else { continue };
                    let facts = one.facts();
                    let held = facts[which.min(facts.len() - 1)];
                    devices[device].settle(held);
                    prop_assert_eq!(conflicts(&devices[device].journal), []);
                }
                Turn::Strikes(device, back) => {
                    let all: Vec<_> = devices[device].journal.facts().collect();
                    let fact = all[all.len().saturating_sub(back + 1)].id();
                    devices[device].write(Body::Struck(Struck { fact, reason: None }));
                }
            }
        }
        exchange(&mut devices);
        let [one, other] = &devices;
        prop_assert_eq!(one.build(), other.build());
        prop_assert_eq!(conflicts(&one.journal), conflicts(&other.journal));
        // Fact by fact it is the same state.
        let mut growing = Journal::new(one.journal.build());
        let mut folding = Folding::of(&growing);
        for fact in one.journal.facts() {
            growing.take(fact.clone());
            folding.append(&growing, fact);
        }
        prop_assert_eq!(folding.build(), &fold(&one.journal));
    }
}
