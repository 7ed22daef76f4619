//! Units by all the names people type.

use super::*;
use crate::quantity::unit::plain;
use crate::quantity::units::UNITS;

#[test]
fn a_unit_is_found_by_its_symbol_and_every_name() {
    for unit in UNITS {
        assert_eq!(unit_of(unit.kind, unit.symbol), Some(unit), "{unit:?}");
        for name in unit.names() {
            assert_eq!(unit_of(unit.kind, name), Some(unit), "{name}");
            assert_eq!(plain(name), name, "{name} is not in plain form");
        }
    }
}

#[test]
fn no_two_units_of_a_kind_share_a_name() {
    for (index, unit) in UNITS.iter().enumerate() {
        for other in UNITS[index + 1..]
            .iter()
            .filter(|other| other.kind == unit.kind)
        {
            assert_ne!(unit.symbol, other.symbol);
            for name in unit.names() {
                let shared = other
                    .names()
                    .any(|theirs| theirs.eq_ignore_ascii_case(name));
                assert!(!shared, "{name} is {unit:?} and {other:?}");
            }
        }
    }
}

#[test]
fn units_are_found_as_people_write_them() {
    for (symbol, names) in [
        ("in", "in in. IN inch inches \" ″ ” ''"),
        ("mm", "mm MM mm. millimetres Millimeter"),
        ("thou", "thou Thou thous thousandths"),
        ("tenths", "tenth tenths ten-thousandths"),
        ("µm", "µm μm um micron microns"),
        ("ft", "ft ft. feet ' ′ ’"),
        (
            "ft-lb",
            "ft-lb ft·lb ft.lb ftlb ft-lbs lb-ft lbf·ft lbf-ft lbs-ft FT-LBS foot-pounds ft/lb",
        ),
        ("in-lb", "in-lb in·lb in-lbs lb-in lbf·in inch-pounds"),
        ("N·m", "N·m Nm N.m. N-m N⋅m nm"),
        ("kgf·m", "kgf·m kgfm kg·m kg-m mkg mkp"),
        ("kgf·cm", "kgf·cm kg-cm kgcm"),
        ("psi", "psi PSI lb/in² lbf/in^2 lbs/in2"),
        ("bar", "bar bars Bar"),
        ("MPa", "MPa mpa N/mm²"),
        ("kgf/cm²", "kgf/cm² kg/cm2 kp/cm²"),
        ("inHg", "inHg in.Hg in-Hg INHG"),
        ("°F", "°F F f degF ℉ ºF"),
        ("°C", "°C C c degC ℃ ˚C celsius"),
        ("°", "° deg degs degrees"),
        ("rpm", "rpm RPM r/min rev/min min⁻¹ 1/min"),
        ("cc", "cc ccm cm³ cm^3 cm3"),
        ("L", "L l litre liters"),
        ("in³", "in³ in^3 cu.in. cid ci"),
        ("in²", "in² in^2 sq.in."),
        ("lbf/in", "lbf/in lb/in lbs/in lb/inch"),
        ("cSt", "cSt cst"),
        ("mPa·s", "mPa·s mPas"),
        ("g/cm³", "g/cm³ g/cc g/mL"),
        ("ppm/K", "ppm/K ppm/°C µm/m·K µm/(m·K)"),
        ("1/K", "1/K /K K⁻¹"),
        ("%", "% percent"),
    ] {
        let expected = unit(symbol).unwrap();
        assert_eq!(expected.symbol, symbol);
        for name in names.split(' ') {
            let typed = of(&format!("1 {name}"), expected.kind);
            let typed = typed.unwrap_or_else(|error| panic!("{name}: {error}"));
            assert_eq!(typed.unit(), expected, "{name}");
            if name.starts_with(|first: char| first.is_ascii_digit()) {
                continue;
            }
            let close_by = of(&format!("3{name}"), expected.kind).unwrap();
            assert_eq!(close_by.unit(), expected, "3{name}");
        }
    }
    for (text, symbol, kind) in [
        ("1 sq in", "in²", Kind::Area),
        ("1 cubic inches", "in³", Kind::Volume),
        ("60 foot pounds", "ft-lb", Kind::Torque),
        ("60 lbs ft", "ft-lb", Kind::Torque),
        ("300 lbs per inch", "lbf/in", Kind::Stiffness),
        ("3 ten thousandths", "tenths", Kind::Length),
        ("2 thousandths of an inch", "thou", Kind::Length),
        ("90 deg C", "°C", Kind::Temperature),
        ("300 lb", "lbf", Kind::Force),
        ("300 lb", "lb", Kind::Mass),
        ("10.5:1", "", Kind::Ratio),
        ("11.8e-6/K", "1/K", Kind::Expansion),
        ("11.8×10⁻⁶ /K", "1/K", Kind::Expansion),
        ("1/2 turn", "turns", Kind::Angle),
        ("½turn", "turns", Kind::Angle),
        ("5 US qt", "US qt", Kind::Volume),
    ] {
        let typed = of(text, kind).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(typed.unit().symbol, symbol, "{text}");
        assert_eq!(typed.unit().kind, kind);
    }
}

#[test]
fn a_capital_changes_no_prefix() {
    assert!(unit("M").is_none());
    assert!(of("5 mPa", Kind::Pressure).is_err());
    assert!(of("5 MPa·s", Kind::DynamicViscosity).is_err());
}

#[test]
fn the_units_that_calculations_are_asked_in_exist() {
    for calculation in crate::describe::CALCULATIONS {
        let inputs = calculation
            .inputs
            .iter()
            .map(|one| (one.id, one.kind, one.units));
        let outputs = calculation
            .outputs
            .iter()
            .map(|one| (one.id, one.kind, one.units));
        for (id, kind, units) in inputs.chain(outputs) {
            for symbol in [units.inch, units.metric] {
                assert!(
                    unit_of(kind, symbol).is_some(),
                    "{} {id}: {symbol} is no unit of {kind}",
                    calculation.id
                );
            }
        }
    }
}
