//! Leaks and galleries.

use assembly_core::oil::circuit::gallery::Gallery;
use assembly_core::oil::circuit::leak::{eccentric_gain, ring_gap_flow};

use crate::runner::{Row, Value};

/// Flow along the gap round a journal that need not be in the middle.
pub fn annular(row: &Row) -> Option<Value> {
    let eccentricity = row.number("eccentricity_ratio")?;
    match row.quantity.as_str() {
        "eccentricity_multiplier" => Some(Value::Number(eccentric_gain(eccentricity))),
        "Q" => row.value_of(ring_gap_flow(
            row.si("d")?,
            row.si("radial_clearance")?,
            row.si("length")?,
            eccentricity,
            row.si("dp")?,
            row.si("mu")?,
        )),
        _ => None,
    }
}

/// A drilled gallery.
pub fn gallery(row: &Row) -> Option<Value> {
    let gallery = Gallery {
        diameter: row.si("D")?,
        length: row.si("L")?,
    };
    let (flow, viscosity, density) = (row.number("Q_m3_s")?, row.si("mu")?, row.si("rho")?);
    let reynolds = gallery.reynolds(flow, viscosity, density);
    match row.quantity.as_str() {
        "Re" => Some(Value::Number(reynolds)),
        "friction_factor" => Some(Value::Number(Gallery::friction_factor(reynolds))),
        "dp" => row.value_of(gallery.loss(flow, viscosity, density)),
        _ => None,
    }
}
