//! The parts list and the machine work, as they stand.

use assembly_core::quantity::{Typed, read, unit_of};
use build_plan::{Measure, Place};

use super::limits::{Limits, LimitsProblem};
use super::plan::Plan;
use super::problem::Problem;
use crate::day::Day;
use crate::fact::{
    Body, Fact, LimitsOrigin, LimitsSet, PartListed, PartStage, Spot, WorkOrdered, WorkReturned,
    WorkStage,
};
use crate::id::{FactId, PartId, WorkId};

/// A part on the list, and how far it has come.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ListedPart {
    /// The fact that listed it last.
    pub fact: FactId,
    /// What was written down of it.
    pub listed: PartListed,
    /// Where it stands.
    pub stage: PartStage,
    /// The day it is promised for, when that was said last.
    pub promised: Option<Day>,
    /// Who or what is waited for, and what else was said last.
    pub words: Option<String>,
}

impl ListedPart {
    /// Whether it is here to be used.
    #[must_use]
    pub const fn is_here(&self) -> bool {
        matches!(
            self.stage,
            PartStage::Here | PartStage::Checked | PartStage::Fitted
        )
    }

    /// Whether it is still waited for.
    #[must_use]
    pub const fn is_waited_for(&self) -> bool {
        matches!(self.stage, PartStage::Wanted | PartStage::Ordered)
    }
}

/// Machine work, and how far it has come.
#[derive(Clone, PartialEq, Debug)]
pub struct ShopWork {
    /// The fact that ordered it last.
    pub fact: FactId,
    /// What was ordered.
    pub ordered: WorkOrdered,
    /// Where it stands; nothing before it left.
    pub stage: Option<WorkStage>,
    /// The day it is promised for, when that was said last.
    pub promised: Option<Day>,
    /// What else was said last.
    pub words: Option<String>,
    /// The numbers that are wanted, with those that the shop gave back.
    pub lines: Vec<WorkLine>,
    /// Numbers that the shop gave back and nobody asked for.
    pub unasked: Vec<Returned>,
}

/// A number that is wanted, with those that came back.
#[derive(Clone, PartialEq, Debug)]
pub struct WorkLine {
    /// The measure, when it is known here.
    pub measure: Option<&'static Measure>,
    /// What is wanted, with the window it makes.
    pub wanted: Limits,
    /// The numbers that the shop gave back.
    pub returned: Vec<Returned>,
}

/// A number that the shop gave back.
#[derive(Clone, PartialEq, Debug)]
pub struct Returned {
    /// The fact.
    pub fact: FactId,
    /// The number as the shop wrote it, with its measure and place.
    pub as_written: WorkReturned,
    /// The number, or why it cannot be read.
    pub value: Result<Typed, LimitsProblem>,
    /// Whether it lies within what is wanted, when both can be read.
    pub within: Option<bool>,
}

impl Returned {
    /// Where, when this version knows the place.
    #[must_use]
    pub fn place(&self) -> Option<Place> {
        self.as_written.place.place()
    }
}

/// What was bought and given out.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Bought {
    /// The parts, in the order they were first listed.
    pub parts: Vec<ListedPart>,
    /// The machine work, in the order it was first ordered.
    pub work: Vec<ShopWork>,
}

impl Bought {
    fn part(&mut self, part: PartId) -> Option<&mut ListedPart> {
        self.parts.iter_mut().find(|one| one.listed.part == part)
    }

    fn work(&mut self, work: WorkId) -> Result<&mut ShopWork, String> {
        let found = self.work.iter_mut().find(|one| one.ordered.work == work);
        found.ok_or_else(|| "It is said of machine work that is not on the order.".to_owned())
    }

    /// Takes in a fact that stands.
    pub(super) fn take(&mut self, fact: &Fact, plan: &Plan, problems: &mut Vec<Problem>) {
        if let Err(text) = self.try_take(fact, plan) {
            problems.push(Problem::new(fact.id(), text));
        }
    }

