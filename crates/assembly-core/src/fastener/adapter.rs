//! A crowfoot or other adapter on a torque wrench: what to set it to.

use std::f64::consts::PI;

use super::common::{ANGLE, TORQUE, TORQUES};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

static WANTED: Input = Input::of(
    "wanted",
    "torque wanted at the bolt",
    TORQUE,
    TORQUES,
    "From the sheet.",
);
static WRENCH: Input = Input::size(
    "wrench-length",
    "wrench, grip to drive",
    (0.05, 2.0),
    "From the middle of the grip, where the hand pulls, to the middle of the square drive.",
);
static ADAPTER: Input = Input::size(
    "adapter-length",
    "adapter, drive to bolt",
    (0.0, 0.5),
    "From the middle of the square drive to the middle of the bolt.",
);
static TURNED: Input = Input::of(
    "turned",
    "adapter turned from straight ahead",
    ANGLE,
    (0.0, PI),
    "Nothing when it lengthens the wrench, 90° when it stands square to it, 180° when it points back at the hand.",
);

/// Adapter.
pub static WRENCH_WITH_ADAPTER: Calculation = Calculation {
    id: "wrench-with-adapter",
    title: "Torque wrench with an adapter",
    purpose: "What to set a torque wrench to when a crowfoot or other adapter moves the bolt away from its drive.",
    inputs: &[WANTED, WRENCH, ADAPTER, TURNED],
    outputs: &[
        Output::of("set", "set the wrench to", TORQUE),
        Output::of(
            "without",
            "what the bolt would get at the wanted setting",
            TORQUE,
        ),
    ],
    workings: &[
        "set = wanted × L ÷ (L + A × cos θ) = {wanted} × {wrench-length} ÷ ({wrench-length} + {adapter-length} × cos {turned}) = {set}",
        "set to the wanted torque, the bolt would get {without}",
    ],
    provenance: Provenance::Handbook("TM 1-1500-204-23-9, torque wrench with adapter"),
    cautions: &[
        "Pull at the middle of the grip: anywhere else is another length.",
        "At 90° nothing changes, and a straight extension along the bolt changes nothing. Leave out universal joints and wobble extensions.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (wanted, wrench) = (given.one(&WANTED)?, given.one(&WRENCH)?);
    let reach = wrench + given.one(&ADAPTER)? * given.one(&TURNED)?.cosine();
    if reach.value() < 0.2 * wrench.value() {
        return Err(CalculationError::not_possible(
            &ADAPTER,
            "turned back like this the adapter reaches nearly to the hand: use a longer wrench, or turn the adapter to 90°",
        ));
    }
    let factor = wrench / &reach;
    let answer = if (factor.value() - 1.0).abs() < 0.005 {
        Answer::new().finding(
            Gravity::Note,
            "Set as it is: this adapter changes nothing that counts.",
        )
    } else {
        Answer::new()
    };
    Ok(answer
        .with("set", wanted * &factor)
        .with("without", wanted / &factor))
}

#[cfg(test)]
mod tests {
    use super::super::common::testing::si;
    use super::*;
    use crate::fit::readings::testing::{refused, says, value, worked};

    fn set(wanted: f64, wrench: f64, adapter: f64, degrees: f64) -> Answer {
        worked(
            &WRENCH_WITH_ADAPTER,
            &si(&[
                ("wanted", wanted),
                ("wrench-length", wrench * 0.0254),
                ("adapter-length", adapter * 0.0254),
                ("turned", degrees.to_radians()),
            ]),
        )
    }

    // TM 1-1500-204-23-9: 300, wrench 10 in, adapter 4 in: 214 straight, 233.9 at
    // 45°, 300 at 90°; 19 with 22 and 3 in: 16.7.
    #[test]
    fn the_manuals_examples_come_out() {
        for (degrees, wanted) in [(0.0, 214.29), (45.0, 233.86), (90.0, 300.0)] {
            let got = value(&set(300.0, 10.0, 4.0, degrees), "set", 1.0);
            assert!((got - wanted).abs() < 0.01, "{degrees}: {got}");
        }
        assert!((value(&set(19.0, 22.0, 3.0, 0.0), "set", 1.0) - 16.72).abs() < 0.01);
        assert!(says(&set(300.0, 10.0, 4.0, 90.0), "changes nothing"));
    }

    #[test]
    fn an_adapter_that_points_back_takes_more_and_has_an_end() {
        assert!((value(&set(60.0, 10.0, 4.0, 180.0), "set", 1.0) - 100.0).abs() < 1e-6);
        let back = si(&[
            ("wanted", 60.0),
            ("wrench-length", 0.25),
            ("adapter-length", 0.25),
            ("turned", PI),
        ]);
        assert_eq!(refused(&WRENCH_WITH_ADAPTER, &back), Some("adapter-length"));
    }
}
