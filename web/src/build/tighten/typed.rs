//! Texts of a group's description: numbers in a row, quantities with their unit.

use std::str::FromStr;

use assembly_core::quantity::{Kind as Quantity, unit_or_usual};
use build_journal::fact::{FastenerGroup, Wrench};
use build_journal::fold::tightening::Sheet;

use super::typing::STAGES_AT_MOST;
use crate::kit::field::read_text;

/// A quantity that says its unit in the fact: an angle or a stretch is none
/// other than a torque by it, and a length is one whatever this device shows.
pub fn with_its_unit(quantity: Quantity, usual: &str, typed: &str) -> String {
    let typed = typed.trim();
    let lone = read_text(typed, quantity, unit_or_usual(quantity, usual))
        .and_then(Result::ok)
        .is_some_and(|read| !read.unit_was_typed());
    if lone {
        format!("{typed} {usual}")
    } else {
        typed.to_owned()
    }
}

/// What kind each stage is, by letter.
pub fn stage_kinds(was: &FastenerGroup, sheet: Option<&Sheet>) -> String {
    use assembly_core::fastener::stages::Stage;
    let read = sheet.map_or(&[][..], |sheet| &sheet.stages);
    let kinds = (0..was.stages.len()).map(|at| match read.get(at).map(|one| &one.read) {
        Some(Ok((Stage::Angle(_), _))) => 'a',
        Some(Ok((Stage::Stretch(_), _))) => 's',
        _ => 't',
    });
    kinds.take(STAGES_AT_MOST).collect()
}

/// Between the parts of a wrench in a draft: no key types it.
const BETWEEN: char = '\u{1f}';

/// A wrench as one text, for a draft.
pub fn wrench_text(wrench: &Wrench) -> String {
    let part = |text: &Option<String>| text.clone().unwrap_or_default();
    let parts = [
        part(&wrench.name),
        wrench.low.clone(),
        wrench.high.clone(),
        wrench.unit.clone(),
        part(&wrench.step),
        part(&wrench.grip),
    ];
    parts.join(&BETWEEN.to_string())
}

/// The wrench in such a text; none when it is empty or another text.
pub fn wrench_of(text: &str) -> Option<Wrench> {
    let parts: Vec<&str> = text.split(BETWEEN).collect();
    let [name, low, high, unit, step, grip] = parts[..] else {
        return None;
    };
    let some = |text: &str| (!text.is_empty()).then(|| text.to_owned());
    Some(Wrench {
        name: some(name),
        low: low.to_owned(),
        high: high.to_owned(),
        unit: unit.to_owned(),
        step: some(step),
        grip: some(grip),
    })
}

/// Numbers as one text.
pub fn numbers<T: ToString>(all: &[T]) -> String {
    let all: Vec<String> = all.iter().map(T::to_string).collect();
    all.join(" ")
}

/// The numbers in a text; what is none is passed over.
pub fn read_numbers<T: FromStr>(text: &str) -> Vec<T> {
    text.split_whitespace()
        .filter_map(|one| one.parse().ok())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_angle_and_a_stretch_say_their_unit() {
        let angle = |typed| with_its_unit(Quantity::Angle, "°", typed);
        let length = |typed| with_its_unit(Quantity::Length, "mm", typed);
        assert_eq!(
            (angle(" 90 "), angle("90°")),
            ("90 °".to_owned(), "90°".to_owned())
        );
        assert_eq!(
            (length("38"), length("6 thou")),
            ("38 mm".to_owned(), "6 thou".to_owned())
        );
        assert_eq!(length("  "), "");
    }

    #[test]
    fn a_wrench_reads_back_from_its_draft() {
        let wrench = Wrench {
            name: Some("the small one".to_owned()),
            low: "40".to_owned(),
            high: "250".to_owned(),
            unit: "in-lb".to_owned(),
            step: None,
            grip: Some("9.5 in".to_owned()),
        };
        assert_eq!(wrench_of(&wrench_text(&wrench)), Some(wrench));
        assert_eq!((wrench_of(""), wrench_of("the small one")), (None, None));
    }

    #[test]
    fn numbers_read_back() {
        assert_eq!(read_numbers::<u32>(&numbers(&[5, 6, 7])), [5, 6, 7]);
        assert_eq!(read_numbers::<u32>("5 x 6"), [5, 6]);
        assert_eq!(read_numbers::<i32>(&numbers(&[-50, 25])), [-50, 25]);
    }
}
