//! A valve seat: how wide, how true, and what margin the valve has left.

use std::f64::consts::FRAC_PI_2;

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    UsualUnits,
};
use crate::limits::about;
use crate::quantity::Kind;

const SIZES: (f64, f64) = (0.01, 0.1);

static OUTER: Input = Input::size(
    "outer",
    "outer edge of the seat",
    SIZES,
    "Diameter of the seat's outer edge, by dividers or caliper on a blued contact.",
);
static INNER: Input = Input::size(
    "inner",
    "inner edge of the seat",
    SIZES,
    "Diameter of its inner edge.",
);
static ANGLE: Input = Input::of(
    "angle",
    "seat angle",
    (Kind::Angle, UsualUnits::of("°", "°")),
    (0.2, 1.3),
    "From the face of the head: commonly 45° or 30°.",
);
static RUN_OUT: Input = Input::gap(
    "run-out",
    "run-out to the guide",
    (0.0, 0.001),
    "Seat indicator on a pilot in the guide: the whole swing. Leave it out when you have none and blue the contact instead.",
)
.optional();
static MARGIN: Input = Input::gap(
    "margin",
    "margin of the valve",
    (0.0, 0.006),
    "The rim of the valve head above its face. Leave it out for the seat alone.",
)
.optional();
static VALVE: Input = Input::one_of(
    "valve",
    "valve",
    &[
        Choice {
            id: "seat-width-intake",
            label: "intake",
        },
        Choice {
            id: "seat-width-exhaust",
            label: "exhaust",
        },
    ],
    "An exhaust seat is wider, to lead its heat away.",
);

/// A seat.
pub static VALVE_SEAT: Calculation = Calculation {
    id: "valve-seat",
    title: "Valve seat",
    purpose: "How wide a seat is along its face, how true it runs, and whether the valve has margin left.",
    inputs: &[OUTER, INNER, ANGLE, RUN_OUT, MARGIN, VALVE],
    outputs: &[Output::gap("width", "seat width along its face")],
    workings: &[
        "width = (outer − inner) ÷ (2 × cos angle) = ({outer} − {inner}) ÷ (2 × cos {angle}) = {width}",
    ],
    provenance: Provenance::Derivation(
        "the seat is a cone; the common figures are common practice",
    ),
    cautions: &[
        "The contact belongs in the middle of the valve's face. Prove every seat with solvent or vacuum.",
        "Cutting a seat sinks the valve: its tip rises and its spring stands taller. Measure both again.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let (outer, inner) = (given.one(&OUTER)?, given.one(&INNER)?);
    let angle = given.one(&ANGLE)?;
    if inner.value() >= outer.value() {
        return Err(CalculationError::not_possible(
            &INNER,
            "is not smaller than the outer edge: the two are swapped",
        ));
    }
    let cosine = (FRAC_PI_2 - angle.value()).sin();
    let width = (outer - inner) / (2.0 * cosine);
    let mut answer = Answer::new();
    // The exhaust has one common figure; a seat narrower than it runs hot.
    let exhaust = given.choice(&VALVE)?.id == "seat-width-exhaust";
    let card = about(given.choice(&VALVE)?.id, "");
    let least = card.and_then(|entry| entry.low.or(entry.wanted));
    if let Some(least) = least
        && width.value() < least * 0.0254 - 1e-9
    {
        answer = answer.finding(
            Gravity::Caution,
            if exhaust {
                "Narrower than the 0.080 in that is common for exhaust valves: it runs hot. The maker's sheet decides."
            } else {
                "Narrower than the 0.060 in that is common for intake valves: it hammers in. The maker's sheet decides."
            },
        );
    } else if !exhaust {
        answer = answer.remarked(&width, card);
    }
    if let Some(run_out) = given.optional(RUN_OUT.id) {
        answer = answer.remarked(run_out, about("seat-run-out", ""));
    }
    if let Some(margin) = given.optional(MARGIN.id) {
        answer = answer.remarked(margin, about("valve-margin", ""));
    }
    Ok(answer.with("width", width))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, given, refused, says, value, worked};
    use crate::measure::Estimate;

    fn seat(outer: f64, inner: f64, valve: f64) -> Given {
        given(INCH, &[("outer", &[outer]), ("inner", &[inner])])
            .with("angle", Estimate::exact(45.0_f64.to_radians()))
            .with("valve", Estimate::exact(valve))
    }

    // A 45° cone: half the difference of diameters times √2.
    #[test]
    fn the_width_is_along_the_face_of_the_cone() {
        let answer = worked(&VALVE_SEAT, &seat(1.60, 1.50, 0.0));
        assert!((value(&answer, "width", INCH) - 0.05 * 2.0_f64.sqrt()).abs() < 1e-6);
        assert!(
            answer
                .findings()
                .iter()
                .all(|one| one.gravity == Gravity::Note)
        );
        assert!(says(
            &worked(&VALVE_SEAT, &seat(1.60, 1.50, 1.0)),
            "runs hot"
        ));
        assert!(says(
            &worked(&VALVE_SEAT, &seat(1.60, 1.56, 0.0)),
            "hammers in"
        ));
    }

    #[test]
    fn a_thin_margin_and_a_seat_that_runs_out_are_named() {
        let given = seat(1.60, 1.50, 0.0)
            .with("margin", Estimate::exact(0.020 * INCH))
            .with("run-out", Estimate::exact(0.003 * INCH));
        let answer = worked(&VALVE_SEAT, &given);
        assert!(says(&answer, "the edge burns"));
        assert!(says(&answer, "leaks"));
        assert_eq!(refused(&VALVE_SEAT, &seat(1.5, 1.6, 0.0)), Some("inner"));
    }
}
