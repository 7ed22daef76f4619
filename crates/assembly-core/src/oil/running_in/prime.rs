//! The prime test: whether oil is everywhere before the engine first turns by itself.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::Estimate;
use crate::oil::inputs::{COUNT, PRESSURE};

const PSI: f64 = 6_894.757_293_168_36;

/// After so many days a prime has drained off; common practice.
pub const HOLDS_DAYS: f64 = 14.0;

/// What a pressure pot should show at the gallery at least; common practice.
pub const LEAST_PRESSURE: f64 = 25.0 * PSI;

static REACHED: Input = Input::of(
    "pressure",
    "pressure reached",
    PRESSURE,
    (0.0, 1.2e6),
    "At the gallery while the drill or the pot works.",
);
static ROCKERS: Input = Input::of(
    "rockers",
    "rockers, or followers, in all",
    COUNT,
    (1.0, 96.0),
    "All of them.",
);
static WET: Input = Input::of(
    "wet",
    "of them with oil",
    COUNT,
    (0.0, 96.0),
    "Turn the crank by a quarter eight times while priming, and look at each.",
);
static DAYS: Input = Input::of(
    "days",
    "days since",
    COUNT,
    (0.0, 5000.0),
    "0 when it is being done now.",
);
static OPENED: Input = Input::of(
    "opened",
    "oil joints opened since",
    COUNT,
    (0.0, 50.0),
    "Pump, pickup, pan, filter, distributor, cam bearings, any plug.",
);

/// Prime test.
pub static PRIME_TEST: Calculation = Calculation {
    id: "prime-test",
    title: "Prime test",
    purpose: "Whether oil is everywhere it has to be, and still is.",
    inputs: &[REACHED, ROCKERS, WET, DAYS, OPENED],
    outputs: &[
        Output::of("dry", "rockers still dry", COUNT),
        Output::of("days-left", "days that the prime still holds", COUNT),
    ],
    workings: &[
        "dry = {rockers} − {wet} = {dry}",
        "a prime holds two weeks: {days-left} days left after {days}, none when a joint was opened ({opened})",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Many drives turn the other way than a drill does: look at the gear first.",
        "With flat tappets do not turn the cam round and round dry.",
        "A drill that bites can break a wrist: hold it in both hands. Oil under pressure sprays: goggles.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (rockers, wet) = (given.one(&ROCKERS)?, given.one(&WET)?);
    if wet.value() > rockers.value() {
        return Err(CalculationError::not_possible(
            &WET,
            "more are wet than there are: count again",
        ));
    }
    let (reached, days, opened) = (
        given.one(&REACHED)?.value(),
        given.one(&DAYS)?.value(),
        given.one(&OPENED)?.value(),
    );
    let dry = rockers - wet;
    let left = if opened > 0.0 {
        0.0
    } else {
        (HOLDS_DAYS - days).max(0.0)
    };
    let mut answer = Answer::new();
    if reached <= 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "No pressure: do not start. Drill turns free: drive, rotation, pickup, relief. Drill pulls hard: the gauge or its line.",
        );
    } else if reached < LEAST_PRESSURE {
        answer = answer.finding(
            Gravity::Caution,
            "Under 25 psi: warm the oil, keep on, look at the pump's clearances and for a missing plug.",
        );
    }
    if dry.value() > 0.0 {
        answer = answer.finding(
            Gravity::Stop,
            "A rocker is still dry: do not start. Turn the crank a quarter and prime on; then look for a hole that does not meet.",
        );
    }
    if opened > 0.0 {
        answer = answer.finding(Gravity::Stop, "An oil joint was opened since: prime again.");
    } else if days > HOLDS_DAYS {
        answer = answer.finding(
            Gravity::Stop,
            "More than two weeks ago: the oil has run off. Prime again.",
        );
    }
    Ok(answer
        .with("dry", dry)
        .with("days-left", Estimate::exact(left)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, refused, says, value, worked};

    fn primed(psi: f64, wet: f64, days: f64, opened: f64) -> Given {
        given(
            1.0,
            &[
                ("rockers", &[16.0]),
                ("wet", &[wet]),
                ("days", &[days]),
                ("opened", &[opened]),
            ],
        )
        .with("pressure", Estimate::exact(psi * PSI))
    }

    #[test]
    fn a_good_prime_says_nothing_and_runs_out() {
        let answer = worked(&PRIME_TEST, &primed(40.0, 16.0, 4.0, 0.0));
        assert!(answer.findings().is_empty());
        assert_eq!(value(&answer, "days-left", 1.0), 10.0);
        assert!(says(
            &worked(&PRIME_TEST, &primed(40.0, 16.0, 15.0, 0.0)),
            "Prime again"
        ));
        assert!(says(
            &worked(&PRIME_TEST, &primed(40.0, 16.0, 1.0, 1.0)),
            "joint was opened"
        ));
    }

    #[test]
    fn dry_rockers_and_no_pressure_stop() {
        for bad in [primed(40.0, 14.0, 0.0, 0.0), primed(0.0, 16.0, 0.0, 0.0)] {
            assert_eq!(
                worked(&PRIME_TEST, &bad).findings()[0].gravity,
                Gravity::Stop
            );
        }
        assert_eq!(
            refused(&PRIME_TEST, &primed(40.0, 17.0, 0.0, 0.0)),
            Some("wet")
        );
    }
}
