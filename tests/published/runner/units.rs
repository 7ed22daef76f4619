//! The units that the tables use, with their exact definitions.
//!
//! Kept apart from the crate's own unit table on purpose: a slip in that one
//! must not cancel against itself here.

/// Scale and offset to SI: `si = number * scale + offset`.
struct Unit {
    names: &'static [&'static str],
    scale: f64,
    offset: f64,
}

const INCH: f64 = 0.0254;
const POUND: f64 = 0.453_592_37;
const POUND_FORCE: f64 = POUND * 9.806_65;
const PSI: f64 = POUND_FORCE / (INCH * INCH);

const fn unit(names: &'static [&'static str], scale: f64) -> Unit {
    Unit {
        names,
        scale,
        offset: 0.0,
    }
}

const UNITS: &[Unit] = &[
    unit(&["1", "in/in"], 1.0),
    unit(&["m"], 1.0),
    unit(&["mm", "mm/rad", "mm/rad2"], 1e-3),
    unit(&["um"], 1e-6),
    unit(&["nm"], 1e-9),
    unit(&["in"], INCH),
    unit(&["m2"], 1.0),
    unit(&["mm2"], 1e-6),
    unit(&["nm2"], 1e-18),
    unit(&["in2"], INCH * INCH),
    unit(&["m3"], 1.0),
    unit(&["cc", "cm3"], 1e-6),
    unit(&["in3"], INCH * INCH * INCH),
    unit(&["L", "liter"], 1e-3),
    unit(&["kg"], 1.0),
    unit(&["g"], 1e-3),
    unit(&["lb"], POUND),
    unit(&["N"], 1.0),
    unit(&["kN"], 1e3),
    unit(&["lbf"], POUND_FORCE),
    unit(&["kip"], 1e3 * POUND_FORCE),
    unit(&["Pa"], 1.0),
    unit(&["MPa"], 1e6),
    unit(&["psi"], PSI),
    unit(&["ksi"], 1e3 * PSI),
    unit(&["Mpsi"], 1e6 * PSI),
    unit(&["N.m", "Nm"], 1.0),
    unit(&["lbf.in"], POUND_FORCE * INCH),
    unit(&["lbf.ft", "ft*lbf"], POUND_FORCE * 12.0 * INCH),
    unit(&["N/mm"], 1e3),
    unit(&["lbf/in"], POUND_FORCE / INCH),
    unit(&["Mlbf/in"], 1e6 * POUND_FORCE / INCH),
    unit(&["deg"], std::f64::consts::PI / 180.0),
    unit(&["K"], 1.0),
    Unit {
        names: &["C", "degC"],
        scale: 1.0,
        offset: 273.15,
    },
    Unit {
        names: &["F", "degF"],
        scale: 5.0 / 9.0,
        offset: 273.15 - 32.0 * 5.0 / 9.0,
    },
    unit(&["1/degC"], 1.0),
    unit(&["1e-6", "1e-6/K"], 1e-6),
    unit(&["percent"], 0.01),
    unit(&["m/s"], 1.0),
    unit(&["m/s2"], 1.0),
    unit(&["m3/s"], 1.0),
    unit(&["in3/s"], INCH * INCH * INCH),
    unit(&["L/min"], 1e-3 / 60.0),
    unit(&["W"], 1.0),
    unit(&["Pa_s", "Pa.s"], 1.0),
    unit(&["mPa.s"], 1e-3),
    unit(&["microreyn"], 1e-6 * PSI),
    unit(&["reyn"], PSI),
    unit(&["m2/s"], 1.0),
    unit(&["cSt", "mm2/s"], 1e-6),
    unit(&["kg_m3", "kg/m3"], 1.0),
    unit(&["rpm"], std::f64::consts::PI / 30.0),
];

fn find(name: &str) -> Option<&'static Unit> {
    UNITS.iter().find(|unit| unit.names.contains(&name))
}

/// A number of this unit in SI units; `None` for a unit that is not listed.
pub fn to_si(number: f64, name: &str) -> Option<f64> {
    let unit = find(name)?;
    Some(number * unit.scale + unit.offset)
}

/// A value in SI units as a number of this unit; `None` for a unit that is not listed.
pub fn from_si(si: f64, name: &str) -> Option<f64> {
    let unit = find(name)?;
    Some((si - unit.offset) / unit.scale)
}
