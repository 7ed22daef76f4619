//! A run of stretch-measured bolts: how much each got longer, and which took a set.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, length_text,
};
use crate::fit::readings::same_count;
use crate::limits::about;
use crate::measure::{Estimate, Window};

const LENGTHS: (f64, f64) = (0.01, 0.6);

static FREE: Input = Input::size(
    "free",
    "free length of each bolt",
    LENGTHS,
    "Over the ends with a ball-ended gauge or micrometer, before it is tightened; all bolts in their order.",
)
.one_or_more();
static TIGHT: Input = Input::size(
    "tight",
    "tight length of each bolt",
    LENGTHS,
    "The same places, tightened, in the same order.",
)
.one_or_more();
static AFTER: Input = Input::size(
    "after",
    "free length when loosened again",
    LENGTHS,
    "Only when they come off again: the same order. It shows a set.",
)
.taking(crate::describe::Takes::Any);
static LOW: Input = Input::gap(
    "low",
    "least stretch on the sheet",
    (0.0, 0.002),
    "From the bolt's own sheet.",
)
.optional();
static HIGH: Input = Input::gap(
    "high",
    "greatest stretch on the sheet",
    (0.0, 0.002),
    "From the bolt's own sheet.",
)
.optional();

/// Measured stretch.
pub static MEASURED_STRETCH: Calculation = Calculation {
    id: "measured-stretch",
    title: "Measured stretch of bolts",
    purpose: "Which bolt of a set stretched too little, too much, or stayed longer.",
    inputs: &[FREE, TIGHT, AFTER, LOW, HIGH],
    outputs: &[
        Output::gap("least", "least stretch"),
        Output::gap("greatest", "greatest stretch"),
        Output::gap("set", "greatest lasting stretch"),
        Output::ratio("worst", "bolt that stayed longest, counted from one"),
    ],
    workings: &[
        "stretch = tight − free, bolt by bolt: {least} to {greatest}",
        "lasting = free after − free before, at most {set}, bolt {worst}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Too little stretch lets the cap open, too much breaks the bolt. The bolt's own sheet decides; there is no common figure.",
        "Zero the gauge on each bolt relaxed: bolts of one box differ in length by more than they stretch.",
        "A bolt of a pair below its stretch: loosen both and start again.",
        "A bolt that breaks lets go at once: glasses on, nobody in line with it.",
    ],
    run,
};

fn differences(long: &[Estimate], short: &[Estimate]) -> Vec<Estimate> {
    long.iter()
        .zip(short)
        .map(|(long, short)| long - short)
        .collect()
}

fn numbers(places: &[usize]) -> String {
    let words: Vec<String> = places.iter().map(usize::to_string).collect();
    words.join(", ")
}

