//! Viscosity index as a quick check.

use super::index::{reference_oils, viscosity_index};
use super::line_check::{AT_40, AT_100, KINEMATIC, at_field};
use crate::describe::{Answer, Calculation, CalculationError, Given, Gravity, Output, Provenance};
use crate::measure::Estimate;

/// Viscosity index.
pub static VISCOSITY_INDEX: Calculation = Calculation {
    id: "viscosity-index",
    title: "Viscosity index",
    purpose: "How little an oil thins as it warms, from the two figures on its sheet.",
    inputs: &[AT_40, AT_100],
    outputs: &[
        Output::ratio("index", "viscosity index"),
        Output::of("l", "the reference oil of index 0 at 40 °C, L", KINEMATIC),
        Output::of("h", "the reference oil of index 100 at 40 °C, H", KINEMATIC),
    ],
    workings: &[
        "to 100: (L − U) / (L − H) × 100 with L = {l}, H = {h}, U = {at-40}: {index}",
        "above 100: (10^N − 1) / 0.00715 + 100 with N = log (H / U) / log Y, Y = {at-100}",
    ],
    provenance: Provenance::Standard("ASTM D2270-10e1 (2016), procedures A and B, table 1"),
    cautions: &[
        "A high index says nothing of wear or of shear: look at the sheared viscosity at 150 °C, too.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (at_40, at_100) = (given.one(&AT_40)?, given.one(&AT_100)?);
    let oils = reference_oils(at_100.value() * 1e6).map_err(at_field(&AT_100))?;
    let middle =
        viscosity_index(at_40.value() * 1e6, at_100.value() * 1e6).map_err(at_field(&AT_40))?;
    let index = Estimate::of_function(&[at_40, at_100], |values| match values {
        [at_40, at_100] => viscosity_index(at_40 * 1e6, at_100 * 1e6).unwrap_or(middle),
        _ => f64::NAN,
    });
    let answer = Answer::new()
        .with("index", index)
        .with("l", Estimate::exact(oils.l * 1e-6))
        .with("h", Estimate::exact(oils.h * 1e-6));
    Ok(if !(60.0..=250.0).contains(&middle) {
        answer.finding(
            Gravity::Caution,
            "Engine oils lie between 90 and 200 or so: look whether both figures are of one oil and in mm²/s.",
        )
    } else {
        answer
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    // ASTM D2270, calculation example 5.1.4.
    #[test]
    fn the_standards_example_and_a_slip() {
        let good = given(1e-6, &[("at-40", &[73.30]), ("at-100", &[8.86])]);
        let answer = worked(&VISCOSITY_INDEX, &good);
        assert_eq!(value(&answer, "index", 1.0).round(), 92.0);
        let odd = given(1e-6, &[("at-40", &[400.0]), ("at-100", &[8.86])]);
        assert!(says(&worked(&VISCOSITY_INDEX, &odd), "one oil"));
        let thin = given(1e-6, &[("at-40", &[7.0]), ("at-100", &[1.5])]);
        assert_eq!(refused(&VISCOSITY_INDEX, &thin), Some("at-100"));
    }
}
