//! Showing a result with the digits that make sense.

use std::fmt;

use super::Unit;
use super::unit::{Below, Digits};

/// A number as it is shown, in parts that a screen can set as it likes. The
/// minus sign is a real one (−), and zero never has it.
#[derive(Clone, PartialEq, Debug)]
pub struct Shown {
    /// The number's digits.
    pub number: String,
    /// The digits of its give-or-take, to the same decimal place.
    pub give_or_take: Option<String>,
    /// The unit of both.
    pub unit: &'static Unit,
}

/// `2.4483 ± 0.0002 in`
impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.number)?;
        if let Some(give_or_take) = &self.give_or_take {
            write!(f, " ± {give_or_take}")?;
        }
        if self.unit.stands_apart() {
            f.write_str(" ")?;
        }
        f.write_str(self.unit.symbol)
    }
}

/// What is shown for something that is not a finite number.
const NO_NUMBER: &str = "no number";
/// From this size on a number is written with a power of ten.
const LARGE: f64 = 1e15;
/// No float has more significant digits than this.
const FLOAT_DIGITS: i32 = 15;
/// More decimals than this are never written out.
const MOST_DECIMALS: i32 = 20;

/// Shows a number of SI units in a unit.
///
/// With a give-or-take (SI units too) that has one significant digit, two when
/// the first is a 1, and the number goes to the same place. Without one, the
/// number has as many digits as make sense in the unit.
///
/// ```
/// use assembly_core::quantity::{show, unit};
/// let thou = unit("thou").unwrap();
/// let shown = show(0.00005334, Some(0.0000046), thou);
/// assert_eq!(shown.to_string(), "2.10 ± 0.18 thou");
/// assert_eq!(show(-0.00005334, None, thou).number, "−2.1");
/// ```
#[must_use]
pub fn show(si: f64, give_or_take_si: Option<f64>, unit: &'static Unit) -> Shown {
    let number = unit.from_si(si);
    let give_or_take = give_or_take_si
        .map(|spread| unit.step_from_si(spread).abs())
        .filter(|spread| *spread > 0.0 && spread.is_finite());
    let Some(spread) = give_or_take else {
        let place = usual_place(unit, number);
        return Shown {
            number: written(number, place),
            give_or_take: None,
            unit,
        };
    };
    let place = spread_place(spread).max(finest_place(number));
    let spread = written(spread, place);
    Shown {
        number: written(number, place),
        // A give-or-take too small for the number's digits says nothing.
        give_or_take: spread
            .contains(|sign| ('1'..='9').contains(&sign))
            .then_some(spread),
        unit,
    }
}

/// Shows a lower limit, rounded inward: never below the limit itself.
///
/// ```
/// use assembly_core::quantity::{show_high_limit, show_low_limit, unit};
/// let inch = unit("in").unwrap();
/// // 0.025 mm is 0.00098425… in.
/// assert_eq!(show_low_limit(0.000_025, inch).number, "0.00099");
/// assert_eq!(show_high_limit(0.000_025, inch).number, "0.00098");
/// // A limit that was typed in the unit is shown as it was typed.
/// assert_eq!(show_high_limit(0.000_0381, inch).number, "0.0015");
/// ```
#[must_use]
pub fn show_low_limit(si: f64, unit: &'static Unit) -> Shown {
    limit(si, unit, f64::ceil)
}

/// Shows an upper limit, rounded inward: never above the limit itself.
/// See [`show_low_limit`].
#[must_use]
pub fn show_high_limit(si: f64, unit: &'static Unit) -> Shown {
    limit(si, unit, f64::floor)
}

fn limit(si: f64, unit: &'static Unit, inward: fn(f64) -> f64) -> Shown {
    let number = unit.from_si(si);
    let usual = match unit.digits {
        Digits::Decimals(decimals) | Digits::FinerBelow(decimals, _) => -i32::from(decimals),
        Digits::Significant(_) => usual_place(unit, number),
    };
    let on_step = |place: i32| {
        let steps = number / power_of_ten(place);
        let whole = steps.round();
        // Converting there and back leaves a few units in the last binary digit.
        (steps - whole).abs() <= 1e-12 + whole.abs() * 1e-14
    };
    let shown = |number: f64, place: i32| Shown {
        number: written(number, place),
        give_or_take: None,
        unit,
    };
    if !number.is_finite() || number.abs() >= LARGE || on_step(usual) {
        return shown(number, usual);
    }
    // One more place, so that a narrow window survives.
    let place = (usual - 1).max(finest_place(number));
    if on_step(place) {
        return shown(number, place);
    }
    let steps = inward(number / power_of_ten(place));
    shown(times_power_of_ten(steps, place), place)
}

/// The place (power of ten) of the last digit of a give-or-take.
fn spread_place(spread: f64) -> i32 {
    let first = first_place(spread);
    let leading = spread / power_of_ten(first);
    if leading < 1.95 { first - 1 } else { first }
}

/// The place of the first significant digit.
fn first_place(number: f64) -> i32 {
    if number == 0.0 || !number.is_finite() {
        return 0;
    }
    let guess = libm::log10(number.abs()).floor() as i32;
    // The logarithm of 0.001 may fall a hair short of −3.
    if number.abs() >= power_of_ten(guess + 1) {
        guess + 1
    } else {
        guess
    }
}

/// The last place in which a float of this size has a digit of its own.
fn finest_place(number: f64) -> i32 {
    (first_place(number) - FLOAT_DIGITS).max(-MOST_DECIMALS)
}

fn usual_place(unit: &Unit, number: f64) -> i32 {
    match unit.digits {
        Digits::Decimals(decimals) => -i32::from(decimals),
        Digits::FinerBelow(decimals, below) => {
            let limit = match below {
                Below::Tenth => 0.1,
                Below::Ten => 10.0,
                Below::Hundred => 100.0,
            };
            -i32::from(decimals) - i32::from(number.abs() < limit)
        }
        Digits::Significant(digits) => {
            (first_place(number) + 1 - i32::from(digits)).clamp(-MOST_DECIMALS, 0)
        }
    }
}

fn power_of_ten(place: i32) -> f64 {
    times_power_of_ten(1.0, place)
}

/// Dividing by a whole power of ten rounds once, multiplying by 0.1 twice.
fn times_power_of_ten(number: f64, place: i32) -> f64 {
    if place < 0 {
        number / libm::pow(10.0, f64::from(-place))
    } else {
        number * libm::pow(10.0, f64::from(place))
    }
}

/// The number's digits down to a place.
fn written(number: f64, place: i32) -> String {
    if !number.is_finite() {
        return NO_NUMBER.to_owned();
    }
    let size = number.abs();
    let text = if size >= LARGE {
        let first = first_place(size);
        format!("{:.4}e{first}", size / power_of_ten(first))
    } else if place > 0 {
        let steps = (size / power_of_ten(place)).round();
        format!("{:.0}", times_power_of_ten(steps, place))
    } else {
        let decimals = usize::try_from(-place.max(-MOST_DECIMALS)).unwrap_or(0);
        format!("{size:.decimals$}")
    };
    let is_zero = !text.contains(|sign| ('1'..='9').contains(&sign));
    if number < 0.0 && !is_zero {
        format!("\u{2212}{text}")
    } else {
        text
    }
}
