//! Torque and preload.

use assembly_core::describe::{Answer, Given, calculation};
use assembly_core::fastener::angle_to_load::angle_of;
use assembly_core::fastener::friction::{BOLTED_JOINTS, DESIGN, friction_class, nut_factor};
use assembly_core::fastener::joint::bolt_load;
use assembly_core::fastener::long_form::TorqueParts;
use assembly_core::fastener::preload_trial::{LUBRICATED_1965, UNLUBRICATED_1965};
use assembly_core::fastener::short_form;
use assembly_core::fastener::stages::{PRINTED, Stage, equal_steps};
use assembly_core::fastener::strength::strength;
use assembly_core::fastener::stretch::give;
use assembly_core::fastener::thread::{System, Thread};
use assembly_core::measure::Estimate;

use crate::runner::{Row, Value};

fn worked(id: &str, inputs: &[(&'static str, f64)]) -> Option<Answer> {
    let given = inputs.iter().fold(Given::new(), |given, (id, value)| {
        given.with(id, Estimate::exact(*value))
    });
    calculation(id)?.answer(&given).ok()
}

/// The core's words for a condition. It names no maker's nuts or pastes.
fn condition(words: &str) -> &str {
    let has = |part: &str| words.to_lowercase().contains(part);
    if has("nuts") {
        "with gripping nuts"
    } else if has("moly") {
        "moly paste"
    } else if has("black oxide") {
        "black oxide"
    } else {
        words
    }
}

pub fn nut_factor_of(row: &Row) -> Option<Value> {
    let book = if row.text("table").is_some() {
        BOLTED_JOINTS
    } else {
        DESIGN
    };
    nut_factor(book, condition(row.text("condition")?)).map(Value::Number)
}

pub fn friction(row: &Row) -> Option<Value> {
    let class = friction_class(row.text("class")?)?;
    match row.quantity.as_str() {
        "mu_min" => Some(Value::Number(class.least)),
        "mu_max" => class.greatest.map(Value::Number),
        _ => None,
    }
}

/// The preload that a row names: a force, or a share of the proof load.
fn preload(row: &Row) -> Option<f64> {
    if let Some(force) = row.si("Fi") {
        return Some(force);
    }
    Some(row.number("preload_fraction")? * row.si("Sp")? * row.si("A_t")?)
}

/// Nut factor by both frictions; the handbook takes the face under the head as
/// one and a quarter diameters wide.
fn factor(row: &Row) -> Option<f64> {
    let exact = Estimate::exact;
    let pitch = match row.number("tpi") {
        Some(threads) => 0.0254 / threads,
        None => row.si("pitch")?,
    };
    let diameter = row.si("d")?;
    let thread = Thread::new(exact(diameter), exact(pitch), System::Inch)?;
    let parts = TorqueParts::of(
        &thread,
        &exact(row.number("f")?),
        &exact(row.number("fc")?),
        &exact(1.25 * diameter),
    );
    Some(parts.whole().value() / diameter)
}

pub fn torque(row: &Row) -> Option<Value> {
    let exact = Estimate::exact;
    let torque = |factor: f64| {
        Some(
            short_form::torque(&exact(preload(row)?), &exact(factor), &exact(row.si("d")?)).value(),
        )
    };
    match row.quantity.as_str() {
        "K" => Some(Value::Number(factor(row)?)),
        "T" => row.value_of(torque(row.number("K")?)?),
        "T_K0.2" => row.value_of(torque(0.2)?),
        "T_eq8-26" => row.value_of(torque(factor(row)?)?),
        "F" | "Fi" | "preload" => row.value_of(
            short_form::preload(
                &exact(row.si("T")?),
                &exact(row.number("K")?),
                &exact(row.si("d")?),
            )
            .value(),
        ),
        "turn_angle" => {
            let area = exact(row.si("A_t")?);
            let stretch =
                exact(preload(row)?) * give(&[(&exact(row.si("L")?), &area)], &exact(row.si("E")?));
            row.value_of(angle_of(&stretch, &exact(row.si("pitch")?)).value())
        }
        "sigma_i" => row.value_of(preload(row)? / row.si("A_t")?),
        "sigma_b" => {
            let load = bolt_load(
                &exact(preload(row)?),
                &exact(row.si("P")?),
                &exact(row.number("C")?),
            );
            row.value_of(load.value() / row.si("A_t")?)
        }
        _ => None,
    }
}

pub fn scatter(row: &Row) -> Option<Value> {
    // The table names the bolt by its inch twin: half an inch.
    if row.text("size")? != "M12x1.25 (1/2-20)" || row.si("T")? != 90.0 {
        return None;
    }
    let trial = |preloads: &[f64]| {
        let mut inputs = vec![("torque", 90.0), ("diameter", 0.0127)];
        inputs.extend(preloads.iter().map(|one| ("preloads", one * 1e3)));
        worked("preload-trial", &inputs)
    };
    let dry = trial(&UNLUBRICATED_1965)?;
    let oiled = trial(&LUBRICATED_1965)?;
    let value = match row.quantity.as_str() {
        "Fi_mean_unlubricated" => dry.get("mean"),
        "Fi_sd_unlubricated" => dry.get("scatter"),
        "Fi_mean_lubricated" => oiled.get("mean"),
        "Fi_sd_lubricated" => oiled.get("scatter"),
        "K_mean" => dry.get("nut-factor"),
        _ => None,
    };
    row.value_of(value?.value())
}

/// Least face of the hexagon head (ISO 4014, product grade A) and medium
/// clearance hole (ISO 273), millimetres, which the guideline's tables are for;
/// from memory.
const HEADS: [(f64, f64, f64); 15] = [
    (4.0, 5.88, 4.5),
    (5.0, 6.88, 5.5),
    (6.0, 8.88, 6.6),
    (8.0, 11.63, 9.0),
    (10.0, 14.63, 11.0),
    (12.0, 16.63, 13.5),
    (14.0, 19.64, 15.5),
    (16.0, 22.49, 17.5),
    (18.0, 25.34, 20.0),
    (20.0, 28.19, 22.0),
    (22.0, 31.71, 24.0),
    (24.0, 33.61, 26.0),
    (27.0, 38.0, 30.0),
    (30.0, 42.75, 33.0),
    (33.0, 46.55, 36.0),
];

pub fn assembly(row: &Row) -> Option<Value> {
    let thread = Thread::named(row.text("size")?)?;
    let diameter = thread.diameter().value();
    let (_, face, hole) = *HEADS
        .iter()
        .find(|head| (head.0 * 1e-3 - diameter).abs() < 1e-9)?;
    let class = strength("ISO 898-1", row.text("class")?, diameter)?;
    let yields = class.pascals(class.yields);
    let friction = row.number("mu")?;
    let answer = worked(
        "assembly-preload",
        &[
            ("diameter", diameter),
            ("pitch", thread.pitch().value()),
            ("system", 0.0),
            ("yield-stress", yields),
            ("used", row.number("utilisation")?),
            ("thread-friction", friction),
            ("head-friction", friction),
            ("face", face * 1e-3),
            ("hole", hole * 1e-3),
        ],
    )?;
    let output = match row.quantity.as_str() {
        "F_M" => "preload",
        "M_A" => "torque",
        _ => return None,
    };
    row.value_of(answer.get(output)?.value())
}

pub fn stages(row: &Row) -> Option<Value> {
    if let Some(manual) = row.text("manual") {
        let printed = PRINTED.iter().find(|one| one.manual == manual)?;
        return match (row.quantity.as_str(), row.unit.as_str()) {
            ("main_cap_snug", "lbf.ft") => Some(Value::Number(printed.snug.0)),
            ("main_cap_angle", "deg") => Some(Value::Number(printed.angle.0)),
            _ => None,
        };
    }
    let count = row.number("stages")?;
    let share = row.quantity.strip_suffix("_fraction");
    let stage = share.unwrap_or(&row.quantity).strip_prefix("stage_")?;
    let last = if share.is_some() {
        1.0
    } else {
        row.number("final")?
    };
    let steps = equal_steps(last, count as u8);
    match steps.get(stage.parse::<usize>().ok()?.checked_sub(1)?)? {
        Stage::Torque(torque) => Some(Value::Number(*torque)),
        Stage::Angle(_) | Stage::Stretch(_) => None,
    }
}
