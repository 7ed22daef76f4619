//! Groups of fasteners and what happens in a tightening, in JSON: reading and
//! writing, side by side.

use super::body::Body;
use super::compact::compact;
use super::fasteners::{
    Adapter, BoltLayout, FastenerGroup, FastenerSheet, Origin, StageWrench, Wrench, WrenchListed,
};
use super::fields::Fields;
use super::kinds::{A_FACT, A_TOOL, A_UNIT, AS_TYPED};
use super::more_kinds::{AN_OWN, IDS, WORDS};
use super::place::{read_spot, write_spot};
use super::tightening::{
    BoltCompared, BoltMeasured, BoltPulled, BoltState, BoltsRenewed, JointClosed, Knew, RunBegun,
    RunMark, RunMarked, RunOpened, SealantPutOn, Way,
};
use super::unreadable::Unreadable;
use super::words::Outcome;
use super::write::Line;
use crate::id::{FactId, OwnId, SittingId, ToolId};

const A_SITTING: &str = "the id of a sitting, a UUID";
const A_BOLT: &str = "a bolt, counted from 1";
const A_LAP: &str = "a lap, counted from 1";
const BOLTS: &str = "a list of bolts, counted from 1";
const A_STAGE: &str = "a stage, counted from 1";
const STAGE_WRENCHES: &str = "a list of stages with their wrenches";
const PLACES: &str = "a list of places, each two whole numbers";
const A_TIME: &str = "a time as typed, such as 10 min";

/// The body of one of these kinds; `None` when it is none of them.
pub(super) fn read(kind: &str, fields: &Fields) -> Option<Result<Body, Unreadable>> {
    Some(match kind {
        "fastener-group" => read_group(fields).map(Body::FastenerGroup),
        "run-begun" => read_begun(fields).map(Body::RunBegun),
        "run-opened" => read_opened(fields).map(Body::RunOpened),
        "bolt-pulled" => read_pulled(fields).map(Body::BoltPulled),
        "run-marked" => read_marked(fields).map(Body::RunMarked),
        "bolts-renewed" => read_renewed(fields).map(Body::BoltsRenewed),
        "bolt-measured" => read_measured(fields).map(Body::BoltMeasured),
        "bolt-compared" => read_compared(fields).map(Body::BoltCompared),
        "sealant-put-on" => read_sealant(fields).map(Body::SealantPutOn),
        "wrench-listed" => read_wrench_listed(fields).map(Body::WrenchListed),
        "joint-closed" => read_closed(fields).map(Body::JointClosed),
        _ => return None,
    })
}

/// Writes kind and fields of one of these; others are left to the caller.
pub(super) fn write(line: Line, body: &Body) -> Line {
    match body {
        Body::FastenerGroup(made) => write_group(line.text("kind", "fastener-group"), made),
        Body::RunBegun(made) => {
            let line = line.text("kind", "run-begun").id("group", made.group);
            write_spot(line, made.place.as_ref())
                .id("sheet", made.sheet)
                .text("way", made.way.id())
                .id("sitting", made.sitting)
        }
        Body::RunOpened(made) => line
            .text("kind", "run-opened")
            .id("run", made.run)
            .id("sitting", made.sitting),
        Body::BoltPulled(made) => line
            .text("kind", "bolt-pulled")
            .id("run", made.run)
            .whole("bolt", i64::from(made.bolt))
            .whole("lap", i64::from(made.lap))
            .id("sitting", made.sitting),
        Body::RunMarked(made) => line
            .text("kind", "run-marked")
            .id("run", made.run)
            .text("mark", made.mark.id())
            .optional_count("bolt", made.bolt)
            .optional_count("lap", made.lap)
            .optional_text("knew", made.knew.map(Knew::id))
            .optional_text("words", made.words.as_deref()),
        Body::BoltsRenewed(made) => {
            let line = line.text("kind", "bolts-renewed").id("group", made.group);
            write_spot(line, made.place.as_ref())
                .counts("bolts", &made.bolts)
                .optional_text("lot", made.lot.as_deref())
        }
        Body::BoltMeasured(made) => {
            let line = line.text("kind", "bolt-measured").id("group", made.group);
            write_spot(line, made.place.as_ref())
                .whole("bolt", i64::from(made.bolt))
                .text("state", made.state.id())
                .text("typed", &made.typed)
                .text("unit", &made.unit)
                .optional_id("tool", made.tool)
        }
        Body::BoltCompared(made) => {
            let line = line.text("kind", "bolt-compared").id("group", made.group);
            write_spot(line, made.place.as_ref())
                .whole("bolt", i64::from(made.bolt))
                .text("outcome", made.outcome.id())
                .optional_text("words", made.words.as_deref())
        }
        Body::SealantPutOn(made) => {
            let line = line.text("kind", "sealant-put-on").id("group", made.group);
            write_spot(line, made.place.as_ref())
                .optional_text("what", made.what.as_deref())
                .text("close_by", &made.close_by)
                .optional_text("torque_from", made.torque_from.as_deref())
                .optional_text("oil_from", made.oil_from.as_deref())
        }
        Body::JointClosed(made) => line
            .text("kind", "joint-closed")
            .id("sealant", made.sealant),
        Body::WrenchListed(made) => {
            let line = line.text("kind", "wrench-listed").id("tool", made.tool);
            line.json("wrench", &wrench_fields(Line::new(), &made.wrench).end())
        }
        _ => line,
    }
}

