//! Running clearance from a bore gauge zeroed on the journal's own micrometer.

use super::common::{CAP_CAUTIONS, GREATEST, LEAST, MEAN, SANE_DIAMETER, answer_of, named};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Input, Output, Provenance,
};
use crate::fit::running_clearance::{NeedleSense, from_needle};
use crate::measure::Measured;

/// A dial that reads farther than this was zeroed for another bearing.
const SANE_NEEDLE: (f64, f64) = (-0.005, 0.005);

static SET_AT: Input = Input::size(
    "set-at",
    "micrometer when the gauge was zeroed",
    SANE_DIAMETER,
    "Lock the micrometer at the journal, read it, then zero the bore gauge between its anvils without touching the thimble.",
);

static SENSES: [Choice; 2] = [
    Choice {
        id: "clockwise-smaller",
        label: "clockwise is smaller",
    },
    Choice {
        id: "clockwise-larger",
        label: "clockwise is larger",
    },
];

static SENSE: Input = Input::one_of(
    "needle-sense",
    "which way the needle goes",
    &SENSES,
    "Press the gauge's anvils together a little and watch: on most gauges the needle then goes clockwise, so clockwise is smaller.",
);

static NEEDLE: Input = Input::gap(
    "needle",
    "needle from zero, clockwise plus",
    SANE_NEEDLE,
    "Rock the gauge in the bore, square to the joint of the shells, and read where the needle turns back: clockwise from zero is plus, the other way minus.",
)
.one_or_more();

static JOURNAL: Input = Input::size(
    "journal",
    "journal",
    SANE_DIAMETER,
    "With the same micrometer, beside the oil hole and clear of the fillet, two directions a quarter turn apart.",
)
.one_or_more();

/// Running clearance with a bore gauge zeroed on the micrometer that measured
/// the journal: the micrometer's zero error cancels.
pub static RUNNING_CLEARANCE_SAME_MICROMETER: Calculation = Calculation {
    id: "running-clearance-same-micrometer",
    title: "Running clearance, gauge zeroed on the micrometer",
    purpose: "The surest way with common tools: the micrometer's own error cancels, whatever it reads.",
    inputs: &[SET_AT, SENSE, NEEDLE, JOURNAL],
    outputs: &[
        Output::size("bore", "bore"),
        LEAST,
        GREATEST,
        MEAN,
        Output::gap("journal-out-of-round", "journal out of round"),
        Output::gap("bore-out-of-round", "bore out of round"),
    ],
    workings: &[
        "bore = setting and needle = {set-at} and {needle} = {bore}",
        "least = smallest bore − largest journal ({journal}) = {least}",
        "greatest = largest bore − smallest journal = {greatest}",
        "mean = mean bore − mean journal = {mean}",
        "journal out of round = largest − smallest reading = {journal-out-of-round}",
        "bore out of round = largest − smallest reading = {bore-out-of-round}",
        "The micrometer's zero is in the setting and in the journal alike, so it drops out.",
    ],
    provenance: Provenance::Derivation("comparison with the journal's own micrometer"),
    cautions: CAP_CAUTIONS,
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let set_at = Measured::from_estimate(given.one(&SET_AT)?.clone());
    let sense = if given.choice(&SENSE)?.id == "clockwise-smaller" {
        NeedleSense::ClockwiseIsSmaller
    } else {
        NeedleSense::ClockwiseIsLarger
    };
    let needles = given.measured(NEEDLE.id);
    let bores: Vec<_> = needles
        .iter()
        .map(|needle| sense.bore(&set_at, needle))
        .collect();
    let clearance = from_needle(&set_at, sense, &needles, &given.measured(JOURNAL.id))
        .map_err(|error| named(given, error, (&NEEDLE, &JOURNAL)))?;
    let bore = Measured::mean(&bores).map(Measured::into_estimate);
    Ok(answer_of(clearance).with_optional("bore", bore))
}
