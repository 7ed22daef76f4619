//! Functions of estimates: each keeps the list of causes of error, to first
//! order (JCGM 100:2008, 5.1).

use super::estimate::Estimate;

/// The part of an input's size by which it is moved to find a slope, when it has
/// no error of its own to go by: near the cube root of the last bit of a float.
const SMALL_PART: f64 = 1e-5;

impl Estimate {
    /// A smooth function of this value, from the function's value and slope here.
    #[must_use]
    pub fn map(&self, value: f64, slope: f64) -> Self {
        Self::from_slopes(value, &[(self, slope)])
    }

    /// Any smooth function of several values. The slopes are found by moving
    /// each input a little to both sides, so the function may be as long as it
    /// likes; where the slopes are known, [`Self::from_slopes`] is exact.
    ///
    /// ```
    /// use assembly_core::measure::{Estimate, Origin, Sources};
    /// let mut sources = Sources::new();
    /// let throw = Estimate::exact(0.044).with(sources.fresh("stroke", Origin::Repeat), 1e-5);
    /// let rod = Estimate::exact(0.145).with(sources.fresh("rod", Origin::Repeat), 2e-5);
    /// // Piston height at a right angle of the crank.
    /// let height = Estimate::of_function(&[&throw, &rod], |at| match at {
    ///     [throw, rod] => (rod * rod - throw * throw).sqrt(),
    ///     _ => f64::NAN,
    /// });
    /// let slopes = [-0.044 / height.value(), 0.145 / height.value()];
    /// let wanted = (slopes[0] * 1e-5_f64).hypot(slopes[1] * 2e-5);
    /// assert!((height.deviation() / wanted - 1.0).abs() < 1e-8);
    /// ```
    #[must_use]
    pub fn of_function(inputs: &[&Self], function: impl Fn(&[f64]) -> f64) -> Self {
        let at: Vec<f64> = inputs.iter().map(|input| input.value()).collect();
        let slopes: Vec<(&Self, f64)> = inputs
            .iter()
            .enumerate()
            .filter(|(_, input)| input.deviation() > 0.0)
            .map(|(which, input)| {
                let step = (input.value().abs() * SMALL_PART).max(input.deviation() * SMALL_PART);
                let moved = |by: f64| {
                    let mut moved = at.clone();
                    if let Some(one) = moved.get_mut(which) {
                        *one += by;
                    }
                    function(&moved)
                };
                (*input, (moved(step) - moved(-step)) / (2.0 * step))
            })
            .collect();
        Self::from_slopes(function(&at), &slopes)
    }

    /// The square of a value.
    #[must_use]
    pub fn square(&self) -> Self {
        self.map(self.value() * self.value(), 2.0 * self.value())
    }

    /// A value to a fixed power.
    #[must_use]
    pub fn power(&self, exponent: f64) -> Self {
        self.map(
            libm::pow(self.value(), exponent),
            exponent * libm::pow(self.value(), exponent - 1.0),
        )
    }

    /// The sine of an angle in radians.
    #[must_use]
    pub fn sine(&self) -> Self {
        self.map(libm::sin(self.value()), libm::cos(self.value()))
    }

    /// The cosine of an angle in radians.
    #[must_use]
    pub fn cosine(&self) -> Self {
        self.map(libm::cos(self.value()), -libm::sin(self.value()))
    }

    /// The tangent of an angle in radians.
    #[must_use]
    pub fn tangent(&self) -> Self {
        let tangent = libm::tan(self.value());
        self.map(tangent, 1.0 + tangent * tangent)
    }

    /// The angle, in radians, whose sine this is.
    #[must_use]
    pub fn arc_sine(&self) -> Self {
        let slope = 1.0 / libm::sqrt(1.0 - self.value() * self.value());
        self.map(libm::asin(self.value()), slope)
    }

    /// The angle, in radians, whose cosine this is.
    #[must_use]
    pub fn arc_cosine(&self) -> Self {
        let slope = -1.0 / libm::sqrt(1.0 - self.value() * self.value());
        self.map(libm::acos(self.value()), slope)
    }

    /// The angle, in radians, whose tangent this is.
    #[must_use]
    pub fn arc_tangent(&self) -> Self {
        let slope = 1.0 / (1.0 + self.value() * self.value());
        self.map(libm::atan(self.value()), slope)
    }

    /// The exponential.
    #[must_use]
    pub fn exponential(&self) -> Self {
        let value = libm::exp(self.value());
        self.map(value, value)
    }

    /// The natural logarithm.
    #[must_use]
    pub fn logarithm(&self) -> Self {
        self.map(libm::log(self.value()), 1.0 / self.value())
    }

    /// The third side of a right triangle with these two beside the right angle.
    #[must_use]
    pub fn third_side(&self, other: &Self) -> Self {
        let side = self.value().hypot(other.value());
        let slope = |leg: f64| if side > 0.0 { leg / side } else { 0.0 };
        Self::from_slopes(
            side,
            &[(self, slope(self.value())), (other, slope(other.value()))],
        )
    }

    /// How two values hang together, from −1 to 1; 0 when one of them is exact.
    #[must_use]
    pub fn correlation(&self, other: &Self) -> f64 {
        let both = self.deviation() * other.deviation();
        if both > 0.0 {
            (self.covariance(other) / both).clamp(-1.0, 1.0)
        } else {
            0.0
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::measure::{Origin, Sources};

    type Named = (fn(&Estimate) -> Estimate, fn(f64) -> f64);

    const FUNCTIONS: [Named; 11] = [
        (Estimate::square, |x| x * x),
        (|x| x.power(2.5), |x| x.powf(2.5)),
        (Estimate::sine, f64::sin),
        (Estimate::cosine, f64::cos),
        (Estimate::tangent, f64::tan),
        (Estimate::arc_sine, f64::asin),
        (Estimate::arc_cosine, f64::acos),
        (Estimate::arc_tangent, f64::atan),
        (Estimate::exponential, f64::exp),
        (Estimate::logarithm, f64::ln),
        (Estimate::root, f64::sqrt),
    ];

    proptest! {
        #[test]
        fn every_named_function_agrees_with_its_difference_quotient(x in 0.05..0.95_f64) {
            let source = Sources::new().fresh("x", Origin::Repeat);
            let input = Estimate::exact(x).with(source, 1.0);
            for (named, plain) in FUNCTIONS {
                let (result, found) = (
                    named(&input),
                    Estimate::of_function(&[&input], |at| at.first().map_or(f64::NAN, |x| plain(*x))),
                );
                prop_assert!((result.value() - plain(x)).abs() < 1e-14);
                prop_assert!((result.parts()[0].1 - found.parts()[0].1).abs() < 1e-6 * result.deviation());
            }
        }

        #[test]
        fn values_that_share_all_their_errors_hang_together_wholly(
            x in 1.0..5.0_f64, factor in prop_oneof![-3.0..-0.1_f64, 0.1..3.0_f64],
        ) {
            let source = Sources::new().fresh("x", Origin::Repeat);
            let value = Estimate::exact(x).with(source, 0.1);
            let correlation = value.correlation(&(&value * factor));
            prop_assert!((correlation - factor.signum()).abs() < 1e-12);
        }
    }

    #[test]
    fn a_right_triangle_of_nothing_has_no_side_and_no_slope() {
        let source = Sources::new().fresh("x", Origin::Repeat);
        let nothing = Estimate::exact(0.0).with(source, 0.1);
        let side = nothing.third_side(&nothing);
        assert_eq!((side.value(), side.deviation()), (0.0, 0.0));
        assert_eq!(Estimate::exact(1.0).correlation(&nothing), 0.0);
    }
}
