//! The kinds of fact in JSON: reading and writing, side by side.

use assembly_core::fit::running_clearance::NeedleSense;

use super::body::{
    Body, EngineDescribed, LimitsOrigin, LimitsSet, Note, Reading, SetOn, Struck, ToolListed,
    ToolSet,
};
use super::fields::Fields;
use super::more_kinds;
use super::oil;
use super::place::{A_PLACE, read_spot, write_spot};
use super::unreadable::Unreadable;
use super::write::Line;
use crate::id::{FactId, SettingId, ToolId};

pub(super) const A_MEASURE: &str = "the id of a measure, such as main-journal-diameter";
pub(super) const A_UNIT: &str = "the symbol of a unit, such as in";
pub(super) const A_TOOL: &str = "the id of a tool, a UUID";
pub(super) const A_FACT: &str = "the id of a fact, a UUID of version 7";
const A_SETTING: &str = "the id of a setting, a UUID";
pub(super) const AS_TYPED: &str = "what was typed, as text";

/// The body of a kind; `None` when this version does not know the kind.
pub(super) fn read(kind: &str, fields: &Fields) -> Option<Result<Body, Unreadable>> {
    Some(match kind {
        "engine-described" => read_engine(fields).map(Body::EngineDescribed),
        "tool-listed" => read_tool_listed(fields).map(Body::ToolListed),
        "tool-set" => read_tool_set(fields).map(Body::ToolSet),
        "reading" => read_reading(fields).map(|reading| Body::Reading(reading.into())),
        "limits-set" => read_limits(fields).map(Body::LimitsSet),
        "struck" => read_struck(fields).map(Body::Struck),
        "note" => read_note(fields).map(Body::Note),
        _ => return more_kinds::read(kind, fields).or_else(|| oil::read(kind, fields)),
    })
}

/// Writes kind and fields.
pub(super) fn write(line: Line, body: &Body) -> Line {
    match body {
        Body::EngineDescribed(engine) => {
            write_engine(line.text("kind", "engine-described"), engine)
        }
        Body::ToolListed(tool) => write_tool_listed(line.text("kind", "tool-listed"), tool),
        Body::ToolSet(set) => write_tool_set(line.text("kind", "tool-set"), set),
        Body::Reading(reading) => write_reading(line.text("kind", "reading"), reading),
        Body::LimitsSet(limits) => write_limits(line.text("kind", "limits-set"), limits),
        Body::Struck(struck) => write_struck(line.text("kind", "struck"), struck),
        Body::Note(note) => write_note(line.text("kind", "note"), note),
        Body::Unknown(unknown) => line.text("kind", unknown.kind()),
        Body::Unreadable(unreadable) => line.text("kind", unreadable.kind()),
        _ => oil::write(more_kinds::write(line, body), body),
    }
}

fn read_engine(fields: &Fields) -> Result<EngineDescribed, Unreadable> {
    const AN_ENGINE: &str = "the description of an engine";
    let Some(json) = fields.json("engine") else {
        return Err(Unreadable::Missing {
            field: "engine",
            wanted: AN_ENGINE,
        });
    };
    let engine = Fields::read(json)?;
    Ok(EngineDescribed {
        name: engine.text("name", "the engine's name, as text")?,
        cylinders: engine.count("cylinders", "the number of cylinders")?,
        layout: engine.text("layout", "inline, vee or flat")?,
        bank_angle: engine.optional_text("bank_angle", "the angle as typed, such as 90°")?,
        mains: engine.optional_count("mains", "the number of main bearings")?,
        built: read_built(&engine),
    })
}

/// The fields of an engine that hold a word each.
const BUILT: &[&str] = &[
    "valve_gear",
    "cam_drive",
    "block",
    "heads",
    "liners",
    "rear_seal",
    "main_caps",
    "rods",
    "pins",
    "pump_drive",
    "ignition",
    "crankcase",
    "numbering",
    "intake_valves",
    "exhaust_valves",
];

