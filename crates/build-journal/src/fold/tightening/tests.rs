//! Where a group stands, from what was written down.

use assembly_core::tightening::credit::NoCredit;
use assembly_core::tightening::interrupted::{Known, Paint, Remedy};
use assembly_core::tightening::run::Sureness;
use assembly_core::tightening::sealant::Phase;
use build_plan::At;
use proptest::prelude::*;

use super::facts::{Bench, head};
use super::{BoltTrouble, Field, Sheet, State, tightenings};
use crate::BuildId;
use crate::fact::samples::Pen;
use crate::fact::{
    Body, BoltCompared, BoltLayout, BoltMeasured, BoltPulled, BoltState, BoltsRenewed,
    FastenerGroup, JointClosed, Knew, Outcome, RunMark, SealantPutOn, Struck, Way, Wrench,
};
use crate::fold::deeds::{deeds, facts_of};
use crate::id::{OwnId, SittingId};
use crate::journal::Journal;

fn changed(change: impl FnOnce(&mut FastenerGroup)) -> FastenerGroup {
    let mut group = head();
    change(&mut group);
    group
}

#[test]
fn a_run_goes_through_every_bolt_in_order_and_counts() {
    let mut bench = Bench::with(head());
    assert_eq!(bench.group().state(At::Engine), State::On);
    let order: Vec<usize> = (0..18)
        .map(|_| {
            let next = bench.run().next().unwrap();
            bench.go_on(1);
            next.bolt + 1
        })
        .collect();
    assert_eq!(order, [2, 5, 4, 3, 1, 6].repeat(3));
    let run = bench.run();
    assert!(
        run.is_through() && run.counts() && !run.is_on(),
        "{:?}",
        run.against
    );
    assert_eq!(bench.group().state(At::Engine), State::Tight);
    assert!(bench.all().problems.is_empty());
    assert_eq!(bench.part().uses(0), 1);
}

#[test]
fn the_number_is_the_wrenchs_own() {
    let stages = ["30", "60 ft-lb", "122 N·m", "90°"]
        .map(str::to_owned)
        .to_vec();
    let bench = Bench::with(changed(|group| group.stages = stages));
    let numbers: Vec<String> = (0..4)
        .map(|lap| {
            let (number, unit) = bench.run().number(lap).unwrap();
            format!("{number} {unit}")
        })
        .collect();
    // 122 N·m / 1.3558179483 = 89.98 ft-lb (exact pound-force and inch).
    assert_eq!(numbers, ["30 ft-lb", "60 ft-lb", "90.0 ft-lb", "90 °"]);
}

#[test]
fn opened_anew_it_has_to_be_said_how_it_stands() {
    let mut bench = Bench::with(head());
    bench.open(2);
    assert!(!bench.run().has_to_be_said(), "nothing was ticked yet");
    bench.go_on(4);
    bench.open(3);
    assert_eq!(bench.group().state(At::Engine), State::ToBeSaid);
    assert_eq!(bench.run().interruptions, 1);
    bench.mark_with(RunMark::Confirmed, None, Some(Knew::Bolt));
    assert_eq!(bench.group().state(At::Engine), State::On);
    assert_eq!(bench.run().standing.done(), 4);
    bench.go_on(14);
    bench.open(4);
    let run = bench.run();
    assert!(run.counts() && !run.has_to_be_said(), "it was through");
}

#[test]
fn what_is_known_decides_what_is_to_be_done() {
    let mut bench = Bench::with(head());
    bench.go_on(8);
    bench.open(2);
    let run = bench.run();
    let remedy = |known, paint| run.advice(known, paint).remedy;
    assert_eq!(remedy(Known::Bolt, Paint::Missing), Remedy::GoOn);
    assert_eq!(remedy(Known::Lap, Paint::Missing), Remedy::RestartLap);
    assert_eq!(
        remedy(Known::Nothing, Paint::Missing),
        Remedy::BackOffAndBegin
    );
    // A head has a gasket that is crushed, as long as nobody says otherwise.
    assert!(run.advice(Known::Nothing, Paint::Missing).new_gasket);
    bench.mark_with(RunMark::LapRestarted, Some(2), Some(Knew::Lap));
    let next = bench.run().next().unwrap();
    assert_eq!((next.lap, next.done_in_lap, next.bolt), (1, 0, 1));
    bench.mark_with(RunMark::BackedOff, None, Some(Knew::Nothing));
    assert_eq!(bench.run().standing.done(), 0);
    assert!(!bench.run().has_to_be_said());
}