    fn try_take(&mut self, fact: &Fact, plan: &Plan) -> Result<(), String> {
        match fact.body() {
            Body::PartListed(listed) => {
                let new = ListedPart {
                    fact: fact.id(),
                    listed: listed.clone(),
                    stage: PartStage::Wanted,
                    promised: None,
                    words: None,
                };
                match self.part(listed.part) {
                    Some(old) => {
                        old.fact = new.fact;
                        old.listed = new.listed;
                    }
                    None => self.parts.push(new),
                }
            }
            Body::PartMoved(moved) => {
                let part = (self.part(moved.part))
                    .ok_or("It is said of a part that is not on the parts list.")?;
                part.stage = moved.stage;
                part.words.clone_from(&moved.words);
                part.promised = day(moved.promised.as_deref())?;
            }
            Body::WorkOrdered(ordered) => match self.work(ordered.work) {
                Ok(old) => {
                    old.fact = fact.id();
                    old.ordered = ordered.clone();
                }
                Err(_) => self.work.push(ShopWork {
                    fact: fact.id(),
                    ordered: ordered.clone(),
                    stage: None,
                    promised: None,
                    words: None,
                    lines: Vec::new(),
                    unasked: Vec::new(),
                }),
            },
            Body::WorkMoved(moved) => {
                let work = self.work(moved.work)?;
                work.stage = Some(moved.stage);
                work.words.clone_from(&moved.words);
                work.promised = day(moved.promised.as_deref())?;
            }
            Body::WorkWanted(wanted) => {
                let work = self.work(wanted.work)?;
                let set = LimitsSet {
                    measure: wanted.measure.clone(),
                    place: wanted.place.clone(),
                    low: wanted.low.clone(),
                    high: wanted.high.clone(),
                    unit: wanted.unit.clone(),
                    origin: LimitsOrigin::OwnChoice,
                    origin_note: work.ordered.what.clone(),
                    replaces: Vec::new(),
                };
                let wanted = Limits::of(fact.id(), fact.device(), &set, plan);
                work.want(plan.measure(&set.measure), wanted);
            }
            Body::WorkReturned(returned) => {
                let work = self.work(returned.work)?;
                let value = number(returned, plan);
                work.give_back(Returned {
                    fact: fact.id(),
                    as_written: returned.clone(),
                    value,
                    within: None,
                });
            }
            _ => {}
        }
        Ok(())
    }
}

impl ShopWork {
    /// A wish takes the place of an earlier one for the same measure and part.
    fn want(&mut self, measure: Option<&'static Measure>, wanted: Limits) {
        let same = |line: &WorkLine| {
            line.wanted.set.measure == wanted.set.measure
                && line.wanted.set.place == wanted.set.place
        };
        self.lines.retain(|line| !same(line));
        self.lines.push(WorkLine {
            measure,
            wanted,
            returned: Vec::new(),
        });
        // Whatever came back finds its line anew.
        let mut all: Vec<Returned> = std::mem::take(&mut self.unasked);
        for line in &mut self.lines {
            all.append(&mut line.returned);
        }
        all.sort_unstable_by_key(|one| one.fact);
        for one in all {
            self.give_back(one);
        }
    }

    /// Puts a number beside what is wanted of its part, else of all parts.
    fn give_back(&mut self, mut returned: Returned) {
        let at = returned.place().map(|place| place.at);
        let fits = |line: &&mut WorkLine, own: bool| {
            let wanted = line.wanted.set.place.as_ref();
            line.wanted.set.measure == returned.as_written.measure
                && match wanted.and_then(Spot::place) {
                    Some(place) => own && Some(place.at) == at,
                    None => !own && wanted.is_none(),
                }
        };
        let own = self.lines.iter().any(|line| {
            let place = line.wanted.place();
            line.wanted.set.measure == returned.as_written.measure
                && place.is_some_and(|place| Some(place.at) == at)
        });
        match self.lines.iter_mut().find(|line| fits(line, own)) {
            Some(line) => {
                returned.within = match (&line.wanted.window, &returned.value) {
                    (Ok(window), Ok(value)) => Some(window.holds(value.si())),
                    _ => None,
                };
                line.returned.push(returned);
            }
            None => {
                returned.within = None;
                self.unasked.push(returned);
            }
        }
    }
}

fn number(returned: &WorkReturned, plan: &Plan) -> Result<Typed, LimitsProblem> {
    let short = |text: &str| text.chars().take(60).collect::<String>();
    let measure = plan
        .measure(&returned.measure)
        .ok_or_else(|| LimitsProblem::Measure {
            measure: short(&returned.measure),
        })?;
    let lone = unit_of(measure.kind, &returned.unit).ok_or_else(|| LimitsProblem::Unit {
        unit: short(&returned.unit),
    })?;
    read(&returned.typed, measure.kind, lone).map_err(LimitsProblem::Number)
}

/// The day that was typed.
fn day(typed: Option<&str>) -> Result<Option<Day>, String> {
    match typed {
        None => Ok(None),
        Some(typed) => Day::read(typed).map(Some).ok_or_else(|| {
            let typed: String = typed.chars().take(40).collect();
            format!("“{typed}” is no day: it would be written like 2026-12-04.")
        }),
    }
}
