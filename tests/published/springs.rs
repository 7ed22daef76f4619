//! Coil springs.

use assembly_core::describe::{Answer, Given, calculation};
use assembly_core::measure::Estimate;
use assembly_core::stack::BIND_MARGIN;
use assembly_core::valve::coil_spring::{
    bergstraesser, coils_for, nested_load, stress, wahl, wire_for,
};

use crate::runner::{Row, Subject, Value};

pub const SUBJECTS: &[Subject] = &[
    Subject::of("springs_balance", "spring_formula", answer),
    Subject::of("springs_balance", "spring_published", answer),
];

/// The spring's index, given or from its diameters.
fn index(row: &Row) -> Option<Estimate> {
    row.number("C")
        .or_else(|| Some(row.si("D")? / row.si("d")?))
        .map(Estimate::exact)
}

fn spring(row: &Row) -> Option<Answer> {
    // Which ends a spring has stands in the source column alone: the music wire
    // of 0.037 in is squared and not ground, all others are ground.
    let ends = if row.number("d_in") == Some(0.037) {
        1.0
    } else {
        0.0
    };
    let mut given = Given::new()
        .with("ends", Estimate::exact(ends))
        .with("wire", Estimate::exact(row.si("d")?))
        .with("mean-diameter", Estimate::exact(row.si("D")?))
        .with("active", Estimate::exact(row.number("Na")?))
        .with("shear-modulus", Estimate::exact(row.si("G")?))
        // Where a row has none, nothing that is asked depends on it.
        .with("density", Estimate::exact(row.si("rho").unwrap_or(7850.0)));
    for (id, value) in [
        ("all", row.number("Nt")),
        ("free", row.si("free")),
        ("height", row.si("height")),
    ] {
        if let Some(value) = value {
            given.push(id, Estimate::exact(value));
        }
    }
    calculation("coil-spring")?.answer(&given).ok()
}

fn answer(row: &Row) -> Option<Value> {
    let of = |output: &str| row.value_of(spring(row)?.get(output)?.value());
    let rate = || Some(spring(row)?.get("rate")?.value());
    let stressed = |factor: Estimate| {
        let exact = Estimate::exact;
        let load = exact(row.si("F")?);
        Some(stress(&load, &exact(row.si("D")?), &exact(row.si("d")?), &factor).value())
    };
    match row.quantity.as_str() {
        "rate" => of("rate"),
        "C" => of("index"),
        "active_mass" => of("mass"),
        "solid_height_squared_ground" => of("solid"),
        "load_at_height" => of("load"),
        "solid_length" => of("solid"),
        "K_W" => Some(Value::Number(wahl(&index(row)?).value())),
        "K_B" => Some(Value::Number(bergstraesser(&index(row)?).value())),
        // A speed of swings is turns a minute in the calculation; the row asks for hertz.
        "surge_frequency_fixed_fixed" => hertz(row, 1.0),
        "surge_frequency_fixed_free" => hertz(row, 0.5),
        "coil_bind_margin" => row.value_of(BIND_MARGIN.value_at(&[
            row.si("lift")?,
            // Lift at the valve, without lash or shim.
            1.0,
            0.0,
            row.si("installed")?,
            0.0,
            spring(row)?.get("solid")?.value(),
        ])),
        "shear_stress_KB" => row.value_of(stressed(bergstraesser(&index(row)?))?),
        "shear_stress_KW" => row.value_of(stressed(wahl(&index(row)?))?),
        "load" => row.value_of(rate()? * row.si("deflection")?),
        "deflection" => row.value_of(row.si("F")? / rate()?),
        // The load of a stress is to the load of one newton as the stresses are.
        "F_at_Ssy" => {
            let exact = Estimate::exact;
            let factor = bergstraesser(&index(row)?);
            let of_one = stress(
                &exact(1.0),
                &exact(row.si("D")?),
                &exact(row.si("d")?),
                &factor,
            );
            row.value_of(row.si("Ssy")? / of_one.value())
        }
        "wire_d" => row.value_of(
            wire_for(
                &Estimate::exact(row.si("Fmax")?),
                &index(row)?,
                &Estimate::exact(row.si("tau")?),
            )
            .value(),
        ),
        "Na" => {
            let exact = Estimate::exact;
            let rate = exact(row.number("rate_N_mm")? * 1e3);
            let coils = coils_for(
                &exact(row.si("G")?),
                &exact(row.si("d")?),
                &index(row)?,
                &rate,
            );
            Some(Value::Number(coils.value()))
        }
        "nested_load" => {
            let springs = [("k1", "L01"), ("k2", "L02")].map(|(rate, free)| {
                let rate = Estimate::exact(row.number(rate)? * 1e3);
                Some((rate, Estimate::exact(row.si(free)?)))
            });
            let springs: Option<Vec<(Estimate, Estimate)>> = springs.into_iter().collect();
            let height = Estimate::exact(row.si("height")?);
            row.value_of(nested_load(&springs?, &height).value())
        }
        _ => None,
    }
}

fn hertz(row: &Row, ends: f64) -> Option<Value> {
    let swings = spring(row)?.get("surge")?.value() / (2.0 * std::f64::consts::PI);
    Some(Value::Number(swings * ends))
}
