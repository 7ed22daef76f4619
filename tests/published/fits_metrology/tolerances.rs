//! Standard tolerances, fundamental deviations, fits.

use assembly_core::metrology::NominalSize;
use assembly_core::metrology::limits_and_fits::Fit;
use assembly_core::metrology::standard_tolerance::{Grade, Micrometres, width_at};
use assembly_core::metrology::tolerance_class::{
    Feature, FundamentalDeviation, Letter, ToleranceClass,
};
use assembly_core::quantity::Si;
use uom::si::f64::Length;

use crate::runner::{Row, Value};

fn size(row: &Row, name: &str) -> Option<NominalSize> {
    NominalSize::new(Length::from_si(row.si(name)?)).ok()
}

/// The tables are in micrometres, and so are the rows.
fn micrometres(row: &Row, Micrometres(value): Micrometres) -> Option<Value> {
    (row.unit == "um").then_some(Value::Number(value))
}

pub fn standard_tolerance(row: &Row) -> Option<Value> {
    let (grade, size) = match row.quantity.strip_suffix("_at_size") {
        Some(grade) => (grade, size(row, "size")?),
        // A step is over its lower end, up to and including its upper end.
        None => (row.quantity.as_str(), size(row, "incl")?),
    };
    micrometres(row, width_at(Grade::read(grade)?, size).ok()?)
}

pub fn fundamental_deviation(row: &Row) -> Option<Value> {
    let letter = row.text("letter")?;
    // "IT4..IT7": the deviation is the same for all of these.
    let grade = match row.text("grade") {
        Some(text) => Grade::read(text.split("..").next()?)?,
        None => Grade::new(7)?,
    };
    let feature = if letter.chars().all(char::is_uppercase) {
        Feature::Hole
    } else {
        Feature::Shaft
    };
    let class = ToleranceClass {
        feature,
        letter: Letter::read(letter)?,
        grade,
    };
    let deviation = class.fundamental_deviation(size(row, "incl")?).ok()?;
    match (row.quantity.as_str(), deviation) {
        ("ei" | "EI", FundamentalDeviation::Lower(value))
        | ("es" | "ES", FundamentalDeviation::Upper(value)) => micrometres(row, value),
        _ => None,
    }
}

/// The class alone, from a text that may say its deviations too: "H7 (+21/0)".
fn class(row: &Row, key: &str) -> Option<ToleranceClass> {
    ToleranceClass::read(row.text(key)?.split_whitespace().next()?).ok()
}

pub fn fit(row: &Row) -> Option<Value> {
    let nominal = row.number("nominal_mm")?;
    let fit = Fit::of(
        class(row, "hole")?,
        class(row, "shaft")?,
        size(row, "nominal")?,
    )
    .ok()?;
    let turned = |Micrometres(value): Micrometres| Micrometres(-value);
    let deviation = match row.quantity.as_str() {
        "ES" | "hole_max" => fit.hole.upper,
        "EI" | "hole_min" => fit.hole.lower,
        "es" | "shaft_max" => fit.shaft.upper,
        "ei" | "shaft_min" => fit.shaft.lower,
        "max_clearance" => fit.greatest_clearance(),
        "min_clearance" => fit.least_clearance(),
        "max_interference" => turned(fit.least_clearance()),
        "min_interference" => turned(fit.greatest_clearance()),
        _ => return None,
    };
    let Micrometres(value) = deviation;
    let is_a_size = row.quantity.starts_with("hole_") || row.quantity.starts_with("shaft_");
    match (row.unit.as_str(), is_a_size) {
        ("um", false) => Some(Value::Number(value)),
        ("mm", false) => Some(Value::Number(value / 1e3)),
        ("mm", true) => Some(Value::Number(nominal + value / 1e3)),
        _ => None,
    }
}
