//! The kinds of what was done, added, bought and given out, in JSON.

use super::body::{Body, Spot};
use super::bought::{PartListed, PartMoved, WorkMoved, WorkOrdered, WorkReturned, WorkWanted};
use super::doings::{
    CheckMade, EventHappened, Photo, ReadingsStand, ResultName, StepMarked, ToolChecked, ToolTried,
    Waived, WarmthSettled,
};
use super::fields::Fields;
use super::kinds::{A_MEASURE, A_TOOL, A_UNIT, AS_TYPED};
use super::own::{OwnMeasure, OwnStep};
use super::place::{A_PLACE, read_spot, read_spots, write_spot, write_spots};
use super::placing_kinds;
use super::sizes;
use super::tightening_kinds;
use super::unreadable::Unreadable;
use super::words::{Danger, Mark, Outcome, PartStage, Sort, WarmthAnswer, WorkStage};
use super::write::Line;
use crate::id::{OwnId, PartId, ToolId, WorkId};

const A_STEP: &str = "the id of a step, such as crank-in";
pub(super) const WORDS: &str = "words, as text";
pub(super) const IDS: &str = "a list of ids, as text";
pub(super) const AN_OWN: &str = "an id of the builder's own, a UUID";
const A_PART: &str = "the id of a part on the list, a UUID";
const A_WORK: &str = "the id of machine work, a UUID";
const A_DAY: &str = "a day, such as 2026-12-04";

/// The body of one of these kinds; `None` when it is none of them.
pub(super) fn read(kind: &str, fields: &Fields) -> Option<Result<Body, Unreadable>> {
    Some(match kind {
        "step-marked" => read_step(fields),
        "check-made" => read_check(fields),
        "event-happened" => read_event(fields),
        "waived" => read_waived(fields),
        "tool-checked" => read_tool_checked(fields),
        "readings-stand" => read_readings_stand(fields),
        "tool-tried" => read_tool_tried(fields),
        "warmth-settled" => read_warmth_settled(fields),
        "photo-taken" => read_photo(fields),
        "own-measure" => read_own_measure(fields),
        "own-step" => read_own_step(fields),
        "part-listed" => read_part(fields),
        "part-moved" => read_part_moved(fields),
        "work-ordered" => read_work(fields),
        "work-wanted" => read_wanted(fields),
        "work-returned" => read_returned(fields),
        "work-moved" => read_work_moved(fields),
        _ => {
            return tightening_kinds::read(kind, fields)
                .or_else(|| placing_kinds::read(kind, fields))
                .or_else(|| sizes::read(kind, fields));
        }
    })
}

