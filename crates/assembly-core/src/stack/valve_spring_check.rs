//! The quick check of a valve spring: height, loads, coil bind, retainer to seal.

use super::answering::{estimate, less, more};
use super::valve_spring::{
    BIND_MARGIN, HEIGHT, INSTALLED_HEIGHT, KNOWN_HEIGHT, KNOWN_LOAD, LASH, LEAST_BIND_MARGIN,
    LEAST_SEAL_ROOM, LOBE_LIFT, MARGIN, MOST_SHIMS, NET, OPEN, OPEN_LOAD, OVER, RETAINER_TO_SEAL,
    ROCKER_RATIO, SEAL, SEAL_GAP, SEAT, SEAT_LOAD, SHIM, SOLID_HEIGHT, SPRING_HEIGHT, SPRING_RATE,
    VALVE_LIFT,
};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

static WANTED: Input = Input::size(
    "wanted-height",
    "installed height you want",
    (0.01, 0.15),
    "From the camshaft's or the spring's sheet, to see which shim gives it.",
)
.optional();

/// Valve spring as a quick check.
pub static VALVE_SPRING: Calculation = Calculation {
    id: "valve-spring",
    title: "Valve spring: height, loads and coil bind",
    purpose: "Whether the spring stands at its height, how hard it presses, and whether the coils or the retainer touch at full lift.",
    inputs: &[
        INSTALLED_HEIGHT,
        SHIM,
        LOBE_LIFT,
        ROCKER_RATIO,
        LASH,
        SOLID_HEIGHT,
        SPRING_RATE,
        KNOWN_LOAD,
        KNOWN_HEIGHT,
        SEAL_GAP,
        WANTED,
    ],
    outputs: &[
        HEIGHT,
        NET,
        OPEN,
        MARGIN,
        SEAT,
        OVER,
        SEAL,
        Output::gap("shim-for-height", "shim for the height you want"),
    ],
    workings: &[
        "installed height = {installed-height} − shim {shim} = {height}",
        "valve lift = lobe lift × ratio − lash = {lobe-lift} × {rocker-ratio} − {lash} = {net-lift}",
        "height at full lift = {height} − {net-lift} = {open-height}",
        "room before the coils bind = {open-height} − {solid-height} = {bind-margin}",
        "load on the seat = load + rate × (its height − installed height) = {known-load} + {spring-rate} × ({known-height} − {height}) = {seat-load}",
        "load at full lift = load + rate × (its height − height at full lift) = {open-load}",
        "retainer to seal at full lift = {seal-gap} − {net-lift} = {seal-room}",
    ],
    provenance: Provenance::Derivation(
        "a spring of even rate; a dual or tapered spring has to be read on a tester",
    ),
    cautions: &[
        "Keepers fly: eye guard on, and no face over the compressor.",
        "A tall spring seats too lightly, a short one binds: see what the camshaft's and the spring's sheets say.",
        "For the run-in of a flat tappet cam see which loads its maker allows.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let height = estimate(&SPRING_HEIGHT, given)?;
    let lift = estimate(&VALVE_LIFT, given)?;
    if lift.value() < 0.0 {
        return Err(CalculationError::not_possible(
            &LASH,
            "it is larger than the whole lift, so the valve would never open. Lash is a few thou.",
        ));
    }
    let margin = estimate(&BIND_MARGIN, given)?;
    let mut answer = Answer::new()
        .with(OPEN.id, &height - &lift)
        .with(HEIGHT.id, height)
        .with(NET.id, lift)
        .with_solved("shim-for-height", &SPRING_HEIGHT, given, &SHIM, &WANTED)?;
    answer = bind_finding(answer, margin.value()).with(MARGIN.id, margin);
    if [KNOWN_LOAD.id, KNOWN_HEIGHT.id, SPRING_RATE.id]
        .iter()
        .all(|id| given.optional(id).is_some())
    {
        let seat = estimate(&SEAT_LOAD, given)?;
        if seat.value() <= 0.0 {
            answer = answer.finding(
                Gravity::Stop,
                "At that height the spring would be slack on the seat.",
            );
        }
        answer = answer
            .with(SEAT.id, seat)
            .with(OVER.id, estimate(&OPEN_LOAD, given)?);
    }
    if given.optional(SEAL_GAP.id).is_some() {
        let room = estimate(&RETAINER_TO_SEAL, given)?;
        answer = seal_finding(answer, room.value()).with(SEAL.id, room);
    }
    if given
        .optional(SHIM.id)
        .is_some_and(|shim| more(shim.value(), MOST_SHIMS))
    {
        answer = answer.finding(
            Gravity::Caution,
            "More than 0.060 in (1.5 mm) of shims: the spring may walk. Look for a sunk valve or the wrong spring.",
        );
    }
    Ok(answer)
}

fn bind_finding(answer: Answer, margin: f64) -> Answer {
    if margin <= 0.0 {
        answer.finding(
            Gravity::Stop,
            "The coils bind before full lift: something in the valve train would break.",
        )
    } else if less(margin, LEAST_BIND_MARGIN) {
        answer.finding(
            Gravity::Caution,
            "Less than the common 0.060 in (1.5 mm) before the coils bind. The spring's sheet wins.",
        )
    } else {
        answer
    }
}

fn seal_finding(answer: Answer, room: f64) -> Answer {
    if room <= 0.0 {
        answer.finding(
            Gravity::Stop,
            "The retainer hits the seal before full lift.",
        )
    } else if less(room, LEAST_SEAL_ROOM) {
        answer.finding(
            Gravity::Caution,
            "Less than the common 0.060 in (1.5 mm) between retainer and seal.",
        )
    } else {
        answer
    }
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::Estimate;

    const POUND_FORCE: f64 = 4.448_221_615_260_5;

    fn spring() -> Given {
        Given::new()
            .with("installed-height", Estimate::exact(1.800 * INCH))
            .with("shim", Estimate::exact(0.030 * INCH))
            .with("lobe-lift", Estimate::exact(0.320 * INCH))
            .with("rocker-ratio", Estimate::exact(1.5))
            .with("solid-height", Estimate::exact(1.200 * INCH))
    }

    // Worked by hand (common practice): 1.800 less a shim of 0.030 is 1.770, at
    // 0.480 lift 1.290, and over 1.200 solid 0.090 is left.
    #[test]
    fn the_worked_spring_comes_out() {
        let answer = VALVE_SPRING.answer(&spring()).unwrap();
        let inch = |id: &str| answer.get(id).unwrap().value() / INCH;
        assert!((inch("height") - 1.770).abs() < 1e-9);
        assert!((inch("open-height") - 1.290).abs() < 1e-9);
        assert!((inch("bind-margin") - 0.090).abs() < 1e-9);
        assert!(answer.findings().is_empty());
    }

    // Worked by hand (common practice): 0.030 at 300 lbf/in is 9 lbf.
    #[test]
    fn a_shim_adds_rate_times_its_thickness() {
        let with_load = |given: Given| {
            given
                .with("known-load", Estimate::exact(100.0 * POUND_FORCE))
                .with("known-height", Estimate::exact(1.800 * INCH))
                .with("spring-rate", Estimate::exact(300.0 * POUND_FORCE / INCH))
        };
        let answer = VALVE_SPRING.answer(&with_load(spring())).unwrap();
        let load = |id: &str| answer.get(id).unwrap().value() / POUND_FORCE;
        assert!((load("seat-load") - 109.0).abs() < 1e-9);
        assert!((load("open-load") - 109.0 - 144.0).abs() < 1e-9);
    }

    #[test]
    fn the_shim_for_a_height_is_solved() {
        let given = spring().with("wanted-height", Estimate::exact(1.750 * INCH));
        let answer = VALVE_SPRING.answer(&given).unwrap();
        let shim = answer.get("shim-for-height").unwrap().value();
        assert!((shim / INCH - 0.050).abs() < 1e-9);
        // No shim makes a spring stand taller.
        let given = spring().with("wanted-height", Estimate::exact(1.820 * INCH));
        let answer = VALVE_SPRING.answer(&given).unwrap();
        assert!(answer.get("shim-for-height").is_none());
        assert!(!answer.findings().is_empty());
    }

    #[test]
    fn coils_and_retainer_that_touch_are_stops() {
        let tight = Given::new()
            .with("installed-height", Estimate::exact(1.650 * INCH))
            .with("lobe-lift", Estimate::exact(0.320 * INCH))
            .with("rocker-ratio", Estimate::exact(1.5))
            .with("solid-height", Estimate::exact(1.200 * INCH))
            .with("seal-gap", Estimate::exact(0.480 * INCH));
        let answer = VALVE_SPRING.answer(&tight).unwrap();
        let stops = answer
            .findings()
            .iter()
            .filter(|one| one.gravity == Gravity::Stop);
        assert_eq!(stops.count(), 2);
    }
}
