//! Limits and fits: what clearance or interference a hole and a shaft of two
//! tolerance classes give.

use super::size_step::NominalSize;
use super::standard_tolerance::{GRADES, Grade, Micrometres};
use super::tolerance_class::{Feature, Letter, LimitDeviations, ToleranceClass, ToleranceError};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;
use crate::quantity::Si;
use uom::si::f64::Length;

/// A hole and a shaft of one nominal size.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Fit {
    /// The limits of the hole.
    pub hole: LimitDeviations,
    /// The limits of the shaft.
    pub shaft: LimitDeviations,
}

/// What two tolerances do with each other.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Kind {
    /// There is always clearance, or none at the least.
    Clearance,
    /// It may come out either way.
    Transition,
    /// There is always interference.
    Interference,
}

impl Fit {
    /// The fit of two classes at a nominal size.
    ///
    /// ```
    /// use assembly_core::metrology::NominalSize;
    /// use assembly_core::metrology::limits_and_fits::{Fit, Kind};
    /// use assembly_core::metrology::standard_tolerance::Micrometres;
    /// use assembly_core::metrology::tolerance_class::ToleranceClass;
    /// use uom::si::{f64::Length, length::millimeter};
    ///
    /// let size = NominalSize::new(Length::new::<millimeter>(25.0)).unwrap();
    /// let (hole, shaft) = (ToleranceClass::read("H7"), ToleranceClass::read("r6"));
    /// let fit = Fit::of(hole.unwrap(), shaft.unwrap(), size).unwrap();
    /// assert_eq!(fit.kind(), Kind::Interference);
    /// assert_eq!(fit.least_clearance(), Micrometres(-41.0));
    /// ```
    ///
    /// # Errors
    /// [`ToleranceError`] when the standard has no such class at this size.
    pub fn of(
        hole: ToleranceClass,
        shaft: ToleranceClass,
        size: NominalSize,
    ) -> Result<Self, ToleranceError> {
        Ok(Self {
            hole: hole.limits(size)?,
            shaft: shaft.limits(size)?,
        })
    }

    /// Of the smallest hole and the largest shaft; below nothing it is interference.
    #[must_use]
    pub fn least_clearance(&self) -> Micrometres {
        Micrometres(self.hole.lower.0 - self.shaft.upper.0)
    }

    /// Of the largest hole and the smallest shaft; below nothing it is interference.
    #[must_use]
    pub fn greatest_clearance(&self) -> Micrometres {
        Micrometres(self.hole.upper.0 - self.shaft.lower.0)
    }

    /// What sort of fit it is (ISO 286-1:2010, 3.3.4 to 3.3.7).
    #[must_use]
    pub fn kind(&self) -> Kind {
        if self.least_clearance().0 >= 0.0 {
            Kind::Clearance
        } else if self.greatest_clearance().0 <= 0.0 {
            Kind::Interference
        } else {
            Kind::Transition
        }
    }
}

macro_rules! letter_choices {
    ($($name:literal),*) => { &[$(Choice { id: $name, label: $name }),*] };
}

const HOLE_LETTERS: &[Choice] = letter_choices![
    "A", "B", "C", "CD", "D", "E", "EF", "F", "FG", "G", "H", "JS", "J", "K", "M", "N", "P", "R",
    "S", "T", "U", "V", "X", "Y", "Z", "ZA", "ZB", "ZC"
];
const SHAFT_LETTERS: &[Choice] = letter_choices![
    "a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js", "j", "k", "m", "n", "p", "r",
    "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc"
];

static NOMINAL: Input = Input::size(
    "nominal",
    "nominal size",
    (1e-5, 0.5),
    "The size both parts are named by, such as 25 of 25 H7/g6.",
);
static HOLE_LETTER: Input = Input::one_of(
    "hole-letter",
    "hole letter",
    HOLE_LETTERS,
    "The capital letter: H of H7/g6.",
);
static HOLE_GRADE: Input = Input::one_of(
    "hole-grade",
    "hole grade",
    GRADES,
    "The number behind the capital letter: 7 of H7/g6.",
);
static SHAFT_LETTER: Input = Input::one_of(
    "shaft-letter",
    "shaft letter",
    SHAFT_LETTERS,
    "The small letter: g of H7/g6.",
);
static SHAFT_GRADE: Input = Input::one_of(
    "shaft-grade",
    "shaft grade",
    GRADES,
    "The number behind the small letter: 6 of H7/g6.",
);

