//! Where a step stands at a part, and what a tap on it writes down.

use build_journal::Body;
use build_journal::fact::{Mark, Spot, StepMarked};
use build_journal::fold::{Build, ResultState, Stale};
use build_plan::proof::Proof;
use build_plan::step::Step;
use build_plan::{At, Place};

use crate::build::tonight::words::slug;

/// A step in hand: the parts it is done at, and those that are meant now.
#[derive(Clone, PartialEq, Debug)]
pub struct InHand {
    /// The step.
    pub step: &'static Step,
    /// All parts that it is done at on this engine.
    pub parts: Vec<At>,
    /// The part that is meant; all of them when none is.
    pub part: Option<At>,
}

impl InHand {
    /// The step with this id at the part with this name in an address; nothing
    /// when this engine has no use for it, or no such part.
    #[must_use]
    pub fn find(build: &Build, step: &str, part: Option<&str>) -> Option<Self> {
        let engine = &build.engine.as_ref()?.engine;
        let step = build.plan.step(step)?;
        if !step.when.applies_to(engine) {
            return None;
        }
        let parts = step.per.parts(engine);
        let part = match part {
            None => None,
            Some(name) => Some(parts.iter().copied().find(|at| slug(*at) == name)?),
        };
        Some(Self { step, parts, part })
    }

    /// The parts that are meant.
    #[must_use]
    pub fn targets(&self) -> Vec<At> {
        self.part
            .map_or_else(|| self.parts.clone(), |part| vec![part])
    }

    /// The parts that are meant and still to be done, and those that are done.
    #[must_use]
    pub fn open_and_settled(&self, build: &Build) -> (Vec<At>, Vec<At>) {
        let settled = |at: &At| Stand::of(build, self.step, *at).is_settled();
        self.targets().into_iter().partition(|at| !settled(at))
    }

    /// What is written down when this is said of these parts: one fact for all
    /// of them, else one for each, so that none is said of a part that is not meant.
    #[must_use]
    pub fn say(&self, mark: Mark, at: &[At], words: Option<String>) -> Vec<Body> {
        let one = |place: Option<At>| {
            Body::StepMarked(StepMarked {
                step: self.step.id.to_owned(),
                place: place.map(|at| Spot::Known(Place::of(at))),
                mark,
                words: words.clone(),
            })
        };
        if at == self.parts {
            vec![one(None)]
        } else {
            at.iter().map(|at| one(Some(*at))).collect()
        }
    }
}

/// Where a step stands at a part.
#[derive(Clone, PartialEq, Debug)]
pub enum Stand {
    /// Nothing was said of it.
    Open,
    /// It was decided on.
    Planned,
    /// It was begun, for the first time or again.
    Begun,
    /// It is done.
    Done,
    /// It is not needed.
    NotNeeded,
    /// It was taken apart.
    Apart,
    /// It was done, and came apart with something or no longer counts.
    Undone(Box<Stale>),
    /// It came apart or no longer counts, and is let pass for this reason.
    LetPass(String),
}

impl Stand {
    /// Where it stands.
    #[must_use]
    pub fn of(build: &Build, step: &'static Step, at: At) -> Self {
        let Some(marked) = build.record.marked(step, at) else {
            return Self::Open;
        };
        match marked.mark {
            Mark::Planned => Self::Planned,
            Mark::Begun => Self::Begun,
            Mark::Apart => Self::Apart,
            Mark::NotNeeded => Self::NotNeeded,
            Mark::Done => match build.result(Proof::Step(step), at) {
                ResultState::Stale(stale) => Self::Undone(Box::new(stale)),
                ResultState::LetPass(reason) => Self::LetPass(reason),
                _ => Self::Done,
            },
        }
    }

    /// Whether nothing is left to do of it.
    #[must_use]
    pub const fn is_settled(&self) -> bool {
        matches!(self, Self::Done | Self::NotNeeded | Self::LetPass(_))
    }

