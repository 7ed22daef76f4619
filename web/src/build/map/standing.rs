//! How every part of the engine stands, in one pass over the build.

use std::collections::{BTreeMap, BTreeSet};

use assembly_core::describe::{Finding, Gravity};
use assembly_core::measure::Verdict;
use build_journal::fact::Sort;
use build_journal::fold::{Build, FitStanding, Missing, ResultAt, Standing};
use build_plan::map::Part;
use build_plan::measure::{MAIN_OIL_CLEARANCE, ROD_OIL_CLEARANCE};
use build_plan::proof::Proof;
use build_plan::{At, Engine, MEASURES, Measure};

use crate::kit::verdict::Mark;

/// How a measure stands at a part, from the best to the worst: the worst of
/// what was measured is what a part is shown with.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum State {
    /// Nothing was measured.
    NotMeasured,
    /// A size is known that has no limits of its own: what goes by it is judged,
    /// where that is known.
    Size,
    /// Inside, surely enough.
    Good,
    /// Measured, with something missing for a verdict.
    NoVerdict,
    /// The measuring can't tell.
    Close,
    /// It was true until something changed.
    Stale,
    /// Outside, surely enough.
    Bad,
}

impl State {
    /// The mark it is drawn with.
    #[must_use]
    pub const fn mark(self) -> Mark {
        match self {
            Self::NotMeasured | Self::Size | Self::NoVerdict => Mark::None,
            Self::Good => Mark::Good,
            Self::Close => Mark::Close,
            Self::Stale => Mark::Stale,
            Self::Bad => Mark::Bad,
        }
    }

    /// The same in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Size | Self::NoVerdict => "no verdict yet",
            other => other.mark().words(),
        }
    }
}

/// What is good as far as it was measured.
pub const SO_FAR: &str = "good so far";

/// How a part stands: by the worst of its measures that was measured.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct PartStands {
    /// The worst.
    pub state: State,
    /// The measure that stands like that; none before anything is measured.
    pub by: Option<&'static str>,
    /// How many measures it has.
    pub all: usize,
    /// How many of them are not measured yet, nor let pass.
    pub left: usize,
    /// Whether some of its measures were not measured at all of their places.
    pub in_part: bool,
}

impl PartStands {
    const NOTHING: Self = Self {
        state: State::NotMeasured,
        by: None,
        all: 0,
        left: 0,
        in_part: false,
    };

    /// The verdict; good only so far, while something is left to measure.
    #[must_use]
    pub const fn words(&self) -> &'static str {
        match (self.state, self.left, self.all) {
            (_, _, 0) => "nothing to measure",
            (State::NotMeasured, 0, _) => "let pass",
            (State::Good, ..) if self.left > 0 || self.in_part => SO_FAR,
            (state, ..) => state.words(),
        }
    }

    /// How it stands in one sentence, for who cannot see the drawing.
    #[must_use]
    pub fn sentence(&self) -> String {
        let by = match (self.state, self.by) {
            (State::Good | State::NotMeasured | State::Size, _) | (_, None) => String::new(),
            (_, Some(by)) => format!(": {by}"),
        };
        let left = match (self.left, self.all) {
            (0, _) => String::new(),
            (left, all) if left == all => format!("; {all} to measure"),
            (left, all) => format!("; {left} of {all} still to measure"),
        };
        let places = if self.in_part {
            "; not measured at all places"
        } else {
            ""
        };
        format!("{}{by}{left}{places}", self.words())
    }
}

/// The engine, and how each of its parts stands.
#[derive(Clone, PartialEq, Debug)]
pub struct EngineStands {
    /// The engine.
    pub engine: Engine,
    parts: BTreeMap<Part, PartStands>,
}

