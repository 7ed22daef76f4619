//! Groups of fasteners and what happens to them, drawn at random.

use proptest::prelude::*;

use super::more_samples::{event, maybe_spot, maybe_text, outcome, own, per, step};
use super::samples::{fact_id, measure, text, tool, typed, unit};
use super::*;
use crate::id::SittingId;

fn sitting() -> BoxedStrategy<SittingId> {
    (0_u128..3).prop_map(SittingId::from_random).boxed()
}

/// A bolt or a lap: mostly one that there may be.
fn number() -> BoxedStrategy<u32> {
    prop_oneof![6 => 0_u32..6, 1 => any::<u32>()].boxed()
}

fn layout() -> BoxedStrategy<BoltLayout> {
    prop_oneof![
        prop::collection::vec(number(), 1..4).prop_map(BoltLayout::Rows),
        number().prop_map(BoltLayout::Circle),
        Just(BoltLayout::Unknown(r#"{"spiral":[1,2]}"#.to_owned())),
    ]
    .boxed()
}

fn stage() -> BoxedStrategy<String> {
    let known = ["30 ft-lb", "60", "90°", "20 N·m", "0.006 in", "7 thou"];
    prop_oneof![4 => prop::sample::select(known.to_vec()).prop_map(str::to_owned), 1 => text()]
        .boxed()
}

fn wrench() -> BoxedStrategy<Wrench> {
    (
        maybe_text(),
        typed(),
        typed(),
        prop_oneof![Just("ft-lb".to_owned()), unit()],
        prop::option::of(typed()),
        prop::option::of(typed()),
    )
        .prop_map(|(name, low, high, unit, step, grip)| Wrench {
            name,
            low,
            high,
            unit,
            step,
            grip,
        })
        .boxed()
}

fn sheet() -> BoxedStrategy<FastenerSheet> {
    let word = |ids: Vec<&'static str>| {
        let known = prop::sample::select(ids).prop_map(str::to_owned);
        prop::option::of(prop_oneof![5 => known, 1 => text()])
    };
    let origin = || prop::option::of(prop::sample::select(Origin::ALL));
    (
        word(vec!["head", "mains", "rods"]),
        word(vec!["plain", "stretch-to-yield", "stretch-measured"]),
        (maybe_text(), maybe_text(), maybe_text()),
        (
            prop::option::of(wrench()),
            prop::collection::vec(
                (number(), wrench()).prop_map(|(stage, wrench)| StageWrench { stage, wrench }),
                0..3,
            ),
        ),
        (
            prop::option::of(layout()),
            prop::option::of(adapter()),
            prop::collection::vec(any::<[i32; 2]>(), 0..4),
        ),
        prop::collection::vec(number(), 0..6),
        (origin(), origin()),
        word(vec!["nothing", "layered-steel", "composition"]),
        prop::option::of(number()),
        prop::option::of(typed()),
    )
        .prop_map(
            |(holds, fastener, words, wrench, drawing, order, from, between, uses, length)| {
                FastenerSheet {
                    holds,
                    fastener,
                    thread: words.0,
                    length: words.1,
                    under_head: words.2,
                    wrench: wrench.0,
                    stage_wrenches: wrench.1,
                    adapter: drawing.1,
                    layout: drawing.0,
                    places: drawing.2,
                    order,
                    order_from: from.0,
                    stages_from: from.1,
                    between,
                    uses_allowed: uses,
                    stretch_low: length.clone(),
                    stretch_high: None,
                    set_at_most: length,
                }
            },
        )
        .boxed()
}

fn adapter() -> BoxedStrategy<Adapter> {
    (
        typed(),
        typed(),
        prop_oneof![Just("45".to_owned()), typed()],
    )
        .prop_map(|(wrench_length, length, turned)| Adapter {
            wrench_length,
            length,
            turned,
        })
        .boxed()
}

/// A group of fasteners.
pub(super) fn group() -> BoxedStrategy<Body> {
    let stale_with = prop::collection::vec(prop_oneof![event(), measure(), step()], 0..3);
    (
        (own(), text(), per(), number()),
        prop::collection::vec(stage(), 0..4),
        stale_with,
        sheet(),
    )
        .prop_map(|((own, label, per, bolts), stages, stale_with, sheet)| {
            Body::FastenerGroup(FastenerGroup {
                own,
                label,
                per,
                bolts,
                size: None,
                lubricant: None,
                stages,
                source: None,
                stale_with,
                sheet: Box::new(sheet),
            })
        })
        .boxed()
}

/// What happens to one: with luck it meets a run that was begun.
pub(super) fn in_a_tightening() -> BoxedStrategy<Body> {
    let begun = (
        own(),
        maybe_spot(),
        fact_id(),
        prop::sample::select(Way::ALL),
        sitting(),
    );
    let marked = (
        fact_id(),
        prop::sample::select(RunMark::ALL),
        prop::option::of(number()),
        prop::option::of(number()),
        prop::option::of(prop::sample::select(Knew::ALL)),
        maybe_text(),
    );
    let state = prop::sample::select(BoltState::ALL);
    prop_oneof![
        2 => begun.prop_map(|(group, place, sheet, way, sitting)| {
            Body::RunBegun(RunBegun { group, place, sheet, way, sitting })
        }),
        1 => (fact_id(), sitting())
            .prop_map(|(run, sitting)| Body::RunOpened(RunOpened { run, sitting })),
        4 => (fact_id(), number(), number(), sitting()).prop_map(|(run, bolt, lap, sitting)| {
            Body::BoltPulled(BoltPulled { run, bolt, lap, sitting })
        }),
        2 => marked.prop_map(|(run, mark, bolt, lap, knew, words)| {
            Body::RunMarked(RunMarked { run, mark, bolt, lap, knew, words })
        }),
        1 => (own(), maybe_spot(), prop::collection::vec(number(), 0..3), maybe_text()).prop_map(
            |(group, place, bolts, lot)| Body::BoltsRenewed(BoltsRenewed { group, place, bolts, lot })
        ),
        2 => (own(), maybe_spot(), number(), state, typed(), prop::option::of(tool())).prop_map(
            |(group, place, bolt, state, typed, tool)| {
                let unit = "in".to_owned();
                Body::BoltMeasured(BoltMeasured { group, place, bolt, state, typed, unit, tool })
            }
        ),
        1 => (own(), maybe_spot(), number(), outcome(), maybe_text()).prop_map(
            |(group, place, bolt, outcome, words)| {
                Body::BoltCompared(BoltCompared { group, place, bolt, outcome, words })
            }
        ),
        1 => (own(), maybe_spot(), maybe_text(), prop::option::of(Just("60 min".to_owned())))
            .prop_map(|(group, place, what, torque_from)| {
                let close_by = "10 min".to_owned();
                let oil_from = Some("1 day".to_owned());
                Body::SealantPutOn(SealantPutOn { group, place, what, close_by, torque_from, oil_from })
            }),
        1 => (tool(), wrench())
            .prop_map(|(tool, wrench)| Body::WrenchListed(WrenchListed { tool, wrench })),
        1 => fact_id().prop_map(|sealant| Body::JointClosed(JointClosed { sealant })),
    ]
    .boxed()
}
