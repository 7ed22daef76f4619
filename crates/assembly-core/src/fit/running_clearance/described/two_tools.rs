//! Running clearance from bore and journal, each with its own tool.

use super::common::{CAP_CAUTIONS, GREATEST, LEAST, MEAN, SANE_DIAMETER, TAPER, answer_of, named};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Input, Output, Provenance, Takes,
};
use crate::fit::running_clearance::{Station, from_stations};

static BORE: Input = Input::size(
    "bore",
    "bore, square to the joint",
    SANE_DIAMETER,
    "Caps torqued, shells in: measure straight up and down, square to the joint of the shells. The shells are thinner toward the joint by design.",
)
.one_or_more();

static JOURNAL: Input = Input::size(
    "journal",
    "journal",
    SANE_DIAMETER,
    "Micrometer beside the oil hole and clear of the fillet, two directions a quarter turn apart.",
)
.one_or_more();

static BORE_2: Input = Input::size(
    "bore-2",
    "bore, other end of the bearing",
    SANE_DIAMETER,
    "The same at the other end of the bearing: it shows the taper.",
)
.taking(Takes::Any);

static JOURNAL_2: Input = Input::size(
    "journal-2",
    "journal, other end of the bearing",
    SANE_DIAMETER,
    "The same on the other side of the oil hole: it shows the taper.",
)
.taking(Takes::Any);

static NEAR_JOINT: Input = Input::size(
    "bore-near-joint",
    "bore, near the joint",
    SANE_DIAMETER,
    "About 25° above the joint, on both sides: it shows whether the bearing is pinched, and is never averaged in.",
)
.taking(Takes::Any);

/// Running clearance from a bore and a journal measured with a tool each.
pub static RUNNING_CLEARANCE: Calculation = Calculation {
    id: "running-clearance",
    title: "Running clearance of a bearing",
    purpose: "How much room for oil a plain bearing has, from its bore and its journal.",
    inputs: &[BORE, JOURNAL, BORE_2, JOURNAL_2, NEAR_JOINT],
    outputs: &[
        LEAST,
        GREATEST,
        MEAN,
        TAPER,
        Output::gap("journal-taper", "journal taper"),
        Output::gap("journal-out-of-round", "journal out of round"),
        Output::gap("bore-taper", "bore taper"),
        Output::gap("bore-out-of-round", "bore out of round"),
        Output::gap("eccentricity", "wider toward the joint by"),
    ],
    workings: &[
        "bores that count: {bore} {bore-2}; journals: {journal} {journal-2}",
        "least = smallest bore − largest journal = {least}",
        "greatest = largest bore − smallest journal = {greatest}",
        "mean = mean bore − mean journal = {mean}",
        "taper = mean clearance of one end − that of the other = {taper}",
        "journal taper = mean of one end − mean of the other = {journal-taper}",
        "journal out of round = largest − smallest at one end = {journal-out-of-round}",
        "bore taper = mean of one end − mean of the other = {bore-taper}",
        "bore out of round = largest − smallest at one end = {bore-out-of-round}",
        "toward the joint = mean near the joint − mean square to it = {eccentricity}",
    ],
    provenance: Provenance::Derivation("difference of two diameters"),
    cautions: CAP_CAUTIONS,
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let stations = [
        Station {
            bores: given.measured(BORE.id),
            bores_near_joint: given.measured(NEAR_JOINT.id),
            journals: given.measured(JOURNAL.id),
        },
        Station {
            bores: given.measured(BORE_2.id),
            bores_near_joint: Vec::new(),
            journals: given.measured(JOURNAL_2.id),
        },
    ];
    from_stations(&stations)
        .map(answer_of)
        .map_err(|error| named(given, error, (&BORE, &JOURNAL)))
}
