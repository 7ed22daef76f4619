//! From facts to groups.

use std::collections::BTreeMap;
use std::sync::Arc;

use assembly_core::tool::Tool;
use build_plan::At;

use super::bolts::Length;
use super::group::{Group, Part};
use super::run::Run;
use super::sealant::Sealant;
use super::sheet::{Sheet, from_one};
use crate::fact::{Body, Fact, FastenerGroup, Outcome, RunBegun, Spot, Wrench};
use crate::fold::Problem;
use crate::fold::strikes::struck_out;
use crate::fold::tools::listed;
use crate::id::{FactId, OwnId, ToolId};
use crate::journal::Journal;

/// All groups of fasteners of a build.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Tightenings {
    /// The groups, in the order they were first described.
    pub groups: Vec<Group>,
    /// The builder's own torque wrenches, in the order they were first listed.
    pub listed: Vec<(ToolId, Wrench)>,
    /// What could not be used, and why.
    pub problems: Vec<Problem>,
}

/// Where all groups of fasteners of a build stand. Pure: the same facts give
/// the same answer, in whatever order they came in.
#[must_use]
pub fn tightenings(journal: &Journal) -> Tightenings {
    Gathering::of(journal).found
}

impl Tightenings {
    /// The group with this id.
    #[must_use]
    pub fn group(&self, own: OwnId) -> Option<&Group> {
        self.groups.iter().find(|group| group.own == own)
    }

    /// The run that this fact began.
    #[must_use]
    pub fn run(&self, fact: FactId) -> Option<&Run> {
        let parts = self.groups.iter().flat_map(|group| group.parts.values());
        parts
            .flat_map(|part| &part.runs)
            .find(|run| run.fact == fact)
    }
}

/// Where a run is found: its group, its part, and which of its runs.
type Place = (usize, At, usize);

/// Where all groups stand, to be taken further fact by fact: a pull in a big
/// book costs what a pull in a small one does.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Gathering {
    found: Tightenings,
    groups: BTreeMap<OwnId, usize>,
    sheets: BTreeMap<FactId, Arc<Sheet>>,
    runs: BTreeMap<FactId, Place>,
    sealants: BTreeMap<FactId, Place>,
    tools: BTreeMap<ToolId, Tool>,
    /// How many facts have gone in, and the last of them.
    facts: usize,
    last: Option<FactId>,
}

impl Gathering {
    /// All facts of a journal.
    #[must_use]
    pub fn of(journal: &Journal) -> Self {
        let mut gathering = Self::default();
        let struck = struck_out(journal.facts(), &mut Vec::new());
        let standing = || {
            let facts = journal.facts();
            facts.filter(|fact| !struck.contains_key(&fact.id()))
        };
        // A length counts with what is known of its tool now, not with what was then.
        gathering.tools = listed(standing())
            .iter()
            .filter_map(|tool| Some((tool.tool, tool.known()?)))
            .collect();
        for fact in standing() {
            gathering.take(fact);
        }
        let groups = gathering.found.groups.iter_mut();
        for part in groups.flat_map(|one| one.parts.values_mut()) {
            part.close();
        }
        gathering.facts = journal.len();
        gathering.last = journal.facts().next_back().map(Fact::id);
        gathering
    }

    /// The groups as they stand.
    #[must_use]
    pub const fn all(&self) -> &Tightenings {
        &self.found
    }

    /// With what the journal has more by now. One fact more is taken in by
    /// itself; more of them, one that came late, and one that changes what went
    /// before are taken in by starting over.
    #[must_use]
    pub fn further(mut self, journal: &Journal) -> Self {
        let newest = journal.facts().next_back();
        let one_more = journal.len() == self.facts + 1;
        match newest.filter(|fact| one_more && self.last < Some(fact.id())) {
            Some(fact) if !reaches_back(fact) => {
                self.append(fact);
                self
            }
            _ => Self::of(journal),
        }
    }

