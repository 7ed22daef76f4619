//! Rules of the trade about pressure, compression and leak-down.

use std::f64::consts::PI;

use assembly_core::oil::circuit::rule;

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
