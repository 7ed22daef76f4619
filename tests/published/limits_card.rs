//! The limits card: rules of thumb of the trade and what army manuals print.

use assembly_core::describe::{Given, calculation};
use assembly_core::limits::{CardUnit, Entry, Source, about, find};
use assembly_core::measure::Estimate;
use assembly_core::quantity::{Kind, read, unit_of};
use assembly_core::stack::bolt_engagement::{IN_ALUMINIUM, IN_IRON};

use crate::runner::{Row, Subject, Value};

const FILE: &str = "rules_of_thumb";

/// The topics and what answers them.
pub const SUBJECTS: &[Subject] = &[
    Subject::of(FILE, "army_tm", army_manual),
    Subject::of(FILE, "ring_gap", ring_gap),
    Subject::of(FILE, "ring_side", card),
    Subject::of(FILE, "crank", card),
    Subject::of(FILE, "rod", card),
    Subject::of(FILE, "piston_to_wall", card),
    Subject::of(FILE, "quench", card),
    Subject::of(FILE, "valve_to_piston", card),
    Subject::of(FILE, "coil_bind", card),
    Subject::of(FILE, "lifter", card),
    Subject::of(FILE, "valve_train", card),
    Subject::of(FILE, "block", card),
    Subject::of(FILE, "pickup", pickup),
    Subject::of(FILE, "misc", misc),
];

/// What the tables call a measure, what the card calls it, and the case that
/// the name implies.
const NAMES: &[(&str, &str, &str)] = &[
    ("aluminium_rod_adder", "valve-to-piston-alloy-adds", ""),
    ("deck_flatness_per_6in", "deck-flatness", ""),
    ("end_float", "crank-end-play", ""),
    ("end_play", "crank-end-play", ""),
    ("exhaust_min", "valve-to-piston-exhaust", ""),
    ("flywheel_runout", "flywheel-run-out", ""),
    ("head_flatness_per_inch_span", "head-flatness", "aluminium"),
    (
        "hydraulic_preload_short_travel",
        "lifter-preload",
        "short travel",
    ),
    ("hydraulic_preload_standard", "lifter-preload", "standard"),
    ("intake_min", "valve-to-piston-intake", ""),
    ("main_bearing_clearance", "main-oil-clearance", ""),
    ("main_bore_alignment_adjacent", "main-line-step", ""),
    (
        "main_clearance_variation_adjacent",
        "main-clearance-step",
        "",
    ),
    ("margin_at_full_lift", "coil-bind-margin", ""),
    (
        "per_inch_bore_forged_2618",
        "piston-to-wall",
        "per inch of bore",
    ),
    ("pickup_to_pan", "pickup-to-pan", ""),
    ("piston_to_head", "quench", ""),
    ("piston_to_head_absolute_min", "quench-least", ""),
    ("radial_min", "valve-to-piston-radial", ""),
    ("ring_gap_intermediate", "second-ring-gap-printed", ""),
    ("ring_gap_lower", "lower-ring-gap-printed", ""),
    ("ring_gap_oil", "oil-ring-gap-printed", ""),
    ("ring_gap_second", "second-ring-gap-printed", ""),
    ("ring_gap_top", "top-ring-gap-printed", ""),
    ("ring_groove_clearance", "ring-side-clearance", ""),
    ("ring_groove_clearance_intermediate", "second-ring-side", ""),
    ("ring_groove_clearance_oil", "oil-ring-side", ""),
    ("ring_groove_clearance_second", "second-ring-side", ""),
    ("ring_groove_clearance_top", "top-ring-side", ""),
    ("rod_bearing_clearance", "rod-oil-clearance", ""),
    ("runout", "crank-bow", ""),
    ("clearance", "piston-to-wall", ""),
    ("second_gap_per_inch_bore", "second-ring-gap", ""),
    ("side_clearance_pair", "rod-side-clearance", ""),
    ("top_gap_per_inch_bore", "top-ring-gap", ""),
];

/// Which figure of a line is asked for.
enum Figure {
    Low,
    High,
    Worn,
    Wanted,
}

