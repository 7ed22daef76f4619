//! The builder's torque wrenches: those listed and those that groups were pulled
//! with, how each lap's torque lies on each, and which to take.

use assembly_core::fastener::adapter::Adapter;
use assembly_core::fastener::stages::Stage;
use assembly_core::fastener::wrench::Scale;
use assembly_core::quantity::{Kind, Unit, read};
use assembly_core::tightening::wrenches::{self, Lies};

use super::gather::Tightenings;
use super::sheet::{Sheet, sentence};
use super::stages::torque_unit;
use super::wrench::{adapter, ends};
use crate::fact::{Adapter as TypedAdapter, FastenerGroup, Wrench};
use crate::id::ToolId;

/// A wrench in the hand for a lap.
#[derive(Clone, PartialEq, Debug)]
pub struct Held {
    /// As it was typed.
    pub typed: Wrench,
    /// The unit on it.
    pub unit: &'static Unit,
    /// What is on it.
    pub adapter: Option<Adapter>,
    /// The same as numbers.
    pub wrench: wrenches::Wrench,
}

/// One of the builder's wrenches, to be chosen.
#[derive(Clone, PartialEq, Debug)]
pub struct Offered {
    /// The tool, when it is on the list; else it is known from a group's sheet.
    pub tool: Option<ToolId>,
    /// As it was typed.
    pub typed: Wrench,
}

/// How one lap's torque lies on the builder's wrenches.
#[derive(Clone, PartialEq, Debug)]
pub struct Choice {
    /// The lap, from nothing.
    pub lap: usize,
    /// How it lies on each wrench that was offered, in that order; or why that
    /// cannot be said.
    pub lies: Vec<Result<Lies, String>>,
    /// The wrench to take, of those offered; none when none can be set to it.
    pub best: Option<usize>,
}

/// How far apart the marks of a wrench are, newton metres.
pub(super) fn step(typed: &Wrench, unit: &'static Unit) -> Result<Option<f64>, String> {
    let said = typed.step.as_deref().map(str::trim);
    let Some(text) = said.filter(|text| !text.is_empty()) else {
        return Ok(None);
    };
    match read(text, Kind::Torque, unit).map(|typed| typed.si()) {
        Ok(step) if step > 0.0 => Ok(Some(step)),
        Ok(_) => Err(format!(
            "From one mark to the next: {text} is not above nothing."
        )),
        Err(error) => Err(format!("From one mark to the next: {error}.")),
    }
}

/// A wrench with what is on it as already read.
pub(super) fn with_its_adapter(typed: &Wrench, on_it: Option<Adapter>) -> Result<Held, String> {
    let unit = torque_unit(&typed.unit);
    let (low, high) = ends(typed, unit)?;
    let scale = Scale::new(low, high).map_err(|error| sentence(&error.to_string()))?;
    let step = step(typed, unit)?;
    Ok(Held {
        typed: typed.clone(),
        unit,
        adapter: on_it,
        wrench: wrenches::Wrench::new(scale, step, on_it),
    })
}

/// A wrench with the adapter of a group on it. An adapter changes what is set by
/// the length of the wrench it is on: each wrench has its own.
pub(super) fn held(typed: &Wrench, on_it: Option<&TypedAdapter>) -> Result<Held, String> {
    let on_it = on_it.map(|on_it| {
        adapter(&TypedAdapter {
            wrench_length: typed.grip.clone().unwrap_or_default(),
            ..on_it.clone()
        })
    });
    with_its_adapter(typed, on_it.transpose()?)
}

impl Tightenings {
    /// The builder's own torque wrenches: first those on the list, then others
    /// that groups are described with.
    #[must_use]
    pub fn wrenches(&self) -> Vec<Offered> {
        let mut all: Vec<Offered> = Vec::new();
        for (tool, typed) in &self.listed {
            all.push(Offered {
                tool: Some(*tool),
                typed: typed.clone(),
            });
        }
        for group in &self.groups {
            for typed in named_in(&group.made) {
                if !all.iter().any(|one| is_the_same(&one.typed, typed)) {
                    all.push(Offered {
                        tool: None,
                        typed: typed.clone(),
                    });
                }
            }
        }
        all
    }
}

fn named_in(group: &FastenerGroup) -> impl Iterator<Item = &Wrench> {
    let others = group.sheet.stage_wrenches.iter().map(|one| &one.wrench);
    group.sheet.wrench.iter().chain(others)
}

/// Whether it is one wrench: by its name and its scale. What was told of its
/// marks and its length once does not make it two.
fn is_the_same(one: &Wrench, other: &Wrench) -> bool {
    let of = |wrench: &Wrench| {
        let name = wrench.name.as_deref().unwrap_or_default();
        let part = |text: &str| text.trim().to_lowercase();
        [name, &wrench.low, &wrench.high, &wrench.unit].map(part)
    };
    of(one) == of(other)
}

/// For each lap that is a torque: how it lies on each wrench that is offered,
/// and which to take.
#[must_use]
pub fn choices(sheet: &Sheet, on_it: Option<&TypedAdapter>, offered: &[Offered]) -> Vec<Choice> {
    let read: Vec<Result<Held, String>> =
        offered.iter().map(|one| held(&one.typed, on_it)).collect();
    let torques = sheet.stages.iter().enumerate();
    let torques = torques.filter_map(|(lap, stage)| match stage.read {
        Ok((Stage::Torque(torque), _)) => Some((lap, torque)),
        _ => None,
    });
    torques
        .map(|(lap, torque)| {
            let (at, usable): (Vec<usize>, Vec<wrenches::Wrench>) = read
                .iter()
                .enumerate()
                .filter_map(|(at, one)| Some((at, one.as_ref().ok()?.wrench)))
                .unzip();
            let best = wrenches::best(torque, &usable);
            Choice {
                lap,
                lies: (read.iter())
                    .map(|one| match one {
                        Ok(held) => Ok(held.wrench.lies(torque)),
                        Err(why) => Err(why.clone()),
                    })
                    .collect(),
                best: best.and_then(|best| at.get(best).copied()),
            }
        })
        .collect()
}
