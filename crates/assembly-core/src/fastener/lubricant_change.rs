//! Another lubricant than the torque was given for: what changes, as a question.

use super::common::{SHARE, TORQUE, TORQUES, per_cent};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

static TORQUE_IN: Input = Input::of(
    "torque",
    "torque on the sheet",
    TORQUE,
    TORQUES,
    "As printed, for the lubricant that is printed with it.",
);
static MEANT: Input = Input::ratio(
    "meant",
    "nut factor it was printed for",
    (0.05, 0.6),
    "Of the lubricant named on the sheet. Common: 0.20 to 0.25 dry, 0.15 to 0.18 oiled, 0.10 to 0.14 moly paste.",
);
static ON_IT: Input = Input::ratio(
    "on-it",
    "nut factor of what is on the bolt",
    (0.05, 0.6),
    "Of what is really on thread and underside of the head, from its sheet.",
);

/// How unsure such a rescaling is at best. Disputed common practice.
const UNSURE: f64 = 0.25;
/// A change that is no question. This project's own choice.
const NO_MATTER: f64 = 0.02;

/// Lubricant change.
pub static LUBRICANT_CHANGE: Calculation = Calculation {
    id: "lubricant-change",
    title: "Another lubricant than on the sheet",
    purpose: "How much harder or softer a printed torque pulls with another lubricant. A question for the fastener's maker, not a new torque.",
    inputs: &[TORQUE_IN, MEANT, ON_IT],
    outputs: &[
        Output::of(
            "load-change",
            "preload at the printed torque, more or less",
            SHARE,
        ),
        Output::of(
            "guide",
            "torque for the preload that was meant, a rough guide",
            TORQUE,
        ),
        Output::of("guide-least", "the same, least of its band", TORQUE),
        Output::of("guide-most", "the same, most of its band", TORQUE),
    ],
    workings: &[
        "preload changes by {meant} ÷ {on-it} − 1 = {load-change}",
        "rough guide = {torque} × {on-it} ÷ {meant} = {guide}, unsure by a quarter: {guide-least} to {guide-most}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Do not tighten to the guide value. Ask the fastener's maker for the torque of this lubricant, or clean the bolt and use the one on the sheet.",
        "Wet sealant is not oil, and oil on the thread alone is half a lubricant.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (torque, meant, on_it) = (
        given.one(&TORQUE_IN)?,
        given.one(&MEANT)?,
        given.one(&ON_IT)?,
    );
    let change = meant / on_it - 1.0;
    let guide = torque * (on_it / meant);
    let answer = if change.value() > NO_MATTER {
        Answer::new().finding(
            Gravity::Stop,
            format!(
                "Is the sheet's torque for what is on this bolt? It would pull about {} harder than was meant.",
                per_cent(change.value())
            ),
        )
    } else if change.value() < -NO_MATTER {
        Answer::new().finding(
            Gravity::Caution,
            format!(
                "Is the sheet's torque for what is on this bolt? It would pull about {} less than was meant.",
                per_cent(-change.value())
            ),
        )
    } else {
        Answer::new()
    };
    Ok(answer
        .with("guide-least", &guide * (1.0 - UNSURE))
        .with("guide-most", &guide * (1.0 + UNSURE))
        .with("guide", guide)
        .with("load-change", change))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{says, value, worked};

    fn changed(meant: f64, on_it: f64) -> Answer {
        worked(
            &LUBRICANT_CHANGE,
            &si(&[("torque", 100.0), ("meant", meant), ("on-it", on_it)]),
        )
    }

    // Common practice: a nut factor of 0.15 in place of 0.20 pulls a third harder.
    #[test]
    fn an_oiled_bolt_at_a_dry_torque_is_asked_about() {
        let oiled = changed(0.20, 0.15);
        assert!((value(&oiled, "load-change", 1.0) - 0.333).abs() < 0.001);
        assert!(says(&oiled, "33 % harder"));
        assert_eq!(oiled.findings()[0].gravity, Gravity::Stop);
        assert!((value(&oiled, "guide", 1.0) - 75.0).abs() < 1e-6);
    }

    #[test]
    fn a_drier_bolt_is_asked_about_and_the_same_one_is_not() {
        assert!(says(&changed(0.15, 0.20), "25 % less"));
        assert!(changed(0.17, 0.17).findings().is_empty());
    }
}
