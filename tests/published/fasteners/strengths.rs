//! Strength by the mark on the head.

use assembly_core::fastener::strength::{Printed, Strength, strength};
use assembly_core::fastener::thread::Thread;

use crate::runner::{Row, Value};

/// A stress as its table prints it, in the unit that the row asks for.
fn of(row: &Row, strength: &Strength) -> Option<Value> {
    let printed = match row.quantity.as_str() {
        "proof" | "proof_Sp" => strength.proof,
        "yield_min" | "yield_Rp02_min" => strength.yields,
        "tensile_min" | "tensile_Rm_min" => strength.tensile,
        _ => return None,
    };
    match (row.unit.as_str(), strength.printed_in) {
        ("ksi", Printed::KilopoundsPerSquareInch) | ("MPa", Printed::Megapascals) => {
            Some(Value::Number(printed))
        }
        _ => row.value_of(strength.pascals(printed)),
    }
}

/// `1/4-1`, `1 1/8-1 1/2`: the smaller of the two, metres.
fn smallest(range: &str) -> Option<f64> {
    let from = range.split('-').next()?;
    from.split_whitespace().try_fold(0.0, |sum, part| {
        let size: f64 = match part.split_once('/') {
            Some((over, under)) => over.parse::<f64>().ok()? / under.parse::<f64>().ok()?,
            None => part.parse().ok()?,
        };
        Some(sum + size * 0.0254)
    })
}

pub fn grade_inch(row: &Row) -> Option<Value> {
    let mark = row.text("grade")?.strip_prefix("SAE J429 ")?;
    of(
        row,
        strength("SAE J429", mark, smallest(row.text("size_in")?)?)?,
    )
}

pub fn class_metric(row: &Row) -> Option<Value> {
    let size = row.text("size")?;
    // A size that the row's words mean, millimetres.
    let millimetres = match (size.strip_prefix("d<="), size.strip_prefix("d>")) {
        (Some(limit), _) => limit.parse::<f64>().ok()?,
        (_, Some(limit)) => limit.parse::<f64>().ok()? + 1.0,
        _ => 10.0,
    };
    of(
        row,
        strength("ISO 898-1", row.text("class")?, millimetres * 1e-3)?,
    )
}

pub fn load(row: &Row) -> Option<Value> {
    let thread = Thread::named(row.text("size")?)?;
    let strength = strength("ISO 898-1", row.text("class")?, thread.diameter().value())?;
    let stress = match row.quantity.as_str() {
        "proof_load" => strength.proof,
        "min_ultimate_load" => strength.tensile,
        _ => return None,
    };
    row.value_of(strength.pascals(stress) * thread.nominal_stress_area().value())
}
