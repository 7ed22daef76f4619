//! Units of measurement, by symbol and by the names people type.

use std::fmt;

use super::Kind;
use super::factor::Factor;
use super::units::UNITS;

/// A unit that people at an engine bench type or read.
///
/// ```
/// use assembly_core::quantity::{unit, Kind};
/// let thou = unit("thou").unwrap();
/// assert_eq!(thou.kind, Kind::Length);
/// assert_eq!(thou.to_si(1.0), 0.0000254);
/// assert_eq!(unit("ft-lbs"), unit("lbf·ft"));
/// ```
#[derive(PartialEq, Eq)]
pub struct Unit {
    /// What is written after the number. Unique within its kind; empty for plain numbers.
    pub symbol: &'static str,
    /// Its name in a sentence.
    pub name: &'static str,
    /// What it is a unit of.
    pub kind: Kind,
    pub(super) factor: Factor,
    /// Added before multiplying: temperatures on a scale. Hundredths of the unit.
    pub(super) offset_hundredths: i64,
    /// Names that count only in this case, [`plain`] form, separated by spaces.
    pub(super) exact_names: &'static str,
    /// Names that count in any case, [`plain`] form, separated by spaces.
    pub(super) loose_names: &'static str,
    pub(super) digits: Digits,
}

/// How many digits make sense where no give-or-take is known.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Digits {
    /// So many decimals.
    Decimals(u8),
    /// So many decimals, and one more below this many units.
    FinerBelow(u8, Below),
    /// So many significant digits.
    Significant(u8),
}

/// Where a unit takes one more decimal.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Below {
    Tenth,
    Ten,
    Hundred,
}

impl fmt::Debug for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Unit({} of {:?})", self.symbol, self.kind)
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol)
    }
}

impl Unit {
    /// The number of SI units that so many of this unit are.
    #[must_use]
    pub fn to_si(&self, number: f64) -> f64 {
        self.step_to_si(number + self.offset())
    }

    /// How many of this unit so many SI units are.
    #[must_use]
    pub fn from_si(&self, si: f64) -> f64 {
        self.step_from_si(si) - self.offset()
    }

    /// The size of a step: a difference has no zero point.
    #[must_use]
    pub fn step_to_si(&self, step: f64) -> f64 {
        scaled(step, self.factor.numerator, self.factor.denominator)
    }

    /// A difference of so many SI units in this unit: without any zero point.
    #[must_use]
    pub fn step_from_si(&self, si: f64) -> f64 {
        scaled(si, self.factor.denominator, self.factor.numerator)
    }

    fn offset(&self) -> f64 {
        self.offset_hundredths as f64 / 100.0
    }

    /// Whether a blank stands between number and symbol.
    #[must_use]
    pub(super) fn stands_apart(&self) -> bool {
        !matches!(self.symbol, "" | "°" | "′")
    }

    pub(super) fn names(&self) -> impl Iterator<Item = &'static str> {
        let exact = self.exact_names.split_ascii_whitespace();
        exact.chain(self.loose_names.split_ascii_whitespace())
    }

    fn is_called(&self, plain: &str) -> Option<Match> {
        let mut exact = self.exact_names.split_ascii_whitespace();
        if exact.any(|name| name == plain) {
            return Some(Match::Exact);
        }
        let mut loose = self.loose_names.split_ascii_whitespace();
        loose
            .any(|name| name.eq_ignore_ascii_case(plain))
            .then_some(Match::Loose)
    }
}

/// Multiplies, then divides: both whole numbers are exact floats. The other way
/// round only where the product is too large for a float.
fn scaled(number: f64, by: u64, over: u64) -> f64 {
    let product = number * by as f64;
    if product.is_finite() {
        product / over as f64
    } else {
        number / over as f64 * by as f64
    }
}

#[derive(PartialEq, Eq)]
enum Match {
    Exact,
    Loose,
}

/// All units of one kind, the usual ones first.
pub fn units_of(kind: Kind) -> impl Iterator<Item = &'static Unit> + Clone {
    UNITS.iter().filter(move |unit| unit.kind == kind)
}

/// The unit with this symbol or one of its other names. Where two kinds share a
/// name (`°C`, `lb`), the more usual one; [`unit_of`] says which.
#[must_use]
pub fn unit(symbol: &str) -> Option<&'static Unit> {
    let plain = plain(symbol);
    if plain.is_empty() {
        return UNITS.iter().find(|unit| unit.symbol.is_empty());
    }
    find(UNITS.iter(), &plain)
}

/// The unit of this kind with this symbol or one of its other names.
#[must_use]
pub fn unit_of(kind: Kind, symbol: &str) -> Option<&'static Unit> {
    let plain = plain(symbol);
    if plain.is_empty() {
        return units_of(kind).find(|unit| unit.symbol.is_empty());
    }
    find(units_of(kind), &plain)
}

/// The unit of this kind with this symbol; where there is none, the kind's most
/// usual unit. For screens, which must show something.
#[must_use]
pub fn unit_or_usual(kind: Kind, symbol: &str) -> &'static Unit {
    #[expect(clippy::indexing_slicing, reason = "the compiler works it out")]
    static FIRST: &Unit = &UNITS[0];
    unit_of(kind, symbol)
        .or_else(|| units_of(kind).next())
        .unwrap_or(FIRST)
}

/// Looks a name up in [`plain`] form: as it stands, in any case, as a plural.
pub(super) fn find(
    units: impl Iterator<Item = &'static Unit> + Clone,
    plain: &str,
) -> Option<&'static Unit> {
    let called = |name: &str| {
        let exact = units
            .clone()
            .find(|unit| unit.is_called(name) == Some(Match::Exact));
        exact.or_else(|| units.clone().find(|unit| unit.is_called(name).is_some()))
    };
    called(plain).or_else(|| {
        let one = plain.strip_suffix(['s', 'S'])?;
        (one.len() > 1).then(|| called(one)).flatten()
    })
}

/// A unit's text with everything taken off that people write or leave out as
/// they like: blanks, dots, hyphens, multiplication signs, raised digits.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for word in text.split_whitespace() {
        if word.eq_ignore_ascii_case("per") {
            plain.push('/');
            continue;
        }
        for sign in word.chars() {
            match sign {
                '.' | '-' | '·' | '*' | '×' | '^' | '_' | '(' | ')' | '⁻' => {}
                '¹' => plain.push('1'),
                '²' => plain.push('2'),
                '³' => plain.push('3'),
                'µ' | 'μ' => plain.push('u'),
                '⋅' | '•' | '∙' | '‧' | '‐' | '‑' | '–' | '−' => {}
                other => plain.push(other),
            }
        }
    }
    plain
}
