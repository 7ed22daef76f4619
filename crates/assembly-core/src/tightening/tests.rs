//! What must hold for any group of bolts and anything that happens to it.

use std::f64::consts::FRAC_PI_2;

use proptest::prelude::*;

use super::credit::{NoCredit, Record, against};
use super::generate::{CapBolt, Role, by_turns, caps, centre_out, criss_cross, ladder, star};
use super::interrupted::{Advice, Gasket, Interruption, Known, Paint, Remedy, advice};
use super::kind::Kind;
use super::layout::Layout;
use super::pattern::{Pattern, PatternError};
use super::run::{Happened, Ignored, Plan, Standing, Sureness};
use crate::fastener::stages::{Stage, StageError};
use crate::fastener::wrench::{Place, Scale};

fn numbered(pattern: &Pattern) -> Vec<usize> {
    pattern.order().iter().map(|bolt| bolt + 1).collect()
}

fn is_whole(pattern: &Pattern, count: usize) -> bool {
    count == 0 && pattern.order().is_empty()
        || Pattern::new(pattern.order().to_vec(), count).is_ok()
}

// Common practice: a head of two rows of five begins in the middle and ends at the ends.
#[test]
fn a_head_is_tightened_from_the_middle_out_and_across() {
    let order = numbered(&centre_out(&Layout::grid(2, 5)));
    assert_eq!(order[..2], [3, 8]);
    let mut ends = order[6..].to_vec();
    ends.sort_unstable();
    assert_eq!(ends, [1, 5, 6, 10]);
    // The same head drawn upright has the same order.
    let upright: Vec<(f64, f64)> = Layout::grid(2, 5)
        .places()
        .iter()
        .map(|(x, y)| (*y, *x))
        .collect();
    assert_eq!(numbered(&centre_out(&Layout::at(&upright))), order);
}

#[test]
fn a_cover_ends_at_its_corners() {
    let order = numbered(&criss_cross(&Layout::grid(3, 3)));
    assert_eq!(order[0], 5);
    let mut corners = order[5..].to_vec();
    corners.sort_unstable();
    assert_eq!(corners, [1, 3, 7, 9]);
}

// Common practice: five bolts go 1-3-5-2-4, six 1-4 and so on across.
#[test]
fn a_wheel_is_tightened_across() {
    assert_eq!(numbered(&star(5)), [1, 3, 5, 2, 4]);
    assert_eq!(numbered(&star(4)), [1, 3, 2, 4]);
    assert_eq!(numbered(&star(8)), [1, 5, 3, 7, 2, 6, 4, 8]);
    assert_eq!(numbered(&star(1)), [1]);
    assert!(star(0).order().is_empty());
}

// Common practice: caps 3-2-4-1-5, the thrust cap last of all.
#[test]
fn caps_go_from_the_middle_out_inner_before_outer_and_the_thrust_last() {
    let bolts: Vec<CapBolt> = (0..5)
        .flat_map(|cap| {
            [Role::Inner, Role::Inner, Role::Outer, Role::Outer].map(|role| CapBolt { cap, role })
        })
        .collect();
    let of = |thrust| -> Vec<(usize, Role)> {
        let pattern = caps(&bolts, thrust);
        assert!(is_whole(&pattern, 20));
        pattern
            .order()
            .iter()
            .map(|bolt| (bolts[*bolt].cap + 1, bolts[*bolt].role))
            .collect()
    };
    let inner: Vec<usize> = of(None)
        .iter()
        .step_by(2)
        .take(5)
        .map(|one| one.0)
        .collect();
    assert_eq!(inner, [3, 2, 4, 1, 5]);
    assert!(of(None)[..10].iter().all(|one| one.1 == Role::Inner));
    assert!(of(Some(2))[16..].iter().all(|one| one.0 == 3));
}

#[test]
fn a_ladder_is_long_then_short_then_side() {
    let layout = Layout::grid(3, 4);
    let roles: Vec<Role> = [Role::Outer, Role::Inner, Role::Side]
        .into_iter()
        .flat_map(|role| [role; 4])
        .collect();
    let order = ladder(&layout, &roles);
    assert!(is_whole(&order, 12));
    let came: Vec<Role> = order.order().iter().map(|bolt| roles[*bolt]).collect();
    assert!(came.windows(2).all(|pair| pair[0] <= pair[1]));
    assert_eq!(order.order()[0], 5);
}