    /// In words, with a sign that differs in outline.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::Open => "○ not begun".to_owned(),
            Self::Planned => "○ on the plan".to_owned(),
            Self::Begun => "◐ begun".to_owned(),
            Self::Done => "✓ done".to_owned(),
            Self::NotNeeded => "– not needed".to_owned(),
            Self::Apart => "▲ taken apart".to_owned(),
            Self::Undone(_) => "▲ was done, no longer counts".to_owned(),
            Self::LetPass(reason) => format!("◇ let pass: {reason}"),
        }
    }

    /// Its name for tests and style sheets.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Planned => "planned",
            Self::Begun => "begun",
            Self::Done => "done",
            Self::NotNeeded => "not-needed",
            Self::Apart => "apart",
            Self::Undone(_) => "undone",
            Self::LetPass(_) => "let-pass",
        }
    }

    /// Several parts as one: the same when all stand alike, else begun.
    #[must_use]
    pub fn of_all(build: &Build, step: &'static Step, parts: &[At]) -> Self {
        let mut stands = parts.iter().map(|at| Self::of(build, step, *at));
        let Some(first) = stands.next() else {
            return Self::Open;
        };
        let mut all_alike = true;
        let mut all_settled = first.is_settled();
        for other in stands {
            all_alike &= other.name() == first.name();
            all_settled &= other.is_settled();
        }
        match (all_alike, all_settled) {
            (true, _) => first,
            (false, true) => Self::Done,
            (false, false) => Self::Begun,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::EngineDescribed;
    use build_journal::{BuildId, DeviceId, Fact, Journal, Stamper, fold};
    use build_plan::{Engine, Layout};

    struct Pen {
        journal: Journal,
        stamper: Stamper,
        wall: u64,
    }

    impl Pen {
        fn new() -> Self {
            let mut pen = Self {
                journal: Journal::new(BuildId::from_random(1)),
                stamper: Stamper::new(),
                wall: 0,
            };
            let engine = Engine::new("orchard sprayer", 4, Layout::Inline, Some(5)).unwrap();
            pen.write(vec![Body::EngineDescribed(EngineDescribed::of(&engine))]);
            pen
        }

        fn write(&mut self, bodies: Vec<Body>) {
            for body in bodies {
                self.wall += 1;
                let id = self.stamper.stamp(self.wall, self.wall);
                let fact = Fact::new(id, DeviceId::from_random(1), 1, body);
                self.journal.append(fact).unwrap();
            }
        }
    }

    #[test]
    fn what_is_left_is_said_part_by_part_so_that_no_done_part_is_done_again() {
        let mut pen = Pen::new();
        let in_hand =
            |pen: &Pen, part| InHand::find(&fold(&pen.journal), "rod-bolts", part).unwrap();
        let all = in_hand(&pen, None);
        assert!(all.parts.len() > 1, "{:?}", all.parts);
        let first = slug(all.parts[0]);
        let one = in_hand(&pen, Some(&first));
        pen.write(one.say(Mark::Done, &one.targets(), None));
        let (open, settled) = all.open_and_settled(&fold(&pen.journal));
        assert_eq!(settled, [all.parts[0]]);
        let rest = all.say(Mark::Done, &open, None);
        assert_eq!(rest.len(), all.parts.len() - 1);
        pen.write(rest);
        let build = fold(&pen.journal);
        assert!(build.stale().is_empty());
        assert_eq!(Stand::of_all(&build, all.step, &all.parts), Stand::Done);
        // All at once is one fact.
        assert_eq!(all.say(Mark::Done, &all.parts, None).len(), 1);
    }

    #[test]
    fn a_step_or_part_that_the_engine_does_not_have_is_not_found() {
        let build = fold(&Pen::new().journal);
        assert!(
            InHand::find(&build, "liners-in", None).is_none(),
            "no wet liners"
        );
        assert!(InHand::find(&build, "rod-bolts", Some("rod-9")).is_none());
        assert!(InHand::find(&build, "no-such-step", None).is_none());
    }
}
