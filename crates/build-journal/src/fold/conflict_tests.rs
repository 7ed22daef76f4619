//! What two devices say differently of a step, a check or the engine: told from a
//! later change of mind, shown, and settled.

use build_plan::At;

use super::devices::{Device, assert_none, exchange, step, two};
use super::{Conflict, conflicts};
use crate::fact::samples::sprayer;
use crate::fact::{Body, CheckMade, EngineDescribed, Fact, InView, Mark, Outcome, Struck};

fn check(outcome: Outcome, lasts: Option<&str>) -> Body {
    Body::CheckMade(CheckMade {
        check: "primed".to_owned(),
        place: None,
        outcome,
        words: None,
        lasts: lasts.map(str::to_owned),
    })
}

#[test]
fn done_on_one_device_and_taken_apart_on_the_other_is_a_contradiction() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    devices[1].write(step("crank-in", None, Mark::NotNeeded));
    exchange(&mut devices);
    for device in &devices {
        let found = conflicts(&device.journal);
        assert!(
            matches!(&found[..], [Conflict::Marks { step, parts, said }]
                if step.id == "crank-in" && parts[..] == [At::Engine] && said.len() == 2),
            "{found:?}"
        );
    }
}

#[test]
fn a_contradiction_is_printed_in_a_few_lines() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    devices[1].write(step("crank-in", None, Mark::NotNeeded));
    exchange(&mut devices);
    let printed = format!("{:?}", conflicts(&devices[0].journal));
    assert!(printed.contains("Step(\"crank-in\")"), "{printed}");
    assert!(printed.len() < 1000, "{printed}");
}

#[test]
fn a_change_of_mind_by_who_had_seen_the_first_word_is_none() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    exchange(&mut devices);
    devices[1].write(step("crank-in", None, Mark::Apart));
    exchange(&mut devices);
    assert_none(&devices[0]);
    assert_eq!(devices[0].marked("crank-in", At::Engine), Some(Mark::Apart));
}

#[test]
fn the_same_word_twice_and_the_way_to_being_done_are_none() {
    for (one, other) in [
        (Mark::Done, Mark::Done),
        (Mark::Begun, Mark::Done),
        (Mark::Planned, Mark::Begun),
    ] {
        let mut devices = two();
        devices[0].write(step("crank-in", None, one));
        devices[1].write(step("crank-in", None, other));
        exchange(&mut devices);
        assert_none(&devices[0]);
    }
}

#[test]
fn facts_of_the_first_version_never_contradict_and_the_later_one_counts() {
    let mut devices = two();
    devices[0].write_with(step("crank-in", None, Mark::Done), None);
    devices[1].write_with(step("crank-in", None, Mark::Apart), None);
    exchange(&mut devices);
    assert_none(&devices[0]);
    assert_eq!(devices[0].marked("crank-in", At::Engine), Some(Mark::Apart));
    // Nor do they contradict one that says what it had in view.
    let mut devices = two();
    devices[0].write_with(step("crank-in", None, Mark::Done), None);
    devices[1].write(step("crank-in", None, Mark::Apart));
    exchange(&mut devices);
    assert_none(&devices[0]);
}

#[test]
fn what_is_said_of_one_part_contradicts_there_alone() {
    let mut devices = two();
    let mains = |device: &Device| -> Vec<Option<Mark>> {
        (1..=5)
            .map(|number| device.marked("trial-main-bearings", At::Main(number)))
            .collect()
    };
    let wide = devices[0].write(step("trial-main-bearings", None, Mark::Done));
    let narrow = devices[1].write(step(
        "trial-main-bearings",
        Some(At::Main(3)),
        Mark::NotNeeded,
    ));
    exchange(&mut devices);
    let found = conflicts(&devices[0].journal);
    assert!(
        matches!(&found[..], [Conflict::Marks { parts, .. }] if parts[..] == [At::Main(3)]),
        "{found:?}"
    );
    let done = Some(Mark::Done);
    // Either way, the other parts stay as they are.
    devices[0].settle(narrow);
    let not_needed = Some(Mark::NotNeeded);
    assert_eq!(mains(&devices[0]), [done, done, not_needed, done, done]);
    devices[1].settle(wide);
    assert_eq!(mains(&devices[1]), [done; 5]);
    assert_none(&devices[1]);
    // They settled it differently, and are asked once more.
    exchange(&mut devices);
    let found = conflicts(&devices[0].journal);
    assert!(matches!(&found[..], [Conflict::Marks { said, .. }] if said.len() == 2));
    let facts = found[0].facts();
    devices[0].settle(facts[1]);
    exchange(&mut devices);
    assert_none(&devices[1]);
    assert_eq!(mains(&devices[1]), [done; 5]);
}

