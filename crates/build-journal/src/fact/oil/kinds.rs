//! These kinds in JSON: reading and writing, side by side.

use super::super::body::Body;
use super::super::fields::Fields;
use super::super::place::{A_PLACE, read_spot, write_spot};
use super::super::unreadable::Unreadable;
use super::super::write::Line;
use super::{
    BoreState, CompressionRead, GaugeRead, Groove, LeakDownRead, OilDoing, OilNoted, OilSystem,
    PlugsCounted, PrimeTested, RunningBegun, RunningEnded, RunningRow, Said, SpeedBand,
};
use crate::fact::Spot;
use crate::id::FactId;

const A_SAID: &str = "a quantity, such as {\"typed\":\"55\",\"unit\":\"psi\"}";
const A_COUNT: &str = "a count";
const SECONDS: &str = "seconds, a whole number";
const WORDS: &str = "words, as text";

/// The body of one of these kinds; `None` when it is none of them.
pub(in super::super) fn read(kind: &str, fields: &Fields) -> Option<Result<Body, Unreadable>> {
    Some(match kind {
        "oil-system" => read_system(fields).map(|it| Body::OilSystem(Box::new(it))),
        "gauge-read" => read_gauge(fields).map(Body::GaugeRead),
        "prime-tested" => read_prime(fields).map(Body::PrimeTested),
        "running-begun" => read_begun(fields).map(Body::RunningBegun),
        "running-ended" => read_ended(fields).map(Body::RunningEnded),
        "running-row" => read_row(fields).map(Body::RunningRow),
        "oil-noted" => read_noted(fields).map(Body::OilNoted),
        "compression-read" => read_compression(fields).map(Body::CompressionRead),
        "plugs-counted" => read_plugs(fields).map(Body::PlugsCounted),
        "leak-down-read" => read_leak_down(fields).map(Body::LeakDownRead),
        _ => return None,
    })
}

/// Writes kind and fields of one of these; others are left to the caller.
pub(in super::super) fn write(line: Line, body: &Body) -> Line {
    match body {
        Body::OilSystem(made) => write_system(line.text("kind", "oil-system"), made),
        Body::GaugeRead(made) => {
            let line = said(line.text("kind", "gauge-read"), "pressure", &made.pressure);
            let line = maybe(line, "speed", made.speed.as_ref());
            maybe(line, "temperature", made.temperature.as_ref())
                .optional_text("gauge", made.gauge.as_deref())
        }
        Body::PrimeTested(made) => {
            let line = line.text("kind", "prime-tested");
            let line = maybe(line, "pressure", made.pressure.as_ref());
            maybe(line, "temperature", made.temperature.as_ref())
                .optional_text("words", made.words.as_deref())
        }
        Body::RunningBegun(made) => line
            .text("kind", "running-begun")
            .text("band", made.band.id()),
        Body::RunningEnded(made) => line
            .text("kind", "running-ended")
            .id("begun", made.begun)
            .whole("seconds", i64::from(made.seconds)),
        Body::RunningRow(made) => write_row(line.text("kind", "running-row"), made),
        Body::OilNoted(made) => {
            let line = line.text("kind", "oil-noted").text("what", made.what.id());
            let line = maybe(line, "amount", made.amount.as_ref());
            maybe(line, "meter", made.meter.as_ref())
                .optional_text("of", made.kind.as_deref())
                .optional_text("words", made.words.as_deref())
        }
        Body::CompressionRead(made) => {
            let line = write_spot(line.text("kind", "compression-read"), Some(&made.place));
            said(line, "pressure", &made.pressure).text("state", made.state.id())
        }
        Body::LeakDownRead(made) => {
            let line = write_spot(line.text("kind", "leak-down-read"), Some(&made.place));
            let line = said(line, "supply", &made.supply);
            let line = said(line, "held", &made.held);
            maybe(line, "orifice", made.orifice.as_ref())
                .optional_text("heard", made.heard.as_deref())
        }
        Body::PlugsCounted(made) => {
            let line = line
                .text("kind", "plugs-counted")
                .text("plugs", &made.plugs);
            let line = count(line, "out", made.out);
            count(line, "back", made.back).optional_text("words", made.words.as_deref())
        }
        _ => line,
    }
}

