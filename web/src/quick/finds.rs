//! Which measure of the plan the answer of a quick check is. From the measure
//! come the harm of too little and too much, what is common, and what to do.

use assembly_core::describe::Calculation;
use build_plan::measure::Found;
use build_plan::{MEASURES, Measure, measure};

/// Checks whose judged answer is a measure's own value. A check that serves
/// several measures alike, such as run-out, is not among them: what to do
/// depends on the part.
static FINDS: &[(&str, &str)] = &[
    ("clearance-from-walls", "main-oil-clearance"),
    ("crank-bow", "crank-bow"),
    ("crank-end-float", "crank-end-play"),
    ("crank-end-play-from-widths", "crank-end-play"),
    ("rod-side-clearance", "rod-side-clearance"),
    ("shell-crush", "main-crush"),
    ("piston-to-wall", "piston-to-wall"),
    ("pressed-pin", "pin-press"),
    ("ring-side-clearance", "ring-side-clearance"),
    ("ring-back-clearance", "ring-back-clearance"),
    ("liner-fit", "liner-fit"),
    ("liners-in-a-row", "liner-stand-out"),
    ("liner-stand-out-from-parts", "liner-stand-out"),
    ("deck-and-quench", "deck-clearance"),
    ("deck-corners", "deck-clearance"),
    ("quench", "quench"),
    ("cover-step", "timing-cover-step"),
    ("valve-seat", "seat-width"),
    ("valve-tip-heights", "tip-height"),
    ("valve-lash", "valve-lash"),
    ("lifter-in-bore", "lifter-in-bore"),
    ("lifter-preload-after", "lifter-preload"),
    ("rocker-turns", "lifter-preload"),
    ("pushrod-length", "pushrod-length"),
    ("cam-bearing-clearance", "cam-bearing-clearance"),
    ("cam-float-plate", "cam-end-float"),
    ("cam-float-button", "cam-end-float"),
    ("gear-backlash", "timing-gear-backlash"),
    ("damper-hub", "damper-hub-interference"),
    ("converter-gap", "converter-gap"),
    ("pump-end-clearance", "pump-end-clearance"),
    ("pump-side-clearance", "pump-gear-to-body"),
    ("pump-tip-clearance", "pump-tip-clearance"),
    ("pickup-to-pan", "pickup-to-pan"),
    ("pump-drive-float", "pump-drive-float"),
    ("distributor-depth", "distributor-float"),
    ("bolt-engagement", "bolt-engagement"),
];

/// Whether a check is one of a bearing's running clearance: those are advised
/// on as such.
#[must_use]
pub fn is_running_clearance(check: &Calculation) -> bool {
    check.id.starts_with("running-clearance")
}

/// The measure that a check's answer is.
#[must_use]
pub fn measure_of(check: &Calculation) -> Option<&'static Measure> {
    if is_running_clearance(check) {
        // The mains' own: every bearing that runs in oil is asked about so.
        return MEASURES.iter().copied().find(|measure| {
            matches!(measure.found, Found::WorkedOut { calculation: own, or_read_by, .. }
                if own == check.id || or_read_by.contains(&check.id))
        });
    }
    let (_, id) = FINDS.iter().find(|(own, _)| *own == check.id)?;
    measure(id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::describe::calculation;
    use assembly_core::quantity::Kind;

    #[test]
    fn every_pair_is_a_check_and_a_measure_of_the_same_kind() {
        for (check, id) in FINDS {
            let check = calculation(check).unwrap_or_else(|| panic!("no check {check}"));
            let measure = measure_of(check).unwrap_or_else(|| panic!("no measure {id}"));
            let judged = check.outputs.iter().find(|one| one.id == "least");
            let judged = judged.or_else(|| check.outputs.first()).unwrap();
            assert_eq!(judged.kind, measure.kind, "{}", check.id);
            // The moves are reckoned in lengths.
            assert_eq!(judged.kind, Kind::Length, "{}", check.id);
        }
    }

    #[test]
    fn a_running_clearance_is_the_mains() {
        for id in [
            "running-clearance",
            "running-clearance-same-micrometer",
            "running-clearance-strip",
        ] {
            let found = calculation(id).and_then(measure_of);
            assert_eq!(found.map(|one| one.id), Some("main-oil-clearance"), "{id}");
        }
        let rule = calculation("clearance-rule-of-thumb").unwrap();
        assert!(measure_of(rule).is_none());
    }
}
