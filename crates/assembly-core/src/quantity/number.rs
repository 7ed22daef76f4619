//! The number as it was typed, digit for digit.

use std::fmt;

use super::factor::Exact;

/// A number in one of the two ways people write it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Number {
    /// `digits × 10^exponent`; trailing zeros are kept as digits.
    Decimal {
        negative: bool,
        digits: u128,
        exponent: i32,
    },
    /// `whole numerator/denominator`; the denominator is not zero.
    Fraction {
        negative: bool,
        whole: Option<u64>,
        numerator: u64,
        denominator: u64,
    },
}

impl Number {
    pub(super) fn exact(self) -> Exact {
        match self {
            Self::Decimal {
                negative,
                digits,
                exponent,
            } => Exact {
                negative,
                numerator: digits,
                denominator: 1,
                exponent,
            },
            Self::Fraction {
                negative,
                whole,
                numerator,
                denominator,
            } => Exact {
                negative,
                numerator: u128::from(whole.unwrap_or(0)) * u128::from(denominator)
                    + u128::from(numerator),
                denominator,
                exponent: 0,
            },
        }
    }

    /// One step of the last digit, or of the fraction's denominator.
    pub(super) const fn step(self) -> Exact {
        let (denominator, exponent) = match self {
            Self::Decimal { exponent, .. } => (1, exponent),
            Self::Fraction { denominator, .. } => (denominator, 0),
        };
        Exact {
            negative: false,
            numerator: 1,
            denominator,
            exponent,
        }
    }

    pub(super) fn is_zero(self) -> bool {
        self.exact().numerator == 0
    }

    /// There is no minus zero at a bench.
    pub(super) fn without_minus_zero(mut self) -> Self {
        if self.is_zero() {
            match &mut self {
                Self::Decimal { negative, .. } | Self::Fraction { negative, .. } => {
                    *negative = false;
                }
            }
        }
        self
    }
}

/// More decimals than this are written with an exponent.
const PLAIN_DECIMALS: usize = 12;

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.exact().negative {
            f.write_str("\u{2212}")?;
        }
        match *self {
            Self::Decimal {
                digits, exponent, ..
            } => {
                let decimals = usize::try_from(exponent.unsigned_abs()).unwrap_or(usize::MAX);
                if exponent == 0 {
                    write!(f, "{digits}")
                } else if exponent > 0 || decimals > PLAIN_DECIMALS {
                    write!(f, "{digits}e{exponent}")
                } else {
                    let text = format!("{digits:0>width$}", width = decimals + 1);
                    let (whole, part) = text.split_at(text.len() - decimals);
                    write!(f, "{whole}.{part}")
                }
            }
            Self::Fraction {
                whole,
                numerator,
                denominator,
                ..
            } => {
                if let Some(whole) = whole {
                    write!(f, "{whole} ")?;
                }
                write!(f, "{numerator}/{denominator}")
            }
        }
    }
}
