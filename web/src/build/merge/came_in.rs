//! What a file brought: how much, from which device, of what sort, the latest.

use std::collections::BTreeMap;

use build_journal::{Build, DeviceId, Fact, FactId, Journal};
use leptos::prelude::With;

use crate::build::Opened;
use crate::build::book::{Sort, time, words_of};
use crate::device::keeping::Keeping;
use crate::kit::piece::{Piece, el, note, p};
use crate::kit::section::section;

/// What came from one device.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
struct FromDevice {
    count: usize,
    sorts: BTreeMap<Sort, usize>,
    latest: Option<FactId>,
}

/// What came in, by the device it was written on.
fn by_device(journal: &Journal, facts: &[FactId]) -> BTreeMap<DeviceId, FromDevice> {
    let mut found: BTreeMap<DeviceId, FromDevice> = BTreeMap::new();
    for fact in facts.iter().filter_map(|id| journal.get(*id)) {
        let from = found.entry(fact.device()).or_default();
        from.count += 1;
        *from.sorts.entry(Sort::of(fact.body())).or_default() += 1;
        from.latest = from.latest.max(Some(fact.id()));
    }
    found
}

/// A device as it is told apart: this one, or the first letters of its name.
#[must_use]
pub fn device_words(device: DeviceId, keeping: Keeping) -> String {
    if device == keeping.device() {
        return "this device".to_owned();
    }
    let name: String = device.to_string().chars().take(4).collect();
    format!("device {name}")
}

/// What the last file brought into this build since the page was opened.
#[must_use]
pub fn came_in(opened: Opened, keeping: Keeping) -> Piece {
    Piece::live(move || {
        let Some(facts) = keeping.arrived(opened.id) else {
            let words =
                "No file came in since this page was opened. What came in before is in the book.";
            return note("lead", words).test("nothing-came").into();
        };
        opened.journal.with(|journal| {
            opened
                .build
                .with(|build| told(journal, build, &facts, keeping))
        })
    })
}

fn told(journal: &Journal, build: &Build, facts: &[FactId], keeping: Keeping) -> Piece {
    let total = match facts.len() {
        0 => "The file brought nothing that was not here.".to_owned(),
        1 => "One line came in that was not here before.".to_owned(),
        more => format!("{more} lines came in that were not here before."),
    };
    let devices = by_device(journal, facts).into_iter().map(|(device, from)| {
        let sorts: Vec<String> = from
            .sorts
            .iter()
            .map(|(sort, count)| sort.count(*count))
            .collect();
        let latest = from.latest.and_then(|id| journal.get(id));
        let latest = latest.map(|fact: &Fact| {
            p("The latest: ")
                .text(&words_of(fact, journal, build))
                .text(&format!(" ({})", time(fact)))
        });
        el("li")
            .class("card")
            .test("came-from")
            .with(p("").with(el("strong").text(&format!(
                "From {}: {}",
                device_words(device, keeping),
                from.count
            ))))
            .with(p(&sorts.join(", ")))
            .with(latest)
            .into()
    });
    section("What came in")
        .test("came-in")
        .with(p(&total))
        .with(el("ul").class("entries").all(devices))
        .into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fact::Note;
    use build_journal::{Body, BuildId, Stamper};

    #[test]
    fn what_came_in_is_told_by_the_device_it_was_written_on() {
        let mut journal = Journal::new(BuildId::from_random(1));
        let mut stamper = Stamper::new();
        let mut facts = Vec::new();
        for (at, device) in [1_u128, 2, 2].into_iter().enumerate() {
            let body = Body::Note(Note {
                text: "x".to_owned(),
                place: None,
                step: None,
            });
            let id = stamper.stamp(at as u64 + 1, 1);
            journal.take(Fact::new(id, DeviceId::from_random(device), 1, body));
            facts.push(id);
        }
        // What was here before is not told.
        let found = by_device(&journal, &facts[1..]);
        assert_eq!(found.len(), 1);
        let from = found.get(&DeviceId::from_random(2)).unwrap();
        assert_eq!((from.count, from.latest), (2, Some(facts[2])));
        assert_eq!(from.sorts.get(&Sort::Notes), Some(&2));
    }
}
