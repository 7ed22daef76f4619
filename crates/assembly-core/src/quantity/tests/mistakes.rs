//! Each mistake has its own error, and its sentence says what would be right.

use super::*;

/// The name of an error's variant.
fn variant(error: &ReadError) -> String {
    let text = format!("{error:?}");
    text.chars()
        .take_while(char::is_ascii_alphanumeric)
        .collect()
}

#[test]
fn every_mistake_is_named() {
    for (text, expected) in [
        ("", "Empty"),
        ("   ", "Empty"),
        ("-", "LoneSign"),
        ("+", "LoneSign"),
        ("−", "LoneSign"),
        ("1/0", "ZeroDenominator"),
        ("2 1/0", "ZeroDenominator"),
        ("2.44.8", "TwoPoints"),
        ("1.234.567", "TwoPoints"),
        ("..", "TwoPoints"),
        ("7 3/8/2", "FractionOfFraction"),
        ("3/8/2", "FractionOfFraction"),
        ("1/½", "FractionOfFraction"),
        ("½/2", "FractionOfFraction"),
        ("2.5/8", "DecimalInFraction"),
        ("2.5 7/8", "DecimalInFraction"),
        ("7/8.5", "DecimalInFraction"),
        ("2.5½", "DecimalInFraction"),
        ("1,234 5/8", "DecimalInFraction"),
        ("abc", "NotANumber"),
        ("in", "NotANumber"),
        ("--3", "NotANumber"),
        ("±3", "NotANumber"),
        ("/8", "NotANumber"),
        ("<b>2</b>", "NotANumber"),
        ("NaN", "NotFinite"),
        ("nan in", "NotFinite"),
        ("inf", "NotFinite"),
        ("-Infinity", "NotFinite"),
        ("∞", "NotFinite"),
        ("1e400", "TooLarge"),
        ("1e999999999999", "TooLarge"),
        ("0e400", "TooLarge"),
        ("1e-400", "TooSmall"),
        ("0e-400", "TooSmall"),
        ("1e-307", "TooSmall"),
        ("1234567890123456789012345678901", "TooManyDigits"),
        ("1234567890/16", "TooManyDigits"),
        ("1,234", "Ambiguous"),
        ("62,200 mm", "Ambiguous"),
        ("-1,234", "Ambiguous"),
        ("12,34,567", "Separators"),
        ("1,23.4", "Separators"),
        ("0,234.5", "Separators"),
        ("1.23,4", "Separators"),
        ("1,2.3,4", "Separators"),
        (",,", "Separators"),
        ("2.44 2.45", "TwoNumbers"),
        ("0.0015-0.0030", "TwoNumbers"),
        ("1 234", "TwoNumbers"),
        ("½5", "TwoNumbers"),
        ("½½", "TwoNumbers"),
        ("2 - 7/16", "TwoNumbers"),
        ("5 psi", "OtherKind"),
        ("5 N·m", "OtherKind"),
        ("2.4 tohu", "UnknownUnit"),
        ("2.4 M", "UnknownUnit"),
        ("2²", "UnknownUnit"),
        ("3 mil", "AmbiguousUnit"),
        ("2.4483 in tight", "AfterUnit"),
        ("5 ft 3 in", "AfterUnit"),
        ("5' 3\"", "AfterUnit"),
        ("2.", "OpenPoint"),
        ("2,", "OpenPoint"),
        (".", "OpenPoint"),
        ("1,234.", "OpenPoint"),
        ("2 7/", "OpenFraction"),
        ("7/", "OpenFraction"),
        ("2-", "OpenFraction"),
        ("2e", "OpenExponent"),
        ("2e-", "OpenExponent"),
        ("2 9/8", "ImproperAfterWhole"),
    ] {
        let error = length(text).expect_err(text);
        assert_eq!(variant(&error), expected, "{text}");
        let sentence = error.to_string();
        assert!(
            sentence.len() > 20 && !sentence.contains("NaN ("),
            "{sentence}"
        );
        if !text.trim().is_empty() {
            // What was read, or the part of it that is wrong, is quoted.
            let quoted = sentence.split(['“', '”']).nth(1).unwrap();
            assert!(text.contains(quoted), "{text}: {sentence}");
        }
    }
    for (text, kind, expected) in [
        ("-300 °C", Kind::Temperature, "BelowAbsoluteZero"),
        ("-460 °F", Kind::Temperature, "BelowAbsoluteZero"),
        ("90 deg", Kind::Temperature, "AmbiguousUnit"),
        ("90°", Kind::Temperature, "AmbiguousUnit"),
        ("60 lbs", Kind::Torque, "AmbiguousUnit"),
        ("9 kg", Kind::Torque, "AmbiguousUnit"),
        ("60 lb/in", Kind::Torque, "OtherKind"),
        ("45° 30'", Kind::Angle, "AfterUnit"),
        ("4.5", Kind::Count, "NotACount"),
        ("-4", Kind::Count, "NotACount"),
        ("1/2", Kind::Count, "NotACount"),
    ] {
        let error = of(text, kind).expect_err(text);
        assert_eq!(variant(&error), expected, "{text}");
    }
}

