//! What is typed at a bench, and what must come of it.

use super::*;

fn length(text: &str) -> Result<Typed, ReadError> {
    read(text, Kind::Length, unit("in").unwrap())
}

#[test]
fn lengths_are_read_as_people_type_them() {
    for (text, millimetres, step) in [
        ("2.4483", 62.18682, 0.00254),
        ("2.4483 in", 62.18682, 0.00254),
        ("2.4480in.", 62.1792, 0.00254),
        ("2.448", 62.1792, 0.0254),
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
        ("62.20 mm", 62.2, 0.01),
        ("62,20mm", 62.2, 0.01),
        ("62,200 mm", f64::NAN, 0.0),
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
        ("1 ft", 304.8, 304.8),
        ("1'", 304.8, 304.8),
        ("6.22e1 MM", 62.2, 0.1),
        ("2.1×10⁻³ in", 0.05334, 0.00254),
        ("2.1 x 10^-3", 0.05334, 0.00254),
        ("1,234.5 mm", 1234.5, 0.1),
        ("1.234,5 mm", 1234.5, 0.1),
        ("1,234,567 µm", 1234.567, 0.001),
        ("0,234 mm", 0.234, 0.001),
        ("1,2345 mm", 1.2345, 0.0001),
        ("1234,567 mm", 1234.567, 0.001),
        ("0.5 m", 500.0, 100.0),
    ] {
        let read = length(text);
        if millimetres.is_nan() {
            assert!(matches!(read, Err(ReadError::Ambiguous { .. })), "{text}");
            continue;
        }
        let typed = read.unwrap_or_else(|error| panic!("{text}: {error}"));
        let close = |a: f64, b: f64| (a - b).abs() <= b.abs() * 2e-16;
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
        assert_eq!(length(&typed.to_string()), Ok(typed));
    }
}
