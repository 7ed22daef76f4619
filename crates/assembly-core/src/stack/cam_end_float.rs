//! End float of the camshaft, held by a thrust plate or by a button against
//! the front cover.

use super::answering::{INCH, estimate, less, more};
use super::formula::{Formula, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

/// The least float commonly set at a button. Common practice.
pub const BUTTON_LEAST: f64 = 0.005 * INCH;
/// The most float commonly set at a button. Common practice.
pub const BUTTON_MOST: f64 = 0.010 * INCH;
/// The least float of a new thrust plate (TM 9-4310-397-14).
pub const PLATE_LEAST: f64 = 0.003 * INCH;
/// The most float of a new thrust plate (TM 9-4310-397-14).
pub const PLATE_MOST: f64 = 0.009 * INCH;

/// Width of the spacer or of the shoulder.
pub static SPACER: Input = Input::size(
    "spacer",
    "spacer ring, or gap between shoulder and wheel",
    (0.001, 0.05),
    "Thickness of the ring that the wheel is pulled up against, or the gap that it leaves.",
);
/// Thickness of the plate.
pub static PLATE: Input = Input::size(
    "thrust-plate",
    "thickness of the thrust plate",
    (0.001, 0.05),
    "At the worn track, three places, the thickest counts.",
);
static COVER_DEPTH: Input = Input::size(
    "cover-depth",
    "cover's inside from its gasket face",
    (0.0, 0.2),
    "Straightedge on the cover's gasket face, depth to the pad that the button runs on.",
);
static COVER_GASKET: Input = Input::gap(
    "cover-gasket",
    "cover gasket, compressed",
    (0.0, 0.003),
    "Of the front cover; nothing for sealant alone.",
)
.optional();
static BUTTON: Input = Input::size(
    "button-stand-out",
    "button in front of the block's face",
    (0.0, 0.2),
    "From the face that the cover is bolted to, to the tip of the button, camshaft pushed to the rear.",
);

static FLOAT: Output = Output::gap("float", "end float of the camshaft");

/// End float with a thrust plate.
pub static CAM_FLOAT_PLATE: Stack = Stack {
    id: "cam-float-plate",
    title: "Camshaft end float, thrust plate",
    terms: &[Term::needed(&SPACER), Term::needed(&PLATE)],
    result: &FLOAT,
    formula: Formula::Sum(&[1.0, -1.0]),
    proof: PROOF,
};

/// End float with a button.
pub static CAM_FLOAT_BUTTON: Stack = Stack {
    id: "cam-float-button",
    title: "Camshaft end float, button against the cover",
    terms: &[
        Term::needed(&COVER_DEPTH),
        Term::if_fitted(&COVER_GASKET),
        Term::needed(&BUTTON),
    ],
    result: &FLOAT,
    formula: Formula::Sum(&[1.0, 1.0, -1.0]),
    proof: "Clay or soft solder on the button, the cover on with its gasket, and the clay measured.",
};

const PROOF: &str =
    "An indicator on the camshaft's nose, pushed back and forth with the wheel torqued.";

/// Camshaft end float with a plate, as a quick check.
pub static CAM_FLOAT_PLATE_CHECK: Calculation = Calculation {
    id: "cam-float-plate",
    title: "Camshaft end float, thrust plate",
    purpose: "How far the camshaft can move back and forth between its plate and its wheel.",
    inputs: &[SPACER, PLATE],
    outputs: &[FLOAT],
    workings: &["float = spacer − plate = {spacer} − {thrust-plate} = {float}"],
    provenance: Provenance::Derivation("sizes along the camshaft"),
    cautions: &[
        "Flat tappets push the camshaft to the rear by themselves; roller lifters do not, so there the float matters more.",
    ],
    run: |given| {
        judged(
            &CAM_FLOAT_PLATE,
            given,
            (PLATE_LEAST, PLATE_MOST),
            "0.003 to 0.009 in (0.08 to 0.23 mm) when new",
        )
    },
};

/// Camshaft end float with a button, as a quick check.
pub static CAM_FLOAT_BUTTON_CHECK: Calculation = Calculation {
    id: "cam-float-button",
    title: "Camshaft end float, button against the cover",
    purpose: "How far a roller camshaft can move forward before its button meets the cover.",
    inputs: &[COVER_DEPTH, COVER_GASKET, BUTTON],
    outputs: &[FLOAT],
    workings: &[
        "float = cover depth + gasket − button = {cover-depth} + {cover-gasket} − {button-stand-out} = {float}",
    ],
    provenance: Provenance::Derivation("sizes along the camshaft"),
    cautions: &["A pressed sheet cover gives way: brace it, or the float grows while running."],
    run: |given| {
        judged(
            &CAM_FLOAT_BUTTON,
            given,
            (BUTTON_LEAST, BUTTON_MOST),
            "0.005 to 0.010 in (0.13 to 0.25 mm)",
        )
    },
};

fn judged(
    stack: &'static Stack,
    given: &Given,
    (least, most): (f64, f64),
    common: &str,
) -> Result<Answer, CalculationError> {
    let float = estimate(stack, given)?;
    let answer = if float.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "There is no float: the camshaft is clamped and its thrust face burns.",
        )
    } else if less(float.value(), least) || more(float.value(), most) {
        Answer::new().finding(
            Gravity::Caution,
            format!("Commonly it is {common}. The maker's sheet wins."),
        )
    } else {
        Answer::new()
    };
    Ok(answer.with(FLOAT.id, float))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;

    #[test]
    fn float_is_what_the_plate_leaves_of_the_spacer() {
        let float = |spacer: f64| {
            CAM_FLOAT_PLATE_CHECK
                .answer(
                    &Given::new()
                        .with("spacer", Estimate::exact(spacer * INCH))
                        .with("thrust-plate", Estimate::exact(0.245 * INCH)),
                )
                .unwrap()
        };
        let good = float(0.250);
        assert!((good.get("float").unwrap().value() / INCH - 0.005).abs() < 1e-9);
        assert!(good.findings().is_empty());
        assert_eq!(float(0.245).findings()[0].gravity, Gravity::Stop);
        assert_eq!(float(0.260).findings()[0].gravity, Gravity::Caution);
    }

    #[test]
    fn the_gasket_gives_a_button_room() {
        let given = Given::new()
            .with("cover-depth", Estimate::exact(1.000 * INCH))
            .with("button-stand-out", Estimate::exact(1.020 * INCH));
        let dry = CAM_FLOAT_BUTTON_CHECK.answer(&given).unwrap();
        assert_eq!(dry.findings()[0].gravity, Gravity::Stop);
        let with_gasket = given.with("cover-gasket", Estimate::exact(0.028 * INCH));
        let answer = CAM_FLOAT_BUTTON_CHECK.answer(&with_gasket).unwrap();
        assert!((answer.get("float").unwrap().value() / INCH - 0.008).abs() < 1e-9);
        assert!(answer.findings().is_empty());
    }
}
