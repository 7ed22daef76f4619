//! What of a tightening is done and what is next, from what happened.

use super::pattern::Pattern;
use crate::fastener::stages::{Stage, StageError, check};

/// A tightening that is to be made: an order of bolts, and a lap over all of
/// them for each stage.
#[derive(Clone, PartialEq, Debug)]
pub struct Plan {
    pattern: Pattern,
    stages: Vec<Stage>,
}

impl Plan {
    /// A tightening in this order, in these stages.
    ///
    /// # Errors
    /// What is wrong with the stages.
    pub fn new(pattern: Pattern, stages: Vec<Stage>) -> Result<Self, StageError> {
        check(&stages)?;
        Ok(Self { pattern, stages })
    }

    /// The same bolts loosened: the other way round, cold, two laps of a quarter
    /// turn each before they are run out by hand. Common practice; a head that
    /// is let go at one end first may warp.
    #[must_use]
    pub fn for_loosening(&self) -> Self {
        let quarter = Stage::Angle(std::f64::consts::FRAC_PI_2);
        Self {
            pattern: self.pattern.for_loosening(),
            stages: vec![quarter, quarter],
        }
    }

    /// The same bolts tightened once more after they were hot: one lap at the
    /// last torque. `None` when the list ends with no torque: such bolts are not
    /// turned on.
    #[must_use]
    pub fn once_more(&self) -> Option<Self> {
        let last = self
            .stages
            .last()
            .filter(|stage| matches!(stage, Stage::Torque(_)))?;
        Some(Self {
            pattern: self.pattern.clone(),
            stages: vec![*last],
        })
    }

    /// The order.
    #[must_use]
    pub const fn pattern(&self) -> &Pattern {
        &self.pattern
    }

    /// The stages.
    #[must_use]
    pub fn stages(&self) -> &[Stage] {
        &self.stages
    }

    /// Ticks from the first to the last.
    #[must_use]
    pub fn ticks(&self) -> usize {
        self.pattern.count() * self.stages.len()
    }
}

/// Something that happened in a tightening, in the order it happened.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Happened {
    /// A bolt was pulled in a lap.
    Ticked {
        /// The bolt.
        bolt: usize,
        /// The lap.
        lap: usize,
    },
    /// The last tick was taken back.
    TakenBack,
    /// The work stopped, and nobody said yet where it stood.
    Interrupted,
    /// Somebody said that what is ticked is so, up to the last tick.
    Confirmed,
    /// This lap is begun again from its first bolt; the later ones are void.
    LapRestarted {
        /// The lap.
        lap: usize,
    },
    /// All bolts were backed off.
    BackedOff,
    /// A new bolt was put into this hole: none of its pulls stands.
    NewBolt {
        /// The bolt.
        bolt: usize,
    },
}

/// A tick that changed nothing, and why.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
#[non_exhaustive]
pub enum Ignored {
    /// It was ticked already: a tap twice, or two devices.
    Already {
        /// The bolt.
        bolt: usize,
        /// The lap.
        lap: usize,
    },
    /// Its lap is not the one that is on: no lap is ever merged into another.
    OtherLap {
        /// The bolt.
        bolt: usize,
        /// The lap it was ticked in.
        lap: usize,
        /// The lap that is on.
        on: usize,
    },
    /// There is no such bolt or lap.
    NotThere {
        /// The bolt.
        bolt: usize,
        /// The lap.
        lap: usize,
    },
}

/// How sure it is that the bolts are as they are ticked.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Sureness {
    /// Nothing came between.
    Sure,
    /// It was interrupted, and nobody has said yet where it stood: the last
    /// tick or the first untick may be wrong.
    NotSaid,
}

/// The bolt that is next.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Next {
    /// The bolt.
    pub bolt: usize,
    /// The lap, of [`Plan::stages`].
    pub lap: usize,
    /// How many of this lap are done.
    pub done_in_lap: usize,
    /// What it is pulled to.
    pub stage: Stage,
}

