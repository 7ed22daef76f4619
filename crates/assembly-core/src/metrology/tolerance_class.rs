//! A tolerance class such as H7 or g6: a letter for the place, a number for
//! the width.

use thiserror::Error;

use super::hole_deviation::hole_deviations;
use super::shaft_deviation::shaft_deviations;
use super::size_step::NominalSize;
use super::standard_tolerance::{Grade, Micrometres};

/// Why a tolerance cannot be told.
#[derive(Clone, PartialEq, Debug, Error)]
#[non_exhaustive]
pub enum ToleranceError {
    /// The nominal size lies outside the tables.
    #[error(
        "a nominal size of {millimetres} mm lies outside the tables: they reach from above 0 to 500 mm"
    )]
    SizeOutside {
        /// What was given.
        millimetres: f64,
    },
    /// The text is no tolerance class.
    #[error(
        "{text:?} is no tolerance class: a letter such as H for a hole or g for a shaft, then a grade from 01 to 18"
    )]
    NotAClass {
        /// What was read.
        text: String,
    },
    /// The standard gives no value.
    #[error("the standard gives no {what}")]
    NotGiven {
        /// What it does not give.
        what: String,
    },
}

/// The letter of a fundamental deviation; the same for holes and shafts.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[allow(missing_docs)] // They are letters.
pub enum Letter {
    A,
    B,
    C,
    Cd,
    D,
    E,
    Ef,
    F,
    Fg,
    G,
    H,
    Js,
    J,
    K,
    M,
    N,
    P,
    R,
    S,
    T,
    U,
    V,
    X,
    Y,
    Z,
    Za,
    Zb,
    Zc,
}

/// All letters with the way they are written for a shaft.
const LETTERS: [(Letter, &str); 28] = [
    (Letter::A, "a"),
    (Letter::B, "b"),
    (Letter::C, "c"),
    (Letter::Cd, "cd"),
    (Letter::D, "d"),
    (Letter::E, "e"),
    (Letter::Ef, "ef"),
    (Letter::F, "f"),
    (Letter::Fg, "fg"),
    (Letter::G, "g"),
    (Letter::H, "h"),
    (Letter::Js, "js"),
    (Letter::J, "j"),
    (Letter::K, "k"),
    (Letter::M, "m"),
    (Letter::N, "n"),
    (Letter::P, "p"),
    (Letter::R, "r"),
    (Letter::S, "s"),
    (Letter::T, "t"),
    (Letter::U, "u"),
    (Letter::V, "v"),
    (Letter::X, "x"),
    (Letter::Y, "y"),
    (Letter::Z, "z"),
    (Letter::Za, "za"),
    (Letter::Zb, "zb"),
    (Letter::Zc, "zc"),
];

impl Letter {
    /// Reads a letter in either case; `None` when there is no such one.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let lower = text.to_ascii_lowercase();
        LETTERS
            .iter()
            .find_map(|(letter, name)| (*name == lower).then_some(*letter))
    }

    /// As it is written for a shaft.
    #[must_use]
    pub fn of_shaft(self) -> &'static str {
        LETTERS
            .iter()
            .find_map(|(letter, name)| (*letter == self).then_some(*name))
            .unwrap_or("")
    }
}

/// Whether a part goes in or is gone into.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Feature {
    /// Written with a capital letter.
    Hole,
    /// Written with a small letter.
    Shaft,
}

/// A tolerance class: H7, g6.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct ToleranceClass {
    /// Hole or shaft.
    pub feature: Feature,
    /// Where the tolerance lies.
    pub letter: Letter,
    /// How wide it is.
    pub grade: Grade,
}

/// The two ends of a tolerance, as they differ from the nominal size.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct LimitDeviations {
    /// Of the least size: EI or ei.
    pub lower: Micrometres,
    /// Of the greatest size: ES or es.
    pub upper: Micrometres,
}

/// Which end of the tolerance the letter places.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum FundamentalDeviation {
    /// The lower one, EI or ei.
    Lower(Micrometres),
    /// The upper one, ES or es.
    Upper(Micrometres),
    /// Half of the width to either side.
    Either,
}

