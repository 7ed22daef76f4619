//! Any measure at any part: its value, and how it stands against its limits.

use std::collections::BTreeMap;
use std::sync::Arc;

use assembly_core::measure::{Assessment, Measured, Sources, Verdict, Window};
use assembly_core::quantity::Si;
use build_plan::measure::{Found, Over, Rule};
use build_plan::{At, Engine, Measure, Place};

use super::limits::Limits;
use super::register::{Register, Role, Value};
use super::standing::{Missing, window};

/// A measure at a part of the engine.
#[derive(Clone, PartialEq, Debug)]
pub struct Fit {
    /// The measure.
    pub measure: &'static Measure,
    /// The part.
    pub at: At,
    /// The least and the greatest of it, when there is a number; SI units of
    /// the measure's kind, whatever the type says.
    pub extent: Option<(Value, Value)>,
    /// How many of its places were measured; of what is worked out, 0.
    pub places: usize,
    /// The causes of error behind it.
    pub sources: Arc<Sources>,
    /// The limits that hold. More than one is a conflict that a person decides.
    pub limits: Vec<Limits>,
    /// How it stands.
    pub standing: FitStanding,
    /// What common practice would expect. Never a limit.
    pub common_practice: Option<Window>,
}

/// How a fit stands. Whatever is not judged has not passed.
#[derive(Clone, PartialEq, Debug)]
pub enum FitStanding {
    /// Something is missing for a verdict; at least one thing.
    Open(Vec<Missing>),
    /// The verdict, with its chances.
    Judged(Assessment),
}

impl FitStanding {
    /// The verdict, when there is one.
    #[must_use]
    pub const fn verdict(&self) -> Option<Verdict> {
        match self {
            Self::Open(_) => None,
            Self::Judged(assessment) => Some(assessment.verdict),
        }
    }
}

/// Whose readings a register holds, seen from a measure.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Holds {
    /// The measure's own, as read.
    Itself,
    /// Those of the one measure that it is worked out from.
    Base,
    /// Those of all that it is worked out from, by role.
    Several,
}

impl Fit {
    /// Works a fit out from the register of what it goes by. `None` when there
    /// is nothing to say of it: no number, and nobody tried to read it.
    pub(super) fn of(
        (measure, at): (&'static Measure, At),
        limits: Vec<Limits>,
        register: &Register,
        engine: &Engine,
        holds: Holds,
    ) -> Option<Self> {
        let (places, extent) = match holds {
            Holds::Itself => {
                let own = values(register, Role::Itself);
                (own.len(), extent_of(own))
            }
            Holds::Base => (0, worked_out(measure, at, register, Role::Itself, engine)),
            Holds::Several => (0, worked_out(measure, at, register, Role::Bore, engine)),
        };
        let mut missing = register.missing();
        if extent.is_none() && missing.is_empty() {
            if holds != Holds::Itself {
                return None;
            }
            missing.push(Missing::AllReadings);
        }
        let window = window(&limits, &mut missing);
        let standing = match (&extent, window) {
            (Some((least, greatest)), Some(window)) if missing.is_empty() => {
                FitStanding::Judged(Assessment::judged(
                    (least.estimate(), greatest.estimate()),
                    &window,
                    measure.dangerous,
                    register.sources(),
                ))
            }
            _ => FitStanding::Open(missing),
        };
        Some(Self {
            measure,
            at,
            extent,
            places,
            sources: Arc::clone(register.sources()),
            limits,
            standing,
            common_practice: measure.tripwire.as_ref().and_then(|wire| match wire.rule {
                Rule::Fixed { .. } => wire.window(0.0).ok(),
                Rule::PartOf { .. } => None,
            }),
        })
    }
}

/// What follows from other measures: those in the role of a bore, less those in
/// the role of a journal where there are two.
fn worked_out(
    measure: &'static Measure,
    at: At,
    register: &Register,
    base: Role,
    engine: &Engine,
) -> Option<(Value, Value)> {
    match measure.found {
        Found::Read | Found::WorkedOut { .. } => None,
        Found::Difference { .. } => {
            let (least_of, greatest_of) = extent_of(values(register, base))?;
            let (least_less, greatest_less) = extent_of(values(register, Role::Journal))?;
            Some((&least_of - &greatest_less, &greatest_of - &least_less))
        }
        Found::Spread { over, .. } => {
            let means = || register.means(base);
            let spread = match over {
                Over::Neighbours => step(by(means(), |place| place.at), at, engine)?,
                Over::Stations => spread(means_of(by(means(), |place| place.station)))?,
                Over::StationsInLine => {
                    let lines = by(means(), |place| place.direction);
                    greatest(lines.into_values().filter_map(spread))?
                }
                Over::Directions => {
                    let stations = by(means(), |place| place.station);
                    greatest(stations.into_values().filter_map(spread))?
                }
            };
            Some((spread.clone(), spread))
        }
    }
}

/// The greatest step between cylinders that stand next to each other in a
/// bank. One that was not measured parts the row.
fn step(mut parts: BTreeMap<At, Vec<Value>>, bank: At, engine: &Engine) -> Option<Value> {
    let row: Vec<Option<Value>> = (1..=engine.cylinders())
        .filter(|cylinder| At::Bank(engine.bank_of(*cylinder)) == bank)
        .map(|cylinder| Measured::mean(&parts.remove(&At::Cylinder(cylinder))?))
        .collect();
    let steps = row
        .iter()
        .zip(row.iter().skip(1))
        .filter_map(|(one, next)| spread(vec![one.clone()?, next.clone()?]));
    greatest(steps)
}

fn values(register: &Register, role: Role) -> Vec<Value> {
    register.means(role).map(|(_, mean)| mean.clone()).collect()
}

fn by<'a, K: Ord>(
    means: impl Iterator<Item = (Place, &'a Value)>,
    key: fn(&Place) -> K,
) -> BTreeMap<K, Vec<Value>> {
    let mut groups: BTreeMap<K, Vec<Value>> = BTreeMap::new();
    for (place, mean) in means {
        groups.entry(key(&place)).or_default().push(mean.clone());
    }
    groups
}

fn means_of<K>(groups: BTreeMap<K, Vec<Value>>) -> Vec<Value> {
    groups
        .into_values()
        .filter_map(|values| Measured::mean(&values))
        .collect()
}

fn extent_of(values: Vec<Value>) -> Option<(Value, Value)> {
    Some((
        Measured::least(&values)?.clone(),
        Measured::greatest(&values)?.clone(),
    ))
}

/// The largest less the smallest of two or more.
fn spread(values: Vec<Value>) -> Option<Value> {
    if values.len() < 2 {
        return None;
    }
    let (least, greatest) = extent_of(values)?;
    Some(&greatest - &least)
}

fn greatest(values: impl Iterator<Item = Value>) -> Option<Value> {
    values.max_by(|a, b| a.value().to_si().total_cmp(&b.value().to_si()))
}
