//! The cheapest way back: what has to be done so that stale results count again.

use std::collections::BTreeMap;

use build_plan::measure::Per;
use build_plan::proof::Proof;
use build_plan::step::{By, Phase, Step};
use build_plan::{At, Engine};

use super::build::Build;
use super::stale::Stale;

/// Ways are compared one with another up to this many; beyond, each result
/// takes the way that adds least.
const COMPARED: usize = 3000;

/// What has to be done so that stale results count again.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct WayBack {
    /// What to do, in the order of the job.
    pub jobs: Vec<Job>,
    /// How long that takes one careful person, from and to; common practice.
    pub minutes: (u32, u32),
    /// Results that no step of this plan proves.
    pub no_way: Vec<Stale>,
}

/// A step, at the parts where it is done again.
#[derive(Clone, PartialEq, Debug)]
pub struct Job {
    /// The step.
    pub step: &'static Step,
    /// The parts, in the order of the engine.
    pub parts: Vec<At>,
    /// Whether it only came in the way: it is taken apart and done again.
    pub in_the_way: bool,
    /// How long it takes, from and to.
    pub minutes: (u32, u32),
}

/// Jobs by step and part, with what they cost in minutes.
type Jobs = BTreeMap<(&'static str, At), Cost>;

#[derive(Clone, Copy, PartialEq, Debug)]
struct Cost {
    step: &'static Step,
    minutes: (u32, u32),
    in_the_way: bool,
}

impl Build {
    /// The cheapest way to have these results count again.
    #[must_use]
    pub fn way_back(&self, stale: &[Stale]) -> WayBack {
        let Some(engine) = self.engine.as_ref().map(|one| &one.engine) else {
            return WayBack::default();
        };
        let mut way = WayBack::default();
        let mut choices: Vec<Vec<Jobs>> = Vec::new();
        for one in stale {
            let ways = self.ways(one, engine);
            if ways.is_empty() {
                way.no_way.push(one.clone());
            } else if !choices.contains(&ways) {
                choices.push(ways);
            }
        }
        let jobs = cheapest(&choices);
        for step in self.plan.steps(engine) {
            let own: Vec<(&At, &Cost)> = jobs
                .iter()
                .filter_map(|((id, at), cost)| (*id == step.id).then_some((at, cost)))
                .collect();
            if own.is_empty() {
                continue;
            }
            let sum = |of: fn(&Cost) -> u32| own.iter().map(|(_, cost)| of(cost)).sum::<u32>();
            let minutes = (sum(|cost| cost.minutes.0), sum(|cost| cost.minutes.1));
            way.minutes = (way.minutes.0 + minutes.0, way.minutes.1 + minutes.1);
            way.jobs.push(Job {
                step,
                parts: own.iter().map(|(at, _)| **at).collect(),
                in_the_way: own.iter().all(|(_, cost)| cost.in_the_way),
                minutes,
            });
        }
        way
    }

    /// The ways to prove one result again.
    fn ways(&self, stale: &Stale, engine: &Engine) -> Vec<Jobs> {
        let mut steps: Vec<&'static Step> = match stale.proof {
            Proof::Step(step) => vec![step],
            proof => (self.plan.steps(engine))
                .filter(|step| self.plan.proves(step).contains(&proof))
                .collect(),
        };
        // Nobody machines a part to measure it, and what came apart is not as
        // it was found; but where there is no other way, it is named.
        let usual = |step: &&Step| step.by == By::Builder && step.phase != Phase::Teardown;
        if steps.iter().any(usual) {
            steps.retain(usual);
        }
        let mut ways: Vec<Jobs> = Vec::new();
        for step in steps {
            let mut jobs = Jobs::new();
            let share = share(step, stale.proof, engine);
            for at in step.per.parts(engine) {
                if at.concerns(stale.at, engine) {
                    // Of a step for the whole engine, what this part takes.
                    let key = if at == At::Engine && share > 1 {
                        stale.at
                    } else {
                        at
                    };
                    let cost = Cost {
                        step,
                        minutes: minutes_of(step, share),
                        in_the_way: false,
                    };
                    jobs.insert((step.id, key), cost);
                    self.take_off(step, at, stale.at, engine, &mut jobs);
                }
            }
            if !matches!(stale.proof, Proof::Step(_)) {
                for over in self.plan.steps(engine).filter(|it| it.hides(stale.proof)) {
                    if over != step {
                        self.in_the_way(over, stale.at, engine, &mut jobs);
                    }
                }
            }
            if !jobs.is_empty() && !ways.contains(&jobs) {
                ways.push(jobs);
            }
        }
        ways
    }

    /// A step that is done lies over what has to be reached.
    fn in_the_way(&self, over: &'static Step, at: At, engine: &Engine, jobs: &mut Jobs) {
        for part in over.per.parts(engine) {
            let done = self.record.marked(over, part).and_then(|mark| mark.done);
            let stands =
                done.is_some_and(|done| !self.record.is_void(Proof::Step(over), part, done));
            if !stands || !part.concerns(at, engine) || jobs.contains_key(&(over.id, part)) {
                continue;
            }
            let cost = Cost {
                step: over,
                minutes: minutes_of(over, 1),
                in_the_way: true,
            };
            jobs.insert((over.id, part), cost);
            self.take_off(over, part, at, engine, jobs);
        }
    }

    /// What comes off first when a step is done again at a part.
    fn take_off(&self, step: &Step, part: At, at: At, engine: &Engine, jobs: &mut Jobs) {
        let scope = if part == At::Engine { at } else { part };
        for over in step.undoes().iter().copied() {
            if over.when.applies_to(engine) {
                self.in_the_way(over, scope, engine, jobs);
            }
        }
    }
}