/// Where a tightening stands.
#[derive(Clone, PartialEq, Debug)]
pub struct Standing {
    /// For each lap each bolt of the group.
    done: Vec<Vec<bool>>,
    pattern: Pattern,
    stages: Vec<Stage>,
    sureness: Sureness,
    ignored: Vec<Ignored>,
    backed_off: u32,
    uses: Vec<Uses>,
    last: Option<LastTick>,
}

/// How often a bolt was pulled to the end.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
struct Uses {
    count: u32,
    /// Whether the present cycle is in the count: pulling a bolt again at the
    /// same torque, without backing it off, is no further use.
    this_cycle: bool,
}

/// The tick that can still be taken back.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
struct LastTick {
    bolt: usize,
    lap: usize,
    counted_as_use: bool,
}

impl Standing {
    /// Where a tightening stands after what happened.
    ///
    /// ```
    /// use assembly_core::fastener::stages::Stage;
    /// use assembly_core::tightening::pattern::Pattern;
    /// use assembly_core::tightening::run::{Happened, Plan, Standing};
    ///
    /// let pattern = Pattern::new(vec![1, 0], 2).unwrap();
    /// let plan = Plan::new(pattern, vec![Stage::Torque(30.0), Stage::Torque(60.0)]).unwrap();
    /// let standing = Standing::after(&plan, &[Happened::Ticked { bolt: 1, lap: 0 }]);
    /// let next = standing.next().unwrap();
    /// assert_eq!((next.bolt, next.lap, next.done_in_lap), (0, 0, 1));
    /// ```
    #[must_use]
    pub fn after(plan: &Plan, happened: &[Happened]) -> Self {
        let count = plan.pattern.count();
        let mut standing = Self {
            done: vec![vec![false; count]; plan.stages.len()],
            pattern: plan.pattern.clone(),
            stages: plan.stages.clone(),
            sureness: Sureness::Sure,
            ignored: Vec::new(),
            backed_off: 0,
            uses: vec![Uses::default(); count],
            last: None,
        };
        for one in happened {
            standing.take(*one);
        }
        standing
    }

    /// Takes one more thing that happened.
    pub fn take(&mut self, happened: Happened) {
        match happened {
            Happened::Ticked { bolt, lap } => self.tick(bolt, lap),
            Happened::TakenBack => self.take_back(),
            Happened::NewBolt { bolt } => self.renew(bolt),
            Happened::Interrupted => self.sureness = Sureness::NotSaid,
            Happened::Confirmed => self.sureness = Sureness::Sure,
            Happened::LapRestarted { lap } => {
                for bolts in self.done.iter_mut().skip(lap) {
                    bolts.fill(false);
                }
                self.last = None;
                self.sureness = Sureness::Sure;
            }
            Happened::BackedOff => {
                for bolts in &mut self.done {
                    bolts.fill(false);
                }
                for uses in &mut self.uses {
                    uses.this_cycle = false;
                }
                self.backed_off += 1;
                self.last = None;
                self.sureness = Sureness::Sure;
            }
        }
    }

    /// A new bolt has no pull and no use behind it.
    fn renew(&mut self, bolt: usize) {
        for bolts in &mut self.done {
            if let Some(done) = bolts.get_mut(bolt) {
                *done = false;
            }
        }
        if let Some(uses) = self.uses.get_mut(bolt) {
            *uses = Uses::default();
        }
        self.last = self.last.filter(|last| last.bolt != bolt);
    }

