//! A main bearing's verdict, for the list and for its own page.

use assembly_core::describe::Gravity;
use assembly_core::quantity::Unit;
use build_journal::fold::{MainBearing, Standing};
use build_plan::measure::MAIN_OIL_CLEARANCE;

use crate::kit::judged::Judged;
use crate::kit::verdict::Mark;

/// The clearance of a bearing, ready to be shown; `None` before it is measured.
#[must_use]
pub fn judged(bearing: &MainBearing, unit: &'static Unit) -> Option<Judged> {
    let clearance = bearing.clearance()?;
    let (window, advice) = match &bearing.standing {
        Standing::Judged(advice) => (
            bearing.limits.first().and_then(|one| one.window.as_ref().ok().copied()),
            Some(advice.clone()),
        ),
        // Something is missing: nothing is said against the limits.
        Standing::Open(_) => (None, None),
    };
    Some(Judged {
        least: clearance.least.estimate().clone(),
        greatest: clearance.greatest.estimate().clone(),
        sources: bearing.sources.clone(),
        window,
        measure: Some(&MAIN_OIL_CLEARANCE),
        findings: bearing.findings.clone(),
        advice,
        unit,
    })
}

/// The bearing's mark. What must not be built is bad, limits or none.
#[must_use]
pub fn mark(bearing: &MainBearing) -> Mark {
    if bearing.findings.iter().any(|one| one.gravity == Gravity::Stop) {
        return Mark::Bad;
    }
    bearing.standing.verdict().map_or(Mark::None, Mark::from)
}

/// The bearing's verdict in a few words.
#[must_use]
pub fn words(bearing: &MainBearing, unit: &'static Unit) -> String {
    match (&bearing.standing, judged(bearing, unit)) {
        (Standing::Judged(_), Some(judged)) => judged.verdict_words(),
        (Standing::Open(missing), _) => missing
            .first()
            .map_or_else(|| Mark::None.words().to_owned(), |one| one.to_string()),
        (Standing::Judged(_), None) => mark(bearing).words().to_owned(),
    }
}
