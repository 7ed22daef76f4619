//! Whether what came out is what was expected.

use serde_json::Value as Json;

use super::row::Value;
use super::table::Expected;

/// The rule of the tables: within `max(tol_abs, tol_rel * |expected|)`; both
/// empty means the exact text; a tolerance of 0.0 means the exact number.
pub fn agrees(got: &Value, expected: &Expected) -> bool {
    let exact = expected.tol_abs.is_none() && expected.tol_rel.is_none();
    match got {
        Value::Text(text) => exact && text.trim() == expected.text.trim(),
        Value::Number(number) if exact => number.to_string() == expected.text.trim(),
        Value::Number(number) => expected
            .text
            .trim()
            .parse()
            .is_ok_and(|wanted| close(*number, wanted, expected)),
        Value::List(numbers) => wanted_list(&expected.text).is_some_and(|wanted| {
            wanted.len() == numbers.len()
                && numbers
                    .iter()
                    .zip(&wanted)
                    .all(|(number, wanted)| close(*number, *wanted, expected))
        }),
    }
}

fn close(number: f64, wanted: f64, expected: &Expected) -> bool {
    let tolerance = expected
        .tol_abs
        .unwrap_or(0.0)
        .max(expected.tol_rel.unwrap_or(0.0) * wanted.abs());
    // Not written as "farther than", so that a number that is none never passes.
    (number - wanted).abs() <= tolerance
}

fn wanted_list(text: &str) -> Option<Vec<f64>> {
    serde_json::from_str::<Json>(text)
        .ok()?
        .as_array()?
        .iter()
        .map(Json::as_f64)
        .collect()
}

/// Checks of the comparing itself: a runner that passes everything would be
/// worth nothing. Run with every other trial.
pub fn self_check() -> Result<(), String> {
    let expected = |text: &str, tol_abs: Option<f64>, tol_rel: Option<f64>| Expected {
        text: text.to_owned(),
        tol_abs,
        tol_rel,
    };
    let cases = [
        (Value::Number(1.05), expected("1", Some(0.1), None), true),
        (Value::Number(1.15), expected("1", Some(0.1), None), false),
        (
            Value::Number(202.0),
            expected("200", Some(1.0), Some(0.01)),
            true,
        ),
        (
            Value::Number(203.0),
            expected("200", Some(1.0), Some(0.01)),
            false,
        ),
        (Value::Number(0.25), expected("0.25", Some(0.0), None), true),
        (
            Value::Number(0.250_001),
            expected("0.25", Some(0.0), None),
            false,
        ),
        (
            Value::Number(f64::NAN),
            expected("1", Some(1e9), None),
            false,
        ),
        (Value::Text("16".into()), expected("16", None, None), true),
        (Value::Number(16.0), expected("16", None, None), true),
        (
            Value::Text("conform".into()),
            expected("indeterminate", None, None),
            false,
        ),
        (
            Value::List(vec![1.0, 0.0]),
            expected("[1, 0]", None, None),
            true,
        ),
        (
            Value::List(vec![0.0, 1.0]),
            expected("[1, 0]", None, None),
            false,
        ),
        (
            Value::List(vec![1.0]),
            expected("[1, 0]", None, None),
            false,
        ),
    ];
    for (got, expected, agree) in &cases {
        if agrees(got, expected) != *agree {
            return Err(format!(
                "comparing {got:?} with {expected:?} must give {agree}"
            ));
        }
    }
    Ok(())
}