    fn append(&mut self, fact: &Fact) {
        self.take(fact);
        if let Some((group, at)) = self.part_of(fact)
            && let Some(group) = self.found.groups.get_mut(group)
            && let Some(part) = group.parts.get_mut(&at)
        {
            part.close();
        }
        self.facts += 1;
        self.last = Some(fact.id());
    }

    /// The part that a fact is about, once it is taken in.
    fn part_of(&self, fact: &Fact) -> Option<(usize, At)> {
        let of_run = |run: FactId| self.runs.get(&run).map(|(group, at, _)| (*group, *at));
        let of_group = |own: OwnId, place: Option<&Spot>| {
            let group = self.groups.get(&own)?;
            Some((*group, at_of(place)?))
        };
        match fact.body() {
            Body::RunBegun(_) => of_run(fact.id()),
            Body::RunOpened(made) => of_run(made.run),
            Body::BoltPulled(made) => of_run(made.run),
            Body::RunMarked(made) => of_run(made.run),
            Body::BoltsRenewed(made) => of_group(made.group, made.place.as_ref()),
            Body::BoltMeasured(made) => of_group(made.group, made.place.as_ref()),
            Body::BoltCompared(made) => of_group(made.group, made.place.as_ref()),
            // What is put on a joint changes nothing of whether a run counts.
            _ => None,
        }
    }

    fn take(&mut self, fact: &Fact) {
        let right = match fact.body() {
            Body::FastenerGroup(made) => {
                self.describe(fact, made);
                true
            }
            Body::RunBegun(made) => self.begin(fact, made),
            Body::RunOpened(made) => self.in_run(fact, made.run, |run| run.opened(made.sitting)),
            Body::BoltPulled(made) => self.in_run(fact, made.run, |run| {
                run.pulled(made.bolt, made.lap, made.sitting);
            }),
            Body::RunMarked(made) => self.in_run(fact, made.run, |run| run.marked(made)),
            Body::BoltsRenewed(made) => self.in_part(made.group, made.place.as_ref(), |part| {
                let every: Vec<usize> = (0..part.bolts.len()).collect();
                let named: Vec<usize> = made.bolts.iter().map(|bolt| from_one(*bolt)).collect();
                for bolt in if named.is_empty() { every } else { named } {
                    part.renew(bolt, fact.id(), made.lot.as_deref());
                }
            }),
            Body::WrenchListed(made) => {
                let listed = &mut self.found.listed;
                match listed.iter_mut().find(|(tool, _)| *tool == made.tool) {
                    Some((_, wrench)) => wrench.clone_from(&made.wrench),
                    None => listed.push((made.tool, made.wrench.clone())),
                }
                true
            }
            Body::BoltMeasured(made) => {
                let tool = made.tool.and_then(|tool| self.tools.get(&tool).cloned());
                self.in_part(made.group, made.place.as_ref(), |part| {
                    if let Some(bolt) = part.bolts.get_mut(from_one(made.bolt)) {
                        bolt.measured(Length::of(fact.id(), made, tool), made.state);
                    }
                })
            }
            Body::BoltCompared(made) => self.in_part(made.group, made.place.as_ref(), |part| {
                if let Some(bolt) = part.bolts.get_mut(from_one(made.bolt)) {
                    bolt.not_as_mapped = made.outcome == Outcome::Bad;
                }
            }),
            Body::SealantPutOn(made) => {
                let mut at = 0;
                let right = self.in_part(made.group, made.place.as_ref(), |part| {
                    at = part.sealants.len();
                    part.sealants.push(Sealant::of(fact, made));
                });
                if let (Some(group), Some(part)) =
                    (self.groups.get(&made.group), at_of(made.place.as_ref()))
                {
                    self.sealants.insert(fact.id(), (*group, part, at));
                }
                right
            }
            Body::JointClosed(made) => self.close(fact, made.sealant),
            _ => true,
        };
        if !right {
            self.problem(
                fact,
                "It goes by a group of fasteners, a run or a place that is not there.",
            );
        }
    }

