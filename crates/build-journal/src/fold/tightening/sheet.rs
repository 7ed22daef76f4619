//! What a group's sheet says, and what is wrong with it before the first tap.

use std::collections::BTreeMap;

use assembly_core::fastener::adapter::Adapter;
use assembly_core::fastener::stages::{Stage, StageError};
use assembly_core::fastener::wrench::Scale;
use assembly_core::quantity::{Kind as Quantity, Unit, read, unit_or_usual};
use assembly_core::tightening::credit::{NoCredit, Record, against};
use assembly_core::tightening::group::{Holds, NotReady, before_the_first_tap};
use assembly_core::tightening::interrupted::Gasket;
use assembly_core::tightening::kind::Kind;
use assembly_core::tightening::layout::Layout;
use assembly_core::tightening::pattern::Pattern;
use assembly_core::tightening::retorque::{Between, Retorque, retorque};
use assembly_core::tightening::run::{Happened, Plan, Standing};

use super::drawing;
use super::stages::{SheetStage, torque_unit};
use super::wrench;
use super::wrenches::{self, Held, held, with_its_adapter};
use crate::fact::FastenerGroup;

/// A part of the sheet that something may be wrong with.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Field {
    /// What kind of fastener.
    Fastener,
    /// How many bolts and where.
    Bolts,
    /// The order.
    Order,
    /// The stages.
    Stages,
    /// The wrench.
    Wrench,
    /// The adapter on it.
    Adapter,
    /// The stretch and the lasting stretch.
    Stretch,
}

/// Something that is wrong before the first tap.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Wrong {
    /// With what.
    pub field: Field,
    /// A sentence: what is wrong and what would be right.
    pub text: String,
}

/// What a group's sheet says.
#[derive(Clone, PartialEq, Debug)]
pub struct Sheet {
    /// What the group holds.
    pub holds: Option<Holds>,
    /// What kind of fastener.
    pub kind: Option<Kind>,
    /// What lies between the parts.
    pub between: Between,
    /// Where the bolts sit.
    pub layout: Layout,
    /// The order, as far as it names bolts of the group; from nothing.
    pub order: Vec<usize>,
    /// The wrench's unit: that of lone numbers, and what the run shows.
    pub unit: &'static Unit,
    /// The adapter on the wrench.
    pub adapter: Option<Adapter>,
    /// The wrench, with the adapter on it.
    pub held: Option<Held>,
    /// The wrenches of the laps, from nothing, that are pulled with another.
    pub others: BTreeMap<usize, Held>,
    /// The stages.
    pub stages: Vec<SheetStage>,
    /// Least and greatest stretch, metres.
    pub stretch: (Option<f64>, Option<f64>),
    /// The greatest lasting stretch, metres.
    pub set_at_most: Option<f64>,
    /// What is wrong, in the order of the sheet; nothing when a run may begin.
    pub wrong: Vec<Wrong>,
    plan: Option<Plan>,
    record: Record,
}

