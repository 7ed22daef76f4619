//! What a device had in view, said by the facts, held against what it really held.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;

use super::devices::{Device, step};
use super::{Conflict, Folding, conflicts, fold};
use crate::fact::samples::sprayer;
use crate::fact::{Body, Fact, Mark};
use crate::id::FactId;
use crate::journal::Journal;
use build_plan::{At, Place};

/// What goes on between three devices.
#[derive(Clone, Debug)]
enum Turn {
    Says(usize, Option<u8>, Mark),
    Hands(usize, usize),
    Settles(usize, usize),
}

fn turns() -> impl Strategy<Value = Vec<Turn>> {
    let part = prop::option::of(1_u8..4);
    let mark = prop::sample::select(vec![Mark::Done, Mark::NotNeeded, Mark::Begun]);
    let turn = prop_oneof![
        4 => (0..3_usize, part, mark).prop_map(|(device, part, mark)| Turn::Says(device, part, mark)),
        3 => (0..3_usize, 0..3_usize).prop_map(|(from, to)| Turn::Hands(from, to)),
        1 => (0..3_usize, 0..2_usize).prop_map(|(device, which)| Turn::Settles(device, which)),
    ];
    prop::collection::vec(turn, 1..24)
}

const STEP: &str = "trial-main-bearings";

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn a_contradiction_is_exactly_what_neither_device_had_seen_of_the_other(turns in turns()) {
        let mut devices = [Device::new(1), Device::new(2), Device::new(3)];
        devices[0].write(sprayer());
        let first = devices[0].journal.clone();
        for device in &mut devices[1..] {
            device.journal.merge(&first).unwrap();
            first.facts().for_each(|fact| device.pen.observe(fact));
        }
        // What each fact's device held when it wrote: kept by hand, apart from
        // what the facts say themselves.
        let mut seen: BTreeMap<FactId, BTreeSet<FactId>> = BTreeMap::new();
        let held = |device: &Device| device.journal.facts().map(Fact::id).collect::<BTreeSet<_>>();
        for turn in turns {
            match turn {
                Turn::Says(device, part, mark) => {
                    let before = held(&devices[device]);
                    let id = devices[device].write(step(STEP, part.map(At::Main), mark));
                    seen.insert(id, before);
                }
                Turn::Hands(from, to) if from != to => {
                    let journal = devices[from].journal.clone();
                    journal.facts().for_each(|fact| devices[to].pen.observe(fact));
                    devices[to].journal.merge(&journal).unwrap();
                }
                Turn::Hands(..) => {}
                Turn::Settles(device, which) => {
                    let found = conflicts(&devices[device].journal);
                    let Some(one) = found.first() else { continue };
                    let before = held(&devices[device]);
                    devices[device].settle(one.facts()[which]);
                    for id in held(&devices[device]).difference(&before) {
                        seen.insert(*id, before.clone());
                    }
                    prop_assert!(!conflicts(&devices[device].journal).contains(one));
                }
            }
        }
        let mut all = devices[0].journal.clone();
        let mut back = devices[2].journal.clone();
        for device in &devices {
            all.merge(&device.journal).unwrap();
        }
        for device in devices.iter().rev() {
            back.merge(&device.journal).unwrap();
        }
        let found = conflicts(&all);
        prop_assert!(found == conflicts(&back));
        let told: BTreeSet<(At, Vec<FactId>)> = found
            .iter()
            .flat_map(|one| match one {
                Conflict::Marks { parts, .. } => parts.iter().map(|at| (*at, one.facts())).collect(),
                _ => Vec::new(),
            })
            .collect();
        let mut meant = BTreeSet::new();
        for number in 1..=5 {
            let at = At::Main(number);
            let about: Vec<(FactId, Mark)> = all.facts().filter_map(|fact| match fact.body() {
                Body::StepMarked(said)
                    if said.place.as_ref().is_none_or(|spot| spot.place() == Some(Place::of(at))) =>
                {
                    Some((fact.id(), said.mark))
                }
                _ => None,
            }).collect();
            let last: Vec<(FactId, Mark)> = about.iter().copied().filter(|(id, _)| {
                !about.iter().any(|(other, _)| seen[other].contains(id))
            }).collect();
            let open = |mark: Mark| mark == Mark::Begun;
            let against = last.iter().enumerate().any(|(nth, (_, one))| {
                last[nth + 1..].iter().any(|(_, later)| {
                    one != later && !(open(*one) && *later == Mark::Done)
                })
            });
            if against {
                meant.insert((at, last.into_iter().map(|(id, _)| id).collect::<Vec<_>>()));
            }
        }
        prop_assert_eq!(told, meant);
        // Fact by fact it is the same state.
        let mut growing = Journal::new(all.build());
        let mut folding = Folding::of(&growing);
        for fact in all.facts() {
            growing.take(fact.clone());
            folding.append(&growing, fact);
        }
        prop_assert!(folding.build() == &fold(&all));
    }
}
