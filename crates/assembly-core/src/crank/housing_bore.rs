//! A housing bore of main or rod: its size where it counts, and its roundness.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
};
use crate::fit::readings::{mean_of, span};
use crate::measure::{Estimate, Window};

const SIZES: (f64, f64) = (0.01, 0.6);

static VERTICAL: Input = Input::size(
    "vertical",
    "up and down",
    SIZES,
    "Cap torqued with its final fasteners and lube, no shells: square to the joint, at two stations.",
)
.taking(Takes::OneOrMore);
static SLANTED: Input = Input::size(
    "slanted",
    "60° to either side",
    SIZES,
    "The same stations, a third of the way round to either side; keep 10° off the joint.",
)
.taking(Takes::OneOrMore);
static LOW: Input = Input::size(
    "low",
    "least size on the sheet",
    SIZES,
    "From the maker's sheet; leave it out when you have none.",
)
.optional();
static HIGH: Input = Input::size(
    "high",
    "greatest size on the sheet",
    SIZES,
    "From the maker's sheet; leave it out when you have none.",
)
.optional();

/// A housing bore.
pub static HOUSING_BORE: Calculation = Calculation {
    id: "housing-bore",
    title: "Housing bore of main or rod",
    purpose: "Whether the bore that holds the shells is of its size and round.",
    inputs: &[VERTICAL, SLANTED, LOW, HIGH],
    outputs: &[
        Output::size("size", "mean size"),
        Output::size("least", "smallest reading"),
        Output::size("greatest", "largest reading"),
        Output::gap("out-of-round", "largest less smallest"),
        Output::gap("egg", "up and down less slanted"),
    ],
    workings: &[
        "mean of all readings: {size}, from {least} to {greatest}",
        "out of round = {greatest} − {least} = {out-of-round}",
        "mean up and down less mean slanted = {egg}: above nothing the cap was filed or stretched, below nothing it is pulled down",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Numbers count only with the caps torqued. Torquing stretch bolts uses them up: ask for old ones.",
        "Never hone a housing to gain clearance, and never file a cap: the shells lose their crush and spin. Too large a bore is resized from the cap's joint by a shop.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (vertical, slanted) = (given.several(VERTICAL.id), given.several(SLANTED.id));
    let all: Vec<Estimate> = vertical.iter().chain(slanted).cloned().collect();
    let egg = mean_of(given, &VERTICAL)? - mean_of(given, &SLANTED)?;
    let size = Estimate::mean(&all).unwrap_or_default();
    let limit = |input: &'static Input| given.optional(input.id).map(Estimate::value);
    let mut answer = Answer::new();
    if let Ok(window) = Window::new(limit(&LOW), limit(&HIGH)) {
        let outside = |one: &Estimate| !window.holds(one.value());
        let (smaller, larger): (Vec<&Estimate>, Vec<&Estimate>) = all
            .iter()
            .filter(|one| outside(one))
            .partition(|one| window.low().is_some_and(|low| one.value() < low));
        if !larger.is_empty() {
            answer = answer.finding(
                Gravity::Stop,
                "Larger than the sheet allows: the shells lose their crush and can spin. Have it resized.",
            );
        }
        if !smaller.is_empty() {
            answer = answer.finding(
                Gravity::Caution,
                "Smaller than the sheet allows: too much crush, and the clearance goes with it. Look for burrs and a cap that is not home, then have it honed to size.",
            );
        }
    } else if limit(&LOW).is_some() || limit(&HIGH).is_some() {
        return Err(CalculationError::not_possible(
            &LOW,
            "the least and the greatest size make no window: swap them",
        ));
    }
    Ok(answer
        .with("out-of-round", span(&all))
        .with_optional("least", Estimate::least(&all).cloned())
        .with_optional("greatest", Estimate::greatest(&all).cloned())
        .with("size", size)
        .with("egg", egg))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, given, refused, says, value, worked};

    #[test]
    fn a_filed_cap_shows_as_an_egg_that_is_low() {
        let given = given(
            INCH,
            &[
                ("vertical", &[2.6404, 2.6406]),
                ("slanted", &[2.6412, 2.6412]),
                ("low", &[2.6408]),
                ("high", &[2.6416]),
            ],
        );
        let answer = worked(&HOUSING_BORE, &given);
        assert_eq!(value(&answer, "egg", INCH), -0.0007);
        assert_eq!(value(&answer, "out-of-round", INCH), 0.0008);
        assert!(says(&answer, "Smaller than the sheet allows"));
        assert!(!says(&answer, "Larger"));
    }

    #[test]
    fn too_large_a_housing_stops_the_builder() {
        let given = given(
            INCH,
            &[
                ("vertical", &[2.6420]),
                ("slanted", &[2.6412]),
                ("high", &[2.6416]),
            ],
        );
        let answer = worked(&HOUSING_BORE, &given);
        assert_eq!(answer.findings()[0].gravity, Gravity::Stop);
    }

    #[test]
    fn limits_upside_down_are_told() {
        let given = given(
            INCH,
            &[
                ("vertical", &[2.64]),
                ("slanted", &[2.64]),
                ("low", &[2.65]),
                ("high", &[2.63]),
            ],
        );
        assert_eq!(refused(&HOUSING_BORE, &given), Some("low"));
    }
}
