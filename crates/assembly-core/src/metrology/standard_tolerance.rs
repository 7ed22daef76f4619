//! Standard tolerance grades: how wide a tolerance a grade allows at a size.

use uom::si::f64::Length;

use super::size_step::NominalSize;
use super::tolerance_class::ToleranceError;
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Input, Output, Provenance,
};
use crate::measure::Estimate;
use crate::quantity::Si;

/// A number of micrometres, as the standard's tables have it.
#[derive(Clone, Copy, PartialEq, PartialOrd, Debug)]
pub struct Micrometres(pub f64);

impl Micrometres {
    /// As a length.
    #[must_use]
    pub fn length(self) -> Length {
        Length::from_si(self.0 * 1e-6)
    }
}

/// A standard tolerance grade, IT01, IT0, IT1 to IT18.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub struct Grade(i8);

/// The number that stands for IT01, which lies below IT0.
const ZERO_ONE: i8 = -1;

impl Grade {
    /// The grade of this number, 0 to 18; -1 stands for IT01. `None` for any other number.
    #[must_use]
    pub const fn new(number: i8) -> Option<Self> {
        if number >= ZERO_ONE && number <= 18 {
            Some(Self(number))
        } else {
            None
        }
    }

    /// Reads "7", "IT7", "01".
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let digits = text.strip_prefix("IT").unwrap_or(text);
        if digits == "01" {
            return Self::new(ZERO_ONE);
        }
        if digits.len() > 1 && digits.starts_with('0') {
            return None;
        }
        digits
            .parse::<u8>()
            .ok()
            .and_then(|number| Self::new(i8::try_from(number).ok()?))
    }

    /// Its number; -1 for IT01.
    #[must_use]
    pub const fn number(self) -> i8 {
        self.0
    }
}

/// Micrometres for each step of nominal size, from IT01 on (ISO 286-1:2010,
/// table 1, from memory; IT1 to IT9 checked against secondary printings).
const WIDTHS: [[f64; 13]; 20] = [
    [
        0.3, 0.4, 0.4, 0.5, 0.6, 0.6, 0.8, 1.0, 1.2, 2.0, 2.5, 3.0, 4.0,
    ],
    [
        0.5, 0.6, 0.6, 0.8, 1.0, 1.0, 1.2, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0,
    ],
    [
        0.8, 1.0, 1.0, 1.2, 1.5, 1.5, 2.0, 2.5, 3.5, 4.5, 6.0, 7.0, 8.0,
    ],
    [
        1.2, 1.5, 1.5, 2.0, 2.5, 2.5, 3.0, 4.0, 5.0, 7.0, 8.0, 9.0, 10.0,
    ],
    [
        2.0, 2.5, 2.5, 3.0, 4.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 13.0, 15.0,
    ],
    [
        3.0, 4.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0,
    ],
    [
        4.0, 5.0, 6.0, 8.0, 9.0, 11.0, 13.0, 15.0, 18.0, 20.0, 23.0, 25.0, 27.0,
    ],
    [
        6.0, 8.0, 9.0, 11.0, 13.0, 16.0, 19.0, 22.0, 25.0, 29.0, 32.0, 36.0, 40.0,
    ],
    [
        10.0, 12.0, 15.0, 18.0, 21.0, 25.0, 30.0, 35.0, 40.0, 46.0, 52.0, 57.0, 63.0,
    ],
    [
        14.0, 18.0, 22.0, 27.0, 33.0, 39.0, 46.0, 54.0, 63.0, 72.0, 81.0, 89.0, 97.0,
    ],
    [
        25.0, 30.0, 36.0, 43.0, 52.0, 62.0, 74.0, 87.0, 100.0, 115.0, 130.0, 140.0, 155.0,
    ],
    [
        40.0, 48.0, 58.0, 70.0, 84.0, 100.0, 120.0, 140.0, 160.0, 185.0, 210.0, 230.0, 250.0,
    ],
    [
        60.0, 75.0, 90.0, 110.0, 130.0, 160.0, 190.0, 220.0, 250.0, 290.0, 320.0, 360.0, 400.0,
    ],
    [
        100.0, 120.0, 150.0, 180.0, 210.0, 250.0, 300.0, 350.0, 400.0, 460.0, 520.0, 570.0, 630.0,
    ],
    [
        140.0, 180.0, 220.0, 270.0, 330.0, 390.0, 460.0, 540.0, 630.0, 720.0, 810.0, 890.0, 970.0,
    ],
    [
        250.0, 300.0, 360.0, 430.0, 520.0, 620.0, 740.0, 870.0, 1000.0, 1150.0, 1300.0, 1400.0,
        1550.0,
    ],
    [
        400.0, 480.0, 580.0, 700.0, 840.0, 1000.0, 1200.0, 1400.0, 1600.0, 1850.0, 2100.0, 2300.0,
        2500.0,
    ],
    [
        600.0, 750.0, 900.0, 1100.0, 1300.0, 1600.0, 1900.0, 2200.0, 2500.0, 2900.0, 3200.0,
        3600.0, 4000.0,
    ],
    [
        1000.0, 1200.0, 1500.0, 1800.0, 2100.0, 2500.0, 3000.0, 3500.0, 4000.0, 4600.0, 5200.0,
        5700.0, 6300.0,
    ],
    [
        1400.0, 1800.0, 2200.0, 2700.0, 3300.0, 3900.0, 4600.0, 5400.0, 6300.0, 7200.0, 8100.0,
        8900.0, 9700.0,
    ],
];

