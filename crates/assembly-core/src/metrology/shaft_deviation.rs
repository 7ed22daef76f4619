//! The fundamental deviation of a shaft (ISO 286-1:2010, 4.3.2.5 and tables 4
//! and 5, from memory).

use super::shaft_table::tabled;
use super::size_step::NominalSize;
use super::standard_tolerance::{Grade, Micrometres};
use super::tolerance_class::{FundamentalDeviation, Letter};

/// `j` for IT5 and IT6, and for IT7: micrometres below nominal for each step.
const J_FINE: [i16; 13] = [2, 2, 2, 3, 4, 5, 7, 9, 11, 13, 16, 18, 20];
const J_SEVEN: [i16; 13] = [4, 4, 5, 6, 8, 10, 12, 15, 18, 21, 26, 28, 32];

/// Where the tolerance of a shaft begins; `None` where the standard has no value.
pub(super) fn shaft_deviations(
    letter: Letter,
    grade: Grade,
    size: NominalSize,
) -> Option<FundamentalDeviation> {
    match letter {
        Letter::A | Letter::B if size.up_to(1) => None,
        Letter::Js => Some(FundamentalDeviation::Either),
        Letter::J => j(grade, size).map(|value| lower(-value)),
        Letter::K if !(4..=7).contains(&grade.number()) => Some(lower(0)),
        letter if letter <= Letter::H => {
            tabled(letter, size).map(|value| FundamentalDeviation::Upper(micrometres(-value)))
        }
        letter => tabled(letter, size).map(lower),
    }
}

fn j(grade: Grade, size: NominalSize) -> Option<i16> {
    match grade.number() {
        5 | 6 => J_FINE.get(size.step()).copied(),
        7 => J_SEVEN.get(size.step()).copied(),
        8 if size.up_to(3) => Some(6),
        _ => None,
    }
}

fn lower(value: i16) -> FundamentalDeviation {
    FundamentalDeviation::Lower(micrometres(value))
}

pub(super) fn micrometres(value: i16) -> Micrometres {
    Micrometres(f64::from(value))
}

#[cfg(test)]
mod tests {
    use crate::metrology::NominalSize;
    use crate::metrology::standard_tolerance::Micrometres;
    use crate::metrology::tolerance_class::ToleranceClass;
    use crate::quantity::Si;
    use uom::si::f64::Length;

    fn limits(class: &str, size: f64) -> (f64, f64) {
        let size = NominalSize::new(Length::from_si(size * 1e-3)).unwrap();
        let limits = ToleranceClass::read(class).unwrap().limits(size).unwrap();
        let (Micrometres(lower), Micrometres(upper)) = (limits.lower, limits.upper);
        (lower, upper)
    }

    // ISO 286-2, tables of limit deviations for shafts, from memory.
    #[test]
    fn well_known_shafts_come_out() {
        assert_eq!(limits("k6", 25.0), (2.0, 15.0));
        assert_eq!(limits("k8", 25.0), (0.0, 33.0));
        assert_eq!(limits("j6", 25.0), (-4.0, 9.0));
        assert_eq!(limits("j7", 60.0), (-12.0, 18.0));
        assert_eq!(limits("js6", 25.0), (-6.5, 6.5));
        assert_eq!(limits("d9", 40.0), (-142.0, -80.0));
        assert_eq!(limits("x6", 100.0), (178.0, 200.0));
        assert_eq!(limits("a11", 45.0), (-480.0, -320.0));
        assert_eq!(limits("m5", 500.0), (23.0, 50.0));
    }

    #[test]
    fn what_the_standard_leaves_out_is_refused() {
        let small = NominalSize::new(Length::from_si(0.0005)).unwrap();
        let medium = NominalSize::new(Length::from_si(0.020)).unwrap();
        for (class, size) in [
            ("a11", small),
            ("t6", medium),
            ("y7", small),
            ("j8", medium),
        ] {
            let error = ToleranceClass::read(class)
                .unwrap()
                .limits(size)
                .unwrap_err();
            assert!(error.to_string().contains(class), "{error}");
        }
    }
}
