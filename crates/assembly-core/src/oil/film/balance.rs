//! From what a bearing carries to how far off the middle its journal runs.
//!
//! The eccentricity is taken as the unknown, not the viscosity: at each one the
//! film is known without any iterating, and with it the load that it carries and
//! the heat that it makes. So load and heat are balanced in one search. It runs
//! on the coarsest net, set right by the fine nets where it ends.

use std::cell::RefCell;

use super::field::Figures;
use super::grid::Boundary;
use super::long::long_bearing;
use super::solution::{
    COARSE_IS_OFF, ECCENTRICITIES, Film, FilmError, PROPORTIONS, Warm, check, film, of_nets,
};

/// Searching on stops when the film carries the load as near as this.
const NEAR_ENOUGH: f64 = 3e-4;

/// A scale on which the logarithm of Sommerfeld's number is nearly a straight line.
pub(super) fn straightened(eccentricity: f64) -> f64 {
    libm::log(eccentricity) - 2.0 * libm::log(1.0 - eccentricity)
}

/// Back from that scale.
pub(super) fn from_straightened(scale: f64) -> f64 {
    // e/(1−e)² = x is a quadratic with one root below 1.
    let x = libm::exp(scale);
    let e = 2.0 * x / (2.0 * x + 1.0 + (4.0 * x + 1.0).sqrt());
    e.clamp(ECCENTRICITIES.0, ECCENTRICITIES.1)
}

/// How fine to look.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Care {
    /// To half a per cent.
    Fine,
    /// Some per cent off: for slopes.
    Rough,
}

/// The film in which load and everything else agree. `available` tells the
/// logarithm of the Sommerfeld number at which a film of these figures and this
/// eccentricity would run.
///
/// # Errors
/// [`FilmError::TooMuchLoad`] when even the thinnest film does not carry it, and
/// those of [`film`].
pub fn balance(
    length_over_diameter: f64,
    care: Care,
    available: impl Fn(f64, &Figures) -> f64,
) -> Result<Film, FilmError> {
    check(length_over_diameter, ECCENTRICITIES.0)?;
    let mut ratio = Figures {
        sommerfeld: libm::exp(COARSE_IS_OFF),
        friction: libm::exp(COARSE_IS_OFF),
        ..Figures::ONES
    };
    let warm = RefCell::new(Warm::default());
    let coarse_at = |e: f64| rough_of(&warm, length_over_diameter, e);
    let found = |ratio: &Figures| {
        search(|e| {
            let figures = coarse_at(e).combined(ratio, |a, b| a * b);
            libm::log(figures.sommerfeld) - available(e, &figures)
        })
    };
    let eccentricity = found(&ratio)?;
    if care == Care::Rough {
        return Ok(Film {
            length_over_diameter,
            eccentricity,
            figures: coarse_at(eccentricity).combined(&ratio, |a, b| a * b),
            convergence: f64::INFINITY,
        });
    }
    if length_over_diameter > PROPORTIONS.1 {
        // The endless bearing is exact at once.
        let exact = Figures::ONES;
        return film(length_over_diameter, found(&exact)?, Boundary::FedAtWidest);
    }
    // Set right by the middle net, and looked for again there.
    let (coarse, _, carried) = warm
        .borrow_mut()
        .middling(length_over_diameter, eccentricity);
    ratio = carried.over(&coarse);
    let eccentricity = found(&ratio)?;
    // Once on the fine net; what is then still lacking is less than a per cent and
    // the coarse net knows how everything changes over so little.
    let (coarse, middle, _) = warm
        .borrow_mut()
        .middling(length_over_diameter, eccentricity);
    let fine =
        warm.borrow_mut()
            .solve(2, length_over_diameter, eccentricity, Boundary::FedAtWidest);
    let at_fine = of_nets(length_over_diameter, eccentricity, [coarse, middle, fine]);
    let off = libm::log(at_fine.figures.sommerfeld) - available(eccentricity, &at_fine.figures);
    if off.abs() < NEAR_ENOUGH || eccentricity <= ECCENTRICITIES.0 {
        return Ok(at_fine);
    }
    ratio = at_fine.figures.over(&coarse);
    let eccentricity = found(&ratio)?;
    Ok(Film {
        eccentricity,
        figures: coarse_at(eccentricity).combined(&ratio, |a, b| a * b),
        ..at_fine
    })
}

