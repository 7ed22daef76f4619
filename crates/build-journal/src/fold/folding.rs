//! From facts to the state of a build: from scratch, or one fact further.

use std::sync::Arc;

use build_plan::Engine;

use super::bench::Bench;
use super::build::Build;
use super::main_bearing::{MainBearing, RodBearing};
use super::oil::as_reading;
use super::plan::Plan;
use super::readings::{Said, Taken};
use super::sayings::Decided;
use super::store::{Spot, spot_of};
use super::strikes::{StruckOut, struck_out};
use super::tools::tell_apart;
use super::units::Units;
use super::working_out::{Dirty, Registered, Registers};
use crate::fact::{Body, Fact, Reading, Struck};
use crate::id::FactId;
use crate::journal::Journal;

/// The state of a build that can be taken further fact by fact.
///
/// ```
/// use build_journal::fact::{Body, Note};
/// use build_journal::fold::{Folding, fold};
/// use build_journal::{BuildId, DeviceId, Fact, Journal, Stamper};
///
/// let mut journal = Journal::new(BuildId::from_random(1));
/// let mut folding = Folding::of(&journal);
/// let body = Body::Note(Note { text: "shells backs dry".to_owned(), place: None, step: None });
/// let id = Stamper::new().stamp(1_750_000_000_000, 7);
/// let fact = Fact::new(id, DeviceId::from_random(2), 1_750_000_000_000, body);
/// journal.append(fact.clone())?;
/// folding.append(&journal, &fact);
/// assert_eq!(folding.build(), &fold(&journal));
/// # Ok::<(), build_journal::AppendError>(())
/// ```
#[derive(Clone, PartialEq, Debug)]
pub struct Folding {
    pub(super) build: Build,
    pub(super) bench: Bench,
    pub(super) registers: Registers,
    units: Units,
    /// How many facts have gone in.
    facts: usize,
}

impl Folding {
    /// All facts of a journal.
    #[must_use]
    pub fn of(journal: &Journal) -> Self {
        let mut folding = Self {
            build: Build::new(journal.build()),
            bench: Bench::default(),
            units: Units::default(),
            registers: Registers::default(),
            facts: journal.len(),
        };
        // The journal is walked once: it is far larger than what is near at hand
        // for the processor, and nearly all of it is readings.
        let mut readings: Vec<(FactId, AsReading)> = Vec::with_capacity(journal.len());
        let mut others: Vec<&Fact> = Vec::new();
        for fact in journal.facts() {
            match fact.body() {
                Body::Reading(reading) => readings.push((fact.id(), AsReading::Itself(reading))),
                Body::CompressionRead(_) | Body::LeakDownRead(_) => {
                    readings.push((fact.id(), AsReading::Beside(fact)));
                    others.push(fact);
                }
                _ => others.push(fact),
            }
            folding.build.last = Some(fact.id());
        }
        let struck = struck_out(others.iter().copied(), &mut folding.build.problems);
        let counts = |fact: &Fact| !struck.contains_key(&fact.id());
        for fact in others.iter().filter(|fact| counts(fact)) {
            folding.define(fact);
        }
        for fact in others.iter().filter(|fact| counts(fact)) {
            folding.take(fact);
        }
        tell_apart(&mut folding.build.tools);
        folding.bench = Bench::of(&folding.build);
        folding.set_up();
        folding.build.record.decided = {
            let with = (&folding.build.plan, folding.engine());
            Decided::of(journal, with, |fact| !struck.contains_key(&fact))
        };
        for fact in others {
            if counts(fact) {
                folding.note(fact);
            } else {
                folding.pass_over(fact);
            }
        }
        folding.build.readings.reserve(readings.len());
        let with = (&mut folding.units, &folding.build.plan);
        let said = said_by_each(&readings, with);
        for ((fact, reading), said) in readings.into_iter().zip(said) {
            let by = struck.get(&fact);
            match reading {
                // A reading that is struck out is still shown, struck through.
                AsReading::Itself(reading) => {
                    let taken = Taken::reading(fact, reading, by.cloned(), said);
                    folding.place(taken);
                }
                AsReading::Beside(_) if by.is_some() => {}
                AsReading::Beside(fact) => {
                    folding.proof_of(fact);
                }
            }
        }
        folding.build.problems.sort_by_key(|problem| problem.fact);
        folding.grow_old();
        let everything = folding.everything();
        folding.work_out(&everything, Registered::Afresh);
        folding.build.struck = struck.into_values().collect();
        folding
    }

