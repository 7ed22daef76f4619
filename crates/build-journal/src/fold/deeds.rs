//! What a builder does, drawn at random, for tests.

use assembly_core::fit::running_clearance::NeedleSense;
use proptest::prelude::*;

use super::placing_conflict_tests::pistons;
use crate::fact::more_samples::more;
use crate::fact::samples::{Pen, a_limits, body, sprayer};
use crate::fact::{
    Body, Fact, InView, Mark, Reading, SetOn, Spot, StepMarked, Struck, ToolListed, ToolSet,
};
use crate::id::{SettingId, ToolId};
use build_plan::Place;

/// Something that a builder does, told without ids: earlier facts by number.
#[derive(Clone, Debug)]
pub(crate) enum Deed {
    /// Writes this.
    Write(Body),
    /// Takes a reading at a place that the demo engine has.
    Read {
        measure: usize,
        place: usize,
        thou: i32,
        tool: u128,
        setting: Option<u128>,
    },
    /// Strikes out the fact so many back.
    Strike(usize),
    /// Zeroes tool 1 in tool 0, locked at the fact so many back.
    Zero(usize),
    /// Says something of a step, in view of facts so many back, or to settle.
    Say(Body, Vec<usize>, bool),
    /// The same things happen on the other device from here on.
    ChangeDevice,
}

/// Deeds on one engine, mostly readings.
pub(crate) fn deeds() -> BoxedStrategy<Vec<Deed>> {
    let read = (
        any::<usize>(),
        any::<usize>(),
        -40..40_i32,
        0_u128..3,
        prop::option::weighted(0.2, 0_u128..8),
    );
    let deed = prop_oneof![
        12 => read.prop_map(|(measure, place, thou, tool, setting)| Deed::Read { measure, place, thou, tool, setting }),
        3 => (0_usize..8).prop_map(Deed::Strike),
        2 => (0_usize..8).prop_map(Deed::Zero),
        2 => a_limits().prop_map(|limits| Deed::Write(Body::LimitsSet(limits))),
        2 => body().prop_map(Deed::Write),
        4 => more().prop_map(Deed::Write),
        1 => Just(Deed::ChangeDevice),
        3 => says(),
    ];
    prop::collection::vec(deed, 1..40).boxed()
}

/// Something said of one of two steps, or of which piston goes where, so that words
/// meet.
fn says() -> BoxedStrategy<Deed> {
    let backs = prop::collection::vec(0_usize..8, 0..3);
    let ways = prop::sample::select(vec![vec![1, 2], vec![2, 1], vec![2, 1, 3, 4]]);
    let places = (ways, backs, any::<bool>()).prop_map(|(from, back, settles)| {
        Deed::Say(Body::PartsPlaced(pistons(&from)), back, settles)
    });
    let marks = (
        prop::sample::select(vec!["crank-in", "trial-main-bearings"]),
        prop::option::of(1_u8..3),
        prop::sample::select(Mark::ALL),
        prop::collection::vec(0_usize..8, 0..3),
        any::<bool>(),
    )
        .prop_map(|(step, main, mark, back, settles)| {
            let place = main.map(|main| Spot::Known(Place::main(main)));
            let said = StepMarked {
                step: step.to_owned(),
                place,
                mark,
                words: None,
            };
            Deed::Say(Body::StepMarked(said), back, settles)
        });
    prop_oneof![3 => marks, 1 => places].boxed()
}

/// The facts of these deeds, in the order they were done, on an engine with
/// two tools.
pub(crate) fn facts_of(deeds: &[Deed]) -> Vec<Fact> {
    let Body::EngineDescribed(described) = sprayer() else {
        panic!()
    };
    let engine = described.engine().unwrap();
    // A few measures, so that readings meet and work on each other.
    let measures: Vec<_> = build_plan::MEASURES
        .iter()
        .filter(|measure| measure.can_be_read() && !measure.places(&engine).is_empty())
        .filter(|measure| {
            ["main-", "rod-", "bore", "piston-d", "liner", "deck-c"]
                .iter()
                .any(|start| measure.id.starts_with(start))
        })
        .collect();
    let mut pens = [Pen::new(1), Pen::new(2)];
    let mut facts: Vec<Fact> = Vec::new();
    let mut write = |facts: &mut Vec<Fact>, device: usize, body: Body, in_view| {
        let pen: &mut Pen = &mut pens[device];
        for seen in facts.iter() {
            pen.observe(seen);
        }
        facts.push(pen.write_in_view(body, in_view));
    };
    write(&mut facts, 0, sprayer(), None);
    for (tool, instrument) in [(0, "outside-micrometer-tenths"), (1, "bore-gauge-tenths")] {
        let listed = ToolListed {
            tool: ToolId::from_random(tool),
            name: instrument.to_owned(),
            instrument: instrument.to_owned(),
            mark: None,
        };
        write(&mut facts, 0, Body::ToolListed(listed), None);
    }
    let mut device = 0;
    for deed in deeds {
        let back = |by: usize| facts[facts.len() - 1 - by.min(facts.len() - 1)].id();
        let mut in_view = None;
        let body = match deed {
            Deed::ChangeDevice => {
                device = 1 - device;
                continue;
            }
            Deed::Write(body) => body.clone(),
            Deed::Say(body, backs, settles) => {
                in_view = Some(InView {
                    replaces: backs.iter().map(|by| back(*by)).collect(),
                    settles: *settles,
                });
                body.clone()
            }
            Deed::Strike(by) => Body::Struck(Struck {
                fact: back(*by),
                reason: None,
            }),
            Deed::Zero(by) => Body::ToolSet(ToolSet {
                tool: ToolId::from_random(1),
                setting: SettingId::from_random(u128::try_from(*by).unwrap()),
                set_on: SetOn::Tool(ToolId::from_random(0)),
                set_at: None,
                unit: None,
                locked_at: Some(back(*by)),
                needle: (by % 2 == 0).then_some(NeedleSense::ClockwiseIsSmaller),
            }),
            Deed::Read {
                measure,
                place,
                thou,
                tool,
                setting,
            } => {
                let measure = measures[measure % measures.len()];
                let places = measure.places(&engine);
                Body::Reading(
                    Reading {
                        measure: measure.id.to_owned(),
                        place: Spot::Known(places[place % places.len()]),
                        typed: format!("{}", 2.45 + f64::from(*thou) / 10_000.0),
                        unit: "in".to_owned(),
                        tool: Some(ToolId::from_random(*tool)),
                        setting: setting.map(SettingId::from_random),
                        temperature: (thou % 3 == 0).then(|| "5 °C".to_owned()),
                        condition: None,
                        keyed: None,
                    }
                    .into(),
                )
            }
        };
        write(&mut facts, device, body, in_view);
    }
    facts
}
