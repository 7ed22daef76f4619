//! Formulas in postfix on values that share causes of error.

use assembly_core::measure::{Estimate, Origin, Sources};

use crate::runner::{Row, Value};

pub fn answer(row: &Row) -> Option<Value> {
    let values = values_of(row)?;
    let result = evaluate(row.text("formula")?, &values)?;
    let other = || evaluate(row.text("other")?, &values);
    Some(Value::Number(match row.quantity.as_str() {
        "value" => result.value(),
        "deviation" => result.deviation(),
        "covariance" => result.covariance(&other()?),
        "correlation" => result.correlation(&other()?),
        _ => return None,
    }))
}

/// The values with what each cause moves them by.
fn values_of(row: &Row) -> Option<Vec<Estimate>> {
    let mut values: Vec<Estimate> = row
        .list("values")?
        .into_iter()
        .map(Estimate::exact)
        .collect();
    let mut sources = Sources::new();
    for parts in (0..).map_while(|number| row.list(&format!("cause_{number}"))) {
        let source = sources.fresh("cause", Origin::Stated);
        for (value, part) in values.iter_mut().zip(parts) {
            *value = value.clone().with(source, part);
        }
    }
    Some(values)
}

fn evaluate(formula: &str, values: &[Estimate]) -> Option<Estimate> {
    let mut stack: Vec<Estimate> = Vec::new();
    for token in formula.split_whitespace() {
        let result = match token.split_once(':') {
            Some((name, count)) => several(name, count.parse().ok()?, &mut stack)?,
            None => one_step(token, values, &mut stack)?,
        };
        stack.push(result);
    }
    let result = stack.pop()?;
    stack.is_empty().then_some(result)
}

fn one_step(token: &str, values: &[Estimate], stack: &mut Vec<Estimate>) -> Option<Estimate> {
    if let Some(number) = token.strip_prefix('x') {
        return values.get(number.parse::<usize>().ok()?).cloned();
    }
    if let Ok(constant) = token.parse() {
        return Some(Estimate::exact(constant));
    }
    let last = stack.pop()?;
    Some(match token {
        "neg" => -&last,
        "abs" => last.size(),
        "square" => last.square(),
        "sqrt" => last.root(),
        "sin" => last.sine(),
        "cos" => last.cosine(),
        "tan" => last.tangent(),
        "asin" => last.arc_sine(),
        "acos" => last.arc_cosine(),
        "atan" => last.arc_tangent(),
        "exp" => last.exponential(),
        "log" => last.logarithm(),
        "+" => stack.pop()? + last,
        "-" => stack.pop()? - last,
        "*" => stack.pop()? * last,
        "/" => stack.pop()? / last,
        "hypot" => stack.pop()?.third_side(&last),
        _ => return None,
    })
}

fn several(name: &str, count: usize, stack: &mut Vec<Estimate>) -> Option<Estimate> {
    let taken = stack.split_off(stack.len().checked_sub(count)?);
    match name {
        "mean" => Estimate::mean(&taken),
        "min" => Estimate::least(&taken).cloned(),
        "max" => Estimate::greatest(&taken).cloned(),
        _ => None,
    }
}
