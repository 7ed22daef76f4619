//! Facts of what was done, added, bought and given out, drawn at random.

use proptest::prelude::*;

use super::samples::{measure, spot, text, tool, typed, unit};
use super::tightening_samples::{group, in_a_tightening};
use super::*;
use crate::id::{OwnId, PartId, WorkId};

pub(super) fn maybe_text() -> BoxedStrategy<Option<String>> {
    prop::option::weighted(0.3, text()).boxed()
}

pub(super) fn own() -> BoxedStrategy<OwnId> {
    (0_u128..3).prop_map(OwnId::from_random).boxed()
}

fn own_name() -> BoxedStrategy<String> {
    own().prop_map(|own| format!("own:{own}")).boxed()
}

fn of_the_plan(ids: Vec<&'static str>) -> BoxedStrategy<String> {
    prop_oneof![
        8 => prop::sample::select(ids).prop_map(str::to_owned),
        1 => own_name(),
        1 => text(),
    ]
    .boxed()
}

pub(super) fn step() -> BoxedStrategy<String> {
    of_the_plan(build_plan::step::STEPS.iter().map(|one| one.id).collect())
}

fn check() -> BoxedStrategy<String> {
    of_the_plan(build_plan::check::CHECKS.iter().map(|one| one.id).collect())
}

pub(super) fn event() -> BoxedStrategy<String> {
    of_the_plan(build_plan::event::EVENTS.iter().map(|one| one.id).collect())
}

pub(super) fn per() -> BoxedStrategy<Option<String>> {
    let word = prop_oneof![Just("cylinder".to_owned()), Just("main".to_owned()), text()];
    prop::option::of(word).boxed()
}

fn day() -> BoxedStrategy<Option<String>> {
    let day = prop_oneof![
        (1_u8..13, 1_u8..32).prop_map(|(month, day)| format!("2026-{month:02}-{day:02}")),
        text(),
    ];
    prop::option::of(day).boxed()
}

pub(super) fn outcome() -> BoxedStrategy<Outcome> {
    prop_oneof![3 => Just(Outcome::Good), 1 => Just(Outcome::Bad)].boxed()
}

pub(super) fn maybe_spot() -> BoxedStrategy<Option<Spot>> {
    prop::option::of(spot()).boxed()
}

fn done() -> BoxedStrategy<Body> {
    let marked = (
        step(),
        maybe_spot(),
        prop::sample::select(Mark::ALL),
        maybe_text(),
    );
    let lasts = prop::option::of(prop_oneof![
        Just("10 min".to_owned()),
        Just("30 days".to_owned()),
        text()
    ]);
    let result = (
        prop::sample::select(Sort::ALL),
        prop_oneof![measure(), check(), step()],
    );
    prop_oneof![
        marked.prop_map(|(step, place, mark, words)| Body::StepMarked(StepMarked {
            step,
            place,
            mark,
            words
        })),
        (check(), maybe_spot(), outcome(), maybe_text(), lasts).prop_map(
            |(check, place, outcome, words, lasts)| Body::CheckMade(CheckMade {
                check,
                place,
                outcome,
                words,
                lasts
            })
        ),
        (event(), prop::collection::vec(spot(), 0..3), maybe_text()).prop_map(
            |(event, places, words)| Body::EventHappened(EventHappened {
                event,
                places,
                words
            })
        ),
        (result, maybe_spot(), text()).prop_map(|((sort, id), place, reason)| {
            Body::Waived(Waived {
                result: ResultName { sort, id },
                place,
                reason,
            })
        }),
        (
            prop::collection::vec(super::samples::fact_id(), 0..4),
            maybe_text()
        )
            .prop_map(|(readings, words)| Body::ReadingsStand(ReadingsStand { readings, words })),
        (tool(), outcome(), maybe_text()).prop_map(|(tool, outcome, words)| Body::ToolChecked(
            ToolChecked {
                tool,
                outcome,
                words
            }
        )),
        (
            tool(),
            prop::collection::vec(text(), 0..6),
            text(),
            maybe_text()
        )
            .prop_map(|(tool, readings, unit, words)| Body::ToolTried(ToolTried {
                tool,
                readings,
                unit,
                words
            })),
        (
            prop_oneof![Just("main-oil-clearance".to_owned()), measure()],
            any::<bool>()
        )
            .prop_map(|(measure, corrected)| {
                let answer = if corrected {
                    WarmthAnswer::ToReference
                } else {
                    WarmthAnswer::AsRead
                };
                Body::WarmthSettled(WarmthSettled { measure, answer })
            }),
        (
            "[0-9a-f]{64}",
            text(),
            any::<u32>(),
            prop::option::of(step()),
            maybe_spot()
        )
            .prop_map(|(hash, media, bytes, step, place)| {
                Body::Photo(Photo {
                    hash,
                    media,
                    bytes,
                    step,
                    place,
                    words: None,
                })
            }),
    ]
    .boxed()
}

