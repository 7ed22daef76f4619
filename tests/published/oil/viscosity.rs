//! Viscosity and density of oils.

use assembly_core::oil::viscosity::grade::Edition;
use assembly_core::oil::viscosity::handbook::{HandbookCurve, REYN};
use assembly_core::oil::viscosity::index::{
    ReferenceOils, index_between, reference_oils, viscosity_index,
};
use assembly_core::oil::viscosity::line::Point;
use assembly_core::oil::viscosity::{Density, Grade, Summer, ViscosityLine, Winter};

use crate::runner::{Row, Value};

/// ASTM D341.
pub fn line(row: &Row) -> Option<Value> {
    let point = |which: &str| {
        Some(Point {
            temperature: row.si(&format!("t{which}"))?,
            viscosity: row.si(&format!("nu{which}"))?,
        })
    };
    let line = ViscosityLine::through(point("1")?, point("2")?).ok()?;
    match row.quantity.as_str() {
        "A" => Some(Value::Number(line.a())),
        "B" => Some(Value::Number(line.b())),
        "nu" => row.value_of(line.kinematic(row.si("t")?)),
        _ => None,
    }
}

/// ASTM D2270. Viscosities stand in mm²/s throughout.
pub fn index(row: &Row) -> Option<Value> {
    let at_100 = row.number("nu100")?;
    let oils = || reference_oils(at_100).ok();
    let of_row = || {
        let at_40 = row.number("nu40")?;
        // Some rows hand in what the table gives, so that the formula alone is asked.
        match (row.number("L"), row.number("H")) {
            (Some(l), Some(h)) => index_between(at_40, at_100, ReferenceOils { l, h }).ok(),
            _ => viscosity_index(at_40, at_100).ok(),
        }
    };
    let number = match row.quantity.as_str() {
        "VI" => of_row()?.round(),
        "VI_unrounded" => of_row()?,
        "table1_L" | "L_high" => oils()?.l,
        "table1_H" | "H_high" => oils()?.h,
        _ => return None,
    };
    Some(Value::Number(number))
}

/// SAE J300, the limits of a grade.
pub fn grade_limit(row: &Row) -> Option<Value> {
    let name = row.text("grade")?;
    let edition = match row.text("edition") {
        Some(text) if text.contains("1999") => Edition::December1999,
        _ => Edition::Now,
    };
    let winter = name
        .strip_suffix('W')
        .and_then(|number| Winter::find(number.parse().ok()?));
    let summer = || Summer::find(name.split([' ', '_']).next()?.parse().ok()?);
    let number = match row.quantity.as_str() {
        "ccs_max" => winter?.cranking_most,
        "ccs_temp" => winter?.cranking_at,
        "mrv_max" => winter?.pumping_most,
        "mrv_temp" => winter?.pumping_at,
        "kv100_min" | "old_kv100_min" => match winter {
            Some(winter) => winter.hot_least,
            None => summer()?.hot_least_in(edition),
        },
        "kv100_max" => summer()?.hot_below,
        "hths150_min" => sheared_least(row, name)?,
        _ => return None,
    };
    Some(Value::Number(number))
}

/// A 40 asks less of oils that are 0W, 5W or 10W too, so all words count.
fn sheared_least(row: &Row, name: &str) -> Option<f64> {
    if let Ok(grade) = Grade::read(name) {
        let words: Vec<&str> = row.inputs.values().filter_map(|one| one.as_str()).collect();
        let light = words
            .iter()
            .flat_map(|text| text.split([' ', ',', '(', ')', '/']))
            .filter_map(|word| Grade::read(word).ok())
            .find(|one| one.winter().is_some());
        return Some(light.unwrap_or(grade).sheared_least());
    }
    name.split([' ', ',', '(', ')', '/'])
        .filter_map(|word| Grade::read(word).ok())
        .next_back()
        .map(|grade| grade.sheared_least())
}

/// SAE J300, which grade an oil is.
pub fn grade_of(row: &Row) -> Option<Value> {
    let grade = Summer::of_oil(row.number("kv100")?, row.number("hths150")?);
    Some(Value::Text(grade.map_or_else(
        || "none".to_owned(),
        |grade| grade.number.to_string(),
    )))
}

/// The handbook's curves of single grades.
pub fn handbook(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "mu" => {
            let curve = match (row.number("mu0_microreyn"), row.number("b_F")) {
                (Some(base), Some(rise)) => HandbookCurve::printed(base, rise),
                _ => HandbookCurve::of_grade(row.inputs.get("sae")?.as_u64()?.try_into().ok()?)?,
            };
            row.value_of(curve.dynamic(row.si("T")?))
        }
        "reyn_to_Pa_s" => row.value_of(row.number("mu_reyn")? * REYN),
        _ => None,
    }
}

/// ASTM D1250, table 54D.
pub fn density(row: &Row) -> Option<Value> {
    let oil = Density::at_15(row.si("rho15")?).ok()?;
    match row.quantity.as_str() {
        "VCF" => Some(Value::Number(oil.volume_factor(row.si("t")?))),
        "rho" => row.value_of(oil.at(row.si("t")?)),
        "alpha_typical" => row.value_of(oil.expansion()),
        _ => None,
    }
}