    fn problem(&mut self, fact: &Fact, text: &str) {
        self.found.problems.push(Problem::new(fact.id(), text));
    }

    fn describe(&mut self, fact: &Fact, made: &FastenerGroup) {
        let sheet = Arc::new(Sheet::of(made));
        self.sheets.insert(fact.id(), Arc::clone(&sheet));
        let at = *self
            .groups
            .entry(made.own)
            .or_insert(self.found.groups.len());
        match self.found.groups.get_mut(at) {
            Some(group) => {
                for part in group.parts.values_mut() {
                    if let Some(run) = part.with(sheet.layout.count()).runs.last_mut() {
                        run.recorded(&sheet);
                    }
                }
                (group.fact, group.made, group.sheet) = (fact.id(), made.clone(), sheet);
            }
            None => self.found.groups.push(Group {
                own: made.own,
                fact: fact.id(),
                made: made.clone(),
                sheet,
                parts: BTreeMap::new(),
            }),
        }
    }

    fn begin(&mut self, fact: &Fact, made: &RunBegun) -> bool {
        let (Some(at), Some(group)) = (at_of(made.place.as_ref()), self.groups.get(&made.group))
        else {
            return false;
        };
        let Some(sheet) = self.sheets.get(&made.sheet) else {
            return false;
        };
        let Some(found) = self.found.groups.get_mut(*group) else {
            return false;
        };
        let Some(mut run) = Run::begin(fact, made, at, sheet) else {
            return false;
        };
        run.recorded(&found.sheet);
        let part = found.parts.entry(at).or_default();
        part.with(run.bolts()).settle();
        run.used_before(part.bolts.iter().map(|bolt| bolt.settled).collect());
        self.runs.insert(fact.id(), (*group, at, part.runs.len()));
        part.runs.push(run);
        true
    }

    fn in_run(&mut self, fact: &Fact, run: FactId, act: impl FnOnce(&mut Run)) -> bool {
        let place = self.runs.get(&run).copied();
        let found = place.and_then(|(group, at, run)| {
            let part = self.found.groups.get_mut(group)?.parts.get_mut(&at)?;
            part.runs.get_mut(run)
        });
        let Some(run) = found else {
            return false;
        };
        act(run);
        run.touched(fact);
        true
    }

    fn in_part(&mut self, own: OwnId, place: Option<&Spot>, act: impl FnOnce(&mut Part)) -> bool {
        let (Some(at), Some(group)) = (at_of(place), self.groups.get(&own)) else {
            return false;
        };
        let Some(group) = self.found.groups.get_mut(*group) else {
            return false;
        };
        let bolts = group.sheet.layout.count();
        act(group.parts.entry(at).or_default().with(bolts));
        true
    }

    fn close(&mut self, fact: &Fact, sealant: FactId) -> bool {
        let place = self.sealants.get(&sealant).copied();
        let found = place.and_then(|(group, at, one)| {
            let part = self.found.groups.get_mut(group)?.parts.get_mut(&at)?;
            part.sealants.get_mut(one)
        });
        let Some(sealant) = found else {
            return false;
        };
        // Closed once: the first time is the one that counts.
        sealant.closed.get_or_insert(fact.clock());
        true
    }
}

/// The part that a fact is about; `None` when this version does not know it.
fn at_of(place: Option<&Spot>) -> Option<At> {
    match place {
        None => Some(At::Engine),
        Some(spot) => spot.place().map(|place| place.at),
    }
}

/// Whether a fact changes what came of those before it: one is struck out, a
/// group is another one, or a tool that lengths were taken with.
const fn reaches_back(fact: &Fact) -> bool {
    matches!(
        fact.body(),
        Body::Struck(_) | Body::FastenerGroup(_) | Body::ToolListed(_) | Body::ToolTried(_)
    )
}
