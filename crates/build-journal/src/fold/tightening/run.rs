//! A run over a group, from what happened in it.

use std::collections::BTreeSet;
use std::sync::Arc;

use assembly_core::tightening::credit::{NoCredit, Record, against};
use assembly_core::tightening::interrupted::{
    Advice, Interruption, Known, Paint, Remedy, advice, given_up,
};
use assembly_core::tightening::kind::Kind;
use assembly_core::tightening::run::{Happened, Next, Plan, Standing, Sureness};
use build_plan::At;

use super::sheet::{Sheet, from_one};
use super::stages::SheetStage;
use super::wrenches::Held;
use crate::fact::{Fact, RunBegun, RunMark, RunMarked, Way};
use crate::id::{FactId, OwnId, SittingId};

/// A run over a group at one part.
#[derive(Clone, PartialEq, Debug)]
pub struct Run {
    /// The fact that began it, which names it.
    pub fact: FactId,
    /// The group.
    pub group: OwnId,
    /// The part.
    pub at: At,
    /// Which way.
    pub way: Way,
    /// The description it goes by.
    pub sheet: Arc<Sheet>,
    /// What is to be done.
    pub plan: Plan,
    /// What of it is done.
    pub standing: Standing,
    /// The sitting that opened it last: only that one goes on.
    pub sitting: SittingId,
    /// A pull came from a sitting that had been left, since anybody confirmed
    /// how it stands: two pairs of hands, or two screens.
    pub two_hands: bool,
    /// How often it was interrupted.
    pub interruptions: u32,
    /// Bolts whose stripe was looked at after the last lap.
    pub stripes: BTreeSet<usize>,
    /// It is not gone on with.
    pub left: bool,
    /// When it was begun, by the clock of the device: milliseconds since 1970.
    pub begun: i64,
    /// When something happened in it last.
    pub last: i64,
    /// Why it does not count; nothing when it does.
    pub against: Vec<NoCredit>,
    /// The fact of the last thing that happened in it.
    pub last_fact: FactId,
    /// Bolts were pulled since they were last all loose.
    touched: bool,
    /// A lap was begun again: bolts that the record has no more were pulled.
    restarted: bool,
    /// What is recorded beside the pulls.
    record: Record,
    kind: Kind,
}

impl Run {
    /// A run that was just begun; nothing when the sheet it goes by cannot be
    /// used.
    pub(super) fn begin(fact: &Fact, made: &RunBegun, at: At, sheet: &Arc<Sheet>) -> Option<Self> {
        let whole = sheet.plan()?;
        let plan = match made.way {
            Way::Tighten => whole.clone(),
            Way::Loosen => whole.for_loosening(),
            Way::Again => whole.once_more()?,
        };
        Some(Self {
            fact: fact.id(),
            group: made.group,
            at,
            way: made.way,
            sheet: Arc::clone(sheet),
            standing: Standing::after(&plan, &[]),
            plan,
            sitting: made.sitting,
            two_hands: false,
            interruptions: 0,
            stripes: BTreeSet::new(),
            left: false,
            begun: fact.clock(),
            last: fact.clock(),
            against: Vec::new(),
            last_fact: fact.id(),
            touched: false,
            restarted: false,
            record: Record::default(),
            kind: sheet.kind?,
        })
    }

    /// What a later description says of lubricant, wrench and uses.
    pub(super) fn recorded(&mut self, sheet: &Sheet) {
        let Record {
            used_before,
            not_as_mapped,
            ..
        } = std::mem::take(&mut self.record);
        self.record = Record {
            used_before,
            not_as_mapped,
            ..sheet.record().clone()
        };
        if self.way == Way::Again {
            // Its only lap is the last one of the sheet.
            let last = sheet.stages.len().checked_sub(1);
            let last = last.and_then(|last| self.record.others.remove(&last));
            self.record.others = last.map(|wrench| (0, wrench)).into_iter().collect();
        }
        self.kind = sheet.kind.unwrap_or(self.kind);
    }

    pub(super) fn used_before(&mut self, uses: Vec<u32>) {
        self.record.used_before = uses;
    }

