//! Measured values for a choice, all in one register of causes of error, and
//! what is missing of them.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::Arc;

use assembly_core::choose::ChoiceError;
use assembly_core::choose::parts_to_places::{Places, match_parts};
use assembly_core::choose::shells::{BenchHalf, Main, OddHalf, Position, choose_shells};
use assembly_core::choose::shims::buckets::{ShimFor, Valve, choose_bucket_shims};
use assembly_core::measure::{Measured, Sources, Window};
use assembly_core::moves::shells::Half;
use assembly_core::quantity::{Kind, Si};
use build_plan::choice::Choice;
use build_plan::measure::Per;
use build_plan::{At, Direction, Engine, Measure, Place};
use uom::si::f64::Length;

use super::super::bench::{Bench, with_setting};
use super::super::build::Build;
use super::super::placing::OnBench;
use super::super::register::{Register, Role, Value};
use super::super::standing::{Missing, window};
use super::{ChosenPart, Lacking};
use crate::fact::BenchSide;
use crate::id::{FactId, PartId};

pub(super) type Found = Vec<(At, ChosenPart, Value)>;
/// The limits, and the two of them.
pub(super) type Limited = Option<(Window, (f64, f64))>;

/// Measured values in one register of causes, and what is missing.
pub(super) struct Gathering<'a> {
    build: &'a Build,
    engine: &'a Engine,
    bench: Bench,
    pub(super) sources: Arc<Sources>,
    missing: Vec<Lacking>,
    /// Parts whose size is the box's.
    pub(super) not_measured: Vec<String>,
    unusable: Vec<Missing>,
}

impl<'a> Gathering<'a> {
    pub(super) fn new(build: &'a Build, engine: &'a Engine) -> Self {
        Self {
            build,
            engine,
            bench: Bench::of(build),
            sources: Arc::default(),
            missing: Vec::new(),
            not_measured: Vec::new(),
            unusable: Vec::new(),
        }
    }

    pub(super) fn limits(&mut self, choice: &Choice) -> Limited {
        let limits: Vec<_> = (self.build.limits.iter())
            .filter(|one| one.set.measure == choice.measure.id && one.set.place.is_none())
            .cloned()
            .collect();
        let mut missing = Vec::new();
        let window = window(&limits, &mut missing);
        self.missing.extend(missing.into_iter().map(Lacking::Of));
        let window = window?;
        let both = window.low().zip(window.high());
        if both.is_none() {
            self.missing.push(Lacking::OneSided(choice.measure));
        }
        both.map(|both| (window, both))
    }

