//! Valve to piston from the lift of the cam: the room at the top, the piston's
//! drop and the valve's lift, at every crank angle.

use std::f64::consts::FRAC_PI_2;

use super::lift_curve::LiftCurve;
use super::rods::{RODS, VALVE, judged};
use crate::crank::slider_crank::SliderCrank;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::fit::readings::same_count;
use crate::measure::Estimate;
use crate::quantity::Kind;

const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));
/// Crank angles looked at between the first and the last reading.
const LOOKED_AT: u32 = 240;

static AT_TOP: Input = Input::gap(
    "at-top",
    "seated valve to piston at the top",
    (0.0, 0.04),
    "Piston at its true top, a light spring on the valve: push the valve from its seat until it touches, and read how far it went.",
);
static STROKE: Input = Input::size(
    "stroke",
    "stroke",
    (0.02, 0.4),
    "Twice the throw of the crank.",
);
static ROD: Input = Input::size(
    "rod-length",
    "rod length, centre to centre",
    (0.04, 0.8),
    "From its sheet, or measured between the bores and half of each added.",
);
static VALVE_ANGLE: Input = Input::of(
    "valve-angle",
    "valve's angle to the bore",
    ANGLE,
    (0.0, FRAC_PI_2 * 0.9),
    "From the head's sheet; nothing when the stem stands along the bore.",
);
static ANGLES: Input = Input::of(
    "angles",
    "crank angles",
    ANGLE,
    (-FRAC_PI_2, FRAC_PI_2),
    "Every 2° to 5° from 15° before the top to 15° after it; before the top below nothing.",
)
.one_or_more();
static LIFTS: Input = Input::size(
    "lifts",
    "cam lift at each of them",
    (0.0, 0.02),
    "Indicator on the lifter, turned in running direction only; a hydraulic lifter made solid.",
)
.one_or_more();
static RATIO: Input = Input::ratio(
    "rocker-ratio",
    "rocker ratio",
    (0.8, 2.5),
    "Valve lift for each unit of cam lift; 1 for a bucket.",
);
static LASH: Input = Input::gap(
    "lash",
    "lash at the valve",
    (0.0, 0.002),
    "The running lash; leave it out for a hydraulic lifter.",
)
.optional();

/// Valve to piston, worked out.
pub static VALVE_TO_PISTON: Calculation = Calculation {
    id: "valve-to-piston",
    title: "Valve to piston from the cam's lift",
    purpose: "How near a valve comes to its piston around the top, where, and what turning the cam does to it.",
    inputs: &[
        AT_TOP,
        STROKE,
        ROD,
        VALVE_ANGLE,
        ANGLES,
        LIFTS,
        RATIO,
        LASH,
        VALVE,
        RODS,
    ],
    outputs: &[
        Output::gap("least", "least room"),
        Output::of("nearest-at", "crank angle where it is nearest", ANGLE),
        Output::gap(
            "for-a-degree",
            "room lost for each crank degree the cam is advanced",
        ),
    ],
    workings: &[
        "room = room at the top + piston's drop × cos(valve angle) − (cam lift × ratio − lash) = {at-top} + drop × cos {valve-angle} − (lift × {rocker-ratio} − {lash})",
        "drop from stroke {stroke} and rod {rod-length}; the least is {least} at {nearest-at}",
        "the lift's rise there × ratio = {for-a-degree} for each degree of advance",
    ],
    provenance: Provenance::Derivation(
        "crank and rod triangle; lift between the readings by F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984)",
    ),
    cautions: &[
        "This is as good as the readings: prove it by pushing the valve to touch at the angle found, or with clay, before the engine is turned over.",
        "A stretched chain or a cam a tooth out makes another curve.",
    ],
    run,
};

/// The readings in the order of their angles.
fn in_order(given: &Given) -> Result<Vec<(f64, &Estimate)>, CalculationError> {
    same_count(given, &ANGLES, &LIFTS)?;
    let mut pairs: Vec<(f64, &Estimate)> = given
        .several(ANGLES.id)
        .iter()
        .map(Estimate::value)
        .zip(given.several(LIFTS.id))
        .collect();
    pairs.sort_by(|one, other| one.0.total_cmp(&other.0));
    let close = |two: (&(f64, &Estimate), &(f64, &Estimate))| two.1.0 - two.0.0 < 1e-6;
    if pairs.iter().zip(pairs.iter().skip(1)).any(close) {
        return Err(CalculationError::not_possible(
            &ANGLES,
            "one angle is there twice: type each angle once, before the top below nothing",
        ));
    }
    Ok(pairs)
}

