//! Swept volume, volume at the top, compression ratios, deck clearance and quench.

use assembly_core::describe::{Given, calculation};
use assembly_core::measure::Estimate;

use crate::runner::{Row, Subject, Value};

pub const SUBJECTS: &[Subject] = &[Subject {
    file: "geometry",
    topic: "compression",
    answer,
}];

fn answer(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "swept_cc" => of(row, "compression-ratio", cylinder(row)?, "swept"),
        "clearance_cc" => of(row, "compression-ratio", cylinder(row)?, "clearance-volume"),
        "CR" => of(row, "compression-ratio", cylinder(row)?, "ratio"),
        "squish_mm" => {
            let given = Given::new()
                .with("deck-clearance", length(row, "piston_below_deck")?)
                .with("gasket-compressed", length(row, "gasket")?)
                .with("rods", Estimate::exact(0.0));
            of(row, "quench", given, "quench")
        }
        "dynamic_CR" => {
            let given = cylinder(row)?
                .with("rod-length", length(row, "rod")?)
                .with("intake-shuts", Estimate::exact(row.si("ivc_abdc")?));
            of(row, "trapped-ratio", given, "trapped-ratio")
        }
        "piston_below_deck" => {
            let given = Given::new()
                .with("block-height", length(row, "block_height")?)
                .with("stroke", length(row, "stroke")?)
                .with("rod-length", length(row, "rod")?)
                .with("compression-height", length(row, "comp_height")?)
                // Neither changes where the piston stands.
                .with("gasket-compressed", Estimate::exact(0.001))
                .with("rods", Estimate::exact(0.0));
            of(row, "deck-and-quench", given, "deck-clearance-calculated")
        }
        _ => None,
    }
}

fn cylinder(row: &Row) -> Option<Given> {
    // The table counts a dome positive, the calculation a dish.
    let dome = row.number("dome_cc_positive")? * 1e-6;
    Some(
        Given::new()
            .with("bore", length(row, "bore")?)
            .with("stroke", length(row, "stroke")?)
            .with("chamber", Estimate::exact(row.si("chamber")?))
            .with("dish", Estimate::exact(-dome))
            .with("gasket-bore", length(row, "gasket_bore")?)
            .with("gasket-compressed", length(row, "gasket")?)
            .with("deck-clearance", length(row, "piston_below_deck")?),
    )
}

fn length(row: &Row, name: &str) -> Option<Estimate> {
    row.si(name).map(Estimate::exact)
}

fn of(row: &Row, id: &str, given: Given, output: &str) -> Option<Value> {
    let answer = calculation(id)?.answer(&given).ok()?;
    row.value_of(answer.get(output)?.value())
}
