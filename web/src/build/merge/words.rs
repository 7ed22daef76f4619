//! A step, a check, the engine itself or which part goes where, of which two
//! devices say different things: the words side by side, each with the one tap that lets it hold.

use std::collections::{BTreeMap, BTreeSet};

use build_journal::fact::{EngineDescribed, PartsPlaced, Spot};
use build_journal::fold::{Conflict, Said};
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
        Conflict::Placings { choice, .. } => (
            "conflict-placings",
            format!("Two ways: {}", choice.label),
            "Neither device knew of the other. Until you choose, the later one counts. Only the places that differ are shown. If parts are in already, look which they are before you choose.",
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
        Conflict::Placings { said, .. } => said.iter().map(|one| (one.fact, one.device)).collect(),
        Conflict::Limits { .. } | Conflict::Readings { .. } => Vec::new(),
    }
}

/// In what a description of the engine, or which part goes where, differs from the
/// others.
fn described(conflict: &Conflict, fact: FactId) -> Option<String> {
    match conflict {
        Conflict::Engines { said } => engine_words(said, fact),
        Conflict::Placings { said, .. } => places_words(said, fact),
        _ => None,
    }
}

/// What goes to the places that differ.
fn places_words(said: &[Said<PartsPlaced>], fact: FactId) -> Option<String> {
    let own = &said.iter().find(|one| one.fact == fact)?.says;
    let there = |placed: &PartsPlaced, spot: &Spot| {
        let found = placed.placed.iter().find(|one| one.place == *spot);
        found.map(|one| one.what.clone())
    };
    let mut spots: Vec<&Spot> = Vec::new();
    for spot in said
        .iter()
        .flat_map(|one| &one.says.placed)
        .map(|one| &one.place)
    {
        let differs = |one: &Said<PartsPlaced>| there(&one.says, spot) != there(own, spot);
        if !spots.contains(&spot) && said.iter().any(differs) {
            spots.push(spot);
        }
    }
    let words = spots.into_iter().map(|spot| {
        let place = spot.place().map_or_else(String::new, |it| it.to_string());
        let what = there(own, spot).unwrap_or_else(|| "not said".to_owned());
        format!("{}: {what}", capital(&place))
    });
    let words: Vec<String> = words.collect();
    (!words.is_empty()).then(|| words.join("; "))
}

fn engine_words(said: &[Said<EngineDescribed>], fact: FactId) -> Option<String> {
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
    use build_journal::fact::PlacedPart;
    use build_journal::{DeviceId, Stamper};
    use build_plan::Place;
    use build_plan::choice::PISTONS_TO_BORES;

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
    fn two_placings_are_told_apart_by_the_places_that_differ() {
        let mut stamper = Stamper::new();
        let mut said = |places: &[(u8, &str)]| Said {
            device: DeviceId::from_random(1),
            fact: stamper.stamp(1, 1),
            says: PartsPlaced {
                choice: PISTONS_TO_BORES.id.to_owned(),
                placed: (places.iter())
                    .map(|(number, what)| PlacedPart {
                        place: Spot::Known(Place::of(At::Cylinder(*number))),
                        what: (*what).to_owned(),
                        parts: Vec::new(),
                        from: None,
                        gives: None,
                    })
                    .collect(),
            },
        };
        let one = said(&[(1, "its piston stays"), (2, "its piston stays")]);
        let other = said(&[(1, "its piston stays"), (2, "the spare"), (3, "a new one")]);
        let facts = [one.fact, other.fact];
        let conflict = Conflict::Placings {
            choice: &PISTONS_TO_BORES,
            said: vec![one, other],
        };
        let words = facts.map(|fact| described(&conflict, fact).unwrap());
        assert_eq!(
            words[0],
            "Cylinder 2: its piston stays; Cylinder 3: not said"
        );
        assert_eq!(words[1], "Cylinder 2: the spare; Cylinder 3: a new one");
    }

    #[test]
    fn many_parts_are_counted_and_few_are_named() {
        let mains: Vec<At> = (1..=7).map(At::Main).collect();
        assert_eq!(at("Clean", &[At::Engine]), "Clean");
        assert_eq!(at("Clean", &mains[..2]), "Clean, main 1; main 2");
        assert!(at("Clean", &mains).ends_with("main 4 and 3 more"));
    }
}
