//! The readings behind one result, made into measured values, each once.
//!
//! Readings go in in the order they were taken, so that going on from where it
//! stands and starting from scratch give the same.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::sync::Arc;

use assembly_core::measure::{Measured, Sources};
use assembly_core::quantity::{Si, Typed};
use assembly_core::tool::{Shared, Tool};
use build_plan::Place;
use uom::si::f64::Length;

use super::bench::{Bench, DEEPEST, Link, NoGiveOrTake, typed_size, with_setting};
use super::readings::Taken;
use super::standing::Missing;
use super::store::Readings;
use super::tools::ToolSetting;
use crate::id::{FactId, ToolId};

/// A value with its causes of error. The number inside knows no kind, so that
/// one piece of code serves all measures; the measure's kind says what it is.
pub(super) type Value = Measured<Length>;

/// What a reading is a reading of, within one result.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub(super) enum Role {
    /// The bore of a bearing, or the larger of two that are compared.
    Bore,
    /// The journal of a bearing, or the smaller of two that are compared.
    Journal,
    /// The result itself, read at once.
    Itself,
}

/// Several readings of one place, and their mean.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Repeats {
    values: Vec<Value>,
    mean: Option<Value>,
}

/// Measured values by what they are of and where.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Register {
    sources: Arc<Sources>,
    made: BTreeMap<FactId, Value>,
    zeroed_at: BTreeMap<FactId, Value>,
    places: BTreeMap<(Role, Place), Repeats>,
    without: Vec<(FactId, NoGiveOrTake)>,
    /// What readings by a tool in a setting share, by the fact of the setting.
    shared: BTreeMap<(ToolId, Option<FactId>), Shared>,
}

impl Register {
    /// All these readings.
    pub(super) fn of<'a>(
        readings: impl Iterator<Item = (Role, &'a Taken)>,
        bench: &Bench,
        all: &Readings,
    ) -> Self {
        Self::going_on(Arc::default(), readings, bench, all)
    }

    /// These readings with the causes of error of other results before them, so that
    /// what they share is shared.
    pub(super) fn going_on<'a>(
        sources: Arc<Sources>,
        readings: impl Iterator<Item = (Role, &'a Taken)>,
        bench: &Bench,
        all: &Readings,
    ) -> Self {
        let mut in_order: Vec<(Role, &Taken)> = readings.collect();
        in_order.sort_by_key(|(_, taken)| taken.fact);
        let mut register = Self {
            sources,
            ..Self::default()
        };
        // Each has its feel and its last digit.
        Arc::make_mut(&mut register.sources).reserve(2 * in_order.len() + 2);
        for (role, taken) in in_order {
            register.put(role, taken, bench, all);
        }
        register.settle();
        register
    }

    /// One reading more, later than all before.
    pub(super) fn add(&mut self, role: Role, taken: &Taken, bench: &Bench, all: &Readings) {
        self.put(role, taken, bench, all);
        self.settle();
    }

    fn put(&mut self, role: Role, taken: &Taken, bench: &Bench, all: &Readings) {
        let (Some(typed), Some(place)) = (taken.counting(), taken.place) else {
            return;
        };
        let measured = Measuring {
            bench,
            readings: all,
            sources: Arc::make_mut(&mut self.sources),
            made: &mut self.made,
            zeroed_at: &mut self.zeroed_at,
            shared: &mut self.shared,
        }
        .reading(taken, typed, 0);
        match measured {
            Ok(value) => {
                let sources = Arc::make_mut(&mut self.sources);
                let value = bench.to_reference.bring(value, taken, sources);
                let repeats = self.places.entry((role, place)).or_default();
                repeats.values.push(value);
                repeats.mean = None;
            }
            Err(why) => self.without.push((taken.fact, why)),
        }
    }

    /// Brings the means up to date.
    fn settle(&mut self) {
        for repeats in self.places.values_mut().filter(|one| one.mean.is_none()) {
            repeats.mean = Measured::mean(&repeats.values);
        }
    }

    /// The causes of error.
    pub(super) const fn sources(&self) -> &Arc<Sources> {
        &self.sources
    }

    /// The places of a role that were read.
    pub(super) fn places(&self, role: Role) -> impl Iterator<Item = (Place, &Repeats)> {
        self.places
            .iter()
            .filter_map(move |((of, place), repeats)| (*of == role).then_some((*place, repeats)))
    }

    /// The mean of the repeats of each place of a role.
    pub(super) fn means(&self, role: Role) -> impl Iterator<Item = (Place, &Value)> {
        self.places(role)
            .filter_map(|(place, repeats)| Some((place, repeats.mean()?)))
    }

    /// What is missing for the readings to count.
    pub(super) fn missing(&self) -> Vec<Missing> {
        let of = |why: NoGiveOrTake| -> Vec<FactId> {
            self.without
                .iter()
                .filter_map(|(fact, reason)| (*reason == why).then_some(*fact))
                .collect()
        };
        let mut missing = Vec::new();
        let facts = of(NoGiveOrTake::ToolNotSaid);
        if !facts.is_empty() {
            missing.push(Missing::Tool { facts });
        }
        let facts = of(NoGiveOrTake::ToolNotKnown);
        if !facts.is_empty() {
            missing.push(Missing::KnownTool { facts });
        }
        let facts = of(NoGiveOrTake::SetAtNotSaid);
        if !facts.is_empty() {
            missing.push(Missing::ZeroedAt { facts });
        }
        missing
    }
}