#[test]
fn what_is_wrong_with_an_order_is_named() {
    assert_eq!(Pattern::new(vec![], 0), Err(PatternError::NoBolts));
    assert_eq!(
        Pattern::new(vec![0, 1, 0], 3),
        Err(PatternError::Repeated {
            bolt: 0,
            first: 0,
            again: 2
        })
    );
    assert_eq!(
        Pattern::new(vec![0, 3], 3),
        Err(PatternError::NotThere { bolt: 3, count: 3 })
    );
    let missing = Pattern::new(vec![2], 4).unwrap_err();
    assert!(missing.to_string().contains("1, 2, 4"), "{missing}");
}

fn head() -> Plan {
    let stages = vec![
        Stage::Torque(30.0),
        Stage::Torque(60.0),
        Stage::Angle(FRAC_PI_2),
    ];
    Plan::new(centre_out(&Layout::grid(2, 5)), stages).unwrap()
}

fn tick(bolt: usize, lap: usize) -> Happened {
    Happened::Ticked { bolt, lap }
}

/// Ticks what is next, so many times.
fn ticked(plan: &Plan, times: usize) -> Vec<Happened> {
    let mut happened = Vec::new();
    let mut standing = Standing::after(plan, &happened);
    for _ in 0..times {
        let Some(next) = standing.next() else { break };
        happened.push(tick(next.bolt, next.lap));
        standing.take(tick(next.bolt, next.lap));
    }
    happened
}

#[test]
fn an_angle_lap_is_never_merged_into_another() {
    let plan = head();
    let mut happened = ticked(&plan, 19);
    let open = Standing::after(&plan, &happened).next().unwrap();
    // Nineteen of twenty pulls to torque: no angle counts yet.
    happened.push(tick(open.bolt, 2));
    let standing = Standing::after(&plan, &happened);
    assert_eq!(standing.next(), Some(open));
    assert_eq!(
        standing.ignored(),
        [Ignored::OtherLap {
            bolt: open.bolt,
            lap: 2,
            on: 1
        }]
    );
    let two_angles = Plan::new(
        by_turns(2),
        vec![Stage::Torque(30.0), Stage::Angle(1.0), Stage::Angle(0.5)],
    );
    let standing = Standing::after(
        &two_angles.unwrap(),
        &[tick(0, 0), tick(1, 0), tick(0, 1), tick(0, 2)],
    );
    assert!(!standing.is_done(0, 2));
}

#[test]
fn a_bolt_that_was_passed_over_comes_back() {
    let plan = head();
    let order = plan.pattern().order().to_vec();
    let standing = Standing::after(&plan, &[tick(order[0], 0), tick(order[2], 0)]);
    assert_eq!(standing.passed_over(), [order[1]]);
    assert_eq!(standing.next().unwrap().bolt, order[1]);
}

#[test]
fn only_the_last_tick_is_taken_back_and_only_once() {
    let plan = head();
    let mut happened = ticked(&plan, 3);
    happened.push(Happened::TakenBack);
    happened.push(Happened::TakenBack);
    assert_eq!(Standing::after(&plan, &happened).done(), 2);
}

#[test]
fn backing_off_begins_anew_and_a_stretch_bolt_is_used_up_all_the_same() {
    let plan = head();
    let mut happened = ticked(&plan, 30);
    assert!(Standing::after(&plan, &happened).next().is_none());
    happened.push(Happened::BackedOff);
    let standing = Standing::after(&plan, &happened);
    assert_eq!((standing.done(), standing.backed_off()), (0, 1));
    assert!(standing.uses().iter().all(|uses| *uses == 1));
    let mut again = happened.clone();
    let second = ticked(&plan, 30);
    again.extend(second);
    let reasons = against(
        Kind::StretchToYield,
        &Standing::after(&plan, &again),
        &recorded(),
    );
    let used_up = |one: &NoCredit| {
        matches!(
            one,
            NoCredit::UsedTooOften {
                uses: 2,
                allowed: 1,
                ..
            }
        )
    };
    assert_eq!(reasons.iter().filter(|one| used_up(one)).count(), 10);
    assert!(
        against(
            Kind::TorqueAndAngle,
            &Standing::after(&plan, &again),
            &recorded()
        )
        .is_empty()
    );
}