fn run(fields: &Fields) -> Result<FactId, Unreadable> {
    fields.id("run", A_FACT, FactId::parse)
}

fn group(fields: &Fields) -> Result<OwnId, Unreadable> {
    fields.id("group", AN_OWN, OwnId::parse)
}

fn sitting(fields: &Fields) -> Result<SittingId, Unreadable> {
    fields.id("sitting", A_SITTING, SittingId::parse)
}

fn read_begun(fields: &Fields) -> Result<RunBegun, Unreadable> {
    Ok(RunBegun {
        group: group(fields)?,
        place: read_spot(fields)?,
        sheet: fields.id("sheet", A_FACT, FactId::parse)?,
        way: fields.word("way", Way::NAMES, Way::from_id)?,
        sitting: sitting(fields)?,
    })
}

fn read_opened(fields: &Fields) -> Result<RunOpened, Unreadable> {
    Ok(RunOpened {
        run: run(fields)?,
        sitting: sitting(fields)?,
    })
}

fn read_pulled(fields: &Fields) -> Result<BoltPulled, Unreadable> {
    Ok(BoltPulled {
        run: run(fields)?,
        bolt: fields.count("bolt", A_BOLT)?,
        lap: fields.count("lap", A_LAP)?,
        sitting: sitting(fields)?,
    })
}

fn read_marked(fields: &Fields) -> Result<RunMarked, Unreadable> {
    Ok(RunMarked {
        run: run(fields)?,
        mark: fields.word("mark", RunMark::NAMES, RunMark::from_id)?,
        bolt: fields.optional_count("bolt", A_BOLT)?,
        lap: fields.optional_count("lap", A_LAP)?,
        knew: fields.optional_word("knew", Knew::NAMES, Knew::from_id)?,
        words: fields.optional_text("words", WORDS)?,
    })
}

fn read_renewed(fields: &Fields) -> Result<BoltsRenewed, Unreadable> {
    Ok(BoltsRenewed {
        group: group(fields)?,
        place: read_spot(fields)?,
        bolts: fields.counts("bolts", BOLTS)?,
        lot: fields.optional_text("lot", AS_TYPED)?,
    })
}

fn read_measured(fields: &Fields) -> Result<BoltMeasured, Unreadable> {
    Ok(BoltMeasured {
        group: group(fields)?,
        place: read_spot(fields)?,
        bolt: fields.count("bolt", A_BOLT)?,
        state: fields.word("state", BoltState::NAMES, BoltState::from_id)?,
        typed: fields.text("typed", AS_TYPED)?,
        unit: fields.text("unit", A_UNIT)?,
        tool: fields.optional_id("tool", A_TOOL, ToolId::parse)?,
    })
}