fn added() -> BoxedStrategy<Body> {
    let stale_with = || prop::collection::vec(prop_oneof![event(), measure(), step()], 0..3);
    let danger = prop::option::of(prop::sample::select(Danger::ALL));
    prop_oneof![
        (own(), text(), unit(), per(), danger, stale_with()).prop_map(
            |(own, label, unit, per, danger, stale_with)| Body::OwnMeasure(OwnMeasure {
                own,
                label,
                unit,
                per,
                danger,
                how: None,
                stale_with
            })
        ),
        (
            (own(), text(), per(), stale_with()),
            prop::collection::vec(step(), 0..3),
            prop::collection::vec(step(), 0..2),
            prop::collection::vec(prop_oneof![measure(), check()], 0..3),
            prop::option::of(any::<u32>()),
            maybe_text(),
        )
            .prop_map(
                |((own, label, per, stale_with), after, before, proves, minutes, caution)| {
                    Body::OwnStep(OwnStep {
                        own,
                        label,
                        per,
                        after,
                        before,
                        proves,
                        minutes,
                        in_one_go: None,
                        caution,
                        stale_with,
                    })
                }
            ),
        group(),
    ]
    .boxed()
}

fn bought() -> BoxedStrategy<Body> {
    let part = || (0_u128..3).prop_map(PartId::from_random);
    let work = || (0_u128..3).prop_map(WorkId::from_random);
    let supply = of_the_plan(
        build_plan::supply::SUPPLIES
            .iter()
            .map(|one| one.id)
            .collect(),
    );
    prop_oneof![
        (
            part(),
            text(),
            prop::option::of(supply),
            maybe_spot(),
            maybe_text()
        )
            .prop_map(
                |(part, name, supply, place, size)| Body::PartListed(PartListed {
                    part,
                    name,
                    supply,
                    place,
                    size,
                    quantity: None,
                    supplier: None,
                    price: None,
                    lot: None
                })
            ),
        (
            part(),
            prop::sample::select(PartStage::ALL),
            day(),
            maybe_text()
        )
            .prop_map(|(part, stage, promised, words)| Body::PartMoved(PartMoved {
                part,
                stage,
                promised,
                words
            })),
        (work(), text(), prop::option::of(step()), maybe_text()).prop_map(
            |(work, what, step, shop)| Body::WorkOrdered(WorkOrdered {
                work,
                what,
                step,
                shop,
                brought: None,
                leave_alone: None,
                conditions: None,
                price: None
            })
        ),
        (
            work(),
            measure(),
            maybe_spot(),
            prop::option::of(typed()),
            prop::option::of(typed()),
            unit()
        )
            .prop_map(|(work, measure, place, low, high, unit)| Body::WorkWanted(
                WorkWanted {
                    work,
                    measure,
                    place,
                    low,
                    high,
                    unit
                }
            )),
        (work(), measure(), spot(), typed(), unit()).prop_map(
            |(work, measure, place, typed, unit)| Body::WorkReturned(WorkReturned {
                work,
                measure,
                place,
                typed,
                unit
            })
        ),
        (
            work(),
            prop::sample::select(WorkStage::ALL),
            day(),
            maybe_text()
        )
            .prop_map(|(work, stage, promised, words)| Body::WorkMoved(WorkMoved {
                work,
                stage,
                promised,
                words
            })),
    ]
    .boxed()
}

fn placing() -> BoxedStrategy<Body> {
    let part = || (0_u128..3).prop_map(PartId::from_random);
    let choice = || {
        of_the_plan(
            build_plan::choice::CHOICES
                .iter()
                .map(|one| one.id)
                .collect(),
        )
    };
    let on_bench = (
        (part(), choice(), text(), typed(), unit()),
        prop::option::of(tool()),
        prop::option::of(prop::sample::select(BenchSide::ALL)),
        prop::option::of(any::<i32>()),
        (maybe_text(), maybe_spot()),
    )
        .prop_map(
            |((part, choice, name, size, unit), tool, side, steps, (make, place))| {
                Body::PartOnBench(PartOnBench {
                    part,
                    choice,
                    name,
                    size,
                    unit,
                    tool,
                    setting: None,
                    side,
                    steps,
                    make,
                    place,
                })
            },
        );
    let placed = (
        spot(),
        text(),
        prop::collection::vec(part(), 0..3),
        maybe_spot(),
        maybe_text(),
    )
        .prop_map(|(place, what, parts, from, gives)| PlacedPart {
            place,
            what,
            parts,
            from,
            gives,
        });
    let placed = (choice(), prop::collection::vec(placed, 0..4))
        .prop_map(|(choice, placed)| Body::PartsPlaced(PartsPlaced { choice, placed }));
    let listed = (
        prop::sample::select(SizedPart::ALL),
        prop::collection::vec(typed(), 0..4),
        unit(),
        prop::sample::select(vec![LimitsOrigin::Sheet, LimitsOrigin::OwnChoice]),
        text(),
    )
        .prop_map(|(of, sizes, unit, origin, origin_note)| {
            Body::SizesListed(SizesListed {
                of,
                sizes,
                unit,
                origin,
                origin_note,
            })
        });
    prop_oneof![2 => on_bench, 2 => placed, 1 => listed].boxed()
}

/// Any body of these kinds.
pub(crate) fn more() -> BoxedStrategy<Body> {
    prop_oneof![3 => done(), 1 => added(), 1 => bought(), 1 => placing(), 2 => in_a_tightening()]
        .boxed()
}