impl EngineStands {
    /// How everything stands; `None` before the engine is described.
    #[must_use]
    pub fn of(build: &Build) -> Option<Self> {
        let engine = build.engine.as_ref()?.engine.clone();
        let parts = Part::all(&engine).into_iter();
        let mut stands = Self {
            parts: parts.map(|part| (part, PartStands::NOTHING)).collect(),
            engine,
        };
        stands.count(build);
        let stale: BTreeSet<(&str, At)> = (build.stale().iter())
            .filter(|one| matches!(one.proof, Proof::Measure(_)))
            .map(|one| (one.proof.id(), one.at))
            .collect();
        let sizes = sizes();
        for fit in build.fits().filter(|fit| fit.extent.is_some()) {
            let state = match &fit.standing {
                FitStanding::Judged(said) => of_verdict(said.verdict),
                FitStanding::Open(missing)
                    if *missing == [Missing::Limits] && sizes.contains(fit.measure.id) =>
                {
                    State::Size
                }
                FitStanding::Open(_) => State::NoVerdict,
            };
            let in_part = !build.left_out(fit.measure, fit.at).is_empty();
            stands.take((fit.measure, fit.at), (state, in_part), &stale);
        }
        for main in build.mains.iter().filter(|one| one.clearance().is_some()) {
            let state = of_bearing(&main.standing, &main.findings);
            let at = At::Main(main.main.number());
            let in_part = !build.left_out(&MAIN_OIL_CLEARANCE, at).is_empty();
            stands.take((&MAIN_OIL_CLEARANCE, at), (state, in_part), &stale);
        }
        for rod in &build.rods {
            if rod.fit.by_size.is_some() || rod.fit.at_once.is_some() {
                let state = of_bearing(&rod.fit.standing, &rod.fit.findings);
                let at = At::Rod(rod.cylinder);
                let in_part = !build.left_out(&ROD_OIL_CLEARANCE, at).is_empty();
                stands.take((&ROD_OIL_CLEARANCE, at), (state, in_part), &stale);
            }
        }
        Some(stands)
    }

    /// How a part stands.
    #[must_use]
    pub fn at(&self, part: Part) -> PartStands {
        let found = self.parts.get(&part);
        found.copied().unwrap_or(PartStands::NOTHING)
    }

    /// The parts that want looking at, the worst first.
    #[must_use]
    pub fn worst(&self) -> Vec<(Part, PartStands)> {
        let all = self.parts.iter().map(|(part, stands)| (*part, *stands));
        let mut worst: Vec<(Part, PartStands)> =
            all.filter(|(_, one)| one.state >= State::Close).collect();
        worst.sort_by_key(|(_, one)| std::cmp::Reverse(one.state));
        worst
    }

    /// How many parts these words are said of.
    #[must_use]
    pub fn count_of(&self, words: &str) -> usize {
        let all = self.parts.values().filter(|one| one.all > 0);
        all.filter(|one| one.words() == words).count()
    }

    /// Counts what each part has to be measured, all of it still left.
    fn count(&mut self, build: &Build) {
        for measure in build.plan.measures(&self.engine) {
            for at in measure.spots.per.parts(&self.engine) {
                let key = ResultAt {
                    sort: Sort::Measure,
                    id: measure.id,
                    at,
                };
                let let_pass = build.record.let_pass(key).is_some();
                if let Some(part) = self.parts.get_mut(&Part::of(measure, at)) {
                    part.all += 1;
                    part.left += usize::from(!let_pass);
                }
            }
        }
    }

    /// Takes in a measure that there is a number of.
    fn take(
        &mut self,
        (measure, at): (&'static Measure, At),
        (state, in_part): (State, bool),
        stale: &BTreeSet<(&str, At)>,
    ) {
        let Some(part) = self.parts.get_mut(&Part::of(measure, at)) else {
            return;
        };
        part.left = part.left.saturating_sub(1);
        part.in_part |= in_part;
        let state = if stale.contains(&(measure.id, at)) {
            State::Stale
        } else {
            state
        };
        if state > part.state {
            part.state = state;
            part.by = Some(measure.label);
        }
    }
}

/// The measures that others are worked out from.
fn sizes() -> BTreeSet<&'static str> {
    let all = MEASURES.iter().flat_map(|measure| measure.sources());
    all.map(|measure| measure.id).collect()
}

