//! Grades as quick checks: what a can promises at a temperature, and which grade
//! an oil is.

use super::grade::{Grade, SUMMER, Summer, WINTER};
#[cfg(test)]
use super::line::FREEZING;
use super::line_check::{AT, AT_100, DYNAMIC, KINEMATIC, at_field};
use super::lubricant::GradeBand;
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;

const fn word(id: &'static str, label: &'static str) -> Choice {
    Choice { id, label }
}

/// The first word is a single grade, then the winter grades in their order.
const WINTER_WORDS: &[Choice] = &[
    word("none", "none, a single grade"),
    word("0w", "0W"),
    word("5w", "5W"),
    word("10w", "10W"),
    word("15w", "15W"),
    word("20w", "20W"),
    word("25w", "25W"),
];
const SUMMER_WORDS: &[Choice] = &[
    word("8", "8"),
    word("12", "12"),
    word("16", "16"),
    word("20", "20"),
    word("30", "30"),
    word("40", "40"),
    word("50", "50"),
    word("60", "60"),
];

static COLD: Input = Input::one_of(
    "winter",
    "number before the W",
    WINTER_WORDS,
    "As it stands on the can.",
);
static HOT: Input = Input::one_of(
    "summer",
    "number after it",
    SUMMER_WORDS,
    "As it stands on the can.",
);
static SHEARED: Input = Input::of(
    "sheared",
    "sheared viscosity at 150 °C",
    DYNAMIC,
    (5e-4, 0.02),
    "From the data sheet, \"HTHS\": high temperature, high shear.",
);
static OFFERED: Input = Input {
    takes: crate::describe::Takes::Optional,
    ..AT_100
};

/// A grade at a temperature.
pub static GRADE_AT_TEMPERATURE: Calculation = Calculation {
    id: "grade-at-temperature",
    title: "Oil grade at temperature",
    purpose: "Between which viscosities an oil of a grade lies at a temperature.",
    inputs: &[COLD, HOT, AT, OFFERED],
    outputs: &[
        Output::of("thin", "thinnest oil of the grade", DYNAMIC),
        Output::of("likely", "likely", DYNAMIC),
        Output::of("thick", "thickest oil of the grade", DYNAMIC),
        Output::of("sheared-least", "sheared at 150 °C at least", DYNAMIC),
    ],
    workings: &[
        "hot edges of the grade by the standard, the rest by the index that such oils usually have",
        "at {temperature}: {thin} to {thick}, likely {likely}",
        "in a fast film at 150 °C not less than {sheared-least}",
    ],
    provenance: Provenance::Standard(
        "SAE J300, table of 2015-01-20, with ASTM D341 and D2270; the usual indices are common practice",
    ),
    cautions: &[
        "The two figures of the oil's own sheet are far better than its grade: use them if you have them.",
        "The grade that the engine's maker asks for wins.",
    ],
    run: run_band,
};

fn index_of(
    input: &'static Input,
    given: &Given,
    words: &[Choice],
) -> Result<usize, CalculationError> {
    let chosen = given.choice(input)?;
    Ok(words
        .iter()
        .position(|one| one.id == chosen.id)
        .unwrap_or_default())
}

fn run_band(given: &Given) -> Result<Answer, CalculationError> {
    let cold = index_of(&COLD, given, WINTER_WORDS)?;
    let winter = cold.checked_sub(1).and_then(|at| WINTER.get(at));
    let hot = index_of(&HOT, given, SUMMER_WORDS)?;
    let missing = || CalculationError::not_possible(&HOT, "there is no such grade");
    let summer = SUMMER.get(hot).ok_or_else(missing)?;
    if winter.is_some_and(|winter| winter.hot_least >= summer.hot_below) {
        return Err(CalculationError::not_possible(
            &HOT,
            "the winter number asks for a thicker oil hot than this number allows: no can has both. Read the can again.",
        ));
    }
    let grade = Grade::of(winter, summer);
    if let Some(offered) = given.optional(OFFERED.id) {
        grade
            .check_hot(offered.value() * 1e6)
            .map_err(at_field(&OFFERED))?;
    }
    let band = GradeBand::of(grade).map_err(at_field(&HOT))?;
    let at = given.one(&AT)?;
    let along = |oil: super::Lubricant| {
        Estimate::of_function(&[at], move |values| {
            values.first().map_or(f64::NAN, |at| oil.dynamic(*at))
        })
    };
    let mut answer = Answer::new()
        .with("thin", along(band.thin))
        .with("likely", along(band.likely))
        .with("thick", along(band.thick))
        .with(
            "sheared-least",
            Estimate::exact(grade.sheared_least() * 1e-3),
        );
    if let Some(winter) = winter {
        answer = answer.finding(
            Gravity::Note,
            format!(
                "Cold: at most {} mPa·s when cranked at {} °C, and it must still flow to the pump at {} °C.",
                winter.cranking_most, winter.cranking_at, winter.pumping_at
            ),
        );
    }
    if let Some(doubt) = band.likely.line().doubt(at.value()) {
        answer = answer.finding(Gravity::Caution, doubt);
    }
    Ok(answer)
}

