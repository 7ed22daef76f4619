//! Stretch of bolts and stiffness of joints.

use std::f64::consts::FRAC_PI_4;

use assembly_core::fastener::joint::{clamped, clamped_stiffness, frustum, in_series, two_cones};
use assembly_core::fastener::strength::{PERMANENT, REUSED};
use assembly_core::fastener::stretch::give;
use assembly_core::limits::{Source, find};
use assembly_core::measure::Estimate;

use crate::runner::{Row, Value};

pub fn stretch(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "bolt_stretch" => bolt_stretch(row),
        "rod_bolt_stretch_min" => printed(row).map(|range| Value::Number(range.0)),
        "rod_bolt_stretch_max" => printed(row).map(|range| Value::Number(range.1)),
        _ => None,
    }
}

fn bolt_stretch(row: &Row) -> Option<Value> {
    let exact = Estimate::exact;
    let modulus = exact(row.si("E")?);
    if let Some(shank) = row.si("L_shank") {
        let diameter = row.si("d_shank")?;
        let parts = give(
            &[
                (&exact(shank), &exact(FRAC_PI_4 * diameter * diameter)),
                (&exact(row.si("L_thread")?), &exact(row.si("A_thread")?)),
            ],
            &modulus,
        );
        return row.value_of(row.si("F")? * parts.value());
    }
    let area = row.si("A_t")?;
    let force = row.number("preload_fraction")? * row.si("Sp")? * area;
    row.value_of(force * give(&[(&exact(row.si("L")?), &exact(area))], &modulus).value())
}

/// What the manual that a row names prints, inches.
fn printed(row: &Row) -> Option<(f64, f64)> {
    let (_, manual) = row.text("engine")?.rsplit_once(", ")?;
    find("rod-bolt-stretch")
        .find(|entry| entry.source == Source::ArmyManual(entry.case) && entry.case == manual)
        .and_then(|entry| entry.low.zip(entry.high))
}

pub fn joint(row: &Row) -> Option<Value> {
    let exact = Estimate::exact;
    let stiffness = match row.quantity.as_str() {
        "k_frustum" => frustum(
            &exact(row.si("E")?),
            &exact(row.si("d")?),
            &exact(row.si("t")?),
            &exact(row.si("D")?),
        ),
        "km_series" => {
            let parts: Option<Vec<Estimate>> = ["k1", "k2", "k3"]
                .iter()
                .map(|name| row.number(name).map(exact))
                .collect();
            return Some(Value::Number(in_series(&parts?).value()));
        }
        "km_all_steel" => two_cones(
            &exact(row.si("E")?),
            &exact(row.si("d")?),
            &exact(row.si("l")?),
        ),
        "km_wileman" => clamped_stiffness(
            &exact(row.si("E")?),
            &exact(row.si("d")?),
            &exact(row.si("l")?),
            (row.number("A")?, row.number("B")?),
        ),
        "wileman_A" => return metal(row).map(|one| Value::Number(one.0)),
        "wileman_B" => return metal(row).map(|one| Value::Number(one.1)),
        "preload_reusable" => return Some(Value::Number(row.number("Fp")? * REUSED)),
        "preload_permanent" => return Some(Value::Number(row.number("Fp")? * PERMANENT)),
        _ => return None,
    };
    row.value_of(stiffness.value())
}

fn metal(row: &Row) -> Option<(f64, f64)> {
    let name = row.text("material")?;
    let metal = match name {
        _ if name.contains("alumin") => "aluminium",
        _ if name.contains("iron") => "grey-iron",
        _ => name,
    };
    clamped(metal).map(|one| (one.a, one.b))
}