    /// The readings of these measures that count, in one register.
    fn register(&mut self, roles: &[(Role, &'static Measure, At)]) -> Register {
        let build = self.build;
        let readings = roles.iter().flat_map(|(role, measure, at)| {
            let of = build.readings.of(measure, *at);
            of.filter(|taken| build.still_counts(taken))
                .map(move |taken| (*role, taken))
        });
        let sources = std::mem::take(&mut self.sources);
        let register = Register::going_on(sources, readings, &self.bench, &build.readings);
        self.sources = Arc::clone(register.sources());
        self.unusable.extend(register.missing());
        register
    }

    fn not_measured(&mut self, measure: &'static Measure, at: At) {
        for lacking in &mut self.missing {
            if let Lacking::NotMeasured {
                measure: same,
                at: all,
            } = lacking
                && same.id == measure.id
            {
                if !all.contains(&at) {
                    all.push(at);
                }
                return;
            }
        }
        let at = vec![at];
        self.missing.push(Lacking::NotMeasured { measure, at });
    }

    /// The hole at its tightest or the shaft at its thickest.
    fn value(
        &mut self,
        register: &Register,
        (measure, role, at): (&'static Measure, Role, At),
    ) -> Option<Value> {
        let values: Vec<Value> = (register.means(role))
            .filter(|(place, _)| role != Role::Bore || says_the_clearance(measure, place))
            .map(|(_, mean)| mean.clone())
            .collect();
        let found = match role {
            Role::Journal => Measured::greatest(&values),
            Role::Bore | Role::Itself => Measured::least(&values),
        };
        if found.is_none() {
            self.not_measured(measure, at);
        }
        found.cloned()
    }

    /// The size of a part on the bench; of one that was not measured, as the box
    /// says it.
    fn size(&mut self, part: &OnBench) -> Option<Value> {
        let name = part.listed.name.clone();
        let typed = match &part.size {
            Ok(typed) => typed,
            Err(problem) => {
                let problem = problem.clone();
                self.missing.push(Lacking::Size { name, problem });
                return None;
            }
        };
        let sources = Arc::make_mut(&mut self.sources);
        let measured: Option<Value> = part.listed.tool.and_then(|tool| {
            let chain = self
                .bench
                .chain(tool, part.listed.setting, part.fact)
                .ok()?;
            let reads = chain.first()?.tool.instrument().kind;
            if reads != Kind::Length {
                return None;
            }
            with_setting(&chain, &mut |tool, setting| {
                tool.reading_typed(sources, setting, typed)
            })
        });
        Some(measured.unwrap_or_else(|| {
            self.not_measured.push(name);
            Measured::exact(typed.quantity())
        }))
    }

    fn too_few(&mut self, choice: &Choice, wanted: usize, here: usize) {
        if here < wanted {
            self.missing.push(Lacking::TooFew {
                part: choice.part,
                wanted,
                here,
            });
        }
    }

    /// Only what is whole goes into a search.
    fn whole<T>(&self, all: Vec<Option<T>>) -> Option<Vec<T>> {
        let all: Option<Vec<T>> = all.into_iter().collect();
        all.filter(|_| self.missing.is_empty() && self.unusable.is_empty())
    }

    pub(super) fn shells(
        &mut self,
        choice: &'static Choice,
        (housing, journal): (&'static Measure, &'static Measure),
        places: &[At],
        odd: OddHalf,
        limits: Limited,
    ) -> Option<Found> {
        let build = self.build;
        let sizes: Vec<Option<(Value, Value)>> = (places.iter())
            .map(|at| {
                let shaft = beside(journal, *at, self.engine);
                let roles = [(Role::Bore, housing, *at), (Role::Journal, journal, shaft)];
                let register = self.register(&roles);
                let hole = self.value(&register, (housing, Role::Bore, *at));
                let shaft = self.value(&register, (journal, Role::Journal, shaft));
                hole.zip(shaft)
            })
            .collect();
        let parts: Vec<&OnBench> = build.places.on_bench(choice).collect();
        self.too_few(choice, 2 * places.len(), parts.len());
        let walls: Vec<Option<Value>> = parts.iter().map(|part| self.size(part)).collect();
        let (sizes, walls) = (self.whole(sizes)?, self.whole(walls)?);
        let (_, (low, high)) = limits?;
        let target = Length::from_si(f64::midpoint(low, high));
        let mains: Vec<Main> = (sizes.into_iter())
            .map(|(housing, journal)| Main {
                housing,
                journal,
                target,
            })
            .collect();
        let bench: Vec<BenchHalf> = (parts.iter().zip(walls))
            .map(|(part, wall)| BenchHalf {
                half: Half {
                    make: part.listed.make.clone(),
                    ..Half::of_steps(part.listed.steps.unwrap_or(0))
                },
                wall,
                position: match part.listed.side {
                    Some(BenchSide::Upper) => Position::Upper,
                    Some(BenchSide::Lower) => Position::Lower,
                    Some(BenchSide::Either) | None => Position::Either,
                },
            })
            .collect();
        let chosen = self.or_missing(choose_shells(&mains, &bench, odd))?;
        let half = |at: usize| {
            let part = parts.get(at)?;
            Some((part.listed.part, part.listed.name.clone()))
        };
        (places.iter().zip(chosen.placings))
            .map(|(at, placing)| {
                let halves = [half(placing.upper)?, half(placing.lower)?];
                Some((*at, ChosenPart::Halves(halves), placing.clearance))
            })
            .collect()
    }

    pub(super) fn matched(
        &mut self,
        choice: &'static Choice,
        (stays, stays_as, goes, goes_as): (&'static Measure, Role, &'static Measure, Role),
        which: Places,
        places: &[At],
        limits: Limited,
    ) -> Option<Found> {
        let build = self.build;
        let mut sizes = Vec::new();
        let mut movable = Vec::new();
        for at in places {
            let (stays_at, goes_at) = (
                beside(stays, *at, self.engine),
                beside(goes, *at, self.engine),
            );
            let register = self.register(&[(stays_as, stays, stays_at), (goes_as, goes, goes_at)]);
            sizes.push(self.value(&register, (stays, stays_as, stays_at)));
            movable.push(self.value(&register, (goes, goes_as, goes_at)));
        }
        let spare: Vec<&OnBench> = build.places.on_bench(choice).collect();
        movable.extend(spare.iter().map(|part| self.size(part)).collect::<Vec<_>>());
        let (sizes, movable) = (self.whole(sizes)?, self.whole(movable)?);
        let (_, (low, high)) = limits?;
        let target = Length::from_si(f64::midpoint(low, high));
        let matched = self.or_missing(match_parts(&sizes, &movable, which, target))?;
        (places.iter().zip(matched.parts).zip(matched.clearances))
            .map(|((at, part), gives)| {
                let part = match (places.get(part), part.checked_sub(places.len())) {
                    (Some(from), _) if from == at => ChosenPart::Stays,
                    (Some(from), _) => ChosenPart::Of(*from),
                    (None, spared) => {
                        let part = spare.get(spared?)?;
                        ChosenPart::OnBench(part.listed.part, part.listed.name.clone())
                    }
                };
                Some((*at, part, gives))
            })
            .collect()
    }

    pub(super) fn shims(
        &mut self,
        choice: &'static Choice,
        places: &[At],
        sold_in: Option<Length>,
        limits: Limited,
    ) -> Option<Found> {
        let build = self.build;
        let mut valves = Vec::new();
        let mut without = Vec::new();
        let mut sit: Vec<PartId> = Vec::new();
        for at in places {
            let register = self.register(&[(Role::Itself, choice.measure, *at)]);
            let lash = self.value(&register, (choice.measure, Role::Itself, *at));
            let Some(sits) = build.places.sits_at(choice, *at) else {
                without.push(*at);
                continue;
            };
            sit.push(sits.listed.part);
            let shim = self.size(sits);
            valves.push(shim.zip(lash).map(|(shim, lash)| Valve { shim, lash }));
        }
        if !without.is_empty() {
            self.missing.push(Lacking::WhatIsIn {
                part: choice.part.0,
                at: without,
            });
        }
        let loose: Vec<&OnBench> = (build.places.on_bench(choice))
            .filter(|part| !sit.contains(&part.listed.part))
            .collect();
        let sizes: Vec<Option<Value>> = loose.iter().map(|part| self.size(part)).collect();
        let (valves, sizes) = (self.whole(valves)?, self.whole(sizes)?);
        let (_, (low, high)) = limits?;
        let window = (Length::from_si(low), Length::from_si(high));
        // Shims that cannot be bought are of a step that fits nothing.
        let step = sold_in.unwrap_or_else(|| Length::from_si(f64::MAX));
        let chosen = self.or_missing(choose_bucket_shims(&valves, &sizes, window, step))?;
        (places.iter().zip(&valves).zip(chosen))
            .map(|((at, valve), shim)| {
                let then = |new: Value| valve.shim.clone() + valve.lash.clone() - new;
                Some(match shim {
                    ShimFor::Stays => (*at, ChosenPart::Stays, valve.lash.clone()),
                    ShimFor::FromValve(other) => {
                        let new = valves.get(other)?.shim.clone();
                        (*at, ChosenPart::Of(*places.get(other)?), then(new))
                    }
                    ShimFor::FromBench(piece) => {
                        let part = &loose.get(piece)?.listed;
                        let part = ChosenPart::OnBench(part.part, part.name.clone());
                        (*at, part, then(sizes.get(piece)?.clone()))
                    }
                    ShimFor::Bought(size) => {
                        let part = ChosenPart::Bought(size.to_si());
                        (*at, part, then(Measured::exact(size)))
                    }
                })
            })
            .collect()
    }

    fn or_missing<T>(&mut self, found: Result<T, ChoiceError>) -> Option<T> {
        found.map_err(|error| self.missing.push(error.into())).ok()
    }

    /// Everything that is missing, readings of one sort of trouble together.
    pub(super) fn all_missing(&mut self) -> Vec<Lacking> {
        let mut by_words: BTreeMap<u8, Missing> = BTreeMap::new();
        for missing in std::mem::take(&mut self.unusable) {
            let sort = match &missing {
                Missing::Tool { .. } => 0,
                Missing::KnownTool { .. } => 1,
                _ => 2,
            };
            match by_words.entry(sort) {
                Entry::Vacant(slot) => {
                    slot.insert(missing);
                }
                Entry::Occupied(mut slot) => {
                    let (all, more) = (facts_of(slot.get_mut()), missing);
                    if let (Some(all), Some(more)) = (all, facts_of(&mut more.clone())) {
                        all.append(more);
                    }
                }
            }
        }
        let mut all = std::mem::take(&mut self.missing);
        all.extend(by_words.into_values().map(Lacking::Of));
        all
    }
}

const fn facts_of(missing: &mut Missing) -> Option<&mut Vec<FactId>> {
    match missing {
        Missing::Tool { facts } | Missing::KnownTool { facts } | Missing::ZeroedAt { facts } => {
            Some(facts)
        }
        _ => None,
    }
}

/// Whether a reading of a hole says something of the clearance: a housing holds
/// its shells upright, and near its joint a bearing is wider on purpose.
fn says_the_clearance(measure: &Measure, place: &Place) -> bool {
    let sixty = [Direction::SixtyLeft, Direction::SixtyRight];
    match place.direction {
        Some(direction) if measure.spots.directions.iter().any(|it| sixty.contains(it)) => {
            direction == Direction::UpAndDown
        }
        Some(direction) => !matches!(
            direction,
            Direction::Across | Direction::JointLeft | Direction::JointRight
        ),
        None => true,
    }
}

/// The part that a measure is of, beside a place of a choice: a rod's pin.
fn beside(measure: &Measure, at: At, engine: &Engine) -> At {
    match (measure.spots.per, at) {
        (Per::Crankpin, At::Rod(cylinder)) => At::Crankpin(engine.crankpin_of(cylinder)),
        _ => at,
    }
}
