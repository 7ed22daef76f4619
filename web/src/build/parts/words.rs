//! How far a part has come, in words.

use build_journal::Day;
use build_journal::fact::PartStage;
use build_journal::fold::ListedPart;
use build_plan::Engine;
use build_plan::step::STEPS;

/// The stages that a part goes through, one after the other.
pub const WAY: [PartStage; 5] = [
    PartStage::Wanted,
    PartStage::Ordered,
    PartStage::Here,
    PartStage::Checked,
    PartStage::Fitted,
];

/// A stage, as it is said of a part.
#[must_use]
pub const fn stage_words(stage: PartStage) -> &'static str {
    match stage {
        PartStage::Wanted => "wanted",
        PartStage::Ordered => "ordered",
        PartStage::Here => "here",
        PartStage::Checked => "checked",
        PartStage::Fitted => "fitted",
        PartStage::Returned => "gone back",
    }
}

/// The stage that comes next, and what the button says that leads there.
#[must_use]
pub const fn next(stage: PartStage) -> Option<(PartStage, &'static str)> {
    match stage {
        PartStage::Wanted => Some((PartStage::Ordered, "It is ordered")),
        PartStage::Ordered => Some((PartStage::Here, "It is here")),
        PartStage::Here => Some((PartStage::Checked, "Looked over: it is right")),
        PartStage::Checked => Some((PartStage::Fitted, "It is fitted")),
        PartStage::Fitted | PartStage::Returned => None,
    }
}

/// When something is promised, and how late it is.
#[must_use]
pub fn promised_words(promised: Day, today: Day) -> String {
    const DAY_MS: i64 = 24 * 60 * 60 * 1000;
    let late = (today.begins() - promised.begins()) / DAY_MS;
    match late {
        i64::MIN..=-2 => format!("Promised for {promised}, in {} days.", -late),
        -1 => format!("Promised for {promised}, tomorrow."),
        0 => format!("Promised for {promised}, today."),
        1 => format!("Promised for {promised}: one day late."),
        more => format!("Promised for {promised}: {more} days late."),
    }
}

/// Whether it should have been here by now.
#[must_use]
pub fn is_late(part: &ListedPart, today: Day) -> bool {
    part.is_waited_for() && part.promised.is_some_and(|promised| promised < today)
}

/// What is known of a part besides its name, in one line.
#[must_use]
pub fn details(part: &ListedPart) -> String {
    let listed = &part.listed;
    let known = [
        listed.size.clone(),
        listed
            .quantity
            .as_ref()
            .map(|many| format!("{many} of them")),
        listed.supplier.as_ref().map(|from| format!("from {from}")),
        listed.price.clone(),
        listed.lot.as_ref().map(|lot| format!("lot {lot}")),
    ];
    known.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// The steps of an engine that can't begin without this supply.
#[must_use]
pub fn waited_by(supply: &str, engine: &Engine) -> Vec<&'static str> {
    let needs = STEPS.iter().filter(|step| {
        step.when.applies_to(engine) && step.in_hand.iter().any(|one| one.id == supply)
    });
    needs.map(|step| step.label).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_plan::Layout;

    #[test]
    fn every_stage_leads_to_the_one_after_it() {
        for pair in WAY.windows(2) {
            assert_eq!(next(pair[0]).map(|(stage, _)| stage), Some(pair[1]));
        }
        assert_eq!(next(PartStage::Fitted), None);
        assert_eq!(next(PartStage::Returned), None);
    }

    #[test]
    fn a_promise_says_how_long_it_is_or_was() {
        let day = |text| Day::read(text).unwrap();
        let today = day("2026-12-04");
        let said = |text| promised_words(day(text), today);
        assert!(said("2026-12-11").ends_with("in 7 days."));
        assert!(said("2026-12-05").ends_with("tomorrow."));
        assert!(said("2026-12-04").ends_with("today."));
        assert!(said("2026-12-03").ends_with("one day late."));
        assert!(said("2026-11-24").ends_with("10 days late."));
    }

    #[test]
    fn bores_are_not_honed_before_the_pistons_are_here() {
        let engine = Engine::new("four", 4, Layout::Inline, None).unwrap();
        let steps = waited_by("pistons", &engine);
        assert!(steps.iter().any(|step| step.contains("hone")), "{steps:?}");
        assert!(waited_by("no such thing", &engine).is_empty());
    }
}
