//! The longest way to the end, through the machine shop, and the dates that
//! were promised.

use std::collections::BTreeMap;

use build_plan::step::{By, Step};

use super::build::Build;
use super::next::{Outlook, StepState, WaitsFor};
use crate::day::Day;

const DAY: i64 = 24 * 60 * 60 * 1000;

/// What a shop takes when it has promised no day: six weeks, between the two
/// and ten that are common. Common practice, no source.
const SHOP_TAKES: i64 = 42 * DAY;

/// The longest way from now to the end of the job.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct CriticalPath {
    /// The steps along it, each with the moments it begins and ends at the
    /// earliest.
    pub steps: Vec<OnTheWay>,
    /// Steps that wait for each other, so that none of them can be done; only
    /// the builder's own can do that.
    pub stuck: Vec<&'static Step>,
}

/// A step along the longest way.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct OnTheWay {
    /// The step.
    pub step: &'static Step,
    /// When it begins at the earliest, in milliseconds since 1970.
    pub begins: i64,
    /// When it ends at the earliest.
    pub ends: i64,
    /// Whether a shop has it that has promised no day.
    pub guessed: bool,
}

/// Something that was promised for a day.
#[derive(Clone, PartialEq, Debug)]
pub struct Promised {
    /// The day.
    pub day: Day,
    /// What it is.
    pub what: String,
    /// The steps that wait for it.
    pub holds_up: Vec<&'static Step>,
}

impl Outlook {
    /// The longest way to the end, when the builder has so many minutes a day
    /// on average. Everything that can go on side by side does: at best it is
    /// like this.
    #[must_use]
    pub fn critical_path(&self, build: &Build, now: i64, minutes_a_day: u32) -> CriticalPath {
        let Some(engine) = build.engine.as_ref().map(|one| &one.engine) else {
            return CriticalPath::default();
        };
        let mut ends: BTreeMap<&'static str, (OnTheWay, Option<&'static str>)> = BTreeMap::new();
        let mut left: Vec<&StepState> = self.open.iter().collect();
        while !left.is_empty() {
            let before = left.len();
            left.retain(|state| {
                let needs = build.plan.needs(state.step, engine);
                let hard = || {
                    needs
                        .iter()
                        .filter(|(_, hard)| *hard)
                        .map(|(need, _)| need.id)
                };
                let open = |id: &str| self.open.iter().any(|one| one.step.id == id);
                if hard().any(|id| open(id) && !ends.contains_key(id)) {
                    return true;
                }
                let last = hard()
                    .filter_map(|id| ends.get(id).map(|(on, _)| (on.ends, on.step.id)))
                    .max();
                let begins = last
                    .map_or(now, |(ends, _)| ends)
                    .max(parts_here(state, now));
                let (takes, guessed) = takes(state, begins, minutes_a_day);
                let on = OnTheWay {
                    step: state.step,
                    begins,
                    ends: begins.saturating_add(takes),
                    guessed,
                };
                ends.insert(state.step.id, (on, last.map(|(_, id)| id)));
                false
            });
            if left.len() == before {
                break;
            }
        }
        let stuck = left.iter().map(|state| state.step).collect();
        let last = ends.values().max_by_key(|(on, _)| on.ends);
        let mut next = last.map(|(on, _)| on.step.id);
        let mut steps = Vec::new();
        while let Some((on, before)) = next.and_then(|id| ends.get(id)) {
            steps.push(*on);
            next = *before;
        }
        steps.reverse();
        CriticalPath { steps, stuck }
    }

    /// What was promised, by day, with what waits for it.
    #[must_use]
    pub fn promised(&self, build: &Build) -> Vec<Promised> {
        let mut all: Vec<Promised> = Vec::new();
        let parts = build.bought.parts.iter();
        for part in parts.filter(|part| part.is_waited_for()) {
            let holds_up = self.waiting_for(
                |waits| matches!(waits, WaitsFor::Part { part: on, .. } if *on == part.listed.part),
            );
            all.extend(part.promised.map(|day| Promised {
                day,
                what: part.listed.name.clone(),
                holds_up,
            }));
        }
        for work in &build.bought.work {
            let away = matches!(work.stage, None | Some(crate::fact::WorkStage::Sent));
            let holds_up = self.waiting_for(
                |waits| matches!(waits, WaitsFor::Shop { work: on, .. } if *on == work.ordered.work),
            );
            all.extend(work.promised.filter(|_| away).map(|day| Promised {
                day,
                what: work.ordered.what.clone(),
                holds_up,
            }));
        }
        all.sort_unstable_by(|a, b| (a.day, &a.what).cmp(&(b.day, &b.what)));
        all
    }

    fn waiting_for(&self, is_it: impl Fn(&WaitsFor) -> bool) -> Vec<&'static Step> {
        let waits = |state: &&StepState| state.waits.iter().any(&is_it);
        let waiting = self.open.iter().filter(waits);
        waiting.map(|state| state.step).collect()
    }
}

/// When the parts that a step waits for are here, as far as was promised.
fn parts_here(state: &StepState, now: i64) -> i64 {
    let promised = state.waits.iter().filter_map(|waits| match waits {
        WaitsFor::Part { promised, .. } => promised.map(Day::begins),
        _ => None,
    });
    promised.fold(now, i64::max)
}

/// How long a step takes from when it can begin, and whether that is a guess.
fn takes(state: &StepState, begins: i64, minutes_a_day: u32) -> (i64, bool) {
    let day = state.waits.iter().find_map(|waits| match waits {
        WaitsFor::Shop { promised, .. } => Some(*promised),
        _ => None,
    });
    match day {
        Some(Some(day)) => ((day.begins() - begins).max(0), false),
        Some(None) => (SHOP_TAKES, true),
        None if state.step.by == By::Shop => (SHOP_TAKES, true),
        None => {
            let minutes = i64::from(state.minutes.1);
            (minutes * DAY / i64::from(minutes_a_day.max(1)), false)
        }
    }
}
