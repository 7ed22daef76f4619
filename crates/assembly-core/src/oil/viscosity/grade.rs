//! Engine oil grades: what each must hold, cold and hot.
//!
//! SAE J300, table of the 2015-01-20 revision; the limits are carried unchanged
//! into the 2021 and 2024 editions as far as known. The hot viscosity at 100 °C
//! reaches its lower limit and stays below its upper one.

use std::fmt;

use super::error::OilError;

/// A winter grade: the cold limits. Temperatures in °C, viscosities in mPa·s but
/// the last in mm²/s.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Winter {
    /// The number before the W.
    pub number: u32,
    /// Cold cranking: where it is tried.
    pub cranking_at: f64,
    /// Cold cranking: the most it may resist.
    pub cranking_most: f64,
    /// Pumping: where it is tried.
    pub pumping_at: f64,
    /// Pumping: the most, with no yield stress.
    pub pumping_most: f64,
    /// Least viscosity at 100 °C, mm²/s.
    pub hot_least: f64,
    /// Index of most oils of this grade and half the width that they spread over:
    /// common practice, from memory, for when the oil's sheet is not at hand.
    pub usual_index: (f64, f64),
}

/// A hot grade: the number without a W. Viscosities at 100 °C in mm²/s.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Summer {
    /// The grade's number.
    pub number: u32,
    /// Least viscosity at 100 °C; reaching it is enough.
    pub hot_least: f64,
    /// It must stay below this.
    pub hot_below: f64,
    /// Least viscosity at 150 °C and a shear rate of 10⁶ a second, mPa·s.
    pub sheared_least: f64,
}

const fn winter(
    number: u32,
    cranking: (f64, f64),
    pumping_at: f64,
    hot_least: f64,
    usual_index: (f64, f64),
) -> Winter {
    Winter {
        number,
        cranking_at: cranking.0,
        cranking_most: cranking.1,
        pumping_at,
        pumping_most: 60_000.0,
        hot_least,
        usual_index,
    }
}

const fn summer(number: u32, hot_least: f64, hot_below: f64, sheared_least: f64) -> Summer {
    Summer {
        number,
        hot_least,
        hot_below,
        sheared_least,
    }
}

/// All winter grades.
pub static WINTER: [Winter; 6] = [
    winter(0, (-35.0, 6200.0), -40.0, 3.8, (170.0, 15.0)),
    winter(5, (-30.0, 6600.0), -35.0, 3.8, (162.0, 15.0)),
    winter(10, (-25.0, 7000.0), -30.0, 4.1, (147.0, 15.0)),
    winter(15, (-20.0, 7000.0), -25.0, 5.6, (137.0, 12.0)),
    winter(20, (-15.0, 9500.0), -20.0, 5.6, (123.0, 12.0)),
    winter(25, (-10.0, 13_000.0), -15.0, 9.3, (110.0, 12.0)),
];

/// All hot grades. A 40 asks 3.5 of oils that are 0W, 5W or 10W too and 3.7 of
/// the others; 3.7 stands here, see [`Grade::sheared_least`].
pub static SUMMER: [Summer; 8] = [
    summer(8, 4.0, 6.1, 1.7),
    summer(12, 5.0, 7.1, 2.0),
    summer(16, 6.1, 8.2, 2.3),
    summer(20, 6.9, 9.3, 2.6),
    summer(30, 9.3, 12.5, 2.9),
    summer(40, 12.5, 16.3, 3.7),
    summer(50, 16.3, 21.9, 3.7),
    summer(60, 21.9, 26.1, 3.7),
];

/// What a 40 with a 0W, 5W or 10W before it must hold sheared, mPa·s.
const LIGHT_40_SHEARED: f64 = 3.5;

/// The least of a 20 at 100 °C before the grade 16 was added in 2013, mm²/s
/// (SAE J300 of December 1999).
const OLD_20_LEAST: f64 = 5.6;

/// Index of single-grade oils: common practice, from memory.
const SINGLE_GRADE_INDEX: (f64, f64) = (100.0, 10.0);

/// Which edition of the table.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Edition {
    /// January 2015 and after.
    Now,
    /// December 1999: cans on old shelves.
    December1999,
}

impl Winter {
    /// The grade of this number.
    #[must_use]
    pub fn find(number: u32) -> Option<&'static Self> {
        WINTER.iter().find(|one| one.number == number)
    }
}

impl Summer {
    /// The grade of this number.
    #[must_use]
    pub fn find(number: u32) -> Option<&'static Self> {
        SUMMER.iter().find(|one| one.number == number)
    }

    /// The least viscosity at 100 °C in that edition, mm²/s.
    #[must_use]
    pub fn hot_least_in(&self, edition: Edition) -> f64 {
        if self.number == 20 && edition == Edition::December1999 {
            OLD_20_LEAST
        } else {
            self.hot_least
        }
    }

    /// The grade of an oil from its viscosity at 100 °C (mm²/s) and sheared at
    /// 150 °C (mPa·s): the highest number of which both pass; the ranges of the
    /// thin grades overlap. `None` when no grade takes it.
    #[must_use]
    pub fn of_oil(at_100: f64, sheared: f64) -> Option<&'static Self> {
        SUMMER.iter().rev().find(|grade| {
            let least = if grade.number == 40 {
                LIGHT_40_SHEARED
            } else {
                grade.sheared_least
            };
            at_100 >= grade.hot_least && at_100 < grade.hot_below && sheared >= least
        })
    }
}