/// Writes kind and fields of one of these; others are left to the caller.
pub(super) fn write(line: Line, body: &Body) -> Line {
    match body {
        Body::StepMarked(made) => {
            let line = line.text("kind", "step-marked").text("step", &made.step);
            write_spot(line, made.place.as_ref())
                .text("mark", made.mark.id())
                .optional_text("words", made.words.as_deref())
        }
        Body::CheckMade(made) => {
            let line = line.text("kind", "check-made").text("check", &made.check);
            write_spot(line, made.place.as_ref())
                .text("outcome", made.outcome.id())
                .optional_text("words", made.words.as_deref())
                .optional_text("lasts", made.lasts.as_deref())
        }
        Body::EventHappened(made) => {
            let line = line.text("kind", "event-happened");
            write_spots(line.text("event", &made.event), &made.places)
                .optional_text("words", made.words.as_deref())
        }
        Body::Waived(made) => {
            let line = line.text("kind", "waived");
            let line = line.text(made.result.sort.id(), &made.result.id);
            write_spot(line, made.place.as_ref()).text("reason", &made.reason)
        }
        Body::ToolChecked(made) => line
            .text("kind", "tool-checked")
            .id("tool", made.tool)
            .text("outcome", made.outcome.id())
            .optional_text("words", made.words.as_deref()),
        Body::ReadingsStand(made) => line
            .text("kind", "readings-stand")
            .facts("readings", &made.readings)
            .optional_text("words", made.words.as_deref()),
        Body::ToolTried(made) => line
            .text("kind", "tool-tried")
            .id("tool", made.tool)
            .texts("readings", &made.readings)
            .text("unit", &made.unit)
            .optional_text("words", made.words.as_deref()),
        Body::WarmthSettled(made) => line
            .text("kind", "warmth-settled")
            .text("measure", &made.measure)
            .text("answer", made.answer.id()),
        Body::Photo(made) => {
            let line = line
                .text("kind", "photo-taken")
                .text("hash", &made.hash)
                .text("media", &made.media)
                .whole("bytes", i64::from(made.bytes))
                .optional_text("step", made.step.as_deref());
            write_spot(line, made.place.as_ref()).optional_text("words", made.words.as_deref())
        }
        Body::OwnMeasure(made) => write_own_measure(line, made),
        Body::OwnStep(made) => write_own_step(line, made),
        Body::PartListed(made) => write_part(line, made),
        Body::PartMoved(made) => line
            .text("kind", "part-moved")
            .id("part", made.part)
            .text("stage", made.stage.id())
            .optional_text("promised", made.promised.as_deref())
            .optional_text("words", made.words.as_deref()),
        Body::WorkOrdered(made) => line
            .text("kind", "work-ordered")
            .id("work", made.work)
            .text("what", &made.what)
            .optional_text("step", made.step.as_deref())
            .optional_text("shop", made.shop.as_deref())
            .optional_text("brought", made.brought.as_deref())
            .optional_text("leave_alone", made.leave_alone.as_deref())
            .optional_text("conditions", made.conditions.as_deref())
            .optional_text("price", made.price.as_deref()),
        Body::WorkWanted(made) => {
            let line = line.text("kind", "work-wanted").id("work", made.work);
            write_spot(line.text("measure", &made.measure), made.place.as_ref())
                .optional_text("low", made.low.as_deref())
                .optional_text("high", made.high.as_deref())
                .text("unit", &made.unit)
        }
        Body::WorkReturned(made) => {
            let line = line.text("kind", "work-returned").id("work", made.work);
            write_spot(line.text("measure", &made.measure), Some(&made.place))
                .text("typed", &made.typed)
                .text("unit", &made.unit)
        }
        Body::WorkMoved(made) => line
            .text("kind", "work-moved")
            .id("work", made.work)
            .text("stage", made.stage.id())
            .optional_text("promised", made.promised.as_deref())
            .optional_text("words", made.words.as_deref()),
        Body::PartOnBench(_) | Body::PartsPlaced(_) => placing_kinds::write(line, body),
        Body::SizesListed(made) => sizes::write(line, made),
        _ => tightening_kinds::write(line, body),
    }
}

fn words(fields: &Fields) -> Result<Option<String>, Unreadable> {
    fields.optional_text("words", WORDS)
}

fn a_place(fields: &Fields) -> Result<Spot, Unreadable> {
    read_spot(fields)?.ok_or(Unreadable::Missing {
        field: "place",
        wanted: A_PLACE,
    })
}

fn read_step(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::StepMarked(StepMarked {
        step: fields.text("step", A_STEP)?,
        place: read_spot(fields)?,
        mark: fields.word("mark", Mark::NAMES, Mark::from_id)?,
        words: words(fields)?,
    }))
}

fn read_check(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::CheckMade(CheckMade {
        check: fields.text("check", "the id of a check, such as primed")?,
        place: read_spot(fields)?,
        outcome: fields.word("outcome", Outcome::NAMES, Outcome::from_id)?,
        words: words(fields)?,
        lasts: fields.optional_text("lasts", "a time as typed, such as 10 min")?,
    }))
}

fn read_event(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::EventHappened(EventHappened {
        event: fields.text("event", "the id of an event, such as bores-honed")?,
        places: read_spots(fields)?,
        words: words(fields)?,
    }))
}