impl ToleranceClass {
    /// Reads a class. A capital letter is a hole, a small one a shaft.
    ///
    /// ```
    /// use assembly_core::metrology::NominalSize;
    /// use assembly_core::metrology::standard_tolerance::Micrometres;
    /// use assembly_core::metrology::tolerance_class::ToleranceClass;
    /// use uom::si::{f64::Length, length::millimeter};
    ///
    /// let size = NominalSize::new(Length::new::<millimeter>(25.0)).unwrap();
    /// let limits = ToleranceClass::read("g6").unwrap().limits(size).unwrap();
    /// assert_eq!((limits.lower, limits.upper), (Micrometres(-20.0), Micrometres(-7.0)));
    /// ```
    ///
    /// # Errors
    /// [`ToleranceError::NotAClass`] with the text that was read.
    pub fn read(text: &str) -> Result<Self, ToleranceError> {
        let not_a_class = || ToleranceError::NotAClass {
            text: text.to_owned(),
        };
        let trimmed = text.trim();
        let split = trimmed
            .find(|c: char| c.is_ascii_digit())
            .ok_or_else(not_a_class)?;
        let (letters, digits) = trimmed.split_at(split);
        let feature = if !letters.is_empty() && letters.chars().all(|c| c.is_ascii_uppercase()) {
            Feature::Hole
        } else if letters.chars().all(|c| c.is_ascii_lowercase()) {
            Feature::Shaft
        } else {
            return Err(not_a_class());
        };
        match (Letter::read(letters), Grade::read(digits)) {
            (Some(letter), Some(grade)) => Ok(Self {
                feature,
                letter,
                grade,
            }),
            _ => Err(not_a_class()),
        }
    }

    /// The limits at a nominal size.
    ///
    /// # Errors
    /// [`ToleranceError::NotGiven`] where the standard has no value.
    pub fn limits(&self, size: NominalSize) -> Result<LimitDeviations, ToleranceError> {
        let Micrometres(width) = super::standard_tolerance::width_at(self.grade, size)?;
        let (lower, upper) = match self.fundamental_deviation(size)? {
            FundamentalDeviation::Lower(Micrometres(lower)) => (lower, lower + width),
            FundamentalDeviation::Upper(Micrometres(upper)) => (upper - width, upper),
            FundamentalDeviation::Either => (-width / 2.0, width / 2.0),
        };
        Ok(LimitDeviations {
            lower: Micrometres(lower),
            upper: Micrometres(upper),
        })
    }

    /// The deviation that the letter stands for, at a nominal size.
    ///
    /// # Errors
    /// [`ToleranceError::NotGiven`] where the standard has no value.
    pub fn fundamental_deviation(
        &self,
        size: NominalSize,
    ) -> Result<FundamentalDeviation, ToleranceError> {
        let deviation = match self.feature {
            Feature::Hole => hole_deviations(self.letter, self.grade, size),
            Feature::Shaft => shaft_deviations(self.letter, self.grade, size),
        };
        deviation.ok_or_else(|| ToleranceError::NotGiven {
            what: format!("{self} at this size"),
        })
    }
}

impl std::fmt::Display for ToleranceClass {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.feature {
            Feature::Hole => f.write_str(&self.letter.of_shaft().to_ascii_uppercase())?,
            Feature::Shaft => f.write_str(self.letter.of_shaft())?,
        }
        match self.grade.number() {
            -1 => f.write_str("01"),
            number => write!(f, "{number}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn classes_are_read_and_written_back() {
        for text in ["H7", "g6", "JS13", "zc11", "k5", "ZA8", "h01", "CD10"] {
            assert_eq!(ToleranceClass::read(text).unwrap().to_string(), text);
        }
        assert_eq!(ToleranceClass::read(" H7 ").unwrap().feature, Feature::Hole);
    }

    #[test]
    fn what_is_no_class_is_named() {
        for text in [
            "", "H", "7", "Js7", "i6", "H19", "H7g6", "L7", "h-1", "é5", "H07",
        ] {
            let error = ToleranceClass::read(text).unwrap_err();
            assert!(error.to_string().contains(&format!("{text:?}")), "{error}");
        }
    }
}
