//! Two tabs and two faults: every way to interleave them, and a reload between
//! any two writes.

use super::double::{Fault, Faults, MemoryShelf, MemoryVault};
use super::tests::{build, keeper, now, the_build};
use super::*;
use crate::fact::samples::{Pen, reading, sprayer};
use crate::fact::{Body, CheckMade, Fact, Mark, Outcome, Photo, StepMarked};
use build_plan::Place;

type Kept = Keeper<MemoryShelf, MemoryVault>;

fn mark(step: &str) -> Body {
    Body::StepMarked(StepMarked {
        step: step.to_owned(),
        place: None,
        mark: Mark::Done,
        words: None,
    })
}

/// What is written down in a few minutes, of several kinds.
fn minutes_of_work() -> [Body; 4] {
    [
        mark("wash"),
        Body::CheckMade(CheckMade {
            check: "clean".to_owned(),
            place: None,
            outcome: Outcome::Good,
            words: Some("white in all bores".to_owned()),
            lasts: None,
        }),
        reading("main-journal-diameter", Place::main(1), "2.4483"),
        Body::Photo(Photo {
            hash: "0f".repeat(32),
            media: "image/jpeg".to_owned(),
            bytes: 1,
            step: Some("wash".to_owned()),
            place: None,
            words: None,
        }),
    ]
}

/// A reload: a new page opens the same storage and heals it.
fn reload(kept: &Kept) {
    let found = now(kept.open());
    let _ = now(kept.heal(&found));
}

/// Two tabs write in the order of these bits, each in turn reloaded after its
/// own write. Gives what was acknowledged.
fn two_tabs(kept: &Kept, order: u32, many: usize) -> Vec<Fact> {
    let tabs = [kept.clone(), kept.clone()];
    let mut pens = [Pen::new(1), Pen::new(1).in_another_tab()];
    let work = minutes_of_work();
    let mut acknowledged = Vec::new();
    let first = pens[0].write(sprayer());
    if now(kept.keep(build(), &first)).is_safe() {
        acknowledged.push(first);
    }
    let mut written = [0, 0];
    for turn in 0..many {
        let tab = usize::from(order >> turn & 1 == 1);
        let fact = pens[tab].write(work[written[tab] % work.len()].clone());
        written[tab] += 1;
        if now(tabs[tab].keep(build(), &fact)).is_safe() {
            acknowledged.push(fact);
        }
        reload(&tabs[tab]);
    }
    acknowledged
}

fn all_are_there(kept: &Kept, acknowledged: &[Fact], told: &str) {
    let journal = the_build(kept);
    for fact in acknowledged {
        assert_eq!(journal.get(fact.id()), Some(fact), "{told}");
    }
}

#[test]
fn two_tabs_in_every_order_lose_nothing_and_read_the_same() {
    for order in 0..1_u32 << 6 {
        let kept = keeper(&Faults::none());
        let acknowledged = two_tabs(&kept, order, 6);
        assert_eq!(acknowledged.len(), 7);
        all_are_there(&kept, &acknowledged, &format!("{order:06b}"));
        assert_eq!(
            the_build(&kept).len(),
            7,
            "two facts in one place: {order:06b}"
        );
    }
}

#[test]
fn two_tabs_with_a_fault_at_any_operation_lose_nothing_acknowledged() {
    for order in [0b0101, 0b0011, 0b0110] {
        let faults = Faults::none();
        two_tabs(&keeper(&faults), order, 4);
        for operation in 0..faults.operations().len() {
            for fault in [
                Fault::Fails(StorageError::Full),
                Fault::Fails(StorageError::Gone),
                Fault::DoneButFails(StorageError::Blocked),
                Fault::Tears,
                Fault::Strays,
                Fault::FullFromNow,
            ] {
                let faults = Faults::at(operation, fault.clone());
                let kept = keeper(&faults);
                let acknowledged = two_tabs(&kept, order, 4);
                faults.clear();
                kept.shelf().crash(1000);
                all_are_there(
                    &kept,
                    &acknowledged,
                    &format!("{order:04b} {fault:?} {operation}"),
                );
            }
        }
    }
}

#[test]
fn two_faults_close_to_each_other_lose_nothing_acknowledged() {
    let faults = Faults::none();
    two_tabs(&keeper(&faults), 0b01, 2);
    let operations = faults.operations().len();
    let kinds = [
        Fault::Fails(StorageError::Full),
        Fault::Fails(StorageError::Gone),
        Fault::DoneButFails(StorageError::Gone),
        Fault::Tears,
        Fault::Strays,
    ];
    for first in 0..operations {
        for second in first + 1..operations.min(first + 6) {
            for one in &kinds {
                for other in &kinds {
                    let faults = Faults::at(first, one.clone()).and_at(second, other.clone());
                    let kept = keeper(&faults);
                    let acknowledged = two_tabs(&kept, 0b01, 2);
                    faults.clear();
                    kept.shelf().crash(1000);
                    let told = format!("{one:?} at {first}, {other:?} at {second}");
                    all_are_there(&kept, &acknowledged, &told);
                }
            }
        }
    }
}
