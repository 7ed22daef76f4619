//! How a main bearing stands on every screen: its verdict, unless that was true
//! only until something changed.

use build_journal::fold::{Build, LeftOut, MainBearing, ResultState, Stale, Standing};
use build_plan::At;
use build_plan::measure::MAIN_OIL_CLEARANCE;
use build_plan::proof::Proof;

use super::result::judged;
use crate::build::map::SO_FAR;
use crate::device::settings::UnitClass;
use crate::kit::judged::Judged;
use crate::kit::verdict::Mark;

/// How a main bearing stands.
#[derive(Clone, PartialEq)]
pub struct Stands {
    /// Its mark.
    pub mark: Mark,
    /// Its clearance, as far as there is one.
    pub judged: Option<Judged>,
    /// What made it stale, when it is.
    pub stale: Option<Stale>,
    /// The reason it is let pass for, when it is.
    pub passed: Option<String>,
    /// The places that it does without.
    pub left_out: Vec<LeftOut>,
    /// What is missing for a verdict, the first of it.
    missing: Option<String>,
}

impl Stands {
    /// How a main bearing stands.
    #[must_use]
    pub fn of(build: &Build, bearing: &MainBearing, units: UnitClass) -> Self {
        let sets = build.sets_for(&MAIN_OIL_CLEARANCE);
        let judged = judged(bearing, units.clearance()).map(|judged| Judged { sets, ..judged });
        let at = At::Main(bearing.main.number());
        let state = build.result(Proof::Measure(&MAIN_OIL_CLEARANCE), at);
        let (stale, passed) = match state {
            ResultState::Stale(stale) => (Some(stale), None),
            ResultState::LetPass(reason) => (None, Some(reason)),
            _ => (None, None),
        };
        let mark = match (&stale, &bearing.standing, &judged) {
            (Some(_), ..) => Mark::Stale,
            (None, Standing::Judged(_), Some(judged)) => judged.mark(),
            // A missing thing is never a pass; a stop is one even without limits.
            (None, Standing::Open(_), Some(judged)) if judged.mark() == Mark::Bad => Mark::Bad,
            _ => Mark::None,
        };
        let missing = match &bearing.standing {
            Standing::Open(missing) => missing.first().map(ToString::to_string),
            Standing::Judged(_) => None,
        };
        Self {
            mark,
            judged,
            stale,
            passed,
            left_out: build.left_out(&MAIN_OIL_CLEARANCE, at),
            missing,
        }
    }

    /// The verdict in words, or what there is to say in its place.
    #[must_use]
    pub fn words(&self) -> String {
        let words = match (&self.stale, &self.missing, &self.judged) {
            (Some(stale), ..) => {
                let cause = stale.chain.first().map_or("", String::as_str);
                // What happened; why that matters is told where there is room.
                let cause = cause.split(". ").next().unwrap_or_default();
                return format!("{}: {cause}", Mark::Stale.words());
            }
            (None, Some(missing), _) => missing.clone(),
            (None, None, Some(judged)) => so_far(judged, &self.left_out),
            (None, None, None) => String::new(),
        };
        match &self.passed {
            Some(reason) => format!("{words}. Let pass: {reason}"),
            None => words,
        }
    }

    /// One short line for above the keypad and under the heading.
    #[must_use]
    pub fn line(&self) -> String {
        match (&self.stale, &self.missing, &self.judged) {
            (Some(_), ..) => Mark::Stale.words().to_owned(),
            (None, None, Some(judged)) => {
                let verdict = so_far(judged, &self.left_out);
                format!("{} · {verdict}", judged.value_words())
            }
            (None, Some(_), Some(judged)) => judged.value_words(),
            (None, _, None) => Mark::None.words().to_owned(),
        }
    }
}

/// The verdict in words. What is good without some of its places is good so far.
#[must_use]
pub fn so_far(judged: &Judged, left_out: &[LeftOut]) -> String {
    let all: usize = left_out.iter().map(|one| one.of).sum();
    let left: usize = left_out.iter().map(|one| one.places.len()).sum();
    if judged.mark() == Mark::Good && left > 0 {
        return format!("{SO_FAR}: {left} of {all} places left");
    }
    judged.verdict_words()
}