/// What is no text there is kept as it stands: a later version may have put
/// more into it, and the rest of the engine still counts.
fn read_built(engine: &Fields) -> Vec<(&'static str, String)> {
    BUILT
        .iter()
        .filter_map(|field| {
            let json = engine.json(field)?;
            let word = engine.text(field, "").unwrap_or_else(|_| json.to_owned());
            Some((*field, word))
        })
        .collect()
}

fn write_engine(line: Line, engine: &EngineDescribed) -> Line {
    let mut inner = Line::new()
        .text("name", &engine.name)
        .whole("cylinders", i64::from(engine.cylinders))
        .text("layout", &engine.layout)
        .optional_text("bank_angle", engine.bank_angle.as_deref());
    if let Some(mains) = engine.mains {
        inner = inner.whole("mains", i64::from(mains));
    }
    for (field, word) in &engine.built {
        inner = inner.text(field, word);
    }
    line.json("engine", &inner.end())
}

fn read_tool_listed(fields: &Fields) -> Result<ToolListed, Unreadable> {
    Ok(ToolListed {
        tool: fields.id("tool", A_TOOL, ToolId::parse)?,
        name: fields.text("name", "the tool's name, as text")?,
        instrument: fields.text("instrument", "the id of a sort of instrument")?,
        mark: fields.optional_text("mark", "what tells it from others, as text")?,
    })
}

fn write_tool_listed(line: Line, tool: &ToolListed) -> Line {
    line.id("tool", tool.tool)
        .text("name", &tool.name)
        .text("instrument", &tool.instrument)
        .optional_text("mark", tool.mark.as_deref())
}

const ON_A_STANDARD: &str = "standard";

fn read_tool_set(fields: &Fields) -> Result<ToolSet, Unreadable> {
    const SET_ON: &str = "standard, or the id of the tool it was set in";
    let set_on = fields.id("set_on", SET_ON, |text| {
        if text == ON_A_STANDARD {
            Ok(SetOn::Standard)
        } else {
            ToolId::parse(text).map(SetOn::Tool)
        }
    })?;
    Ok(ToolSet {
        tool: fields.id("tool", A_TOOL, ToolId::parse)?,
        setting: fields.id("setting", A_SETTING, SettingId::parse)?,
        set_on,
        set_at: fields.optional_text("set_at", AS_TYPED)?,
        unit: fields.optional_text("unit", A_UNIT)?,
        locked_at: fields.optional_id("locked_at", A_FACT, FactId::parse)?,
        needle: fields.optional_id("needle", NEEDLE, |text| needle(text).ok_or(()))?,
    })
}

const NEEDLE: &str = "clockwise-smaller or clockwise-larger";
const NEEDLES: [(&str, NeedleSense); 2] = [
    ("clockwise-smaller", NeedleSense::ClockwiseIsSmaller),
    ("clockwise-larger", NeedleSense::ClockwiseIsLarger),
];

fn needle(text: &str) -> Option<NeedleSense> {
    NEEDLES
        .iter()
        .find_map(|(id, sense)| (*id == text).then_some(*sense))
}

fn needle_id(sense: NeedleSense) -> Option<&'static str> {
    NEEDLES
        .iter()
        .find_map(|(id, one)| (*one == sense).then_some(*id))
}

fn write_tool_set(line: Line, set: &ToolSet) -> Line {
    let line = line.id("tool", set.tool).id("setting", set.setting);
    let line = match set.set_on {
        SetOn::Standard => line.text("set_on", ON_A_STANDARD),
        SetOn::Tool(tool) => line.id("set_on", tool),
    };
    line.optional_text("set_at", set.set_at.as_deref())
        .optional_text("unit", set.unit.as_deref())
        .optional_id("locked_at", set.locked_at)
        .optional_text("needle", set.needle.and_then(needle_id))
}

