//! Oil pump drive: the end float of the rod or shaft between distributor and pump.

use super::answering::estimate;
use super::formula::{Formula, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

/// Room between the drive's seat and the pump.
pub static SEAT_TO_PUMP: Input = Input::size(
    "seat-to-pump",
    "drive seat to the floor of the pump's slot",
    (0.02, 0.8),
    "From the face that carries the distributor or shaft, with its real gasket, down to the floor of the slot in the torqued pump.",
);
/// Length of the rod.
pub static ROD: Input = Input::size(
    "drive-rod",
    "length of the drive rod",
    (0.01, 0.8),
    "Over its ends, with any sleeve that stays on it.",
);
/// How far the parts of the distributor reach below its seat.
pub static REACH: Input = Input::size(
    "drive-reach",
    "distributor below its seat to the floor of its slot",
    (0.0, 0.5),
    "From the distributor's seat down to the floor of the slot that the rod goes into.",
);
static WANTED: Input = Input::gap(
    "wanted-float",
    "float you want",
    (0.0, 0.006),
    "From the maker's sheet, to see how long the rod has to be.",
)
.optional();
static FLOAT: Output = Output::gap("float", "end float of the drive rod");

/// End float of the pump drive.
pub static PUMP_DRIVE_FLOAT: Stack = Stack {
    id: "pump-drive-float",
    title: "Oil pump drive float",
    terms: &[
        Term::needed(&SEAT_TO_PUMP),
        Term::needed(&ROD),
        Term::needed(&REACH),
    ],
    result: &FLOAT,
    formula: Formula::Sum(&[1.0, -1.0, -1.0]),
    proof: "The rod felt up and down with the distributor clamped, a plug of grease or clay in the slot measured, and the drive spun with the fingers.",
};

/// Pump drive float as a quick check.
pub static PUMP_DRIVE_CHECK: Calculation = Calculation {
    id: "pump-drive-float",
    title: "Oil pump drive float",
    purpose: "Whether the drive rod has end float left, or presses the pump down.",
    inputs: &[SEAT_TO_PUMP, ROD, REACH, WANTED],
    outputs: &[
        FLOAT,
        Output::size("rod-for-float", "rod length for the float you want"),
    ],
    workings: &[
        "float = seat to pump − rod − distributor below its seat = {seat-to-pump} − {drive-rod} − {drive-reach} = {float}",
    ],
    provenance: Provenance::Derivation("sizes along the drive's axis"),
    cautions: &[
        "There has to be float in every position and hot. How much is on the maker's sheet.",
        "Milling the intake's faces or another intake gasket changes it.",
        "After the pump is torqued for good, turn the drive by hand a full turn: it must not bind.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let float = estimate(&PUMP_DRIVE_FLOAT, given)?;
    let answer = if float.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "The rod is longer than its room: it drives the pump down and wears gear and thrust. The distributor may not even seat.",
        )
    } else if float.deviation() * 2.0 > float.value() {
        Answer::new().finding(
            Gravity::Caution,
            "The float is not surely more than nothing with these readings: feel it with the distributor clamped.",
        )
    } else {
        Answer::new()
    };
    answer.with(FLOAT.id, float).with_solved(
        "rod-for-float",
        &PUMP_DRIVE_FLOAT,
        given,
        &ROD,
        &WANTED,
    )
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::{Estimate, Origin, Sources};

    fn drive(rod: f64) -> Given {
        Given::new()
            .with("seat-to-pump", Estimate::exact(8.000 * INCH))
            .with("drive-rod", Estimate::exact(rod * INCH))
            .with("drive-reach", Estimate::exact(2.000 * INCH))
    }

    #[test]
    fn a_rod_without_float_is_a_stop() {
        let answer = PUMP_DRIVE_CHECK.answer(&drive(5.960)).unwrap();
        assert!((answer.get("float").unwrap().value() / INCH - 0.040).abs() < 1e-9);
        assert!(answer.findings().is_empty());
        let long = PUMP_DRIVE_CHECK.answer(&drive(6.010)).unwrap();
        assert_eq!(long.findings()[0].gravity, Gravity::Stop);
    }

    #[test]
    fn a_float_within_its_give_or_take_is_told() {
        let feel = Sources::new().fresh("depth gauge", Origin::Repeat);
        let given = Given::new()
            .with(
                "seat-to-pump",
                Estimate::exact(8.000 * INCH).with(feel, 0.004 * INCH),
            )
            .with("drive-rod", Estimate::exact(5.995 * INCH))
            .with("drive-reach", Estimate::exact(2.000 * INCH));
        let answer = PUMP_DRIVE_CHECK.answer(&given).unwrap();
        assert_eq!(answer.findings()[0].gravity, Gravity::Caution);
    }

    #[test]
    fn the_rod_for_a_float_is_solved() {
        let given = drive(6.010).with("wanted-float", Estimate::exact(0.045 * INCH));
        let answer = PUMP_DRIVE_CHECK.answer(&given).unwrap();
        let rod = answer.get("rod-for-float").unwrap().value();
        assert!((rod / INCH - 5.955).abs() < 1e-9);
    }
}
