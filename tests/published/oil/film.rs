//! The film of a journal bearing.

use std::f64::consts::PI;

use assembly_core::oil::film::field::journal_friction;
use assembly_core::oil::film::running::{groove_flow, petroff};
use assembly_core::oil::film::short::{short_attitude, short_eccentricity, short_load};
use assembly_core::oil::film::{
    Bearing, Boundary, Care, Duty, ECCENTRICITIES, Feed, Figures, Film, RunningFilm, film, film_at,
    rules, run_bearing,
};
use assembly_core::oil::viscosity::Density;
use assembly_core::oil::viscosity::Lubricant;
use assembly_core::oil::viscosity::handbook::{HandbookCurve, REYN};
use assembly_core::oil::viscosity::line::{Point, ViscosityLine};

use crate::runner::{Row, Value};

/// A length by diameter: a number, a fraction or `inf`.
fn proportion(row: &Row) -> Option<f64> {
    let value = row.inputs.get("l_over_d")?;
    if let Some(number) = value.as_f64() {
        return Some(number);
    }
    let text = value.as_str()?;
    match text.split_once('/') {
        Some((top, bottom)) => Some(top.parse::<f64>().ok()? / bottom.parse::<f64>().ok()?),
        None => text.parse().ok(),
    }
}

fn figure(row: &Row, figures: &Figures) -> Option<Value> {
    let number = match row.quantity.as_str() {
        "S" => figures.sommerfeld,
        "phi" => return row.value_of(figures.attitude),
        "rf_over_c" => figures.friction,
        "Q_over_rcNl" => figures.inflow,
        "Qs_over_Q" => figures.side_share,
        "P_over_pmax" => figures.mean_over_peak,
        _ => return None,
    };
    Some(Value::Number(number))
}

/// Films at an eccentricity, whatever the end of the film.
pub fn at_eccentricity(row: &Row) -> Option<Value> {
    let boundary = match row.text("boundary") {
        None => Boundary::FedAtWidest,
        Some("half_sommerfeld_periodic") => Boundary::HalfSommerfeld,
        Some("reynolds_periodic") => Boundary::ReynoldsAllRound,
        Some(_) => return None,
    };
    let film = film(
        proportion(row)?,
        row.number("eccentricity_ratio")?,
        boundary,
    )
    .ok()?;
    figure(row, &film.figures)
}

/// Limits of the printed table.
pub fn limits(row: &Row) -> Option<Value> {
    let centred = || film(proportion(row)?, ECCENTRICITIES.0, Boundary::FedAtWidest).ok();
    match row.quantity.as_str() {
        "phi_at_eps_to_0" => row.value_of(centred()?.figures.attitude),
        "Q_over_rcNl_at_eps_to_0" => Some(Value::Number(rules::CENTRED_INFLOW)),
        "h0_over_c" => Some(Value::Number(1.0 - row.number("eccentricity_ratio")?)),
        _ => None,
    }
}

/// The short bearing's closed form.
pub fn short(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "S_times_LD2" => Some(Value::Number(short_load(row.number("eccentricity_ratio")?))),
        "phi" => row.value_of(short_attitude(row.number("eccentricity_ratio")?)),
        "eccentricity_ratio" => Some(Value::Number(short_eccentricity(
            row.number("S_times_LD2")?,
        ))),
        _ => None,
    }
}

/// The identity of journal friction.
pub fn identity(row: &Row) -> Option<Value> {
    Some(Value::Number(journal_friction(
        row.number("S")?,
        row.number("eccentricity_ratio")?,
        row.number("phi_deg")?.to_radians(),
    )))
}

/// Between the printed proportions.
pub fn interpolation(row: &Row) -> Option<Value> {
    Some(Value::Number(rules::between_proportions(
        row.number("l_over_d")?,
        [
            row.number("y_inf")?,
            row.number("y_1")?,
            row.number("y_half")?,
            row.number("y_quarter")?,
        ],
    )))
}

/// Charts read at a Sommerfeld number.
pub fn at_number(row: &Row) -> Option<Value> {
    let film = film_at(proportion(row)?, row.number("S")?).ok()?;
    of_film(row, &film)
}

fn of_film(row: &Row, film: &Film) -> Option<Value> {
    match row.quantity.as_str() {
        "h0_over_c" => Some(Value::Number(film.least_film())),
        "eccentricity_ratio" => Some(Value::Number(film.eccentricity)),
        "9.70*dT_F/P_psi" => Some(Value::Number(rules::temperature_rise_number(&film.figures))),
        _ => figure(row, &film.figures),
    }
}

/// Petroff.
pub fn centred(row: &Row) -> Option<Value> {
    Some(Value::Number(petroff(
        row.si("mu")?,
        row.number("N_rev_s")?,
        row.si("P")?,
        row.number("r_over_c")?,
    )))
}

/// Trumpler's limits.
pub fn trumpler(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "hmin_constant" => row.value_of(rules::trumpler_film(0.0)),
        "hmin_slope_per_mm_diameter" => Some(Value::Number(
            rules::trumpler_film(1.0) - rules::trumpler_film(0.0),
        )),
        "max_temperature" => row.value_of(rules::TRUMPLER_HOTTEST),
        "max_starting_pressure" => row.value_of(rules::TRUMPLER_STARTING_PRESSURE),
        "min_load_design_factor" => Some(Value::Number(rules::TRUMPLER_LOAD_FACTOR)),
        _ => None,
    }
}

