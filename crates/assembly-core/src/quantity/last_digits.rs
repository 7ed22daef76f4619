//! The last digits of a reading: at the bench only those change from place to
//! place, so only those are typed.

use super::number::Number;
use super::{Shown, Typed, Unit, read, show};

/// A number with fewer decimals is typed whole as quickly.
const DECIMALS: i32 = 2;
/// Digits without a point that lie as near to the number beside them, as a share
/// of it, may be a whole number.
const MAY_BE_WHOLE: f64 = 0.2;
/// Two readings of the same digits are both asked about when twice the distance
/// of the farther one is less than so many times that of the nearer one.
const HALVES: u128 = 3;

/// What the last digits of a reading can mean beside a number that is near: the
/// one number, or both when two are about as near; nothing when the text is not
/// just digits, or the number beside it is not of this unit or has too few
/// decimals. The numbers have as many decimals as the one beside, and a text that
/// reads by itself: that is what gets written down.
///
/// The rules are ours: nearest wins, and where it is not clearly nearest a person
/// chooses.
///
/// ```
/// use assembly_core::quantity::{Kind, last_digits, read, unit};
/// let inch = unit("in").unwrap();
/// let last = read("2.4483", Kind::Length, inch).unwrap();
/// let meant = last_digits("91", &last, inch);
/// assert_eq!(meant.len(), 1);
/// assert_eq!(meant[0].text(), "2.4491");
/// // Half a hundredth up or down: nobody can tell.
/// let both: Vec<String> = last_digits("33", &last, inch).iter().map(|one| one.text().to_owned()).collect();
/// assert_eq!(both, ["2.4433", "2.4533"]);
/// assert!(last_digits("2.4491", &last, inch).is_empty());
/// ```
#[must_use]
pub fn last_digits(text: &str, near: &Typed, lone: &'static Unit) -> Vec<Typed> {
    meanings(text, near, lone).unwrap_or_default()
}

fn meanings(text: &str, near: &Typed, lone: &'static Unit) -> Option<Vec<Typed>> {
    let Number::Decimal {
        negative: false,
        digits: beside,
        exponent,
    } = near.number
    else {
        return None;
    };
    let decimals = exponent.checked_neg().filter(|many| *many >= DECIMALS)?;
    if near.unit() != lone || near.unit().offset_hundredths != 0 {
        return None;
    }
    let text = text.trim();
    let (typed, all_decimals) = match text.strip_prefix(['.', ',']) {
        Some(rest) => (rest, true),
        None => (text, false),
    };
    let count = u32::try_from(typed.len()).ok()?;
    let decimals = u32::try_from(decimals).ok()?;
    let fits = if all_decimals {
        count == decimals
    } else {
        count <= decimals
    };
    // At least one digit of the number beside it has to stay.
    let stays = beside.checked_ilog10()? >= count;
    let only_digits = !typed.is_empty() && typed.bytes().all(|sign| sign.is_ascii_digit());
    if !(fits && stays && only_digits) {
        return None;
    }
    let typed: u128 = typed.parse().ok()?;
    let step = 10_u128.checked_pow(count)?;
    let same = beside / step * step + typed;
    let around = [same.checked_sub(step), Some(same), same.checked_add(step)];
    let mut found: Vec<u128> = around.into_iter().flatten().collect();
    found.sort_by_key(|one| one.abs_diff(beside));
    let nearest = *found.first()?;
    let is_near = |one: &u128| {
        let twice = one.abs_diff(beside).saturating_mul(2);
        twice < HALVES.saturating_mul(nearest.abs_diff(beside))
    };
    found.retain(|one| *one == nearest || is_near(one));
    found.sort_unstable();
    let whole = read(text, lone.kind, lone).ok();
    let whole = whole.filter(|whole| {
        // Nobody begins a whole number with a zero.
        !text.starts_with('0') && (whole.si() - near.si()).abs() <= MAY_BE_WHOLE * near.si().abs()
    });
    let meant = found.into_iter().filter_map(|digits| {
        let number = Number::Decimal {
            negative: false,
            digits,
            exponent,
        };
        read(&number.to_string(), lone.kind, lone).ok()
    });
    Some(meant.chain(whole).collect())
}

