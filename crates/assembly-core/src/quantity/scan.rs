//! From characters to a number and the unit text behind it.

use super::number::Number;
use super::separators::{Separated, separators};
use super::signs::{raised_digit, usual_signs};
use super::{Kind, ReadError};

/// The longest text that is looked at.
pub(super) const MOST_CHARACTERS: usize = 64;
/// The most digits a number keeps: exact arithmetic stays within 128 bits.
pub(super) const MOST_DIGITS: usize = 30;
/// The most digits in each part of a fraction.
const MOST_FRACTION_DIGITS: usize = 9;
/// How much of a wrong text an error quotes.
const QUOTED: usize = 24;

/// What the number part says.
pub(super) enum Reading {
    Clear(Number),
    /// The comma as a decimal point, and the comma between thousands.
    Either(Number, Number),
}

/// A text in two parts.
pub(super) struct Scanned {
    pub(super) reading: Reading,
    pub(super) unit: String,
}

/// The text as an error quotes it: whole, or its start.
pub(super) fn quote(text: &str) -> String {
    let text = text.trim();
    match text.char_indices().nth(MOST_CHARACTERS) {
        None => text.to_owned(),
        Some(_) => text.chars().take(QUOTED).chain(['…']).collect(),
    }
}

/// Splits a text into its number and its unit.
pub(super) fn scan(text: &str, kind: Kind) -> Result<Scanned, ReadError> {
    if let Some(number) = plain_decimal(text) {
        return Ok(Scanned {
            reading: Reading::Clear(number),
            unit: String::new(),
        });
    }
    let trimmed = text.trim();
    if trimmed.char_indices().nth(MOST_CHARACTERS).is_some() {
        return Err(ReadError::TooLong {
            read: quote(trimmed),
            most: MOST_CHARACTERS,
            kind,
        });
    }
    let usual = usual_signs(trimmed);
    let mut scanner = Scanner {
        read: trimmed,
        usual: usual.trim(),
        left: usual.trim(),
        kind,
    };
    let reading = scanner.number()?;
    Ok(Scanned {
        reading,
        unit: scanner.left.trim().to_owned(),
    })
}

/// A number of digits with at most one point between them and nothing else, as
/// nearly all are: it says the same read at once as taken apart.
fn plain_decimal(text: &str) -> Option<Number> {
    // So many digits fit 64 bits whatever they are.
    const MOST: usize = 19;
    if text.len() > MOST {
        return None;
    }
    let (mut digits, mut decimals) = (0_u64, None);
    for sign in text.bytes() {
        match (sign, decimals) {
            (b'0'..=b'9', _) => {
                digits = digits * 10 + u64::from(sign - b'0');
                decimals = decimals.map(|many: i32| many + 1);
            }
            (b'.', None) => decimals = Some(0),
            _ => return None,
        }
    }
    let (starts, ends) = (text.as_bytes().first()?, text.as_bytes().last()?);
    // A point at the end is a number that is not finished.
    (*ends != b'.' && (*starts != b'.' || text.len() > 1)).then_some(Number::Decimal {
        negative: false,
        digits: digits.into(),
        exponent: -decimals.unwrap_or(0),
    })
}

/// What a number with another one behind it may be on the way to.
#[derive(Clone, Copy, PartialEq, Eq)]
enum MayBecome {
    Fraction,
    Nothing,
}

struct Scanner<'a> {
    /// As typed.
    read: &'a str,
    /// The same with the usual signs.
    usual: &'a str,
    /// What of it is not read yet.
    left: &'a str,
    kind: Kind,
}

/// Where the front of the text was split off.
fn split_while(text: &str, keep: impl Fn(char) -> bool) -> (&str, &str) {
    let end = text.find(|sign| !keep(sign)).unwrap_or(text.len());
    text.split_at(end)
}

const fn is_digit(sign: char) -> bool {
    sign.is_ascii_digit()
}

const fn is_digit_or_separator(sign: char) -> bool {
    matches!(sign, '0'..='9' | '.' | ',')
}

fn is_plain(run: &str) -> bool {
    run.chars().all(is_digit)
}

impl<'a> Scanner<'a> {
    fn read(&self) -> String {
        self.read.to_owned()
    }