#[test]
fn an_angle_nobody_is_sure_of_means_paint_or_new_bolts() {
    let angle = changed(|group| {
        group.stages = vec!["30".to_owned(), "90°".to_owned()];
        group.sheet.fastener = Some("stretch-to-yield".to_owned());
    });
    let mut bench = Bench::with(angle);
    bench.go_on(8);
    bench.open(2);
    let run = bench.run();
    let remedy = |known, paint| run.advice(known, paint).remedy;
    assert_eq!(remedy(Known::Lap, Paint::OnEveryBolt), Remedy::PaintDecides);
    assert_eq!(remedy(Known::Lap, Paint::Missing), Remedy::NewBolts);
    let renewed = BoltsRenewed {
        group: OwnId::from_random(7),
        place: None,
        bolts: vec![],
        lot: Some("B17".to_owned()),
    };
    bench.write(Body::BoltsRenewed(renewed));
    bench.mark_with(RunMark::BackedOff, None, Some(Knew::Nothing));
    bench.go_on(12);
    let run = bench.run();
    assert!(run.counts(), "{:?}", run.against);
    assert_eq!(bench.part().bolts[3].lot.as_deref(), Some("B17"));
}

#[test]
fn a_screen_that_was_left_cannot_go_on_unnoticed() {
    let mut bench = Bench::with(head());
    bench.go_on(3);
    let first = bench.sitting;
    bench.open(2);
    bench.mark(RunMark::Confirmed);
    bench.go_on(1);
    assert!(bench.run().is_in(bench.sitting) && !bench.run().is_in(first));
    // The first screen goes on all the same, from another device.
    let mut other = Pen::new(2);
    bench.journal.facts().for_each(|fact| other.observe(fact));
    let pulled = other.write(Body::BoltPulled(BoltPulled {
        run: bench.run,
        bolt: 1,
        lap: 1,
        sitting: first,
    }));
    bench.take(pulled);
    let run = bench.run();
    assert!(run.two_hands && run.has_to_be_said());
    assert_eq!(run.standing.sureness(), Sureness::NotSaid);
    bench.mark(RunMark::Confirmed);
    assert!(!bench.run().two_hands);
    // The same bolt from both counts once, and is told.
    assert_eq!(bench.run().standing.done(), 5);
}

#[test]
fn each_reason_against_is_told() {
    let mut bench = Bench::with(changed(|group| {
        group.lubricant = None;
        group.sheet.under_head = Some(" ".to_owned());
        group.sheet.wrench = Some(Wrench {
            name: None,
            low: "10".to_owned(),
            high: "600".to_owned(),
            unit: "ft-lb".to_owned(),
            step: None,
            grip: None,
        });
        group.sheet.uses_allowed = Some(1);
    }));
    let foreseen = bench.group().sheet.foreseen();
    assert_eq!(foreseen.len(), 3, "{foreseen:?}");
    assert_eq!(Sheet::of(&head()).foreseen(), []);
    bench.go_on(18);
    let compared = |outcome| {
        Body::BoltCompared(BoltCompared {
            group: OwnId::from_random(7),
            place: None,
            bolt: 4,
            outcome,
            words: None,
        })
    };
    bench.write(compared(Outcome::Bad));
    bench.begin(Way::Tighten);
    bench.go_on(17);
    let said: Vec<String> = bench
        .run()
        .against
        .iter()
        .map(ToString::to_string)
        .collect();
    assert_eq!(said[0], "1 of 18 pulls are still to be made");
    for word in [
        "on the threads",
        "under the heads",
        "too low on the scale",
        "bolt 2 has been tightened 2 times",
        "bolt 4 is not the one",
    ] {
        assert!(
            said.iter().any(|one| one.contains(word)),
            "{word}: {said:?}"
        );
    }
    bench.go_on(1);
    assert_eq!(bench.group().state(At::Engine), State::NoCredit);
    // What was used is written down afterwards; the first run stays as it was.
    bench.write(compared(Outcome::Good));
    bench.describe(changed(|group| group.sheet.uses_allowed = Some(2)));
    assert!(bench.run().counts(), "{:?}", bench.run().against);
    let first = &bench.part().runs[0];
    assert!(
        first
            .against
            .iter()
            .any(|one| matches!(one, NoCredit::NotAsMapped { bolt: 3 })),
        "{:?}",
        first.against
    );
}

