//! Every factor against a table made with exact fractions from the definitions.

use super::*;
use crate::quantity::units::UNITS;

/// text, kind, SI value as the nearest float, source; see `make_conversions.py`.
const TABLE: &str = include_str!("../check/conversions.csv");

fn rows() -> impl Iterator<Item = (&'static str, &'static str, f64)> {
    TABLE.lines().skip(1).map(|line| {
        let fields: Vec<&str> = line.split(',').collect();
        (fields[0], fields[1], fields[2].parse().unwrap())
    })
}

fn kind_of(name: &str) -> Kind {
    let found = UNITS.iter().find(|unit| format!("{:?}", unit.kind) == name);
    found.unwrap().kind
}

#[test]
fn every_text_gives_the_nearest_float() {
    let mut checked = 0;
    for (text, kind, si) in rows() {
        let typed = of(text, kind_of(kind)).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(typed.si(), si, "{text} ({kind})");
        checked += 1;
    }
    assert!(checked > 1000);
}

#[test]
fn every_unit_stands_in_the_table() {
    for unit in UNITS {
        let kind = format!("{:?}", unit.kind);
        let of_unit = rows()
            .filter(|(_, row, _)| *row == kind)
            .filter(|(text, _, _)| of(text, unit.kind).is_ok_and(|typed| typed.unit() == unit));
        assert!(of_unit.count() >= 3, "{unit:?}");
    }
}

#[test]
fn each_kind_has_its_si_unit_with_the_factor_one() {
    for unit in UNITS {
        let si = unit_of(unit.kind, unit.kind.si_symbol());
        let si = si.unwrap_or_else(|| panic!("{:?} has no SI unit", unit.kind));
        assert_eq!((si.to_si(2.5), si.from_si(2.5)), (2.5, 2.5), "{si:?}");
    }
}

#[test]
fn factors_are_whole_numbers_that_a_float_holds() {
    for unit in UNITS {
        for whole in [unit.factor.numerator, unit.factor.denominator] {
            assert!(
                whole > 0 && whole as f64 as u64 == whole,
                "{unit:?} {whole}"
            );
            assert!(u128::from(whole) < 1 << 54);
        }
    }
}

#[test]
fn floats_convert_as_typed_numbers_do() {
    for unit in UNITS {
        for (number, text) in [(2.4483, "2.4483"), (65.0, "65"), (0.001, "0.001")] {
            let si = unit.to_si(number);
            if unit.kind != Kind::Count {
                let typed = read(text, unit.kind, unit).unwrap().si();
                assert!((si / typed - 1.0).abs() < 4e-16, "{unit:?}");
            }
            assert!((unit.from_si(si) - number).abs() < 1e-12, "{unit:?}");
            let step = unit.step_from_si(unit.step_to_si(number));
            assert!((step / number - 1.0).abs() < 4e-16, "{unit:?}");
        }
    }
    assert!(unit("psi").unwrap().to_si(1e300).is_finite());
    assert!(unit("ft-lb").unwrap().to_si(1e299).is_finite());
}
