//! Running clearance from a plastic gauge strip.

use uom::si::f64::Length;

use super::findings::findings_of;
use super::station::{ClearanceError, RunningClearance, spread};
use crate::describe::{Finding, Gravity};
use crate::measure::Measured;

/// What one crushed strip shows against the printed bands.
#[derive(Clone, PartialEq, Debug)]
pub struct StripReading {
    /// The clearance at its widest spot, where the bearing is tightest.
    pub widest: Measured<Length>,
    /// The clearances at its two ends, if they were compared.
    pub ends: Option<(Measured<Length>, Measured<Length>)>,
}

/// Running clearance from one or more strips in one bearing.
///
/// A strip is widest where the bearing is tightest, so the widest spot gives the
/// least clearance. The ends compared give the taper. The printed bands come in
/// steps: take the step as the resolution of each reading, so that it counts as
/// a cause of error.
///
/// # Errors
/// [`ClearanceError::NoStrip`] when there is none, [`ClearanceError::NotFinite`]
/// when a reading is no number.
pub fn from_strip(strips: &[StripReading]) -> Result<RunningClearance, ClearanceError> {
    let widest: Vec<Measured<Length>> = strips.iter().map(|strip| strip.widest.clone()).collect();
    let mut everywhere = widest.clone();
    for (front, rear) in strips.iter().filter_map(|strip| strip.ends.as_ref()) {
        everywhere.extend([front.clone(), rear.clone()]);
    }
    let no_number = |reading: &Measured<Length>| {
        !reading.estimate().value().is_finite() || !reading.estimate().deviation().is_finite()
    };
    if everywhere.iter().any(no_number) {
        return Err(ClearanceError::NotFinite);
    }
    let (Some(least), Some(greatest)) = (
        Measured::least(&everywhere),
        Measured::greatest(&everywhere),
    ) else {
        return Err(ClearanceError::NoStrip);
    };
    let tapers: Vec<Measured<Length>> = strips
        .iter()
        .filter_map(|strip| strip.ends.as_ref())
        .filter_map(|(front, rear)| spread(&[front.clone(), rear.clone()]))
        .collect();
    // The middle of a strip that tapers evenly lies between its ends.
    let middles: Vec<Measured<Length>> = strips
        .iter()
        .map(|strip| match &strip.ends {
            Some((front, rear)) => (front + rear) * 0.5,
            None => strip.widest.clone(),
        })
        .collect();
    let mut clearance = RunningClearance {
        least: least.clone(),
        greatest: greatest.clone(),
        mean: Measured::mean(&middles).ok_or(ClearanceError::NoStrip)?,
        taper: Measured::greatest(&tapers).cloned(),
        journal_taper: None,
        journal_out_of_round: None,
        bore_taper: None,
        bore_out_of_round: None,
        eccentricity: None,
        findings: Vec::new(),
    };
    clearance.findings = findings_of(&clearance, None);
    if strips.iter().any(an_end_is_tighter) {
        clearance.findings.push(Finding {
            gravity: Gravity::Caution,
            text:
                "an end of the strip reads tighter than its widest spot: read the widest spot again"
                    .to_owned(),
        });
    }
    Ok(clearance)
}

fn an_end_is_tighter(strip: &StripReading) -> bool {
    let widest = strip.widest.estimate().value();
    strip.ends.as_ref().is_some_and(|(front, rear)| {
        front.estimate().value() < widest || rear.estimate().value() < widest
    })
}
