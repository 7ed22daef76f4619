//! End float of a floating pin between its locks.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

const SIZES: (f64, f64) = (0.01, 0.3);

static BETWEEN: Input = Input::size(
    "between",
    "between the outer sides of the lock grooves",
    SIZES,
    "Inside jaws or a depth gauge, from the outer wall of one groove to the outer wall of the other.",
);
static PIN: Input = Input::size("pin", "length of the pin", SIZES, "Over its ends.");
static LOCK: Input = Input::gap(
    "lock",
    "thickness of one lock",
    (0.0, 0.005),
    "Of all rings that go into one groove together.",
);

/// Pin between its locks.
pub static PIN_LOCK_FLOAT: Calculation = Calculation {
    id: "pin-lock-float",
    title: "Pin float between its locks",
    purpose: "Whether a floating pin has room between its locks, and not too much.",
    inputs: &[BETWEEN, PIN, LOCK],
    outputs: &[Output::gap("float", "end float of the pin")],
    workings: &[
        "float = between the grooves − pin − 2 × lock = {between} − {pin} − 2 × {lock} = {float}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "How much is right depends on the kind of lock: some want none at all. The piston maker's sheet decides; locks are used once.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let float = given.one(&BETWEEN)? - given.one(&PIN)? - given.one(&LOCK)? * 2.0;
    let answer = if float.value() < 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "The locks do not go into their grooves with this pin: they would spring out.",
        )
    } else {
        Answer::new()
    };
    Ok(answer.with("float", float))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, value, worked};

    #[test]
    fn both_locks_take_room() {
        let pin = |length: f64| {
            given(
                INCH,
                &[
                    ("between", &[2.860]),
                    ("pin", &[length]),
                    ("lock", &[0.072]),
                ],
            )
        };
        assert_eq!(
            value(&worked(&PIN_LOCK_FLOAT, &pin(2.710)), "float", THOU),
            6.0
        );
        let long = worked(&PIN_LOCK_FLOAT, &pin(2.720));
        assert_eq!(long.findings()[0].gravity, Gravity::Stop);
    }
}