/// Which grade an oil is.
pub static GRADE_OF_OIL: Calculation = Calculation {
    id: "grade-of-oil",
    title: "Which grade an oil is",
    purpose: "The number without the W that an oil's own hot figures make it.",
    inputs: &[AT_100, SHEARED],
    outputs: &[
        Output::ratio("grade", "grade"),
        Output::of("from", "the grade's range at 100 °C from", KINEMATIC),
        Output::of("below", "to below", KINEMATIC),
    ],
    workings: &[
        "{at-100} at 100 °C and {sheared} sheared: the highest grade that takes both is {grade}, from {from} to below {below}",
    ],
    provenance: Provenance::Standard("SAE J300, table of 2015-01-20"),
    cautions: &["Used oil may lie under its grade: fuel thins it, and shear wears its polymers."],
    run: run_which,
};

fn run_which(given: &Given) -> Result<Answer, CalculationError> {
    let (hot, sheared) = (given.one(&AT_100)?, given.one(&SHEARED)?);
    // Figures of a sheet meet the table digit for digit, whatever binary makes of them.
    let tidy = |value: f64| (value * 1e6).round() / 1e6;
    let (hot, sheared) = (tidy(hot.value() * 1e6), tidy(sheared.value() * 1e3));
    let grade = Summer::of_oil(hot, sheared).ok_or_else(|| {
        let by_heat = SUMMER
            .iter()
            .rev()
            .find(|one| hot >= one.hot_least && hot < one.hot_below);
        match by_heat {
            Some(one) => CalculationError::not_possible(
                &SHEARED,
                format!(
                    "at 100 °C it is a {}, but that asks for {} mPa·s sheared: it is of no grade",
                    one.number, one.sheared_least
                ),
            ),
            None => CalculationError::not_possible(
                &AT_100,
                "no grade takes this: they go from 4.0 to below 26.1 mm²/s",
            ),
        }
    })?;
    Ok(Answer::new()
        .with("grade", Estimate::exact(f64::from(grade.number)))
        .with("from", Estimate::exact(grade.hot_least * 1e-6))
        .with("below", Estimate::exact(grade.hot_below * 1e-6)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    fn can(cold: f64, hot: f64) -> Given {
        given(1.0, &[("winter", &[cold]), ("summer", &[hot])])
            .with("temperature", Estimate::exact(100.0 + FREEZING))
    }

    // SAE J300 (2015): a 10W-40 is 12.5 to below 16.3 at 100 °C and 3.5 sheared.
    #[test]
    fn a_can_at_a_hundred_degrees() {
        let answer = worked(&GRADE_AT_TEMPERATURE, &can(3.0, 5.0));
        let density = super::super::Density::usual().at(373.15);
        assert!((answer.get("thin").unwrap().value() / density - 12.5e-6).abs() < 1e-9);
        assert!((answer.get("thick").unwrap().value() / density - 16.3e-6).abs() < 1e-8);
        assert_eq!(value(&answer, "sheared-least", 1e-3), 3.5);
        assert!(says(&answer, "7000"));
    }

    #[test]
    fn an_oil_thinner_than_its_can_is_told() {
        let thin = can(3.0, 5.0).with("at-100", Estimate::exact(11.9e-6));
        let error = GRADE_AT_TEMPERATURE.answer(&thin).unwrap_err();
        assert_eq!(error.field(), Some("at-100"));
        assert!(error.to_string().contains("thinner than grade 10W-40"));
        // 25W-8 cannot be.
        assert_eq!(
            refused(&GRADE_AT_TEMPERATURE, &can(6.0, 0.0)),
            Some("summer")
        );
    }

    // SAE J300 (2015), boundary cases.
    #[test]
    fn edges_of_the_grades() {
        let which = |hot: f64, sheared: f64| {
            Given::new()
                .with("at-100", Estimate::exact(hot * 1e-6))
                .with("sheared", Estimate::exact(sheared * 1e-3))
        };
        for (hot, sheared, grade) in [
            (8.0, 2.5, 16.0),
            (9.29, 2.6, 20.0),
            (9.3, 2.9, 30.0),
            (16.3, 3.7, 50.0),
        ] {
            assert_eq!(
                value(&worked(&GRADE_OF_OIL, &which(hot, sheared)), "grade", 1.0),
                grade
            );
        }
        assert_eq!(refused(&GRADE_OF_OIL, &which(12.0, 2.0)), Some("sheared"));
        assert_eq!(refused(&GRADE_OF_OIL, &which(30.0, 4.0)), Some("at-100"));
    }
}
