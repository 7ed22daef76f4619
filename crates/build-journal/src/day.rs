//! A day of the calendar, as it is promised or written down.

use std::fmt;

const MS: i64 = 24 * 60 * 60 * 1000;

/// A day of the Gregorian calendar, counted from 1970-01-01.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Day(i64);

impl Day {
    /// The day written year-month-day, as in 2026-12-04 (ISO 8601).
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut parts = text.trim().splitn(3, '-');
        let mut next = |digits: usize| -> Option<i64> {
            let part = parts.next()?;
            let right = part.len() == digits && part.bytes().all(|one| one.is_ascii_digit());
            right.then(|| part.parse().ok())?
        };
        let (year, month, day) = (next(4)?, next(2)?, next(2)?);
        let made = Self(days(year, month, day));
        // The 31st of a short month would come out as another day.
        (made.date() == (year, month, day)).then_some(made)
    }

    /// The day that a moment falls on, in universal time; milliseconds since 1970.
    #[must_use]
    pub const fn of(ms: i64) -> Self {
        Self(ms.div_euclid(MS))
    }

    /// The moment it begins, in universal time; milliseconds since 1970.
    #[must_use]
    pub const fn begins(self) -> i64 {
        self.0 * MS
    }

    /// Year, month and day of the month.
    ///
    /// The count goes from the first of March of year 0 in eras of 400 years;
    /// the formula is from memory, and a test holds it to another calendar.
    #[must_use]
    pub const fn date(self) -> (i64, i64, i64) {
        let from_march = self.0 + 719_468;
        let era = from_march.div_euclid(146_097);
        let day_of_era = from_march.rem_euclid(146_097);
        let year_of_era =
            (day_of_era - day_of_era / 1460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
        let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
        let month = (5 * day_of_year + 2) / 153;
        let day = day_of_year - (153 * month + 2) / 5 + 1;
        let month = if month < 10 { month + 3 } else { month - 9 };
        let year = year_of_era + era * 400 + if month <= 2 { 1 } else { 0 };
        (year, month, day)
    }
}

/// Days since 1970-01-01.
const fn days(year: i64, month: i64, day: i64) -> i64 {
    let year = if month <= 2 { year - 1 } else { year };
    let era = year.div_euclid(400);
    let year_of_era = year.rem_euclid(400);
    let month = if month > 2 { month - 3 } else { month + 9 };
    let day_of_year = (153 * month + 2) / 5 + day - 1;
    let day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
    era * 146_097 + day_of_era - 719_468
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.date();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_come_out_as_the_calendar_has_them() {
        // Sources: 2000-03-01 is day 11017 and 2026-01-01 day 20454, by Python's
        // datetime.date(...).toordinal() - 719163.
        for (text, day) in [
            ("1970-01-01", 0),
            ("1969-12-31", -1),
            ("2000-02-29", 11_016),
            ("2000-03-01", 11_017),
            ("2026-01-01", 20_454),
        ] {
            assert_eq!(Day::read(text), Some(Day(day)), "{text}");
            assert_eq!(Day(day).to_string(), text);
        }
        for one in -200_000..200_000 {
            let (year, month, day) = Day(one).date();
            assert_eq!(days(year, month, day), one);
        }
    }

    #[test]
    fn what_is_no_day_is_none() {
        for text in [
            "",
            "2026-02-30",
            "2025-02-29",
            "2026-13-01",
            "2026-00-10",
            "2026-1-1",
            "26-01-01",
            "2026-01-01x",
            "+026-01-01",
            "next week",
        ] {
            assert_eq!(Day::read(text), None, "{text}");
        }
    }

    #[test]
    fn a_moment_falls_on_the_day_it_is_in() {
        assert_eq!(Day::of(-1), Day(-1));
        assert_eq!(Day::of(MS - 1), Day(0));
        assert_eq!(Day::of(Day(20_454).begins()), Day(20_454));
    }
}