#[test]
fn uses_are_counted_through_runs_until_a_bolt_is_new() {
    let mut bench = Bench::with(head());
    bench.go_on(18);
    bench.begin(Way::Loosen);
    assert_eq!(bench.run().next().unwrap().bolt, 5, "the other way round");
    assert_eq!(
        bench.run().number(0).unwrap(),
        ("¼".to_owned(), "turn back")
    );
    bench.go_on(4);
    bench.open(9);
    let run = bench.run();
    assert!(run.has_to_be_said());
    let advice = run.advice(Known::Nothing, Paint::Missing);
    assert_eq!(
        (advice.remedy, advice.new_gasket),
        (Remedy::RestartLap, false)
    );
    bench.mark_with(RunMark::LapRestarted, None, Some(Knew::Nothing));
    bench.go_on(12);
    assert_eq!(bench.group().state(At::Engine), State::Loose);
    bench.begin(Way::Tighten);
    bench.go_on(18);
    assert_eq!(bench.part().uses(0), 2);
    let renewed = BoltsRenewed {
        group: OwnId::from_random(7),
        place: None,
        bolts: vec![1],
        lot: None,
    };
    bench.write(Body::BoltsRenewed(renewed));
    assert_eq!((bench.part().uses(0), bench.part().uses(1)), (0, 2));
    assert_eq!(bench.group().state(At::Engine), State::Loose);
    bench.begin(Way::Tighten);
    bench.go_on(18);
    assert_eq!((bench.part().uses(0), bench.part().uses(1)), (1, 3));
    bench.begin(Way::Again);
    assert_eq!((bench.run().laps(), bench.run().bolts()), (1, 6));
    bench.go_on(6);
    assert_eq!(bench.group().state(At::Engine), State::Tight);
    assert_eq!(bench.part().uses(1), 3);
}

#[test]
fn undo_takes_back_the_last_pull_and_a_strike_any() {
    let mut bench = Bench::with(head());
    bench.go_on(2);
    let second = bench.pull(4, 1);
    bench.go_on(1);
    bench.mark(RunMark::TakenBack);
    bench.mark(RunMark::TakenBack);
    assert_eq!(bench.run().standing.done(), 3);
    bench.go_on(1);
    bench.write(Body::Struck(Struck {
        fact: second,
        reason: None,
    }));
    let run = bench.run();
    assert_eq!(run.standing.passed_over(), [3]);
    assert_eq!(run.next().unwrap().bolt, 3);
}

