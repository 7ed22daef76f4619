//! Distributor gear float by the washer method: a washer of known thickness
//! under the gear, the pedestal put in without packing, and the gap left at
//! its flange felt with a blade.

use super::answering::estimate;
use super::formula::{Formula, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

/// The washer.
pub static WASHER: Input = Input::gap(
    "washer",
    "washer under the gear",
    (0.0, 0.01),
    "Measure the very washer that lies under the gear.",
);
/// The gap at the flange.
pub static FLANGE_GAP: Input = Input::gap(
    "flange-gap",
    "gap at the flange without packing",
    (0.0, 0.01),
    "Pedestal pressed down on the washer by hand, blade between its flange and the block at several places.",
);
/// Packing under the flange.
pub static PACKING: Input = Input::gap(
    "packing",
    "packing under the flange",
    (0.0, 0.005),
    "All paper and shims together as they will be clamped; nothing when none is fitted yet.",
)
.optional();
static WANTED: Input = Input::gap(
    "wanted-float",
    "float you want",
    (0.0, 0.002),
    "From the maker's sheet, to see how much packing gives it.",
)
.optional();
static FLOAT: Output = Output::gap("float", "float of the gear");

/// Float of the distributor's gear.
pub static DISTRIBUTOR_FLOAT: Stack = Stack {
    id: "distributor-float",
    title: "Distributor gear float",
    terms: &[
        Term::needed(&WASHER),
        Term::needed(&FLANGE_GAP),
        Term::if_fitted(&PACKING),
    ],
    result: &FLOAT,
    formula: Formula::Sum(&[1.0, -1.0, 1.0]),
    proof: "An indicator on the gear, moved up and down with the clamp torqued, and the contact pattern at mid-tooth.",
};

/// Distributor float as a quick check.
pub static DISTRIBUTOR_DEPTH: Calculation = Calculation {
    id: "distributor-depth",
    title: "Distributor gear float and packing",
    purpose: "How much the gear floats, and how much packing gives the float you want.",
    inputs: &[WASHER, FLANGE_GAP, PACKING, WANTED],
    outputs: &[
        FLOAT,
        Output::gap("packing-for-float", "packing for the float you want"),
    ],
    workings: &[
        "float = washer − gap + packing = {washer} − {flange-gap} + {packing} = {float}",
        "packing for the float you want = wanted − washer + gap = {packing-for-float}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Take the washer out again.",
        "Housings differ: one wants 0.003 to 0.007 in of float, another five times that. The maker's sheet decides.",
        "A paper gasket counts as packing, and the clamp's torque takes some of it.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let float = estimate(&DISTRIBUTOR_FLOAT, given)?;
    let answer = if float.value() <= 0.0 {
        Answer::new().finding(
            Gravity::Stop,
            "The gear is pressed down: gear and thrust face would burn. It needs packing under the flange.",
        )
    } else {
        Answer::new()
    };
    answer.with(FLOAT.id, float).with_solved(
        "packing-for-float",
        &DISTRIBUTOR_FLOAT,
        given,
        &PACKING,
        &WANTED,
    )
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::Estimate;

    fn felt(gap: f64) -> Answer {
        let given = Given::new()
            .with("washer", Estimate::exact(0.062 * INCH))
            .with("flange-gap", Estimate::exact(gap * INCH))
            .with("wanted-float", Estimate::exact(0.005 * INCH));
        DISTRIBUTOR_DEPTH.answer(&given).unwrap()
    }

    // Worked by hand (common practice): a 0.062 washer; a gap of 0.060 is 0.002
    // of float and needs 0.003 of packing for 0.005; a gap of 0.065 is −0.003
    // and needs 0.008.
    #[test]
    fn the_worked_washers_come_out() {
        for (gap, float, packing) in [(0.060, 0.002, 0.003), (0.065, -0.003, 0.008)] {
            let answer = felt(gap);
            let inch = |id: &str| answer.get(id).unwrap().value() / INCH;
            assert!((inch("float") - float).abs() < 1e-9);
            assert!((inch("packing-for-float") - packing).abs() < 1e-9);
        }
        assert_eq!(felt(0.065).findings()[0].gravity, Gravity::Stop);
    }

    #[test]
    fn too_much_float_cannot_be_packed_away() {
        let answer = felt(0.050);
        assert!(answer.get("packing-for-float").is_none());
        assert_eq!(answer.findings()[0].gravity, Gravity::Caution);
    }
}
