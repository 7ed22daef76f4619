//! The finish of a honed bore: the angle of its cross-hatch, and the stones.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    UsualUnits,
};
use crate::measure::{Estimate, Window};
use crate::quantity::Kind;
use std::f64::consts::PI;

const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));
const SPEED: (Kind, UsualUnits) = (Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm"));
const ANGLES: (f64, f64) = (0.01, PI * 0.99);
const GRITS: (f64, f64) = (36.0, 3000.0);

static BORE: Input = Input::size("bore", "bore", (0.02, 0.6), "The finished bore.");
static TURNING: Input = Input::of(
    "turning",
    "speed of the hone",
    SPEED,
    (0.5, 200.0),
    "Turns a minute under load, from the machine or counted by ear.",
);
static TRAVEL: Input = Input::size(
    "travel",
    "travel of the hone one way",
    (0.005, 1.0),
    "How far the hone moves from its highest to its lowest place.",
);
static STROKES: Input = Input::of(
    "strokes",
    "strokes a minute, down and up again",
    (Kind::Count, UsualUnits::NONE),
    (1.0, 600.0),
    "Count them for half a minute and double.",
);
static SEEN: Input = Input::of(
    "seen",
    "angle seen in the bore",
    ANGLE,
    ANGLES,
    "Rub a pencil over paper in the bore, flatten it, and lay a protractor between the two sets of lines, the angle that opens sideways.",
)
.optional();
static LOW: Input = Input::of(
    "low",
    "least angle on the ring sheet",
    ANGLE,
    ANGLES,
    "Some sheets give half of it, measured from the level: double that.",
)
.optional();
static HIGH: Input = Input::of(
    "high",
    "greatest angle on the ring sheet",
    ANGLE,
    ANGLES,
    "Some sheets give half of it, measured from the level: double that.",
)
.optional();
static GRIT: Input = Input::of(
    "grit",
    "grit of the last stones",
    (Kind::Count, UsualUnits::NONE),
    GRITS,
    "As printed on the stones: a rougher stone has a lower number. Write the grit down, not a roughness that nobody measured.",
)
.optional();
static SHEET_GRIT: Input = Input::of(
    "sheet-grit",
    "grit on the ring sheet",
    (Kind::Count, UsualUnits::NONE),
    GRITS,
    "For this ring's face: plain iron, moly and chrome want different ones.",
)
.optional();
static PLATEAU: Input = Input::one_of(
    "plateau",
    "peaks taken off",
    &[
        Choice {
            id: "asked",
            label: "not yet, and the ring sheet asks for it",
        },
        Choice {
            id: "done",
            label: "done, with brush or fine stones",
        },
        Choice {
            id: "not-asked",
            label: "the ring sheet does not ask",
        },
    ],
    "A brush or a few strokes of fine stones after the last stones.",
);

/// Finish.
pub static BORE_FINISH: Calculation = Calculation {
    id: "bore-finish",
    title: "Cross-hatch and finish of a bore",
    purpose: "Which cross-hatch a hone's speed and strokes give, and whether it and the stones are what the ring sheet asks for.",
    inputs: &[
        BORE, TURNING, TRAVEL, STROKES, SEEN, LOW, HIGH, GRIT, SHEET_GRIT, PLATEAU,
    ],
    outputs: &[
        Output::of("hatch", "cross-hatch that this honing gives", ANGLE),
        Output::of("off", "seen less that", ANGLE),
        Output::of(
            "strokes-for-least",
            "strokes a minute for the least angle",
            (Kind::Count, UsualUnits::NONE),
        ),
    ],
    workings: &[
        "speed along the bore = 2 × travel × strokes = 2 × {travel} × {strokes}, around it = π × bore × turns = π × {bore} × {turning}",
        "cross-hatch = 2 × arctan(along ÷ around) = {hatch}, seen {seen}, {off} off",
        "strokes for the least angle = π × bore × turns × tan({low} ÷ 2) ÷ (2 × travel) = {strokes-for-least}",
    ],
    provenance: Provenance::Derivation("two speeds of the hone at right angles, even strokes"),
    cautions: &[
        "Grit of the hone ruins an engine in hours: wash with hot water, soap and a brush until a white rag stays white, oil at once.",
        "Too flat a hatch holds no oil, too steep a one lets it by. The ring sheet decides.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (bore, turning) = (given.one(&BORE)?, given.one(&TURNING)?);
    let (travel, strokes) = (given.one(&TRAVEL)?, given.one(&STROKES)?);
    // Angular speed times half the bore is the speed around.
    let around = bore * turning / 2.0;
    let along = travel * strokes * (2.0 / 60.0);
    let hatch = (&along / &around).arc_tangent() * 2.0;
    let seen = given.optional(SEEN.id);
    let (low, high) = (given.optional(LOW.id), given.optional(HIGH.id));
    let strokes_for_least =
        low.map(|low| &around * (low / 2.0).tangent() / (travel * (2.0 / 60.0)));
    let mut answer = Answer::new();
    if low.is_some() || high.is_some() {
        let Ok(window) = Window::new(low.map(Estimate::value), high.map(Estimate::value)) else {
            return Err(CalculationError::not_possible(
                &LOW,
                "the least angle is more than the greatest: swap them",
            ));
        };
        let counts = seen.unwrap_or(&hatch);
        if !window.holds(counts.value()) {
            answer = answer.finding(
                Gravity::Caution,
                format!(
                    "A cross-hatch of {:.0}° is not what the ring sheet asks for: change the strokes, not the pressure.",
                    counts.value().to_degrees()
                ),
            );
        }
    }
    if let (Some(grit), Some(sheet)) = (given.optional(GRIT.id), given.optional(SHEET_GRIT.id)) {
        if grit.value() < sheet.value() {
            answer = answer.finding(
                Gravity::Caution,
                "The stones were rougher than the ring sheet asks for: the rings wear while they seat.",
            );
        } else if grit.value() > sheet.value() {
            answer = answer.finding(
                Gravity::Caution,
                "The stones were finer than the ring sheet asks for: the rings may never seat.",
            );
        }
    }
    if given.choice(&PLATEAU)?.id == "asked" {
        answer = answer.finding(
            Gravity::Caution,
            "The ring sheet asks for the peaks to be taken off, and that is not done yet.",
        );
    }
    Ok(answer
        .with_optional("off", seen.map(|seen| seen - &hatch))
        .with_optional("strokes-for-least", strokes_for_least)
        .with("hatch", hatch))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{refused, says, worked};

    /// A bore of 100 mm, 60 turns a minute, travel 130 mm.
    fn honing(strokes: f64) -> Given {
        [
            ("bore", 0.1),
            ("turning", 2.0 * PI),
            ("travel", 0.13),
            ("strokes", strokes),
            ("plateau", 2.0),
        ]
        .into_iter()
        .fold(Given::new(), |given, (id, value)| {
            given.with(id, Estimate::exact(value))
        })
    }

    fn degrees(answer: &Answer, id: &str) -> f64 {
        answer.get(id).unwrap().value().to_degrees()
    }

    // Worked by hand: around π × 100 mm × 1 a second = 314 mm/s; along
    // 2 × 130 × 50 ÷ 60 = 217 mm/s; 2 × arctan(0.690) = 69.2°.
    #[test]
    fn the_hatch_follows_from_the_two_speeds() {
        let answer = worked(&BORE_FINISH, &honing(50.0));
        assert!((degrees(&answer, "hatch") - 69.2).abs() < 0.1);
        // As fast along as around makes a right angle.
        let even = worked(&BORE_FINISH, &honing(60.0 * PI * 0.1 / 0.26));
        assert!((degrees(&even, "hatch") - 90.0).abs() < 1e-9);
    }

    #[test]
    fn strokes_for_the_least_angle_give_that_angle() {
        let given = honing(50.0).with("low", Estimate::exact(45_f64.to_radians()));
        let answer = worked(&BORE_FINISH, &given);
        let strokes = answer.get("strokes-for-least").unwrap().value();
        let again = worked(&BORE_FINISH, &honing(strokes));
        assert!((degrees(&again, "hatch") - 45.0).abs() < 1e-9);
    }

    #[test]
    fn what_the_ring_sheet_asks_for_is_held_against_what_was_done() {
        let sheet = |low: f64, high: f64| {
            honing(50.0)
                .with("low", Estimate::exact(low.to_radians()))
                .with("high", Estimate::exact(high.to_radians()))
        };
        assert!(says(&worked(&BORE_FINISH, &sheet(40.0, 50.0)), "69°"));
        assert!(
            worked(&BORE_FINISH, &sheet(60.0, 75.0))
                .findings()
                .is_empty()
        );
        // What is seen in the bore counts, not what the speeds promise.
        let seen = sheet(60.0, 75.0).with("seen", Estimate::exact(30_f64.to_radians()));
        assert!(says(&worked(&BORE_FINISH, &seen), "30°"));
        assert_eq!(refused(&BORE_FINISH, &sheet(50.0, 40.0)), Some("low"));
        for (grit, words) in [(180.0, "rougher"), (400.0, "finer")] {
            let given = honing(50.0)
                .with("grit", Estimate::exact(grit))
                .with("sheet-grit", Estimate::exact(280.0));
            assert!(says(&worked(&BORE_FINISH, &given), words));
        }
    }
}
