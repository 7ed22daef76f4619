//! Pushrod length: what the adjustable checker shows at no lash, and the
//! preload or lash that belongs to the lifters.

use num_dual::Dual64;

use super::answering::{INCH, estimate, less, more};
use super::formula::{Formula, Number, Smooth, Stack, Term};
use super::valve_spring::{LASH, ROCKER_RATIO};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
};

/// The least preload of a common hydraulic lifter. Common practice.
pub const COMMON_PRELOAD_LEAST: f64 = 0.020 * INCH;
/// The most preload of a common hydraulic lifter. Common practice.
pub const COMMON_PRELOAD_MOST: f64 = 0.060 * INCH;
/// The least preload of a hydraulic lifter of short travel. Common practice.
pub const SHORT_TRAVEL_PRELOAD_LEAST: f64 = 0.002 * INCH;
/// The most preload of a hydraulic lifter of short travel. Common practice.
pub const SHORT_TRAVEL_PRELOAD_MOST: f64 = 0.010 * INCH;

/// The checker's length.
pub static CHECKER: Input = Input::size(
    "checker-length",
    "length of the checker at no lash",
    (0.03, 0.6),
    "Lifter on the heel of the cam, solid or pegged, rocker at its height: turn the checker out until all play is gone, no more.",
);
/// The lifters.
pub static LIFTERS: Input = Input::one_of(
    "lifters",
    "lifters",
    &[
        Choice {
            id: "hydraulic",
            label: "hydraulic",
        },
        Choice {
            id: "solid",
            label: "solid",
        },
    ],
    "A hydraulic lifter has a plunger that gives under the thumb when it is full of air.",
);
/// Preload of a hydraulic lifter.
pub static PRELOAD: Input = Input::gap(
    "preload",
    "preload of the lifter",
    (0.0, 0.006),
    "From the lifter's sheet: how far its plunger is to be pressed in.",
)
.optional();
static RATIO: Input = ROCKER_RATIO.optional();

static LENGTH: Output = Output::size("length", "pushrod length");

/// Pushrod for hydraulic lifters.
pub static PUSHROD_HYDRAULIC: Stack = Stack {
    id: "pushrod-hydraulic",
    title: "Pushrod for hydraulic lifters",
    terms: &[Term::needed(&CHECKER), Term::needed(&PRELOAD)],
    result: &LENGTH,
    formula: Formula::Sum(&[1.0, 1.0]),
    proof: PROOF,
};

/// Pushrod for solid lifters.
pub static PUSHROD_SOLID: Stack = Stack {
    id: "pushrod-solid",
    title: "Pushrod for solid lifters",
    terms: &[
        Term::needed(&CHECKER),
        Term::needed(&LASH),
        Term::needed(&RATIO),
    ],
    result: &LENGTH,
    formula: Formula::Smooth(Smooth {
        value: solid::<f64>,
        with_slope: solid::<Dual64>,
    }),
    proof: PROOF,
};

const PROOF: &str = "The marker's sweep on the valve tip, narrow and centred at mid-lift; one intake and one exhaust in each bank, then the spread of the tip heights.";

fn solid<N: Number>(terms: &[N]) -> N {
    let &[checker, lash, ratio] = terms else {
        return N::from(f64::NAN);
    };
    checker - lash / ratio
}

/// Pushrod length as a quick check.
pub static PUSHROD_LENGTH: Calculation = Calculation {
    id: "pushrod-length",
    title: "Pushrod length",
    purpose: "The length to order, from the checker and the preload or lash.",
    inputs: &[CHECKER, LIFTERS, PRELOAD, LASH, RATIO],
    outputs: &[LENGTH],
    workings: &[
        "hydraulic: length = checker + preload = {checker-length} + {preload} = {length}",
        "solid: length = checker − lash / ratio = {checker-length} − {lash} / {rocker-ratio} = {length}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "With everything as it will be: head gasket, head torqued, the camshaft of the build.",
        "A hydraulic lifter gives while you check: use a solid one, or peg its plunger.",
        "Makers gauge pushrods in two ways, over the balls or over a gauge line: ask before you order.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    if given.choice(&LIFTERS)?.id == "solid" {
        let length = estimate(&PUSHROD_SOLID, given)?;
        return Ok(Answer::new().with(LENGTH.id, length));
    }
    let preload = given.one(&PRELOAD)?.value();
    let answer = Answer::new().with(LENGTH.id, estimate(&PUSHROD_HYDRAULIC, given)?);
    Ok(
        if less(preload, COMMON_PRELOAD_LEAST) || more(preload, COMMON_PRELOAD_MOST) {
            answer.finding(
                Gravity::Note,
                "Common preload is 0.020 to 0.060 in (0.5 to 1.5 mm), and 0.002 to 0.010 in (0.05 to 0.25 mm) for lifters of short travel. The lifter's sheet wins.",
            )
        } else {
            answer
        },
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;

    #[test]
    fn preload_makes_it_longer_and_lash_shorter() {
        let checker = |lifters: f64| {
            Given::new()
                .with("checker-length", Estimate::exact(7.800 * INCH))
                .with("lifters", Estimate::exact(lifters))
        };
        let length = |given: &Given| {
            PUSHROD_LENGTH
                .answer(given)
                .unwrap()
                .get("length")
                .unwrap()
                .value()
                / INCH
        };
        let hydraulic = checker(0.0).with("preload", Estimate::exact(0.030 * INCH));
        assert!((length(&hydraulic) - 7.830).abs() < 1e-9);
        let solid = checker(1.0)
            .with("lash", Estimate::exact(0.018 * INCH))
            .with("rocker-ratio", Estimate::exact(1.5));
        assert!((length(&solid) - 7.788).abs() < 1e-9);
    }

    #[test]
    fn each_kind_of_lifter_asks_for_its_own_figure() {
        let given = |lifters: f64| {
            Given::new()
                .with("checker-length", Estimate::exact(0.2))
                .with("lifters", Estimate::exact(lifters))
        };
        let field = |given: &Given| PUSHROD_LENGTH.answer(given).unwrap_err().field();
        assert_eq!(field(&given(0.0)), Some("preload"));
        assert_eq!(field(&given(1.0)), Some("lash"));
    }
}
