//! Ring end gap: how much a ring needs, how much to file, and what honing does
//! to it.

use std::f64::consts::PI;

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    length_text,
};
use crate::limits::about;

const BORES: (f64, f64) = (0.02, 0.6);

static BORE: Input = Input::size(
    "bore",
    "bore",
    BORES,
    "The finished bore that the ring will run in.",
);
static FACTOR: Input = Input::ratio(
    "factor",
    "gap for each inch of bore",
    (0.001, 0.02),
    "From the ring maker's sheet for this ring and this use, such as 0.0045.",
);
static MEASURED: Input = Input::gap(
    "measured",
    "gap as it is now",
    (0.0, 0.01),
    "Square the ring in its own bore, about an inch down; in a worn bore at the bottom of the ring's travel, where it is smallest. Feel with blades.",
)
.optional();
static CONDITION: Input = Input::one_of(
    "condition",
    "bore while measuring",
    &[
        Choice {
            id: "as-honed",
            label: "as it was honed: plate, gasket and fasteners the same",
        },
        Choice {
            id: "plate-off",
            label: "honed with a plate that is now off",
        },
        Choice {
            id: "other",
            label: "plate, gasket or fasteners differ from the honing",
        },
    ],
    "A bore honed under a torque plate is round only under that plate.",
);

/// The gap by its factor.
pub static RING_GAP_RULE: Calculation = Calculation {
    id: "ring-gap-rule",
    title: "Ring end gap",
    purpose: "How much end gap a ring needs in its bore, and how much to file off.",
    inputs: &[BORE, FACTOR, MEASURED, CONDITION],
    outputs: &[
        Output::gap("gap", "gap wanted at least"),
        Output::gap("to-file", "to file off"),
    ],
    workings: &[
        "gap = factor × bore = {factor} × {bore} = {gap}",
        "to file = gap − measured = {gap} − {measured} = {to-file}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Too little gap butts when hot and breaks the piston: when in doubt, more. The ring maker's sheet decides.",
        "File from the face inward so that the coating does not chip, break the edges, and try often: nothing can be put back.",
    ],
    run: run_rule,
};

fn run_rule(given: &Given) -> Result<Answer, CalculationError> {
    let bore = given.one(&BORE)?;
    let gap = bore * given.one(&FACTOR)?;
    let measured = given.optional(MEASURED.id);
    let to_file = measured.map(|measured| &gap - measured);
    let mut answer = Answer::new();
    match given.choice(&CONDITION)?.id {
        "plate-off" => {
            answer = answer.finding(
                Gravity::Stop,
                "This bore is round only with its plate on: a gap measured with the plate off means nothing. Fit the plate with the same gasket and fasteners and measure again.",
            );
        }
        "other" => {
            answer = answer.finding(
                Gravity::Caution,
                "The bore has another shape than when it was honed: measure again with the same plate, gasket and fasteners.",
            );
        }
        _ => {}
    }
    if let Some(to_file) = &to_file {
        let text = if to_file.value() > 0.0 {
            format!("File off {}.", length_text(to_file.value()))
        } else {
            "The gap is large enough: do not file.".to_owned()
        };
        answer = answer.finding(Gravity::Note, text);
    }
    if let Some(measured) = measured {
        let wrong = about("wrong-ring", "another bore");
        if wrong
            .and_then(|entry| entry.window(Some(bore.value())))
            .is_some_and(|window| !window.holds(measured.value()))
        {
            answer = answer.finding(
                Gravity::Caution,
                "So wide a gap means a ring for another bore: look at its box.",
            );
        }
    }
    Ok(answer.with("gap", gap).with_optional("to-file", to_file))
}

static GAP: Input = Input::gap(
    "gap",
    "gap before",
    (0.0, 0.01),
    "The gap of this ring in this bore before honing.",
);
static HONED: Input = Input::gap(
    "honed",
    "how much larger the bore gets",
    (-0.001, 0.003),
    "On the diameter: bore after less bore before.",
);

/// What honing does to a gap.
pub static RING_GAP_AFTER_HONING: Calculation = Calculation {
    id: "ring-gap-after-honing",
    title: "Ring gap after honing",
    purpose: "How far a ring's gap opens when its bore is honed larger.",
    inputs: &[GAP, HONED],
    outputs: &[
        Output::gap("opens", "the gap opens by"),
        Output::gap("after", "gap afterwards"),
    ],
    workings: &[
        "opens = π × growth of the bore = π × {honed} = {opens}",
        "after = {gap} + {opens} = {after}",
    ],
    provenance: Provenance::Derivation("the circumference is π times the diameter"),
    cautions: &["Hone first, then gap the rings: a gap is easily opened and never closed."],
    run: |given| {
        let opens = given.one(&HONED)? * PI;
        Ok(Answer::new()
            .with("after", given.one(&GAP)? + &opens)
            .with("opens", opens))
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;

    const INCH: f64 = 0.0254;

    fn ring(bore: f64, factor: f64, measured: f64, condition: f64) -> Answer {
        let given = Given::new()
            .with("bore", Estimate::exact(bore * INCH))
            .with("factor", Estimate::exact(factor))
            .with("measured", Estimate::exact(measured * INCH))
            .with("condition", Estimate::exact(condition));
        RING_GAP_RULE.answer(&given).unwrap()
    }

    fn inches(answer: &Answer, id: &str) -> f64 {
        answer.get(id).unwrap().value() / INCH
    }

    // Common practice: bore 4.030, factor 0.0045: 0.0181; at 0.014 file 0.0041.
    #[test]
    fn the_worked_ring_comes_out() {
        let answer = ring(4.030, 0.0045, 0.014, 0.0);
        assert!((inches(&answer, "gap") - 0.0181).abs() < 0.000_05);
        assert!((inches(&answer, "to-file") - 0.0041).abs() < 0.000_05);
        assert!(answer.findings()[0].text.starts_with("File off"));
    }

    // Common practice: a thou more bore opens the gap by 3.1 thou.
    #[test]
    fn a_thou_of_honing_opens_the_gap_by_three() {
        let given = Given::new()
            .with("gap", Estimate::exact(0.014 * INCH))
            .with("honed", Estimate::exact(0.001 * INCH));
        let answer = RING_GAP_AFTER_HONING.answer(&given).unwrap();
        assert!((inches(&answer, "opens") - 0.0031).abs() < 0.000_05);
        assert!((inches(&answer, "after") - 0.0171).abs() < 0.000_05);
    }

    // The trap: a gap measured in a bore whose plate is off.
    #[test]
    fn a_gap_without_the_plate_is_worth_nothing() {
        let off = ring(4.0, 0.004, 0.020, 1.0);
        assert_eq!(off.findings()[0].gravity, Gravity::Stop);
        let same = ring(4.0, 0.004, 0.020, 0.0);
        assert!(
            same.findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );
    }

    #[test]
    fn a_ring_for_another_bore_is_noticed_and_not_filed() {
        let answer = ring(4.0, 0.004, 0.034, 0.0);
        assert!(
            answer
                .findings()
                .iter()
                .any(|one| one.text.contains("another bore"))
        );
        assert!(
            answer
                .findings()
                .iter()
                .any(|one| one.text.contains("do not file"))
        );
    }
}
