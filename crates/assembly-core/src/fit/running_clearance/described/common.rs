//! What the three descriptions share.

use uom::si::f64::Length;

use crate::describe::{Answer, CalculationError, Given, Input, Output};
use crate::fit::running_clearance::{ClearanceError, RunningClearance};
use crate::measure::{Estimate, Measured};

/// Journals and bores from a model engine's crank pin to a stationary diesel's mains.
pub const SANE_DIAMETER: (f64, f64) = (0.002, 0.8);

pub const TORQUE_CAPS: &str = "Torque the caps to the maker's value, in the maker's order and stages, with the bolts and the lubricant of the final assembly. Bolts that are used once must not be used up on trial fits.";
pub const DRY_BACKS: &str = "Backs of shells and their seats: clean and dry.";
pub const NEVER_FILE: &str = "Never file a cap and never hone a housing to change a clearance: the bore goes out of round and the shells lose their crush.";
pub const SHEET_DECIDES: &str =
    "The maker's sheet for the engine and the shells decides what is right.";

pub const CAP_CAUTIONS: &[&str] = &[TORQUE_CAPS, DRY_BACKS, NEVER_FILE, SHEET_DECIDES];

pub const LEAST: Output = Output::gap("least", "least clearance");
pub const GREATEST: Output = Output::gap("greatest", "greatest clearance");
pub const MEAN: Output = Output::gap("mean", "mean clearance");
pub const TAPER: Output = Output::gap("taper", "clearance, end against end");

/// Every output of the clearance, and its findings.
pub fn answer_of(clearance: RunningClearance) -> Answer {
    let untyped = |value: Option<Measured<Length>>| value.map(Measured::into_estimate);
    let mut answer = Answer::new()
        .with(LEAST.id, clearance.least.into_estimate())
        .with(GREATEST.id, clearance.greatest.into_estimate())
        .with(MEAN.id, clearance.mean.into_estimate())
        .with_optional(TAPER.id, untyped(clearance.taper))
        .with_optional("journal-taper", untyped(clearance.journal_taper))
        .with_optional(
            "journal-out-of-round",
            untyped(clearance.journal_out_of_round),
        )
        .with_optional("bore-taper", untyped(clearance.bore_taper))
        .with_optional("bore-out-of-round", untyped(clearance.bore_out_of_round))
        .with_optional("eccentricity", untyped(clearance.eccentricity));
    for finding in clearance.findings {
        answer = answer.finding(finding.gravity, finding.text);
    }
    answer
}

/// A typed error as one that names the field.
pub fn named(
    given: &Given,
    error: ClearanceError,
    (bore, journal): (&'static Input, &'static Input),
) -> CalculationError {
    let input = match error {
        ClearanceError::NoJournal => journal,
        ClearanceError::NotFinite if given.several(bore.id).iter().all(finite) => journal,
        ClearanceError::NoBore | ClearanceError::NoStrip | ClearanceError::NotFinite => bore,
    };
    CalculationError::not_possible(input, error.to_string())
}

fn finite(value: &Estimate) -> bool {
    value.value().is_finite() && value.deviation().is_finite()
}
