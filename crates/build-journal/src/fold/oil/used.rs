//! How much oil goes in over time: what was filled, and what was used by the meter.

use assembly_core::oil::running_in::consumption::{Level, Used, used_between, used_trend};
use assembly_core::oil::running_in::first_minutes::Trend;
use assembly_core::quantity::{Kind, read, unit_or_usual};

use super::book::OilBook;
use super::number::si;
use crate::fact::{OilDoing, Said};
use crate::id::FactId;

/// What a meter counts.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum MeterOf {
    /// Kilometres.
    Kilometres,
    /// Miles.
    Miles,
    /// Hours.
    Hours,
}

impl MeterOf {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Kilometres, Self::Miles, Self::Hours];

    /// Its symbol, as facts have it.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Kilometres => "km",
            Self::Miles => "mi",
            Self::Hours => "h",
        }
    }

    /// As much of it as consumption is usually told for: a thousand of a distance,
    /// ten hours.
    #[must_use]
    pub const fn usual(self) -> f64 {
        match self {
            Self::Kilometres | Self::Miles => 1000.0,
            Self::Hours => 10.0,
        }
    }
}

/// What a meter showed.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Meter {
    /// Of what.
    pub of: MeterOf,
    /// How much.
    pub value: f64,
}

impl Meter {
    /// A meter as it was typed: a plain number, and what it counts.
    pub(super) fn of(said: &Said) -> Result<Self, String> {
        let of = MeterOf::ALL
            .into_iter()
            .find(|one| one.symbol() == said.unit);
        let of = of.ok_or_else(|| {
            let unit: String = said.unit.chars().take(40).collect();
            format!("“{unit}” is nothing that a meter counts here: km, mi or h")
        })?;
        let plain = unit_or_usual(Kind::Ratio, "");
        let value = read(&said.typed, Kind::Ratio, plain).map_err(|error| error.to_string())?;
        Ok(Self {
            of,
            value: value.si(),
        })
    }
}

/// What was used from one filling to the mark to the next, by one meter.
#[derive(Clone, PartialEq, Debug)]
pub struct OilUse {
    /// The meter.
    pub of: MeterOf,
    /// From filling to filling, in the order they came, with the fact that ended
    /// each.
    pub used: Vec<(FactId, Used)>,
    /// How it changed; `None` of fewer than two.
    pub trend: Option<Trend>,
}

impl OilBook {
    /// Oil in it by the log, m³: what was filled the last time, and added since.
    /// `None` when it was drained since or never filled, or an amount was not said.
    #[must_use]
    pub fn filled(&self) -> Option<f64> {
        let begins = |what: OilDoing| matches!(what, OilDoing::Drained | OilDoing::Filled);
        let since = self.notes.iter().rposition(|note| begins(note.what))?;
        let since = self.notes.get(since..)?;
        if since.first()?.what == OilDoing::Drained {
            return None;
        }
        since
            .iter()
            .filter(|note| matches!(note.what, OilDoing::Filled | OilDoing::Added))
            .map(|note| si(note.amount.as_ref()))
            .sum()
    }

    /// What it used, meter by meter.
    #[must_use]
    pub fn used(&self) -> Vec<OilUse> {
        let of_meter = |of: MeterOf| {
            let mut facts = Vec::new();
            let levels = self.notes.iter().filter_map(|note| {
                let level = match note.what {
                    OilDoing::Drained => Level::Drained,
                    OilDoing::Filled | OilDoing::Added => {
                        let meter = note.meter.filter(|meter| meter.of == of);
                        let added = (note.what == OilDoing::Added)
                            .then(|| si(note.amount.as_ref()))
                            .flatten();
                        match (meter, note.what, added) {
                            (Some(meter), OilDoing::Filled, _) => Level::Filled(meter.value),
                            (Some(meter), _, Some(added)) => Level::Added(meter.value, added),
                            // Added, and nobody can say how much or when.
                            _ => Level::Drained,
                        }
                    }
                    OilDoing::FilterChanged | OilDoing::FilterCut => return None,
                };
                facts.push(note.fact);
                Some(level)
            });
            let levels: Vec<Level> = levels.collect();
            let used: Vec<(FactId, Used)> = used_between(&levels)
                .into_iter()
                .filter_map(|(at, used)| Some((*facts.get(at)?, used)))
                .collect();
            let rates: Vec<f64> = used.iter().map(|(_, used)| used.rate()).collect();
            OilUse {
                of,
                trend: used_trend(&rates),
                used,
            }
        };
        MeterOf::ALL
            .into_iter()
            .map(of_meter)
            .filter(|one| !one.used.is_empty())
            .collect()
    }
}
