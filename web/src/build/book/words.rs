//! A fact in the words of the bench.

use build_journal::fact::{Body, LimitsSet, Reading, ReadingsStand, Spot, ToolSet};
use build_journal::fold::Build;
use build_journal::{Fact, FactId, Journal, ToolId};

use super::super::measure::setting_words_of;
use super::super::tighten::in_the_log;
use super::bought;
use super::doings;
use super::oil_words;

/// Letters of a long text that are shown in a line of the log.
const SHOWN: usize = 160;

/// A fact as one line.
#[must_use]
pub fn of(fact: &Fact, journal: &Journal, build: &Build) -> String {
    match fact.body() {
        Body::EngineDescribed(engine) => format!(
            "Engine described: {}, {}, {} cylinders",
            short(&engine.name),
            short(&engine.layout),
            engine.cylinders
        ),
        Body::ToolListed(tool) => format!("Tool on the list: {}", short(&tool.name)),
        Body::ToolSet(set) => tool_set(build, set),
        Body::Reading(reading) => read(build, reading),
        Body::LimitsSet(limits) => limits_set(build, limits),
        Body::Struck(struck) => {
            let what = struck_words(struck.fact, journal, build);
            let reason = struck.reason.as_deref().map(short);
            match reason {
                Some(reason) => format!("Struck out: {what}. Why: {reason}"),
                None => format!("Struck out: {what}"),
            }
        }
        Body::Note(note) => match &note.step {
            Some(id) => {
                let step = build.plan.step(id);
                let label = step.map_or_else(|| short(id), |step| step.label.to_owned());
                format!("Note on “{label}”: {}", short(&note.text))
            }
            None => format!("Note: {}", short(&note.text)),
        },
        Body::StepMarked(_) | Body::CheckMade(_) | Body::EventHappened(_) | Body::Waived(_) => {
            let settles = fact.in_view().is_some_and(|in_view| in_view.settles);
            let before = if settles { "Settled: " } else { "" };
            format!("{before}{}", doings::of(fact.body(), build))
        }
        Body::ReadingsStand(stand) => stand_side_by_side(stand, journal, build),
        Body::Unknown(unknown) => format!(
            "A “{}”: a kind that this version does not know. It is kept and exported as it is.",
            short(unknown.kind())
        ),
        Body::Unreadable(unreadable) => format!(
            "A “{}” that can't be read: {} It is kept and exported as it is.",
            short(unreadable.kind()),
            unreadable.reason()
        ),
        other => bought::of(other, build)
            .or_else(|| in_the_log(other).map(|words| short(&words)))
            .or_else(|| oil_words::of(other))
            .unwrap_or_else(|| {
                "Something that this version does not know. It is kept and exported as it is."
                    .to_owned()
            }),
    }
}

fn struck_words(fact: FactId, journal: &Journal, build: &Build) -> String {
    match journal.get(fact) {
        None => "something that is not in this copy".to_owned(),
        // One step is enough: a strike of a strike of a strike says so itself.
        Some(struck) => match struck.body() {
            Body::Struck(_) => "a strike; what it struck counts again".to_owned(),
            _ => of(struck, journal, build),
        },
    }
}

fn read(build: &Build, reading: &Reading) -> String {
    let found = build.plan.measure(&reading.measure);
    let what = found.map_or(reading.measure.as_str(), |measure| measure.label);
    let with = reading
        .tool
        .map(|tool| format!(", with the {}", tool_name(build, tool)));
    format!(
        "{}: {}, {}{}",
        with_unit(&reading.typed, &reading.unit),
        short(what),
        spot(&reading.place),
        with.unwrap_or_default()
    )
}

fn stand_side_by_side(stand: &ReadingsStand, journal: &Journal, build: &Build) -> String {
    let readings = stand.readings.iter().filter_map(|fact| journal.get(*fact));
    let words: Vec<String> = readings
        .filter_map(|fact| match fact.body() {
            Body::Reading(reading) => Some(read(build, reading)),
            _ => None,
        })
        .collect();
    let why = stand.words.as_deref().map(short);
    let why = why.map_or_else(String::new, |why| format!(". Why: {why}"));
    format!("These readings all stand: {}{why}", words.join("; "))
}

pub(super) fn spot(spot: &Spot) -> String {
    match spot {
        Spot::Known(place) => place.to_string(),
        Spot::Unknown(json) => format!("a place not known here ({})", short(json)),
    }
}

pub(super) fn tool_name(build: &Build, id: ToolId) -> String {
    build.tools.iter().find(|tool| tool.tool == id).map_or_else(
        || "tool struck off the list".to_owned(),
        |tool| short(&tool.name),
    )
}

fn tool_set(build: &Build, set: &ToolSet) -> String {
    format!(
        "{}: {}",
        tool_name(build, set.tool),
        setting_words_of(build, set)
    )
}

