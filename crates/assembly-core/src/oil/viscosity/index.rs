//! Viscosity index: how little an oil thins from 40 to 100 °C.
//!
//! ASTM D2270-10e1 (2016), procedures A (to 100) and B (above), with Table 1 of
//! the reference oils and, above 70 mm²/s at 100 °C, its equations.

use super::error::OilError;
use super::reference_oils::REFERENCE_OILS;

/// Where Table 1 begins and ends, mm²/s at 100 °C.
const TABLE: (f64, f64) = (2.0, 70.0);

/// The two oils that the index measures between: viscosities at 40 °C, mm²/s.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct ReferenceOils {
    /// Of the oil of index 0.
    pub l: f64,
    /// Of the oil of index 100.
    pub h: f64,
}

/// The reference oils of the same viscosity at 100 °C, in mm²/s.
///
/// # Errors
/// [`OilError::TooThinForIndex`] below 2 mm²/s, [`OilError::Viscosity`] for none.
pub fn reference_oils(at_100: f64) -> Result<ReferenceOils, OilError> {
    if !at_100.is_finite() || at_100 > 1e5 {
        return Err(OilError::Viscosity { read: at_100 });
    }
    if at_100 < TABLE.0 {
        return Err(OilError::TooThinForIndex { read: at_100 });
    }
    if at_100 >= TABLE.1 {
        // D2270 equations for more than 70 mm²/s at 100 °C. At 70 itself table and
        // equations differ in the last digit; the equations go on smoothly.
        return Ok(ReferenceOils {
            l: 0.8353 * at_100 * at_100 + 14.67 * at_100 - 216.0,
            h: 0.1684 * at_100 * at_100 + 11.85 * at_100 - 97.0,
        });
    }
    let above = REFERENCE_OILS.partition_point(|(nu, _, _)| *nu <= at_100);
    let low = REFERENCE_OILS.get(above.saturating_sub(1));
    let high = REFERENCE_OILS.get(above);
    match (low, high) {
        (Some((x0, l0, h0)), Some((x1, l1, h1))) => {
            let part = (at_100 - x0) / (x1 - x0);
            Ok(ReferenceOils {
                l: l0 + part * (l1 - l0),
                h: h0 + part * (h1 - h0),
            })
        }
        _ => Err(OilError::Viscosity { read: at_100 }),
    }
}

/// The index from both viscosities in mm²/s, not rounded.
///
/// ```
/// use assembly_core::oil::viscosity::index::viscosity_index;
/// // The standard's own example: 73.30 at 40 °C and 8.86 at 100 °C.
/// assert_eq!(viscosity_index(73.30, 8.86)?.round(), 92.0);
/// # Ok::<(), assembly_core::oil::viscosity::OilError>(())
/// ```
///
/// # Errors
/// [`OilError`] for viscosities that have no index.
pub fn viscosity_index(at_40: f64, at_100: f64) -> Result<f64, OilError> {
    index_between(at_40, at_100, reference_oils(at_100)?)
}

/// The index by the reference oils handed in. Viscosities in mm²/s.
///
/// # Errors
/// [`OilError`] for viscosities that have no index.
pub fn index_between(at_40: f64, at_100: f64, oils: ReferenceOils) -> Result<f64, OilError> {
    if !at_40.is_finite() || at_40 <= 0.0 {
        return Err(OilError::Viscosity { read: at_40 });
    }
    if at_40 <= at_100 {
        return Err(OilError::ThickerWhenWarm);
    }
    Ok(if at_40 >= oils.h {
        (oils.l - at_40) / (oils.l - oils.h) * 100.0
    } else {
        let n = libm::log10(oils.h / at_40) / libm::log10(at_100);
        (libm::exp10(n) - 1.0) / 0.00715 + 100.0
    })
}

/// The viscosity at 40 °C of an oil of this index, both in mm²/s: the same
/// equations turned round.
///
/// # Errors
/// [`OilError`] when there is none.
pub fn at_40_of_index(at_100: f64, index: f64) -> Result<f64, OilError> {
    let oils = reference_oils(at_100)?;
    let at_40 = if index <= 100.0 {
        oils.l - (oils.l - oils.h) * index / 100.0
    } else {
        let n = libm::log10((index - 100.0) * 0.00715 + 1.0);
        oils.h / libm::pow(at_100, n)
    };
    if at_40.is_finite() && at_40 > at_100 {
        Ok(at_40)
    } else {
        Err(OilError::Viscosity { read: at_40 })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // ASTM D2270, calculation examples 5.1.4 and 6.1.4(2); the second from memory.
    #[test]
    fn the_standards_examples() {
        let oils = reference_oils(8.86).unwrap();
        assert!((oils.l - 119.94).abs() < 0.006 && (oils.h - 69.48).abs() < 0.006);
        assert_eq!(viscosity_index(73.30, 8.86).unwrap().round(), 92.0);
        assert_eq!(viscosity_index(53.47, 7.80).unwrap().round(), 111.0);
    }

    #[test]
    fn the_index_and_its_inverse_are_one_relation() {
        for at_100 in [2.0, 3.85, 8.86, 19.95, 29.9, 69.9, 80.0, 200.0] {
            for index in [20.0, 95.0, 100.0, 101.0, 160.0] {
                let Ok(at_40) = at_40_of_index(at_100, index) else {
                    continue;
                };
                let back = viscosity_index(at_40, at_100).unwrap();
                assert!((back - index).abs() < 1e-6, "{at_100} {index}: {back}");
            }
        }
    }

    #[test]
    fn the_table_rises_without_a_slip_of_print() {
        for pair in REFERENCE_OILS.windows(2) {
            let ((x0, l0, h0), (x1, l1, h1)) = (pair[0], pair[1]);
            assert!(x1 > x0 && l1 > l0 && h1 > h0 && l1 > h1);
        }
        // Slopes change by little from one line to the next but where the step does.
        for three in REFERENCE_OILS.windows(3) {
            let slope = |a: (f64, f64, f64), b: (f64, f64, f64)| (b.1 - a.1) / (b.0 - a.0);
            let ratio = slope(three[1], three[2]) / slope(three[0], three[1]);
            assert!((0.90..1.15).contains(&ratio), "at {}: {ratio}", three[1].0);
        }
    }

    #[test]
    fn what_has_no_index_is_told() {
        assert_eq!(
            viscosity_index(5.0, 1.5),
            Err(OilError::TooThinForIndex { read: 1.5 })
        );
        assert_eq!(viscosity_index(8.0, 8.86), Err(OilError::ThickerWhenWarm));
        assert!(viscosity_index(f64::NAN, 8.0).is_err());
        assert!(viscosity_index(80.0, f64::INFINITY).is_err());
    }
}