/// The limits of a hole and a shaft, and what they do together.
pub static LIMITS_AND_FITS: Calculation = Calculation {
    id: "limits-and-fits",
    title: "Limits and fits",
    purpose: "What sizes a pair such as H7/g6 allows, and what clearance or interference comes of it.",
    inputs: &[NOMINAL, HOLE_LETTER, HOLE_GRADE, SHAFT_LETTER, SHAFT_GRADE],
    outputs: &[
        Output::size("hole-least", "least hole"),
        Output::size("hole-greatest", "greatest hole"),
        Output::size("shaft-least", "least shaft"),
        Output::size("shaft-greatest", "greatest shaft"),
        Output::gap(
            "least-clearance",
            "least clearance, below nothing an interference",
        ),
        Output::gap(
            "greatest-clearance",
            "greatest clearance, below nothing an interference",
        ),
    ],
    workings: &[
        "the hole: {hole-least} to {hole-greatest}",
        "the shaft: {shaft-least} to {shaft-greatest}",
        "least clearance = least hole − greatest shaft = {hole-least} − {shaft-greatest} = {least-clearance}",
        "greatest clearance = greatest hole − least shaft = {hole-greatest} − {shaft-least} = {greatest-clearance}",
    ],
    provenance: Provenance::Standard("ISO 286-1:2010, tables 1 to 5"),
    cautions: &[
        "The limits hold at 20 °C. Let both parts take on the room's temperature before measuring.",
    ],
    run,
};

/// The nominal size that was given.
pub(super) fn nominal(
    given: &Given,
    input: &'static Input,
) -> Result<NominalSize, CalculationError> {
    NominalSize::new(Length::from_si(given.one(input)?.value()))
        .map_err(|error| CalculationError::not_possible(input, error.to_string()))
}

/// The grade that was chosen.
pub(super) fn grade(given: &Given, input: &'static Input) -> Result<Grade, CalculationError> {
    let choice = given.choice(input)?;
    Grade::read(choice.id)
        .ok_or_else(|| CalculationError::not_possible(input, "choose a grade from 01 to 18"))
}

fn class(
    given: &Given,
    feature: Feature,
    letter: &'static Input,
    grade_input: &'static Input,
) -> Result<ToleranceClass, CalculationError> {
    Ok(ToleranceClass {
        feature,
        letter: Letter::read(given.choice(letter)?.id)
            .ok_or_else(|| CalculationError::not_possible(letter, "choose a letter of the list"))?,
        grade: grade(given, grade_input)?,
    })
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let size = nominal(given, &NOMINAL)?;
    let of = |feature, letter, grade| {
        class(given, feature, letter, grade)?
            .limits(size)
            .map_err(|error| CalculationError::not_possible(letter, error.to_string()))
    };
    let fit = Fit {
        hole: of(Feature::Hole, &HOLE_LETTER, &HOLE_GRADE)?,
        shaft: of(Feature::Shaft, &SHAFT_LETTER, &SHAFT_GRADE)?,
    };
    let nominal = given.one(&NOMINAL)?;
    let at = |deviation: Micrometres| nominal + deviation.length().to_si();
    let length = |micrometres: Micrometres| Estimate::exact(micrometres.length().to_si());
    let (gravity, words) = match fit.kind() {
        Kind::Clearance => (
            Gravity::Note,
            "A clearance fit: the shaft always goes in by hand.",
        ),
        Kind::Transition => (
            Gravity::Note,
            "A transition fit: it may come out with a little clearance or a little interference. Measure the pair.",
        ),
        Kind::Interference => (
            Gravity::Note,
            "An interference fit: it has to be pressed or shrunk together.",
        ),
    };
    Ok(Answer::new()
        .with("hole-least", at(fit.hole.lower))
        .with("hole-greatest", at(fit.hole.upper))
        .with("shaft-least", at(fit.shaft.lower))
        .with("shaft-greatest", at(fit.shaft.upper))
        .with("least-clearance", length(fit.least_clearance()))
        .with("greatest-clearance", length(fit.greatest_clearance()))
        .finding(gravity, words))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn given(nominal: f64, words: [&str; 4]) -> Given {
        let at = |choices: &[Choice], word: &str| {
            Estimate::exact(choices.iter().position(|one| one.id == word).unwrap() as f64)
        };
        Given::new()
            .with("nominal", Estimate::exact(nominal))
            .with("hole-letter", at(HOLE_LETTERS, words[0]))
            .with("hole-grade", at(GRADES, words[1]))
            .with("shaft-letter", at(SHAFT_LETTERS, words[2]))
            .with("shaft-grade", at(GRADES, words[3]))
    }

    // Worked by hand from the tables: 22 mm pin, H7/p6 is +21/0 and +35/+22.
    #[test]
    fn a_press_fit_by_its_letters() {
        let answer = LIMITS_AND_FITS
            .answer(&given(0.022, ["H", "7", "p", "6"]))
            .unwrap();
        let value = |id: &str| answer.get(id).unwrap().value();
        assert!((value("hole-greatest") - 0.022_021).abs() < 1e-12);
        assert!((value("shaft-least") - 0.022_022).abs() < 1e-12);
        assert!((value("least-clearance") + 35e-6).abs() < 1e-12);
        assert!((value("greatest-clearance") + 1e-6).abs() < 1e-12);
        assert!(answer.findings()[0].text.contains("interference fit"));
    }

    #[test]
    fn a_class_that_the_standard_lacks_is_named() {
        let error = LIMITS_AND_FITS
            .answer(&given(0.022, ["K", "9", "h", "6"]))
            .unwrap_err();
        assert_eq!(error.field(), Some("hole-letter"));
        assert!(error.to_string().contains("K9"), "{error}");
    }
}
