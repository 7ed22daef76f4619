//! From facts to the state of a build: from scratch, or one fact further.

use std::collections::BTreeSet;

use build_plan::measure::{
    MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE, MEASURES, ROD_BEARING_BORE,
    ROD_JOURNAL_DIAMETER, ROD_OIL_CLEARANCE,
};
use build_plan::{At, Engine};

use super::bench::Bench;
use super::build::{Build, DescribedEngine, NotedDown, OtherFact};
use super::limits::{Limits, put_in_force};
use super::main_bearing::{MainBearing, RodBearing};
use super::oil::as_reading;
use super::photos::KeptPhoto;
use super::problem::Problem;
use super::readings::Taken;
use super::store::{Spot, spot_of};
use super::strikes::{StruckOut, struck_out};
use super::tools::{list, seen, set};
use super::units::Units;
use super::working_out::{Dirty, Registered, Registers};
use crate::fact::{Body, EngineDescribed, Fact, LimitsSet, Spot as Where, Struck, ToolSet};
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
/// let body = Body::Note(Note { text: "shells backs dry".to_owned(), place: None });
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
        let struck = struck_out(journal, &mut folding.build.problems);
        let stands = |fact: &&Fact| !struck.contains_key(&fact.id());
        for fact in journal.facts().filter(stands) {
            folding.define(fact);
        }
        for fact in journal.facts().filter(stands) {
            folding.take(fact);
        }
        folding.build.last = journal.facts().next_back().map(Fact::id);
        folding.bench = Bench::new(&folding.build.tools);
        folding.set_up();
        folding.build.readings.reserve(journal.len());
        for fact in journal.facts() {
            let by = struck.get(&fact.id());
            match fact.body() {
                // A reading that is struck out is still shown, struck through.
                Body::Reading(reading) => {
                    let with = (&mut folding.units, &folding.build.plan);
                    let taken = Taken::of(fact.id(), reading, by.cloned(), with);
                    folding.place(taken);
                }
                _ if by.is_some() => {}
                _ => {
                    folding.note(fact);
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
                self.bench = Bench::new(&self.build.tools);
                self.set_like(made)
            }
            Body::ToolListed(_) => {
                self.take(fact);
                self.bench = Bench::new(&self.build.tools);
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
            | Body::ToolChecked(_)
            | Body::OwnMeasure(_)
            | Body::OwnStep(_)
            | Body::FastenerGroup(_) => true,
            Body::StepMarked(marked) => !self.is_quiet(marked),
            // A tool set anew ends the doubt about what it read before.
            Body::ToolSet(_) => !self.build.doubted.is_empty(),
            _ => false,
        }
    }

    /// Takes in a fact that stands and is no reading.
    fn take(&mut self, fact: &Fact) {
        let build = &mut self.build;
        match fact.body() {
            Body::EngineDescribed(described) => self.describe(fact, described),
            Body::ToolListed(listed) => list(&mut build.tools, fact.id(), listed),
            Body::ToolSet(made) => {
                let known = set(&mut build.tools, fact.id(), made);
                self.unless(known, fact, "A tool was set that is not on the list.");
            }
            Body::LimitsSet(made) => {
                let limits = Limits::of(fact.id(), fact.device(), made, &build.plan);
                if let Err(problem) = &limits.window {
                    let text = format!("These limits: {problem}.");
                    build.problems.push(Problem::new(fact.id(), text));
                }
                let replaced = put_in_force(&mut build.limits, limits);
                // Nobody has to mend limits that are no longer in force.
                build
                    .problems
                    .retain(|problem| !replaced.contains(&problem.fact));
            }
            Body::ToolChecked(made) => {
                let known = seen(&mut build.tools, fact.id(), made);
                self.unless(known, fact, "A tool was looked at that is not on the list.");
            }
            Body::Photo(photo) => build.photos.push(KeptPhoto {
                fact: fact.id(),
                photo: photo.clone(),
            }),
            Body::Note(note) => build.notes.push(NotedDown {
                fact: fact.id(),
                text: note.text.clone(),
                place: note.place.as_ref().and_then(Where::place),
            }),
            Body::Unknown(unknown) => build.unknown.push(OtherFact {
                fact: fact.id(),
                kind: unknown.kind().to_owned(),
            }),
            Body::Unreadable(unreadable) => {
                let (kind, reason) = (unreadable.kind(), unreadable.reason());
                self.problem(fact, format!("A “{kind}” that cannot be read. {reason}"));
            }
            // The rest is looked at elsewhere.
            _ => {}
        }
    }

    fn describe(&mut self, fact: &Fact, described: &EngineDescribed) {
        match described.engine() {
            Ok(engine) => {
                for (field, word) in described.construction().1 {
                    let word: String = word.chars().take(40).collect();
                    self.problem(
                        fact,
                        format!(
                            "The engine's “{field}” is “{word}”, which is not known here: the usual is taken."
                        ),
                    );
                }
                self.build.engine = Some(DescribedEngine {
                    fact: fact.id(),
                    engine,
                });
            }
            Err(problem) => self.problem(fact, problem.to_string()),
        }
    }

    fn unless(&mut self, right: bool, fact: &Fact, text: &str) {
        if !right {
            self.problem(fact, text);
        }
    }

    pub(super) fn problem(&mut self, fact: &Fact, text: impl Into<String>) {
        self.build.problems.push(Problem::new(fact.id(), text));
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
        let taken = Taken::of(fact.id(), &reading, None, with);
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
        match spot {
            None => self.build.elsewhere.push(taken.clone()),
            Some((_, At::Main(number))) => {
                if let Some(bearing) = main(&mut self.build.mains, number) {
                    bearing.readings.push(taken.clone());
                }
            }
            Some(_) => {}
        }
        self.build.readings.push(taken, engine)
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
        let shown = match spot {
            None => &mut self.build.elsewhere,
            Some((_, At::Main(number))) => match main(&mut self.build.mains, number) {
                Some(bearing) => &mut bearing.readings,
                None => return Dirty::default(),
            },
            Some(_) => &mut Vec::new(),
        };
        if let Some(taken) = shown.iter_mut().find(|taken| taken.fact == struck.fact) {
            taken.struck = Some(struck.clone());
        }
        if self.bench.is_lock(struck.fact) {
            // A gauge was zeroed at it: whatever it measured hangs on it.
            return self.everything();
        }
        spot.map_or_else(Dirty::default, |spot| self.touched_by(spot))
    }

    /// What a reading at a spot can change.
    fn touched_by(&self, (id, at): Spot) -> Dirty {
        let mut dirty = Dirty::default();
        let (Some(engine), Some(read)) = (self.engine(), self.build.plan.measure(id)) else {
            return dirty;
        };
        let ids = |all: [&'static build_plan::Measure; 3]| all.iter().any(|one| one.id == id);
        if ids([
            &MAIN_BEARING_BORE,
            &MAIN_JOURNAL_DIAMETER,
            &MAIN_OIL_CLEARANCE,
        ]) && let At::Main(number) = at
        {
            dirty.mains.insert(number);
        }
        if ids([&ROD_BEARING_BORE, &ROD_JOURNAL_DIAMETER, &ROD_OIL_CLEARANCE]) {
            match at {
                At::Rod(cylinder) => dirty.rods.extend([cylinder]),
                At::Crankpin(pin) => dirty.rods.extend(engine.on_crankpin(pin)),
                _ => {}
            }
        }
        if !is_running_clearance(id) {
            dirty.fits.insert((id, at));
        }
        for derived in MEASURES.iter().filter(|one| one.is_worked_out_from(read)) {
            if is_running_clearance(derived.id) {
                continue;
            }
            for part in derived.spots.per.parts(engine) {
                if part.concerns(at, engine) {
                    dirty.fits.insert((derived.id, part));
                }
            }
        }
        dirty
    }

    /// What limits can change.
    fn under_limits(&self, made: &LimitsSet) -> Dirty {
        let mut dirty = Dirty::default();
        if made.measure == MAIN_OIL_CLEARANCE.id {
            dirty.mains = self
                .build
                .mains
                .iter()
                .map(|one| one.main.number())
                .collect();
        } else if made.measure == ROD_OIL_CLEARANCE.id {
            dirty.rods = self.build.rods.iter().map(|one| one.cylinder).collect();
        } else {
            dirty.fits = self
                .build
                .fits
                .keys()
                .copied()
                .filter(|(id, _)| *id == made.measure)
                .collect();
        }
        dirty
    }

    /// What setting a tool can change: nothing that was read before, but for
    /// readings that name the setting.
    fn set_like(&self, made: &ToolSet) -> Dirty {
        let named = |taken: &Taken| taken.reading.setting == Some(made.setting);
        if self.build.readings.all().iter().any(named) {
            return self.everything();
        }
        // What the other tool is locked at has to be at hand from now on.
        let locked = made
            .locked_at
            .and_then(|fact| self.build.readings.get(fact));
        let spot = locked.and_then(|taken| spot_of(taken, self.engine()));
        spot.map_or_else(Dirty::default, |spot| self.touched_by(spot))
    }

    /// All that there is something to work out for.
    fn everything(&self) -> Dirty {
        let mut dirty = Dirty {
            mains: self
                .build
                .mains
                .iter()
                .map(|one| one.main.number())
                .collect(),
            rods: self.build.rods.iter().map(|one| one.cylinder).collect(),
            fits: BTreeSet::new(),
        };
        for spot in self.build.readings.spots() {
            dirty.fits.extend(self.touched_by(spot).fits);
        }
        dirty
    }
}

/// Clearances of mains and rods are worked out with their bearings.
fn is_running_clearance(id: &str) -> bool {
    id == MAIN_OIL_CLEARANCE.id || id == ROD_OIL_CLEARANCE.id
}

pub(super) fn main(mains: &mut [MainBearing], number: u8) -> Option<&mut MainBearing> {
    mains.iter_mut().find(|one| one.main.number() == number)
}
