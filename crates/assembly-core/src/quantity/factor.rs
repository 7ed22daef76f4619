//! Exact factors: a typed number times a ratio of whole numbers, rounded once.

/// How many SI units one unit is, as a ratio of two whole numbers.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Factor {
    pub(super) numerator: u64,
    pub(super) denominator: u64,
}

/// A magnitude as it was typed: `numerator / denominator × 10^exponent`.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) struct Exact {
    pub(super) negative: bool,
    pub(super) numerator: u128,
    pub(super) denominator: u64,
    pub(super) exponent: i32,
}

impl Exact {
    /// The number of SI units: the float nearest to the exact product, or its
    /// neighbour when the product lies within a millionth of halfway.
    pub(super) fn times(self, factor: Factor) -> f64 {
        if let Some(magnitude) = self.times_small(factor) {
            return if self.negative { -magnitude } else { magnitude };
        }
        let wide = Wide::from(self.numerator)
            .times(factor.numerator)
            .times_power_of_ten(self.exponent)
            .over(self.denominator)
            .over(factor.denominator);
        let magnitude = wide.nearest();
        if self.negative { -magnitude } else { magnitude }
    }

    /// The product's magnitude where above and below the bar stands a whole number
    /// that a float holds exactly: their quotient is rounded once, to the nearest.
    /// Nearly all that is typed at a bench is of this sort.
    fn times_small(self, factor: Factor) -> Option<f64> {
        let tens = 10_u64.checked_pow(self.exponent.checked_neg()?.try_into().ok()?)?;
        let above = (u64::try_from(self.numerator).ok()?).checked_mul(factor.numerator)?;
        let below = (tens.checked_mul(self.denominator)?).checked_mul(factor.denominator)?;
        let most = 1 << f64::MANTISSA_DIGITS;
        (above <= most && (1..=most).contains(&below)).then(|| above as f64 / below as f64)
    }

    /// The number with some hundredths added, exactly where 128 bits can hold
    /// it. Where they can't, one of the two is too small to matter.
    pub(super) fn plus_hundredths(self, hundredths: i64) -> Self {
        self.plus_exactly(hundredths).unwrap_or_else(|| {
            if self.exponent > 0 {
                self
            } else {
                Self {
                    negative: hundredths < 0,
                    numerator: u128::from(hundredths.unsigned_abs()),
                    denominator: 1,
                    exponent: -2,
                }
            }
        })
    }

    fn plus_exactly(self, hundredths: i64) -> Option<Self> {
        let decimals = u32::try_from(self.exponent.checked_neg()?.max(2)).ok()?;
        let lift = u32::try_from(i64::from(decimals) + i64::from(self.exponent)).ok()?;
        let size = self.numerator.checked_mul(10_u128.checked_pow(lift)?)?;
        let mine = i128::try_from(size).ok()?;
        let mine = if self.negative { -mine } else { mine };
        let theirs = i128::from(hundredths)
            .checked_mul(i128::from(self.denominator))?
            .checked_mul(10_i128.checked_pow(decimals - 2)?)?;
        let sum = mine.checked_add(theirs)?;
        Some(Self {
            negative: sum < 0,
            numerator: sum.unsigned_abs(),
            denominator: self.denominator,
            exponent: -i32::try_from(decimals).ok()?,
        })
    }
}

/// A whole number of up to 128 bits times a power of two. What falls off the
/// end is remembered, so that the one rounding at the end goes the right way.
#[derive(Clone, Copy)]
struct Wide {
    mantissa: u128,
    exponent: i32,
    lost: bool,
}

impl Wide {
    const fn from(mantissa: u128) -> Self {
        Self {
            mantissa,
            exponent: 0,
            lost: false,
        }
    }

    const fn shifted_right(mut self, by: u32) -> Self {
        self.lost |= self.mantissa.trailing_zeros() < by && self.mantissa != 0;
        self.mantissa >>= by;
        self.exponent += by as i32;
        self
    }

    const fn times(mut self, by: u64) -> Self {
        let bits = 64 - by.leading_zeros();
        let room = self.mantissa.leading_zeros();
        if room < bits {
            self = self.shifted_right(bits - room);
        }
        self.mantissa *= by as u128;
        self
    }