fn read_compared(fields: &Fields) -> Result<BoltCompared, Unreadable> {
    Ok(BoltCompared {
        group: group(fields)?,
        place: read_spot(fields)?,
        bolt: fields.count("bolt", A_BOLT)?,
        outcome: fields.word("outcome", Outcome::NAMES, Outcome::from_id)?,
        words: fields.optional_text("words", WORDS)?,
    })
}

fn read_sealant(fields: &Fields) -> Result<SealantPutOn, Unreadable> {
    Ok(SealantPutOn {
        group: group(fields)?,
        place: read_spot(fields)?,
        what: fields.optional_text("what", WORDS)?,
        close_by: fields.text("close_by", A_TIME)?,
        torque_from: fields.optional_text("torque_from", A_TIME)?,
        oil_from: fields.optional_text("oil_from", A_TIME)?,
    })
}

fn read_closed(fields: &Fields) -> Result<JointClosed, Unreadable> {
    Ok(JointClosed {
        sealant: fields.id("sealant", A_FACT, FactId::parse)?,
    })
}

fn read_wrench_listed(fields: &Fields) -> Result<WrenchListed, Unreadable> {
    const A_WRENCH: &str = "a torque wrench with its scale";
    let missing = Unreadable::Missing {
        field: "wrench",
        wanted: A_WRENCH,
    };
    Ok(WrenchListed {
        tool: fields.id("tool", A_TOOL, ToolId::parse)?,
        wrench: read_wrench(fields.json("wrench").ok_or(missing)?)?,
    })
}

fn read_stage_wrench(json: &str) -> Result<StageWrench, Unreadable> {
    Ok(StageWrench {
        stage: Fields::read(json)?.count("stage", A_STAGE)?,
        wrench: read_wrench(json)?,
    })
}

fn read_group(fields: &Fields) -> Result<FastenerGroup, Unreadable> {
    Ok(FastenerGroup {
        own: fields.id("own", AN_OWN, OwnId::parse)?,
        label: fields.text("label", WORDS)?,
        per: fields.optional_text("per", "a sort of part, such as bank")?,
        bolts: fields.count("bolts", "how many bolts there are")?,
        size: fields.optional_text("size", AS_TYPED)?,
        lubricant: fields.optional_text("lubricant", WORDS)?,
        stages: fields.texts("stages", "the stages as typed, a list of texts")?,
        source: fields.optional_text("source", WORDS)?,
        stale_with: fields.texts("stale_with", IDS)?,
        sheet: Box::new(read_sheet(fields)?),
    })
}

fn read_sheet(fields: &Fields) -> Result<FastenerSheet, Unreadable> {
    let text = |name| fields.optional_text(name, AS_TYPED);
    let origin = |name| fields.optional_word(name, Origin::NAMES, Origin::from_id);
    Ok(FastenerSheet {
        holds: text("holds")?,
        fastener: text("fastener")?,
        thread: text("thread")?,
        length: text("length")?,
        under_head: text("under_head")?,
        wrench: fields.json("wrench").map(read_wrench).transpose()?,
        stage_wrenches: (fields.items("stage_wrenches", STAGE_WRENCHES)?.iter())
            .map(|one| read_stage_wrench(one.get()))
            .collect::<Result<_, _>>()?,
        adapter: fields.json("adapter").map(read_adapter).transpose()?,
        layout: fields.json("layout").map(read_layout),
        places: fields.pairs("places", PLACES)?,
        order: fields.counts("order", BOLTS)?,
        order_from: origin("order_from")?,
        stages_from: origin("stages_from")?,
        between: text("between")?,
        uses_allowed: fields.optional_count("uses_allowed", "how often a bolt may be used")?,
        stretch_low: text("stretch_low")?,
        stretch_high: text("stretch_high")?,
        set_at_most: text("set_at_most")?,
    })
}

fn read_wrench(json: &str) -> Result<Wrench, Unreadable> {
    let wrench = Fields::read(json)?;
    Ok(Wrench {
        name: wrench.optional_text("name", WORDS)?,
        low: wrench.text("low", AS_TYPED)?,
        high: wrench.text("high", AS_TYPED)?,
        unit: wrench.text("unit", A_UNIT)?,
        step: wrench.optional_text("step", AS_TYPED)?,
        grip: wrench.optional_text("grip", AS_TYPED)?,
    })
}

