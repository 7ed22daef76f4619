//! The fundamental deviation of a hole (ISO 286-1:2010, 4.3.2.5 and tables 2
//! and 3, from memory).
//!
//! A to H mirror the shaft. K to ZC mirror it too, and in the finer grades are
//! moved by Δ, the width of the grade less that of the next finer one, so that
//! a hole of one grade with a shaft h of the next finer one fits like the
//! hole H with the shaft of the same letter.

use super::shaft_deviation::micrometres;
use super::shaft_table::tabled;
use super::size_step::NominalSize;
use super::standard_tolerance::{Grade, Micrometres, width_at};
use super::tolerance_class::{FundamentalDeviation, Letter};

/// `J`: micrometres above nominal for each step, for IT6, IT7 and IT8.
const J_SIX: [i16; 13] = [2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33];
const J_SEVEN: [i16; 13] = [4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43];
const J_EIGHT: [i16; 13] = [6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66];

/// Where the tolerance of a hole begins; `None` where the standard has no value.
pub(super) fn hole_deviations(
    letter: Letter,
    grade: Grade,
    size: NominalSize,
) -> Option<FundamentalDeviation> {
    let fine_to = match letter {
        Letter::A | Letter::B if size.up_to(1) => return None,
        Letter::Js => return Some(FundamentalDeviation::Either),
        Letter::J => {
            return j(grade, size).map(|value| FundamentalDeviation::Upper(micrometres(value)));
        }
        letter if letter <= Letter::H => {
            return tabled(letter, size)
                .map(|value| FundamentalDeviation::Lower(micrometres(value)));
        }
        Letter::K | Letter::M | Letter::N => 8,
        _ => 7,
    };
    let mirrored = -f64::from(tabled(letter, size)?);
    let upper = if grade.number() <= fine_to {
        // The one value that the standard sets by hand: M6 over 250 up to 315 mm.
        if letter == Letter::M && grade.number() == 6 && !size.up_to(250) && size.up_to(315) {
            -9.0
        } else {
            mirrored + delta(grade, size)?
        }
    } else {
        coarse(letter, size, mirrored)?
    };
    Some(FundamentalDeviation::Upper(Micrometres(upper)))
}

/// The grades that are not moved by Δ.
fn coarse(letter: Letter, size: NominalSize, mirrored: f64) -> Option<f64> {
    match letter {
        Letter::K if !size.up_to(3) => None,
        Letter::N if size.up_to(1) => None,
        Letter::N if !size.up_to(3) => Some(0.0),
        _ => Some(mirrored),
    }
}

/// Δ. It is nothing up to 3 mm, and given from IT3 on.
fn delta(grade: Grade, size: NominalSize) -> Option<f64> {
    if size.up_to(3) {
        return Some(0.0);
    }
    if grade.number() < 3 {
        return None;
    }
    let Micrometres(width) = width_at(grade, size).ok()?;
    let Micrometres(finer) = width_at(Grade::new(grade.number() - 1)?, size).ok()?;
    Some(width - finer)
}

fn j(grade: Grade, size: NominalSize) -> Option<i16> {
    let row = match grade.number() {
        6 => &J_SIX,
        7 => &J_SEVEN,
        8 => &J_EIGHT,
        _ => return None,
    };
    row.get(size.step()).copied()
}

#[cfg(test)]
mod tests {
    use crate::metrology::NominalSize;
    use crate::metrology::standard_tolerance::Micrometres;
    use crate::metrology::tolerance_class::ToleranceClass;
    use crate::quantity::Si;
    use uom::si::f64::Length;

    fn at(class: &str, size: f64) -> Option<(f64, f64)> {
        let size = NominalSize::new(Length::from_si(size * 1e-3)).unwrap();
        let limits = ToleranceClass::read(class).unwrap().limits(size).ok()?;
        let (Micrometres(lower), Micrometres(upper)) = (limits.lower, limits.upper);
        Some((lower, upper))
    }

    // ISO 286-2, tables of limit deviations for holes, from memory.
    #[test]
    fn well_known_holes_come_out() {
        assert_eq!(at("H7", 25.0), Some((0.0, 21.0)));
        assert_eq!(at("F8", 40.0), Some((25.0, 64.0)));
        assert_eq!(at("JS7", 25.0), Some((-10.5, 10.5)));
        assert_eq!(at("J7", 25.0), Some((-9.0, 12.0)));
        assert_eq!(at("K7", 25.0), Some((-15.0, 6.0)));
        assert_eq!(at("K8", 25.0), Some((-23.0, 10.0)));
        assert_eq!(at("M7", 25.0), Some((-21.0, 0.0)));
        assert_eq!(at("N7", 25.0), Some((-28.0, -7.0)));
        assert_eq!(at("N9", 25.0), Some((-52.0, 0.0)));
        assert_eq!(at("N9", 3.0), Some((-29.0, -4.0)));
        assert_eq!(at("P7", 25.0), Some((-35.0, -14.0)));
        assert_eq!(at("P9", 25.0), Some((-74.0, -22.0)));
        assert_eq!(at("R7", 60.0), Some((-60.0, -30.0)));
        assert_eq!(at("S7", 25.0), Some((-48.0, -27.0)));
        assert_eq!(at("S7", 2.0), Some((-24.0, -14.0)));
        assert_eq!(at("N6", 10.0), Some((-16.0, -7.0)));
        assert_eq!(at("M6", 300.0), Some((-41.0, -9.0)));
        assert_eq!(at("K9", 25.0), None);
        assert_eq!(at("P2", 25.0), None);
    }

    /// What Δ is for: H7/p6 and P7/h6 are the same fit.
    #[test]
    fn a_fit_turned_round_stays_the_same_fit() {
        for size in [
            4.0, 8.0, 16.0, 25.0, 45.0, 60.0, 75.0, 100.0, 150.0, 240.0, 400.0, 500.0,
        ] {
            for letter in ["p", "r", "s", "u", "x", "zc"] {
                let hole_basis = (
                    at("H7", size).unwrap(),
                    at(&format!("{letter}6"), size).unwrap(),
                );
                let capital = letter.to_uppercase();
                let shaft_basis = (
                    at(&format!("{capital}7"), size).unwrap(),
                    at("h6", size).unwrap(),
                );
                let clearances =
                    |(hole, shaft): ((f64, f64), (f64, f64))| (hole.0 - shaft.1, hole.1 - shaft.0);
                assert_eq!(
                    clearances(hole_basis),
                    clearances(shaft_basis),
                    "{letter} {size}"
                );
            }
        }
    }
}
