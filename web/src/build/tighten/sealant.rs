//! Sealant in a joint: clocks by the wall, which no sleep of the phone stops.

use std::time::Duration;

use assembly_core::tightening::sealant::Phase;
use build_journal::fact::{Body, JointClosed, SealantPutOn};
use build_journal::fold::tightening::{Sealant, waits};
use leptos::prelude::*;

use super::begin::place_of;
use super::place::{Place, part_name};
use super::{Spot, Tighten};
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, link, note, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::verdict::{Mark, shape};
use crate::kit::words::word_field;

const TEXT_AT_MOST: usize = 80;
const SECOND: Duration = Duration::from_secs(1);

const CAUTIONS: &[&str] = &[
    "Thin: a bead of 3 mm (⅛ in) inside the holes. What squeezes in plugs the pickup and the drain-backs.",
    "Only where the sheet wants it. Never on bearing caps, coated gaskets or between halves that carry a bearing.",
    "Look at the date on the tube. Fumes: doors open. Off the skin and out of the eyes.",
];

/// The page.
pub fn sealant_page(context: Tighten, spot: Spot) -> Piece {
    let now = Trigger::new();
    if let Ok(ticking) = set_interval_with_handle(move || now.notify(), SECOND) {
        on_cleanup(move || ticking.clear());
    }
    let running = Memo::new(move |_| {
        context.all.with(|all| {
            let part = all.group(spot.own).and_then(|group| group.part(spot.at));
            part.map(|part| part.sealants.clone()).unwrap_or_default()
        })
    });
    let clocks = Piece::live(move || {
        let list = running.get();
        let clocks = list
            .into_iter()
            .rev()
            .map(|one| clock(context, one, now).into());
        el("div")
            .class("entries")
            .all(clocks.collect::<Vec<_>>())
            .into()
    });
    let to = Place::Part(spot.own.to_string(), part_name(spot.at));
    Piece::all([
        title("Sealant").into(),
        clocks,
        Form::load(context, spot).section().into(),
        sentences("findings", CAUTIONS).into(),
        row([link("quiet", &context.to(to), "To the group").into()]).into(),
    ])
}

fn clock(context: Tighten, one: Sealant, now: Trigger) -> El {
    let fact = one.fact;
    let name = one.what.clone().unwrap_or_else(|| "Sealant".to_owned());
    let open = one.closed.is_none();
    let wrong = one.waits.as_ref().err().map(|why| note("wrong", why));
    let phase = Memo::new(move |_| {
        now.track();
        one.phase(chance::now())
    });
    let close = (open && wrong.is_none()).then(|| {
        button(
            "",
            "The joint is closed and snug",
            "joint-closed",
            move || {
                let _ = context
                    .opened
                    .write_down(Body::JointClosed(JointClosed { sealant: fact }));
            },
        )
    });
    el("section")
        .class("card")
        .test("sealant")
        .with(el("h2").text(&name))
        .with(
            el("p")
                .class("countdown")
                .attr("role", "timer")
                .test("countdown")
                .live_text(move || phase.get().and_then(left).map_or_else(String::new, time)),
        )
        .live(move || phase.get().map(said).into())
        .with(wrong)
        .with(close)
}

/// What is still waited for, milliseconds.
const fn left(phase: Phase) -> Option<u64> {
    match phase {
        Phase::Open { left } | Phase::Setting { left } => Some(left),
        Phase::ReadyForTorque { until_oil } => until_oil,
        Phase::Skinned | Phase::ClosedTooLate | Phase::Ready | Phase::ClockWentBack => None,
    }
}