fn read_adapter(json: &str) -> Result<Adapter, Unreadable> {
    let adapter = Fields::read(json)?;
    Ok(Adapter {
        wrench_length: adapter.text("wrench_length", AS_TYPED)?,
        length: adapter.text("length", AS_TYPED)?,
        turned: adapter.text("turned", AS_TYPED)?,
    })
}

/// A layout that is not known here is kept: the bolts are counted all the same.
fn read_layout(json: &str) -> BoltLayout {
    let known = || {
        let layout = Fields::read(json).ok()?;
        if layout.only(&["rows"]) {
            let rows = layout.counts("rows", "bolts in each row").ok()?;
            return (!rows.is_empty()).then_some(BoltLayout::Rows(rows));
        }
        let circle = layout.only(&["circle"]);
        let count = layout.count("circle", "bolts on the circle").ok();
        count.filter(|_| circle).map(BoltLayout::Circle)
    };
    known().unwrap_or_else(|| BoltLayout::Unknown(compact(json).into()))
}

fn write_group(line: Line, made: &FastenerGroup) -> Line {
    let line = line
        .id("own", made.own)
        .text("label", &made.label)
        .optional_text("per", made.per.as_deref())
        .whole("bolts", i64::from(made.bolts))
        .optional_text("size", made.size.as_deref())
        .optional_text("lubricant", made.lubricant.as_deref())
        .texts("stages", &made.stages)
        .optional_text("source", made.source.as_deref())
        .texts("stale_with", &made.stale_with);
    write_sheet(line, &made.sheet)
}

fn wrench_fields(line: Line, wrench: &Wrench) -> Line {
    line.optional_text("name", wrench.name.as_deref())
        .text("low", &wrench.low)
        .text("high", &wrench.high)
        .text("unit", &wrench.unit)
        .optional_text("step", wrench.step.as_deref())
        .optional_text("grip", wrench.grip.as_deref())
}

fn write_sheet(line: Line, sheet: &FastenerSheet) -> Line {
    let mut line = line
        .optional_text("holds", sheet.holds.as_deref())
        .optional_text("fastener", sheet.fastener.as_deref())
        .optional_text("thread", sheet.thread.as_deref())
        .optional_text("length", sheet.length.as_deref())
        .optional_text("under_head", sheet.under_head.as_deref());
    if let Some(wrench) = &sheet.wrench {
        line = line.json("wrench", &wrench_fields(Line::new(), wrench).end());
    }
    let others = sheet.stage_wrenches.iter().map(|one| {
        let inner = Line::new().whole("stage", i64::from(one.stage));
        wrench_fields(inner, &one.wrench).end()
    });
    line = line.items("stage_wrenches", &others.collect::<Vec<_>>());
    if let Some(adapter) = &sheet.adapter {
        let inner = Line::new()
            .text("wrench_length", &adapter.wrench_length)
            .text("length", &adapter.length)
            .text("turned", &adapter.turned);
        line = line.json("adapter", &inner.end());
    }
    line = match &sheet.layout {
        None => line,
        Some(BoltLayout::Rows(rows)) => {
            line.json("layout", &Line::new().counts("rows", rows).end())
        }
        Some(BoltLayout::Circle(count)) => {
            let inner = Line::new().whole("circle", i64::from(*count));
            line.json("layout", &inner.end())
        }
        Some(BoltLayout::Unknown(json)) => line.json("layout", json),
    };
    line.pairs("places", &sheet.places)
        .counts("order", &sheet.order)
        .optional_text("order_from", sheet.order_from.map(Origin::id))
        .optional_text("stages_from", sheet.stages_from.map(Origin::id))
        .optional_text("between", sheet.between.as_deref())
        .optional_count("uses_allowed", sheet.uses_allowed)
        .optional_text("stretch_low", sheet.stretch_low.as_deref())
        .optional_text("stretch_high", sheet.stretch_high.as_deref())
        .optional_text("set_at_most", sheet.set_at_most.as_deref())
}