/// The width of a grade's tolerance at a nominal size.
///
/// ```
/// use assembly_core::metrology::NominalSize;
/// use assembly_core::metrology::standard_tolerance::{Grade, Micrometres, width_at};
/// use uom::si::{f64::Length, length::millimeter};
///
/// let size = NominalSize::new(Length::new::<millimeter>(25.0)).unwrap();
/// assert_eq!(width_at(Grade::read("IT7").unwrap(), size), Ok(Micrometres(21.0)));
/// ```
///
/// # Errors
/// [`ToleranceError::NotGiven`] for IT14 and coarser up to 1 mm, where the
/// standard has none.
pub fn width_at(grade: Grade, size: NominalSize) -> Result<Micrometres, ToleranceError> {
    let not_given = || ToleranceError::NotGiven {
        what: format!("IT{} up to 1 mm", grade.number()),
    };
    if grade.number() >= 14 && size.up_to(1) {
        return Err(not_given());
    }
    let row = usize::try_from(grade.number() - ZERO_ONE).ok();
    row.and_then(|row| WIDTHS.get(row)?.get(size.step()))
        .map(|width| Micrometres(*width))
        .ok_or_else(not_given)
}

macro_rules! grade_choices {
    ($($name:literal),*) => { &[$(Choice { id: $name, label: concat!("IT", $name) }),*] };
}

/// The grades, as words to choose from.
pub(super) const GRADES: &[Choice] = grade_choices![
    "01", "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13", "14", "15",
    "16", "17", "18"
];

static SIZE: Input = Input::size(
    "nominal",
    "nominal size",
    (1e-5, 0.5),
    "The size that the drawing names before the letter, such as 25 of 25 H7.",
);
static GRADE: Input = Input::one_of(
    "grade",
    "tolerance grade",
    GRADES,
    "The number behind the letter: 7 of H7.",
);

/// How wide a standard tolerance is.
pub static STANDARD_TOLERANCE: Calculation = Calculation {
    id: "standard-tolerance",
    title: "Standard tolerance grade",
    purpose: "How wide a tolerance the number behind the letter allows at this size.",
    inputs: &[SIZE, GRADE],
    outputs: &[Output::gap("width", "width of the tolerance")],
    workings: &["looked up for {nominal} in the row of {grade}: {width}"],
    provenance: Provenance::Standard("ISO 286-1:2010, table 1"),
    cautions: &[],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let size = super::limits_and_fits::nominal(given, &SIZE)?;
    let grade = super::limits_and_fits::grade(given, &GRADE)?;
    let width = width_at(grade, size)
        .map_err(|error| CalculationError::not_possible(&GRADE, error.to_string()))?;
    Ok(Answer::new().with("width", Estimate::exact(width.length().to_si())))
}

#[cfg(test)]
mod tests {
    use super::super::size_step::STEPS;
    use super::*;

    #[test]
    fn widths_grow_with_size_and_with_the_grade() {
        for row in WIDTHS {
            assert!(row.is_sorted());
        }
        for (finer, coarser) in WIDTHS.iter().zip(&WIDTHS[1..]) {
            assert!(
                finer
                    .iter()
                    .zip(coarser)
                    .all(|(fine, coarse)| fine < coarse)
            );
        }
    }

    /// i = 0.45 cbrt(D) + 0.001 D, and the multiples of it (ISO 286-1 annex, from memory).
    #[test]
    fn widths_from_it5_on_are_the_multiples_of_the_tolerance_unit() {
        let multiples = [
            7.0, 10.0, 16.0, 25.0, 40.0, 64.0, 100.0, 160.0, 250.0, 400.0, 640.0, 1000.0, 1600.0,
            2500.0,
        ];
        let mut start = 1.0;
        for (place, end) in STEPS.iter().map(|end| f64::from(*end)).enumerate() {
            let mean = (start * end).sqrt();
            let unit = 0.45 * mean.cbrt() + 0.001 * mean;
            for (row, multiple) in WIDTHS[6..].iter().zip(multiples) {
                let formula = multiple * unit;
                // The table rounds; up to 3 mm it was set by hand.
                let apart = (row[place] - formula).abs() / formula;
                let allowed = if place == 0 { 0.16 } else { 0.10 };
                assert!(apart < allowed, "up to {end}: {} {formula}", row[place]);
            }
            start = end;
        }
    }

    #[test]
    fn grades_are_read_as_they_are_written() {
        assert_eq!(Grade::read("IT7").unwrap().number(), 7);
        assert_eq!(Grade::read("01").unwrap().number(), -1);
        assert_eq!(Grade::read("0").unwrap().number(), 0);
        assert_eq!(Grade::read("18").unwrap().number(), 18);
        for wrong in ["", "19", "-1", "007", "7a", "IT", "1.5", "255"] {
            assert!(Grade::read(wrong).is_none(), "{wrong}");
        }
    }

    #[test]
    fn coarse_grades_are_not_given_for_the_smallest_sizes() {
        let tiny = NominalSize::new(Length::from_si(0.001)).unwrap();
        assert!(width_at(Grade::read("13").unwrap(), tiny).is_ok());
        assert!(width_at(Grade::read("14").unwrap(), tiny).is_err());
    }
}
