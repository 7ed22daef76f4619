//! New bolts in the middle of a run, loosening, and tightening once more.

use super::layout::Layout;
use super::pattern::Pattern;
use super::run::{Happened, Plan, Standing};
use crate::fastener::stages::Stage;

fn tick(bolt: usize, lap: usize) -> Happened {
    Happened::Ticked { bolt, lap }
}

fn plan(stages: Vec<Stage>) -> Plan {
    let pattern = Pattern::new(vec![1, 0, 2], 3).unwrap();
    Plan::new(pattern, stages).unwrap()
}

#[test]
fn a_new_bolt_has_no_pull_and_no_use_behind_it() {
    let plan = plan(vec![Stage::Torque(30.0), Stage::Angle(1.5)]);
    let through: Vec<Happened> = [0, 1]
        .iter()
        .flat_map(|lap| [1, 0, 2].map(|bolt| tick(bolt, *lap)))
        .collect();
    let mut standing = Standing::after(&plan, &through);
    assert_eq!(standing.uses(), [1, 1, 1]);
    standing.take(Happened::NewBolt { bolt: 2 });
    assert_eq!(standing.uses(), [1, 1, 0]);
    let next = standing.next().unwrap();
    assert_eq!((next.bolt, next.lap, next.done_in_lap), (2, 0, 2));
    // The pull that went with the old bolt cannot be taken back any more.
    assert_eq!(standing.last(), None);
    standing.take(tick(2, 0));
    assert_eq!(
        standing.next().map(|next| (next.bolt, next.lap)),
        Some((2, 1))
    );
    standing.take(Happened::NewBolt { bolt: 9 });
    assert_eq!(standing.done(), 5);
}

// Common practice: the reverse order, in stages.
#[test]
fn loosening_goes_the_other_way_round_in_two_laps() {
    let plan = plan(vec![Stage::Torque(30.0)]).for_loosening();
    assert_eq!(plan.pattern().order(), [2, 0, 1]);
    assert_eq!(plan.ticks(), 6);
}

#[test]
fn what_ends_with_an_angle_is_not_tightened_once_more() {
    let torque = plan(vec![Stage::Torque(30.0), Stage::Torque(60.0)]);
    let again = torque.once_more().unwrap();
    assert_eq!(again.stages(), [Stage::Torque(60.0)]);
    assert_eq!(again.pattern(), torque.pattern());
    assert!(
        plan(vec![Stage::Torque(30.0), Stage::Angle(1.5)])
            .once_more()
            .is_none()
    );
}

#[test]
fn rows_of_unlike_length_are_centred_on_each_other() {
    let layout = Layout::rows(&[3, 0, 2]);
    assert_eq!(
        layout.places(),
        [(0.0, 0.0), (1.0, 0.0), (2.0, 0.0), (0.5, 2.0), (1.5, 2.0)]
    );
    assert_eq!(Layout::rows(&[2, 2]), Layout::grid(2, 2));
    assert_eq!(Layout::rows(&[]).count(), 0);
}
