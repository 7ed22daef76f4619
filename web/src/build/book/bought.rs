//! What was bought, given out, photographed and checked of the tools, in the
//! words of the bench.

use build_journal::fact::{
    Body, Outcome, PartListed, PartMoved, PartStage, Photo, Spot, ToolChecked, ToolTried,
    WarmthAnswer, WarmthSettled, WorkMoved, WorkReturned, WorkStage, WorkWanted,
};
use build_journal::fold::Build;
use build_journal::{PartId, WorkId};

use super::super::measure::sizes::listed_words;
use super::super::placing::{on_bench_words, placed_words};
use super::words::{short, spot, tool_name, with_unit};

/// Such a fact as one line; `None` for other kinds.
#[must_use]
pub fn of(body: &Body, build: &Build) -> Option<String> {
    Some(match body {
        Body::ToolChecked(one) => tool_checked(build, one),
        Body::ToolTried(one) => tool_tried(build, one),
        Body::WarmthSettled(one) => warmth_settled(build, one),
        Body::Photo(one) => photo(build, one),
        Body::OwnMeasure(one) => format!("A measure of one's own: {}", short(&one.label)),
        Body::OwnStep(one) => format!("A step of one's own: {}", short(&one.label)),
        Body::PartListed(one) => part_listed(one),
        Body::PartOnBench(one) => on_bench_words(one),
        Body::PartsPlaced(one) => placed_words(one),
        Body::SizesListed(one) => short(&listed_words(one)),
        Body::PartMoved(one) => part_moved(build, one),
        Body::WorkOrdered(one) => format!("Machine work on the order: {}", short(&one.what)),
        Body::WorkWanted(one) => wanted(build, one),
        Body::WorkReturned(one) => returned(build, one),
        Body::WorkMoved(one) => work_moved(build, one),
        _ => return None,
    })
}

/// More words behind a line, when there are any.
fn and(words: Option<&str>) -> String {
    words
        .map(|words| format!(": {}", short(words)))
        .unwrap_or_default()
}

fn at(place: Option<&Spot>) -> String {
    place
        .map(|place| format!(", {}", spot(place)))
        .unwrap_or_default()
}

fn step_name(build: &Build, id: &str) -> String {
    let found = build.plan.step(id).map(|step| step.label);
    // A photo of stripes goes by its group of bolts, which is a check.
    let found = found.or_else(|| build.plan.check(id).map(|check| check.label));
    short(found.unwrap_or(id))
}

fn measure_name(build: &Build, id: &str) -> String {
    let found = build.plan.measure(id).map(|measure| measure.label);
    short(found.unwrap_or(id))
}

fn tool_checked(build: &Build, one: &ToolChecked) -> String {
    let how = match one.outcome {
        Outcome::Good => "reads right",
        Outcome::Bad => "does not read right",
    };
    let tool = tool_name(build, one.tool);
    format!("The {tool} {how}{}", and(one.words.as_deref()))
}

fn tool_tried(build: &Build, one: &ToolTried) -> String {
    let tool = tool_name(build, one.tool);
    let readings: Vec<&str> = one.readings.iter().map(String::as_str).collect();
    format!(
        "The {tool} tried out{}: {} {}",
        and(one.words.as_deref()),
        short(&readings.join(", ")),
        short(&one.unit)
    )
}

fn warmth_settled(build: &Build, one: &WarmthSettled) -> String {
    let done = match one.answer {
        WarmthAnswer::ToReference => "brought to 20 °C",
        WarmthAnswer::AsRead => "left as they were read, cold or warm",
    };
    format!("Readings for {} {done}", measure_name(build, &one.measure))
}

fn photo(build: &Build, one: &Photo) -> String {
    let step = one.step.as_deref();
    let step = step.map(|step| format!(", {}", step_name(build, step)));
    format!(
        "Photo{}{}{}",
        step.unwrap_or_default(),
        at(one.place.as_ref()),
        and(one.words.as_deref())
    )
}

fn part_listed(one: &PartListed) -> String {
    let size = one.size.as_deref().map(|size| format!(", {}", short(size)));
    format!(
        "On the parts list: {}{}",
        short(&one.name),
        size.unwrap_or_default()
    )
}