#[test]
fn an_ambiguous_comma_offers_both_readings_and_each_reads_clear() {
    for (text, decimal, thousands) in [
        ("1,234", "1.234 in", "1234 in"),
        ("62,200 mm", "62.200 mm", "62200 mm"),
        ("-1,234 thou", "−1.234 thou", "−1234 thou"),
    ] {
        let Err(ReadError::Ambiguous { readings, .. }) = length(text) else {
            panic!("{text}");
        };
        assert_eq!(readings.0.to_string(), decimal);
        assert_eq!(readings.1.to_string(), thousands);
        // The text that gets stored when one is picked asks no second time.
        for reading in [&readings.0, &readings.1] {
            assert_eq!(length(reading.text()).as_ref(), Ok(reading));
        }
    }
}

#[test]
fn a_near_miss_is_offered_what_it_may_mean() {
    for (text, kind, offered) in [
        ("2.1 tohu", Kind::Length, "thou"),
        ("2.1 thuo", Kind::Length, "thou"),
        ("2.1 thoou", Kind::Length, "thou"),
        ("2.1 tentsh", Kind::Length, "tenths"),
        ("5 M", Kind::Length, "m"),
        ("5 spi", Kind::Pressure, "psi"),
        ("5 mPa", Kind::Pressure, "MPa"),
        ("65 ft-lbz", Kind::Torque, "ft-lb"),
        ("65 Mn", Kind::Torque, "N·m"),
        ("2500 prm", Kind::RotationalSpeed, "rpm"),
    ] {
        let Err(ReadError::UnknownUnit { did_you_mean, .. }) = of(text, kind) else {
            panic!("{text}: {:?}", of(text, kind));
        };
        assert!(did_you_mean.contains(&offered), "{text}: {did_you_mean:?}");
    }
    let far = length("5 bananas").unwrap_err();
    assert!(matches!(far, ReadError::UnknownUnit { did_you_mean, .. } if did_you_mean.is_empty()));
}

#[test]
fn half_typed_text_is_unfinished_and_wrong_text_is_not() {
    for (whole, kind) in [
        ("2.4483 in", Kind::Length),
        ("-3 tenths", Kind::Length),
        ("2 7/16", Kind::Length),
        ("2-7/16\"", Kind::Length),
        ("2 9/16 in", Kind::Length),
        ("12 11/32", Kind::Length),
        (".0021", Kind::Length),
        ("62,20 mm", Kind::Length),
        ("1,234,567 µm", Kind::Length),
        ("2.1e-3 in", Kind::Length),
        ("2.1 thou", Kind::Length),
        ("65 ft-lb", Kind::Torque),
        ("88 N·m", Kind::Torque),
        ("9 kgf·m", Kind::Torque),
        ("780 in-lb", Kind::Torque),
        ("45 psi", Kind::Pressure),
        ("29.92 inHg", Kind::Pressure),
        ("200 °F", Kind::Temperature),
        ("20 deg C", Kind::Temperature),
        ("300 lbf/in", Kind::Stiffness),
        ("2500 rpm", Kind::RotationalSpeed),
        ("11.8 ppm/K", Kind::Expansion),
        ("12 mPa·s", Kind::DynamicViscosity),
    ] {
        for (end, _) in whole.char_indices().skip(1) {
            let part = &whole[..end];
            if let Err(error) = of(part, kind) {
                // A comma and three digits asks at once: the answer may be due.
                let asks = matches!(error, ReadError::Ambiguous { .. });
                assert!(error.is_unfinished() || asks, "{part}: {error}");
            }
        }
        assert!(of(whole, kind).is_ok(), "{whole}");
    }
    for text in [
        "2.44.8",
        "1/0",
        "7 3/8/2",
        "abc",
        "NaN",
        "1e400",
        "5 psi",
        "2.4 q",
        "2.4 in x",
        "2.44 2.45",
        "½5",
        "2 9/8 in",
        "1,23,4",
        "2.5/8",
        "<",
        "2. in",
        "2 7/ in",
    ] {
        let error = length(text).unwrap_err();
        if matches!(
            error,
            ReadError::OpenPoint { .. } | ReadError::OpenFraction { .. }
        ) {
            continue;
        }
        assert!(!error.is_unfinished(), "{text}: {error}");
    }
}

#[test]
fn ten_thousand_characters_are_refused_by_their_start() {
    for long in [
        "9".repeat(10_000),
        "2.4".repeat(3_334),
        "½".repeat(10_000),
        "é".repeat(10_000),
        format!("2.4483 in{}x", " ".repeat(10_000)),
        "2.4483 ".repeat(1_430),
        "</script>".repeat(1_112),
    ] {
        let error = length(&long).unwrap_err();
        assert!(matches!(error, ReadError::TooLong { .. }), "{error}");
        assert!(error.to_string().chars().count() < 160, "{error}");
    }
    // Blanks around a number are no mistake, however many.
    let padded = format!("{}2.4483{}", " ".repeat(5_000), " ".repeat(5_000));
    assert!(length(&padded).is_ok());
    assert!(length(&format!("0.{}1", "0".repeat(60))).is_ok());
}

#[test]
fn no_sentence_is_longer_than_a_person_reads() {
    for text in [
        "7 3/8/2",
        "5 psi",
        "1,234",
        "2.1 tohu",
        "12,34,5 in",
        "2 9/8",
    ] {
        let sentence = length(text).unwrap_err().to_string();
        assert!(sentence.chars().count() < 190, "{sentence}");
    }
}
