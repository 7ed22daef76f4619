//! The plan in words: parts, marks, what is waited for.

use build_journal::day::Day;
use build_journal::fact::Mark;
use build_journal::fold::WaitsFor;
use build_plan::At;
use build_plan::step::{Sitting, Step};

use crate::kit::when;

/// A part in an address: "main-3", "cylinder-1-top-ring".
#[must_use]
pub fn slug(at: At) -> String {
    let mut slug = String::new();
    for letter in at.to_string().chars() {
        if letter.is_alphanumeric() {
            slug.extend(letter.to_lowercase());
        } else if !slug.ends_with('-') {
            slug.push('-');
        }
    }
    slug
}

/// Parts in a sentence: "main 1, 2 and 4". Nothing for the engine as a whole.
#[must_use]
pub fn parts(parts: &[At]) -> String {
    let names: Vec<String> = (parts.iter())
        .filter(|at| **at != At::Engine)
        .map(At::to_string)
        .collect();
    let split: Option<Vec<(&str, &str)>> = names.iter().map(|name| name.rsplit_once(' ')).collect();
    if let Some(split) = split
        && let Some((kind, _)) = split.first()
        && split
            .iter()
            .all(|(one, number)| one == kind && number.parse::<u8>().is_ok())
    {
        let numbers: Vec<&str> = split.iter().map(|(_, number)| *number).collect();
        return format!("{kind} {}", and(&numbers));
    }
    names.join("; ")
}

/// "1, 2 and 4".
fn and(words: &[&str]) -> String {
    match words {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// The same behind a label: "main oil clearance, main 1 and 2".
#[must_use]
pub fn of_parts(label: &str, at: &[At]) -> String {
    match parts(at) {
        words if words.is_empty() => label.to_owned(),
        words => format!("{label}, {words}"),
    }
}

/// What was last said of a step.
#[must_use]
pub const fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::Planned => "on the plan",
        Mark::Begun => "begun",
        Mark::Done => "done",
        Mark::Apart => "taken apart",
        Mark::NotNeeded => "not needed",
    }
}

/// Whether a step may be left half done.
#[must_use]
pub fn sitting(step: &Step) -> String {
    match step.sitting {
        Sitting::MayPause => "May be left half done at any time.".to_owned(),
        Sitting::BetweenParts(why) => {
            format!("May be left between one part and the next, not within one. {why}")
        }
        Sitting::InOneGo(why) => format!("In one go: not to be left half done. {why}"),
    }
}

/// What a step waits for.
#[must_use]
pub fn waits(waits: &WaitsFor) -> String {
    match waits {
        WaitsFor::Step(step) => format!("earlier: {}", step.label),
        WaitsFor::Stale(stale) => {
            format!(
                "no longer counts: {}",
                of_parts(stale.proof.label(), &[stale.at])
            )
        }
        WaitsFor::RunOut(clock) => {
            format!("has run out: {}", of_parts(clock.check.label, &[clock.at]))
        }
        WaitsFor::Part { name, promised, .. } => format!("the part: {name}{}", by_day(*promised)),
        WaitsFor::Shop { what, promised, .. } => format!("the shop: {what}{}", by_day(*promised)),
    }
}

fn by_day(day: Option<Day>) -> String {
    day.map_or_else(
        || ", no day promised".to_owned(),
        |day| format!(", promised for {}", when::day(day.begins())),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_plan::Ring;

    #[test]
    fn parts_of_one_kind_are_said_by_their_numbers() {
        assert_eq!(
            parts(&[At::Main(1), At::Main(2), At::Main(4)]),
            "main 1, 2 and 4"
        );
        assert_eq!(parts(&[At::Engine]), "");
        assert_eq!(parts(&[At::Main(1), At::Rod(2)]), "main 1; rod 2");
        assert_eq!(of_parts("bore", &[At::Cylinder(2)]), "bore, cylinder 2");
    }

    #[test]
    fn a_part_in_an_address_is_one_word() {
        assert_eq!(slug(At::Main(3)), "main-3");
        let ring = At::Ring {
            cylinder: 1,
            ring: Ring::ALL[0],
        };
        assert!(slug(ring).starts_with("cylinder-1-"), "{}", slug(ring));
        assert!(!slug(ring).contains([' ', ',', '/']));
    }
}
