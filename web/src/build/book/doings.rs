//! What was done, seen, changed and let pass, as lines of the book.

use build_journal::fact::{
    Body, CheckMade, EventHappened, Mark, Outcome, ResultName, Spot, StepMarked, Waived,
};
use build_journal::fold::Build;

use super::words::{short, spot};

/// Such a fact as one line.
#[must_use]
pub fn of(body: &Body, build: &Build) -> String {
    match body {
        Body::StepMarked(said) => marked(said, build),
        Body::CheckMade(made) => checked(made, build),
        Body::EventHappened(made) => happened(made, build),
        Body::Waived(made) => waived(made, build),
        _ => String::new(),
    }
}

fn marked(said: &StepMarked, build: &Build) -> String {
    let what = match said.mark {
        Mark::Planned => "On the plan",
        Mark::Begun => "Begun",
        Mark::Done => "Done",
        Mark::Apart => "Taken apart",
        Mark::NotNeeded => "Not needed",
    };
    let step = build.plan.step(&said.step);
    let label = step.map_or_else(|| short(&said.step), |step| step.label.to_owned());
    format!(
        "{what}: {label}{}{}",
        at(said.place.as_ref()),
        added(said.words.as_deref())
    )
}

fn checked(made: &CheckMade, build: &Build) -> String {
    let came_out = match made.outcome {
        Outcome::Good => "good",
        Outcome::Bad => "not good",
    };
    let check = build.plan.check(&made.check);
    let label = check.map_or_else(|| short(&made.check), |check| check.label.to_owned());
    let lasts = (made.lasts.as_deref())
        .map(|lasts| format!(", for {}", short(lasts)))
        .unwrap_or_default();
    format!(
        "Looked at: {label}{}: {came_out}{lasts}{}",
        at(made.place.as_ref()),
        added(made.words.as_deref())
    )
}

fn happened(made: &EventHappened, build: &Build) -> String {
    let event = build.plan.event(&made.event);
    let label = event.map_or_else(|| short(&made.event), |event| event.label.to_owned());
    let places: Vec<String> = made.places.iter().map(spot).collect();
    let places = if places.is_empty() {
        String::new()
    } else {
        format!(", {}", places.join("; "))
    };
    format!("Changed: {label}{places}{}", added(made.words.as_deref()))
}

fn waived(made: &Waived, build: &Build) -> String {
    let ResultName { sort, id } = &made.result;
    let proof = build.plan.proof(*sort, id);
    let label = proof.map_or_else(|| short(id), |proof| proof.label().to_owned());
    format!(
        "Let pass: {label}{}. Why: {}",
        at(made.place.as_ref()),
        short(&made.reason)
    )
}

fn at(place: Option<&Spot>) -> String {
    place
        .map(|place| format!(", {}", spot(place)))
        .unwrap_or_default()
}

fn added(words: Option<&str>) -> String {
    words
        .map(|words| format!(". {}", short(words)))
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::Sort;
    use build_journal::{BuildId, Journal, fold};
    use build_plan::Place;

    #[test]
    fn what_was_done_and_changed_reads_in_the_words_of_the_trade() {
        let build = fold(&Journal::new(BuildId::from_random(1)));
        let main = || Some(Spot::Known(Place::main(3)));
        let step = Body::StepMarked(StepMarked {
            step: "crank-in".to_owned(),
            place: None,
            mark: Mark::Done,
            words: Some("with the long bolts".to_owned()),
        });
        let words = of(&step, &build);
        assert!(words.starts_with("Done: Upper shells"), "{words}");
        assert!(words.ends_with(". with the long bolts"), "{words}");
        let event = Body::EventHappened(EventHappened {
            event: "main-shells-swapped".to_owned(),
            places: main().into_iter().collect(),
            words: None,
        });
        assert!(of(&event, &build).ends_with(", main 3"));
        let check = Body::CheckMade(CheckMade {
            check: "primed".to_owned(),
            place: None,
            outcome: Outcome::Bad,
            words: None,
            lasts: Some("2 days".to_owned()),
        });
        assert!(of(&check, &build).contains("not good, for 2 days"));
        let waived = Body::Waived(Waived {
            result: ResultName {
                sort: Sort::Measure,
                id: "main-oil-clearance".to_owned(),
            },
            place: main(),
            reason: "as the shop said".to_owned(),
        });
        assert!(of(&waived, &build).ends_with("main 3. Why: as the shop said"));
    }
}
