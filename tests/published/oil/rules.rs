//! Rules of the trade about pressure, compression and leak-down.

use std::f64::consts::PI;

use assembly_core::oil::circuit::rule;
use assembly_core::oil::running_in::compression::{LEAST_OF_HIGHEST, TIGHT_SPREAD};
use assembly_core::oil::running_in::leak_down::{BANDS, orifice_for};

use crate::runner::{Row, Value};

/// What the gauge should show.
pub fn pressure(row: &Row) -> Option<Value> {
    let pascals = match row.quantity.as_str() {
        "hot_pressure_per_1000rpm_min" => rule::FOR_A_THOUSAND_TURNS,
        "hot_idle_pressure_min" => rule::HOT_IDLE.0,
        "hot_idle_pressure_max" => rule::HOT_IDLE.1,
        "rule_value" => rule::wanted(
            row.number("rpm")? * PI / 30.0,
            row.number("psi_per_1000rpm")? * rule::PSI,
        ),
        _ => return None,
    };
    // Said in whole pounds: to the last digit but two, whatever the factors make of it.
    let Value::Number(psi) = row.value_of(pascals)? else {
        return None;
    };
    Some(Value::Number((psi * 1e9).round() / 1e9))
}

/// Compression of all cylinders.
pub fn compression(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "lowest_over_highest_min" => Some(Value::Number(LEAST_OF_HIGHEST)),
        "tight_spread" => Some(Value::Number(TIGHT_SPREAD)),
        _ => None,
    }
}

/// Leak-down: bands by their names, and the orifice for a bore.
pub fn leak_down(row: &Row) -> Option<Value> {
    if row.quantity == "orifice_dia" {
        let bore = bore(row)?;
        let Value::Number(inch) = row.value_of(orifice_for(bore))? else {
            return None;
        };
        return Some(Value::Number((inch * 1e9).round() / 1e9));
    }
    let (name, end) = row.quantity.rsplit_once('_')?;
    let band = BANDS.iter().find(|band| band.id == name)?;
    let part = match end {
        "min" => band.from,
        "max" => band.to,
        _ => return None,
    };
    Some(Value::Number((part * 1e11).round() / 1e9))
}

/// A bore, or a side of one: "<5.00" is anything under it.
fn bore(row: &Row) -> Option<f64> {
    if let Some(bore) = row.si("bore") {
        return Some(bore);
    }
    let text = row.text("bore_in")?;
    let inch = match text.strip_prefix(">=") {
        Some(number) => number.parse::<f64>().ok()?,
        None => text.strip_prefix('<')?.parse::<f64>().ok()? - 0.01,
    };
    Some(inch * 0.0254)
}
