//! The bearing so short that the oil leaves at its edges as fast as it is
//! squeezed: Ocvirk's closed form (G. B. DuBois and F. W. Ocvirk, NACA Report
//! 1157, 1953), half Sommerfeld.

use std::f64::consts::PI;

/// Sommerfeld's number times (L/D)² at an eccentricity.
#[must_use]
pub fn short_load(eccentricity: f64) -> f64 {
    let less = 1.0 - eccentricity * eccentricity;
    less * less / (PI * eccentricity * (PI * PI * less + 16.0 * eccentricity * eccentricity).sqrt())
}

/// From the load to the least film, radians.
#[must_use]
pub fn short_attitude(eccentricity: f64) -> f64 {
    let less = (1.0 - eccentricity * eccentricity).max(0.0);
    libm::atan2(PI * less.sqrt(), 4.0 * eccentricity)
}

/// The eccentricity of a short bearing from Sommerfeld's number times (L/D)².
#[must_use]
pub fn short_eccentricity(load: f64) -> f64 {
    let (mut low, mut high) = (1e-9, 1.0 - 1e-9);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if short_load(middle) > load {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    // NACA Report 1157's closed form, evaluated outside: 0.4 gives 0.170460783.
    #[test]
    fn the_closed_form_and_its_inverse() {
        assert!((short_load(0.4) - 0.170_460_783).abs() < 1e-8);
        for e in [0.05, 0.4, 0.9] {
            assert!((short_eccentricity(short_load(e)) - e).abs() < 1e-9);
        }
        assert!((short_attitude(1e-9).to_degrees() - 90.0).abs() < 1e-6);
    }
}