/// How many shares a step for the whole engine has, when it is done for one
/// part of what it proves only: it has to be looking and measuring.
fn share(step: &Step, proof: Proof, engine: &Engine) -> u32 {
    let looking = matches!(
        step.phase,
        Phase::Inspection | Phase::TrialFit | Phase::Teardown
    );
    if step.per != Per::Engine || !looking || !matches!(proof, Proof::Measure(_)) {
        return 1;
    }
    u32::try_from(proof.per().parts(engine).len())
        .unwrap_or(1)
        .max(1)
}

/// The minutes of a step at one part, or of one of its shares.
fn minutes_of(step: &Step, share: u32) -> (u32, u32) {
    // Minutes of a step with parts are those of one part.
    let of = |minutes: u16| u32::from(minutes).div_ceil(share);
    (of(step.minutes.0), of(step.minutes.1))
}

/// Of each choice one, so that all jobs together take least time.
fn cheapest(choices: &[Vec<Jobs>]) -> Jobs {
    let mut fixed = Jobs::new();
    let mut open: Vec<&Vec<Jobs>> = Vec::new();
    for ways in choices {
        match ways.as_slice() {
            [only] => add(&mut fixed, only),
            _ => open.push(ways),
        }
    }
    let ways = open
        .iter()
        .try_fold(1_usize, |all, ways| all.checked_mul(ways.len()));
    if ways.is_some_and(|ways| ways <= COMPARED) {
        let mut best = None;
        compare(&open, fixed, &mut best);
        return best.map(|(_, jobs)| jobs).unwrap_or_default();
    }
    // Each takes what adds least to what is done anyway.
    for ways in open {
        let with = |jobs: &Jobs| {
            let mut all = fixed.clone();
            add(&mut all, jobs);
            cost(&all)
        };
        if let Some(least) = ways.iter().min_by_key(|jobs| with(jobs)) {
            let least = least.clone();
            add(&mut fixed, &least);
        }
    }
    fixed
}

/// Looks at every way there is.
fn compare(open: &[&Vec<Jobs>], so_far: Jobs, best: &mut Option<((u32, u32), Jobs)>) {
    let now = cost(&so_far);
    if best.as_ref().is_some_and(|(least, _)| *least <= now) {
        return;
    }
    match open.split_first() {
        None => *best = Some((now, so_far)),
        Some((ways, rest)) => {
            for jobs in *ways {
                let mut all = so_far.clone();
                add(&mut all, jobs);
                compare(rest, all, best);
            }
        }
    }
}

fn add(all: &mut Jobs, more: &Jobs) {
    for (key, cost) in more {
        let there = all.entry(*key).or_insert(*cost);
        // What is done for itself does not only lie in the way.
        there.in_the_way &= cost.in_the_way;
    }
}

/// The time at most, then at least.
fn cost(jobs: &Jobs) -> (u32, u32) {
    let sum = |of: fn(&Cost) -> u32| jobs.values().map(of).sum::<u32>();
    (sum(|cost| cost.minutes.1), sum(|cost| cost.minutes.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_plan::step::STEPS;

    fn jobs(of: &[(usize, u32)]) -> Jobs {
        of.iter()
            .map(|(step, minutes)| {
                let step = STEPS[*step];
                let cost = Cost {
                    step,
                    minutes: (*minutes / 2, *minutes),
                    in_the_way: false,
                };
                ((step.id, At::Engine), cost)
            })
            .collect()
    }

    /// Every way there is, one by one.
    fn least_of_all(choices: &[Vec<Jobs>]) -> (u32, u32) {
        let many: usize = choices.iter().map(Vec::len).product();
        (0..many)
            .map(|mut which| {
                let mut all = Jobs::new();
                for ways in choices {
                    add(&mut all, &ways[which % ways.len()]);
                    which /= ways.len();
                }
                cost(&all)
            })
            .min()
            .unwrap()
    }

    #[test]
    fn a_dearer_step_that_serves_two_results_is_taken() {
        let shared = jobs(&[(0, 50)]);
        let choices = [
            vec![jobs(&[(1, 40)]), shared.clone()],
            vec![jobs(&[(2, 40)]), shared.clone()],
        ];
        assert_eq!(cheapest(&choices), shared);
    }

    #[test]
    fn no_way_takes_less_time_than_the_one_that_is_found() {
        let mut dice = 7_u64;
        let mut draw = |bound: u64| {
            dice = dice.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (dice >> 33) % bound
        };
        for _ in 0..300 {
            let choices: Vec<Vec<Jobs>> = (0..1 + draw(6))
                .map(|_| {
                    (0..1 + draw(3))
                        .map(|_| {
                            let some = (0..1 + draw(3)).map(|_| {
                                let step = usize::try_from(draw(9)).unwrap();
                                // A step takes as long whichever result it is for.
                                (step, 10 + u32::try_from(step * 7 % 5).unwrap() * 10)
                            });
                            jobs(&some.collect::<Vec<_>>())
                        })
                        .collect()
                })
                .collect();
            assert_eq!(cost(&cheapest(&choices)), least_of_all(&choices));
        }
    }
}
