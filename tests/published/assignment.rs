//! Answers the topics of `assignment`.

use assembly_core::choose::catalogue_shell::wall_for;
use assembly_core::choose::least_total::{least_total, number_of_optima};
use assembly_core::choose::weights::{Pairing, heaviest_with_lightest, pair_evenly};
use assembly_core::choose::{Costs, bottleneck};
use assembly_core::measure::Measured;
use assembly_core::quantity::Si;
use uom::si::f64::{Length, Mass};

use crate::runner::{Row, Subject, Value};

/// The topics and what answers them.
pub const SUBJECTS: &[Subject] = &[
    Subject::of("assignment", "sum", sum),
    Subject::of("assignment", "bottleneck", bottleneck),
    Subject::of("assignment", "shell_choice", shell_choice),
    Subject::of("assignment", "weight_match", weight_match),
    Subject::of("assignment_scipy", "sum", sum),
    Subject::of("assignment_scipy", "bottleneck", bottleneck),
];

/// The tables have at most a few decimals.
const STEP: f64 = 1e-6;

/// The table of a row, every figure times this.
fn costs(row: &Row, sign: f64) -> Option<Costs> {
    let rows = row.inputs.get("cost")?.as_array()?;
    let rows: Vec<Vec<f64>> = rows
        .iter()
        .map(|cells| {
            let cells = cells.as_array()?.iter();
            cells.map(|cell| Some(cell.as_f64()? * sign)).collect()
        })
        .collect::<Option<_>>()?;
    Costs::new(&rows, STEP).ok()
}

fn number(steps: i64) -> Value {
    Value::Number(steps as f64 * STEP)
}

pub fn sum(row: &Row) -> Option<Value> {
    // The most is the least of the opposite.
    let most = row.inputs.get("maximize")?.as_bool()?;
    let sign = if most { -1.0 } else { 1.0 };
    let costs = costs(row, sign)?;
    let best = least_total(&costs);
    match row.quantity.as_str() {
        "optimal_total" => Some(Value::Number(costs.total(&best) as f64 * STEP * sign)),
        "number_of_optima" => Some(Value::Number(number_of_optima(&costs)? as f64)),
        "assignment" => Some(Value::List(
            best.parts.iter().map(|part| *part as f64).collect(),
        )),
        _ => None,
    }
}

pub fn bottleneck(row: &Row) -> Option<Value> {
    // "Minimise the largest assigned cost" is asked whatever the sum is asked for.
    let costs = costs(row, 1.0)?;
    match row.quantity.as_str() {
        "minimax" => Some(number(bottleneck::least_worst(&costs))),
        "min_total_among_minimax" => {
            let best = bottleneck::least_worst_then_total(&costs)?;
            Some(number(costs.total(&best)))
        }
        "min_spread" => {
            let best = bottleneck::least_spread(&costs)?;
            Some(number(costs.spread(&best)))
        }
        _ => None,
    }
}

fn millimetres(values: Option<Vec<f64>>) -> Option<Vec<Measured<Length>>> {
    let length = |value: f64| Measured::exact(Length::from_si(value * 1e-3));
    Some(values?.into_iter().map(length).collect())
}

pub fn shell_choice(row: &Row) -> Option<Value> {
    let listed = row.list("shell_mm")?;
    let walls = millimetres(row.list("shell_mm"))?;
    let target = Length::from_si(row.si("target_clearance")?);
    let housings = millimetres(row.list("housing_mm"))?;
    let journals = millimetres(row.list("journal_mm"))?;
    let chosen = housings
        .iter()
        .zip(&journals)
        .map(|(housing, journal)| wall_for(housing, journal, &walls, target).ok())
        .collect::<Option<Vec<_>>>()?;
    let clearances = chosen.iter().map(|one| one.clearance.value().to_si() * 1e3);
    let misses = clearances
        .clone()
        .map(|one| (one - target.to_si() * 1e3).abs());
    match (row.quantity.as_str(), row.unit.as_str()) {
        ("best_shell_per_journal", "mm") => {
            let walls = chosen.iter().map(|one| listed.get(one.wall).copied());
            walls.collect::<Option<Vec<f64>>>().map(Value::List)
        }
        ("clearance_per_journal", "mm") => Some(Value::List(clearances.collect())),
        ("worst_miss", "mm") => misses.reduce(f64::max).map(Value::Number),
        _ => None,
    }
}

pub fn weight_match(row: &Row) -> Option<Value> {
    let grams = |key: &str| -> Option<Vec<Measured<Mass>>> {
        let mass = |value: f64| Measured::exact(Mass::from_si(value * 1e-3));
        Some(row.list(key)?.into_iter().map(mass).collect())
    };
    let (first, second) = (grams("a_g")?, grams("b_g")?);
    let range = |pairing: &Pairing| Some(pairing.range()?.value().to_si());
    let si = match row.quantity.as_str() {
        "min_range_of_pair_sums" => range(&pair_evenly(&first, &second).ok()?)?,
        "range_sorted_opposite" => range(&heaviest_with_lightest(&first, &second))?,
        _ => return None,
    };
    row.value_of(si)
}
