//! Shims under a valve spring, to its installed height.

use super::stack::nearest_stack;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    UsualUnits, length_text,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// The thickest stack of flat shims that is commonly put under a spring:
/// 0.060 in. Common practice.
pub const THICKEST_STACK: f64 = 0.060 * 0.0254;

static HEIGHT: Input = Input::size(
    "height",
    "installed height as measured",
    (0.01, 0.2),
    "Valve held shut, from the spring's seat to the underside of the retainer, with the cups and seals that stay.",
);
static WANTED: Input = Input::size(
    "wanted",
    "wanted installed height",
    (0.01, 0.2),
    "From the cam maker's or the spring maker's sheet.",
);
static SHIMS: Input = Input::size(
    "shims",
    "shim thicknesses to be had",
    (1e-4, 0.005),
    "Measure them: coatings and burrs count. There may be any number of each.",
)
.taking(Takes::OneOrMore);
static RATE: Input = Input::of(
    "rate",
    "spring rate",
    (Kind::Stiffness, UsualUnits::of("lbf/in", "N/mm")),
    (1e3, 1e6),
    "From the spring's sheet, or from two loads on a tester; needed for the change of load only.",
)
.optional();

/// Spring shims.
pub static VALVE_SPRING_SHIMS: Calculation = Calculation {
    id: "valve-spring-shims",
    title: "Shims under a valve spring",
    purpose: "Which shims bring a spring to its installed height, and what load they add.",
    inputs: &[HEIGHT, WANTED, SHIMS, RATE],
    outputs: &[
        Output::gap("needed", "shim needed"),
        Output::gap("stack", "shims chosen"),
        Output::size("height-then", "installed height then"),
        Output::gap("miss", "away from the wanted height"),
        Output::of(
            "load-added",
            "seat load added",
            (Kind::Force, UsualUnits::FORCE),
        ),
    ],
    workings: &[
        "needed = height − wanted = {height} − {wanted} = {needed}",
        "nearest stack of at most three: {stack}; height then = {height} − {stack} = {height-then}, {miss} away",
        "load added = rate × shims = {rate} × {stack} = {load-added}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Springs fly: eye guard on. Check the margin to coil bind and the gap from retainer to seal again after every shim.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let height = given.one(&HEIGHT)?;
    let shims = given.several(SHIMS.id);
    let needed = height - given.one(&WANTED)?;
    let stack = stack_of(shims, &needed, 3)
        .map_err(|reason| CalculationError::not_possible(&SHIMS, reason))?;
    let thickness = sum(&stack);
    let height_then = height - &thickness;
    let miss = &height_then - given.one(&WANTED)?;
    let load_added = given.optional(RATE.id).map(|rate| rate * &thickness);
    let mut answer = Answer::new();
    if needed.value() < 0.0 {
        answer = answer.finding(
            Gravity::Caution,
            "The spring already stands shorter than wanted: a shim only makes it worse. Look at the seat depth, the locks and the retainer.",
        );
    }
    if thickness.value() > THICKEST_STACK {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "A stack of {} is thicker than is commonly put under a spring, {}.",
                length_text(thickness.value()),
                length_text(THICKEST_STACK)
            ),
        );
    }
    let words: Vec<String> = stack.iter().map(|one| length_text(one.value())).collect();
    let text = if words.is_empty() {
        "No shim.".to_owned()
    } else {
        format!("Shims: {}.", words.join(", "))
    };
    Ok(answer
        .finding(Gravity::Note, text)
        .with("needed", needed)
        .with("height-then", height_then)
        .with("miss", miss)
        .with("stack", thickness)
        .with_optional("load-added", load_added))
}

/// The pieces of the stack nearest to what is needed.
pub(super) fn stack_of(
    pieces: &[Estimate],
    needed: &Estimate,
    most_pieces: usize,
) -> Result<Vec<Estimate>, String> {
    let thicknesses: Vec<f64> = pieces.iter().map(Estimate::value).collect();
    let stack = nearest_stack(needed.value(), &thicknesses, most_pieces)
        .map_err(|error| error.to_string())?;
    Ok(stack
        .pieces
        .iter()
        .filter_map(|piece| pieces.get(*piece).cloned())
        .collect())
}

pub(super) fn sum(pieces: &[Estimate]) -> Estimate {
    pieces
        .iter()
        .fold(Estimate::exact(0.0), |total, piece| total + piece)
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 0.0254;
    const POUND_FORCE: f64 = 4.448_221_615_260_5;

    fn given(height: f64, wanted: f64) -> Given {
        Given::new()
            .with("height", Estimate::exact(height * INCH))
            .with("wanted", Estimate::exact(wanted * INCH))
            .with("shims", Estimate::exact(0.015 * INCH))
            .with("shims", Estimate::exact(0.030 * INCH))
            .with("rate", Estimate::exact(300.0 * POUND_FORCE / INCH))
    }

    // Common practice: 1.800 in with a shim of 0.030 stands at 1.770; at
    // 300 lbf/in that adds 9 lbf.
    #[test]
    fn the_worked_spring_comes_out() {
        let answer = VALVE_SPRING_SHIMS.answer(&given(1.800, 1.770)).unwrap();
        let value = |id: &str| answer.get(id).unwrap().value();
        assert!((value("height-then") / INCH - 1.770).abs() < 1e-9);
        assert!((value("load-added") / POUND_FORCE - 9.0).abs() < 1e-9);
        assert!(value("miss").abs() < 1e-12);
        assert!(answer.findings()[0].text.contains("0.0300 in"));
    }

    #[test]
    fn a_short_spring_is_not_shimmed_and_a_thick_stack_is_questioned() {
        let short = VALVE_SPRING_SHIMS.answer(&given(1.750, 1.770)).unwrap();
        assert_eq!(short.get("stack").unwrap().value(), 0.0);
        assert_eq!(short.findings()[0].gravity, Gravity::Caution);
        let tall = VALVE_SPRING_SHIMS.answer(&given(1.860, 1.770)).unwrap();
        assert!(tall.findings()[0].text.contains("thicker"));
    }
}