#[test]
fn what_is_wrong_with_a_sheet_is_told_field_by_field_before_the_first_tap() {
    let group = changed(|group| {
        group.stages = ["60", "30 ft-lb", "x"].map(str::to_owned).to_vec();
        group.sheet.fastener = Some("of tomorrow".to_owned());
        group.sheet.order = vec![1, 1, 2, 9];
        group.sheet.wrench = Some(Wrench {
            name: None,
            low: "150".to_owned(),
            high: "20".to_owned(),
            unit: "ft-lb".to_owned(),
            step: None,
            grip: None,
        });
    });
    let sheet = Sheet::of(&group);
    let said = |field| sheet.wrong_with(field).collect::<Vec<_>>().join(" ");
    assert!(said(Field::Fastener).contains("kind of fastener"));
    assert!(
        said(Field::Order).contains("Bolt 1 is in the order twice"),
        "{}",
        said(Field::Order)
    );
    assert!(
        said(Field::Stages).starts_with("Stage 3: "),
        "{}",
        said(Field::Stages)
    );
    assert!(said(Field::Wrench).contains("swap them"));
    assert!(sheet.plan().is_none());
    for (change, field, word) in [
        (
            Box::new(|group: &mut FastenerGroup| group.stages[1] = "20".to_owned())
                as Box<dyn Fn(&mut FastenerGroup)>,
            Field::Stages,
            "Stage 2 is 20, less than the 30 before it",
        ),
        (
            Box::new(|group| group.stages = vec!["90°".to_owned()]),
            Field::Stages,
            "no snug torque",
        ),
        (
            Box::new(|group| group.stages.clear()),
            Field::Stages,
            "There is no stage",
        ),
        (
            Box::new(|group| group.sheet.order.truncate(5)),
            Field::Order,
            "misses bolt 6",
        ),
        (
            Box::new(|group| group.sheet.order[0] = 0),
            Field::Order,
            "Bolts count from 1",
        ),
        (Box::new(|group| group.bolts = 0), Field::Bolts, "no bolts"),
        (
            Box::new(|group| group.bolts = 5000),
            Field::Bolts,
            "at most 200",
        ),
        (
            Box::new(|group| group.sheet.layout = Some(BoltLayout::Rows(vec![3, 4]))),
            Field::Bolts,
            "drawing has 7 bolts",
        ),
        (
            Box::new(|group| group.stages = vec!["10".to_owned()]),
            Field::Wrench,
            "Lap 1 is off the scale",
        ),
        (
            Box::new(|group| group.sheet.stretch_low = Some("long".to_owned())),
            Field::Stretch,
            "",
        ),
    ] {
        let group = changed(|group| change(group));
        let sheet = Sheet::of(&group);
        let said: Vec<&str> = sheet.wrong_with(field).collect();
        assert!(
            said.iter().any(|one| one.contains(word)),
            "{word}: {:?}",
            sheet.wrong
        );
        assert_eq!(
            sheet.wrong.iter().filter(|one| one.field != field).count(),
            0,
            "{:?}",
            sheet.wrong
        );
        // And no run over it begins.
        let mut bench = Bench::without_a_run(group);
        bench.begin(Way::Tighten);
        assert!(bench.all().run(bench.run).is_none());
        assert_eq!(bench.all().problems.len(), 1);
    }
}

#[test]
fn a_group_of_the_first_version_says_what_it_lacks() {
    let old = FastenerGroup {
        sheet: Box::default(),
        stages: vec!["9 N·m".to_owned(), "mark".to_owned()],
        ..head()
    };
    let sheet = Sheet::of(&old);
    let fields: Vec<Field> = sheet.wrong.iter().map(|one| one.field).collect();
    assert_eq!(fields, [Field::Fastener, Field::Order, Field::Stages]);
    assert_eq!(sheet.layout.count(), 6);
}

#[test]
fn lengths_tell_stretch_lasting_stretch_and_scrap() {
    let mut bench = Bench::without_a_run(changed(|group| {
        group.sheet.stretch_low = Some("0.005 in".to_owned());
        group.sheet.stretch_high = Some("0.006 in".to_owned());
        group.sheet.set_at_most = Some("1 thou".to_owned());
    }));
    let measured = |bolt, state, typed: &str| {
        Body::BoltMeasured(BoltMeasured {
            group: OwnId::from_random(7),
            place: None,
            bolt,
            state,
            typed: typed.to_owned(),
            unit: "in".to_owned(),
            tool: None,
        })
    };
    for (bolt, free, tight) in [
        (1, "1.6000", "1.6055"),
        (2, "1.6000", "1.6070"),
        (3, "1.6000", "1.6040"),
        (4, "1.6000", "1.5990"),
        (5, "1.6000", "1.6060"),
    ] {
        bench.write(measured(bolt, BoltState::Free, free));
        bench.write(measured(bolt, BoltState::Tight, tight));
    }
    let part = bench.part();
    let sheet = bench.group().sheet;
    let troubles = |bolt: usize| part.bolts[bolt].troubles(&sheet, 0);
    assert_eq!(troubles(0), []);
    assert!(matches!(troubles(1)[..], [BoltTrouble::TooMuch(_)]) && troubles(1)[0].is_scrap());
    assert!(matches!(troubles(2)[..], [BoltTrouble::TooLittle(_)]));
    assert_eq!(troubles(3), [BoltTrouble::NotLonger]);
    assert_eq!(troubles(4), [], "the greatest itself is allowed");
    assert_eq!(part.bolts[0].set(), None);
    bench.write(measured(1, BoltState::Free, "1.6012"));
    let part = bench.part();
    // 1.6012 − 1.6000 = 1.2 thou; the tight length from before says nothing now.
    assert!((part.bolts[0].set().unwrap() - 1.2 * 0.0000254).abs() < 1e-12);
    assert_eq!(part.bolts[0].stretch(), None);
    assert!(matches!(
        part.bolts[0].troubles(&sheet, 0)[..],
        [BoltTrouble::Set(_)]
    ));
}

