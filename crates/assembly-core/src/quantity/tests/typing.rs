//! What is typed at a bench, and what must come of it.

use super::*;

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= b.abs() * 2.3e-16
}

#[test]
fn lengths_are_read_as_people_type_them() {
    for (text, millimetres, step) in [
        ("2.4483", 62.18682, 0.00254),
        ("  2.4483  ", 62.18682, 0.00254),
        ("2.4483 in", 62.18682, 0.00254),
        ("2.4480in.", 62.1792, 0.00254),
        ("2.448", 62.1792, 0.0254),
        ("002.448", 62.1792, 0.0254),
        ("2 7/16", 61.9125, 1.5875),
        ("2-7/16\"", 61.9125, 1.5875),
        ("2 7 / 16 in", 61.9125, 1.5875),
        ("2–7⁄16″", 61.9125, 1.5875),
        ("39/16", 61.9125, 1.5875),
        ("9/8", 28.575, 3.175),
        ("7/8", 22.225, 3.175),
        ("2½", 63.5, 12.7),
        ("2 ½ in", 63.5, 12.7),
        ("2-½\"", 63.5, 12.7),
        ("⅞", 22.225, 3.175),
        ("-1/8", -3.175, 3.175),
        ("-2 1/8", -53.975, 3.175),
        ("62.20 mm", 62.2, 0.01),
        ("62,20mm", 62.2, 0.01),
        ("53 µm", 0.053, 0.001),
        ("53 μm", 0.053, 0.001),
        ("53um", 0.053, 0.001),
        ("53 microns", 0.053, 0.001),
        ("2.1 thou", 0.05334, 0.00254),
        ("2.1 Thous", 0.05334, 0.00254),
        ("-3 tenths", -0.00762, 0.00254),
        ("−3 tenths", -0.00762, 0.00254),
        ("- 3 tenth", -0.00762, 0.00254),
        ("+3 tenths", 0.00762, 0.00254),
        ("3 hundredths", 0.03, 0.01),
        ("0.0021\"", 0.05334, 0.00254),
        (".0021", 0.05334, 0.00254),
        (",0021", 0.05334, 0.00254),
        ("8 3/8 in", 212.725, 3.175),
        ("8\u{a0}3/8\u{202f}in", 212.725, 3.175),
        ("1 ft", 304.8, 304.8),
        ("1'", 304.8, 304.8),
        ("6.22e1 MM", 62.2, 0.1),
        ("2.1e-3in", 0.05334, 0.00254),
        ("2.1×10⁻³ in", 0.05334, 0.00254),
        ("2.1 x 10^-3", 0.05334, 0.00254),
        ("1,234.5 mm", 1234.5, 0.1),
        ("1.234,5 mm", 1234.5, 0.1),
        ("1.234.567,8 µm", 1234.5678, 0.0001),
        ("1,234,567 µm", 1234.567, 0.001),
        ("0,234 mm", 0.234, 0.001),
        ("1,2345 mm", 1.2345, 0.0001),
        ("1234,567 mm", 1234.567, 0.001),
        ("0.5 m", 500.0, 100.0),
    ] {
        let typed = length(text).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert!(
            close(typed.si(), millimetres / 1000.0),
            "{text}: {}",
            typed.si()
        );
        assert!(
            close(typed.resolution(), step / 1000.0),
            "{text}: {}",
            typed.resolution()
        );
        assert_eq!(typed.text(), text);
        assert_eq!(length(&typed.to_string()), Ok(typed), "{text}");
    }
}

#[test]
fn the_other_quantities_are_read_too() {
    let pi = std::f64::consts::PI;
    for (text, kind, si) in [
        ("68 °F", Kind::Temperature, 293.15),
        ("20", Kind::Temperature, 293.15),
        ("-40 F", Kind::Temperature, 233.15),
        ("18 °F", Kind::TemperatureDifference, 10.0),
        ("65 ft-lb", Kind::Torque, 88.128_166_641_541_03),
        ("65 lbf·ft", Kind::Torque, 88.128_166_641_541_03),
        ("780 in-lb", Kind::Torque, 88.128_166_641_541_03),
        ("9 kgf·m", Kind::Torque, 88.259_85),
        ("2 bar", Kind::Pressure, 200_000.0),
        ("90°", Kind::Angle, pi / 2.0),
        ("¼ turn", Kind::Angle, pi / 2.0),
        ("1,330 N", Kind::Force, f64::NAN),
        ("1330 N", Kind::Force, 1330.0),
        ("64.2 cc", Kind::Volume, 64.2e-6),
        ("3 l", Kind::Volume, 0.003),
        ("612.5 g", Kind::Mass, 0.6125),
        ("3000 rpm", Kind::RotationalSpeed, 100.0 * pi),
        ("85 %", Kind::Ratio, 0.85),
        ("0.85", Kind::Ratio, 0.85),
        ("4", Kind::Count, 4.0),
    ] {
        match of(text, kind) {
            Ok(typed) => assert!(close(typed.si(), si), "{text}: {}", typed.si()),
            Err(error) => assert!(si.is_nan(), "{text}: {error}"),
        }
    }
}

#[test]
fn trailing_zeros_say_how_finely_it_was_read() {
    let (fine, coarse) = (length("2.4480").unwrap(), length("2.448").unwrap());
    assert_eq!(fine.si(), coarse.si());
    assert_ne!(fine, coarse);
    assert!(close(coarse.resolution(), 10.0 * fine.resolution()));
    assert_eq!(fine.to_string(), "2.4480 in");
    assert_eq!(length("2500e-3").unwrap().to_string(), "2.500 in");
    assert_eq!(length("25e2").unwrap().to_string(), "25e2 in");
    assert!(close(length("25e2").unwrap().resolution(), 2.54));
}

#[test]
fn a_lone_number_takes_the_fields_unit_and_says_so() {
    let millimetre = unit("mm").unwrap();
    let lone = read("62.20", Kind::Length, millimetre).unwrap();
    assert_eq!((lone.unit(), lone.unit_was_typed()), (millimetre, false));
    let inches = read("2.4483 in", Kind::Length, millimetre).unwrap();
    assert_eq!(
        (inches.unit().symbol, inches.unit_was_typed()),
        ("in", true)
    );
}

#[test]
fn there_is_no_minus_zero() {
    for text in ["-0", "-0.000", "−0/8", "-0 0/8"] {
        let zero = length(text).unwrap();
        assert!(zero.si().is_sign_positive(), "{text}");
        assert!(!zero.to_string().contains('−'), "{text}");
    }
}

#[test]
fn a_whole_number_with_a_fraction_of_one_or_more_is_questioned() {
    assert!(matches!(
        length("2 9/8"),
        Err(ReadError::ImproperAfterWhole { improper, .. }) if improper == "25/8"
    ));
    assert!(matches!(
        length("2 8/8"),
        Err(ReadError::ImproperAfterWhole { .. })
    ));
    assert!(length("9/8").is_ok() && length("8/8").is_ok());
}
