//! Limits of clearances with their units mixed up.

use crate::quantity::{Kind, Typed, read, unit};
use crate::typing_sense::doubt_of_clearance;

fn typed(text: &str, lone: &str) -> Typed {
    read(text, Kind::Length, unit(lone).unwrap()).unwrap()
}

/// What may have been meant, as it would be typed.
fn meant(text: &str, lone: &str) -> Option<Vec<String>> {
    let doubt = doubt_of_clearance(&typed(text, lone))?;
    Some(doubt.meant.iter().map(ToString::to_string).collect())
}

#[test]
fn figures_of_another_unit_are_asked_about() {
    for (text, lone, likely) in [
        ("0.0015", "thou", "0.0015 in"),
        ("0.0030", "thou", "0.0030 in"),
        ("0.038", "µm", "0.038 mm"),
        ("38", "mm", "38 µm"),
        ("1.5", "in", "1.5 thou"),
        // Spelt out is no proof: the unit key is one touch.
        ("0.0015 thou", "in", "0.0015 in"),
    ] {
        let meant = meant(text, lone).unwrap_or_default();
        assert!(
            meant.contains(&likely.to_owned()),
            "{text} {lone}: {meant:?}"
        );
    }
}

#[test]
fn ordinary_limits_are_not_asked_about() {
    for (text, lone) in [
        ("1", "thou"),
        ("0.75", "thou"),
        ("0.0015 in", "thou"),
        ("15", "tenths"),
        ("8 thou", "in"),
        ("38", "µm"),
        ("0.038 mm", "µm"),
        ("120", "µm"),
        ("0", "thou"),
        ("-1", "thou"),
    ] {
        assert_eq!(meant(text, lone), None, "{text} {lone}");
    }
}

#[test]
fn what_no_unit_explains_is_asked_about_all_the_same() {
    assert_eq!(meant("900", "in"), Some(Vec::new()));
    let doubt = doubt_of_clearance(&typed("900", "in")).unwrap();
    assert!(doubt.to_string().starts_with("900 in is larger"), "{doubt}");
    let doubt = doubt_of_clearance(&typed("0.0015", "thou")).unwrap();
    assert!(
        doubt.to_string().starts_with("0.0015 thou is smaller"),
        "{doubt}"
    );
}
