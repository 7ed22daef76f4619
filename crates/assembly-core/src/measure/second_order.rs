//! What first order leaves out.
//!
//! Every estimate of this crate carries its errors to first order. Where a
//! function's slope vanishes, or is itself uncertain, the next terms matter: an
//! indicator that leans by an unknown small angle, a temperature difference near
//! zero times an uncertain coefficient.

/// The standard deviation of a function of inputs that do not hang together,
/// with the terms of second order of the GUM (JCGM 100:2008, note to 5.1.2):
/// for each pair of inputs half the square of the mixed second derivative, and
/// the first times the third derivative, times both variances.
///
/// Inputs are pairs of value and standard deviation. The derivatives are found
/// by moving the inputs by their own deviations, which is exact for functions of
/// up to third degree.
///
/// ```
/// use assembly_core::measure::deviation_to_second_order;
/// // A product of two values near zero: first order sees nothing of it.
/// let product = |at: &[f64]| at.iter().product();
/// let deviation = deviation_to_second_order(product, &[(0.0, 3.0), (0.0, 2.0)]);
/// assert!((deviation - 6.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn deviation_to_second_order(function: impl Fn(&[f64]) -> f64, inputs: &[(f64, f64)]) -> f64 {
    let at = |steps: &[(usize, f64)]| {
        let mut moved: Vec<f64> = inputs.iter().map(|(value, _)| *value).collect();
        for (which, times) in steps {
            if let (Some(one), Some((_, deviation))) = (moved.get_mut(*which), inputs.get(*which)) {
                *one += times * deviation;
            }
        }
        function(&moved)
    };
    let here = at(&[]);
    let mut variance = 0.0;
    for first in 0..inputs.len() {
        // Slopes times the inputs' deviations, so no step size divides anything.
        let slope = (at(&[(first, 1.0)]) - at(&[(first, -1.0)])) / 2.0;
        // A third degree in one input alone shows in its own slope over this
        // step; taken over two steps as well, it can be told apart.
        let wide = (at(&[(first, 2.0)]) - at(&[(first, -2.0)])) / 4.0;
        let third = (wide - slope) * 2.0;
        let slope = slope - third / 6.0;
        let second = at(&[(first, 1.0)]) - 2.0 * here + at(&[(first, -1.0)]);
        variance += slope * slope + 0.5 * second * second + slope * third;
        for other in (0..inputs.len()).filter(|other| *other != first) {
            let corner = |mine: f64, theirs: f64| at(&[(first, mine), (other, theirs)]);
            let mixed = (corner(1.0, 1.0) - corner(1.0, -1.0) - corner(-1.0, 1.0)
                + corner(-1.0, -1.0))
                / 4.0;
            let bend = |mine: f64| corner(mine, 1.0) - 2.0 * corner(mine, 0.0) + corner(mine, -1.0);
            let mixed_third = (bend(1.0) - bend(-1.0)) / 2.0;
            variance += 0.5 * mixed * mixed + slope * mixed_third;
        }
    }
    variance.max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_function_has_no_second_order() {
        let sum = |at: &[f64]| 2.0 * at[0] - 3.0 * at[1] + 7.0;
        let deviation = deviation_to_second_order(sum, &[(1.0, 0.3), (2.0, 0.4)]);
        assert!((deviation - 0.6_f64.hypot(1.2)).abs() < 1e-12);
    }

    // Of a normal value x about 0 with deviation s, the variance of x² is 2 s⁴.
    #[test]
    fn a_square_about_nothing_is_all_second_order() {
        let deviation = deviation_to_second_order(|at| at[0] * at[0], &[(0.0, 0.5)]);
        assert!((deviation - (2.0_f64 * 0.5_f64.powi(4)).sqrt()).abs() < 1e-12);
    }

    // Of a normal value x with mean m and deviation s, Var(x³) = 9 m⁴ s² + 36 m² s⁴
    // + 15 s⁶; the last term is of third order and left out.
    #[test]
    fn a_cube_has_its_third_derivative_counted() {
        let (mean, deviation) = (2.0_f64, 0.1_f64);
        let wanted =
            9.0 * mean.powi(4) * deviation.powi(2) + 36.0 * mean.powi(2) * deviation.powi(4);
        let found = deviation_to_second_order(|at| at[0].powi(3), &[(mean, deviation)]);
        assert!(
            (found * found - wanted).abs() < 1e-9,
            "{} {wanted}",
            found * found
        );
    }
}
