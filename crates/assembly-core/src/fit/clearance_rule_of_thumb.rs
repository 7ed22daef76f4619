//! Running clearance by the rule of so much an inch of journal: what to expect
//! when there is no sheet, and a tripwire for slips. Never a limit.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    UsualUnits,
};
use crate::measure::Estimate;
use crate::quantity::Kind;

/// The lesser clearance to expect, as a part of the journal's diameter:
/// three quarters of a thou an inch. Common practice.
pub const LEAST_PART: f64 = 0.000_75;
/// The greater clearance to expect, as a part of the journal's diameter: the
/// old rule of a thou an inch. Common practice.
pub const GREATEST_PART: f64 = 0.001;
/// What some builders add at most for more power or speed than the engine was
/// made for: half a thou, in metres. Common practice.
pub const HARD_USE_ADDS: f64 = 0.0005 * 0.0254;

static JOURNAL: Input = Input {
    id: "journal",
    label: "journal diameter",
    kind: Kind::Length,
    units: UsualUnits {
        inch: "in",
        metric: "mm",
    },
    sane: (0.002, 0.8),
    takes: Takes::One,
    how: "Use the nominal size from the sheet, or the size you measured.",
};

static PART: Input = Input {
    id: "part",
    label: "clearance for each inch of journal",
    kind: Kind::Ratio,
    units: UsualUnits::NONE,
    sane: (0.000_1, 0.01),
    takes: Takes::Optional,
    how: "Only if you work to a figure of your own, such as 0.0009 in for each inch of journal.",
};

const THOU_OR_MICROMETRES: UsualUnits = UsualUnits {
    inch: "thou",
    metric: "µm",
};

/// What to expect of a plain bearing by common practice.
pub static CLEARANCE_RULE_OF_THUMB: Calculation = Calculation {
    id: "clearance-rule-of-thumb",
    title: "Running clearance, rule of thumb",
    purpose: "What a plain bearing of this size commonly runs with, for when there is no sheet.",
    inputs: &[JOURNAL, PART],
    outputs: &[
        Output {
            id: "least",
            label: "commonly at least",
            kind: Kind::Length,
            units: THOU_OR_MICROMETRES,
        },
        Output {
            id: "greatest",
            label: "commonly at most",
            kind: Kind::Length,
            units: THOU_OR_MICROMETRES,
        },
        Output {
            id: "hard-use",
            label: "at most for hard use",
            kind: Kind::Length,
            units: THOU_OR_MICROMETRES,
        },
        Output {
            id: "own",
            label: "by your own figure",
            kind: Kind::Length,
            units: THOU_OR_MICROMETRES,
        },
    ],
    workings: &[
        "least = 0.00075 × journal = 0.00075 × {journal} = {least}",
        "greatest = 0.001 × journal = 0.001 × {journal} = {greatest}",
        "hard use adds at most half a thou: {hard-use}",
        "by your own figure = {part} × {journal} = {own}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "This is a rule of thumb to catch slips. The maker's sheet for your engine and your shells decides.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let journal = given.one(&JOURNAL)?;
    let times = |part: f64| Estimate::from_slopes(journal.value() * part, &[(journal, part)]);
    let greatest = times(GREATEST_PART);
    let hard_use = Estimate::from_slopes(greatest.value() + HARD_USE_ADDS, &[(&greatest, 1.0)]);
    Ok(Answer::new()
        .with("least", times(LEAST_PART))
        .with("greatest", greatest)
        .with("hard-use", hard_use)
        .with_optional(
            "own",
            given.optional(PART.id).map(|part| times(part.value())),
        )
        .finding(
            Gravity::Note,
            "Common practice, not a limit: type the limits from the maker's sheet.",
        ))
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 0.0254;

    fn answer(journal: f64) -> Answer {
        CLEARANCE_RULE_OF_THUMB
            .answer(&Given::new().with("journal", Estimate::exact(journal)))
            .unwrap()
    }

    // Common practice: 0.00075 to 0.001 in for each inch of journal.
    #[test]
    fn a_two_and_a_half_inch_journal_runs_with_about_two_thou() {
        let answer = answer(2.5 * INCH);
        let thou = |id: &str| answer.get(id).unwrap().value() / INCH * 1e3;
        assert!((thou("least") - 1.875).abs() < 1e-9);
        assert!((thou("greatest") - 2.5).abs() < 1e-9);
        assert!((thou("hard-use") - 3.0).abs() < 1e-9);
        assert!(answer.get("own").is_none());
    }

    #[test]
    fn a_journal_typed_in_the_wrong_unit_is_named() {
        let given = Given::new().with("journal", Estimate::exact(2.5));
        let error = CLEARANCE_RULE_OF_THUMB.answer(&given).unwrap_err();
        assert_eq!(error.field(), Some("journal"));
        assert!(error.to_string().contains("800 mm"), "{error}");
    }
}
