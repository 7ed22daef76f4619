//! Takes in the facts that are no readings: tools, limits, notes, photos and
//! the engine itself.

use super::build::{DescribedEngine, NotedDown, OtherFact};
use super::folding::Folding;
use super::limits::{Limits, put_in_force};
use super::photos::KeptPhoto;
use super::problem::Problem;
use super::tools::{list, seen, set, tried};
use crate::fact::{Body, EngineDescribed, Fact, Spot as Where};

impl Folding {
    /// Takes in a fact that stands and is no reading.
    pub(super) fn take(&mut self, fact: &Fact) {
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
            Body::ToolTried(made) => {
                let known = tried(&mut build.tools, fact.id(), made);
                let shown = build.tools.iter().find(|one| one.tool == made.tool);
                let shown = shown.and_then(|tool| {
                    let why = tool.trials.last()?.shows(tool.kind()).err()?;
                    Some(format!(
                        "A trial of the {} does not count: {why}.",
                        tool.called
                    ))
                });
                if let Some(text) = shown {
                    build.problems.push(Problem::new(fact.id(), text));
                }
                self.unless(known, fact, "A tool was tried out that is not on the list.");
            }
            Body::SizesListed(made) => {
                if let Err(problem) = build.list_sizes(fact.id(), made) {
                    self.problem(fact, format!("A list of sizes does not count: {problem}."));
                }
            }
            Body::WarmthSettled(made) => self.settle_warmth(fact.id(), made),
            Body::Photo(photo) => build.photos.push(KeptPhoto {
                fact: fact.id(),
                photo: photo.clone(),
            }),
            Body::Note(note) => build.notes.push(NotedDown {
                fact: fact.id(),
                text: note.text.clone(),
                place: note.place.as_ref().and_then(Where::place),
                step: note.step.clone(),
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
}