#[test]
fn pulling_a_bolt_again_at_the_final_torque_is_no_further_use() {
    let plan = Plan::new(by_turns(2), vec![Stage::Torque(30.0)]).unwrap();
    let relapped = [
        tick(0, 0),
        tick(1, 0),
        Happened::LapRestarted { lap: 0 },
        tick(0, 0),
        tick(1, 0),
    ];
    assert_eq!(Standing::after(&plan, &relapped).uses(), [1, 1]);
    let taken_back = [tick(0, 0), Happened::TakenBack, tick(0, 0)];
    assert_eq!(Standing::after(&plan, &taken_back).uses(), [1, 0]);
    let again = [tick(0, 0), Happened::BackedOff, tick(0, 0)];
    assert_eq!(Standing::after(&plan, &again).uses(), [2, 0]);
}

fn recorded() -> Record {
    Record {
        thread_lubricant: Some("oil".to_owned()),
        head_lubricant: Some("oil".to_owned()),
        wrench: Scale::new(20.0, 200.0).ok(),
        ..Record::default()
    }
}

#[test]
fn what_giving_up_costs_goes_by_the_kind_and_the_lap() {
    use crate::tightening::interrupted::{Gasket, Remedy, given_up};
    let stages = [Stage::Torque(30.0), Stage::Torque(50.0), Stage::Angle(1.5)];
    for (kind, lap, remedy) in [
        (Kind::StretchToYield, 0, Remedy::BackOffAndBegin),
        (Kind::StretchToYield, 1, Remedy::BackOffAndBegin),
        (Kind::StretchToYield, 2, Remedy::NewBolts),
        (Kind::TorqueAndAngle, 2, Remedy::BackOffToSnug),
        (Kind::Plain, 1, Remedy::BackOffAndBegin),
    ] {
        let advice = given_up(kind, &stages, lap, Gasket::None);
        assert_eq!(advice.remedy, remedy, "{kind:?} {lap}");
        assert!(!advice.new_gasket);
        assert!(given_up(kind, &stages, lap, Gasket::Crushed).new_gasket);
    }
}

#[test]
fn each_reason_against_the_credit_is_named() {
    let plan = head();
    let whole = Standing::after(&plan, &ticked(&plan, 30));
    let not = |record: &Record| against(Kind::TorqueAndAngle, &whole, record);
    assert!(not(&recorded()).is_empty());
    let blank = Record {
        head_lubricant: Some(" ".to_owned()),
        ..recorded()
    };
    assert_eq!(
        not(&blank),
        [NoCredit::LubricantNotRecorded {
            place: "under the heads"
        }]
    );
    assert_eq!(
        not(&Record {
            wrench: None,
            ..recorded()
        }),
        [NoCredit::NoWrench]
    );
    let long = Record {
        wrench: Scale::new(60.0, 400.0).ok(),
        ..recorded()
    };
    assert_eq!(
        not(&long),
        [
            NoCredit::WrenchOutsideItsBand {
                lap: 0,
                place: Place::OffTheScale
            },
            NoCredit::WrenchOutsideItsBand {
                lap: 1,
                place: Place::TooLow
            },
        ]
    );
    // The first lap with a short one: only the last is held against the long one.
    let short = super::wrenches::Wrench::new(Scale::new(10.0, 60.0).unwrap(), None, None);
    let changed = Record {
        others: [(0, short)].into(),
        ..long.clone()
    };
    assert_eq!(
        not(&changed),
        [NoCredit::WrenchOutsideItsBand {
            lap: 1,
            place: Place::TooLow
        }]
    );
    // A wrench is named for one lap of two.
    assert_eq!(
        not(&Record {
            wrench: None,
            ..changed
        }),
        [NoCredit::NoWrench]
    );
    // The crowfoot points back: 60 at the bolt is 240 on the wrench.
    let back = Record {
        adapter: crate::fastener::adapter::Adapter::new(1.0, 0.75, std::f64::consts::PI).ok(),
        ..recorded()
    };
    assert!(
        matches!(
            not(&back)[..],
            [
                NoCredit::WrenchOutsideItsBand {
                    place: Place::OffTheScale,
                    ..
                },
                ..
            ]
        ),
        "{:?}",
        not(&back)
    );
    let other = Record {
        not_as_mapped: vec![4],
        ..recorded()
    };
    assert_eq!(not(&other), [NoCredit::NotAsMapped { bolt: 4 }]);
    let own_limit = Record {
        uses_allowed: Some(2),
        used_before: vec![2, 1],
        ..recorded()
    };
    assert_eq!(
        not(&own_limit),
        [NoCredit::UsedTooOften {
            bolt: 0,
            uses: 3,
            allowed: 2
        }]
    );
    let half = Standing::after(&plan, &ticked(&plan, 12));
    assert_eq!(
        against(Kind::Plain, &half, &recorded()),
        [NoCredit::NotThrough { left: 18, of: 30 }]
    );
    let mut happened = ticked(&plan, 30);
    happened.push(Happened::Interrupted);
    let unsaid = Standing::after(&plan, &happened);
    assert_eq!(unsaid.sureness(), Sureness::NotSaid);
    assert_eq!(
        against(Kind::Plain, &unsaid, &recorded()),
        [NoCredit::NotSaid]
    );
}

