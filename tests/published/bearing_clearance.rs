//! Running clearance by the rule of so much an inch of journal.

use assembly_core::describe::{Given, calculation};
use assembly_core::fit::clearance_rule_of_thumb::{GREATEST_PART, HARD_USE_ADDS, LEAST_PART};
use assembly_core::measure::Estimate;

use crate::runner::{Row, Subject, Value};

/// The topic and what answers it.
pub const SUBJECTS: &[Subject] = &[Subject::of("rules_of_thumb", "bearing_clearance", answer)];

fn answer(row: &Row) -> Option<Value> {
    match row.quantity.as_str() {
        "main_diametral_per_inch_journal_min" => row.value_of(LEAST_PART),
        "main_diametral_per_inch_journal_max" | "classic_per_inch_journal_max" => {
            row.value_of(GREATEST_PART)
        }
        "performance_adder_max" => row.value_of(HARD_USE_ADDS),
        "rule_value" => {
            let given = Given::new()
                .with("journal", Estimate::exact(row.si("journal")?))
                .with("part", Estimate::exact(row.number("per_inch")?));
            let answer = calculation("clearance-rule-of-thumb")?
                .answer(&given)
                .ok()?;
            row.value_of(answer.get("own")?.value())
        }
        _ => None,
    }
}