    pub(super) fn new_bolt(&mut self, bolt: usize) {
        if let Some(uses) = self.record.used_before.get_mut(bolt) {
            *uses = 0;
        }
        self.standing.take(Happened::NewBolt { bolt });
    }

    /// Works out whether it counts.
    pub(super) fn settle(&mut self, not_as_mapped: Vec<usize>) {
        self.record.not_as_mapped = not_as_mapped;
        self.against = match self.way {
            Way::Loosen => Vec::new(),
            Way::Tighten | Way::Again => against(self.kind, &self.standing, &self.record),
        };
    }

    pub(super) fn touched(&mut self, fact: &Fact) {
        self.last = fact.clock();
        self.last_fact = fact.id();
    }

    /// Another sitting opened it: what is ticked has to be confirmed, unless
    /// nothing is or all is.
    pub(super) fn opened(&mut self, sitting: SittingId) {
        if self.sitting != sitting {
            self.sitting = sitting;
            self.interrupted();
        }
    }

    pub(super) fn interrupted(&mut self) {
        if self.standing.done() > 0 && !self.is_through() {
            self.interruptions += 1;
            self.standing.take(Happened::Interrupted);
        }
    }

    pub(super) fn pulled(&mut self, bolt: u32, lap: u32, sitting: SittingId) {
        let (bolt, lap) = (from_one(bolt), from_one(lap));
        self.standing.take(Happened::Ticked { bolt, lap });
        self.touched |= self.standing.done() > 0;
        if sitting != self.sitting {
            self.two_hands = true;
            self.standing.take(Happened::Interrupted);
        }
    }

    pub(super) fn marked(&mut self, made: &RunMarked) {
        let happened = match made.mark {
            RunMark::TakenBack => Happened::TakenBack,
            RunMark::Interrupted => return self.interrupted(),
            RunMark::Confirmed => Happened::Confirmed,
            RunMark::LapRestarted => {
                let lap = made.lap.map(from_one).or_else(|| self.standing.lap_on());
                Happened::LapRestarted {
                    lap: lap.unwrap_or_default(),
                }
            }
            RunMark::BackedOff => Happened::BackedOff,
            RunMark::StripeSeen => {
                self.stripes.extend(made.bolt.map(from_one));
                return;
            }
            RunMark::Left => {
                self.left = true;
                return;
            }
        };
        if happened != Happened::TakenBack {
            self.two_hands = false;
        }
        self.standing.take(happened);
        match happened {
            Happened::BackedOff => (self.touched, self.restarted) = (false, false),
            Happened::LapRestarted { .. } => self.restarted = true,
            // The only pull there was is none.
            Happened::TakenBack if !self.restarted => self.touched = self.standing.done() > 0,
            _ => {}
        }
    }

    /// Whether every pull is made.
    #[must_use]
    pub fn is_through(&self) -> bool {
        self.standing.next().is_none()
    }

    /// Whether it left the bolts otherwise than it met them: some were pulled, or
    /// all were backed off.
    #[must_use]
    pub const fn changed_the_bolts(&self) -> bool {
        self.touched || self.standing.backed_off() > 0
    }

    /// Whether it is still to be gone on with.
    #[must_use]
    pub fn is_on(&self) -> bool {
        !self.left && (!self.is_through() || self.standing.sureness() == Sureness::NotSaid)
    }

    /// Whether it counts.
    #[must_use]
    pub fn counts(&self) -> bool {
        self.is_through() && self.against.is_empty()
    }

    /// Whether somebody has to say how it stands before it goes on.
    #[must_use]
    pub fn has_to_be_said(&self) -> bool {
        self.standing.sureness() == Sureness::NotSaid
    }

    /// The bolt that is next.
    #[must_use]
    pub fn next(&self) -> Option<Next> {
        self.standing.next()
    }

    /// How many laps.
    #[must_use]
    pub fn laps(&self) -> usize {
        self.plan.stages().len()
    }

    /// How many bolts.
    #[must_use]
    pub fn bolts(&self) -> usize {
        self.plan.pattern().count()
    }