    /// The state.
    #[must_use]
    pub const fn build(&self) -> &Build {
        &self.build
    }

    /// How many facts have gone in.
    #[must_use]
    pub const fn facts(&self) -> usize {
        self.facts
    }

    /// The state.
    #[must_use]
    pub fn into_build(self) -> Build {
        self.build
    }

    /// Takes one fact more, which is in the journal already. What it cannot
    /// change is not worked out again; a fact that came late, as from another
    /// device, is taken in by starting over.
    pub fn append(&mut self, journal: &Journal, fact: &Fact) {
        let later = self.build.last.is_none_or(|last| last < fact.id());
        if !later || journal.len() != self.facts + 1 || self.starts_over(fact) {
            *self = Self::of(journal);
            return;
        }
        self.facts += 1;
        self.build.last = Some(fact.id());
        let mut registered = match fact.body() {
            Body::Reading(_) => Registered::Grow,
            Body::LimitsSet(_) => Registered::Stand,
            _ => Registered::Afresh,
        };
        let dirty = match fact.body() {
            Body::Reading(reading) => {
                let with = (&mut self.units, &self.build.plan);
                let taken = Taken::of(fact.id(), reading, None, with);
                let spot = self.place(taken);
                if let Some(spot) = spot {
                    self.note_latest(spot);
                }
                if self.last_is_in_doubt() {
                    *self = Self::of(journal);
                    return;
                }
                if spot.is_some_and(|spot| self.build.readings.any_old(spot)) {
                    // It takes the place of those that no longer count.
                    registered = Registered::Afresh;
                }
                spot.map_or_else(Dirty::default, |spot| self.touched_by(spot))
            }
            Body::Struck(struck) => self.strike(fact.id(), struck),
            Body::LimitsSet(made) => {
                self.take(fact);
                self.under_limits(made)
            }
            Body::ToolSet(made) => {
                self.take(fact);
                self.bench = Bench::of(&self.build);
                self.set_like(made)
            }
            Body::ToolListed(_) | Body::ToolTried(_) => {
                self.take(fact);
                tell_apart(&mut self.build.tools);
                self.bench = Bench::of(&self.build);
                self.everything()
            }
            _ => {
                self.take(fact);
                self.note(fact);
                let spot = self.proof_of(fact);
                if let Some(spot) = spot {
                    self.note_latest(spot);
                }
                spot.map_or_else(Dirty::default, |spot| self.touched_by(spot))
            }
        };
        self.work_out(&dirty, registered);
    }

    /// Whether a fact changes so much that all is worked out afresh: another
    /// engine, or a strike that does not hit a reading.
    fn starts_over(&self, fact: &Fact) -> bool {
        if fact.in_view().is_some_and(|in_view| in_view.settles) {
            return true;
        }
        match fact.body() {
            Body::EngineDescribed(_) => true,
            // A reading that was written down beside the engine stands in its book, too.
            Body::Struck(struck) => {
                let fact = struck.fact;
                self.build.readings.get(fact).is_none() || self.build.oil.has_read(fact)
            }
            // These may make results stale, or make them count again.
            Body::EventHappened(_)
            | Body::Waived(_)
            | Body::PartsPlaced(_)
            | Body::ToolChecked(_)
            | Body::WarmthSettled(_)
            | Body::OwnMeasure(_)
            | Body::OwnStep(_)
            | Body::FastenerGroup(_) => true,
            Body::StepMarked(marked) => !self.is_quiet(marked),
            // A tool set anew ends the doubt about what it read before.
            Body::ToolSet(_) => !self.build.doubted.is_empty(),
            _ => false,
        }
    }

