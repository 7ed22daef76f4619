//! What was written down of the oil and of running, in the words of the bench.

use build_journal::Body;
use build_journal::fact::{
    BoreState, GaugeRead, LeakDownRead, OilDoing, OilNoted, OilSystem, PrimeTested, RunningRow,
    Said, SpeedBand,
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
    parts(what, &[("", made.amount.as_ref())], words.as_deref())
}

fn leak_down(read: &LeakDownRead) -> String {
    let all = [("", Some(&read.held)), ("of", Some(&read.supply))];
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
            kind: None,
            words: None,
        });
        assert_eq!(of(&bare).unwrap(), "Filter cut open");
    }
}
