//! Torque converter and clutch: the gap that the converter is pulled over when
//! it is bolted up, and the free travel of a release bearing.

use super::answering::{INCH, estimate, less, more};
use super::formula::{Formula, Stack, Term};
use crate::describe::{Answer, Calculation, Gravity, Input, Output, Provenance};

/// The least that a converter is commonly drawn forward. Common practice.
pub const PULL_LEAST: f64 = INCH / 8.0;
/// The most that a converter is commonly drawn forward. Common practice.
pub const PULL_MOST: f64 = 3.0 * INCH / 16.0;

static BELL_TO_PADS: Input = Input::size(
    "bell-to-pads",
    "converter pads behind the bellhousing's face",
    (0.0, 0.3),
    "Converter turned and pushed fully home, straightedge across the bellhousing, depth to its bolt pads.",
);
static BLOCK_TO_PLATE: Input = Input::size(
    "block-to-plate",
    "flexplate behind the block's face",
    (0.0, 0.3),
    "Straightedge across the block's rear face, with any plate that goes between, depth or height to the flexplate where the pads will lie.",
);
static GAP: Output = Output::size("gap", "converter to flexplate before bolting up");

/// Gap before the converter is bolted up.
pub static CONVERTER_GAP: Stack = Stack {
    id: "converter-gap",
    title: "Converter to flexplate",
    terms: &[Term::needed(&BELL_TO_PADS), Term::needed(&BLOCK_TO_PLATE)],
    result: &GAP,
    formula: Formula::Sum(&[1.0, -1.0]),
    proof: "Bellhousing tight against the block, converter pushed back, a blade or drill shank between pads and plate before any bolt.",
};

/// Converter gap as a quick check.
pub static CONVERTER_GAP_CHECK: Calculation = Calculation {
    id: "converter-gap",
    title: "Converter to flexplate",
    purpose: "How far the converter comes forward when it is bolted to the flexplate, so that it neither presses on the pump nor leaves its drive.",
    inputs: &[BELL_TO_PADS, BLOCK_TO_PLATE],
    outputs: &[GAP],
    workings: &[
        "gap = pads behind the bellhousing − plate behind the block = {bell-to-pads} − {block-to-plate} = {gap}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Never draw the bellhousing up with its bolts: a converter that is not home wrecks the pump and the crankshaft's thrust bearing.",
        "The bellhousing has to sit flush by hand, and the converter has to turn freely before it is bolted.",
    ],
    run: |given| {
        let gap = estimate(&CONVERTER_GAP, given)?;
        let answer = if gap.value() <= 0.0 {
            Answer::new().finding(
                Gravity::Stop,
                "The converter is not home, or too long: it would press on the pump and on the crankshaft's thrust bearing.",
            )
        } else if less(gap.value(), PULL_LEAST) || more(gap.value(), PULL_MOST) {
            Answer::new().finding(
                Gravity::Caution,
                "Commonly it is 1/8 to 3/16 in (3 to 5 mm). The transmission maker's sheet wins.",
            )
        } else {
            Answer::new()
        };
        Ok(answer.with(GAP.id, gap))
    },
};

static FINGERS: Input = Input::size(
    "fingers-depth",
    "clutch fingers behind the block's face",
    (-0.1, 0.2),
    "Clutch bolted up, straightedge across the block's rear face, depth or height to the fingers' tips (behind the face +).",
);
static BEARING: Input = Input::size(
    "bearing-depth",
    "release bearing behind the bellhousing's face",
    (-0.1, 0.3),
    "Bearing pushed fully back, straightedge across the bellhousing, depth to the bearing's face (into the bellhousing +).",
);
static FREE: Output = Output::size("free-travel", "free travel of the release bearing");

/// Free travel between release bearing and clutch fingers.
pub static RELEASE_TRAVEL: Stack = Stack {
    id: "release-free-travel",
    title: "Release bearing free travel",
    terms: &[Term::needed(&BEARING), Term::needed(&FINGERS)],
    result: &FREE,
    formula: Formula::Sum(&[1.0, -1.0]),
    proof: "The bearing moved by hand through the fork's window with the gearbox in place.",
};

/// Release travel as a quick check.
pub static RELEASE_TRAVEL_CHECK: Calculation = Calculation {
    id: "release-free-travel",
    title: "Release bearing free travel",
    purpose: "How far the release bearing stands off the clutch fingers at rest.",
    inputs: &[BEARING, FINGERS],
    outputs: &[FREE],
    workings: &[
        "free travel = bearing behind bellhousing − fingers behind block = {bearing-depth} − {fingers-depth} = {free-travel}",
    ],
    provenance: Provenance::Derivation(
        "sizes along the shaft, both taken from the faces that meet",
    ),
    cautions: &[
        "As the disc wears the fingers come back towards the bearing: some travel has to be left. The clutch's sheet says how much.",
    ],
    run: |given| {
        let free = estimate(&RELEASE_TRAVEL, given)?;
        let answer = if free.value() <= 0.0 {
            Answer::new().finding(
                Gravity::Stop,
                "The bearing presses on the fingers at rest: the clutch slips and pushes on the crankshaft's thrust bearing all the time.",
            )
        } else {
            Answer::new()
        };
        Ok(answer.with(FREE.id, free))
    },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::describe::Given;
    use crate::measure::Estimate;

    #[test]
    fn a_converter_that_is_not_home_is_a_stop() {
        let gap = |pads: f64| {
            CONVERTER_GAP_CHECK
                .answer(
                    &Given::new()
                        .with("bell-to-pads", Estimate::exact(pads * INCH))
                        .with("block-to-plate", Estimate::exact(1.000 * INCH)),
                )
                .unwrap()
        };
        assert!(gap(1.150).findings().is_empty());
        assert_eq!(gap(0.900).findings()[0].gravity, Gravity::Stop);
        assert_eq!(gap(1.300).findings()[0].gravity, Gravity::Caution);
    }

    #[test]
    fn a_bearing_on_the_fingers_is_a_stop() {
        let free = |fingers: f64| {
            RELEASE_TRAVEL_CHECK
                .answer(
                    &Given::new()
                        .with("bearing-depth", Estimate::exact(0.060))
                        .with("fingers-depth", Estimate::exact(fingers)),
                )
                .unwrap()
        };
        assert!(free(0.055).findings().is_empty());
        assert!(!free(0.061).findings().is_empty());
    }
}
