//! A step, a check or the engine itself, of which two devices say different
//! things: the words side by side, each with the one tap that lets it hold.

use std::collections::{BTreeMap, BTreeSet};

use build_journal::fact::EngineDescribed;
use build_journal::fold::Conflict;
use build_journal::{DeviceId, FactId};
use build_plan::At;
use leptos::prelude::*;

use super::conflict::written;
use crate::build::Opened;
use crate::build::book::words_of;
use crate::device::keeping::Keeping;
use crate::kit::judged::capital;
use crate::kit::piece::{El, button, el, note, p, row};
use crate::kit::section::section;

/// Parts that are named before the rest is only counted.
const NAMED: usize = 4;

/// Such a conflict.
#[must_use]
pub fn of_words(opened: Opened, keeping: Keeping, conflict: &Conflict) -> El {
    let (test, name, why) = match conflict {
        Conflict::Marks { step, parts, .. } => (
            "conflict-marks",
            at(&capital(step.label), parts),
            "Neither device knew of the other. Until you choose, the later word counts. If you can't tell, look at the engine. What the word that does not hold has undone counts again.",
        ),
        Conflict::Checks { check, parts, .. } => (
            "conflict-checks",
            at(&capital(check.label), parts),
            "Neither device knew of the other. Until you choose, the later word counts. If you can't tell, make the check again and choose then.",
        ),
        _ => (
            "conflict-engines",
            "The engine is described in two ways".to_owned(),
            "Neither device knew of the other. Until you choose, the later description counts. What only the other says has to be described again.",
        ),
    };
    let said = facts(conflict).into_iter().map(|(fact, device)| {
        let words = described(conflict, fact).unwrap_or_else(|| {
            opened.journal.with_untracked(|journal| {
                opened.build.with_untracked(|build| {
                    let found = journal.get(fact);
                    found.map_or_else(String::new, |fact| words_of(fact, journal, build))
                })
            })
        });
        let all = conflict.clone();
        let holds = button("", "This holds", "this-holds", move || {
            opened.settle(&all, fact);
        })
        .attr("aria-label", &format!("this holds: {words}"));
        el("li")
            .class("card")
            .with(note("limits-typed", &words))
            .with(written(opened, keeping, fact, device))
            .with(row([holds.into()]))
            .into()
    });
    section(&name)
        .test(test)
        .with(p(why))
        .with(el("ul").class("side-by-side").all(said))
}

/// The facts that are against each other, with the device each is from.
fn facts(conflict: &Conflict) -> Vec<(FactId, DeviceId)> {
    match conflict {
        Conflict::Marks { said, .. } => said.iter().map(|one| (one.fact, one.device)).collect(),
        Conflict::Checks { said, .. } => said.iter().map(|one| (one.fact, one.device)).collect(),
        Conflict::Engines { said } => said.iter().map(|one| (one.fact, one.device)).collect(),
        Conflict::Limits { .. } | Conflict::Readings { .. } => Vec::new(),
    }
}

/// In what a description of the engine differs from the others.
fn described(conflict: &Conflict, fact: FactId) -> Option<String> {
    let Conflict::Engines { said } = conflict else {
        return None;
    };
    let own = fields(&said.iter().find(|one| one.fact == fact)?.says);
    let all: Vec<BTreeMap<&str, String>> = said.iter().map(|one| fields(&one.says)).collect();
    let names: BTreeSet<&str> = all.iter().flat_map(BTreeMap::keys).copied().collect();
    let differs = |name: &&str| all.iter().any(|one| one.get(*name) != own.get(*name));
    let words = names.into_iter().filter(differs).map(|name| {
        let word = own.get(name).map_or("not said", String::as_str);
        format!(
            "{}: {}",
            capital(&name.replace('_', " ")),
            word.replace('-', " ")
        )
    });
    Some(words.collect::<Vec<String>>().join("; "))
}

/// The fields of a description that were said.
fn fields(engine: &EngineDescribed) -> BTreeMap<&'static str, String> {
    let mut fields: BTreeMap<&str, String> = engine.built.iter().cloned().collect();
    fields.insert("name", engine.name.clone());
    fields.insert("cylinders", engine.cylinders.to_string());
    fields.insert("layout", engine.layout.clone());
    fields.extend((engine.bank_angle.clone()).map(|angle| ("bank_angle", angle)));
    fields.extend(
        engine
            .mains
            .map(|mains| ("main_bearings", mains.to_string())),
    );
    fields
}

/// What it is, and at which parts.
fn at(label: &str, parts: &[At]) -> String {
    let named: Vec<String> = parts
        .iter()
        .filter(|at| **at != At::Engine)
        .take(NAMED)
        .map(ToString::to_string)
        .collect();
    match (named.is_empty(), parts.len().saturating_sub(NAMED)) {
        (true, _) => label.to_owned(),
        (false, 0) => format!("{label}, {}", named.join("; ")),
        (false, more) => format!("{label}, {} and {more} more", named.join("; ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::fold::Said;
    use build_journal::{DeviceId, Stamper};

    #[test]
    fn two_descriptions_are_told_apart_by_what_differs() {
        let mut stamper = Stamper::new();
        let mut said = |mains, built: &[(&'static str, &str)]| Said {
            device: DeviceId::from_random(1),
            fact: stamper.stamp(1, 1),
            says: EngineDescribed {
                name: "orchard sprayer".to_owned(),
                cylinders: 4,
                layout: "inline".to_owned(),
                bank_angle: None,
                mains,
                built: built
                    .iter()
                    .map(|(field, word)| (*field, (*word).to_owned()))
                    .collect(),
            },
        };
        let one = said(Some(5), &[("liners", "wet-top-flange")]);
        let other = said(Some(3), &[]);
        let facts = [one.fact, other.fact];
        let conflict = Conflict::Engines {
            said: vec![one, other],
        };
        let words = facts.map(|fact| described(&conflict, fact).unwrap());
        assert_eq!(words[0], "Liners: wet top flange; Main bearings: 5");
        assert_eq!(words[1], "Liners: not said; Main bearings: 3");
    }

    #[test]
    fn many_parts_are_counted_and_few_are_named() {
        let mains: Vec<At> = (1..=7).map(At::Main).collect();
        assert_eq!(at("Clean", &[At::Engine]), "Clean");
        assert_eq!(at("Clean", &mains[..2]), "Clean, main 1; main 2");
        assert!(at("Clean", &mains).ends_with("main 4 and 3 more"));
    }
}