fn those(values: &[Estimate], wrong: impl Fn(f64) -> bool) -> Vec<usize> {
    values
        .iter()
        .zip(1..)
        .filter(|(one, _)| wrong(one.value()))
        .map(|(_, place)| place)
        .collect()
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    same_count(given, &FREE, &TIGHT)?;
    let free = given.several(FREE.id);
    let stretches = differences(given.several(TIGHT.id), free);
    let mut answer = Answer::new();
    let limit = |input: &'static Input| given.optional(input.id).map(Estimate::value);
    let (low, high) = (limit(&LOW), limit(&HIGH));
    if (low.is_some() || high.is_some()) && Window::new(low, high).is_err() {
        return Err(CalculationError::not_possible(
            &LOW,
            "the least stretch is more than the greatest: swap them",
        ));
    }
    let shorter = those(&stretches, |one| one <= 0.0);
    if !shorter.is_empty() {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "Bolt {} is not longer when tight: look whether the lists are in one order.",
                numbers(&shorter)
            ),
        );
    }
    let too_long = those(&stretches, |one| {
        high.is_some_and(|high| one > high * (1.0 + 1e-9))
    });
    if !too_long.is_empty() {
        answer = answer.finding(
            Gravity::Stop,
            format!(
                "Bolt {} stretched past its sheet: scrap it, do not back it off.",
                numbers(&too_long)
            ),
        );
    }
    let too_short = those(&stretches, |one| {
        low.is_some_and(|low| one < low * (1.0 - 1e-9))
    });
    if !too_short.is_empty() {
        answer = answer.finding(
            Gravity::Caution,
            format!(
                "Bolt {} stretched less than its sheet: loosen its pair and start again.",
                numbers(&too_short)
            ),
        );
    }
    let mut set = None;
    if !given.several(AFTER.id).is_empty() {
        same_count(given, &FREE, &AFTER)?;
        let lasting = differences(given.several(AFTER.id), free);
        let most = about("rod-bolt-set", "").and_then(|entry| entry.high);
        let most = most.map_or(0.0, |inches| inches * 0.0254);
        let scrap = those(&lasting, |one| one > most * (1.0 + 1e-6));
        if !scrap.is_empty() {
            answer = answer.finding(
                Gravity::Stop,
                format!(
                    "Bolt {} stayed longer by more than the {} that is common practice: scrap it.",
                    numbers(&scrap),
                    length_text(most)
                ),
            );
        }
        set = Estimate::greatest(&lasting).cloned();
        let worst = set
            .as_ref()
            .and_then(|most| lasting.iter().position(|one| one.value() >= most.value()));
        answer = answer.with_optional("worst", worst.map(|at| Estimate::exact((at + 1) as f64)));
    }
    Ok(answer
        .with_optional("least", Estimate::least(&stretches).cloned())
        .with_optional("greatest", Estimate::greatest(&stretches).cloned())
        .with_optional("set", set))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, given, refused, says, value, worked};

    fn bolts(tight: &[f64], after: &[f64]) -> Given {
        let free = [1.7500, 1.7480];
        let mut bolts = given(INCH, &[("free", &free), ("tight", tight), ("after", after)]);
        bolts.push("low", Estimate::exact(0.0050 * INCH));
        bolts.push("high", Estimate::exact(0.0060 * INCH));
        bolts
    }

    #[test]
    fn each_bolt_is_held_against_its_sheet() {
        let good = worked(&MEASURED_STRETCH, &bolts(&[1.7555, 1.7531], &[]));
        assert!((value(&good, "least", THOU) - 5.1).abs() < 1e-6);
        assert!((value(&good, "greatest", THOU) - 5.5).abs() < 1e-6);
        assert!(good.findings().is_empty());
        let off = worked(&MEASURED_STRETCH, &bolts(&[1.7570, 1.7520], &[]));
        assert!(says(&off, "Bolt 1 stretched past"));
        assert!(says(&off, "Bolt 2 stretched less"));
    }

    #[test]
    fn a_bolt_that_stays_longer_is_scrap() {
        let set = worked(
            &MEASURED_STRETCH,
            &bolts(&[1.7555, 1.7531], &[1.7502, 1.7495]),
        );
        assert!((value(&set, "set", THOU) - 1.5).abs() < 1e-6);
        assert_eq!(value(&set, "worst", 1.0), 2.0);
        assert!(says(&set, "Bolt 2 stayed longer"));
        let kept = worked(
            &MEASURED_STRETCH,
            &bolts(&[1.7555, 1.7531], &[1.7510, 1.7482]),
        );
        assert!(kept.findings().is_empty());
    }

    #[test]
    fn lists_that_do_not_pair_are_told() {
        assert_eq!(
            refused(&MEASURED_STRETCH, &bolts(&[1.7555], &[])),
            Some("tight")
        );
        assert_eq!(
            refused(&MEASURED_STRETCH, &bolts(&[1.7555, 1.7531], &[1.75])),
            Some("after")
        );
        assert!(says(
            &worked(&MEASURED_STRETCH, &bolts(&[1.7480, 1.7555], &[])),
            "one order"
        ));
    }
}
