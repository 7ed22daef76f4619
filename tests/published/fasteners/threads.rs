//! Sizes and areas of threads.

use assembly_core::describe::{Given, calculation};
use assembly_core::measure::Estimate;

use crate::runner::{Row, Value};

pub fn answer(row: &Row) -> Option<Value> {
    let inch = row.number("tpi");
    let pitch = match inch {
        Some(threads) => 0.0254 / threads,
        None => row.si("pitch")?,
    };
    let given = [
        ("diameter", row.si("d")?),
        ("pitch", pitch),
        ("system", f64::from(u8::from(inch.is_some()))),
    ]
    .into_iter()
    .fold(Given::new(), |given, (id, value)| {
        given.with(id, Estimate::exact(value))
    });
    let output = match row.quantity.as_str() {
        "A_t" | "A_s" | "A_t_formula" | "A_s_formula" => "stress-area",
        "A_r_minor" | "A_d3_root" => "root-area",
        "pitch_dia_basic" | "pitch_dia_basic_table" | "d2" => "pitch-diameter",
        "d3" | "minor_dia_external_UNR" => "root-diameter",
        "D1" | "minor_dia_internal_basic" => "nut-minor-diameter",
        _ => return None,
    };
    let answer = calculation("thread-sizes")?.answer(&given).ok()?;
    row.value_of(answer.get(output)?.value())
}
