//! Which of the builder's torque wrenches for which lap, in words.

use assembly_core::fastener::wrench::Place;
use assembly_core::tightening::wrenches::Lies;
use build_journal::fact::{Adapter, Wrench};
use build_journal::fold::tightening::{Choice, Group, Offered, Sheet, State, Tightenings, choices};

use super::Tighten;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece};
use crate::kit::section::{fold, sentences};

/// What the builder calls a wrench, else its scale.
#[must_use]
pub fn name(wrench: &Wrench) -> String {
    let named = wrench.name.as_deref().map(str::trim);
    let named = named.filter(|name| !name.is_empty());
    named.map_or_else(|| format!("the wrench of {}", scale(wrench)), str::to_owned)
}

/// Its scale: "20 to 150 ft-lb".
#[must_use]
pub fn scale(wrench: &Wrench) -> String {
    format!("{} to {} {}", wrench.low, wrench.high, wrench.unit)
}

/// How a torque lies on a wrench, short.
#[must_use]
pub fn lies_in_short(lies: &Lies) -> String {
    let share = per_cent(lies.share);
    match lies.place {
        Place::OffTheScale => "off its scale".to_owned(),
        Place::TooLow => format!("{share} of its scale, too low"),
        Place::High => format!("{share} of its scale, hard to pull"),
        Place::Useful if lies.is_coarse() => format!("{share} of its scale, between its marks"),
        Place::Useful => format!("{share} of its scale"),
    }
}

fn per_cent(share: f64) -> String {
    format!("{:.0} %", share * 100.0)
}

/// A sentence for each lap that is a torque: with which wrench, where it lies on
/// it, and which one would be better; and whether it needs one.
#[must_use]
pub fn sentences_of_laps(
    sheet: &Sheet,
    on_it: Option<&Adapter>,
    offered: &[Offered],
) -> Vec<(String, bool)> {
    let found = choices(sheet, on_it, offered);
    let one = |choice: &Choice| {
        let (number, unit) = sheet
            .stages
            .get(choice.lap)?
            .on_the_wrench(sheet.unit_of(choice.lap))?;
        let torque = sheet.stages.get(choice.lap)?.torque()?;
        let start = format!("Lap {}, {number} {unit}: ", choice.lap + 1);
        let taken = sheet.wrench_of(choice.lap);
        let lies = taken.map(|held| held.wrench.lies(torque));
        let now = match (taken, &lies) {
            (Some(held), Some(lies)) => {
                format!("{}, {}.", name(&held.typed), lies_in_short(lies))
            }
            _ => "no wrench is named.".to_owned(),
        };
        let fits = lies.is_some_and(|lies| lies.place == Place::Useful && !lies.is_coarse());
        let better = (!fits).then(|| better(choice, offered, taken.map(|held| &held.typed)));
        let rest = better.map_or_else(String::new, |better| format!(" {better}"));
        Some((format!("{start}{now}{rest}"), !fits))
    };
    found.iter().filter_map(one).collect()
}

/// What to take in place of a wrench that does not fit.
fn better(choice: &Choice, offered: &[Offered], taken: Option<&Wrench>) -> String {
    let at = |at: usize| Some((offered.get(at)?, choice.lies.get(at)?.as_ref().ok()?));
    match choice.best.and_then(at) {
        Some((one, lies)) if lies.place == Place::Useful && Some(&one.typed) != taken => {
            format!(
                "{} has it at {}.",
                capital(&name(&one.typed)),
                lies_in_short(lies)
            )
        }
        Some((_, lies)) if lies.place == Place::Useful => {
            "Its marks are far apart for this: set it with care, or borrow a finer one.".to_owned()
        }
        _ => "None of your wrenches has it between 20 % and 90 % of its scale: borrow one. A torque that is guessed is none.".to_owned(),
    }
}

/// A part of the screen: where each lap lies on its wrench, and what would be better, before the first
/// tap: open when something would be.
pub fn before_the_first_tap(context: Tighten, group: &Group, state: State) -> Option<El> {
    if !matches!(state, State::NotYet | State::Loose) {
        return None;
    }
    let adapter = group.made.sheet.adapter.as_ref();
    let offered = context.all.with_untracked(Tightenings::wrenches);
    let lines = sentences_of_laps(&group.sheet, adapter, &offered);
    let (needs, fits): (Vec<_>, Vec<_>) = lines.into_iter().partition(|line| line.1);
    let words = |lines: Vec<(String, bool)>| -> Vec<String> {
        lines.into_iter().map(|line| line.0).collect()
    };
    let (needs, fits) = (words(needs), words(fits));
    if needs.is_empty() && fits.is_empty() {
        return None;
    }
    let class = |lines: &[String], class| (!lines.is_empty()).then(|| sentences(class, lines));
    let folded = fold(
        "The wrench for each lap",
        Piece::all([
            class(&needs, "findings").into(),
            class(&fits, "workings").into(),
        ]),
    )
    .test("which-wrench");
    Some(if needs.is_empty() {
        folded
    } else {
        folded.attr("open", "")
    })
}

#[cfg(test)]
mod tests {
    use build_journal::OwnId;
    use build_journal::fact::{FastenerGroup, FastenerSheet};

    use super::*;

    fn wrench(name: &str, low: &str, high: &str, step: Option<&str>) -> Wrench {
        Wrench {
            name: Some(name.to_owned()),
            low: low.to_owned(),
            high: high.to_owned(),
            unit: "ft-lb".to_owned(),
            step: step.map(str::to_owned),
            grip: None,
        }
    }

    fn offered(typed: Wrench) -> Offered {
        Offered { tool: None, typed }
    }

    fn said(stage: &str, wrenches: Vec<Wrench>) -> (String, bool) {
        let group = FastenerGroup {
            own: OwnId::from_random(1),
            label: "head".to_owned(),
            per: None,
            bolts: 1,
            size: None,
            lubricant: None,
            stages: vec![stage.to_owned()],
            source: None,
            stale_with: Vec::new(),
            sheet: Box::new(FastenerSheet {
                wrench: wrenches.first().cloned(),
                ..FastenerSheet::default()
            }),
        };
        let all: Vec<Offered> = wrenches.into_iter().map(offered).collect();
        sentences_of_laps(&Sheet::of(&group), None, &all).remove(0)
    }

    #[test]
    fn a_lap_says_its_wrench_and_a_better_one_when_there_is_one() {
        let long = || wrench("the long one", "20", "150", None);
        let bar = || wrench("the bar", "50", "500", None);
        let (words, needs) = said("60", vec![long(), bar()]);
        assert_eq!(words, "Lap 1, 60 ft-lb: the long one, 40 % of its scale.");
        assert!(!needs);
        let (words, needs) = said("60", vec![bar(), long()]);
        assert!(
            needs && words.contains("12 % of its scale, too low"),
            "{words}"
        );
        assert!(
            words.ends_with("The long one has it at 40 % of its scale."),
            "{words}"
        );
        let (words, needs) = said("10", vec![long(), bar()]);
        assert!(needs && words.contains("None of your wrenches"), "{words}");
        let (words, needs) = said("33", vec![wrench("the coarse one", "20", "60", Some("10"))]);
        assert!(needs && words.contains("far apart"), "{words}");
        let (words, needs) = said("33", Vec::new());
        assert!(needs && words.contains("no wrench is named"), "{words}");
    }
}
