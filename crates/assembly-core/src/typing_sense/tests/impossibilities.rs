//! What can't be is named, and what only seems so within the errors is not.

use uom::si::f64::Length;

use super::*;
use crate::measure::{Measured, Origin, Sources};
use crate::quantity::Si;
use impossible::{Rule, bore_shrank, journal_grew, ring_gap_against_bore, shell_too_thick};

fn size(sources: &mut Sources, number: f64, spread: f64) -> Measured<Length> {
    let feel = sources.fresh("the tool's feel", Origin::Repeat);
    Measured::exact(Length::from_si(inches(number))).with(feel, Length::from_si(inches(spread)))
}

#[test]
fn a_worn_journal_does_not_grow() {
    let mut sources = Sources::new();
    let mut size = |number| size(&mut sources, number, 0.0001);
    let before = size(2.4483);
    let grown = journal_grew(&before, &size(2.4493)).unwrap();
    assert_eq!(grown.rule, Rule::JournalGrew);
    let sentence = grown.sentence(unit("thou").unwrap());
    assert!(sentence.contains("1.00 ± 0.14 thou larger"), "{sentence}");
    // Within what two readings differ by anyhow.
    assert!(journal_grew(&before, &size(2.4485)).is_none());
    assert!(journal_grew(&before, &size(2.4483)).is_none());
    assert!(journal_grew(&before, &size(2.4473)).is_none());
}

#[test]
fn a_worn_bore_does_not_shrink() {
    let mut sources = Sources::new();
    let mut size = |number| size(&mut sources, number, 0.0002);
    let before = size(4.0312);
    assert_eq!(
        bore_shrank(&before, &size(4.0300)).unwrap().rule,
        Rule::BoreShrank
    );
    assert!(bore_shrank(&before, &size(4.0309)).is_none());
    assert!(bore_shrank(&before, &size(4.0320)).is_none());
}

#[test]
fn a_zero_error_that_both_readings_share_hides_nothing() {
    let mut sources = Sources::new();
    let zero = sources.shared("micrometer", "the micrometer's zero", Origin::SharedZero);
    let mut with_zero =
        |number| size(&mut sources, number, 0.0001).with(zero, Length::from_si(inches(0.001)));
    let (before, now) = (with_zero(2.4483), with_zero(2.4488));
    assert!(journal_grew(&before, &now).is_some());
}

#[test]
fn a_shell_wall_fits_into_half_the_room() {
    let mut sources = Sources::new();
    let mut size = |number| size(&mut sources, number, 0.0001);
    let (housing, journal) = (size(2.6412), size(2.4500));
    assert!(shell_too_thick(&housing, &journal, &size(0.0945)).is_none());
    let thick = shell_too_thick(&housing, &journal, &size(0.0995)).unwrap();
    assert_eq!(thick.rule, Rule::ShellTooThick);
    assert!((thick.by.value().to_si() - inches(0.0995 - 0.0956)).abs() < 1e-12);
    // A hair over, within the errors.
    assert!(shell_too_thick(&housing, &journal, &size(0.0957)).is_none());
}

#[test]
fn a_ring_gapes_wider_in_the_larger_bore_whichever_comes_first() {
    let mut sources = Sources::new();
    let mut size = |number, spread| size(&mut sources, number, spread);
    let (small, large) = (size(4.0300, 0.0002), size(4.0320, 0.0002));
    let (narrow, wide) = (size(0.018, 0.0005), size(0.024, 0.0005));
    assert!(ring_gap_against_bore((&small, &narrow), (&large, &wide)).is_none());
    for named in [
        ring_gap_against_bore((&small, &wide), (&large, &narrow)),
        ring_gap_against_bore((&large, &narrow), (&small, &wide)),
    ] {
        assert_eq!(named.unwrap().rule, Rule::RingGapAgainstBore);
    }
    // The same bore: the gap may come out either way.
    let (one, other) = (size(0.018, 0.0005), size(0.0185, 0.0005));
    assert!(ring_gap_against_bore((&small, &other), (&small, &one)).is_none());
}

#[test]
fn each_rule_has_a_sentence_of_its_own() {
    let by = Measured::exact(Length::from_si(inches(0.001)));
    let rules = [
        Rule::JournalGrew,
        Rule::BoreShrank,
        Rule::ShellTooThick,
        Rule::RingGapAgainstBore,
    ];
    let told: std::collections::BTreeSet<String> = rules
        .iter()
        .map(|rule| {
            let named = impossible::Impossible {
                rule: *rule,
                by: by.clone(),
            };
            let sentence = named.sentence(unit("mm").unwrap());
            assert!(sentence.contains("0.025 mm"), "{sentence}");
            format!("{rule} {sentence}")
        })
        .collect();
    assert_eq!(told.len(), rules.len());
}