    const fn over(mut self, by: u64) -> Self {
        if self.mantissa == 0 || by == 0 {
            return self;
        }
        let room = self.mantissa.leading_zeros();
        self.mantissa <<= room;
        self.exponent -= room as i32;
        self.lost |= !self.mantissa.is_multiple_of(by as u128);
        self.mantissa /= by as u128;
        self
    }

    fn times_power_of_ten(mut self, power: i32) -> Self {
        // Beyond this nothing is a finite number or differs from zero.
        let mut left = power.unsigned_abs().min(700);
        while left > 0 {
            let step = left.min(9);
            let by = 10_u64.pow(step);
            self = if power > 0 {
                self.times(by)
            } else {
                self.over(by)
            };
            left -= step;
        }
        self
    }

    fn nearest(mut self) -> f64 {
        let bits = 128 - self.mantissa.leading_zeros();
        if bits > 64 {
            self = self.shifted_right(bits - 64);
        }
        let mantissa = self.mantissa as u64 | u64::from(self.lost);
        libm::scalbn(mantissa as f64, self.exponent)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    const ONE: Factor = Factor {
        numerator: 1,
        denominator: 1,
    };

    fn decimal(digits: u128, exponent: i32) -> Exact {
        Exact {
            negative: false,
            numerator: digits,
            denominator: 1,
            exponent,
        }
    }

    #[test]
    fn a_decimal_becomes_the_float_the_compiler_makes_of_it() {
        for (digits, exponent, float) in [
            (24_483, -4, 2.4483),
            (1, 0, 1.0),
            (1, -1, 0.1),
            (17_976_931_348_623_157, 292, f64::MAX),
            (22_250_738_585_072_014, -324, f64::MIN_POSITIVE),
            // Exactly halfway between two floats: to the even one.
            (9_007_199_254_740_993, 0, 9_007_199_254_740_992.0),
            (9_007_199_254_740_995, 0, 9_007_199_254_740_996.0),
            // A hair above halfway.
            (
                9_007_199_254_740_993_000_000_001,
                -9,
                9_007_199_254_740_994.0,
            ),
            (1, 400, f64::INFINITY),
            (1, -400, 0.0),
        ] {
            assert_eq!(
                decimal(digits, exponent).times(ONE),
                float,
                "{digits}e{exponent}"
            );
        }
    }

    proptest! {
        #[test]
        fn what_a_float_holds_comes_out_as_the_long_way_round_says(
            digits in 0_u64..=1 << 40,
            exponent in -12..=0_i32,
            denominator in 1_u64..=4096,
            negative: bool,
        ) {
            let number = Exact { negative, numerator: digits.into(), denominator, exponent };
            for factor in [ONE, Factor { numerator: 127, denominator: 5000 }, Factor { numerator: 5, denominator: 9 }] {
                let long = Wide::from(digits.into())
                    .times(factor.numerator)
                    .times_power_of_ten(exponent)
                    .over(denominator)
                    .over(factor.denominator)
                    .nearest();
                let long = if negative { -long } else { long };
                prop_assert!((number.times(factor) - long).abs() <= long.abs() * f64::EPSILON / 2.0);
                if let Some(short) = number.times_small(factor) {
                    prop_assert_eq!(short, long.abs());
                }
            }
        }
    }

    #[test]
    fn an_offset_is_added_before_anything_is_rounded() {
        let fahrenheit = Factor {
            numerator: 5,
            denominator: 9,
        };
        let at = |digits, exponent| {
            decimal(digits, exponent)
                .plus_hundredths(45_967)
                .times(fahrenheit)
        };
        assert_eq!(at(68, 0), 293.15);
        assert_eq!(at(680, -1), 293.15);
        assert_eq!(at(212, 0), 373.15);
        assert_eq!(at(1, -60), 255.372_222_222_222_23);
        assert!((at(1, 60) / 5e59 * 0.9 - 1.0).abs() < 1e-15);
        let half = Exact {
            negative: true,
            numerator: 1,
            denominator: 2,
            exponent: 0,
        };
        assert_eq!(half.plus_hundredths(27_315).times(ONE), 272.65);
    }
}