/// A grade as it stands on the can: a hot number, and a winter one if it has one.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Grade {
    winter: Option<&'static Winter>,
    summer: &'static Summer,
}

impl Grade {
    /// Reads `10W-30`, `5w40`, `SAE 30`.
    ///
    /// ```
    /// use assembly_core::oil::viscosity::Grade;
    /// assert_eq!(Grade::read("sae 10w40")?.to_string(), "10W-40");
    /// assert!(Grade::read("10W").is_err());
    /// # Ok::<(), assembly_core::oil::viscosity::OilError>(())
    /// ```
    ///
    /// # Errors
    /// [`OilError::NoSuchGrade`].
    pub fn read(text: &str) -> Result<Self, OilError> {
        let none = || OilError::NoSuchGrade {
            read: text.trim().to_owned(),
        };
        let plain: String = text
            .to_uppercase()
            .chars()
            .filter(|one| !one.is_whitespace() && *one != '-' && *one != '/')
            .collect();
        let plain = plain.strip_prefix("SAE").unwrap_or(&plain);
        let number = |digits: &str| digits.parse().map_err(|_| none());
        let (winter, hot) = match plain.split_once('W') {
            Some((cold, hot)) => (Some(Winter::find(number(cold)?).ok_or_else(none)?), hot),
            None => (None, plain),
        };
        let summer = Summer::find(number(hot)?).ok_or_else(none)?;
        Ok(Self { winter, summer })
    }

    /// From its numbers.
    #[must_use]
    pub const fn of(winter: Option<&'static Winter>, summer: &'static Summer) -> Self {
        Self { winter, summer }
    }

    /// The winter half.
    #[must_use]
    pub const fn winter(&self) -> Option<&'static Winter> {
        self.winter
    }

    /// The hot half.
    #[must_use]
    pub const fn summer(&self) -> &'static Summer {
        self.summer
    }

    /// Least viscosity at 150 °C and 10⁶ a second, mPa·s.
    #[must_use]
    pub fn sheared_least(&self) -> f64 {
        match self.winter {
            Some(winter) if self.summer.number == 40 && winter.number <= 10 => LIGHT_40_SHEARED,
            _ => self.summer.sheared_least,
        }
    }

    /// The index that oils of this grade usually have and how far it spreads:
    /// common practice, from memory.
    #[must_use]
    pub fn usual_index(&self) -> (f64, f64) {
        self.winter
            .map_or(SINGLE_GRADE_INDEX, |winter| winter.usual_index)
    }

    /// Whether an oil of this viscosity at 100 °C, mm²/s, can be of this grade.
    ///
    /// # Errors
    /// [`OilError::ThinnerThanItsGrade`] or [`OilError::ThickerThanItsGrade`].
    pub fn check_hot(&self, at_100: f64) -> Result<(), OilError> {
        let least = self
            .winter
            .map_or(0.0, |winter| winter.hot_least)
            .max(self.summer.hot_least);
        if at_100 < least {
            return Err(OilError::ThinnerThanItsGrade {
                read: at_100,
                grade: self.to_string(),
                least,
            });
        }
        if at_100 >= self.summer.hot_below {
            return Err(OilError::ThickerThanItsGrade {
                read: at_100,
                grade: self.to_string(),
                most: self.summer.hot_below,
            });
        }
        Ok(())
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(winter) = self.winter {
            write!(f, "{}W-", winter.number)?;
        }
        write!(f, "{}", self.summer.number)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cans_are_read_as_people_write_them() {
        for (text, shown) in [
            ("10W-30", "10W-30"),
            ("5w 40", "5W-40"),
            ("SAE 30", "30"),
            ("20w/50", "20W-50"),
        ] {
            assert_eq!(Grade::read(text).unwrap().to_string(), shown);
        }
        for none in ["", "W", "10W", "7W-30", "35", "ten", "10W-35"] {
            assert!(Grade::read(none).is_err(), "{none}");
        }
    }

    // SAE J300 (2015): a 40 asks 3.5 behind 0W, 5W, 10W and 3.7 else; limits
    // of the hot grades are reached from below only.
    #[test]
    fn sheared_limit_of_a_40_and_the_edges_of_a_30() {
        let sheared = |text: &str| Grade::read(text).unwrap().sheared_least();
        assert_eq!(sheared("5W-40"), 3.5);
        assert_eq!(sheared("15W-40"), 3.7);
        assert_eq!(sheared("40"), 3.7);
        let thirty = Grade::read("10W-30").unwrap();
        assert!(thirty.check_hot(9.3).is_ok() && thirty.check_hot(12.49).is_ok());
        assert!(matches!(
            thirty.check_hot(9.29),
            Err(OilError::ThinnerThanItsGrade { .. })
        ));
        assert!(matches!(
            thirty.check_hot(12.5),
            Err(OilError::ThickerThanItsGrade { .. })
        ));
    }

    #[test]
    fn an_oil_finds_its_grade_where_the_thin_ones_overlap() {
        let of = |hot: f64, sheared: f64| Summer::of_oil(hot, sheared).map(|one| one.number);
        assert_eq!(of(8.0, 2.5), Some(16));
        assert_eq!(of(8.0, 2.6), Some(20));
        assert_eq!(of(12.5, 3.5), Some(40));
        assert_eq!(of(12.5, 3.4), None);
        assert_eq!(of(26.1, 4.0), None);
    }
}