fn said(phase: Phase) -> El {
    let (mark, words) = match phase {
        Phase::Open { .. } => (Mark::Close, "left to close the joint"),
        Phase::Skinned => (
            Mark::Bad,
            "It has skinned and the joint is open: off with it, clean both faces, and again.",
        ),
        Phase::ClosedTooLate => (
            Mark::Bad,
            "It was closed after it had skinned: it will leak. Off with it, clean, and again.",
        ),
        Phase::Setting { .. } => (Mark::Close, "until full torque: leave it snug"),
        Phase::ReadyForTorque { until_oil: Some(_) } => (
            Mark::Good,
            "until oil may come. Full torque may be given now.",
        ),
        Phase::ReadyForTorque { until_oil: None } => (
            Mark::Good,
            "Full torque may be given. The tube says nothing of oil.",
        ),
        Phase::Ready => (Mark::Good, "Nothing is waited for any more."),
        Phase::ClockWentBack => (
            Mark::Close,
            "The clock of this device stands before it was put on: somebody set it back.",
        ),
    };
    el("p")
        .class("mark-line")
        .test("sealant-phase")
        .attr("data-verdict", mark.name())
        .with(shape(mark))
        .with(el("span").text(words))
}

/// A time left as on a clock: hours only when there are any. The last second
/// begun still counts.
fn time(milliseconds: u64) -> String {
    let seconds = milliseconds.div_ceil(1000);
    let (hours, minutes, rest) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
    if hours > 0 {
        format!("{hours}:{minutes:02}:{rest:02}")
    } else {
        format!("{minutes}:{rest:02}")
    }
}

/// What is typed from the tube.
#[derive(Clone, Copy)]
struct Form {
    context: Tighten,
    spot: Spot,
    what: Draft,
    close_by: Draft,
    torque_from: Draft,
    oil_from: Draft,
    tried: RwSignal<bool>,
}

impl Form {
    fn load(context: Tighten, spot: Spot) -> Self {
        let draft = |name: &str| {
            let name = format!("sealant/{}/{}/{name}", spot.own, part_name(spot.at));
            Draft::of(context.opened.draft(&name))
        };
        Self {
            context,
            spot,
            what: draft("what"),
            close_by: draft("close-by"),
            torque_from: draft("torque-from"),
            oil_from: draft("oil-from"),
            tried: RwSignal::new(false),
        }
    }

    fn put_on(self) -> SealantPutOn {
        let text =
            |draft: Draft| Some(draft.get().trim().to_owned()).filter(|text| !text.is_empty());
        SealantPutOn {
            group: self.spot.own,
            place: place_of(self.spot.at),
            what: text(self.what),
            close_by: text(self.close_by).unwrap_or_default(),
            torque_from: text(self.torque_from),
            oil_from: text(self.oil_from),
        }
    }

    fn section(self) -> El {
        let field =
            |name, label, hint, draft| word_field(name, label, hint, draft, TEXT_AT_MOST, || None);
        let close_by = word_field(
            "close-by",
            "Close the joint within",
            "As on the tube, such as 10 min.",
            self.close_by,
            TEXT_AT_MOST,
            move || {
                self.tried
                    .get()
                    .then(|| waits(&self.put_on()).err())
                    .flatten()
            },
        );
        let start = button(
            "big",
            "It is on: start the clock",
            "sealant-start",
            move || {
                self.tried.set(true);
                let made = untrack(|| self.put_on());
                if waits(&made).is_ok()
                    && self
                        .context
                        .opened
                        .write_down(Body::SealantPutOn(made))
                        .is_some()
                {
                    self.tried.set(false);
                }
            },
        );
        section("Put on now")
            .with(note(
                "lead",
                "Tubes differ: type what yours says. Times count from when it is put on.",
            ))
            .with(field(
                "sealant-what",
                "Which",
                "Such as grey, T-joints only.",
                self.what,
            ))
            .with(close_by)
            .with(field(
                "torque-from",
                "Full torque from",
                "Such as 1 h. Empty: the tube does not say.",
                self.torque_from,
            ))
            .with(field(
                "oil-from",
                "Oil from",
                "Such as 1 day.",
                self.oil_from,
            ))
            .with(start)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_left_reads_as_on_a_clock() {
        assert_eq!(time(372_000), "6:12");
        assert_eq!(time(1), "0:01");
        assert_eq!(time(86_399_999), "24:00:00");
    }

    #[test]
    fn only_what_is_waited_for_is_counted_down() {
        assert_eq!(left(Phase::Open { left: 5 }), Some(5));
        assert_eq!(left(Phase::Skinned), None);
        assert_eq!(left(Phase::ReadyForTorque { until_oil: Some(7) }), Some(7));
    }
}
