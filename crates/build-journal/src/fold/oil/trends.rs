//! What changes over time. An alarm comes of a change, never of a level.

use assembly_core::oil::diagnosis::{Meaning, infer};
use assembly_core::oil::running_in::first_minutes::{
    Trend, compression_trend, lash_trend, leak_down_trend, oil_leak_trend,
};
use build_plan::At;
use build_plan::measure::{COMPRESSION_PRESSURE, LEAK_DOWN, Per, VALVE_LASH};

use super::super::folding::Folding;
use super::super::readings::Taken;
use super::inputs::OilInputs;
use crate::id::FactId;

/// What a trend is of.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum TrendOf {
    /// Compression of a cylinder, dry; Pa.
    Compression(u8),
    /// Leak-down of a cylinder, a part of the supply.
    LeakDown(u8),
    /// Lash of a valve; m.
    Lash(At),
    /// The leak of the whole oil system by the predicted one.
    OilLeak,
}

/// Readings of one thing over time.
#[derive(Clone, PartialEq, Debug)]
pub struct TrendLine {
    /// Of what.
    pub of: TrendOf,
    /// The readings, in the order they were taken.
    pub points: Vec<(FactId, f64)>,
    /// How it changed; `None` of one reading alone.
    pub trend: Option<Trend>,
}

impl TrendLine {
    fn of(of: TrendOf, mut points: Vec<(FactId, f64)>) -> Option<Self> {
        points.sort_by_key(|(fact, _)| *fact);
        let values: Vec<f64> = points.iter().map(|(_, value)| *value).collect();
        let trend = match of {
            TrendOf::Compression(_) => compression_trend(&values),
            TrendOf::LeakDown(_) => leak_down_trend(&values),
            TrendOf::Lash(_) => lash_trend(&values),
            TrendOf::OilLeak => oil_leak_trend(&values),
        };
        (!points.is_empty()).then_some(Self { of, points, trend })
    }

    /// What an alarm means, in a sentence; `None` without one.
    #[must_use]
    pub fn alarm(&self) -> Option<&'static str> {
        self.trend.filter(|trend| trend.alarm)?;
        Some(match self.of {
            TrendOf::Compression(_) => {
                "It fell by a tenth since its best: find the leak, with oil on the piston and a leak-down."
            }
            TrendOf::LeakDown(_) => "It leaks more than it did: listen where it hisses.",
            TrendOf::Lash(_) => {
                "The lash opened by five thou since the first setting: the lobe wears. Pull the lifter and look."
            }
            TrendOf::OilLeak => {
                "The oil leaks a third more than at the first reading: cut the filter, look for thin oil, then bearings."
            }
        })
    }
}

/// All that was read more than never.
pub(super) fn trends(folding: &Folding, inputs: &OilInputs) -> Vec<TrendLine> {
    let book = &folding.build.oil;
    let Some(engine) = folding.engine() else {
        return Vec::new();
    };
    let number = |taken: &Taken| Some((taken.fact, taken.counting()?.si()));
    let mut lines = Vec::new();
    lines.push(TrendLine::of(TrendOf::OilLeak, oil_leaks(folding, inputs)));
    for cylinder in 1..=engine.cylinders() {
        // What was written beside the engine is among the readings of the plan.
        let at = At::Cylinder(cylinder);
        let read = folding.build.readings.at((COMPRESSION_PRESSURE.id, at));
        let points = read.filter_map(number).collect();
        lines.push(TrendLine::of(TrendOf::Compression(cylinder), points));
        let read: Vec<&Taken> = folding.build.readings.at((LEAK_DOWN.id, at)).collect();
        let orifice = |taken: &Taken| {
            let mut noted = book.leak_downs.iter();
            let noted = noted.find(|one| one.fact == taken.fact)?;
            noted.orifice.as_ref()?.si()
        };
        // Testers with other orifices do not compare: those like the last one.
        let last = read.last().map(|taken| orifice(taken));
        let alike = read.iter().filter(|taken| Some(orifice(taken)) == last);
        let points = alike.filter_map(|taken| number(taken)).collect();
        lines.push(TrendLine::of(TrendOf::LeakDown(cylinder), points));
    }
    for valve in Per::Valve.parts(engine) {
        let read = folding.build.readings.at((VALVE_LASH.id, valve));
        lines.push(TrendLine::of(
            TrendOf::Lash(valve),
            read.filter_map(number).collect(),
        ));
    }
    lines.into_iter().flatten().collect()
}

/// The leak that each reading of the gauge tells of, by the predicted one.
fn oil_leaks(folding: &Folding, inputs: &OilInputs) -> Vec<(FactId, f64)> {
    let (Some(circuit), Some(pump)) = (&inputs.circuit, &inputs.pump) else {
        return Vec::new();
    };
    let notes = folding.build.oil.gauge.iter();
    notes
        .filter_map(|note| match infer(circuit, pump, &note.reading()?) {
            Meaning::Leak(inferred) => Some((note.fact, inferred.of_predicted)),
            _ => None,
        })
        .collect()
}
