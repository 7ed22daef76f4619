//! How many parts stand where, and what they come to. Prices are kept as they
//! were typed; what can be read of them is added up, each currency by itself.

use std::collections::BTreeMap;

use build_journal::Day;
use build_journal::fact::PartStage;
use build_journal::fold::ListedPart;

use super::words::is_late;

/// A sum of money in hundredths, and the sign or word that stood beside it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Money {
    hundredths: i64,
    currency: String,
}

impl Money {
    /// Reads a price: a number with an optional currency before or behind it.
    /// `None` when it can be read in two ways or not at all.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let is_of_number = |sign: char| sign.is_ascii_digit() || matches!(sign, '.' | ',' | ' ');
        let text = text.trim().replace(['\u{a0}', '\u{202f}', '’', '\''], " ");
        let start = text.find(|sign: char| sign.is_ascii_digit())?;
        let (before, rest) = text.split_at_checked(start)?;
        let end = rest.find(|sign| !is_of_number(sign)).unwrap_or(rest.len());
        let (number, behind) = rest.split_at_checked(end)?;
        let currency = match (before.trim(), behind.trim()) {
            (one, "") | ("", one) => one,
            _ => return None,
        };
        if currency
            .chars()
            .any(|sign| sign.is_numeric() || matches!(sign, '-' | '−'))
        {
            return None;
        }
        Some(Self {
            hundredths: hundredths(number.trim())?,
            currency: currency.to_owned(),
        })
    }
}

/// A number with at most two digits behind its mark. One or two digits behind
/// the last mark are hundredths, three are thousands; anything else is unclear.
fn hundredths(number: &str) -> Option<i64> {
    let mark = number.rfind(['.', ',']);
    let (whole, part) = match mark.and_then(|at| number.split_at_checked(at)) {
        None => (number, ""),
        Some((whole, part)) => match part.get(1..)? {
            "" => return None,
            digits if digits.len() <= 2 => (whole, digits),
            digits if digits.len() == 3 && !whole.contains(' ') => (number, ""),
            _ => return None,
        },
    };
    let mut groups = whole.split(['.', ',', ' ']);
    let first = groups.next()?;
    let rest: Vec<&str> = groups.collect();
    let grouped =
        rest.iter().all(|group| group.len() == 3) && (rest.is_empty() || first.len() <= 3);
    let digits: String = std::iter::once(first).chain(rest).collect();
    let right = |text: &str| text.bytes().all(|one| one.is_ascii_digit());
    if !grouped || digits.is_empty() || !right(&digits) || !right(part) {
        return None;
    }
    let cents: i64 = format!("{part:0<2}").parse().ok()?;
    let whole: i64 = digits.parse().ok()?;
    whole.checked_mul(100)?.checked_add(cents)
}

/// Where the parts of a build stand.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Totals {
    waited: usize,
    late: usize,
    here: usize,
    fitted: usize,
    sums: BTreeMap<String, i64>,
    unread: usize,
    unpriced: usize,
}

impl Totals {
    /// Counts the parts of a list. Parts that went back cost nothing.
    #[must_use]
    pub fn of(parts: &[ListedPart], today: Day) -> Self {
        let mut totals = Self::default();
        for part in parts {
            match part.stage {
                PartStage::Wanted | PartStage::Ordered => totals.waited += 1,
                PartStage::Here | PartStage::Checked => totals.here += 1,
                PartStage::Fitted => totals.fitted += 1,
                PartStage::Returned => continue,
            }
            totals.late += usize::from(is_late(part, today));
            match part.listed.price.as_deref().map(Money::read) {
                None => totals.unpriced += 1,
                Some(None) => totals.unread += 1,
                Some(Some(money)) => {
                    let sum = totals.sums.entry(money.currency).or_default();
                    match sum.checked_add(money.hundredths) {
                        Some(more) => *sum = more,
                        None => totals.unread += 1,
                    }
                }
            }
        }
        totals
    }

