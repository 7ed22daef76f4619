//! Coverage factors, uncertainty budgets, conformity.

use assembly_core::describe::{Given, calculation};
use assembly_core::measure::{Estimate, Window};
use assembly_core::metrology::conformity::{GuardBand, decide};

use crate::runner::{Row, Value};

fn worked(id: &str, output: &str, inputs: &[(&'static str, f64)]) -> Option<f64> {
    let mut given = Given::new();
    for (name, value) in inputs {
        given.push(name, Estimate::exact(*value));
    }
    Some(calculation(id)?.answer(&given).ok()?.get(output)?.value())
}

pub fn coverage(row: &Row) -> Option<Value> {
    if row.quantity != "k" {
        return None;
    }
    let mut inputs = vec![("probability", row.number("p")?)];
    inputs.extend(row.number("dof").map(|dof| ("degrees-of-freedom", dof)));
    row.value_of(worked("coverage-factor", "factor", &inputs)?)
}

pub fn budget(row: &Row) -> Option<Value> {
    let output = match row.quantity.as_str() {
        "u_c" => "standard",
        "U_k2" => "expanded",
        _ => return None,
    };
    // A cause that a row does not name adds nothing. The key "alpha_diff"
    // carries no unit: it is one a kelvin.
    let inputs = [
        ("repeat", row.si("repeat_s").unwrap_or(0.0)),
        ("readings", row.number("n").unwrap_or(1.0)),
        ("resolution", row.si("resolution").unwrap_or(0.0)),
        ("certificate", row.si("cal_U").unwrap_or(0.0)),
        ("certificate-factor", row.number("cal_k").unwrap_or(2.0)),
        // A half-width in Celsius degrees is one in kelvin.
        ("temperature", row.number("dT_halfwidth_C").unwrap_or(0.0)),
        ("size", row.si("L").unwrap_or(0.0)),
        ("expansion", row.number("alpha_diff").unwrap_or(0.0)),
    ];
    row.value_of(worked("uncertainty-budget", output, &inputs)?)
}

pub fn conformity(row: &Row) -> Option<Value> {
    // All in one unit, which does not matter; read as millimetres.
    let metres = |key: &str| row.number(key).map(|value| value * 1e-3);
    let (low, high) = (metres("LSL"), metres("USL"));
    let (measured, uncertainty) = (metres("measured")?, metres("u")?);
    let decided = |guard| {
        let tolerance = Window::new(low, high).ok()?;
        let decision = decide(measured, uncertainty, &tolerance, guard);
        Some(Value::Text(decision.word().to_owned()))
    };
    match row.quantity.as_str() {
        "decision_guard_U_k2" => decided(GuardBand::Expanded),
        "decision_guard_1.645u" => decided(GuardBand::NinetyFivePercent),
        "P_conform" => {
            let mut inputs = vec![
                ("measured", measured),
                ("uncertainty", uncertainty),
                ("rule", 0.0),
            ];
            inputs.extend(low.map(|value| ("low", value)));
            inputs.extend(high.map(|value| ("high", value)));
            row.value_of(worked("conformity", "inside", &inputs)?)
        }
        _ => None,
    }
}
