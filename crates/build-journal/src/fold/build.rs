//! The state of a build.

use std::collections::BTreeMap;

use build_plan::measure::MAIN_OIL_CLEARANCE;
use build_plan::{At, Engine, Place};

use super::bench::Bench;
use super::limits::{Limits, put_in_force};
use super::main_bearing::MainBearing;
use super::problem::Problem;
use super::readings::Taken;
use super::strikes::{StruckOut, struck_out};
use super::tools::{ListedTool, list, set};
use crate::fact::{Body, Fact, Spot};
use crate::id::{BuildId, FactId};
use crate::journal::Journal;

/// Everything that follows from the facts of a build.
#[derive(Clone, PartialEq, Debug)]
pub struct Build {
    /// The build.
    pub id: BuildId,
    /// The engine, by its latest description that can be used.
    pub engine: Option<DescribedEngine>,
    /// The tools, in the order they were listed.
    pub tools: Vec<ListedTool>,
    /// The limits in force, in the order they were set.
    pub limits: Vec<Limits>,
    /// The main bearings, front to rear; none before the engine is described.
    pub mains: Vec<MainBearing>,
    /// Readings at a place or of a measure that this engine does not have, as
    /// far as this version knows. They are shown as such.
    pub elsewhere: Vec<Taken>,
    /// What was noted down.
    pub notes: Vec<NotedDown>,
    /// What was struck out.
    pub struck: Vec<StruckOut>,
    /// What could not be used, and why.
    pub problems: Vec<Problem>,
    /// Facts of kinds that this version does not know.
    pub unknown: Vec<OtherFact>,
    /// The last thing that happened.
    pub last: Option<FactId>,
}

/// The engine, and the fact that describes it.
#[derive(Clone, PartialEq, Debug)]
pub struct DescribedEngine {
    /// The fact.
    pub fact: FactId,
    /// The engine.
    pub engine: Engine,
}

/// A note.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct NotedDown {
    /// The fact.
    pub fact: FactId,
    /// The words.
    pub text: String,
    /// Where it belongs, when it belongs somewhere.
    pub place: Option<Place>,
}

/// A fact of a kind that this version does not know.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OtherFact {
    /// The fact.
    pub fact: FactId,
    /// The name of its kind.
    pub kind: String,
}

/// The state of a build, worked out from all its facts. Pure: the same facts
/// give the same state, in whatever order they came in.
#[must_use]
pub fn fold(journal: &Journal) -> Build {
    let mut problems = Vec::new();
    let struck = struck_out(journal, &mut problems);
    let mut build = Build {
        id: journal.build(),
        engine: None,
        tools: Vec::new(),
        limits: Vec::new(),
        mains: Vec::new(),
        elsewhere: Vec::new(),
        notes: Vec::new(),
        struck: Vec::new(),
        problems,
        unknown: Vec::new(),
        last: journal.facts().next_back().map(Fact::id),
    };
    let mut readings = Vec::new();
    for fact in journal.facts() {
        let by = struck.get(&fact.id());
        match fact.body() {
            // A reading that is struck out is still shown, struck through.
            Body::Reading(reading) => readings.push(Taken::of(fact.id(), reading, by.cloned())),
            _ if by.is_some() => {}
            _ => build.take(fact),
        }
    }
    build.problems.extend(build.limits.iter().filter_map(|one| {
        let problem = one.window.as_ref().err()?;
        Some(Problem::new(one.fact, format!("These limits: {problem}.")))
    }));
    build.struck = struck.into_values().collect();
    build.place(readings);
    build.work_out();
    build.problems.sort_by_key(|problem| problem.fact);
    build
}

impl Build {
    /// Takes in a fact that stands.
    fn take(&mut self, fact: &Fact) {
        match fact.body() {
            Body::EngineDescribed(described) => match described.engine() {
                Ok(engine) => {
                    for (field, word) in described.construction().1 {
                        let word: String = word.chars().take(40).collect();
                        self.problem(fact, format!("The engine's “{field}” is “{word}”, which is not known here: the usual is taken."));
                    }
                    self.engine = Some(DescribedEngine {
                        fact: fact.id(),
                        engine,
                    });
                }
                Err(problem) => self.problem(fact, problem.to_string()),
            },
            Body::ToolListed(listed) => list(&mut self.tools, fact.id(), listed),
            Body::ToolSet(made) => {
                if !set(&mut self.tools, fact.id(), made) {
                    self.problem(fact, "A tool was set that is not on the list.");
                }
            }
            Body::LimitsSet(made) => {
                put_in_force(&mut self.limits, Limits::of(fact.id(), fact.device(), made))
            }
            Body::Note(note) => self.notes.push(NotedDown {
                fact: fact.id(),
                text: note.text.clone(),
                place: note.place.as_ref().and_then(Spot::place),
            }),
            Body::Unknown(unknown) => self.unknown.push(OtherFact {
                fact: fact.id(),
                kind: unknown.kind().to_owned(),
            }),
            Body::Unreadable(unreadable) => {
                let text = format!(
                    "A “{}” that cannot be read. {}",
                    unreadable.kind(),
                    unreadable.reason()
                );
                self.problem(fact, text);
            }
            // Both were looked at before.
            Body::Struck(_) | Body::Reading(_) => {}
        }
    }

    fn problem(&mut self, fact: &Fact, text: impl Into<String>) {
        self.problems.push(Problem::new(fact.id(), text));
    }

    /// Puts each reading where it belongs.
    fn place(&mut self, readings: Vec<Taken>) {
        let engine = self.engine.as_ref().map(|described| &described.engine);
        self.mains = engine
            .map(Engine::mains)
            .unwrap_or_default()
            .into_iter()
            .map(MainBearing::new)
            .collect();
        for reading in readings {
            let home = match (reading.measure, reading.place.map(|place| place.at)) {
                (Some(_), Some(At::Main(number))) => self
                    .mains
                    .iter_mut()
                    .find(|bearing| bearing.main.number() == number),
                _ => None,
            };
            match home {
                Some(bearing) => bearing.readings.push(reading),
                None => self.elsewhere.push(reading),
            }
        }
        for bearing in &mut self.mains {
            bearing.limits = limits_of(&self.limits, At::Main(bearing.main.number()));
        }
    }

    /// Works out what follows for each bearing.
    fn work_out(&mut self) {
        let bench = Bench::new(&self.tools);
        let readings: Vec<Taken> = self
            .mains
            .iter()
            .flat_map(|bearing| bearing.readings.clone())
            .collect();
        let all: BTreeMap<FactId, &Taken> =
            readings.iter().map(|taken| (taken.fact, taken)).collect();
        for bearing in &mut self.mains {
            bearing.work_out(&bench, &all);
        }
    }
}

/// The limits of the oil clearance that hold for one main: its own, else those
/// for all.
fn limits_of(limits: &[Limits], main: At) -> Vec<Limits> {
    let clearance = |one: &&Limits| one.set.measure == MAIN_OIL_CLEARANCE.id;
    let own: Vec<Limits> = limits
        .iter()
        .filter(clearance)
        .filter(|one| one.place().is_some_and(|place| place.at == main))
        .cloned()
        .collect();
    if !own.is_empty() {
        return own;
    }
    limits
        .iter()
        .filter(clearance)
        .filter(|one| one.set.place.is_none())
        .cloned()
        .collect()
}
