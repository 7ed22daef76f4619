//! Mistakes that are easily made about tightening, each with a test that fails
//! when it is made. Figures are worked by hand (common practice).

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use assembly_core::describe::{Answer, Given, Gravity, calculation};
use assembly_core::fastener::stages::Stage;
use assembly_core::measure::Estimate;
use assembly_core::tightening::credit::{NoCredit, Record, against};
use assembly_core::tightening::generate::by_turns;
use assembly_core::tightening::kind::Kind;
use assembly_core::tightening::run::{Happened, Plan, Standing};

fn answer(id: &str, values: &[(&'static str, f64)]) -> Answer {
    let mut given = Given::new();
    for (field, value) in values {
        given.push(field, Estimate::exact(*value));
    }
    calculation(id).unwrap().answer(&given).unwrap()
}

fn value(answer: &Answer, id: &str) -> f64 {
    answer.get(id).unwrap().value()
}

#[test]
fn a_torque_is_no_preload_but_a_band_of_them() {
    for (friction, low, high) in [(0.0, 0.75, 1.25), (1.0, 0.65, 1.35)] {
        let said = answer(
            "preload-from-torque",
            &[
                ("torque", 90.0),
                ("diameter", 0.010),
                ("pitch", 0.0015),
                ("system", 0.0),
                ("nut-factor", 0.18),
                ("friction", friction),
            ],
        );
        let about = value(&said, "preload");
        assert!((value(&said, "least") / about - low).abs() < 1e-9);
        assert!((value(&said, "greatest") / about - high).abs() < 1e-9);
    }
}

#[test]
fn two_angles_are_two_laps_and_one_of_their_sum_is_not_the_same() {
    let stages = vec![
        Stage::Torque(30.0),
        Stage::Angle(60_f64.to_radians()),
        Stage::Angle(30_f64.to_radians()),
    ];
    let plan = Plan::new(by_turns(2), stages).unwrap();
    let tick = |bolt, lap| Happened::Ticked { bolt, lap };
    // Bolt 0 turned by both angles at once, as one of 90° would be.
    let happened = [tick(0, 0), tick(1, 0), tick(0, 1), tick(0, 2)];
    let standing = Standing::after(&plan, &happened);
    assert!(!standing.is_done(0, 2));
    assert_eq!(
        standing.next().map(|next| (next.bolt, next.lap)),
        Some((1, 1))
    );
}

#[test]
fn an_adapter_square_to_the_wrench_changes_nothing_and_a_straight_one_does() {
    let set = |degrees: f64| {
        let values = [
            ("wanted", 100.0),
            ("wrench-length", 0.4),
            ("adapter-length", 0.05),
            ("turned", degrees.to_radians()),
        ];
        value(&answer("wrench-with-adapter", &values), "set")
    };
    assert!((set(90.0) - 100.0).abs() < 1e-9);
    assert!((set(0.0) - 100.0 / 1.125).abs() < 1e-9);
    assert!(set(180.0) > 100.0);
}

#[test]
fn another_lubricant_is_asked_about_and_never_rescaled_silently() {
    let oiled = answer(
        "lubricant-change",
        &[("torque", 100.0), ("meant", 0.20), ("on-it", 0.15)],
    );
    let asked = oiled.findings().first().unwrap();
    assert!(asked.gravity == Gravity::Stop && asked.text.contains('?'));
    // The rough guide comes with its band.
    assert!(value(&oiled, "guide-least") < value(&oiled, "guide"));
    assert!(value(&oiled, "guide") < value(&oiled, "guide-most"));
}

#[test]
fn a_trial_fit_uses_a_stretch_bolt_up() {
    let plan = Plan::new(by_turns(1), vec![Stage::Torque(30.0), Stage::Angle(1.0)]).unwrap();
    let once = [
        Happened::Ticked { bolt: 0, lap: 0 },
        Happened::Ticked { bolt: 0, lap: 1 },
    ];
    let standing = Standing::after(&plan, &once);
    let record = |before: u32| Record {
        thread_lubricant: Some("oil".to_owned()),
        head_lubricant: Some("oil".to_owned()),
        wrench: assembly_core::fastener::wrench::Scale::new(10.0, 60.0).ok(),
        used_before: vec![before],
        ..Record::default()
    };
    assert!(against(Kind::StretchToYield, &standing, &record(0)).is_empty());
    assert!(matches!(
        against(Kind::StretchToYield, &standing, &record(1)).first(),
        Some(NoCredit::UsedTooOften {
            uses: 2,
            allowed: 1,
            ..
        })
    ));
}
