//! Numbers of one unit said in another, by the core's own table of units.

use assembly_core::quantity::{Kind, Unit, unit_of};

use crate::runner::{Row, Subject, Value};

pub const SUBJECTS: &[Subject] = &[Subject::of("geometry", "units", answer)];

/// What the table calls a unit, what the core calls it.
const NAMES: &[(&str, Kind, &str)] = &[
    ("ft.lbf", Kind::Torque, "ft-lb"),
    ("ft*lbf", Kind::Torque, "ft-lb"),
    ("in.lbf", Kind::Torque, "in-lb"),
    ("kgf.m", Kind::Torque, "kgf·m"),
    ("N.m", Kind::Torque, "N·m"),
    ("N*m", Kind::Torque, "N·m"),
    ("thou", Kind::Length, "thou"),
    ("in", Kind::Length, "in"),
    ("um", Kind::Length, "µm"),
    ("mm", Kind::Length, "mm"),
    ("ksi", Kind::Pressure, "ksi"),
    ("psi", Kind::Pressure, "psi"),
    ("bar", Kind::Pressure, "bar"),
    ("kPa", Kind::Pressure, "kPa"),
    ("MPa", Kind::Pressure, "MPa"),
    ("inHg", Kind::Pressure, "inHg"),
    ("lbf", Kind::Force, "lbf"),
    ("N", Kind::Force, "N"),
    ("oz", Kind::Mass, "oz"),
    ("lb", Kind::Mass, "lb"),
    ("g", Kind::Mass, "g"),
    ("kg", Kind::Mass, "kg"),
    ("in3", Kind::Volume, "in³"),
    ("cc", Kind::Volume, "cc"),
    ("cm3", Kind::Volume, "cc"),
    ("quart", Kind::Volume, "US qt"),
    ("L", Kind::Volume, "L"),
    ("liter", Kind::Volume, "L"),
    ("cSt", Kind::KinematicViscosity, "cSt"),
    ("m2/s", Kind::KinematicViscosity, "m²/s"),
    ("degF", Kind::Temperature, "°F"),
    ("degC", Kind::Temperature, "°C"),
];

fn unit(name: &str) -> Option<&'static Unit> {
    let (_, kind, symbol) = NAMES.iter().find(|one| one.0 == name)?;
    unit_of(*kind, symbol)
}

fn answer(row: &Row) -> Option<Value> {
    let (from, to) = match (row.text("from"), row.text("to")) {
        (Some(from), Some(to)) => (from, to),
        _ => row
            .quantity
            .strip_suffix("_printed")
            .unwrap_or(&row.quantity)
            .split_once("_to_")?,
    };
    let (from, to) = (unit(from)?, unit(to)?);
    if from.kind != to.kind {
        return None;
    }
    Some(Value::Number(to.from_si(from.to_si(row.number("value")?))))
}
