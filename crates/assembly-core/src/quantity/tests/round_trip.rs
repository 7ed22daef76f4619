//! Whatever can be typed comes back the same; whatever can't does no harm.

use proptest::prelude::*;

use super::*;
use crate::quantity::units::UNITS;

fn any_unit() -> impl Strategy<Value = &'static Unit> {
    (0..UNITS.len()).prop_map(|index| &UNITS[index])
}

/// A sign, a number in one of the ways people type it.
fn any_number() -> impl Strategy<Value = String> {
    let decimal = prop_oneof![
        "[0-9]{1,8}",
        "[0-9]{0,4}\\.[0-9]{1,7}",
        "[0-9]{0,4},[0-9]{1,2}",
        "0,[0-9]{1,7}",
        "[1-9][0-9]{0,2},[0-9]{3}\\.[0-9]{1,4}",
        "[1-9][0-9]{0,2}\\.[0-9]{3},[0-9]{1,4}",
        "[0-9]{1,3}(\\.[0-9]{1,4})?[eE][+-]?[0-9]{1,2}",
        "[0-9]{1,3}(\\.[0-9]{1,4})? ?[x×]10\\^-?[0-9]{1,2}",
        "[0-9]{25,30}",
    ];
    let fraction = prop_oneof![
        "[0-9]{1,4} ?/ ?[1-9][0-9]{0,2}",
        "[0-9]{1,4}[ -]([0-9]|1[0-5])/16",
        "[0-9]{1,4}[ -]?[½¼¾⅛⅜⅝⅞]",
    ];
    (
        prop_oneof![Just(""), Just("-"), Just("−"), Just("+"), Just("- ")],
        prop_oneof![3 => decimal, 2 => fraction],
    )
        .prop_map(|(sign, number)| format!("{sign}{number}"))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn what_is_typed_reads_back_equal(
        number in any_number(),
        unit in any_unit(),
        pick in any::<proptest::sample::Index>(),
        gap in prop_oneof![Just(""), Just(" "), Just("  ")],
        named in any::<bool>(),
    ) {
        let names: Vec<&str> = unit.names().chain([unit.symbol]).collect();
        let name = if named { names[pick.index(names.len())] } else { "" };
        // `5` and `1/K` need a blank between them.
        let gap = if name.starts_with('1') { " " } else { gap };
        let text = format!("{number}{gap}{name}");
        match read(&text, unit.kind, unit) {
            Ok(typed) => {
                prop_assert_eq!(typed.unit(), unit);
                prop_assert_eq!(typed.text(), text.as_str());
                prop_assert!(typed.si().is_finite() && typed.resolution() > 0.0);
                let tidy = typed.to_string();
                let again = read(&tidy, unit.kind, unit);
                prop_assert_eq!(again.as_ref(), Ok(&typed), "{} became {}", text, tidy);
                let again = again.unwrap();
                prop_assert_eq!(again.si().to_bits(), typed.si().to_bits());
                prop_assert_eq!(again.resolution().to_bits(), typed.resolution().to_bits());
                prop_assert_eq!(again.to_string(), tidy);
                let bare = read(&typed.number(), unit.kind, unit);
                prop_assert_eq!(bare.as_ref(), Ok(&typed));
            }
            // Only these can be wrong with a well-formed text.
            Err(error) => prop_assert!(
                matches!(
                    error,
                    ReadError::NotACount { .. } | ReadError::BelowAbsoluteZero { .. }
                ),
                "{}: {}", text, error
            ),
        }
    }

    #[test]
    fn no_text_panics(text in any::<String>(), unit in any_unit()) {
        if let Err(error) = read(&text, unit.kind, unit) {
            let _ = (error.to_string(), error.is_unfinished());
        }
    }

    #[test]
    fn no_text_of_the_signs_that_matter_panics(
        text in "[0-9.,/ eExX×^⁻²½⅞'\"°µ+\\-−·a-z:%]{0,70}",
        unit in any_unit(),
    ) {
        match read(&text, unit.kind, unit) {
            Ok(typed) => {
                prop_assert!(typed.si().is_finite());
                prop_assert_eq!(read(&typed.to_string(), unit.kind, unit), Ok(typed));
            }
            Err(error) => prop_assert!(!error.to_string().is_empty()),
        }
    }

    #[test]
    fn what_is_shown_reads_back_within_its_last_digit(
        size in -9.0..9.0_f64,
        leading in -9.99..9.99_f64,
        share in prop::option::of(1e-6..2.0_f64),
        unit in any_unit(),
    ) {
        let si = unit.step_to_si(leading * 10_f64.powf(size));
        let shown = show(si, share.map(|share| si.abs() * share), unit);
        let text = shown.number.clone();
        let Ok(typed) = read(&text, unit.kind, unit) else {
            prop_assert!(matches!(unit.kind, Kind::Temperature | Kind::Count), "{}", text);
            return Ok(());
        };
        let rounding = 1e-14 * (si.abs() + unit.to_si(0.0).abs());
        let step = match &shown.give_or_take {
            // A number rounded to tens or more still prints all its digits.
            Some(spread) => read(spread, unit.kind, unit).map_or(f64::INFINITY, |spread| {
                (spread.si() - unit.to_si(0.0)).max(spread.resolution())
            }),
            None => typed.resolution(),
        };
        prop_assert!((typed.si() - si).abs() <= 0.5001 * step + rounding, "{} {}", si, shown);
        prop_assert!(!text.contains('-'), "{}", text);
    }

    #[test]
    fn limits_are_only_ever_shown_inward(
        size in -7.0..2.0_f64,
        leading in -9.99..9.99_f64,
        unit in any_unit(),
    ) {
        let si = unit.step_to_si(leading * 10_f64.powf(size));
        let value = |shown: Shown| {
            let sign = if shown.number.contains('−') { -1.0 } else { 1.0 };
            sign * shown.number.trim_start_matches('−').parse::<f64>().unwrap()
        };
        let number = unit.from_si(si);
        let slack = 1e-11 * (number.abs() + unit.from_si(0.0).abs()) + 1e-30;
        prop_assert!(value(show_low_limit(si, unit)) >= number - slack);
        prop_assert!(value(show_high_limit(si, unit)) <= number + slack);
    }
}