fn said(line: Line, field: &str, said: &Said) -> Line {
    let json = Line::new()
        .text("typed", &said.typed)
        .text("unit", &said.unit);
    line.json(field, &json.end())
}

fn maybe(line: Line, field: &str, one: Option<&Said>) -> Line {
    match one {
        Some(one) => said(line, field, one),
        None => line,
    }
}

fn count(line: Line, field: &str, count: Option<u32>) -> Line {
    match count {
        Some(count) => line.whole(field, i64::from(count)),
        None => line,
    }
}

fn read_maybe(fields: &Fields, field: &'static str) -> Result<Option<Said>, Unreadable> {
    let Some(json) = fields.json(field) else {
        return Ok(None);
    };
    let wrong = |_| Unreadable::Wrong {
        field,
        wanted: A_SAID,
        read: json.chars().take(60).collect(),
    };
    let inside = Fields::read(json).map_err(wrong)?;
    Ok(Some(Said {
        typed: inside.text("typed", A_SAID).map_err(wrong)?,
        unit: inside.text("unit", A_SAID).map_err(wrong)?,
    }))
}

fn read_said(fields: &Fields, field: &'static str) -> Result<Said, Unreadable> {
    read_maybe(fields, field)?.ok_or(Unreadable::Missing {
        field,
        wanted: A_SAID,
    })
}

fn read_place(fields: &Fields) -> Result<Spot, Unreadable> {
    read_spot(fields)?.ok_or(Unreadable::Missing {
        field: "place",
        wanted: A_PLACE,
    })
}

fn read_system(fields: &Fields) -> Result<OilSystem, Unreadable> {
    let said = |field| read_maybe(fields, field);
    Ok(OilSystem {
        pump_volume: said("pump_volume")?,
        pump_ratio: said("pump_ratio")?,
        relief: said("relief")?,
        bypass: said("bypass")?,
        grade: fields.optional_text("grade", "the grade on the can, such as 10W-30")?,
        at_40: said("at_40")?,
        at_100: said("at_100")?,
        stroke: said("stroke")?,
        main_journal: said("main_journal")?,
        main_shell: said("main_shell")?,
        rod_journal: said("rod_journal")?,
        rod_shell: said("rod_shell")?,
        groove: fields.optional_word("groove", Groove::NAMES, Groove::from_id)?,
        lifters: fields.optional_count("lifters", A_COUNT)?,
        rockers: fields.optional_count("rockers", A_COUNT)?,
        squirters: fields.optional_count("squirters", A_COUNT)?,
        squirter_bore: said("squirter_bore")?,
        load: said("load")?,
        bore: said("bore")?,
        rod_length: said("rod_length")?,
        up_and_down: said("up_and_down")?,
        round: said("round")?,
        compression_ratio: said("compression_ratio")?,
        peak_gas: said("peak_gas")?,
        journal_roughness: said("journal_roughness")?,
        shell_roughness: said("shell_roughness")?,
    })
}

fn write_system(line: Line, made: &OilSystem) -> Line {
    let line = maybe(line, "pump_volume", made.pump_volume.as_ref());
    let line = maybe(line, "pump_ratio", made.pump_ratio.as_ref());
    let line = maybe(line, "relief", made.relief.as_ref());
    let line =
        maybe(line, "bypass", made.bypass.as_ref()).optional_text("grade", made.grade.as_deref());
    let line = maybe(line, "at_40", made.at_40.as_ref());
    let line = maybe(line, "at_100", made.at_100.as_ref());
    let line = maybe(line, "stroke", made.stroke.as_ref());
    let line = maybe(line, "main_journal", made.main_journal.as_ref());
    let line = maybe(line, "main_shell", made.main_shell.as_ref());
    let line = maybe(line, "rod_journal", made.rod_journal.as_ref());
    let line = maybe(line, "rod_shell", made.rod_shell.as_ref())
        .optional_text("groove", made.groove.map(Groove::id));
    let line = count(line, "lifters", made.lifters);
    let line = count(line, "rockers", made.rockers);
    let line = count(line, "squirters", made.squirters);
    let line = maybe(line, "squirter_bore", made.squirter_bore.as_ref());
    let line = maybe(line, "load", made.load.as_ref());
    let line = maybe(line, "bore", made.bore.as_ref());
    let line = maybe(line, "rod_length", made.rod_length.as_ref());
    let line = maybe(line, "up_and_down", made.up_and_down.as_ref());
    let line = maybe(line, "round", made.round.as_ref());
    let line = maybe(line, "compression_ratio", made.compression_ratio.as_ref());
    let line = maybe(line, "peak_gas", made.peak_gas.as_ref());
    let line = maybe(line, "journal_roughness", made.journal_roughness.as_ref());
    maybe(line, "shell_roughness", made.shell_roughness.as_ref())
}