impl Sheet {
    /// What a group says.
    #[must_use]
    pub fn of(group: &FastenerGroup) -> Self {
        let sheet = &group.sheet;
        let mut wrong = Vec::new();
        let mut say = |field, text: String| wrong.push(Wrong { field, text });
        let unit = torque_unit(sheet.wrench.as_ref().map_or("", |wrench| &wrench.unit));
        let kind = sheet.fastener.as_deref().and_then(Kind::from_id);
        if kind.is_none() {
            say(
                Field::Fastener,
                "Say what kind of fastener it is: what an interruption means hangs on it."
                    .to_owned(),
            );
        }
        let layout = drawing::layout(group).unwrap_or_else(|text| {
            say(Field::Bolts, text);
            Layout::default()
        });
        let order: Vec<usize> = sheet.order.iter().map(|bolt| from_one(*bolt)).collect();
        if sheet.order.contains(&0) {
            let text = "The order names bolt 0. Bolts count from 1: look at the number.";
            say(Field::Order, text.to_owned());
        }
        let stages: Vec<SheetStage> = (group.stages.iter())
            .map(|typed| SheetStage::of(typed, unit))
            .collect();
        for (lap, stage) in (1..).zip(&stages) {
            if let Err(why) = &stage.read {
                say(Field::Stages, format!("Stage {lap}: {why}"));
            }
        }
        let readable: Vec<Stage> = (stages.iter())
            .filter_map(|one| one.read.as_ref().ok().map(|read| read.0))
            .collect();
        let scale = sheet.wrench.as_ref().map(|one| wrench::ends(one, unit));
        if let Some(Err(text)) = &scale {
            say(Field::Wrench, text.clone());
        }
        let step = sheet.wrench.as_ref().map(|one| wrenches::step(one, unit));
        if let Some(Err(text)) = step {
            say(Field::Wrench, text);
        }
        let ends = scale.and_then(Result::ok);
        let adapter = sheet.adapter.as_ref().map(wrench::adapter);
        if let Some(Err(text)) = &adapter {
            say(Field::Adapter, text.clone());
        }
        let adapter = adapter.and_then(Result::ok);
        let mut others = BTreeMap::new();
        for one in &sheet.stage_wrenches {
            let lap = from_one(one.stage);
            match held(&one.wrench, sheet.adapter.as_ref()) {
                _ if lap >= stages.len() => say(
                    Field::Wrench,
                    format!(
                        "A wrench is named for stage {}, and there are {} stages: take it away.",
                        one.stage,
                        stages.len()
                    ),
                ),
                Ok(held) => {
                    others.insert(lap, held);
                }
                Err(why) => say(
                    Field::Wrench,
                    format!("The wrench of stage {}: {why}", one.stage),
                ),
            }
        }
        let of_others: BTreeMap<_, _> = (others.iter())
            .map(|(lap, held)| (*lap, held.wrench))
            .collect();
        let all_read = readable.len() == stages.len();
        for not_ready in
            before_the_first_tap(&order, layout.count(), &readable, ends, adapter, &of_others)
        {
            match not_ready {
                // A group without bolts is told once.
                NotReady::Order(_) if layout.count() == 0 || sheet.order.contains(&0) => {}
                NotReady::Order(error) => say(Field::Order, sentence(&error.to_string())),
                NotReady::Stages(error) if all_read => {
                    say(Field::Stages, in_own_words(error, &stages));
                }
                // Its number is not that of the whole list then.
                NotReady::Stages(_) => {}
                NotReady::OffTheScale { .. } if !all_read => {}
                NotReady::Wrench(_) | NotReady::OffTheScale { .. } => {
                    say(Field::Wrench, sentence(&not_ready.to_string()));
                }
                _ => say(Field::Order, sentence(&not_ready.to_string())),
            }
        }
        let mut size = |text: &Option<String>| {
            let inch = unit_or_usual(Quantity::Length, "in");
            match read(text.as_deref()?, Quantity::Length, inch) {
                Ok(typed) => Some(typed.si()),
                Err(error) => {
                    say(Field::Stretch, error.to_string());
                    None
                }
            }
        };
        let stretch = (size(&sheet.stretch_low), size(&sheet.stretch_high));
        let set_at_most = size(&sheet.set_at_most);
        if let (Some(low), Some(high)) = stretch
            && low > high
        {
            let text = "The least stretch is more than the greatest: swap them.";
            say(Field::Stretch, text.to_owned());
        }
        let plan = (wrong.is_empty())
            .then(|| Pattern::new(order.clone(), layout.count()).ok())
            .flatten()
            .and_then(|pattern| Plan::new(pattern, readable).ok());
        wrong.sort_by_key(|one| one.field);
        Self {
            holds: sheet.holds.as_deref().and_then(Holds::from_id),
            kind,
            between: (sheet.between.as_deref())
                .and_then(Between::from_id)
                .unwrap_or_else(|| usually_between(sheet.holds.as_deref())),
            layout,
            order,
            unit,
            adapter,
            held: (sheet.wrench.as_ref()).and_then(|wrench| with_its_adapter(wrench, adapter).ok()),
            others,
            stages,
            stretch,
            set_at_most,
            wrong,
            plan,
            record: Record {
                thread_lubricant: group.lubricant.clone(),
                head_lubricant: sheet.under_head.clone(),
                wrench: ends.and_then(|(low, high)| Scale::new(low, high).ok()),
                adapter,
                others: of_others,
                uses_allowed: sheet.uses_allowed,
                used_before: Vec::new(),
                not_as_mapped: Vec::new(),
            },
        }
    }

