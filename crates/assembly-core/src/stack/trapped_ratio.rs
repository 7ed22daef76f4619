//! Compression ratio from the moment the intake valve shuts: only what is
//! trapped then is squeezed.

use num_dual::Dual64;

use super::answering::{estimate, less};
use super::compression_ratio::{BORE, CHAMBER, CLEARANCE_VOLUME, DISH, GASKET_BORE, clearance};
use super::deck_and_quench::{DECK_MEASURED, GASKET_COMPRESSED, ROD_LENGTH, STROKE};
use super::formula::{Formula, Number, Smooth, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

/// When the intake valve shuts.
pub static INTAKE_SHUTS: Input = Input::of(
    "intake-shuts",
    "intake valve shuts after bottom",
    (Kind::Angle, UsualUnits::of("°", "°")),
    (0.0, 2.0),
    "Degrees of the crankshaft after bottom dead centre, at the seat timing that the camshaft's card gives.",
);
static RATIO: Output = Output::ratio("trapped-ratio", "ratio from intake closing");

/// Compression ratio from intake closing.
pub static TRAPPED_RATIO: Stack = Stack {
    id: "trapped-ratio",
    title: "Compression ratio from intake closing",
    terms: &[
        Term::needed(&BORE),
        Term::needed(&STROKE),
        Term::needed(&CHAMBER),
        Term::needed(&DISH),
        Term::needed(&GASKET_BORE),
        Term::needed(&GASKET_COMPRESSED),
        Term::needed(&DECK_MEASURED),
        Term::needed(&ROD_LENGTH),
        Term::needed(&INTAKE_SHUTS),
    ],
    result: &RATIO,
    formula: Formula::Smooth(Smooth {
        value: ratio::<f64>,
        with_slope: ratio::<Dual64>,
    }),
    proof: "A cranking compression test, warm, throttle open, against one of a like engine.",
};

/// No number when no volume is left at the top or the rod is shorter than the crank.
fn ratio<N: Number>(terms: &[N]) -> N {
    let &[
        bore,
        stroke,
        chamber,
        dish,
        gasket_bore,
        gasket,
        deck,
        rod,
        shuts,
    ] = terms
    else {
        return N::from(f64::NAN);
    };
    let at_top = clearance(&[bore, stroke, chamber, dish, gasket_bore, gasket, deck]);
    let throw = stroke * 0.5;
    if at_top <= 0.0 || rod <= throw {
        return N::from(f64::NAN);
    }
    let sine = throw * shuts.sin();
    // Distance from the top of the stroke, the crank that far past the bottom.
    let down = throw + rod + throw * shuts.cos() - (rod * rod - sine * sine).sqrt();
    (bore * bore * down * std::f64::consts::FRAC_PI_4 + at_top) / at_top
}

/// Compression ratio from intake closing, as a quick check.
pub static TRAPPED_RATIO_CHECK: Calculation = Calculation {
    id: "trapped-ratio",
    title: "Compression ratio from intake closing",
    purpose: "How hard the trapped charge is squeezed, counted from where the intake valve shuts.",
    inputs: &[
        BORE,
        STROKE,
        CHAMBER,
        DISH,
        GASKET_BORE,
        GASKET_COMPRESSED,
        DECK_MEASURED,
        ROD_LENGTH,
        INTAKE_SHUTS,
    ],
    outputs: &[RATIO],
    workings: &[
        "height left = s/2 + rod + s/2 × cos a − √(rod² − (s/2 × sin a)²), with s = {stroke}, rod = {rod-length}, a = {intake-shuts}",
        "ratio = (π/4 × bore² × height left + volume at the top) / volume at the top = {trapped-ratio}",
    ],
    provenance: Provenance::Derivation("exact motion of crank and rod, pin on the bore's axis"),
    cautions: &[
        "Seat timing, not timing at 0.050 in of lift: the two lie tens of degrees apart.",
        "It compares engines and camshafts. It says nothing of how much air there is.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let throw = given.one(&STROKE)?.value() * 0.5;
    if given.one(&ROD_LENGTH)?.value() <= throw {
        return Err(CalculationError::not_possible(
            &ROD_LENGTH,
            "a rod shorter than half the stroke cannot turn. Rods are at least half as long again as the stroke.",
        ));
    }
    let at_top = estimate(&CLEARANCE_VOLUME, given)?;
    let bore = given.one(&BORE)?.value();
    if less(
        at_top.value(),
        0.01 * std::f64::consts::FRAC_PI_2 * bore * bore * throw,
    ) {
        return Err(CalculationError::not_possible(
            &CHAMBER,
            "hardly any volume is left above the piston. Check the signs: a dish and a piston in the hole add volume, a dome and a piston out of the block take it.",
        ));
    }
    let ratio = estimate(&TRAPPED_RATIO, given)?;
    Ok(Answer::new().with(RATIO.id, ratio).finding(
        Gravity::Note,
        "A late camshaft traps less: its whole ratio can be higher for the same fuel.",
    ))
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::super::compression_ratio::COMPRESSION_RATIO;
    use super::*;
    use crate::measure::Estimate;
    use crate::stack::StackUp;

    fn engine(shuts: f64) -> Given {
        Given::new()
            .with("bore", Estimate::exact(4.03 * INCH))
            .with("stroke", Estimate::exact(3.48 * INCH))
            .with("chamber", Estimate::exact(64e-6))
            .with("dish", Estimate::exact(5e-6))
            .with("gasket-bore", Estimate::exact(4.1 * INCH))
            .with("gasket-compressed", Estimate::exact(0.040 * INCH))
            .with("deck-clearance", Estimate::exact(0.005 * INCH))
            .with("rod-length", Estimate::exact(5.7 * INCH))
            .with("intake-shuts", Estimate::exact(shuts.to_radians()))
    }

    #[test]
    fn a_valve_that_shuts_at_the_bottom_traps_everything() {
        let trapped = |shuts: f64| {
            let answer = TRAPPED_RATIO_CHECK.answer(&engine(shuts)).unwrap();
            answer.get("trapped-ratio").unwrap().value()
        };
        let whole = StackUp::from_given(&COMPRESSION_RATIO, &engine(0.0))
            .unwrap()
            .value()
            .unwrap();
        assert!((trapped(0.0) - whole).abs() < 1e-12);
        assert!(trapped(60.0) < trapped(40.0) && trapped(40.0) < whole);
    }

    #[test]
    fn a_rod_that_cannot_turn_is_named() {
        let mut given = Given::new();
        for input in TRAPPED_RATIO_CHECK.inputs {
            let value = if input.id == "rod-length" {
                Estimate::exact(0.041)
            } else {
                engine(60.0).one(input).unwrap().clone()
            };
            given.push(input.id, value);
        }
        let error = TRAPPED_RATIO_CHECK.answer(&given).unwrap_err();
        assert_eq!(error.field(), Some("rod-length"));
    }
}