const fn of_verdict(verdict: Verdict) -> State {
    match verdict {
        Verdict::Good => State::Good,
        Verdict::TooCloseToCall => State::Close,
        Verdict::Bad => State::Bad,
    }
}

/// A bearing that must not be built like this is bad, limits or none.
fn of_bearing(standing: &Standing, findings: &[Finding]) -> State {
    if findings.iter().any(|one| one.gravity == Gravity::Stop) {
        return State::Bad;
    }
    standing.verdict().map_or(State::NoVerdict, of_verdict)
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::{fold, import};
    use build_plan::place::Ring;

    /// The sample engine: its verdicts are known, see its own tests.
    fn sample() -> Build {
        let file = include_bytes!("../../../../static/sample-engine.json");
        fold(&import(file).unwrap().journal)
    }

    fn stands() -> EngineStands {
        EngineStands::of(&sample()).unwrap()
    }

    #[test]
    fn a_part_stands_as_the_worst_of_its_measures() {
        let stands = stands();
        let at = |at| stands.at(Part::At(at));
        assert_eq!(at(At::Main(4)).state, State::Bad);
        assert_eq!(at(At::Main(4)).by, Some(MAIN_OIL_CLEARANCE.label));
        assert_eq!(at(At::Main(2)).state, State::Close);
        assert_eq!(at(At::Cylinder(3)).state, State::Stale);
        assert_eq!(at(At::Main(3)).state, State::Good);
        assert_eq!(at(At::Main(3)).words(), SO_FAR);
        assert_eq!(at(At::Crankpin(1)).words(), "good");
        assert_eq!(stands.at(Part::Nose).state, State::NotMeasured);
        let worst: Vec<Part> = stands.worst().into_iter().map(|(part, _)| part).collect();
        let expected = [At::Main(4), At::Cylinder(3), At::Main(2)].map(Part::At);
        assert_eq!(worst, expected);
    }

    #[test]
    fn what_is_left_is_what_has_neither_a_number_nor_a_reason() {
        let build = sample();
        let stands = stands();
        let ring = |cylinder| {
            let ring = Ring::Top;
            stands.at(Part::At(At::Ring { cylinder, ring }))
        };
        // The gaps of cylinder 3 wait, back clearance waits everywhere.
        assert_eq!((ring(1).all, ring(1).left), (3, 1));
        assert_eq!((ring(3).all, ring(3).left), (3, 2));
        // One measure of the pump is let pass.
        let pump = stands.at(Part::Pump);
        let engine = &build.engine.as_ref().unwrap().engine;
        let without = (build.plan.measures(engine))
            .filter(|one| Part::of(one, At::Engine) == Part::Pump)
            .filter(|one| build.fit(one, At::Engine).is_none())
            .count();
        assert_eq!(pump.left, without - 1);
    }

    #[test]
    fn every_number_there_is_counts_once() {
        let build = sample();
        let stands = stands();
        let all: usize = stands.parts.values().map(|one| one.all - one.left).sum();
        let known = build.fits().filter(|fit| fit.extent.is_some()).count();
        // Besides the fits: five mains, four rods, one that is let pass.
        assert_eq!(all, known + 5 + 4 + 1);
    }

    #[test]
    fn nothing_that_was_measured_and_is_not_judged_passes() {
        let file = include_bytes!("../../../../static/sample-engine.json");
        let text = String::from_utf8(file.to_vec()).unwrap();
        let without: Vec<&str> = text
            .lines()
            .filter(|line| !line.contains("\"limits-set\""))
            .collect();
        let build = fold(&import(without.join("\n").as_bytes()).unwrap().journal);
        let stands = EngineStands::of(&build).unwrap();
        let mut all = stands.parts.values();
        assert!(all.all(|one| one.state != State::Good));
        let known = |one: &&PartStands| one.state > State::NotMeasured;
        assert!(stands.parts.values().filter(known).count() > 40);
    }
}
