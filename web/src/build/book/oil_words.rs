//! What was written down of the oil and of running, in the words of the bench.

use assembly_core::oil::running_in::plugs::PLUGS;
use build_journal::Body;
use build_journal::fact::{
    BoreState, GaugeRead, LeakDownRead, OilDoing, OilNoted, OilSystem, PlugsCounted, PrimeTested,
    RunningRow, Said, SpeedBand,
};

use super::words::{short, spot, with_unit};

/// One of these facts as a line; `None` of another kind.
pub(super) fn of(body: &Body) -> Option<String> {
    Some(match body {
        Body::OilSystem(told) => system(told),
        Body::GaugeRead(read) => gauge(read),
        Body::PrimeTested(made) => prime(made),
        Body::RunningBegun(made) => format!("Running {}", band(made.band)),
        Body::RunningEnded(made) => format!(
            "Stopped after {}:{:02}",
            made.seconds / 60,
            made.seconds % 60
        ),
        Body::RunningRow(row) => running(row),
        Body::OilNoted(made) => noted(made),
        Body::CompressionRead(read) => format!(
            "Compression: {}, {}, {}",
            said(&read.pressure),
            spot(&read.place),
            match read.state {
                BoreState::Dry => "dry",
                BoreState::Wet => "with oil",
            }
        ),
        Body::LeakDownRead(read) => leak_down(read),
        Body::PlugsCounted(made) => plugs(made),
        _ => return None,
    })
}

fn said(said: &Said) -> String {
    with_unit(&said.typed, &said.unit)
}

const fn band(band: SpeedBand) -> &'static str {
    match band {
        SpeedBand::Below => "below the run-in's speeds",
        SpeedBand::Within => "at the run-in's speeds",
        SpeedBand::Above => "above the run-in's speeds",
    }
}

/// The parts that were said, after what they are.
fn parts(head: &str, all: &[(&str, Option<&Said>)], words: Option<&str>) -> String {
    let numbers = all.iter().filter_map(|(what, one)| {
        let one = said((*one)?);
        Some(if what.is_empty() {
            one
        } else {
            format!("{what} {one}")
        })
    });
    let all: Vec<String> = numbers.chain(words.map(short)).collect();
    if all.is_empty() {
        head.to_owned()
    } else {
        format!("{head}: {}", all.join(", "))
    }
}

fn system(told: &OilSystem) -> String {
    let all = [
        ("pump", told.pump_volume.as_ref()),
        ("relief", told.relief.as_ref()),
        ("stroke", told.stroke.as_ref()),
    ];
    parts("Oil system", &all, told.grade.as_deref())
}

fn gauge(read: &GaugeRead) -> String {
    let all = [
        ("", Some(&read.pressure)),
        ("at", read.speed.as_ref()),
        ("oil", read.temperature.as_ref()),
    ];
    parts("Oil gauge", &all, read.gauge.as_deref())
}

fn prime(made: &PrimeTested) -> String {
    let all = [
        ("", made.pressure.as_ref()),
        ("oil", made.temperature.as_ref()),
    ];
    parts("Primed", &all, made.words.as_deref())
}

fn running(row: &RunningRow) -> String {
    let head = row.seconds.map_or_else(
        || "While it ran".to_owned(),
        |seconds| format!("While it ran, at {}:{:02}", seconds / 60, seconds % 60),
    );
    let all = [
        ("oil pressure", row.pressure.as_ref()),
        ("", row.speed.as_ref()),
        ("coolant", row.coolant.as_ref()),
        ("oil", row.oil.as_ref()),
    ];
    parts(&head, &all, row.words.as_deref())
}

fn noted(made: &OilNoted) -> String {
    let what = match made.what {
        OilDoing::Filled => "Oil filled",
        OilDoing::Added => "Oil added",
        OilDoing::Drained => "Oil drained",
        OilDoing::FilterChanged => "Filter changed",
        OilDoing::FilterCut => "Filter cut open",
    };
    let words: Vec<String> = [&made.kind, &made.words]
        .into_iter()
        .flatten()
        .map(|words| short(words))
        .collect();
    let words = (!words.is_empty()).then(|| words.join(", "));
    let all = [("", made.amount.as_ref()), ("at", made.meter.as_ref())];
    parts(what, &all, words.as_deref())
}

fn plugs(made: &PlugsCounted) -> String {
    let known = PLUGS.iter().find(|one| one.id == made.plugs);
    let name = known.map_or_else(|| short(&made.plugs), |one| one.place.to_owned());
    let counts = [(made.out, "out"), (made.back, "back in")];
    let counts = counts
        .into_iter()
        .filter_map(|(count, way)| Some(format!("{} {way}", count?)));
    let words = made.words.as_deref().map(short);
    let all: Vec<String> = counts.chain(words).collect();
    format!("Plugs, {name}: {}", all.join(", "))
}

fn leak_down(read: &LeakDownRead) -> String {
    let all = [
        ("", Some(&read.held)),
        ("of", Some(&read.supply)),
        ("orifice", read.orifice.as_ref()),
    ];
    let head = format!("Leak-down, {}", spot(&read.place));
    parts(&head, &all, read.heard.as_deref())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn psi(typed: &str) -> Said {
        Said {
            typed: typed.to_owned(),
            unit: "psi".to_owned(),
        }
    }

    #[test]
    fn a_row_of_numbers_reads_like_a_log() {
        let row = RunningRow {
            seconds: Some(125),
            pressure: Some(psi("48")),
            words: Some("ticking gone".to_owned()),
            ..RunningRow::default()
        };
        assert_eq!(
            of(&Body::RunningRow(row)).unwrap(),
            "While it ran, at 2:05: oil pressure 48 psi, ticking gone"
        );
        let bare = Body::OilNoted(OilNoted {
            what: OilDoing::FilterCut,
            amount: None,
            meter: None,
            kind: None,
            words: None,
        });
        assert_eq!(of(&bare).unwrap(), "Filter cut open");
        let counted = Body::PlugsCounted(PlugsCounted {
            plugs: "crank".to_owned(),
            out: Some(4),
            back: Some(3),
            words: None,
        });
        assert_eq!(
            of(&counted).unwrap(),
            "Plugs, ends of the crank's drillings: 4 out, 3 back in"
        );
    }
}