fn read_reading(fields: &Fields) -> Result<Reading, Unreadable> {
    Ok(Reading {
        measure: fields.text("measure", A_MEASURE)?,
        place: read_spot(fields)?.ok_or(Unreadable::Missing {
            field: "place",
            wanted: A_PLACE,
        })?,
        typed: fields.text("typed", AS_TYPED)?,
        unit: fields.text("unit", A_UNIT)?,
        tool: fields.optional_id("tool", A_TOOL, ToolId::parse)?,
        setting: fields.optional_id("setting", A_SETTING, SettingId::parse)?,
        temperature: fields.optional_text("temperature", "a temperature as typed")?,
        condition: fields.optional_text("condition", "what was bolted on, as text")?,
        keyed: fields.optional_text("keyed", "the digits that were typed, as text")?,
    })
}

fn write_reading(line: Line, reading: &Reading) -> Line {
    let line = line.text("measure", &reading.measure);
    write_spot(line, Some(&reading.place))
        .text("typed", &reading.typed)
        .text("unit", &reading.unit)
        .optional_id("tool", reading.tool)
        .optional_id("setting", reading.setting)
        .optional_text("temperature", reading.temperature.as_deref())
        .optional_text("condition", reading.condition.as_deref())
        .optional_text("keyed", reading.keyed.as_deref())
}

fn read_limits(fields: &Fields) -> Result<LimitsSet, Unreadable> {
    Ok(LimitsSet {
        measure: fields.text("measure", A_MEASURE)?,
        place: read_spot(fields)?,
        low: fields.optional_text("low", AS_TYPED)?,
        high: fields.optional_text("high", AS_TYPED)?,
        unit: fields.text("unit", A_UNIT)?,
        origin: read_origin(fields)?,
        origin_note: fields.text("origin_note", "which sheet, as text")?,
        replaces: fields.facts("replaces", "a list of ids of facts")?,
    })
}

const ORIGINS: [(&str, LimitsOrigin); 3] = [
    ("sheet", LimitsOrigin::Sheet),
    ("part-sheet", LimitsOrigin::PartSheet),
    ("own-choice", LimitsOrigin::OwnChoice),
];

/// The field that says where limits or sizes come from.
pub(super) fn read_origin(fields: &Fields) -> Result<LimitsOrigin, Unreadable> {
    const ORIGIN: &str = "sheet, part-sheet or own-choice";
    fields.id("origin", ORIGIN, |text| origin(text).ok_or(()))
}

fn origin(text: &str) -> Option<LimitsOrigin> {
    ORIGINS
        .iter()
        .find_map(|(id, origin)| (*id == text).then_some(*origin))
}

impl LimitsOrigin {
    /// Stable name.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::PartSheet => "part-sheet",
            Self::OwnChoice => "own-choice",
        }
    }
}

fn write_limits(line: Line, limits: &LimitsSet) -> Line {
    let line = line.text("measure", &limits.measure);
    let line = write_spot(line, limits.place.as_ref())
        .optional_text("low", limits.low.as_deref())
        .optional_text("high", limits.high.as_deref())
        .text("unit", &limits.unit)
        .text("origin", limits.origin.id())
        .text("origin_note", &limits.origin_note);
    if limits.replaces.is_empty() {
        return line;
    }
    line.facts("replaces", &limits.replaces)
}

fn read_struck(fields: &Fields) -> Result<Struck, Unreadable> {
    Ok(Struck {
        fact: fields.id(
            "fact",
            "the id of a fact, a UUID of version 7",
            FactId::parse,
        )?,
        reason: fields.optional_text("reason", "why, as text")?,
    })
}

fn write_struck(line: Line, struck: &Struck) -> Line {
    line.id("fact", struck.fact)
        .optional_text("reason", struck.reason.as_deref())
}

fn read_note(fields: &Fields) -> Result<Note, Unreadable> {
    Ok(Note {
        text: fields.text("text", "the note, as text")?,
        place: read_spot(fields)?,
        step: fields.optional_text("step", "the id of a step, as text")?,
    })
}

fn write_note(line: Line, note: &Note) -> Line {
    write_spot(line.text("text", &note.text), note.place.as_ref())
        .optional_text("step", note.step.as_deref())
}
