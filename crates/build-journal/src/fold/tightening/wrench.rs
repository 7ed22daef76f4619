//! The wrench of a sheet as typed: its scale, and the adapter on it.

use assembly_core::fastener::adapter::Adapter;
use assembly_core::quantity::{Kind, Unit, read, unit_or_usual};

use super::sheet::sentence;
use crate::fact::{Adapter as TypedAdapter, Wrench};

/// The ends of a wrench's scale, newton metres.
pub(super) fn ends(wrench: &Wrench, unit: &'static Unit) -> Result<(f64, f64), String> {
    let end = |text: &str, which: &str| {
        read(text, Kind::Torque, unit)
            .map(|typed| typed.si())
            .map_err(|error| format!("The {which} mark of the scale: {error}."))
    };
    Ok((end(&wrench.low, "lowest")?, end(&wrench.high, "highest")?))
}

/// The adapter, from lengths that are inches when they say no unit, and an angle
/// in degrees.
///
/// # Errors
/// A sentence: which of its numbers is missing or wrong, and what would be right.
pub fn adapter(typed: &TypedAdapter) -> Result<Adapter, String> {
    let number = |text: &str, kind: Kind, usual: &str, which: &str, how: &str| {
        if text.trim().is_empty() {
            return Err(format!("The adapter: type {which} as well, {how}."));
        }
        read(text, kind, unit_or_usual(kind, usual))
            .map(|typed| typed.si())
            .map_err(|error| format!("The adapter, {which}: {error}."))
    };
    let wrench = number(
        &typed.wrench_length,
        Kind::Length,
        "in",
        "the wrench's length",
        "from the middle of the grip to the drive",
    )?;
    let length = number(
        &typed.length,
        Kind::Length,
        "in",
        "its own length",
        "from the drive to the middle of the bolt",
    )?;
    let turned = number(
        &typed.turned,
        Kind::Angle,
        "°",
        "its angle",
        "0 straight ahead, 90 square to the wrench",
    )?;
    Adapter::new(wrench, length, turned).map_err(|error| sentence(&error.to_string()))
}
