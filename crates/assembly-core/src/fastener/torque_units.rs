//! One torque in every unit that a wrench may be marked in.

use super::common::TORQUE;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, UsualUnits,
};
use crate::quantity::Kind;

static TORQUE_IN: Input = Input::of(
    "torque",
    "torque",
    TORQUE,
    (0.0, 10_000.0),
    "With its unit, as printed: 65 ft-lb, 90 N·m, 7.5 kgf·m, 120 in-lb.",
);

const fn in_unit(id: &'static str, label: &'static str, symbol: &'static str) -> Output {
    Output::of(id, label, (Kind::Torque, UsualUnits::of(symbol, symbol)))
}

/// Torque units.
pub static TORQUE_UNITS: Calculation = Calculation {
    id: "torque-units",
    title: "A torque in the wrench's unit",
    purpose: "A printed torque in every unit that a wrench may be marked in.",
    inputs: &[TORQUE_IN],
    outputs: &[
        in_unit("foot-pounds", "in foot-pounds", "ft-lb"),
        in_unit("inch-pounds", "in inch-pounds", "in-lb"),
        in_unit("newton-metres", "in newton metres", "N·m"),
        in_unit("kilogram-metres", "in kilogram-force metres", "kgf·m"),
        in_unit(
            "kilogram-centimetres",
            "in kilogram-force centimetres",
            "kgf·cm",
        ),
    ],
    workings: &[
        "{torque} = {foot-pounds} = {inch-pounds} = {newton-metres} = {kilogram-metres} = {kilogram-centimetres}",
    ],
    provenance: Provenance::Standard("NIST SP 811 (2008), appendix B; exact definitions"),
    cautions: &[
        "Inch-pounds read as foot-pounds are twelve times too much: small covers and cam caps break.",
        "Old manuals print kgf·m as \"mkg\" or \"kg·m\": one is some seven foot-pounds.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let torque = given.one(&TORQUE_IN)?;
    Ok(TORQUE_UNITS
        .outputs
        .iter()
        .fold(Answer::new(), |answer, output| {
            answer.with(output.id, torque.clone())
        }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;
    use crate::quantity::{read, show, unit_of};

    // Worked by hand: 65 ft-lb = 88.1 N·m = 780 in-lb; 1 kgf·m = 7.233 ft-lb.
    #[test]
    fn one_torque_is_the_same_in_every_unit() {
        let unit = |symbol: &str| unit_of(Kind::Torque, symbol).unwrap();
        let si = |text: &str| read(text, Kind::Torque, unit("N·m")).unwrap().si();
        let given = Given::new().with("torque", Estimate::exact(si("65 ft-lb")));
        let answer = TORQUE_UNITS.answer(&given).unwrap();
        for output in TORQUE_UNITS.outputs {
            let shown = show(
                answer.get(output.id).unwrap().value(),
                None,
                unit(output.units.inch),
            );
            let wanted = match output.id {
                "foot-pounds" => "65.0",
                "inch-pounds" => "780",
                "newton-metres" => "88.1",
                "kilogram-metres" => "8.99",
                _ => "898.7",
            };
            assert_eq!(shown.number, wanted, "{}", output.id);
        }
        assert!((si("1 kgf·m") / si("1 ft-lb") - 7.233).abs() < 5e-4);
        assert!((si("1 mkg") - 9.806_65).abs() < 1e-12);
    }
}