// Common practice, kind by kind.
#[test]
fn after_an_interruption_each_kind_has_its_rule() {
    let torque = [Stage::Torque(30.0), Stage::Torque(60.0)];
    let angle = [Stage::Torque(30.0), Stage::Angle(FRAC_PI_2)];
    let ask = |kind, stages: &[Stage], lap, known, gasket, paint| {
        advice(&Interruption {
            kind,
            stages,
            lap,
            known,
            gasket,
            paint,
        })
    };
    let (none, crushed, missing) = (Gasket::None, Gasket::Crushed, Paint::Missing);
    let of = |remedy, new_gasket| Advice { remedy, new_gasket };
    assert_eq!(
        ask(Kind::Plain, &torque, 0, Known::Lap, crushed, missing),
        of(Remedy::RestartLap, false)
    );
    assert_eq!(
        ask(Kind::Plain, &torque, 1, Known::Lap, crushed, missing),
        of(Remedy::BackOffAndBegin, true)
    );
    assert_eq!(
        ask(Kind::Plain, &torque, 0, Known::Nothing, none, missing),
        of(Remedy::BackOffOrRelap, false)
    );
    assert_eq!(
        ask(Kind::StudAndNut, &torque, 1, Known::Bolt, crushed, missing),
        of(Remedy::GoOn, false)
    );
    assert_eq!(
        ask(
            Kind::StretchToYield,
            &angle,
            1,
            Known::Lap,
            crushed,
            missing
        ),
        of(Remedy::NewBolts, true)
    );
    assert_eq!(
        ask(
            Kind::StretchToYield,
            &angle,
            1,
            Known::Nothing,
            crushed,
            Paint::OnEveryBolt
        ),
        of(Remedy::PaintDecides, false)
    );
    assert_eq!(
        ask(Kind::TorqueAndAngle, &angle, 1, Known::Lap, none, missing),
        of(Remedy::BackOffToSnug, false)
    );
    // The snug lap itself may be begun again: no bolt was turned yet.
    assert_eq!(
        ask(
            Kind::StretchToYield,
            &angle,
            0,
            Known::Lap,
            crushed,
            missing
        ),
        of(Remedy::RestartLap, false)
    );
    assert_eq!(
        ask(
            Kind::StretchMeasured,
            &torque,
            1,
            Known::Nothing,
            none,
            missing
        ),
        of(Remedy::MeasureStretch, false)
    );
}

#[test]
fn a_plan_with_senseless_stages_is_refused_before_the_first_tap() {
    let refused = |stages| Plan::new(by_turns(2), stages).unwrap_err();
    assert_eq!(
        refused(vec![Stage::Angle(1.0)]),
        StageError::AngleWithoutSnug { stage: 1 }
    );
    assert!(matches!(
        refused(vec![Stage::Torque(60.0), Stage::Torque(30.0)]),
        StageError::GoesDown { stage: 2, .. }
    ));
}

fn places() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let place = (
        prop_oneof![-5.0..5.0_f64, Just(0.0), Just(f64::NAN)],
        prop_oneof![-5.0..5.0_f64, Just(0.0), Just(f64::INFINITY)],
    );
    prop::collection::vec(place, 0..40)
}

fn anything() -> impl Strategy<Value = Happened> {
    prop_oneof![
        8 => (0..12_usize, 0..4_usize).prop_map(|(bolt, lap)| Happened::Ticked { bolt, lap }),
        1 => Just(Happened::TakenBack),
        1 => Just(Happened::Interrupted),
        1 => Just(Happened::Confirmed),
        1 => (0..5_usize).prop_map(|lap| Happened::LapRestarted { lap }),
        1 => Just(Happened::BackedOff),
        1 => (0..12_usize).prop_map(|bolt| Happened::NewBolt { bolt }),
    ]
}

