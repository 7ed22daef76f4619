//! Results with the digits that make sense.

use super::*;

fn shown(number: f64, give_or_take: f64, symbol: &str) -> String {
    let unit = unit(symbol).unwrap();
    let spread = (give_or_take != 0.0).then(|| unit.step_to_si(give_or_take));
    show(unit.to_si(number), spread, unit).to_string()
}

#[test]
fn a_give_or_take_has_one_digit_or_two_when_it_begins_with_one() {
    for (number, give_or_take, symbol, expected) in [
        (2.4483, 0.000_2, "in", "2.4483 ± 0.0002 in"),
        (2.4483, 0.000_18, "in", "2.44830 ± 0.00018 in"),
        (2.1, 0.18, "thou", "2.10 ± 0.18 thou"),
        (2.1, 0.194, "thou", "2.10 ± 0.19 thou"),
        (2.1, 0.196, "thou", "2.1 ± 0.2 thou"),
        (2.1, 0.25, "thou", "2.1 ± 0.2 thou"),
        (2.1, 0.96, "thou", "2.1 ± 1.0 thou"),
        (2.1, 0.5, "thou", "2.1 ± 0.5 thou"),
        (53.4, 4.6, "µm", "53 ± 5 µm"),
        (-0.4, 4.6, "µm", "0 ± 5 µm"),
        (-53.4, 4.6, "µm", "−53 ± 5 µm"),
        (2513.0, 40.0, "rpm", "2510 ± 40 rpm"),
        (2513.0, 120.0, "rpm", "2510 ± 120 rpm"),
        (2563.0, 400.0, "rpm", "2600 ± 400 rpm"),
        (68.0, 4.0, "°F", "68 ± 4 °F"),
        (90.0, 2.0, "deg", "90 ± 2°"),
        (0.85, 0.02, "", "0.85 ± 0.02"),
    ] {
        assert_eq!(shown(number, give_or_take, symbol), expected);
    }
}

#[test]
fn without_a_give_or_take_the_unit_says_how_many_digits() {
    for (number, symbol, expected) in [
        (2.4483, "in", "2.4483 in"),
        (0.00215, "in", "0.00215 in"),
        (62.2, "mm", "62.200 mm"),
        (2.1, "thou", "2.1 thou"),
        (21.0, "tenths", "21 tenths"),
        (53.0, "µm", "53 µm"),
        (45.0, "psi", "45.0 psi"),
        (250.0, "psi", "250 psi"),
        (65.0, "ft-lb", "65.0 ft-lb"),
        (90.0, "deg", "90.0°"),
        (68.0, "°F", "68 °F"),
        (20.0, "°C", "20.0 °C"),
        (2500.0, "rpm", "2500 rpm"),
        (0.000_011_8, "1/K", "0.0000118 1/K"),
        (10.5, "", "10.50"),
        (85.0, "%", "85.0 %"),
    ] {
        assert_eq!(shown(number, 0.0, symbol), expected);
    }
}

#[test]
fn zero_has_no_sign_and_what_is_no_number_says_so() {
    let inch = unit("in").unwrap();
    for nothing in [0.0, -0.0, -1e-18, 1e-18] {
        assert_eq!(show(nothing, None, inch).number, "0.00000");
        assert_eq!(
            show(nothing, Some(2.54e-6), inch).to_string(),
            "0.00000 ± 0.00010 in"
        );
    }
    for wrong in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(show(wrong, None, inch).number, "no number");
        assert_eq!(show_low_limit(wrong, inch).number, "no number");
        assert_eq!(show(0.0254, Some(wrong), inch).to_string(), "1.0000 in");
    }
    for large in [1e15, 1e300, f64::MAX, f64::MIN_POSITIVE, 5e-324] {
        assert!(show(large, None, inch).number.len() < 30);
        assert!(show(large, Some(large / 3.0), inch).number.len() < 60);
        assert!(show_high_limit(-large, inch).number.len() < 60);
    }
}

#[test]
fn limits_convert_inward() {
    let (inch, millimetre) = (unit("in").unwrap(), unit("mm").unwrap());
    let low = |text: &str, to| show_low_limit(length(text).unwrap().si(), to).number;
    let high = |text: &str, to| show_high_limit(length(text).unwrap().si(), to).number;
    // 0.025 mm is 0.000 984 25… in; 0.076 mm is 0.002 992 1… in.
    assert_eq!(low("0.025 mm", inch), "0.00099");
    assert_eq!(high("0.076 mm", inch), "0.00299");
    // 0.0015 in is 0.0381 mm, exactly.
    assert_eq!(low("0.0015", millimetre), "0.0381");
    assert_eq!(high("0.0015", millimetre), "0.0381");
    assert_eq!(low("2.4481", millimetre), "62.1818");
    assert_eq!(high("2.4481", millimetre), "62.1817");
    assert_eq!(low("-0.025 mm", inch), "−0.00098");
    assert_eq!(high("-0.025 mm", inch), "−0.00099");
    // What was typed in the unit itself stays as it was.
    for text in ["0.0015", "2.4481", "0.00125", "2.44805", "-0.003"] {
        let same = text.replace('-', "−");
        let shown = low(text, inch);
        assert!(shown.starts_with(&same), "{text}: {shown}");
        assert_eq!(shown, high(text, inch));
    }
}
