//! Motion of a piston, and what the pistons of an engine sweep.

use assembly_core::crank::slider_crank::SliderCrank;
use assembly_core::stack::SWEPT_VOLUME;

use crate::runner::{Row, Subject, Value};

pub const SUBJECTS: &[Subject] = &[
    Subject::of("geometry", "slider_crank", motion),
    Subject::of("geometry", "slider_crank_offset", offset),
    Subject::of("geometry", "slider_crank_peak", peak),
    Subject::of("geometry", "displacement", displacement),
    Subject::of("geometry", "worked", worked),
    Subject::of("automobile_1985", "table", cars),
];

fn crank(row: &Row) -> Option<SliderCrank> {
    let offset = row.si("offset").unwrap_or(0.0);
    SliderCrank::new(row.si("stroke")? / 2.0, row.si("rod")?, offset)
}

fn motion(row: &Row) -> Option<Value> {
    let (crank, angle) = (crank(row)?, row.si("crank")?);
    row.value_of(match row.quantity.as_str() {
        "pin_height" => crank.pin_height(angle),
        "displacement_from_TDC" => crank.drop(angle),
        "dx_dtheta" => crank.slope(angle),
        "d2x_dtheta2" => crank.curvature(angle),
        _ => return None,
    })
}

fn offset(row: &Row) -> Option<Value> {
    let crank = crank(row)?;
    row.value_of(match row.quantity.as_str() {
        "stroke_with_offset" => crank.stroke(),
        "crank_angle_at_TDC" => crank.angle_at_top(),
        _ => return None,
    })
}

fn peak(row: &Row) -> Option<Value> {
    let crank = crank(row)?;
    if row.quantity == "angle_of_max_speed" {
        return row.value_of(crank.fastest_angle());
    }
    // The table counts turns a minute; a slope times the angular speed is a speed.
    let turning = row.number("rpm")? * std::f64::consts::PI / 30.0;
    row.value_of(match row.quantity.as_str() {
        "max_piston_speed" => crank.slope(crank.fastest_angle()).abs() * turning,
        "accel_TDC" => crank.curvature(0.0).abs() * turning * turning,
        "accel_BDC" => crank.curvature(std::f64::consts::PI).abs() * turning * turning,
        "mean_piston_speed" => crank.stroke() * turning / std::f64::consts::PI,
        _ => return None,
    })
}

/// A worked example of a textbook, which leaves out what is small: the exact
/// motion lies within its tolerance.
fn worked(row: &Row) -> Option<Value> {
    let crank = SliderCrank::new(row.si("r")?, row.si("l")?, 0.0)?;
    let turning = row.number("rpm")? * std::f64::consts::PI / 30.0;
    let angle = row.si("crank")?;
    row.value_of(match row.quantity.as_str() {
        "piston_velocity" => crank.slope(angle).abs() * turning,
        "piston_acceleration" => crank.curvature(angle).abs() * turning * turning,
        "zero_accel_angle" => crank.fastest_angle(),
        _ => return None,
    })
}

/// The volume that so many pistons sweep, cubic metres.
fn swept(bore: f64, stroke: f64, cylinders: f64) -> f64 {
    SWEPT_VOLUME.value_at(&[bore, stroke]) * cylinders
}

fn displacement(row: &Row) -> Option<Value> {
    let metres = match row.text("length_unit")? {
        "mm" => 1e-3,
        "in" => 0.0254,
        _ => return None,
    };
    let (bore, stroke) = (row.number("bore")? * metres, row.number("stroke")? * metres);
    row.value_of(swept(bore, stroke, row.number("cyl")?))
}

/// How many of the cars have the engine size that their bore and stroke give.
fn cars(row: &Row) -> Option<Value> {
    if row.quantity != "rows_whose_displacement_agrees_within_2_percent" {
        return None;
    }
    let mut agree = 0_u32;
    for car in row.inputs.get("rows")?.as_array()? {
        let column = |name: &str| car.get(name)?.as_f64();
        let computed = swept(
            column("bore_in")? * 0.0254,
            column("stroke_in")? * 0.0254,
            column("cylinders")?,
        );
        let printed = column("engine_size_in3")? * 0.0254_f64.powi(3);
        agree += u32::from((computed - printed).abs() <= 0.02 * printed);
    }
    Some(Value::Number(f64::from(agree)))
}
