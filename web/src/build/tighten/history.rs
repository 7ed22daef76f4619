//! What was done to a group before.

use assembly_core::tightening::interrupted::Gasket;
use build_journal::fact::Way;
use build_journal::fold::tightening::{Part, Run};

use super::words;
use crate::kit::judged::capital;
use crate::kit::piece::{El, el, p};
use crate::kit::section::{fold, sentences};
use crate::kit::verdict::{Mark, shape};

/// The runs over a group, the latest first; nothing before the first.
pub fn history(part: &Part) -> Option<El> {
    if part.runs.is_empty() {
        return None;
    }
    let runs = part.runs.iter().rev().map(|run| one(run).into());
    let list = el("ul").class("entries").all(runs.collect::<Vec<_>>());
    Some(fold("History", list))
}

fn one(run: &Run) -> El {
    let mark = match run.way {
        _ if run.is_on() => Mark::Close,
        Way::Loosen => Mark::None,
        _ if run.counts() => Mark::Good,
        _ => Mark::Bad,
    };
    let mut lines = vec![capital(&words::where_it_is(run))];
    if run.left {
        lines.push("Given up.".to_owned());
    }
    if run.interruptions > 0 {
        lines.push(format!("Interrupted {}.", times(run.interruptions)));
    }
    let backed_off = run.standing.backed_off();
    if backed_off > 0 {
        lines.push(format!("Backed off {}.", times(backed_off)));
    }
    if backed_off > 0 && run.sheet.gasket() == Gasket::Crushed {
        lines.push("A gasket that was clamped and came free again has to be a new one.".to_owned());
    }
    if !run.stripes.is_empty() {
        lines.push(format!(
            "Stripe seen on {} of {}.",
            run.stripes.len(),
            run.bolts()
        ));
    }
    lines.extend(
        run.against
            .iter()
            .map(ToString::to_string)
            .map(|one| capital(&one)),
    );
    let heading = el("strong").text(&format!("{} on {}", words::way(run.way), day(run.begun)));
    el("li")
        .class("card")
        .test("run-history")
        .with(p("").class("mark-line").with(shape(mark)).with(heading))
        .with(sentences("", &lines))
}

fn times(count: u32) -> String {
    match count {
        1 => "once".to_owned(),
        more => format!("{more} times"),
    }
}

/// The day of a moment by this device's calendar.
fn day(clock: i64) -> String {
    let date = js_sys::Date::new(&(clock as f64).into());
    format!(
        "{:04}-{:02}-{:02}",
        date.get_full_year(),
        date.get_month() + 1,
        date.get_date()
    )
}