fn read_waived(fields: &Fields) -> Result<Body, Unreadable> {
    let sort = Sort::ALL
        .iter()
        .find(|sort| fields.json(sort.id()).is_some());
    let sort = *sort.ok_or(Unreadable::Missing {
        field: "measure",
        wanted: Sort::NAMES,
    })?;
    Ok(Body::Waived(Waived {
        result: ResultName {
            sort,
            id: fields.text(sort.id(), Sort::NAMES)?,
        },
        place: read_spot(fields)?,
        reason: fields.text("reason", "why, as text")?,
    }))
}

fn read_tool_checked(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::ToolChecked(ToolChecked {
        tool: fields.id("tool", A_TOOL, ToolId::parse)?,
        outcome: fields.word("outcome", Outcome::NAMES, Outcome::from_id)?,
        words: words(fields)?,
    }))
}

fn read_readings_stand(fields: &Fields) -> Result<Body, Unreadable> {
    const READINGS: &str = "a list of ids of readings";
    if fields.json("readings").is_none() {
        return Err(Unreadable::Missing {
            field: "readings",
            wanted: READINGS,
        });
    }
    Ok(Body::ReadingsStand(ReadingsStand {
        readings: fields.facts("readings", READINGS)?,
        words: words(fields)?,
    }))
}

fn read_tool_tried(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::ToolTried(ToolTried {
        tool: fields.id("tool", A_TOOL, ToolId::parse)?,
        readings: fields.texts("readings", "a list of readings, each as it was typed")?,
        unit: fields.text("unit", A_UNIT)?,
        words: words(fields)?,
    }))
}

fn read_warmth_settled(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::WarmthSettled(WarmthSettled {
        measure: fields.text("measure", A_MEASURE)?,
        answer: fields.word("answer", WarmthAnswer::NAMES, WarmthAnswer::from_id)?,
    }))
}

fn read_photo(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::Photo(Photo {
        hash: fields.text("hash", "the SHA-256 of the picture, 64 hexadecimal digits")?,
        media: fields.text("media", "the sort of picture, such as image/jpeg")?,
        bytes: fields.count("bytes", "how many bytes it has")?,
        step: fields.optional_text("step", A_STEP)?,
        place: read_spot(fields)?,
        words: words(fields)?,
    }))
}

fn read_own_measure(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::OwnMeasure(OwnMeasure {
        own: fields.id("own", AN_OWN, OwnId::parse)?,
        label: fields.text("label", WORDS)?,
        unit: fields.text("unit", A_UNIT)?,
        per: fields.optional_text("per", "a sort of part, such as cylinder")?,
        danger: fields.optional_word("danger", Danger::NAMES, Danger::from_id)?,
        how: fields.optional_text("how", WORDS)?,
        stale_with: fields.texts("stale_with", IDS)?,
    }))
}

fn write_own_measure(line: Line, made: &OwnMeasure) -> Line {
    line.text("kind", "own-measure")
        .id("own", made.own)
        .text("label", &made.label)
        .text("unit", &made.unit)
        .optional_text("per", made.per.as_deref())
        .optional_text("danger", made.danger.map(Danger::id))
        .optional_text("how", made.how.as_deref())
        .texts("stale_with", &made.stale_with)
}

fn read_own_step(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::OwnStep(OwnStep {
        own: fields.id("own", AN_OWN, OwnId::parse)?,
        label: fields.text("label", WORDS)?,
        per: fields.optional_text("per", "a sort of part, such as cylinder")?,
        after: fields.texts("after", IDS)?,
        before: fields.texts("before", IDS)?,
        proves: fields.texts("proves", IDS)?,
        minutes: fields.optional_count("minutes", "how many minutes it takes")?,
        in_one_go: fields.optional_text("in_one_go", WORDS)?,
        caution: fields.optional_text("caution", WORDS)?,
        stale_with: fields.texts("stale_with", IDS)?,
    }))
}