/// The measure and the figure that a quantity's name asks for.
fn asked(quantity: &str) -> (&str, Figure) {
    let figures = [
        ("_wear_limit", Figure::Worn),
        ("_limit", Figure::Worn),
        ("_recommended", Figure::Wanted),
        ("_min", Figure::Low),
        ("_max", Figure::High),
    ];
    figures
        .into_iter()
        .find_map(|(ending, figure)| Some((quantity.strip_suffix(ending)?, figure)))
        // A bare name asks for the one figure of its line.
        .unwrap_or((quantity, Figure::Wanted))
}

/// The card's name of a measure, and the case in its name.
fn named(measure: &str) -> (String, &'static str) {
    NAMES
        .iter()
        .find(|(name, _, _)| *name == measure)
        .map_or_else(
            || (measure.replace('_', "-"), ""),
            |(_, id, case)| ((*id).to_owned(), *case),
        )
}

fn figure_of(entry: &Entry, figure: &Figure, unit: &str) -> Option<Value> {
    let expected = match entry.unit {
        CardUnit::Inch => "in",
        CardUnit::InchPerInch => "in/in",
    };
    if unit != expected {
        return None;
    }
    let value = match figure {
        Figure::Low => entry.low,
        Figure::High => entry.high,
        Figure::Worn => entry.worn,
        Figure::Wanted => entry.wanted.or(entry.low).or(entry.high),
    };
    value.map(Value::Number)
}

fn card(row: &Row) -> Option<Value> {
    let (measure, figure) = asked(&row.quantity);
    let (id, implied) = named(measure);
    let words: Vec<&str> = row
        .inputs
        .values()
        .filter_map(|value| value.as_str())
        .collect();
    let case = format!("{implied} {}", words.join(" "));
    let trade = |entry: &&Entry| !matches!(entry.source, Source::ArmyManual(_));
    let entry = if case.trim().is_empty() {
        // Without a case the line that has none; else the only or first one.
        about(&id, "").or_else(|| find(&id).find(trade))?
    } else {
        about(&id, &case)?
    };
    figure_of(entry, &figure, &row.unit)
}

fn army_manual(row: &Row) -> Option<Value> {
    let manual = row.text("manual")?;
    let (measure, figure) = asked(&row.quantity);
    let (id, _) = named(measure);
    let printed =
        |entry: &&Entry| entry.source == Source::ArmyManual(entry.case) && entry.case == manual;
    figure_of(find(&id).find(printed)?, &figure, &row.unit)
}

fn worked(id: &str, output: &str, inputs: &[(&'static str, f64)]) -> Option<f64> {
    let mut given = Given::new();
    for (name, value) in inputs {
        given.push(name, Estimate::exact(*value));
    }
    Some(calculation(id)?.answer(&given).ok()?.get(output)?.value())
}

fn ring_gap(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "rule_value" => row.value_of(worked(
            "ring-gap-rule",
            "gap",
            &[
                ("bore", row.si("bore")?),
                ("factor", row.number("factor")?),
                ("condition", 0.0),
            ],
        )?),
        // What the gap gains when the bore gains an inch. The row's unit is of
        // both, so it is a plain number.
        "gap_change_per_bore_change" => Some(Value::Number(
            worked(
                "ring-gap-after-honing",
                "opens",
                &[("gap", 0.0), ("honed", 0.001)],
            )? / 0.001,
        )),
        _ => card(row),
    }
}

fn pickup(row: &Row) -> Option<Value> {
    if row.quantity != "pickup_to_pan" {
        return card(row);
    }
    // Typed as at the bench: "7 3/8".
    let inch = unit_of(Kind::Length, "in")?;
    let typed = |key: &str| Some(read(row.text(key)?, Kind::Length, inch).ok()?.si());
    row.value_of(worked(
        "pickup-to-pan",
        "gap",
        &[
            ("pan-depth", typed("pan_depth_in")?),
            ("pan-gasket", typed("gasket_compressed_in")?),
            ("pickup-depth", typed("pickup_depth_in")?),
        ],
    )?)
}

fn misc(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "thread_engagement_steel_in_aluminium_min" => Some(Value::Number(IN_ALUMINIUM)),
        "thread_engagement_steel_in_iron_min" => Some(Value::Number(IN_IRON)),
        _ => card(row),
    }
}