/// Where the room is least, and how much it is.
fn nearest(from: f64, to: f64, room: impl Fn(f64) -> f64) -> (f64, f64) {
    (0..=LOOKED_AT)
        .map(|at| from + (to - from) * f64::from(at) / f64::from(LOOKED_AT))
        .map(|angle| (angle, room(angle)))
        .min_by(|one, other| one.1.total_cmp(&other.1))
        .unwrap_or((from, f64::NAN))
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let pairs = in_order(given)?;
    let angles: Vec<f64> = pairs.iter().map(|pair| pair.0).collect();
    let (stroke, rod) = (given.one(&STROKE)?, given.one(&ROD)?);
    if SliderCrank::new(stroke.value() / 2.0, rod.value(), 0.0).is_none() {
        return Err(CalculationError::not_possible(
            &ROD,
            "it is not longer than half of the stroke. Type the distance between the centres of its bores.",
        ));
    }
    let none = Estimate::default();
    let mut inputs: Vec<&Estimate> = vec![
        given.one(&AT_TOP)?,
        stroke,
        rod,
        given.one(&VALVE_ANGLE)?,
        given.one(&RATIO)?,
        given.optional(LASH.id).unwrap_or(&none),
    ];
    inputs.extend(pairs.iter().map(|pair| pair.1));
    let room = |at: &[f64], angle: f64, turned: f64| {
        let [top, stroke, rod, lean, ratio, lash, lifts @ ..] = at else {
            return f64::NAN;
        };
        let drop =
            SliderCrank::new(stroke / 2.0, *rod, 0.0).map_or(f64::NAN, |one| one.drop(angle));
        let pairs: Vec<(f64, f64)> = angles.iter().copied().zip(lifts.iter().copied()).collect();
        let lift = LiftCurve::through(&pairs).at(angle + turned) * ratio - lash;
        top + drop * libm::cos(*lean) - lift.max(0.0)
    };
    let plain: Vec<f64> = inputs.iter().map(|one| one.value()).collect();
    let (first, last) = (
        angles.first().copied().unwrap_or_default(),
        angles.last().copied().unwrap_or_default(),
    );
    let (at, _) = nearest(first, last, |angle| room(&plain, angle, 0.0));
    // At the least place the angle itself does not matter, to first order.
    let least = Estimate::of_function(&inputs, |values| room(values, at, 0.0));
    let degree = 1_f64.to_radians();
    let lost = (room(&plain, at, -degree / 2.0) - room(&plain, at, degree / 2.0)).clamp(-1.0, 1.0);
    let mut answer = judged(Answer::new(), given, &least)?;
    let nearest_to = |end: f64| (at - end).abs() < 1e-9;
    if pairs.len() > 1 && (nearest_to(first) || nearest_to(last)) {
        answer = answer.finding(
            Gravity::Caution,
            "The least room is at the end of the readings: read on until it grows again.",
        );
    }
    Ok(answer
        .with("least", least)
        .with("nearest-at", Estimate::exact(at))
        .with("for-a-degree", Estimate::exact(lost)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, refused, says, value, worked};

    /// Stroke 3.48 in, rod 5.70 in, an intake lobe that opens through the top.
    fn intake(at_top: f64, lifts: &[(f64, f64)]) -> Given {
        let mut given = given(
            INCH,
            &[
                ("at-top", &[at_top]),
                ("stroke", &[3.48]),
                ("rod-length", &[5.70]),
            ],
        )
        .with("valve-angle", Estimate::exact(0.0))
        .with("rocker-ratio", Estimate::exact(1.5))
        .with("valve", Estimate::exact(0.0))
        .with("rods", Estimate::exact(0.0));
        for (degrees, lift) in lifts {
            given.push("angles", Estimate::exact(degrees.to_radians()));
            given.push("lifts", Estimate::exact(lift * INCH));
        }
        given
    }

    const LIFTS: [(f64, f64); 7] = [
        (-15.0, 0.010),
        (-5.0, 0.040),
        (0.0, 0.060),
        (5.0, 0.083),
        (10.0, 0.107),
        (15.0, 0.131),
        (20.0, 0.155),
    ];

    // Worked by hand: drop at 10° 0.0345 in, at 15° 0.0771 in; the room is
    // 0.240 + 0.0345 − 0.1605 = 0.1140 in at 10°, 0.240 + 0.0771 − 0.1965 = 0.1206 in
    // at 15°, 0.240 + 0.0086 − 0.1245 = 0.1241 in at 5°.
    #[test]
    fn an_intake_valve_is_nearest_some_ten_degrees_after_the_top() {
        let answer = worked(&VALVE_TO_PISTON, &intake(0.240, &LIFTS));
        let least = value(&answer, "least", INCH);
        assert!(least <= 0.1141 && least > 0.112, "{least}");
        let at = answer.get("nearest-at").unwrap().value().to_degrees();
        assert!((8.0..14.0).contains(&at), "{at}");
        // 0.0048 in of cam lift a degree, through the rocker.
        assert!((value(&answer, "for-a-degree", THOU) - 7.2).abs() < 0.2);
        assert!(!says(&answer, "read on"));
        assert!(says(
            &worked(&VALVE_TO_PISTON, &intake(0.240, &LIFTS[..4])),
            "read on"
        ));
    }

    #[test]
    fn lash_gives_room_and_a_slanted_valve_takes_some() {
        let plain = worked(&VALVE_TO_PISTON, &intake(0.240, &LIFTS));
        let lashed = intake(0.240, &LIFTS).with("lash", Estimate::exact(0.010 * INCH));
        let lashed = worked(&VALVE_TO_PISTON, &lashed);
        assert!(
            (value(&lashed, "least", INCH) - value(&plain, "least", INCH) - 0.010).abs() < 1e-9
        );
        assert!(says(
            &worked(&VALVE_TO_PISTON, &intake(0.200, &LIFTS)),
            "under the 0.0800 in"
        ));
        assert!(says(
            &worked(&VALVE_TO_PISTON, &intake(0.120, &LIFTS)),
            "meets the piston"
        ));
    }

    #[test]
    fn errors_of_the_room_at_the_top_pass_through_and_those_of_lift_through_the_rocker() {
        let mut sources = crate::measure::Sources::new();
        let mut cause = || sources.fresh("feel", crate::measure::Origin::Repeat);
        let doubtful = |value: f64, cause| Estimate::exact(value).with(cause, 1e-6);
        let mut given = Given::new()
            .with("at-top", doubtful(0.006, cause()))
            .with("stroke", Estimate::exact(0.0884))
            .with("rod-length", Estimate::exact(0.1448))
            .with("valve-angle", Estimate::exact(0.0))
            .with("rocker-ratio", Estimate::exact(1.5))
            .with("valve", Estimate::exact(0.0))
            .with("rods", Estimate::exact(0.0));
        given.push("angles", Estimate::exact(0.1));
        given.push("lifts", doubtful(0.002, cause()));
        let least = worked(&VALVE_TO_PISTON, &given)
            .get("least")
            .unwrap()
            .deviation();
        assert!((least - 1e-6_f64.hypot(1.5e-6)).abs() < 1e-12);
    }

    #[test]
    fn an_angle_twice_and_a_short_rod_are_told() {
        let twice = intake(0.24, &[(5.0, 0.1), (5.0, 0.1)]);
        assert_eq!(refused(&VALVE_TO_PISTON, &twice), Some("angles"));
        let mut short = given(
            INCH,
            &[
                ("at-top", &[0.2]),
                ("stroke", &[5.0]),
                ("rod-length", &[2.5]),
            ],
        );
        for (id, value) in [
            ("valve-angle", 0.0),
            ("rocker-ratio", 1.5),
            ("valve", 0.0),
            ("rods", 0.0),
            ("angles", 0.1),
            ("lifts", 0.001),
        ] {
            short.push(id, Estimate::exact(value));
        }
        assert_eq!(refused(&VALVE_TO_PISTON, &short), Some("rod-length"));
    }
}
