//! From characters to a number and the unit text behind it.

use super::number::Number;
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
        left: usual.trim(),
        kind,
    };
    let reading = scanner.number()?;
    Ok(Scanned {
        reading,
        unit: scanner.left.trim().to_owned(),
    })
}

/// Writes the many signs people's keyboards give as the one meant.
fn usual_signs(text: &str) -> String {
    let mut usual = String::with_capacity(text.len() + 8);
    for sign in text.chars() {
        match sign {
            '−' | '–' | '—' | '‐' | '‑' | '﹣' | '－' => usual.push('-'),
            '＋' => usual.push('+'),
            '⁄' | '∕' | '÷' => usual.push('/'),
            '′' | '’' | '‘' => usual.push('\''),
            '″' | '”' | '“' | '„' => usual.push('"'),
            '⋅' | '•' | '∙' | '‧' => usual.push('·'),
            'μ' => usual.push('µ'),
            'º' | '˚' => usual.push('°'),
            '℃' => usual.push_str("°C"),
            '℉' => usual.push_str("°F"),
            _ if sign.is_whitespace() => usual.push(' '),
            _ => match fraction_sign(sign) {
                // Blanks keep its digits apart from the neighbours'.
                Some(fraction) => {
                    usual.push(' ');
                    usual.push_str(fraction);
                    usual.push(' ');
                }
                None => usual.push(sign),
            },
        }
    }
    usual
}

const fn fraction_sign(sign: char) -> Option<&'static str> {
    Some(match sign {
        '½' => "1/2",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅕' => "1/5",
        '⅖' => "2/5",
        '⅗' => "3/5",
        '⅘' => "4/5",
        '⅙' => "1/6",
        '⅚' => "5/6",
        '⅐' => "1/7",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅑' => "1/9",
        '⅒' => "1/10",
        _ => return None,
    })
}

struct Scanner<'a> {
    read: &'a str,
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
        let first = self.run(|sign| is_digit(sign) || matches!(sign, '.' | ','));
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
        self.nothing_numeric_follows(first)?;
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
        let (run, left) = split_while(below, |sign| is_digit(sign) || matches!(sign, '.' | ','));
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
        self.nothing_numeric_follows(run)?;
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

    /// Behind a whole number part there may be a unit, but no second number.
    fn nothing_numeric_follows(&self, first: &str) -> Result<(), ReadError> {
        let after = self.left.trim_start();
        let bare = after.strip_prefix('-').unwrap_or(after).trim_start();
        let (second, rest) = split_while(bare, |sign| is_digit(sign) || matches!(sign, '.' | ','));
        // `1/K` and `10:1` are units; a number behind a number is not.
        if !second.starts_with(|sign| is_digit(sign) || sign == '.') || !second.contains(is_digit) {
            return Ok(());
        }
        Err(ReadError::TwoNumbers {
            read: self.read(),
            first: first.to_owned(),
            second: second.to_owned(),
            unfinished: rest.trim().is_empty()
                && is_plain(first)
                && is_plain(second)
                && !self.read.contains(['/', '⁄']),
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

fn raised_digit(sign: char) -> Option<i32> {
    let raised = match sign {
        '⁰' => 0,
        '¹' => 1,
        '²' => 2,
        '³' => 3,
        '⁴' => 4,
        '⁵' => 5,
        '⁶' => 6,
        '⁷' => 7,
        '⁸' => 8,
        '⁹' => 9,
        _ => return sign.to_digit(10)?.try_into().ok(),
    };
    Some(raised)
}

/// What points and commas in a run of digits mean.
enum Separated {
    /// Digits with at most one decimal point.
    Clear(String),
    /// One comma, one to three digits before it, exactly three behind.
    Either(String, String),
    OpenPoint,
    TwoPoints,
    Misplaced {
        unfinished: bool,
    },
}

fn separators(run: &str) -> Separated {
    let points = run.matches('.').count();
    let commas = run.matches(',').count();
    let open = run.ends_with(['.', ',']);
    match (points, commas) {
        (0, 0) => Separated::Clear(run.to_owned()),
        (1, 0) if open => Separated::OpenPoint,
        (1, 0) => Separated::Clear(run.to_owned()),
        (0, 1) => one_comma(run),
        (0, _) => grouped(run, ','),
        (_, 0) => Separated::TwoPoints,
        (1, _) if run.rfind('.') > run.rfind(',') => with_groups(run, ',', '.'),
        (_, 1) if run.rfind(',') > run.rfind('.') => with_groups(run, '.', ','),
        (1, _) => Separated::Misplaced { unfinished: false },
        _ => Separated::TwoPoints,
    }
}

fn one_comma(run: &str) -> Separated {
    let (whole, part) = run.split_once(',').unwrap_or((run, ""));
    if part.is_empty() {
        return Separated::OpenPoint;
    }
    let decimal = format!("{whole}.{part}");
    if part.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0') {
        Separated::Either(decimal, format!("{whole}{part}"))
    } else {
        Separated::Clear(decimal)
    }
}

/// A whole number whose digits stand in groups.
fn grouped(run: &str, between: char) -> Separated {
    if fits_groups(run, between) {
        return Separated::Clear(run.replace(between, ""));
    }
    let (front, last) = run.rsplit_once(between).unwrap_or((run, ""));
    Separated::Misplaced {
        unfinished: last.len() < 3 && fits_groups(front, between),
    }
}

fn with_groups(run: &str, between: char, point: char) -> Separated {
    let (whole, part) = run.rsplit_once(point).unwrap_or((run, ""));
    if !fits_groups(whole, between) {
        Separated::Misplaced { unfinished: false }
    } else if part.is_empty() {
        Separated::OpenPoint
    } else {
        Separated::Clear(format!("{}.{part}", whole.replace(between, "")))
    }
}

/// One to three digits, the first no zero, then groups of three.
fn fits_groups(run: &str, between: char) -> bool {
    let mut groups = run.split(between);
    let first = groups.next().unwrap_or("");
    (1..=3).contains(&first.len())
        && !first.starts_with('0')
        && groups.all(|group| group.len() == 3)
}