fn part_name(build: &Build, id: PartId) -> String {
    let mut parts = build.bought.parts.iter();
    let found = parts.find(|part| part.listed.part == id);
    found.map_or_else(
        || "a part that is not on the list".to_owned(),
        |part| short(&part.listed.name),
    )
}

fn promised(day: Option<&str>) -> String {
    day.map(|day| format!(", promised for {}", short(day)))
        .unwrap_or_default()
}

fn part_moved(build: &Build, one: &PartMoved) -> String {
    let stage = match one.stage {
        PartStage::Wanted => "wanted",
        PartStage::Ordered => "ordered",
        PartStage::Here => "here",
        PartStage::Checked => "looked over and right",
        PartStage::Fitted => "fitted",
        PartStage::Returned => "gone back",
    };
    let (part, day) = (
        part_name(build, one.part),
        promised(one.promised.as_deref()),
    );
    format!("Part {stage}: {part}{day}{}", and(one.words.as_deref()))
}

fn work_name(build: &Build, id: WorkId) -> String {
    let mut works = build.bought.work.iter();
    let found = works.find(|work| work.ordered.work == id);
    found.map_or_else(
        || "work that is not on the order".to_owned(),
        |work| short(&work.ordered.what),
    )
}

fn wanted(build: &Build, one: &WorkWanted) -> String {
    let side = |text: &Option<String>| {
        text.as_deref()
            .map_or_else(|| "–".to_owned(), |text| with_unit(text, &one.unit))
    };
    format!(
        "Asked of the shop: {}{}, {} to {} ({})",
        measure_name(build, &one.measure),
        at(one.place.as_ref()),
        side(&one.low),
        side(&one.high),
        work_name(build, one.work)
    )
}

fn returned(build: &Build, one: &WorkReturned) -> String {
    format!(
        "The shop says: {}, {}, {}",
        with_unit(&one.typed, &one.unit),
        measure_name(build, &one.measure),
        spot(&one.place)
    )
}

fn work_moved(build: &Build, one: &WorkMoved) -> String {
    let stage = match one.stage {
        WorkStage::Sent => "at the shop",
        WorkStage::Back => "back",
        WorkStage::Accepted => "looked over and taken",
        WorkStage::Refused => "not as ordered",
    };
    let (work, day) = (
        work_name(build, one.work),
        promised(one.promised.as_deref()),
    );
    format!(
        "Machine work {stage}: {work}{day}{}",
        and(one.words.as_deref())
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::{BuildId, Journal, ToolId, fold};

    fn said(body: &Body) -> String {
        of(body, &fold(&Journal::new(BuildId::from_random(1)))).unwrap()
    }

    #[test]
    fn a_bad_zero_says_by_how_much() {
        let zero = Body::ToolChecked(ToolChecked {
            tool: ToolId::from_random(1),
            outcome: Outcome::Bad,
            words: Some("two tenths on the one-inch standard".to_owned()),
        });
        assert!(said(&zero).contains("does not read right: two tenths"));
    }

    #[test]
    fn numbers_of_the_shop_name_their_measure_and_place() {
        let place = Spot::Known(build_plan::Place::of(build_plan::At::Cylinder(3)));
        let back = Body::WorkReturned(WorkReturned {
            work: WorkId::from_random(1),
            measure: "bore".to_owned(),
            place: place.clone(),
            typed: "2.4503".to_owned(),
            unit: "in".to_owned(),
        });
        assert_eq!(
            said(&back),
            "The shop says: 2.4503 in, cylinder bore, cylinder 3"
        );
        let wanted = Body::WorkWanted(WorkWanted {
            work: WorkId::from_random(1),
            measure: "no-such-measure".to_owned(),
            place: None,
            low: None,
            high: Some("2 thou".to_owned()),
            unit: "in".to_owned(),
        });
        assert!(said(&wanted).contains("no-such-measure, – to 2 thou"));
    }

    #[test]
    fn a_photo_says_what_it_shows_and_where() {
        let photo = Body::Photo(Photo {
            hash: "ab".repeat(32),
            media: "image/jpeg".to_owned(),
            bytes: 1,
            step: Some("crank-in".to_owned()),
            place: Some(Spot::Known(build_plan::Place::main(2))),
            words: None,
        });
        assert!(said(&photo).ends_with(", main 2"), "{}", said(&photo));
        assert!(said(&photo).starts_with("Photo, "));
    }
}