/// Worked examples of the books.
pub fn worked(row: &Row) -> Option<Value> {
    if row.inputs.contains_key("Q_over_rcNl") {
        let (radius, clearance, length) = (0.5 * row.si("d")?, row.si("c")?, row.si("l")?);
        let turns = row.number("rpm")? / 60.0;
        return match row.quantity.as_str() {
            "viscosity" => {
                let pressure = row.si("W")? / (2.0 * radius * length);
                row.value_of(row.number("S")? * pressure / turns * (clearance / radius).powi(2))
            }
            "Q" => row.value_of(row.number("Q_over_rcNl")? * radius * clearance * turns * length),
            _ => None,
        };
    }
    if let Some(number) = row.number("S") {
        let film = film_at(proportion(row)?, number).ok()?;
        return if row.quantity == "f" {
            Some(Value::Number(
                film.figures.friction / row.number("R_over_C")?,
            ))
        } else {
            of_film(row, &film)
        };
    }
    let (radius, radial, land) = (row.si("r")?, row.si("c")?, row.si("l")?);
    let (load, turns, viscosity) = (row.si("W")?, row.number("N_rev_s")?, row.si("mu")?);
    let pressure = load / (2.0 * radius * land);
    let number = viscosity * turns / pressure * (radius / radial).powi(2);
    let film = film_at(0.5 * land / radius, number).ok()?;
    let figures = film.figures;
    let flow = figures.inflow * radius * radial * turns * land;
    match row.quantity.as_str() {
        "P" => row.value_of(pressure),
        "S" => Some(Value::Number(number)),
        "h0" => row.value_of(radial * film.least_film()),
        "f" => Some(Value::Number(figures.friction * radial / radius)),
        "friction_torque" => row.value_of(figures.friction * radial * load),
        "Q" => row.value_of(flow),
        "Qs" => row.value_of(flow * figures.side_share),
        "pmax" => row.value_of(pressure / figures.mean_over_peak),
        _ => of_film(row, &film),
    }
}

/// The pressure-fed bearing of the handbook, with the handbook's oil.
pub fn pressure_fed(row: &Row) -> Option<Value> {
    if row.quantity == "dT_constant_ips" {
        // 6/4 of the heat balance over the heat that a volume takes, °F for psi.
        let heat =
            row.number("rho_lbm_in3")? * row.number("cp_Btu_lbmF")? * row.number("J_lbfin_Btu")?;
        return Some(Value::Number(rules::GROOVED_RISE / heat));
    }
    let bearing = Bearing {
        diameter: 2.0 * row.si("r")?,
        land: row.si("l_prime")?,
        clearance: 2.0 * row.si("c")?,
        feed: Feed::Groove(row.si("ps")?),
    };
    if let (Some(e), Some(reyn)) = (row.number("eccentricity_ratio"), row.number("mu_reyn")) {
        return row.value_of(groove_flow(&bearing, row.si("ps")?, reyn * REYN, e));
    }
    let running = handbook_film(row, &bearing)?;
    match row.quantity.as_str() {
        "P" => row.value_of(running.mean_pressure),
        "T_avg" | "T_avg_recomputed" => row.value_of(running.mean_temperature),
        // A difference, though the table writes the sign of a scale.
        "delta_T" => Some(Value::Number(running.temperature_rise * 1.8)),
        "T_max" => row.value_of(running.mean_temperature + 0.5 * running.temperature_rise),
        "h0" => row.value_of(running.least_film),
        "Qs" => row.value_of(running.side_flow),
        _ => of_film(row, &running.film),
    }
}

/// The film with the handbook's oil: the curve near the film's temperature is
/// laid as a line and laid again where the film turns out to be.
fn handbook_film(row: &Row, bearing: &Bearing) -> Option<RunningFilm> {
    let curve = HandbookCurve::of_grade(row.inputs.get("SAE")?.as_u64()?.try_into().ok()?)?;
    let duty = Duty {
        load: row.si("W")?,
        speed: row.number("N_rev_s")? * 2.0 * PI,
        oil_in: row.si("sump")?,
    };
    // What the handbook's oil weighs and takes of heat: 0.0311 lb/in³ and 0.42 Btu/(lb·°F).
    let heat = 0.0311 * 27_679.904_710 * 0.42 * 4186.8;
    let mut mean = duty.oil_in + 20.0;
    let mut running = None;
    for _ in 0..6 {
        let density = Density::usual();
        let point = |kelvin: f64| Point {
            temperature: kelvin,
            viscosity: curve.dynamic(kelvin) / density.at(kelvin),
        };
        let line = ViscosityLine::through(point(mean - 4.0), point(mean + 4.0)).ok()?;
        let oil = Lubricant::new(line, density).with_heat_by_volume(heat);
        let got = run_bearing(bearing, &duty, &oil, Care::Fine).ok()?;
        mean = got.mean_temperature;
        running = Some(got);
    }
    running
}
