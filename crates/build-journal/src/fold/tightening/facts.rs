//! A builder at the bench, for the tests of tightening.

use crate::fact::samples::Pen;
use crate::fact::{
    BoltLayout, BoltPulled, FastenerGroup, FastenerSheet, Knew, Origin, RunBegun, RunMark,
    RunMarked, RunOpened, Way, Wrench,
};
use crate::fold::tightening::{Group, Part, Run, Tightenings, tightenings};
use crate::id::{BuildId, FactId, OwnId, SittingId};
use crate::journal::Journal;
use crate::{Body, Fact};
use build_plan::At;

/// A bench with one group of fasteners on it.
pub(super) struct Bench {
    pub(super) journal: Journal,
    pen: Pen,
    pub(super) sheet: FactId,
    pub(super) run: FactId,
    pub(super) sitting: SittingId,
}

/// A head of two rows of three, to 30, 60 and 90 foot-pounds.
pub(super) fn head() -> FastenerGroup {
    FastenerGroup {
        own: OwnId::from_random(7),
        label: "head".to_owned(),
        per: None,
        bolts: 6,
        size: None,
        lubricant: Some("engine oil".to_owned()),
        stages: ["30", "60 ft-lb", "90"].map(str::to_owned).to_vec(),
        source: Some("page 31".to_owned()),
        stale_with: Vec::new(),
        sheet: Box::new(FastenerSheet {
            holds: Some("head".to_owned()),
            fastener: Some("plain".to_owned()),
            under_head: Some("engine oil".to_owned()),
            wrench: Some(Wrench {
                name: Some("the long one".to_owned()),
                low: "20".to_owned(),
                high: "150".to_owned(),
                unit: "ft-lb".to_owned(),
                step: None,
                grip: None,
            }),
            layout: Some(BoltLayout::Rows(vec![3, 3])),
            order: vec![2, 5, 4, 3, 1, 6],
            order_from: Some(Origin::Printed),
            ..FastenerSheet::default()
        }),
    }
}

impl Bench {
    /// With this group, and a run begun over it.
    pub(super) fn with(group: FastenerGroup) -> Self {
        let mut bench = Self::without_a_run(group);
        bench.begin(Way::Tighten);
        bench
    }

    pub(super) fn without_a_run(group: FastenerGroup) -> Self {
        let mut pen = Pen::new(1);
        let mut journal = Journal::new(BuildId::from_random(1));
        let described = pen.write(Body::FastenerGroup(group));
        let sheet = described.id();
        journal.take(described);
        Self {
            journal,
            pen,
            sheet,
            run: sheet,
            sitting: SittingId::from_random(1),
        }
    }

    pub(super) fn write(&mut self, body: Body) -> FactId {
        let fact = self.pen.write(body);
        let id = fact.id();
        self.journal.take(fact);
        id
    }

    pub(super) fn take(&mut self, fact: Fact) {
        self.pen.observe(&fact);
        self.journal.take(fact);
    }

    pub(super) fn begin(&mut self, way: Way) {
        self.run = self.write(self.begun(way));
    }

    /// That a run is begun.
    pub(super) fn begun(&self, way: Way) -> Body {
        Body::RunBegun(RunBegun {
            group: OwnId::from_random(7),
            place: None,
            sheet: self.sheet,
            way,
            sitting: self.sitting,
        })
    }

    pub(super) fn describe(&mut self, group: FastenerGroup) {
        self.sheet = self.write(Body::FastenerGroup(group));
    }

    pub(super) fn pull(&mut self, bolt: u32, lap: u32) -> FactId {
        self.write(Body::BoltPulled(BoltPulled {
            run: self.run,
            bolt,
            lap,
            sitting: self.sitting,
        }))
    }

    /// As many pulls as the run asks for, bolt by bolt.
    pub(super) fn go_on(&mut self, pulls: usize) {
        for _ in 0..pulls {
            let next = self.run().next().unwrap();
            self.pull(number(next.bolt), number(next.lap));
        }
    }

    pub(super) fn mark(&mut self, mark: RunMark) {
        self.mark_with(mark, None, None);
    }

    pub(super) fn mark_with(&mut self, mark: RunMark, lap: Option<u32>, knew: Option<Knew>) {
        self.write(Body::RunMarked(RunMarked {
            run: self.run,
            mark,
            bolt: None,
            lap,
            knew,
            words: None,
        }));
    }

    /// The screen is opened anew.
    pub(super) fn open(&mut self, sitting: u128) {
        self.sitting = SittingId::from_random(sitting);
        self.write(Body::RunOpened(RunOpened {
            run: self.run,
            sitting: self.sitting,
        }));
    }

    pub(super) fn all(&self) -> Tightenings {
        tightenings(&self.journal)
    }

    pub(super) fn group(&self) -> Group {
        self.all().groups.remove(0)
    }

    pub(super) fn part(&self) -> Part {
        self.group().part(At::Engine).unwrap().clone()
    }

    pub(super) fn run(&self) -> Run {
        self.all().run(self.run).unwrap().clone()
    }
}

fn number(from_nothing: usize) -> u32 {
    u32::try_from(from_nothing + 1).unwrap()
}
