//! Press fits.

use assembly_core::describe::{Given, calculation};
use assembly_core::measure::Estimate;

use crate::runner::{Row, Value};

pub fn answer(row: &Row) -> Option<Value> {
    let mut given = Given::new();
    for (id, value) in [
        ("interference", row.si("diametral_interference")?),
        ("diameter", 2.0 * row.si("R")?),
        ("inner-bore", 2.0 * row.si("ri")?),
        ("outside", 2.0 * row.si("ro")?),
        ("inner-modulus", row.si("Ei")?),
        ("inner-poisson", row.number("nui")?),
        ("outer-modulus", row.si("Eo")?),
        ("outer-poisson", row.number("nuo")?),
    ] {
        given.push(id, Estimate::exact(value));
    }
    for (id, value) in [("friction", row.number("mu")), ("length", row.si("length"))] {
        if let Some(value) = value {
            given.push(id, Estimate::exact(value));
        }
    }
    let answer = calculation("press-fit")?.answer(&given).ok()?;
    let output = match row.quantity.as_str() {
        "pressure" => "pressure",
        "hoop_stress_outer_bore" => "hoop-outer",
        "hoop_stress_inner_at_interface" => "hoop-inner",
        "axial_force" => "axial-force",
        "torque" => "torque",
        "inner_bore_closure_diametral" => "closure",
        _ => return None,
    };
    row.value_of(answer.get(output)?.value())
}
