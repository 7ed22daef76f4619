//! One doing that two devices tell of, and a doing once more.

use build_plan::At;
use build_plan::check::CLEAN;
use build_plan::measure::BORE;
use build_plan::proof::Proof;
use build_plan::step::STEPS;
use proptest::prelude::*;

use super::devices::{Device, assert_none, exchange, step, two};
use super::{ResultState, fold};
use crate::fact::samples::reading;
use crate::fact::{Body, CheckMade, Mark, Outcome, Struck};
use build_plan::Place;

/// Whether the engine has the crank in, and the pistons over it.
fn states(device: &Device) -> [ResultState; 2] {
    let build = device.build();
    ["crank-in", "pistons-in"].map(|id| {
        let step = build.plan.step(id).unwrap();
        let part = match id {
            "crank-in" => At::Engine,
            _ => At::Cylinder(1),
        };
        build.result(Proof::Step(step), part)
    })
}

fn is_stale(state: &ResultState) -> bool {
    matches!(state, ResultState::Stale(_))
}

#[test]
fn what_two_devices_say_unseen_was_done_once_and_undoes_nothing_over_it() {
    for pistons_first in [false, true] {
        let mut devices = two();
        let pistons = step("pistons-in", Some(At::Cylinder(1)), Mark::Done);
        if pistons_first {
            devices[0].write(pistons.clone());
        }
        devices[0].write(step("crank-in", None, Mark::Done));
        if !pistons_first {
            devices[0].write(pistons.clone());
        }
        let alone = devices[0].build();
        // By its clock, the tablet says it afterwards.
        devices[1].write(step("crank-in", None, Mark::Done));
        exchange(&mut devices);
        assert_none(&devices[0]);
        let both = devices[0].build();
        assert_eq!(both, devices[1].build());
        assert_eq!(both.record.marks, alone.record.marks);
        assert_eq!(both.record.voids, alone.record.voids);
        assert_eq!(both.stale(), alone.stale());
    }
}

#[test]
fn who_knew_of_it_and_does_it_again_takes_apart_what_lies_over_it() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    devices[1].write(step("crank-in", None, Mark::Done));
    exchange(&mut devices);
    devices[0].write(step("pistons-in", Some(At::Cylinder(1)), Mark::Done));
    exchange(&mut devices);
    assert_eq!(
        states(&devices[1]),
        [ResultState::Stands, ResultState::Stands]
    );
    // Both do it again, and neither knows: that is one doing more.
    devices[0].write(step("crank-in", None, Mark::Done));
    let [crank, pistons] = states(&devices[0]);
    assert!(
        !is_stale(&crank) && is_stale(&pistons),
        "{crank:?} {pistons:?}"
    );
    devices[0].write(step("pistons-in", Some(At::Cylinder(1)), Mark::Done));
    devices[1].write(step("crank-in", None, Mark::Done));
    let [_, pistons] = states(&devices[1]);
    assert!(is_stale(&pistons), "{pistons:?}");
    exchange(&mut devices);
    assert_eq!(
        states(&devices[0]),
        [ResultState::Stands, ResultState::Stands]
    );
    assert_eq!(devices[0].build(), devices[1].build());
}

#[test]
fn what_was_known_through_a_word_that_is_struck_out_was_known() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    let slip = devices[0].write(step("crank-in", None, Mark::Begun));
    devices[0].write(step("pistons-in", Some(At::Cylinder(1)), Mark::Done));
    devices[0].write(step("crank-in", None, Mark::Done));
    // It named the beginning alone, and the first doing through it.
    devices[0].write(Body::Struck(Struck {
        fact: slip,
        reason: None,
    }));
    let [_, pistons] = states(&devices[0]);
    assert!(is_stale(&pistons), "{pistons:?}");
}

#[test]
fn words_of_the_first_version_knew_of_all_before_them() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    devices[0].write(step("pistons-in", Some(At::Cylinder(1)), Mark::Done));
    devices[1].write_with(step("crank-in", None, Mark::Done), None);
    exchange(&mut devices);
    let [_, pistons] = states(&devices[0]);
    assert!(is_stale(&pistons), "{pistons:?}");
}

#[test]
fn taken_apart_on_both_was_taken_apart_once() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    exchange(&mut devices);
    devices[0].write(step("crank-in", None, Mark::Apart));
    // What is found clean now is found after that.
    let clean = Body::CheckMade(CheckMade {
        check: CLEAN.id.to_owned(),
        place: None,
        outcome: Outcome::Good,
        words: None,
        lasts: None,
    });
    devices[0].write(clean);
    let alone = devices[0].build();
    devices[1].write(step("crank-in", None, Mark::Apart));
    exchange(&mut devices);
    assert_none(&devices[0]);
    assert_eq!(devices[0].build().record.voids, alone.record.voids);
}

#[test]
fn what_changes_the_engine_leaves_no_doubt_about_readings_before_the_later_word() {
    let honed = || step("hone-bores", None, Mark::Done);
    let mut devices = two();
    devices[0].write(honed());
    devices[1].write(reading(BORE.id, Place::of(At::Cylinder(1)), "3.5000"));
    devices[1].write(honed());
    exchange(&mut devices);
    let state = devices[0]
        .build()
        .result(Proof::Measure(&BORE), At::Cylinder(1));
    assert!(is_stale(&state), "{state:?}");
}

/// Results go by when a step was first done, and not by the echo of it: so no step
/// may make itself stale.
#[test]
fn no_step_does_to_the_engine_what_makes_itself_stale() {
    for step in STEPS {
        let own = |proof: &Proof| *proof == Proof::Step(step);
        let makes = step.causes.iter().any(|event| event.voids.iter().any(own));
        assert!(!makes, "{}", step.id);
    }
}

/// What one device does, step by step over each other.
fn doings() -> impl Strategy<Value = Vec<(&'static str, Mark)>> {
    let id = prop::sample::select(vec!["crank-in", "pistons-in", "pan-on", "timing-set"]);
    let mark = prop_oneof![
        4 => Just(Mark::Done),
        1 => Just(Mark::Begun),
        1 => Just(Mark::Apart),
    ];
    prop::collection::vec((id, mark), 1..12)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever a device does, the same first doing told by another that has seen
    /// none of it changes nothing while that doing stands.
    #[test]
    fn an_echo_of_a_doing_that_stands_changes_nothing(all in doings()) {
        let mut devices = two();
        devices[0].write(step("crank-in", None, Mark::Done));
        for (id, mark) in all {
            devices[0].write(step(id, None, mark));
        }
        let [crank, _] = states(&devices[0]);
        let alone = devices[0].build();
        for _ in 0..40 {
            let _ = devices[1].pen.write(step("crank-in", None, Mark::Done));
        }
        devices[1].write(step("crank-in", None, Mark::Done));
        exchange(&mut devices);
        let both = devices[0].build();
        prop_assert_eq!(&both, &fold(&devices[1].journal));
        if crank == ResultState::Stands {
            prop_assert_eq!(&both.record.voids, &alone.record.voids);
            prop_assert_eq!(both.stale(), alone.stale());
        }
    }
}