#[test]
fn a_stretch_bolt_is_used_up_after_one_run() {
    let bench = Bench::without_a_run(changed(|group| {
        group.sheet.fastener = Some("stretch-to-yield".to_owned())
    }));
    let sheet = bench.group().sheet;
    assert_eq!(sheet.uses_allowed(), Some(1));
    let bolt = super::Bolt::default();
    assert_eq!(
        bolt.troubles(&sheet, 1),
        [BoltTrouble::UsedUp {
            uses: 1,
            allowed: 1
        }]
    );
    assert_eq!(bolt.troubles(&sheet, 0), []);
}

#[test]
fn sealant_runs_by_the_wall_clock() {
    let mut bench = Bench::without_a_run(head());
    let put_on = |close_by: &str| {
        Body::SealantPutOn(SealantPutOn {
            group: OwnId::from_random(7),
            place: None,
            what: Some("grey tube".to_owned()),
            close_by: close_by.to_owned(),
            torque_from: Some("1 h".to_owned()),
            oil_from: None,
        })
    };
    let sealant = bench.write(put_on("10 min"));
    let one = bench.part().sealants[0].clone();
    let minutes = |minutes: i64| one.put_on + minutes * 60_000;
    assert_eq!(one.phase(minutes(4)), Some(Phase::Open { left: 360_000 }));
    assert_eq!(one.phase(minutes(600)), Some(Phase::Skinned));
    bench.write(Body::JointClosed(JointClosed { sealant }));
    let closed = bench.part().sealants[0].clone();
    assert!(closed.closed.is_some());
    assert_eq!(
        closed.phase(minutes(90)),
        Some(Phase::ReadyForTorque { until_oil: None })
    );
    bench.write(put_on("soon"));
    let unread = &bench.part().sealants[1];
    assert!(unread.waits.as_ref().unwrap_err().contains("soon"));
    assert_eq!(unread.phase(minutes(1)), None);
    bench.write(put_on("2 h"));
    assert!(
        bench.part().sealants[2]
            .waits
            .as_ref()
            .unwrap_err()
            .contains("Full torque comes before")
    );
}

#[test]
fn facts_that_go_by_nothing_are_told() {
    let mut bench = Bench::without_a_run(head());
    let run = bench.sheet;
    bench.write(Body::BoltPulled(BoltPulled {
        run,
        bolt: 1,
        lap: 1,
        sitting: SittingId::from_random(1),
    }));
    bench.write(Body::JointClosed(JointClosed { sealant: run }));
    bench.write(Body::BoltsRenewed(BoltsRenewed {
        group: OwnId::from_random(9),
        place: None,
        bolts: vec![],
        lot: None,
    }));
    assert_eq!(bench.all().problems.len(), 3);
}

proptest! {
    #[test]
    fn the_order_in_which_facts_come_in_changes_nothing(deeds in deeds(), seed in any::<u64>()) {
        let facts = facts_of(&deeds);
        let mut one = Journal::new(BuildId::from_random(1));
        let mut other = Journal::new(BuildId::from_random(1));
        for fact in &facts {
            one.take(fact.clone());
        }
        let mut shuffled = facts;
        let count = shuffled.len();
        for at in 0..count {
            let to = usize::try_from(seed.rotate_left(u32::try_from(at % 64).unwrap()) % u64::try_from(count).unwrap()).unwrap();
            shuffled.swap(at, to);
        }
        for fact in shuffled {
            other.take(fact);
        }
        prop_assert_eq!(tightenings(&one), tightenings(&other));
    }
}