/// What a needle that stands off its zero says of the size: the zero's size, and
/// the deviation added or taken away by the needle's sense.
///
/// ```
/// use assembly_core::quantity::{Kind, off_zero, read, unit};
/// let inch = unit("in").unwrap();
/// let zero = read("4.0000", Kind::Length, inch).unwrap();
/// let needle = read("-3 tenths", Kind::Length, inch).unwrap();
/// assert_eq!(off_zero(&zero, &needle, true).to_string(), "3.9997 in");
/// assert_eq!(off_zero(&zero, &needle, false).to_string(), "4.0003 in");
/// ```
#[must_use]
pub fn off_zero(zero: &Typed, needle: &Typed, plus_is_larger: bool) -> Shown {
    let sense = if plus_is_larger { 1.0 } else { -1.0 };
    let sum = zero.si() + sense * needle.si();
    show(sum, None, zero.unit())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Kind, unit};

    fn texts(text: &str, near: &str, symbol: &str) -> Vec<String> {
        let lone = unit(symbol).unwrap();
        let near = read(near, Kind::Length, lone).unwrap();
        let meant = last_digits(text, &near, lone);
        meant.iter().map(|one| one.text().to_owned()).collect()
    }

    #[test]
    fn the_nearest_number_that_ends_so_is_meant() {
        assert_eq!(texts("91", "2.4483", "in"), ["2.4491"]);
        assert_eq!(texts("5", "2.4483", "in"), ["2.4485"]);
        assert_eq!(texts("05", "102.013", "mm"), ["102.005"]);
        assert_eq!(texts("479", "2.4483", "in"), ["2.4479"]);
        // Over the edge of the hundred, both ways.
        assert_eq!(texts("02", "2.4498", "in"), ["2.4502"]);
        assert_eq!(texts("98", "2.4502", "in"), ["2.4498"]);
        assert_eq!(texts(".4491", "2.4483", "in"), ["2.4491"]);
        assert_eq!(texts("83", "2.4483", "in"), ["2.4483"]);
    }

    #[test]
    fn where_two_are_about_as_near_both_are_offered() {
        assert_eq!(texts("33", "2.4483", "in"), ["2.4433", "2.4533"]);
        assert_eq!(texts("8", "2.4483", "in"), ["2.4478", "2.4488"]);
        assert_eq!(texts("20", "2.4483", "in"), ["2.4520"]);
    }

    #[test]
    fn digits_that_may_be_the_whole_number_are_asked_about() {
        assert_eq!(texts("102", "102.013", "mm"), ["102.102", "102"]);
        assert_eq!(texts("2", "2.1483", "in"), ["2.1482", "2"]);
    }

    #[test]
    fn anything_else_is_not_taken_for_last_digits() {
        for text in [
            "",
            "2.4491",
            "-3",
            "91 mm",
            "1/2",
            "٣",
            "4 91",
            "24491",
            ".449",
            "9".repeat(60).as_str(),
        ] {
            assert!(texts(text, "2.4483", "in").is_empty(), "{text}");
        }
        // Typed whole as quickly.
        assert!(texts("17", "16.5", "thou").is_empty());
        assert!(texts("7", "16", "thou").is_empty());
        assert!(texts("7", "2 7/16", "in").is_empty());
        assert!(texts("7", "-2.4483", "in").is_empty());
        // The number beside it is of another unit.
        assert!(texts("91", "2.4483 in", "mm").is_empty());
        // A number of nothing but these digits.
        assert!(texts("12", "0.04", "mm").is_empty());
    }

    #[test]
    fn a_needle_goes_off_its_zero_by_its_sense() {
        let inch = unit("in").unwrap();
        let of = |text: &str| read(text, Kind::Length, inch).unwrap();
        let at =
            |zero: &str, needle: &str, larger| off_zero(&of(zero), &of(needle), larger).to_string();
        assert_eq!(at("2.4483", "2.1 thou", true), "2.4504 in");
        assert_eq!(at("2.4483", "2.1 thou", false), "2.4462 in");
    }
}
