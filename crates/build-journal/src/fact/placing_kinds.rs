//! Parts on the bench and what goes where, in JSON: reading and writing, side
//! by side.

use super::body::Body;
use super::fields::Fields;
use super::kinds::{A_TOOL, A_UNIT, AS_TYPED};
use super::place::{A_PLACE, read_spot, read_spot_in, write_spot, write_spot_in};
use super::placing::{BenchSide, PartOnBench, PartsPlaced, PlacedPart};
use super::unreadable::Unreadable;
use super::write::Line;
use crate::id::{PartId, SettingId, ToolId};

const A_CHOICE: &str = "the id of a choice, such as main-shells";
const A_PART: &str = "the id of a part on the bench, a UUID";
const PARTS: &str = "a list of ids of parts on the bench, UUIDs";
const PLACED: &str = "a list of what goes where";

/// The body of one of these kinds; `None` when it is none of them.
pub(super) fn read(kind: &str, fields: &Fields) -> Option<Result<Body, Unreadable>> {
    Some(match kind {
        "part-on-bench" => read_on_bench(fields).map(Body::PartOnBench),
        "parts-placed" => read_placed(fields).map(Body::PartsPlaced),
        _ => return None,
    })
}

/// Writes kind and fields of one of these; others are left to the caller.
pub(super) fn write(line: Line, body: &Body) -> Line {
    match body {
        Body::PartOnBench(made) => write_on_bench(line.text("kind", "part-on-bench"), made),
        Body::PartsPlaced(made) => {
            let placed: Vec<String> = made.placed.iter().map(json_of).collect();
            line.text("kind", "parts-placed")
                .text("choice", &made.choice)
                .json("placed", &format!("[{}]", placed.join(",")))
        }
        _ => line,
    }
}

fn read_on_bench(fields: &Fields) -> Result<PartOnBench, Unreadable> {
    Ok(PartOnBench {
        part: fields.id("part", A_PART, PartId::parse)?,
        choice: fields.text("choice", A_CHOICE)?,
        name: fields.text("name", "what is marked on it, as text")?,
        size: fields.text("size", AS_TYPED)?,
        unit: fields.text("unit", A_UNIT)?,
        tool: fields.optional_id("tool", A_TOOL, ToolId::parse)?,
        setting: fields.optional_id("setting", "the id of a setting, a UUID", SettingId::parse)?,
        side: fields.optional_word("side", BenchSide::NAMES, BenchSide::from_id)?,
        steps: fields.optional_small("steps", "the size mark, a small whole number")?,
        make: fields.optional_text("make", "make and material, as text")?,
        place: read_spot(fields)?,
    })
}

fn write_on_bench(line: Line, made: &PartOnBench) -> Line {
    let line = line
        .id("part", made.part)
        .text("choice", &made.choice)
        .text("name", &made.name)
        .text("size", &made.size)
        .text("unit", &made.unit)
        .optional_id("tool", made.tool)
        .optional_id("setting", made.setting)
        .optional_text("side", made.side.map(BenchSide::id));
    let line = match made.steps {
        Some(steps) => line.whole("steps", i64::from(steps)),
        None => line,
    };
    write_spot(
        line.optional_text("make", made.make.as_deref()),
        made.place.as_ref(),
    )
}

fn read_placed(fields: &Fields) -> Result<PartsPlaced, Unreadable> {
    let choice = fields.text("choice", A_CHOICE)?;
    if fields.json("placed").is_none() {
        return Err(Unreadable::Missing {
            field: "placed",
            wanted: PLACED,
        });
    }
    let placed = fields.items("placed", PLACED)?;
    let placed: Result<Vec<PlacedPart>, Unreadable> =
        placed.iter().map(|json| read_one(json.get())).collect();
    Ok(PartsPlaced {
        choice,
        placed: placed?,
    })
}

fn read_one(json: &str) -> Result<PlacedPart, Unreadable> {
    let wrong = |wanted: &'static str| Unreadable::Wrong {
        field: "placed",
        wanted,
        read: json.chars().take(60).collect(),
    };
    let fields = Fields::read(json).map_err(|_| wrong(PLACED))?;
    let parts: Option<Vec<PartId>> = (fields.texts("parts", PARTS)?.iter())
        .map(|text| PartId::parse(text).ok())
        .collect();
    Ok(PlacedPart {
        place: read_spot(&fields)?.ok_or(Unreadable::Missing {
            field: "place",
            wanted: A_PLACE,
        })?,
        what: fields.text("what", "what goes there, as text")?,
        parts: parts.ok_or_else(|| wrong(PARTS))?,
        from: read_spot_in(&fields, "from")?,
        gives: fields.optional_text("gives", "what it gives there, as text")?,
    })
}

fn json_of(placed: &PlacedPart) -> String {
    let parts: Vec<String> = placed.parts.iter().map(ToString::to_string).collect();
    let line = write_spot(Line::new(), Some(&placed.place))
        .text("what", &placed.what)
        .texts("parts", &parts);
    write_spot_in(line, "from", placed.from.as_ref())
        .optional_text("gives", placed.gives.as_deref())
        .end()
}
