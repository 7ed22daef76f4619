//! Running clearance from a plastic gauge strip.

use super::common::{
    DRY_BACKS, GREATEST, LEAST, MEAN, NEVER_FILE, SHEET_DECIDES, TAPER, TORQUE_CAPS, answer_of,
};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Provenance, UsualUnits,
};
use crate::fit::running_clearance::{StripReading, from_strip};
use crate::measure::Measured;
use crate::quantity::Kind;

/// Strips are made for gaps from a hundredth of a millimetre to half a millimetre.
const SANE_STRIP: (f64, f64) = (0.000_005, 0.001);

const fn band(id: &'static str, label: &'static str, how: &'static str) -> Input {
    Input::of(
        id,
        label,
        (Kind::Length, UsualUnits::of("in", "mm")),
        SANE_STRIP,
        how,
    )
}

static WIDEST: Input = band(
    "widest",
    "band at the widest spot",
    "Dry journal and shell, strip along the shaft away from the oil hole; torque the cap, do not turn anything, take it off and hold the printed bands to the widest spot.",
)
.one_or_more();

static FRONT: Input = band(
    "front",
    "band at the front end",
    "Hold the bands to the front end of the same strip: it shows the taper.",
)
.optional();

static REAR: Input = band(
    "rear",
    "band at the rear end",
    "Hold the bands to the rear end of the same strip: it shows the taper.",
)
.optional();

/// Running clearance read from a crushed plastic gauge strip.
pub static RUNNING_CLEARANCE_STRIP: Calculation = Calculation {
    id: "running-clearance-strip",
    title: "Running clearance, plastic gauge strip",
    purpose: "A quick check of a bearing from the width of a crushed strip; coarser than a micrometer and a bore gauge.",
    inputs: &[WIDEST, FRONT, REAR],
    outputs: &[LEAST, GREATEST, MEAN, TAPER],
    workings: &[
        "least = tightest reading: {widest} at the widest spot = {least}",
        "greatest = loosest reading = {greatest}",
        "mean = half way between the ends, or the widest spot alone = {mean}",
        "taper = front − rear = {front} − {rear} = {taper}",
        "The printed bands come in steps; that doubt is part of the give-or-take.",
    ],
    provenance: Provenance::Derivation(
        "a strip of constant volume is crushed widest where the gap is least",
    ),
    cautions: &[
        "Keep the crank's weight off the strip: hold the crank up beside the bearing, or turn the block over.",
        "A strip shows one spot of one line. An old or cold strip reads wrong, and so does oil under it.",
        "Clean every trace of the strip away before the cap goes on for good.",
        TORQUE_CAPS,
        DRY_BACKS,
        NEVER_FILE,
        SHEET_DECIDES,
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let ends = match (given.optional(FRONT.id), given.optional(REAR.id)) {
        (Some(front), Some(rear)) => Some((
            Measured::from_estimate(front.clone()),
            Measured::from_estimate(rear.clone()),
        )),
        (None, None) => None,
        (Some(_), None) => return Err(one_end_only(&REAR)),
        (None, Some(_)) => return Err(one_end_only(&FRONT)),
    };
    let strips: Vec<StripReading> = given
        .measured(WIDEST.id)
        .into_iter()
        .enumerate()
        .map(|(number, widest)| StripReading {
            widest,
            ends: if number == 0 { ends.clone() } else { None },
        })
        .collect();
    from_strip(&strips)
        .map(answer_of)
        .map_err(|error| CalculationError::not_possible(&WIDEST, error.to_string()))
}

fn one_end_only(missing: &'static Input) -> CalculationError {
    CalculationError::not_possible(missing, "read both ends of the strip, or neither")
}
