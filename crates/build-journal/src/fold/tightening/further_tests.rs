//! Groups taken further fact by fact are those worked out from scratch.

use proptest::prelude::*;

use super::facts::{Bench, head};
use super::{Gathering, tightenings};
use crate::fact::samples::Pen;
use crate::fact::{
    Body, BoltCompared, BoltMeasured, BoltPulled, BoltState, BoltsRenewed, FastenerGroup,
    JointClosed, Knew, Note, Outcome, RunMark, RunMarked, RunOpened, SealantPutOn, Struck,
    ToolListed, Way,
};
use crate::id::{OwnId, SittingId, ToolId};

/// Something that is done at a group of six.
#[derive(Clone, Debug)]
enum Done {
    /// The bolt that is next, or this one in this lap.
    Pulled(Option<(u32, u32)>),
    Opened(u128),
    Marked(RunMark, u32, Knew),
    Begun(Way),
    Renewed(Vec<u32>),
    Compared(u32, Outcome),
    Measured(u32, BoltState, &'static str),
    Sealed,
    /// The sealant was put on by the fact so many back.
    Closed(usize),
    Described(u32),
    Listed(&'static str),
    /// The fact so many back.
    Struck(usize),
    /// What has to do with no group.
    Noted,
}

fn done() -> impl Strategy<Value = Done> {
    let bolt = || 1_u32..8;
    let marks = prop::sample::select(RunMark::ALL);
    let knew = prop::sample::select(Knew::ALL);
    let instrument = prop::sample::select(vec!["outside-micrometer-tenths", "caliper", "unheard"]);
    prop_oneof![
        30 => Just(Done::Pulled(None)),
        3 => (bolt(), 1_u32..5).prop_map(|one| Done::Pulled(Some(one))),
        1 => (1_u128..4).prop_map(Done::Opened),
        3 => (marks, bolt(), knew).prop_map(|(mark, number, knew)| Done::Marked(mark, number, knew)),
        2 => prop::sample::select(Way::ALL).prop_map(Done::Begun),
        1 => prop::collection::vec(bolt(), 0..3).prop_map(Done::Renewed),
        1 => (bolt(), prop::sample::select(Outcome::ALL)).prop_map(|(bolt, outcome)| Done::Compared(bolt, outcome)),
        2 => (bolt(), prop::sample::select(BoltState::ALL), prop::sample::select(vec!["2.5", "2.506 in", "long"]))
            .prop_map(|(bolt, state, typed)| Done::Measured(bolt, state, typed)),
        1 => Just(Done::Sealed),
        1 => (0_usize..4).prop_map(Done::Closed),
        1 => (4_u32..7).prop_map(Done::Described),
        1 => instrument.prop_map(Done::Listed),
        1 => (0_usize..6).prop_map(Done::Struck),
        1 => Just(Done::Noted),
    ]
}

fn described(bolts: u32) -> FastenerGroup {
    let mut group = head();
    group.sheet.uses_allowed = Some(1);
    group.bolts = bolts;
    group
}

/// What is written down of it.
fn body(bench: &Bench, done: &Done) -> Body {
    let (group, run, sitting) = (OwnId::from_random(7), bench.run, bench.sitting);
    let back = |by: usize| {
        let mut facts = bench.journal.facts().rev();
        facts.nth(by).map_or(run, crate::Fact::id)
    };
    match done.clone() {
        Done::Pulled(one) => {
            let all = tightenings(&bench.journal);
            let next = all.run(run).and_then(super::Run::next);
            let next = next.map(|next| (number(next.bolt), number(next.lap)));
            let (bolt, lap) = one.or(next).unwrap_or((1, 1));
            Body::BoltPulled(BoltPulled {
                run,
                bolt,
                lap,
                sitting,
            })
        }
        Done::Opened(by) => Body::RunOpened(RunOpened {
            run,
            sitting: SittingId::from_random(by),
        }),
        Done::Marked(mark, number, knew) => Body::RunMarked(RunMarked {
            run,
            mark,
            bolt: Some(number),
            lap: Some(number),
            knew: Some(knew),
            words: None,
        }),
        Done::Begun(way) => bench.begun(way),
        Done::Renewed(bolts) => Body::BoltsRenewed(BoltsRenewed {
            group,
            place: None,
            bolts,
            lot: None,
        }),
        Done::Compared(bolt, outcome) => Body::BoltCompared(BoltCompared {
            group,
            place: None,
            bolt,
            outcome,
            words: None,
        }),
        Done::Measured(bolt, state, typed) => Body::BoltMeasured(BoltMeasured {
            group,
            place: None,
            bolt,
            state,
            typed: typed.to_owned(),
            unit: "in".to_owned(),
            tool: Some(ToolId::from_random(1)),
        }),
        Done::Sealed => Body::SealantPutOn(SealantPutOn {
            group,
            place: None,
            what: None,
            close_by: "10 min".to_owned(),
            torque_from: None,
            oil_from: None,
        }),
        Done::Closed(by) => Body::JointClosed(JointClosed { sealant: back(by) }),
        Done::Described(bolts) => Body::FastenerGroup(described(bolts)),
        Done::Listed(instrument) => Body::ToolListed(ToolListed {
            tool: ToolId::from_random(1),
            name: "micrometer".to_owned(),
            instrument: instrument.to_owned(),
            mark: None,
        }),
        Done::Struck(by) => Body::Struck(Struck {
            fact: back(by),
            reason: None,
        }),
        Done::Noted => Body::Note(Note {
            text: "threads chased".to_owned(),
            place: None,
            step: None,
        }),
    }
}

fn number(from_nothing: usize) -> u32 {
    u32::try_from(from_nothing + 1).unwrap()
}

proptest! {
    #[test]
    fn fact_by_fact_and_from_scratch_agree(all in prop::collection::vec(done(), 1..60)) {
        let mut bench = Bench::with(described(6));
        let mut gathering = Gathering::of(&bench.journal);
        for one in &all {
            let fact = bench.write(body(&bench, one));
            match one {
                Done::Begun(_) => bench.run = fact,
                Done::Described(_) => bench.sheet = fact,
                _ => {}
            }
            gathering = gathering.further(&bench.journal);
            prop_assert_eq!(&gathering, &Gathering::of(&bench.journal));
        }
    }
}

#[test]
fn a_pull_that_came_late_and_two_at_once_are_taken_in_as_well() {
    let mut bench = Bench::with(head());
    // Another device, whose clock is behind: its facts sort before the last ones.
    let mut other = Pen::new(2);
    let mut gathering = Gathering::of(&bench.journal);
    bench.go_on(3);
    gathering = gathering.further(&bench.journal);
    assert_eq!(gathering.all(), &bench.all(), "three at once");
    let late = other.write(Body::BoltPulled(BoltPulled {
        run: bench.run,
        bolt: 3,
        lap: 1,
        sitting: SittingId::from_random(9),
    }));
    let last = bench.journal.facts().next_back().map(crate::Fact::id);
    assert!(Some(late.id()) < last, "it is late");
    bench.take(late);
    gathering = gathering.further(&bench.journal);
    assert_eq!(gathering.all(), &bench.all(), "one that came late");
    gathering = gathering.further(&bench.journal);
    assert_eq!(gathering.all(), &bench.all(), "nothing new");
}