    /// Takes the front of what is left.
    fn run(&mut self, keep: impl Fn(char) -> bool) -> &'a str {
        let (run, left) = split_while(self.left, keep);
        self.left = left;
        run
    }

    fn number(&mut self) -> Result<Reading, ReadError> {
        let signed = self.left;
        let negative = signed.starts_with('-');
        if let Some(left) = signed.strip_prefix(['+', '-']) {
            self.left = left.trim_start();
        }
        let first = self.run(is_digit_or_separator);
        if first.is_empty() {
            return Err(self.no_number(signed));
        }
        if let Some((whole, numerator, denominator)) = self.fraction(first)? {
            return Ok(Reading::Clear(
                Number::Fraction {
                    negative,
                    whole,
                    numerator,
                    denominator,
                }
                .without_minus_zero(),
            ));
        }
        let power = self.power_of_ten()?;
        self.no_second_number(if is_plain(first) && power == 0 {
            MayBecome::Fraction
        } else {
            MayBecome::Nothing
        })?;
        let decimal = |run: &str| self.decimal(negative, run, power);
        Ok(match separators(first) {
            Separated::Clear(run) => Reading::Clear(decimal(&run)?),
            Separated::Either(as_decimal, as_thousands) => {
                Reading::Either(decimal(&as_decimal)?, decimal(&as_thousands)?)
            }
            Separated::OpenPoint => return Err(ReadError::OpenPoint { read: self.read() }),
            Separated::TwoPoints => return Err(ReadError::TwoPoints { read: self.read() }),
            Separated::Misplaced { unfinished } => {
                return Err(ReadError::Separators {
                    read: self.read(),
                    unfinished: unfinished && self.left.is_empty(),
                });
            }
        })
    }

    fn no_number(&self, signed: &str) -> ReadError {
        let (read, kind) = (self.read(), self.kind);
        if signed.is_empty() {
            return ReadError::Empty { kind };
        }
        if self.left.is_empty() {
            return ReadError::LoneSign { read, kind };
        }
        let endless = ["nan", "inf", "infinity", "infinite", "∞"];
        let (word, _) = split_while(self.left, |sign| sign != ' ');
        if endless.iter().any(|one| word.eq_ignore_ascii_case(one)) {
            return ReadError::NotFinite { read, kind };
        }
        ReadError::NotANumber { read, kind }
    }

    /// A fraction that begins with this run of digits, if one does.
    fn fraction(&mut self, first: &str) -> Result<Option<(Option<u64>, u64, u64)>, ReadError> {
        let after = self.left.trim_start();
        if let Some(below) = after.strip_prefix('/') {
            let Some(below) = self.below_the_bar(below)? else {
                return Ok(None);
            };
            let (numerator, denominator) = self.parts(first, below)?;
            return Ok(Some((None, numerator, denominator)));
        }
        // A whole number, then a blank or a hyphen right behind it, then digits and a bar.
        let hyphen = self.left.strip_prefix('-');
        if hyphen.is_some_and(|left| left.trim().is_empty()) && is_plain(first) {
            return Err(ReadError::OpenFraction { read: self.read() });
        }
        let apart = hyphen.unwrap_or(self.left);
        if apart.len() == self.left.len() && !apart.starts_with(' ') {
            return Ok(None);
        }
        let (second, rest) = split_while(apart.trim_start(), |sign| {
            is_digit(sign) || matches!(sign, '.' | ',')
        });
        let Some(below) = rest.trim_start().strip_prefix('/') else {
            return Ok(None);
        };
        if second.is_empty() {
            return Ok(None);
        }
        let Some(below) = self.below_the_bar(below)? else {
            return Ok(None);
        };
        let whole = self.part(first)?;
        let (numerator, denominator) = self.parts(second, below)?;
        if numerator >= denominator {
            return Err(ReadError::ImproperAfterWhole {
                read: self.read(),
                improper: format!("{}/{denominator}", whole * denominator + numerator),
                unfinished: self.left.is_empty() && self.read.ends_with(is_digit),
            });
        }
        Ok(Some((Some(whole), numerator, denominator)))
    }

    /// The digits under a bar. None when a unit such as `/K` stands there.
    fn below_the_bar(&mut self, below: &'a str) -> Result<Option<&'a str>, ReadError> {
        let below = below.trim_start();
        if below.is_empty() {
            return Err(ReadError::OpenFraction { read: self.read() });
        }
        let (run, left) = split_while(below, is_digit_or_separator);
        if run.is_empty() {
            return Ok(None);
        }
        let bar = left.trim_start().strip_prefix('/');
        if bar.is_some_and(|next| {
            let next = next.trim_start();
            next.is_empty() || next.starts_with(is_digit)
        }) {
            return Err(ReadError::FractionOfFraction { read: self.read() });
        }
        self.left = left;
        self.no_second_number(MayBecome::Nothing)?;
        Ok(Some(run))
    }

    fn parts(&self, above: &str, below: &str) -> Result<(u64, u64), ReadError> {
        let (above, below) = (self.part(above)?, self.part(below)?);
        if below == 0 {
            return Err(ReadError::ZeroDenominator { read: self.read() });
        }
        Ok((above, below))
    }

    fn part(&self, run: &str) -> Result<u64, ReadError> {
        if !is_plain(run) {
            return Err(ReadError::DecimalInFraction { read: self.read() });
        }
        let significant = run.trim_start_matches('0');
        if significant.len() > MOST_FRACTION_DIGITS {
            return Err(ReadError::TooManyDigits {
                read: self.read(),
                digits: significant.len(),
                most: MOST_FRACTION_DIGITS,
            });
        }
        Ok(significant.bytes().fold(0, |sum, digit| {
            sum * 10 + u64::from(digit.wrapping_sub(b'0'))
        }))
    }

    /// Behind a number there may be a unit, but no second number.
    fn no_second_number(&self, may_be: MayBecome) -> Result<(), ReadError> {
        let after = self.left.trim_start();
        let bare = after.strip_prefix('-').unwrap_or(after).trim_start();
        let (second, rest) = split_while(bare, is_digit_or_separator);
        // `/K`, `1/K` and `:1` are units; a number behind a number is not.
        let per = rest.trim_start().strip_prefix('/').map(str::trim_start);
        let is_per_unit = second == "1" && per.is_some_and(|unit| !unit.starts_with(is_digit));
        if !second.contains(is_digit) || is_per_unit {
            return Ok(());
        }
        let first = self.usual.strip_suffix(self.left).unwrap_or("").trim();
        Err(ReadError::TwoNumbers {
            read: self.read(),
            first: first.to_owned(),
            second: second.to_owned(),
            unfinished: may_be == MayBecome::Fraction && rest.trim().is_empty() && is_plain(second),
        })
    }

    /// `e-5` or `×10^-5` behind a number: the power, 0 when there is none.
    fn power_of_ten(&mut self) -> Result<i32, ReadError> {
        let after = self.left;
        let by_letter = after.strip_prefix(['e', 'E']);
        let by_words = after
            .trim_start()
            .strip_prefix(['×', 'x', 'X', '*'])
            .and_then(|left| left.trim_start().strip_prefix("10"))
            .filter(|left| {
                left.starts_with(['^', '⁻', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'])
            });
        let Some(left) = by_letter.or(by_words) else {
            return Ok(0);
        };
        let left = left.strip_prefix('^').unwrap_or(left);
        let negative = left.starts_with(['-', '⁻']);
        let left = left.strip_prefix(['-', '⁻', '+']).unwrap_or(left);
        let (run, rest) = split_while(left, |sign| raised_digit(sign).is_some());
        if run.is_empty() {
            return if left.is_empty() {
                Err(ReadError::OpenExponent { read: self.read() })
            } else {
                // A unit that begins with an e.
                Ok(0)
            };
        }
        self.left = rest;
        let size = run
            .chars()
            .filter_map(raised_digit)
            .fold(0_i32, |sum, digit| {
                sum.saturating_mul(10).saturating_add(digit)
            });
        // Far beyond any float, and far from overflowing.
        let size = size.min(100_000);
        Ok(if negative { -size } else { size })
    }

    /// A run of digits with at most one point.
    fn decimal(&self, negative: bool, run: &str, power: i32) -> Result<Number, ReadError> {
        let (whole, part) = run.split_once('.').unwrap_or((run, ""));
        let significant = whole.len() + part.len();
        let zeros = whole
            .chars()
            .chain(part.chars())
            .take_while(|digit| *digit == '0')
            .count();
        if significant - zeros > MOST_DIGITS {
            return Err(ReadError::TooManyDigits {
                read: self.read(),
                digits: significant - zeros,
                most: MOST_DIGITS,
            });
        }
        let digits = whole
            .bytes()
            .chain(part.bytes())
            .fold(0_u128, |sum, digit| {
                sum * 10 + u128::from(digit.wrapping_sub(b'0'))
            });
        let decimals = i32::try_from(part.len()).unwrap_or(i32::MAX);
        Ok(Number::Decimal {
            negative,
            digits,
            exponent: power.saturating_sub(decimals),
        }
        .without_minus_zero())
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn a_plain_decimal_says_the_same_read_at_once(text in "[0-9.]{0,8}|[0-9]{0,12}[.]?[0-9]{0,12}") {
            let Some(at_once) = plain_decimal(&text) else { return Ok(()) };
            // A blank in front takes the long way.
            let long = scan(&format!(" {text}"), Kind::Length).map(|scanned| (scanned.reading, scanned.unit));
            let Ok((Reading::Clear(long), unit)) = long else {
                return Err(TestCaseError::fail(text));
            };
            prop_assert_eq!(at_once, long);
            prop_assert!(unit.is_empty());
        }
    }

    #[test]
    fn a_plain_decimal_is_read_at_once_and_nothing_else() {
        for text in ["2.4483", ".0021", "0", "62", "007.50"] {
            assert!(plain_decimal(text).is_some(), "{text}");
        }
        for text in [
            "",
            ".",
            "2.",
            "-1",
            "1,5",
            "2.44.8",
            "5 in",
            "12345678901234567890",
        ] {
            assert!(plain_decimal(text).is_none(), "{text}");
        }
    }
}