    fn tick(&mut self, bolt: usize, lap: usize) {
        let on = self.lap_on().unwrap_or(self.stages.len());
        let last_lap = lap + 1 == self.stages.len();
        let Some(done) = self.done.get_mut(lap).and_then(|bolts| bolts.get_mut(bolt)) else {
            self.ignored.push(Ignored::NotThere { bolt, lap });
            return;
        };
        if *done {
            self.ignored.push(Ignored::Already { bolt, lap });
        } else if lap != on {
            self.ignored.push(Ignored::OtherLap { bolt, lap, on });
        } else {
            *done = true;
            let uses = self
                .uses
                .get_mut(bolt)
                .filter(|uses| last_lap && !uses.this_cycle);
            let counted_as_use = uses.is_some();
            if let Some(uses) = uses {
                uses.count += 1;
                uses.this_cycle = true;
            }
            self.last = Some(LastTick {
                bolt,
                lap,
                counted_as_use,
            });
        }
    }

    /// The last tick only, and only once.
    fn take_back(&mut self) {
        let Some(last) = self.last.take() else {
            return;
        };
        let done = self.done.get_mut(last.lap);
        if let Some(done) = done.and_then(|bolts| bolts.get_mut(last.bolt)) {
            *done = false;
        }
        if let Some(uses) = self.uses.get_mut(last.bolt)
            && last.counted_as_use
        {
            uses.count -= 1;
            uses.this_cycle = false;
        }
    }

    /// The lap that is on: the first that is not through. `None` when all are.
    #[must_use]
    pub fn lap_on(&self) -> Option<usize> {
        self.done
            .iter()
            .position(|bolts| bolts.iter().any(|done| !done))
    }

    /// The bolt that is next: the first in the order that is not done in the
    /// lap that is on, so one that was passed over comes back. `None` when the
    /// tightening is through.
    #[must_use]
    pub fn next(&self) -> Option<Next> {
        let lap = self.lap_on()?;
        let bolts = self.done.get(lap)?;
        let open = |bolt: &&usize| bolts.get(**bolt) == Some(&false);
        Some(Next {
            bolt: *self.pattern.order().iter().find(open)?,
            lap,
            done_in_lap: bolts.iter().filter(|done| **done).count(),
            stage: *self.stages.get(lap)?,
        })
    }

    /// Whether a bolt is done in a lap.
    #[must_use]
    pub fn is_done(&self, bolt: usize, lap: usize) -> bool {
        self.done.get(lap).and_then(|bolts| bolts.get(bolt)) == Some(&true)
    }

    /// Bolts that were passed over in the lap that is on: one later in the
    /// order is done. They stay red.
    #[must_use]
    pub fn passed_over(&self) -> Vec<usize> {
        let Some(bolts) = self.lap_on().and_then(|lap| self.done.get(lap)) else {
            return Vec::new();
        };
        let done = |bolt: &usize| bolts.get(*bolt) == Some(&true);
        let order = self.pattern.order();
        let last = order.iter().rposition(done).unwrap_or_default();
        order
            .iter()
            .take(last)
            .filter(|bolt| !done(bolt))
            .copied()
            .collect()
    }

    /// Ticks that count.
    #[must_use]
    pub fn done(&self) -> usize {
        self.done.iter().flatten().filter(|done| **done).count()
    }

    /// How sure that is.
    #[must_use]
    pub const fn sureness(&self) -> Sureness {
        self.sureness
    }

    /// The tick that could be taken back: its bolt and lap.
    #[must_use]
    pub fn last(&self) -> Option<(usize, usize)> {
        self.last.map(|tick| (tick.bolt, tick.lap))
    }

    /// Ticks that changed nothing, and why.
    #[must_use]
    pub fn ignored(&self) -> &[Ignored] {
        &self.ignored
    }

    /// How often the group was backed off.
    #[must_use]
    pub const fn backed_off(&self) -> u32 {
        self.backed_off
    }

    /// How often each bolt was pulled to the end in this run. A stretch bolt
    /// that was backed off is used up all the same.
    #[must_use]
    pub fn uses(&self) -> Vec<u32> {
        self.uses.iter().map(|one| one.count).collect()
    }

    /// The stages of the plan.
    #[must_use]
    pub fn stages(&self) -> &[Stage] {
        &self.stages
    }
}
