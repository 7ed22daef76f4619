//! Any measure at any part: its value, and how it stands against its limits.

use std::collections::BTreeMap;

use assembly_core::measure::{Assessment, Measured, Sources, Verdict, Window};
use assembly_core::quantity::Si;
use build_plan::measure::{Found, Over, Rule};
use build_plan::{At, Engine, Measure, Place};
use uom::si::f64::Length;

use super::bench::{Bench, Measuring, NoGiveOrTake};
use super::limits::Limits;
use super::standing::{Missing, window};
use super::store::Readings;
use crate::id::FactId;

/// A value with its causes of error. The number inside knows no kind, so that
/// one piece of code serves all measures; the measure's kind says what it is.
type Value = Measured<Length>;

/// A measure at a part of the engine.
#[derive(Clone, PartialEq, Debug)]
pub struct Fit {
    /// The measure.
    pub measure: &'static Measure,
    /// The part.
    pub at: At,
    /// The least and the greatest of it, when there is a number; SI units.
    pub extent: Option<(Value, Value)>,
    /// How many of its places were measured; of what is worked out, 0.
    pub places: usize,
    /// The causes of error behind it.
    pub sources: Sources,
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

/// Means of repeats, by place.
type Means = BTreeMap<Place, Value>;

/// What goes into a fit, and what it still wants.
struct Worked<'a> {
    measuring: Measuring<'a>,
    readings: &'a Readings,
    without_tool: Vec<FactId>,
    without_known_tool: Vec<FactId>,
    without_zero: Vec<FactId>,
}

impl Fit {
    /// Works a fit out. `None` when there is nothing to work it out from.
    pub(super) fn of(
        measure: &'static Measure,
        at: At,
        limits: Vec<Limits>,
        engine: &Engine,
        bench: &Bench,
        readings: &Readings,
    ) -> Option<Self> {
        let mut sources = Sources::new();
        let mut worked = Worked {
            measuring: Measuring::new(bench, readings, &mut sources),
            readings,
            without_tool: Vec::new(),
            without_known_tool: Vec::new(),
            without_zero: Vec::new(),
        };
        let own = worked.means(measure, at);
        let places = own.len();
        let extent =
            extent_of(own.into_values()).or_else(|| worked.out_of_others(measure, at, engine));
        let mut missing = worked.missing();
        if extent.is_none() && missing.is_empty() {
            if !readings.any(measure, at) {
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
                    &sources,
                ))
            }
            _ => FitStanding::Open(missing),
        };
        Some(Self {
            measure,
            at,
            extent,
            places,
            sources,
            limits,
            standing,
            common_practice: measure.tripwire.as_ref().and_then(|wire| match wire.rule {
                Rule::Fixed { .. } => wire.window(0.0).ok(),
                Rule::PartOf { .. } => None,
            }),
        })
    }
}

impl Worked<'_> {
    /// The mean of the repeats of each place.
    fn means(&mut self, measure: &'static Measure, at: At) -> Means {
        let mut places: BTreeMap<Place, Vec<Value>> = BTreeMap::new();
        for taken in self.readings.of(measure, at) {
            let (Some(typed), Some(place)) = (taken.counting(), taken.place) else {
                continue;
            };
            match self.measuring.measured(taken, typed) {
                Ok(value) => places.entry(place).or_default().push(value),
                Err(NoGiveOrTake::ToolNotSaid) => self.without_tool.push(taken.fact),
                Err(NoGiveOrTake::ToolNotKnown) => self.without_known_tool.push(taken.fact),
                Err(NoGiveOrTake::SetAtNotSaid) => self.without_zero.push(taken.fact),
            }
        }
        places
            .into_iter()
            .filter_map(|(place, repeats)| Some((place, Measured::mean(&repeats)?)))
            .collect()
    }

    /// What follows from other measures.
    fn out_of_others(
        &mut self,
        measure: &'static Measure,
        at: At,
        engine: &Engine,
    ) -> Option<(Value, Value)> {
        match measure.found {
            Found::Read | Found::WorkedOut { .. } => None,
            Found::Difference { of, less } => {
                let (least_of, greatest_of) = extent_of(self.means(of, at).into_values())?;
                let (least_less, greatest_less) = extent_of(self.means(less, at).into_values())?;
                Some((&least_of - &greatest_less, &greatest_of - &least_less))
            }
            Found::Spread { of, over } => {
                let spread = match over {
                    Over::Neighbours => self.step(of, at, engine)?,
                    Over::Stations => {
                        let means = by(self.means(of, at), |place| place.station)
                            .into_values()
                            .filter_map(|one| Measured::mean(&one));
                        spread(means)?
                    }
                    Over::StationsInLine => {
                        let lines = by(self.means(of, at), |place| place.direction);
                        greatest(lines.into_values().filter_map(spread))?
                    }
                    Over::Directions => {
                        let stations = by(self.means(of, at), |place| place.station);
                        greatest(stations.into_values().filter_map(spread))?
                    }
                };
                Some((spread.clone(), spread))
            }
        }
    }

    /// The greatest step between cylinders that stand next to each other in a bank.
    fn step(&mut self, of: &'static Measure, at: At, engine: &Engine) -> Option<Value> {
        let row: Vec<Option<Value>> = of
            .spots
            .per
            .parts(engine)
            .into_iter()
            .filter(|part| part.concerns(at, engine))
            .map(|part| {
                let means: Vec<Value> = self.means(of, part).into_values().collect();
                Measured::mean(&means)
            })
            .collect();
        let steps = row.iter().zip(row.iter().skip(1)).filter_map(|pair| {
            let (Some(one), Some(next)) = pair else {
                return None;
            };
            spread([one.clone(), next.clone()])
        });
        greatest(steps)
    }

    fn missing(self) -> Vec<Missing> {
        let mut missing = Vec::new();
        if !self.without_tool.is_empty() {
            missing.push(Missing::Tool {
                facts: self.without_tool,
            });
        }
        if !self.without_known_tool.is_empty() {
            missing.push(Missing::KnownTool {
                facts: self.without_known_tool,
            });
        }
        if !self.without_zero.is_empty() {
            missing.push(Missing::ZeroedAt {
                facts: self.without_zero,
            });
        }
        missing
    }
}

fn by<K: Ord>(means: Means, key: fn(&Place) -> Option<K>) -> BTreeMap<Option<K>, Vec<Value>> {
    let mut groups: BTreeMap<Option<K>, Vec<Value>> = BTreeMap::new();
    for (place, mean) in means {
        groups.entry(key(&place)).or_default().push(mean);
    }
    groups
}

fn extent_of(values: impl IntoIterator<Item = Value>) -> Option<(Value, Value)> {
    let values: Vec<Value> = values.into_iter().collect();
    Some((
        Measured::least(&values)?.clone(),
        Measured::greatest(&values)?.clone(),
    ))
}

/// The largest less the smallest of two or more.
fn spread(values: impl IntoIterator<Item = Value>) -> Option<Value> {
    let values: Vec<Value> = values.into_iter().collect();
    if values.len() < 2 {
        return None;
    }
    let (least, greatest) = extent_of(values)?;
    Some(&greatest - &least)
}

fn greatest(values: impl Iterator<Item = Value>) -> Option<Value> {
    values.max_by(|a, b| a.value().to_si().total_cmp(&b.value().to_si()))
}
