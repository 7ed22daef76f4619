//! What holds for every measure.

use std::collections::BTreeSet;

use super::*;
use crate::engine::{Engine, Layout};
use assembly_core::quantity::{Kind, Si};
use uom::si::f64::Length;

fn sprayer() -> Engine {
    Engine::new("orchard sprayer", 4, Layout::Inline, None).unwrap()
}

#[test]
fn every_id_is_its_own_and_finds_its_measure() {
    let ids: BTreeSet<_> = MEASURES.iter().map(|one| one.id).collect();
    assert_eq!(ids.len(), MEASURES.len());
    for one in MEASURES {
        assert_eq!(measure(one.id), Some(*one));
        assert!(
            one.id
                .chars()
                .all(|letter| letter.is_ascii_lowercase() || letter == '-'),
            "{}",
            one.id
        );
    }
    assert_eq!(measure("no-such-thing"), None);
}

#[test]
fn whatever_a_measure_is_worked_out_from_is_listed_before_it() {
    for (at, one) in MEASURES.iter().enumerate() {
        if let Found::WorkedOut { from, .. } = one.found {
            for source in from {
                let place = MEASURES.iter().position(|other| other.id == source.id);
                assert!(place.is_some_and(|place| place < at), "{}", one.id);
            }
        }
    }
}

#[test]
fn every_measure_says_how_and_what_comes_of_it() {
    for one in MEASURES {
        for line in one.how {
            assert!(
                line.ends_with('.') && line.len() <= 110,
                "{}: {line}",
                one.id
            );
        }
        assert!(!one.too_little.is_empty() || !one.too_much.is_empty());
        assert!(one.cautions.iter().all(|line| line.ends_with('.')));
    }
}

#[test]
fn a_tripwire_that_goes_by_a_size_is_of_the_same_kind() {
    for one in MEASURES {
        if let Some(Rule::PartOf { size, low, high }) = one.tripwire.map(|wire| wire.rule) {
            assert_eq!((size.kind, one.kind), (Kind::Length, Kind::Length));
            assert!(0.0 < low && low < high);
        }
    }
}

// Common practice, worked by hand: 2.5 in × 0.00075 and × 0.001.
#[test]
fn the_rule_of_thumb_for_a_journal_comes_out_in_thou() {
    let journal = Length::from_si(2.5 * 0.0254).to_si();
    let window = MAIN_OIL_CLEARANCE
        .tripwire
        .unwrap()
        .window(journal)
        .unwrap();
    let thou = |si: f64| si / 0.0254e-3;
    assert!((thou(window.low().unwrap()) - 1.875).abs() < 1e-9);
    assert!((thou(window.high().unwrap()) - 2.5).abs() < 1e-9);
    assert!(MAIN_OIL_CLEARANCE.tripwire.unwrap().window(0.0).is_err());
}

#[test]
fn places_come_in_the_order_of_the_work() {
    let places = MAIN_JOURNAL_DIAMETER.places(&sprayer());
    assert_eq!(places.len(), 5 * 4);
    assert_eq!(
        places[4].to_string(),
        "main 2, front of the oil hole, up and down"
    );
    assert!(
        places
            .iter()
            .all(|place| MAIN_JOURNAL_DIAMETER.spots.include(place))
    );
    assert!(
        !MAIN_BEARING_BORE.spots.include(&places[1]),
        "across is no bore direction"
    );
    assert_eq!(MAIN_OIL_CLEARANCE.places(&sprayer()).len(), 5);
    assert_eq!(MAIN_BEARING_BORE.places(&sprayer()).len(), 5 * 6);
}