impl Repeats {
    pub(super) const fn mean(&self) -> Option<&Value> {
        self.mean.as_ref()
    }

    /// How many readings there are.
    pub(super) const fn len(&self) -> usize {
        self.values.len()
    }

    /// How far two readings of the place lie apart, when that is more than so
    /// many of its give-or-takes.
    pub(super) fn apart_by_more_than(&self, give_or_takes: f64) -> Option<f64> {
        let least = Measured::least(&self.values)?;
        let greatest = Measured::greatest(&self.values)?;
        let apart = greatest - least;
        let by = apart.value().to_si();
        (by > give_or_takes * apart.give_or_take().to_si() && by > 0.0).then_some(by)
    }
}

/// Makes readings into measured values. What two of them share is shared.
struct Measuring<'a> {
    bench: &'a Bench,
    readings: &'a Readings,
    sources: &'a mut Sources,
    made: &'a mut BTreeMap<FactId, Value>,
    zeroed_at: &'a mut BTreeMap<FactId, Value>,
    shared: &'a mut BTreeMap<(ToolId, Option<FactId>), Shared>,
}

impl Measuring<'_> {
    fn reading(
        &mut self,
        taken: &Taken,
        typed: &Typed,
        deep: usize,
    ) -> Result<Value, NoGiveOrTake> {
        if let Some(made) = self.made.get(&taken.fact) {
            return Ok(made.clone());
        }
        let (tool, named) = taken.by;
        let id = tool.ok_or(NoGiveOrTake::ToolNotSaid)?;
        let Link { tool, setting } = self.bench.link(id, named, taken.fact)?;
        if taken.measure.map(|measure| measure.kind) != Some(tool.instrument().kind) {
            // A pressure was not read off a micrometer.
            return Err(NoGiveOrTake::ToolNotKnown);
        }
        let (value, resolution) = (typed.si(), typed.resolution());
        let sense = setting.and_then(|setting| setting.set.needle);
        let measured = match (sense, setting) {
            (Some(sense), Some(setting)) => {
                let chain = self.bench.chain(id, named, taken.fact)?;
                let zeroed_at = self.zeroed_at(setting, chain.get(1..).unwrap_or(&[]), deep)?;
                let needle = with_setting(&chain, &mut |tool, setting| {
                    tool.needle(self.sources, setting, value, resolution)
                });
                let needle = needle.ok_or(NoGiveOrTake::ToolNotKnown)?;
                sense.bore(&zeroed_at, &needle)
            }
            _ => match self.shared.entry((id, setting.map(|setting| setting.fact))) {
                Entry::Occupied(known) => {
                    tool.reading_sharing(self.sources, known.get(), value, resolution)
                }
                Entry::Vacant(room) => {
                    let chain = self.bench.chain(id, named, taken.fact)?;
                    let shared = with_setting(&chain, &mut |tool, setting| {
                        tool.shared(self.sources, setting)
                    });
                    let shared = room.insert(shared.ok_or(NoGiveOrTake::ToolNotKnown)?);
                    tool.reading_sharing(self.sources, shared, value, resolution)
                }
            },
        };
        // Only what a tool was locked at is asked for again.
        if self.bench.is_lock(taken.fact) {
            self.made.insert(taken.fact, measured.clone());
        }
        Ok(measured)
    }

    /// The size that a tool was zeroed at: what the other tool was still locked
    /// at, or what was typed.
    fn zeroed_at(
        &mut self,
        setting: &ToolSetting,
        set_on: &[Link],
        deep: usize,
    ) -> Result<Value, NoGiveOrTake> {
        if let Some(made) = self.zeroed_at.get(&setting.fact) {
            return Ok(made.clone());
        }
        let size = match self.locked_at(setting, deep) {
            Some(size) => size,
            None => {
                let typed = typed_size(setting).ok_or(NoGiveOrTake::SetAtNotSaid)?;
                with_setting(set_on, &mut |tool, setting| {
                    tool.standing_at(self.sources, setting, typed.si(), typed.resolution())
                })
                // A standard is as long as it says.
                .unwrap_or_else(|| Measured::exact(typed.quantity()))
            }
        };
        self.zeroed_at.insert(setting.fact, size.clone());
        Ok(size)
    }

    /// The reading that the other tool was still locked at, without its feel.
    fn locked_at(&mut self, setting: &ToolSetting, deep: usize) -> Option<Value> {
        let taken = self.readings.get(setting.set.locked_at?)?;
        if deep >= DEEPEST || taken.fact >= setting.fact {
            return None;
        }
        let reading = self.reading(taken, taken.counting()?, deep + 1).ok()?;
        Some(Tool::still_locked_at(&reading, self.sources))
    }
}