fn limits_set(build: &Build, limits: &LimitsSet) -> String {
    let side = |text: &Option<String>| {
        text.as_deref()
            .map_or_else(|| "–".to_owned(), |text| with_unit(text, &limits.unit))
    };
    let found = build.plan.measure(&limits.measure);
    let what = found.map_or(limits.measure.as_str(), |measure| measure.label);
    let place = limits.place.as_ref();
    let place = place.map(|place| format!(", {}", spot(place)));
    format!(
        "Limits of the {}{}: {} to {}, from {} ({})",
        short(what),
        place.unwrap_or_default(),
        side(&limits.low),
        side(&limits.high),
        limits.origin.id().replace('-', " "),
        short(&limits.origin_note)
    )
}

/// A number as it was typed, with the unit that a lone one was in unless it
/// says its own.
pub(super) fn with_unit(typed: &str, lone: &str) -> String {
    let says_its_own = typed
        .chars()
        .any(|sign| sign.is_alphabetic() || matches!(sign, '"' | '″' | '°' | '%'));
    if says_its_own || lone.is_empty() {
        short(typed)
    } else {
        format!("{} {}", short(typed), short(lone))
    }
}

/// A text cut to what a line holds.
pub(super) fn short(text: &str) -> String {
    let mut letters = text.chars();
    let mut start: String = letters.by_ref().take(SHOWN).collect();
    if letters.next().is_some() {
        start.push('…');
    }
    start
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::{BuildId, DeviceId, Stamper, fact, fold};
    use build_plan::{Direction, Place, Station};

    #[test]
    fn a_note_on_a_step_says_on_which() {
        let step = &build_plan::step::STEPS[0];
        let mut journal = Journal::new(BuildId::from_random(1));
        let mut stamper = Stamper::new();
        for on in [Some(step.id), Some("gravity-off"), None] {
            let body = Body::Note(fact::Note {
                text: "stoned it flush".to_owned(),
                place: None,
                step: on.map(str::to_owned),
            });
            let id = stamper.stamp(1, 1);
            journal.take(Fact::new(id, DeviceId::from_random(1), 1, body));
        }
        let build = fold(&journal);
        let said: Vec<String> = journal
            .facts()
            .map(|one| of(one, &journal, &build))
            .collect();
        let first = format!("Note on “{}”: stoned it flush", step.label);
        assert_eq!(
            said,
            [
                first.as_str(),
                "Note on “gravity-off”: stoned it flush",
                "Note: stoned it flush"
            ]
        );
    }

    #[test]
    fn a_log_reads_like_the_bench_speaks() {
        let mut journal = Journal::new(BuildId::from_random(1));
        let mut stamper = Stamper::new();
        let mut write = |body| {
            let id = stamper.stamp(1, 1);
            journal
                .append(Fact::new(id, DeviceId::from_random(1), 1, body))
                .unwrap();
            id
        };
        let reading = write(Body::Reading(
            Reading {
                measure: "main-journal-diameter".to_owned(),
                place: Spot::Known(
                    Place::main(1)
                        .station(Station::Front)
                        .direction(Direction::Across),
                ),
                typed: "2.4501".to_owned(),
                unit: "in".to_owned(),
                tool: None,
                setting: None,
                temperature: None,
                condition: None,
                keyed: None,
            }
            .into(),
        ));
        let strike = write(Body::Struck(fact::Struck {
            fact: reading,
            reason: None,
        }));
        let again = write(Body::Struck(fact::Struck {
            fact: strike,
            reason: None,
        }));
        let build = fold(&journal);
        let words = |id| of(journal.get(id).unwrap(), &journal, &build);
        assert_eq!(
            words(reading),
            "2.4501 in: main journal diameter, main 1, front of the oil hole, across"
        );
        assert!(words(strike).starts_with("Struck out: 2.4501 in"));
        assert!(words(again).contains("counts again"));
    }

    #[test]
    fn a_number_has_one_unit_in_the_log() {
        assert_eq!(with_unit("-2 thou", "in"), "-2 thou");
        assert_eq!(with_unit("2-7/16\"", "in"), "2-7/16\"");
        assert_eq!(with_unit("2.4501", "in"), "2.4501 in");
        assert_eq!(with_unit("4", ""), "4");
        let limits = LimitsSet {
            measure: "main-oil-clearance".to_owned(),
            place: None,
            low: Some("1".to_owned()),
            high: Some("3 thou".to_owned()),
            unit: "thou".to_owned(),
            origin: fact::LimitsOrigin::Sheet,
            origin_note: "table 3".to_owned(),
            replaces: Vec::new(),
        };
        let build = fold(&Journal::new(BuildId::from_random(1)));
        let words = limits_set(&build, &limits);
        assert!(words.contains(": 1 thou to 3 thou, from"), "{words}");
    }

    #[test]
    fn a_text_of_any_length_makes_a_line() {
        assert_eq!(short("µm"), "µm");
        assert_eq!(short(&"µ".repeat(10_000)).chars().count(), SHOWN + 1);
    }
}
