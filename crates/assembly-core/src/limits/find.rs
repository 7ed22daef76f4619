//! Lines of the card by their measure and case.

use super::{Entry, army, bottom_end, cylinder, pump_and_drive, valve_gear};

/// All lines.
pub fn all() -> impl Iterator<Item = &'static Entry> {
    [
        bottom_end::ENTRIES,
        cylinder::ENTRIES,
        valve_gear::ENTRIES,
        pump_and_drive::ENTRIES,
        army::ENTRIES,
    ]
    .into_iter()
    .flatten()
}

/// The lines about a measure, the trade's own before those of manuals.
///
/// ```
/// use assembly_core::limits::find;
///
/// assert!(find("crank-end-play").count() > 1);
/// ```
pub fn find(id: &str) -> impl Iterator<Item = &'static Entry> {
    all().filter(move |entry| entry.id == id)
}

/// The line about a measure whose case has all the words of this one, and the
/// fewest others. With no case, the line that has none. `None` when the card
/// has no such line.
///
/// ```
/// use assembly_core::limits::about;
///
/// let line = about("top-ring-gap", "diesel turbo").unwrap();
/// assert_eq!(line.low, Some(0.0055));
/// assert!(about("top-ring-gap", "diesel steam").is_none());
/// ```
#[must_use]
pub fn about(id: &str, case: &str) -> Option<&'static Entry> {
    let asked = words(case);
    find(id)
        .filter(|entry| entry.case.is_empty() == asked.is_empty())
        .map(|entry| (entry, words(entry.case)))
        .filter(|(_, has)| asked.iter().all(|word| has.contains(word)))
        // Of equals the first, so that the order of the card decides.
        .min_by_key(|(_, has)| has.len())
        .map(|(entry, _)| entry)
}

/// The words of a case in small letters, each once.
fn words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = text
        .split(|c: char| !(c.is_alphanumeric() || c == '-'))
        .filter(|word| !word.is_empty() && !["and", "or"].contains(word))
        .map(str::to_lowercase)
        .collect();
    words.sort_unstable();
    words.dedup();
    words
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::limits::{CardUnit, Source};

    #[test]
    fn every_line_hangs_together() {
        for entry in all() {
            let id = entry.id;
            let figures = [entry.low, entry.high, entry.worn, entry.wanted];
            assert!(figures.iter().any(Option::is_some), "{id} has no figure");
            assert!(
                figures.iter().flatten().all(|one| (0.0..2.0).contains(one)),
                "{id}: a figure is no inch"
            );
            if let (Some(low), Some(high)) = (entry.low, entry.high) {
                assert!(low < high, "{id} {}: upside down", entry.case);
            }
            if let (Some(high), Some(worn)) = (entry.high, entry.worn) {
                assert!(high <= worn, "{id} {}: worn below new", entry.case);
            }
            assert!(!entry.what.is_empty());
            if let Source::ArmyManual(number) = entry.source {
                assert!(number.starts_with("TM "), "{id}: {number}");
            }
        }
    }

    #[test]
    fn no_two_lines_say_the_same_case_of_a_measure() {
        let mut seen = std::collections::BTreeSet::new();
        for entry in all() {
            let source = format!("{:?}", entry.source);
            assert!(
                seen.insert((entry.id, entry.case, source)),
                "{} {:?} twice",
                entry.id,
                entry.case
            );
        }
    }

    #[test]
    fn what_is_disputed_is_never_proposed() {
        let disputed: Vec<_> = all().filter(|one| one.source == Source::Disputed).collect();
        assert!(!disputed.is_empty());
        assert!(disputed.iter().all(|one| !one.may_be_proposed()));
    }

    #[test]
    fn a_line_for_each_inch_needs_its_diameter() {
        let line = about("main-oil-clearance", "of the journal").unwrap();
        assert_eq!(line.unit, CardUnit::InchPerInch);
        assert!(line.window(None).is_none());
        let window = line.window(Some(2.5 * 0.0254)).unwrap();
        assert!((window.high().unwrap() / 0.0254 - 0.0025).abs() < 1e-9);
    }
}
