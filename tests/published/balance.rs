//! Balance of cranks and layouts.

use std::f64::consts::FRAC_PI_4;

use assembly_core::balance::bobweight::RIGHT_ANGLED_VEE;
use assembly_core::balance::left_over::{
    counterweight, left_over_force, may_be_left, turning_force,
};
use assembly_core::balance::shaking::{Cylinder, shaking};
use assembly_core::describe::{Given, calculation};
use assembly_core::measure::Estimate;

use crate::runner::{Row, Subject, Value};

pub const SUBJECTS: &[Subject] = &[
    Subject::of("springs_balance", "balance", answer),
    Subject::of("springs_balance", "balance_published", published),
];

fn exact(value: f64) -> Estimate {
    Estimate::exact(value)
}

fn worked(id: &str, inputs: &[(&'static str, f64)], output: &str) -> Option<f64> {
    let given = inputs.iter().fold(Given::new(), |given, (id, value)| {
        given.with(id, exact(*value))
    });
    Some(calculation(id)?.answer(&given).ok()?.get(output)?.value())
}

fn cylinders(row: &Row) -> Option<Vec<Cylinder>> {
    let (pins, bores, places) = (
        row.list("crankpin_deg")?,
        row.list("bank_deg_from_vertical")?,
        row.list("axial_positions")?,
    );
    let all = pins.iter().zip(&bores).zip(&places);
    Some(
        all.map(|((pin, bore), at)| Cylinder {
            pin: pin.to_radians(),
            bore: bore.to_radians(),
            at: *at,
        })
        .collect(),
    )
}

fn answer(row: &Row) -> Option<Value> {
    let plane = |output: &str| {
        // Gram millimetres: a weight in grams at a radius of one millimetre.
        let grams = worked(
            "two-planes",
            &[
                ("weight", row.number("U_gmm")? * 1e-3),
                ("at", row.number("z_m")?),
                ("plane-a", row.number("planeA_m")?),
                ("plane-b", row.number("planeB_m")?),
            ],
            output,
        )?;
        Some(Value::Number(grams * 1e3))
    };
    Some(Value::Number(match row.quantity.as_str() {
        "primary_force_max" => shaking(&cylinders(row)?).primary_force,
        "secondary_force_max" => shaking(&cylinders(row)?).secondary_force,
        "primary_couple_max" => shaking(&cylinders(row)?).primary_couple,
        "secondary_couple_max" => shaking(&cylinders(row)?).secondary_couple,
        "counterweight_fraction_full_primary" if row.text("layout")? == "V-twin 90 common pin" => {
            let twin = [-FRAC_PI_4, FRAC_PI_4].map(|bore| Cylinder {
                pin: 0.0,
                bore,
                at: 0.0,
            });
            shaking(&twin).primary_force / 2.0
        }
        "bobweight_reciprocating_fraction" if row.text("layout")? == "V8 90 cross-plane" => {
            RIGHT_ANGLED_VEE
        }
        "bobweight" => {
            let kilograms = worked(
                "bobweight",
                &[
                    ("rotating", row.number("rotating_g_per_rod")? * 1e-3),
                    (
                        "reciprocating",
                        row.number("reciprocating_g_per_cyl")? * 1e-3,
                    ),
                    ("rods", row.number("rods_per_pin")?),
                    ("fraction", row.number("recip_fraction")?),
                    ("oil", row.number("oil_g")? * 1e-3),
                ],
                "bobweight",
            )?;
            kilograms * 1e3
        }
        "unbalance_force" => turning_force(
            &exact(row.number("unbalance_kg")?),
            &exact(row.number("radius_m")?),
            &exact(speed(row)?),
        )
        .value(),
        "correction_plane_A" => return plane("at-a"),
        "correction_plane_B" => return plane("at-b"),
        "U_per" => {
            let left = may_be_left(
                &exact(row.number("G_mm_s")? * 1e-3),
                &exact(speed(row)?),
                &exact(row.number("mass_kg")?),
            );
            // Kilogram metres as gram millimetres.
            left.value() * 1e6
        }
        _ => return None,
    }))
}

fn speed(row: &Row) -> Option<f64> {
    Some(row.number("rpm")? * std::f64::consts::PI / 30.0)
}

fn published(row: &Row) -> Option<Value> {
    let share = exact(row.number("recip_fraction")?);
    let inches = || Some(row.number("crank_in")? * 0.0254);
    // Not by name alone: there is an angle of the crank too.
    let throw = exact(row.number("crank_m").or_else(inches)?);
    let to_and_fro = exact(row.si("recip")?);
    row.value_of(match row.quantity.as_str() {
        "balance_weight" | "balance_mass" => counterweight(
            &exact(row.si("rotating")?),
            (&to_and_fro, &share),
            &throw,
            &exact(row.si("balance_radius")?),
        )
        .value(),
        // Where no angle is given a half is balanced, and the angle is all one.
        "residual_unbalanced_force" => {
            let angle = row.number("crank_deg").map_or(0.0, f64::to_radians);
            left_over_force(
                (&to_and_fro, &share),
                &throw,
                &exact(speed(row)?),
                &exact(angle),
            )
            .value()
        }
        _ => return None,
    })
}
