//! Camshaft fitted some teeth out: how many degrees that is.

use num_dual::Dual64;

use super::answering::estimate;
use super::formula::{Formula, Number, Smooth, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));
const COUNT: (Kind, UsualUnits) = (Kind::Count, UsualUnits::NONE);

static TEETH: Input = Input::of(
    "cam-teeth",
    "teeth of the cam wheel",
    COUNT,
    (8.0, 200.0),
    "Count them from a paint mark; it is twice the number on the crankshaft's wheel.",
);
static OUT: Input = Input::of(
    "teeth-out",
    "teeth out",
    COUNT,
    (-20.0, 20.0),
    "How many teeth the marks are apart; below nothing the other way.",
);
static CRANK: Output = Output::of("at-crank", "out, at the crankshaft", ANGLE);

/// Degrees at the crankshaft for teeth out.
pub static TOOTH_OUT: Stack = Stack {
    id: "tooth-out",
    title: "Camshaft some teeth out",
    terms: &[Term::needed(&TEETH), Term::needed(&OUT)],
    result: &CRANK,
    formula: Formula::Smooth(Smooth {
        value: at_crank::<f64>,
        with_slope: at_crank::<Dual64>,
    }),
    proof: "Two full turns by hand in the running direction, then the marks again; and the lobe's centre by the degree wheel.",
};

/// The crankshaft turns twice while the camshaft turns once.
fn at_crank<N: Number>(terms: &[N]) -> N {
    let &[teeth, out] = terms else {
        return N::from(f64::NAN);
    };
    out / teeth * (2.0 * std::f64::consts::TAU)
}

/// Teeth out as a quick check.
pub static TOOTH_OUT_CHECK: Calculation = Calculation {
    id: "tooth-out",
    title: "Camshaft some teeth out",
    purpose: "How many degrees the valve timing is off when the camshaft is fitted a tooth or more out.",
    inputs: &[TEETH, OUT],
    outputs: &[CRANK, Output::of("at-cam", "out, at the camshaft", ANGLE)],
    workings: &[
        "at the crankshaft = 720° × {teeth-out} / {cam-teeth} = {at-crank}",
        "at the camshaft half of it: {at-cam}",
    ],
    provenance: Provenance::Derivation(
        "one tooth is a whole turn over the number of teeth; the crankshaft turns twice as far",
    ),
    cautions: &[
        "On an interference engine a tooth out can bend valves: turn by hand only, and stop at any resistance.",
        "Marks of a long chain or of two chains align only every so many turns: count the links instead.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let teeth = given.one(&TEETH)?.value();
    if teeth.fract() != 0.0 {
        return Err(CalculationError::not_possible(
            &TEETH,
            "a wheel has a whole number of teeth.",
        ));
    }
    let out = estimate(&TOOTH_OUT, given)?;
    let answer = Answer::new()
        .with("at-cam", &out * 0.5)
        .with(CRANK.id, out.clone());
    Ok(if out.value() == 0.0 {
        answer
    } else {
        answer.finding(
            Gravity::Stop,
            "Do not start it like this: set the marks right and turn it through two full turns by hand.",
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;

    fn degrees(teeth: f64, out: f64) -> f64 {
        let given = Given::new()
            .with("cam-teeth", Estimate::exact(teeth))
            .with("teeth-out", Estimate::exact(out));
        let answer = TOOTH_OUT_CHECK.answer(&given).unwrap();
        answer.get("at-crank").unwrap().value().to_degrees()
    }

    // Worked by hand (common practice): 36 teeth 20°, 40 teeth 18°, 48 teeth 15°.
    #[test]
    fn a_tooth_is_seven_hundred_and_twenty_degrees_over_their_number() {
        for (teeth, expected) in [(36.0, 20.0), (40.0, 18.0), (48.0, 15.0)] {
            assert!((degrees(teeth, 1.0) - expected).abs() < 1e-9);
        }
        assert!((degrees(40.0, -2.0) + 36.0).abs() < 1e-9);
    }

    #[test]
    fn part_of_a_tooth_is_no_count() {
        let given = Given::new()
            .with("cam-teeth", Estimate::exact(36.5))
            .with("teeth-out", Estimate::exact(1.0));
        let error = TOOTH_OUT_CHECK.answer(&given).unwrap_err();
        assert_eq!(error.field(), Some("cam-teeth"));
    }
}