proptest! {
    #[test]
    fn every_generated_order_has_every_bolt_once(places in places(), count in 1..60_usize, roles in prop::collection::vec(0..3_u8, 0..40)) {
        let layout = Layout::at(&places);
        let role = |of: &u8| [Role::Inner, Role::Outer, Role::Side][usize::from(*of)];
        let roles: Vec<Role> = roles.iter().map(role).collect();
        for pattern in [centre_out(&layout), criss_cross(&layout), ladder(&layout, &roles)] {
            prop_assert!(is_whole(&pattern, places.len()));
        }
        prop_assert!(is_whole(&star(count), count));
        let bolts: Vec<CapBolt> = roles.iter().enumerate().map(|(at, role)| CapBolt { cap: at % 7, role: *role }).collect();
        prop_assert!(is_whole(&caps(&bolts, Some(3)), bolts.len()));
        // Loosening is the same the other way round.
        let tight = centre_out(&layout);
        prop_assert_eq!(tight.for_loosening().for_loosening(), tight);
    }

    #[test]
    fn a_head_never_goes_back_toward_its_middle(rows in 1..4_u8, columns in 4..12_u8) {
        let layout = Layout::grid(rows, columns);
        let middle = layout.middle().0;
        let away: Vec<f64> = centre_out(&layout)
            .order()
            .iter()
            .map(|bolt| (layout.places()[*bolt].0 - middle).abs())
            .collect();
        prop_assert!(away.windows(2).all(|pair| pair[0] <= pair[1] + 1e-9));
    }

    #[test]
    fn a_wheel_never_pulls_two_neighbours_in_a_row(count in 5..40_usize) {
        let order = star(count);
        for pair in order.order().windows(2) {
            let apart = pair[0].abs_diff(pair[1]);
            prop_assert!(apart.min(count - apart) > 1, "{:?}", order);
        }
    }

    /// Whatever happens: nothing that was not ticked is shown as done, no lap
    /// is begun before the one before it is through, and it can be finished.
    #[test]
    fn whatever_happens_the_place_is_never_lost(happened in prop::collection::vec(anything(), 0..120)) {
        let plan = head();
        let standing = Standing::after(&plan, &happened);
        for bolt in 0..10 {
            for lap in 0..3 {
                if standing.is_done(bolt, lap) {
                    prop_assert!(happened.contains(&tick(bolt, lap)));
                    prop_assert!((0..lap).all(|earlier| (0..10).all(|bolt| standing.is_done(bolt, earlier))));
                }
            }
        }
        let left = plan.ticks() - standing.done();
        prop_assert_eq!(standing.next().is_none(), left == 0);
        let mut onward = standing.clone();
        for _ in 0..left {
            let next = onward.next().unwrap();
            onward.take(tick(next.bolt, next.lap));
        }
        prop_assert!(onward.next().is_none());
    }

    /// Reload at any point: what happened so far gives the same standing as
    /// taking it one by one.
    #[test]
    fn a_reload_between_any_two_taps_changes_nothing(happened in prop::collection::vec(anything(), 0..60), at in 0..60_usize) {
        let plan = head();
        let (before, after) = happened.split_at(at.min(happened.len()));
        let mut standing = Standing::after(&plan, before);
        for one in after {
            standing.take(*one);
        }
        prop_assert_eq!(standing, Standing::after(&plan, &happened));
    }

    /// An unknown angle is never answered with carrying on or pulling again.
    #[test]
    fn an_angle_that_may_have_been_turned_is_never_pulled_again(
        kind in prop::sample::select(Kind::ALL.to_vec()), lap in 1..3_usize, nothing in any::<bool>(), crushed in any::<bool>(),
    ) {
        let stages = [Stage::Torque(30.0), Stage::Angle(1.0), Stage::Angle(0.5)];
        let known = if nothing { Known::Nothing } else { Known::Lap };
        let gasket = if crushed { Gasket::Crushed } else { Gasket::None };
        let said = advice(&Interruption { kind, stages: &stages, lap, known, gasket, paint: Paint::Missing });
        prop_assert!(!matches!(said.remedy, Remedy::GoOn | Remedy::RestartLap | Remedy::BackOffOrRelap));
        prop_assert!(!said.remedy.sentence().is_empty());
    }
}
