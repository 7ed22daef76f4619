//! Arithmetic on estimates: each step keeps the list of causes of error, to
//! first order (JCGM 100:2008, 5.1).
//!
//! A formula is written as it stands in the book and the errors come along:
//!
//! ```
//! use assembly_core::measure::Estimate;
//!
//! let (housing, wall, journal) = (
//!     Estimate::exact(2.6412),
//!     Estimate::exact(0.0945),
//!     Estimate::exact(2.4500),
//! );
//! let clearance = &housing - &wall - &wall - &journal;
//! assert!((clearance.value() - 0.0022).abs() < 1e-12);
//! ```

use std::borrow::Borrow;
use std::ops::{Add, Div, Mul, Neg, Sub};

use super::estimate::Estimate;

impl Estimate {
    /// The square root. Of a value below zero it is no number, as of a plain one.
    #[must_use]
    pub fn root(&self) -> Self {
        let root = self.value().sqrt();
        let slope = if root > 0.0 { 0.5 / root } else { 0.0 };
        Self::from_slopes(root, &[(self, slope)])
    }

    /// The size without its sign.
    #[must_use]
    pub fn size(&self) -> Self {
        if self.value() < 0.0 {
            -self
        } else {
            self.clone()
        }
    }

    /// This less the other, without its sign.
    #[must_use]
    pub fn apart_from(&self, other: &Self) -> Self {
        (self - other).size()
    }
}

impl<R: Borrow<Estimate>> Add<R> for &Estimate {
    type Output = Estimate;

    fn add(self, other: R) -> Estimate {
        let other = other.borrow();
        Estimate::from_slopes(self.value() + other.value(), &[(self, 1.0), (other, 1.0)])
    }
}

impl<R: Borrow<Estimate>> Sub<R> for &Estimate {
    type Output = Estimate;

    fn sub(self, other: R) -> Estimate {
        let other = other.borrow();
        Estimate::from_slopes(self.value() - other.value(), &[(self, 1.0), (other, -1.0)])
    }
}

impl<R: Borrow<Estimate>> Mul<R> for &Estimate {
    type Output = Estimate;

    fn mul(self, other: R) -> Estimate {
        let other = other.borrow();
        Estimate::from_slopes(
            self.value() * other.value(),
            &[(self, other.value()), (other, self.value())],
        )
    }
}

impl<R: Borrow<Estimate>> Div<R> for &Estimate {
    type Output = Estimate;

    fn div(self, other: R) -> Estimate {
        let other = other.borrow();
        let quotient = self.value() / other.value();
        Estimate::from_slopes(
            quotient,
            &[
                (self, 1.0 / other.value()),
                (other, -quotient / other.value()),
            ],
        )
    }
}

impl<R: Borrow<Estimate>> Add<R> for Estimate {
    type Output = Self;

    fn add(self, other: R) -> Self {
        &self + other
    }
}

impl<R: Borrow<Estimate>> Sub<R> for Estimate {
    type Output = Self;

    fn sub(self, other: R) -> Self {
        &self - other
    }
}

impl<R: Borrow<Estimate>> Mul<R> for Estimate {
    type Output = Self;

    fn mul(self, other: R) -> Self {
        &self * other
    }
}

impl<R: Borrow<Estimate>> Div<R> for Estimate {
    type Output = Self;

    fn div(self, other: R) -> Self {
        &self / other
    }
}

impl Neg for &Estimate {
    type Output = Estimate;

    fn neg(self) -> Estimate {
        self * -1.0
    }
}

impl Mul<f64> for &Estimate {
    type Output = Estimate;

    fn mul(self, factor: f64) -> Estimate {
        Estimate::from_slopes(self.value() * factor, &[(self, factor)])
    }
}

impl Mul<f64> for Estimate {
    type Output = Self;

    fn mul(self, factor: f64) -> Self {
        &self * factor
    }
}

impl Add<f64> for &Estimate {
    type Output = Estimate;

    fn add(self, offset: f64) -> Estimate {
        Estimate::from_slopes(self.value() + offset, &[(self, 1.0)])
    }
}

impl Add<f64> for Estimate {
    type Output = Self;

    fn add(self, offset: f64) -> Self {
        &self + offset
    }
}

impl Sub<f64> for &Estimate {
    type Output = Estimate;

    fn sub(self, offset: f64) -> Estimate {
        self + -offset
    }
}

impl Sub<f64> for Estimate {
    type Output = Self;

    fn sub(self, offset: f64) -> Self {
        &self + -offset
    }
}

impl Div<f64> for &Estimate {
    type Output = Estimate;

    fn div(self, divisor: f64) -> Estimate {
        Estimate::from_slopes(self.value() / divisor, &[(self, 1.0 / divisor)])
    }
}

impl Div<f64> for Estimate {
    type Output = Self;

    fn div(self, divisor: f64) -> Self {
        &self / divisor
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Origin, Sources};

    /// Every slope agrees with the difference quotient of the plain formula.
    #[test]
    fn slopes_of_a_formula_are_its_derivatives() {
        let mut sources = Sources::new();
        let ids = [0, 1, 2].map(|_| sources.fresh("x", Origin::Repeat));
        let at = [3.0, 2.0, 0.5];
        let [a, b, c] = [0, 1, 2].map(|i: usize| Estimate::exact(at[i]).with(ids[i], 1.0));
        let formula = |v: [f64; 3]| (v[0] * v[1] - v[2] / v[1]).sqrt() * 2.0 + v[0].abs() - 1.0;
        let result = (&a * &b - &c / &b).root() * 2.0 + a.size() - 1.0;
        assert!((result.value() - formula(at)).abs() < 1e-12);
        for (i, (_, slope)) in result.parts().iter().enumerate() {
            let (mut up, mut down) = (at, at);
            up[i] += 1e-5;
            down[i] -= 1e-5;
            let quotient = (formula(up) - formula(down)) / 2e-5;
            assert!(
                (slope - quotient).abs() < 1e-8,
                "input {i}: {slope} {quotient}"
            );
        }
    }

    #[test]
    fn a_value_less_itself_is_exactly_nothing() {
        let mut sources = Sources::new();
        let value = Estimate::exact(2.5).with(sources.fresh("x", Origin::Repeat), 0.1);
        let nothing = &value - &value;
        assert_eq!((nothing.value(), nothing.deviation()), (0.0, 0.0));
        let one = &value / &value;
        assert!((one.value() - 1.0).abs() < 1e-15 && one.deviation() < 1e-15);
    }

    #[test]
    fn a_size_turns_its_errors_round_with_its_sign() {
        let mut sources = Sources::new();
        let cause = sources.fresh("x", Origin::Repeat);
        let below = Estimate::exact(-2.0).with(cause, 0.1);
        assert_eq!(below.size().parts(), [(cause, -0.1)]);
        assert_eq!(below.size().value(), 2.0);
    }
}