    /// What is to be done, when nothing is wrong with it.
    #[must_use]
    pub const fn plan(&self) -> Option<&Plan> {
        self.plan.as_ref()
    }

    /// What is recorded for the credit of a run.
    pub(super) const fn record(&self) -> &Record {
        &self.record
    }

    /// The wrench of a lap, from nothing.
    #[must_use]
    pub fn wrench_of(&self, lap: usize) -> Option<&Held> {
        self.others.get(&lap).or(self.held.as_ref())
    }

    /// The unit that a lap's torque is shown in: that of its own wrench.
    #[must_use]
    pub fn unit_of(&self, lap: usize) -> &'static Unit {
        self.others.get(&lap).map_or(self.unit, |held| held.unit)
    }

    /// What is on the wrench of a lap.
    #[must_use]
    pub fn adapter_of(&self, lap: usize) -> Option<Adapter> {
        match self.others.get(&lap) {
            Some(held) => held.adapter,
            None => self.adapter,
        }
    }

    /// Why a run would not count, made to the end as the sheet stands now: to be
    /// told before the first tap and not after the last.
    #[must_use]
    pub fn foreseen(&self) -> Vec<NoCredit> {
        let (Some(plan), Some(kind)) = (&self.plan, self.kind) else {
            return Vec::new();
        };
        let mut standing = Standing::after(plan, &[]);
        for lap in 0..plan.stages().len() {
            for bolt in 0..plan.pattern().count() {
                standing.take(Happened::Ticked { bolt, lap });
            }
        }
        against(kind, &standing, &self.record)
    }

    /// What is wrong with one part of the sheet.
    pub fn wrong_with(&self, field: Field) -> impl Iterator<Item = &str> {
        let of_field = self.wrong.iter().filter(move |one| one.field == field);
        of_field.map(|one| one.text.as_str())
    }

    /// Whether what lies between is crushed for good.
    #[must_use]
    pub const fn gasket(&self) -> Gasket {
        self.between.gasket()
    }

    /// How often a bolt may be used: by the sheet, else by its kind.
    #[must_use]
    pub fn uses_allowed(&self) -> Option<u32> {
        self.record.uses_allowed.or_else(|| self.kind?.uses())
    }

    /// Whether the group is tightened once more after it was hot.
    #[must_use]
    pub fn retorque(&self) -> Option<Retorque> {
        Some(retorque(self.kind?, self.between))
    }
}

/// What is between the parts when nobody said: a head has a gasket that is
/// crushed, and that is the careful answer.
fn usually_between(holds: Option<&str>) -> Between {
    match holds.and_then(Holds::from_id) {
        Some(Holds::Head) => Between::Composition,
        Some(Holds::Intake) => Between::Manifold,
        Some(Holds::Pan | Holds::Cover) => Between::Cover,
        _ => Between::Nothing,
    }
}

/// From a count that begins with 1; nought is no bolt of any group.
pub(super) fn from_one(number: u32) -> usize {
    let from_nothing = number
        .checked_sub(1)
        .and_then(|one| usize::try_from(one).ok());
    from_nothing.unwrap_or(usize::MAX)
}

/// A list that goes down is told in the units it was typed in.
fn in_own_words(error: StageError, stages: &[SheetStage]) -> String {
    if let StageError::GoesDown { stage, .. } = error
        && let Some(at) = stage.checked_sub(1)
        && let Some(one) = stages.get(at)
    {
        let is_torque = |one: &&SheetStage| matches!(one.read, Ok((Stage::Torque(_), _)));
        let before = stages.iter().take(at).rev().find(is_torque);
        let before = before.map_or("", |one| one.typed.trim());
        return format!(
            "Stage {stage} is {}, less than the {before} before it: torques go up. If it is a new start, make it a group of its own.",
            one.typed.trim()
        );
    }
    sentence(&error.to_string())
}

/// With a capital at the start and a stop at the end.
pub(super) fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first: String = letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    let stop = if words.ends_with('.') { "" } else { "." };
    format!("{first}{}{stop}", letters.as_str())
}
