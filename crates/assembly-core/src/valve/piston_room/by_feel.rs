//! Valve to piston by feel: the valve pushed open until it touches.

use super::rods::{RODS, VALVE, judged};
use crate::describe::UsualUnits;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::fit::readings::{least_of, same_count};
use crate::quantity::Kind;
use std::f64::consts::FRAC_PI_2;

static ANGLES: Input = Input::of(
    "angles",
    "crank angles",
    (Kind::Angle, UsualUnits::of("°", "°")),
    (-FRAC_PI_2, FRAC_PI_2),
    "Every 2° to 5° from 15° before the top to 15° after it; before the top below nothing.",
)
.one_or_more();
static ROOMS: Input = Input::gap(
    "rooms",
    "room at each of them",
    (-0.005, 0.03),
    "Light springs fitted, cam and lifter as they will run (a hydraulic lifter made solid): push the valve on until it touches the piston and read how far it went.",
)
.one_or_more();

/// Valve to piston, felt.
pub static VALVE_TO_PISTON_FELT: Calculation = Calculation {
    id: "valve-to-piston-felt",
    title: "Valve to piston, pushed until it touches",
    purpose: "How near a valve comes to its piston, and at which crank angle.",
    inputs: &[ANGLES, ROOMS, VALVE, RODS],
    outputs: &[
        Output::gap("least", "least room"),
        Output::of(
            "nearest-at",
            "crank angle where it is nearest",
            (Kind::Angle, UsualUnits::of("°", "°")),
        ),
    ],
    workings: &["least of the rooms: {least}, at {nearest-at}"],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Turn the crank by hand and stop at any touch: a bent valve shows only when the engine leaks.",
        "Check radial room with clay too, and one valve of each kind in each bank at least.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    same_count(given, &ANGLES, &ROOMS)?;
    let least = least_of(given, &ROOMS)?.clone();
    let (angles, rooms) = (given.several(ANGLES.id), given.several(ROOMS.id));
    let nearest = angles
        .iter()
        .zip(rooms)
        .find(|(_, room)| room.value() <= least.value())
        .map(|(angle, _)| angle.clone());
    let mut answer = judged(Answer::new(), given, &least)?;
    let ends = |pick: fn(f64, f64) -> f64| angles.iter().map(|one| one.value()).reduce(pick);
    let at_an_end = nearest
        .as_ref()
        .is_some_and(|at| Some(at.value()) == ends(f64::min) || Some(at.value()) == ends(f64::max));
    if at_an_end {
        answer = answer.finding(
            Gravity::Caution,
            "The least room is at the end of what was tried: go on until it grows again.",
        );
    }
    Ok(answer
        .with("least", least)
        .with_optional("nearest-at", nearest))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, given, refused, says, value, worked};
    use crate::measure::Estimate;

    fn felt(rooms: &[f64], valve: f64, rods: f64) -> Given {
        let mut given = given(THOU, &[("rooms", rooms)])
            .with("valve", Estimate::exact(valve))
            .with("rods", Estimate::exact(rods));
        for at in 0..rooms.len() {
            given.push("angles", Estimate::exact((at as f64 * 5.0).to_radians()));
        }
        given
    }

    #[test]
    fn the_nearest_place_counts_and_is_told() {
        let answer = worked(&VALVE_TO_PISTON_FELT, &felt(&[110.0, 78.0, 95.0], 0.0, 0.0));
        assert_eq!(value(&answer, "least", THOU), 78.0);
        assert!((value(&answer, "nearest-at", 1_f64.to_radians()) - 5.0).abs() < 1e-6);
        assert!(says(&answer, "under the 0.0800 in"));
        assert!(!says(&answer, "go on until"));
        assert!(says(
            &worked(&VALVE_TO_PISTON_FELT, &felt(&[110.0, 98.0], 0.0, 0.0)),
            "go on until"
        ));
    }

    // Common practice: 0.100 in for an exhaust valve, 0.030 in more with aluminium rods.
    #[test]
    fn aluminium_rods_want_more_and_a_touch_is_a_stop() {
        let rooms = [140.0, 110.0, 140.0];
        assert!(!says(
            &worked(&VALVE_TO_PISTON_FELT, &felt(&rooms, 1.0, 0.0)),
            "under"
        ));
        assert!(says(
            &worked(&VALVE_TO_PISTON_FELT, &felt(&rooms, 1.0, 1.0)),
            "0.1300 in"
        ));
        let touched = worked(&VALVE_TO_PISTON_FELT, &felt(&[5.0, 0.0, 5.0], 0.0, 0.0));
        assert_eq!(touched.findings()[0].gravity, Gravity::Stop);
        let mut uneven = felt(&[5.0, 6.0], 0.0, 0.0);
        uneven.push("rooms", Estimate::exact(1e-4));
        assert_eq!(refused(&VALVE_TO_PISTON_FELT, &uneven), Some("rooms"));
    }
}