fn read_gauge(fields: &Fields) -> Result<GaugeRead, Unreadable> {
    Ok(GaugeRead {
        pressure: read_said(fields, "pressure")?,
        speed: read_maybe(fields, "speed")?,
        temperature: read_maybe(fields, "temperature")?,
        gauge: fields.optional_text("gauge", WORDS)?,
    })
}

fn read_prime(fields: &Fields) -> Result<PrimeTested, Unreadable> {
    Ok(PrimeTested {
        pressure: read_maybe(fields, "pressure")?,
        temperature: read_maybe(fields, "temperature")?,
        words: fields.optional_text("words", WORDS)?,
    })
}

fn read_begun(fields: &Fields) -> Result<RunningBegun, Unreadable> {
    Ok(RunningBegun {
        band: fields.word("band", SpeedBand::NAMES, SpeedBand::from_id)?,
    })
}

fn read_ended(fields: &Fields) -> Result<RunningEnded, Unreadable> {
    Ok(RunningEnded {
        begun: fields.id("begun", "the id of the fact that it began", FactId::parse)?,
        seconds: fields.count("seconds", SECONDS)?,
    })
}

fn read_row(fields: &Fields) -> Result<RunningRow, Unreadable> {
    Ok(RunningRow {
        seconds: fields.optional_count("seconds", SECONDS)?,
        speed: read_maybe(fields, "speed")?,
        pressure: read_maybe(fields, "pressure")?,
        oil: read_maybe(fields, "oil")?,
        coolant: read_maybe(fields, "coolant")?,
        words: fields.optional_text("words", WORDS)?,
    })
}

fn write_row(line: Line, made: &RunningRow) -> Line {
    let line = count(line, "seconds", made.seconds);
    let line = maybe(line, "speed", made.speed.as_ref());
    let line = maybe(line, "pressure", made.pressure.as_ref());
    let line = maybe(line, "oil", made.oil.as_ref());
    maybe(line, "coolant", made.coolant.as_ref()).optional_text("words", made.words.as_deref())
}

fn read_noted(fields: &Fields) -> Result<OilNoted, Unreadable> {
    Ok(OilNoted {
        what: fields.word("what", OilDoing::NAMES, OilDoing::from_id)?,
        amount: read_maybe(fields, "amount")?,
        meter: read_maybe(fields, "meter")?,
        kind: fields.optional_text("of", WORDS)?,
        words: fields.optional_text("words", WORDS)?,
    })
}

fn read_compression(fields: &Fields) -> Result<CompressionRead, Unreadable> {
    Ok(CompressionRead {
        place: read_place(fields)?,
        pressure: read_said(fields, "pressure")?,
        state: fields.word("state", BoreState::NAMES, BoreState::from_id)?,
    })
}

fn read_leak_down(fields: &Fields) -> Result<LeakDownRead, Unreadable> {
    Ok(LeakDownRead {
        place: read_place(fields)?,
        supply: read_said(fields, "supply")?,
        held: read_said(fields, "held")?,
        orifice: read_maybe(fields, "orifice")?,
        heard: fields.optional_text("heard", WORDS)?,
    })
}

fn read_plugs(fields: &Fields) -> Result<PlugsCounted, Unreadable> {
    Ok(PlugsCounted {
        plugs: fields.text("plugs", "which plugs, such as gallery-front")?,
        out: fields.optional_count("out", A_COUNT)?,
        back: fields.optional_count("back", A_COUNT)?,
        words: fields.optional_text("words", WORDS)?,
    })
}