    /// Which stage of the sheet a lap is; none when loosening.
    fn at_stage(&self, lap: usize) -> Option<usize> {
        match self.way {
            Way::Loosen => None,
            Way::Tighten => Some(lap),
            Way::Again => self.sheet.stages.len().checked_sub(1),
        }
    }

    /// The wrench of a lap; none when loosening, or when none is named.
    #[must_use]
    pub fn wrench(&self, lap: usize) -> Option<&Held> {
        self.sheet.wrench_of(self.at_stage(lap)?)
    }

    /// The wrench to take up for a lap when it is not the one of the lap before
    /// it.
    #[must_use]
    pub fn takes_up(&self, lap: usize) -> Option<&Held> {
        let now = self.wrench(lap)?;
        let before = self.wrench(lap.checked_sub(1)?);
        (before != Some(now)).then_some(now)
    }

    /// The stage of a lap as it stands on the sheet; none when loosening.
    fn stage(&self, lap: usize) -> Option<&SheetStage> {
        self.sheet.stages.get(self.at_stage(lap)?)
    }

    /// The number of a lap and its unit, as they stand on the wrench: with an
    /// adapter on it what the wrench is set to. Loosening has no numbers but a
    /// quarter turn.
    #[must_use]
    pub fn number(&self, lap: usize) -> Option<(String, &'static str)> {
        if self.way == Way::Loosen {
            return Some(("¼".to_owned(), "turn back"));
        }
        let set = self.with_the_adapter(lap);
        set.or_else(|| self.at_the_bolt(lap))
    }

    /// What a bolt gets in a lap, and its unit, where an adapter makes that
    /// another number than the one on the wrench.
    #[must_use]
    pub fn for_the_bolt(&self, lap: usize) -> Option<(String, &'static str)> {
        self.with_the_adapter(lap)?;
        self.at_the_bolt(lap)
    }

    fn with_the_adapter(&self, lap: usize) -> Option<(String, &'static str)> {
        let (at, stage) = (self.at_stage(lap)?, self.stage(lap)?);
        stage.with_an_adapter(self.sheet.unit_of(at), self.sheet.adapter_of(at)?)
    }

    fn at_the_bolt(&self, lap: usize) -> Option<(String, &'static str)> {
        let unit = self.sheet.unit_of(self.at_stage(lap)?);
        self.stage(lap)?.on_the_wrench(unit)
    }

    /// What is to be done with the bolts when it is given up as it stands;
    /// nothing when none was pulled. For loosening, and for a lap after heat, the
    /// lap is gone over anew.
    #[must_use]
    pub fn given_up(&self) -> Option<Advice> {
        if !self.touched {
            return None;
        }
        if self.way != Way::Tighten {
            return Some(Advice {
                remedy: Remedy::RestartLap,
                new_gasket: false,
            });
        }
        let begun = |lap: &usize| (0..self.bolts()).any(|bolt| self.standing.is_done(bolt, *lap));
        // A bolt that was in hand when it was given up is of the lap that was on.
        let lap = self
            .standing
            .lap_on()
            .or_else(|| (0..self.laps()).rev().find(begun));
        Some(given_up(
            self.kind,
            self.plan.stages(),
            lap.unwrap_or_default(),
            self.sheet.gasket(),
        ))
    }

    /// What to do after an interruption, for what is known.
    ///
    /// A loosening lap, or one more after heat, does no harm when it is made
    /// twice: each bolt is let go a little before it is pulled.
    #[must_use]
    pub fn advice(&self, known: Known, paint: Paint) -> Advice {
        if self.way != Way::Tighten {
            let remedy = match known {
                Known::Bolt => Remedy::GoOn,
                Known::Lap | Known::Nothing => Remedy::RestartLap,
            };
            return Advice {
                remedy,
                new_gasket: false,
            };
        }
        advice(&Interruption {
            kind: self.kind,
            stages: self.plan.stages(),
            lap: self.standing.lap_on().unwrap_or_default(),
            known,
            gasket: self.sheet.gasket(),
            paint,
        })
    }

    /// Whether somebody who took up the run in this sitting may go on: nobody
    /// has opened it since.
    #[must_use]
    pub fn is_in(&self, sitting: SittingId) -> bool {
        self.sitting == sitting
    }
}