    /// The parts in one line.
    #[must_use]
    pub fn parts_words(&self) -> String {
        let mut words = match self.waited {
            0 => "Nothing is waited for".to_owned(),
            more => format!("{more} waited for"),
        };
        if self.late > 0 {
            words.push_str(&format!(", {} of them late", self.late));
        }
        format!("{words} · {} here · {} fitted.", self.here, self.fitted)
    }

    /// What they come to; `None` when no part has a price.
    #[must_use]
    pub fn money_words(&self) -> Option<String> {
        if self.sums.is_empty() && self.unread == 0 {
            return None;
        }
        let sums: Vec<String> = self
            .sums
            .iter()
            .map(|(currency, sum)| {
                format!("{}.{:02} {currency}", sum / 100, sum % 100)
                    .trim_end()
                    .to_owned()
            })
            .collect();
        let mut words = if sums.is_empty() {
            "No price can be added up.".to_owned()
        } else {
            format!("Prices: {}.", sums.join(" and "))
        };
        let mut say = |count: usize, one: &str, more: &str| match count {
            0 => {}
            1 => words.push_str(&format!(" One price {one}.")),
            count => words.push_str(&format!(" {count} prices {more}.")),
        };
        let unread = "can't be read as one number";
        say(self.unread, unread, unread);
        say(self.unpriced, "is not said", "are not said");
        Some(words)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::PartListed;
    use build_journal::{DeviceId, FactId, PartId, Stamper};

    fn fact() -> FactId {
        let _ = DeviceId::from_random(1);
        Stamper::new().stamp(1, 1)
    }

    fn part(stage: PartStage, price: Option<&str>, promised: Option<&str>) -> ListedPart {
        ListedPart {
            fact: fact(),
            listed: PartListed {
                part: PartId::from_random(1),
                name: "rings".to_owned(),
                supply: None,
                place: None,
                size: None,
                quantity: None,
                supplier: None,
                price: price.map(str::to_owned),
                lot: None,
            },
            stage,
            promised: promised.and_then(Day::read),
            words: None,
        }
    }

    #[test]
    fn prices_are_read_as_people_write_them() {
        let read = |text| Money::read(text).map(|money| (money.hundredths, money.currency));
        for (text, hundredths, currency) in [
            ("85", 8500, ""),
            ("85.5", 8550, ""),
            ("85,50 €", 8550, "€"),
            ("$ 1,240.00", 124_000, "$"),
            ("1.240,00 €", 124_000, "€"),
            ("1 240", 124_000, ""),
            ("1,240", 124_000, ""),
            ("12,345,678", 1_234_567_800, ""),
            ("0.99 kr", 99, "kr"),
        ] {
            assert_eq!(
                read(text),
                Some((hundredths, currency.to_owned())),
                "{text}"
            );
        }
        for text in [
            "",
            "about",
            "1.2345",
            "4 x 20",
            "1,24,0",
            "85.",
            "-3",
            "1 24",
            "9999999999999999999",
        ] {
            assert_eq!(read(text), None, "{text}");
        }
    }

    #[test]
    fn currencies_are_not_mixed_and_what_is_missing_is_said() {
        let parts = [
            part(PartStage::Ordered, Some("100 €"), Some("2026-12-01")),
            part(PartStage::Here, Some("20,25 €"), None),
            part(PartStage::Fitted, Some("7 $"), None),
            part(PartStage::Wanted, Some("4 x 20"), None),
            part(PartStage::Wanted, None, None),
            part(PartStage::Returned, Some("1000 €"), None),
        ];
        let totals = Totals::of(&parts, Day::read("2026-12-04").unwrap());
        assert_eq!(
            totals.parts_words(),
            "3 waited for, 1 of them late · 1 here · 1 fitted."
        );
        assert_eq!(
            totals.money_words().unwrap(),
            "Prices: 7.00 $ and 120.25 €. One price can't be read as one number. One price is not said."
        );
        assert_eq!(Totals::of(&[], Day::of(0)).money_words(), None);
    }
}