    pub(super) fn engine(&self) -> Option<&Engine> {
        self.build
            .engine
            .as_ref()
            .map(|described| &described.engine)
    }

    /// Sets up the bearings that the engine has.
    fn set_up(&mut self) {
        let Some(engine) = self.engine() else {
            return;
        };
        let mains = engine.mains().into_iter().map(MainBearing::new).collect();
        let rods = (1..=engine.cylinders())
            .map(|cylinder| RodBearing::new(cylinder, engine.crankpin_of(cylinder)))
            .collect();
        self.build.mains = mains;
        self.build.rods = rods;
    }

    /// Takes what was written down beside the engine as a reading of the plan, when
    /// it is one of a place that the engine has.
    fn proof_of(&mut self, fact: &Fact) -> Option<Spot> {
        let reading = as_reading(fact)?;
        let with = (&mut self.units, &self.build.plan);
        let taken = Taken::of(fact.id(), &Arc::new(reading), None, with);
        spot_of(&taken, self.engine())?;
        self.place(taken)
    }

    /// Puts a reading where it belongs.
    fn place(&mut self, taken: Taken) -> Option<Spot> {
        let engine = self
            .build
            .engine
            .as_ref()
            .map(|described| &described.engine);
        let spot = spot_of(&taken, engine);
        if spot.is_none() {
            self.build.elsewhere.push(taken.clone());
        }
        self.build.readings.push(taken, spot);
        spot
    }

    /// Strikes a reading out.
    fn strike(&mut self, by: FactId, strike: &Struck) -> Dirty {
        let struck = StruckOut {
            fact: strike.fact,
            by,
            reason: strike.reason.clone(),
        };
        let at = self
            .build
            .struck
            .partition_point(|earlier| earlier.fact < struck.fact);
        match self.build.struck.get_mut(at) {
            // Struck twice: the latest strike is the one that is told.
            Some(same) if same.fact == struck.fact => *same = struck.clone(),
            _ => self.build.struck.insert(at, struck.clone()),
        }
        let engine = self
            .build
            .engine
            .as_ref()
            .map(|described| &described.engine);
        let spot = self
            .build
            .readings
            .strike(&struck)
            .and_then(|taken| spot_of(taken, engine));
        if let Some(spot) = spot {
            self.note_latest(spot);
        }
        let elsewhere = &mut self.build.elsewhere;
        if let Some(taken) = elsewhere.iter_mut().find(|one| one.fact == struck.fact) {
            taken.struck = Some(Box::new(struck.clone()));
        }
        if self.bench.is_lock(struck.fact) {
            // A gauge was zeroed at it: whatever it measured hangs on it.
            return self.everything();
        }
        spot.map_or_else(Dirty::default, |spot| self.touched_by(spot))
    }
}

pub(super) fn main(mains: &mut [MainBearing], number: u8) -> Option<&mut MainBearing> {
    mains.iter_mut().find(|one| one.main.number() == number)
}

/// A fact that is a reading, or that is written down beside the engine and may
/// be one of the plan's as well.
enum AsReading<'a> {
    Itself(&'a Arc<Reading>),
    Beside(&'a Fact),
}

/// What each is a reading of, found for all in one go: the processor fetches the
/// next ones from far away while it looks at one.
fn said_by_each(readings: &[(FactId, AsReading)], (units, plan): (&mut Units, &Plan)) -> Vec<Said> {
    let mut said = |reading: &AsReading| match reading {
        AsReading::Itself(reading) => Said::of(reading, units, plan),
        AsReading::Beside(_) => Said::default(),
    };
    readings
        .iter()
        .map(|(_, reading)| reading)
        .map(&mut said)
        .collect()
}