/// The figures on the coarsest net, from where the last ones were.
fn rough_of(warm: &RefCell<Warm>, length_over_diameter: f64, eccentricity: f64) -> Figures {
    if length_over_diameter > PROPORTIONS.1 {
        return long_bearing(eccentricity);
    }
    warm.borrow_mut()
        .solve(0, length_over_diameter, eccentricity, Boundary::FedAtWidest)
}

/// Where a falling function of the eccentricity goes through nothing. A load so
/// light that the journal is all but centred stays at the lower end.
fn search(lacking: impl Fn(f64) -> f64) -> Result<f64, FilmError> {
    let (mut low, mut high) = (
        straightened(ECCENTRICITIES.0),
        straightened(ECCENTRICITIES.1),
    );
    let (mut at_low, mut at_high) = (lacking(ECCENTRICITIES.0), lacking(ECCENTRICITIES.1));
    if at_low <= 0.0 {
        return Ok(ECCENTRICITIES.0);
    }
    if at_high.is_nan() || at_high >= 0.0 {
        return Err(FilmError::TooMuchLoad);
    }
    // The Illinois way: straight lines, with the end that stays halved.
    let mut last_side = 0;
    for _ in 0..60 {
        let middle = (low * at_high - high * at_low) / (at_high - at_low);
        let here = lacking(from_straightened(middle));
        if here > 0.0 {
            (low, at_low) = (middle, here);
            if last_side == 1 {
                at_high *= 0.5;
            }
            last_side = 1;
        } else {
            (high, at_high) = (middle, here);
            if last_side == -1 {
                at_low *= 0.5;
            }
            last_side = -1;
        }
        if here.abs() < 1e-5 || high - low < 1e-9 {
            return Ok(from_straightened(middle));
        }
    }
    Ok(from_straightened(f64::midpoint(low, high)))
}

/// The film that runs at this Sommerfeld number.
///
/// # Errors
/// [`FilmError`] for a number that no steady film has.
pub fn film_at(length_over_diameter: f64, sommerfeld: f64) -> Result<Film, FilmError> {
    if !(sommerfeld > 0.0 && sommerfeld.is_finite()) {
        return Err(FilmError::NotPositive {
            what: "Sommerfeld's number",
            read: sommerfeld,
        });
    }
    let wanted = libm::log(sommerfeld);
    balance(length_over_diameter, Care::Fine, |_, _| wanted)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_and_back() {
        for e in [0.005, 0.3, 0.9, 0.98] {
            assert!((from_straightened(straightened(e)) - e).abs() < 1e-12);
        }
    }

    #[test]
    fn a_film_is_found_again_by_its_number() {
        for (proportion, e) in [(1.0, 0.5), (0.35, 0.85), (f64::INFINITY, 0.6)] {
            let there = film(proportion, e, Boundary::FedAtWidest).unwrap();
            let back = film_at(proportion, there.figures.sommerfeld).unwrap();
            assert!(
                (back.eccentricity - e).abs() < 3e-4,
                "{proportion} {e}: {back:?}"
            );
        }
    }

    #[test]
    fn far_too_much_load_and_none_at_all() {
        assert_eq!(film_at(0.5, 1e-6), Err(FilmError::TooMuchLoad));
        assert_eq!(film_at(0.5, 1e6).unwrap().eccentricity, ECCENTRICITIES.0);
        assert!(film_at(0.5, -1.0).is_err());
        assert!(film_at(0.5, f64::NAN).is_err());
    }
}