#[test]
fn what_is_decided_against_counts_as_if_it_had_never_been_said() {
    let mut devices = two();
    devices[0].write(step("crank-in", None, Mark::Done));
    exchange(&mut devices);
    let done = devices[0].write(step("crank-in", None, Mark::Done));
    let alone = devices[0].build();
    // The other took it apart and began again: two words on the way.
    devices[1].write(step("crank-in", None, Mark::Apart));
    devices[1].write(step("crank-in", None, Mark::Begun));
    let apart = devices[1].write(step("crank-in", None, Mark::Apart));
    exchange(&mut devices);
    devices[0].settle(done);
    let build = devices[0].build();
    assert_eq!(build.record.marks, alone.record.marks);
    assert_eq!(build.record.voids, alone.record.voids);
    // Striking the decision out brings the question back.
    let last = devices[0].journal.facts().next_back().unwrap().id();
    devices[0].write(Body::Struck(Struck {
        fact: last,
        reason: None,
    }));
    let found = conflicts(&devices[0].journal);
    assert_eq!(found[0].facts(), [done, apart]);
}

#[test]
fn a_check_that_holds_keeps_its_day_and_how_long_it_lasts() {
    let mut devices = two();
    let good = devices[0].write(check(Outcome::Good, Some("10 min")));
    devices[1].write(check(Outcome::Bad, None));
    exchange(&mut devices);
    let found = conflicts(&devices[1].journal);
    assert!(
        matches!(&found[..], [Conflict::Checks { check, .. }] if check.id == "primed"),
        "{found:?}"
    );
    devices[1].settle(good);
    assert_none(&devices[1]);
    let build = devices[1].build();
    let primed = build.plan.check("primed").unwrap();
    let made = build.record.made(primed, At::Engine).unwrap();
    let first = devices[1].journal.get(good).unwrap();
    assert_eq!((made.fact, made.clock), (good, first.clock()));
    assert_eq!(made.lasts.as_deref(), Some("10 min"));
}

#[test]
fn the_engine_described_in_two_ways_is_asked_about_until_one_holds() {
    let mut devices = two();
    let with = |liners: &str| {
        let Body::EngineDescribed(plain) = sprayer() else {
            panic!()
        };
        Body::EngineDescribed(EngineDescribed {
            built: vec![("liners", liners.to_owned())],
            ..plain
        })
    };
    let wet = devices[0].write(with("wet-top-flange"));
    devices[1].write(with("dry"));
    exchange(&mut devices);
    let found = conflicts(&devices[0].journal);
    assert!(
        matches!(&found[..], [Conflict::Engines { said }] if said.len() == 2),
        "{found:?}"
    );
    devices[0].settle(wet);
    exchange(&mut devices);
    assert_none(&devices[1]);
    let engine = devices[1].build().engine.unwrap().engine;
    let Body::EngineDescribed(wet) = with("wet-top-flange") else {
        panic!()
    };
    assert_eq!(engine, wet.engine().unwrap());
}

#[test]
fn a_word_that_no_longer_counts_anyway_contradicts_nothing() {
    let mut devices = two();
    devices[0].write(check(Outcome::Good, None));
    let event = (build_plan::event::EVENTS.iter())
        .find(|event| event.voids.iter().any(|proof| proof.id() == "primed"))
        .unwrap();
    devices[0].write(Body::EventHappened(crate::fact::EventHappened {
        event: event.id.to_owned(),
        places: Vec::new(),
        words: None,
    }));
    devices[1].write(check(Outcome::Bad, None));
    exchange(&mut devices);
    assert_none(&devices[0]);
}

#[test]
fn a_file_that_names_what_comes_later_or_itself_is_no_trap() {
    let [mut phone, _] = two();
    let id = phone.write(step("crank-in", None, Mark::Done));
    for settles in [false, true] {
        let probe = phone.pen.write(step("crank-in", None, Mark::Apart));
        let replaces = vec![probe.id(), id, probe.id()];
        let in_view = InView { replaces, settles };
        let body = (probe.body().clone(), Some(in_view));
        let fact = Fact::in_view_of(probe.id(), probe.device(), probe.clock(), body);
        phone.journal.take(fact);
        assert_none(&phone);
    }
    assert_eq!(phone.marked("crank-in", At::Engine), Some(Mark::Apart));
}
