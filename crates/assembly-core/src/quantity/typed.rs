//! A quantity as it was typed.

use std::fmt;

use super::number::Number;
use super::{Si, Unit};

/// What a person typed: the number digit for digit, and its unit.
///
/// `2.4480 in` and `2.448 in` are the same size and not the same text: the
/// first says that tenths were read. Two values are equal when number, digits
/// and unit are; what the text looked like doesn't count.
///
/// ```
/// use assembly_core::quantity::{read, unit, Kind};
/// let inch = unit("in").unwrap();
/// let typed = read("2-7/16\"", Kind::Length, inch).unwrap();
/// assert_eq!(typed.si(), 0.0619125);
/// assert_eq!(typed.resolution(), 0.0254 / 16.0);
/// assert_eq!(typed.to_string(), "2 7/16 in");
/// assert_eq!(typed.text(), "2-7/16\"");
/// ```
#[derive(Clone, Debug)]
pub struct Typed {
    pub(super) number: Number,
    unit: &'static Unit,
    unit_was_typed: bool,
    text: String,
    si: f64,
    resolution: f64,
}

impl Typed {
    pub(super) fn new(
        number: Number,
        unit: &'static Unit,
        unit_was_typed: bool,
        text: &str,
    ) -> Self {
        let shifted = match unit.offset_hundredths {
            0 => number.exact(),
            hundredths => number.exact().plus_hundredths(hundredths),
        };
        Self {
            number,
            unit,
            unit_was_typed,
            text: text.to_owned(),
            si: shifted.times(unit.factor),
            resolution: number.step().times(unit.factor),
        }
    }

    /// The number of SI units: the float nearest to the exact product.
    #[must_use]
    pub const fn si(&self) -> f64 {
        self.si
    }

    /// One step of the last digit typed, in SI units; of a fraction one step of
    /// its denominator.
    #[must_use]
    pub const fn resolution(&self) -> f64 {
        self.resolution
    }

    /// The unit, typed or taken from the field.
    #[must_use]
    pub const fn unit(&self) -> &'static Unit {
        self.unit
    }

    /// Whether the unit stood in the text.
    #[must_use]
    pub const fn unit_was_typed(&self) -> bool {
        self.unit_was_typed
    }

    /// The text exactly as it was typed.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Whether it was typed as a fraction.
    #[must_use]
    pub const fn is_fraction(&self) -> bool {
        matches!(self.number, Number::Fraction { .. })
    }

    /// The number without its unit, tidied: it reads back equal with the same unit.
    #[must_use]
    pub fn number(&self) -> String {
        self.number.to_string()
    }

    /// The typed quantity. The caller picks one of the unit's kind.
    ///
    /// ```
    /// use assembly_core::quantity::{read, unit, Kind};
    /// use uom::si::f64::Length;
    /// let bore: Length = read("62,20", Kind::Length, unit("mm").unwrap()).unwrap().quantity();
    /// assert_eq!(bore.value, 0.0622);
    /// ```
    #[must_use]
    pub fn quantity<Q: Si>(&self) -> Q {
        Q::from_si(self.si)
    }
}

impl PartialEq for Typed {
    fn eq(&self, other: &Self) -> bool {
        self.number == other.number && self.unit == other.unit
    }
}

/// Tidied text with its unit; it reads back equal.
impl fmt::Display for Typed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.number)?;
        if self.unit.stands_apart() {
            f.write_str(" ")?;
        }
        f.write_str(self.unit.symbol)
    }
}
