//! What a clearance says besides its numbers.

use uom::si::f64::Length;

use super::station::RunningClearance;
use crate::describe::{Finding, Gravity, length_text};
use crate::measure::Measured;
use crate::quantity::Si;

/// From this taper or out-of-round on a journal is commonly ground again: half
/// a thou, in metres. Common practice; the maker's sheet wins.
pub const JOURNAL_SHAPE_TRIPWIRE: f64 = 0.0005 * 0.0254;

/// A clearance beyond this part of the journal is more likely a slip in typing:
/// ten times the thou an inch that is common practice.
const SLIP_PART: f64 = 0.01;

pub(super) fn findings_of(
    clearance: &RunningClearance,
    largest_journal: Option<&Measured<Length>>,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut add = |gravity, text| findings.push(Finding { gravity, text });
    let least = clearance.least.value().to_si();
    let greatest = clearance.greatest.value().to_si();
    if greatest < 0.0 {
        add(
            Gravity::Stop,
            format!(
                "interference of {}: the journal is bigger than its bore; are the two swapped?",
                length_text(-clearance.mean.value().to_si())
            ),
        );
    } else if least < 0.0 {
        add(
            Gravity::Stop,
            format!(
                "interference of {} at the tightest place: the largest journal reading is bigger than the smallest bore",
                length_text(-least)
            ),
        );
    }
    if let Some(journal) = largest_journal
        && least > SLIP_PART * journal.value().to_si()
    {
        add(
            Gravity::Caution,
            format!(
                "a clearance of {} is far more than any bearing of this size runs with: is a number typed wrongly?",
                length_text(least)
            ),
        );
    }
    for (what, shape) in [
        ("tapers", &clearance.journal_taper),
        ("is out of round", &clearance.journal_out_of_round),
    ] {
        if let Some(shape) = shape
            && shape.value().to_si() > JOURNAL_SHAPE_TRIPWIRE
        {
            add(
                Gravity::Caution,
                format!(
                    "the journal {what} by {}: common practice allows {}; the mean hides it",
                    length_text(shape.value().to_si()),
                    length_text(JOURNAL_SHAPE_TRIPWIRE)
                ),
            );
        }
    }
    if let Some(wider) = &clearance.eccentricity
        && wider.value().to_si() < -2.0 * wider.give_or_take().to_si()
    {
        add(
            Gravity::Caution,
            format!(
                "the bore is {} narrower toward the joint: it should be wider there. Look for a shifted cap, dirt behind a shell or too much crush",
                length_text(-wider.value().to_si())
            ),
        );
    }
    findings
}