fn write_own_step(line: Line, made: &OwnStep) -> Line {
    let line = line
        .text("kind", "own-step")
        .id("own", made.own)
        .text("label", &made.label)
        .optional_text("per", made.per.as_deref())
        .texts("after", &made.after)
        .texts("before", &made.before)
        .texts("proves", &made.proves);
    let line = match made.minutes {
        Some(minutes) => line.whole("minutes", i64::from(minutes)),
        None => line,
    };
    line.optional_text("in_one_go", made.in_one_go.as_deref())
        .optional_text("caution", made.caution.as_deref())
        .texts("stale_with", &made.stale_with)
}

fn read_part(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::PartListed(PartListed {
        part: fields.id("part", A_PART, PartId::parse)?,
        name: fields.text("name", WORDS)?,
        supply: fields.optional_text("supply", "the id of a supply, such as pistons")?,
        place: read_spot(fields)?,
        size: fields.optional_text("size", AS_TYPED)?,
        quantity: fields.optional_text("quantity", AS_TYPED)?,
        supplier: fields.optional_text("supplier", WORDS)?,
        price: fields.optional_text("price", AS_TYPED)?,
        lot: fields.optional_text("lot", AS_TYPED)?,
    }))
}

fn write_part(line: Line, made: &PartListed) -> Line {
    let line = line
        .text("kind", "part-listed")
        .id("part", made.part)
        .text("name", &made.name)
        .optional_text("supply", made.supply.as_deref());
    write_spot(line, made.place.as_ref())
        .optional_text("size", made.size.as_deref())
        .optional_text("quantity", made.quantity.as_deref())
        .optional_text("supplier", made.supplier.as_deref())
        .optional_text("price", made.price.as_deref())
        .optional_text("lot", made.lot.as_deref())
}

fn read_part_moved(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::PartMoved(PartMoved {
        part: fields.id("part", A_PART, PartId::parse)?,
        stage: fields.word("stage", PartStage::NAMES, PartStage::from_id)?,
        promised: fields.optional_text("promised", A_DAY)?,
        words: words(fields)?,
    }))
}

fn read_work(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::WorkOrdered(WorkOrdered {
        work: fields.id("work", A_WORK, WorkId::parse)?,
        what: fields.text("what", WORDS)?,
        step: fields.optional_text("step", A_STEP)?,
        shop: fields.optional_text("shop", WORDS)?,
        brought: fields.optional_text("brought", WORDS)?,
        leave_alone: fields.optional_text("leave_alone", WORDS)?,
        conditions: fields.optional_text("conditions", WORDS)?,
        price: fields.optional_text("price", AS_TYPED)?,
    }))
}

fn read_wanted(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::WorkWanted(WorkWanted {
        work: fields.id("work", A_WORK, WorkId::parse)?,
        measure: fields.text("measure", A_MEASURE)?,
        place: read_spot(fields)?,
        low: fields.optional_text("low", AS_TYPED)?,
        high: fields.optional_text("high", AS_TYPED)?,
        unit: fields.text("unit", A_UNIT)?,
    }))
}

fn read_returned(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::WorkReturned(WorkReturned {
        work: fields.id("work", A_WORK, WorkId::parse)?,
        measure: fields.text("measure", A_MEASURE)?,
        place: a_place(fields)?,
        typed: fields.text("typed", AS_TYPED)?,
        unit: fields.text("unit", A_UNIT)?,
    }))
}

fn read_work_moved(fields: &Fields) -> Result<Body, Unreadable> {
    Ok(Body::WorkMoved(WorkMoved {
        work: fields.id("work", A_WORK, WorkId::parse)?,
        stage: fields.word("stage", WorkStage::NAMES, WorkStage::from_id)?,
        promised: fields.optional_text("promised", A_DAY)?,
        words: words(fields)?,
    }))
}
