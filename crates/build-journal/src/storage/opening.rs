//! Both copies in, the builds out.

use std::collections::{BTreeMap, BTreeSet};

use super::key::{Key, digest};
use super::lend::Entry;
use crate::fact::{Fact, Line};
use crate::id::{BuildId, FactId};
use crate::journal::Journal;

/// The builds that are kept, and what each copy lacks of them.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Opened {
    /// The builds, each with what had to be set aside.
    pub journals: BTreeMap<BuildId, Journal>,
    /// What the shelf lacks, or holds broken, in the order to write it.
    pub missing_on_shelf: Vec<Entry>,
    /// What the vault lacks, or holds broken, in the order to write it.
    pub missing_in_vault: Vec<Entry>,
}

/// What one copy holds under a key.
enum Held<'a> {
    Nothing,
    Good(&'a str),
    Bad { text: &'a str, reason: String },
}

/// Both copies together: the union of what they hold, and what to write so
/// that both hold all of it. Keys that are not of a build are left alone.
#[must_use]
pub fn open(shelf: &[Entry], vault: &[Entry]) -> Opened {
    let (shelf, vault) = (by_key(shelf), by_key(vault));
    let keys: BTreeSet<&str> = shelf.keys().chain(vault.keys()).copied().collect();
    let mut opened = Opened::default();
    // Broken text is written over last, once it is safe elsewhere.
    let mut over_on_shelf = Vec::new();
    let mut over_in_vault = Vec::new();
    let mut bad = Vec::new();
    for name in keys {
        let Some(key) = Key::parse(name) else {
            continue;
        };
        let journal = opened
            .journals
            .entry(key.build())
            .or_insert_with(|| Journal::new(key.build()));
        let on_shelf = held(&key, shelf.get(name).copied());
        let in_vault = held(&key, vault.get(name).copied());
        take(journal, &key, &on_shelf);
        take(journal, &key, &in_vault);
        let Some(right) = right_text(journal, &key, &on_shelf, &in_vault) else {
            continue;
        };
        for (held, missing, over) in [
            (&on_shelf, &mut opened.missing_on_shelf, &mut over_on_shelf),
            (&in_vault, &mut opened.missing_in_vault, &mut over_in_vault),
        ] {
            let entry = || Entry {
                key: name.to_owned(),
                text: right.clone(),
            };
            match held {
                Held::Nothing => missing.push(entry()),
                Held::Good(text) if *text == right => {}
                // A clash: the journal has set the loser aside.
                Held::Good(_) => over.push(entry()),
                Held::Bad { text, reason } => {
                    // The start of the right text, torn off, holds nothing of its own.
                    if !right.starts_with(text) {
                        bad.push((key.build(), *text, reason.clone()));
                    }
                    over.push(entry());
                }
            }
        }
    }
    for (build, text, reason) in bad {
        if let Some(journal) = opened.journals.get_mut(&build)
            && !is_known(journal, text)
        {
            journal.put_aside(text, &reason);
        }
    }
    let asides = asides(&opened.journals);
    lacking(&asides, &shelf, &mut opened.missing_on_shelf);
    lacking(&asides, &vault, &mut opened.missing_in_vault);
    opened.missing_on_shelf.append(&mut over_on_shelf);
    opened.missing_in_vault.append(&mut over_in_vault);
    opened
}

const PUSHED_OUT: &str = "It was stored in the place of something else.";

fn by_key(entries: &[Entry]) -> BTreeMap<&str, &str> {
    entries
        .iter()
        .map(|entry| (entry.key.as_str(), entry.text.as_str()))
        .collect()
}

/// What stands under a key in one copy, judged.
fn held<'a>(key: &Key, text: Option<&'a str>) -> Held<'a> {
    let Some(text) = text else {
        return Held::Nothing;
    };
    let judged = match key {
        Key::Fact { fact, .. } => judge_fact(*fact, text),
        Key::Aside { digest: name, .. } => match read_aside(text) {
            Some((inner, _)) if digest(&inner) == *name => Ok(()),
            _ => Err("It was stored among the texts set aside, in no known form.".to_owned()),
        },
        Key::Other { .. } => Err("It was stored under a name that no fact has.".to_owned()),
    };
    match judged {
        Ok(()) => Held::Good(text),
        Err(reason) => Held::Bad { text, reason },
    }
}

fn judge_fact(id: FactId, text: &str) -> Result<(), String> {
    match Fact::read(text) {
        Ok(fact) if fact.id() == id => Ok(()),
        Ok(_) => Err(PUSHED_OUT.to_owned()),
        Err(reason) => Err(reason.to_string()),
    }
}

/// Takes what one copy holds into the journal. Bad text is looked at later,
/// when it is known whether the other copy is good.
fn take(journal: &mut Journal, key: &Key, held: &Held) {
    let Held::Good(text) = held else {
        return;
    };
    match key {
        Key::Fact { .. } => {
            journal.take_text(text);
        }
        Key::Aside { .. } => {
            if let Some((text, reason)) = read_aside(text) {
                journal.put_aside(&text, &reason);
            }
        }
        Key::Other { .. } => {}
    }
}

/// The text that should stand under a key; `None` when neither copy is good.
/// Then both are set aside and stay where they are.
fn right_text(
    journal: &mut Journal,
    key: &Key,
    on_shelf: &Held,
    in_vault: &Held,
) -> Option<String> {
    let good = [on_shelf, in_vault]
        .into_iter()
        .find_map(|held| match held {
            Held::Good(text) => Some((*text).to_owned()),
            _ => None,
        });
    if let Some(good) = good {
        return Some(match key {
            // Of two that clash, the one that counts.
            Key::Fact { fact, .. } => journal
                .get(*fact)
                .map_or(good, |fact| fact.text().to_owned()),
            // Of two reasons for the same text, the one the journal keeps.
            Key::Aside { build, .. } => kept_aside(journal, *build, &good).unwrap_or(good),
            Key::Other { .. } => good,
        });
    }
    for held in [on_shelf, in_vault] {
        if let Held::Bad { text, reason } = held {
            journal.put_aside(text, reason);
        }
    }
    None
}

/// Whether a text that stood in the wrong place is a fact that stands in its own.
fn is_known(journal: &Journal, text: &str) -> bool {
    Fact::read(text).is_ok_and(|stray| journal.get(stray.id()) == Some(&stray))
}

/// The entries of all texts set aside.
fn asides(journals: &BTreeMap<BuildId, Journal>) -> Vec<Entry> {
    journals
        .values()
        .flat_map(|journal| {
            journal
                .set_aside()
                .map(|(text, reason)| aside(journal.build(), text, reason))
        })
        .collect()
}

/// All entries of a build: the texts set aside first, then its facts.
#[must_use]
pub fn entries(journal: &Journal) -> Vec<Entry> {
    let build = journal.build();
    let facts = journal.facts().map(|fact| Entry {
        key: Key::fact(build, fact.id()).to_string(),
        text: fact.text().to_owned(),
    });
    journal
        .set_aside()
        .map(|(text, reason)| aside(build, text, reason))
        .chain(facts)
        .collect()
}

/// The entry of a text set aside.
fn aside(build: BuildId, text: &str, reason: &str) -> Entry {
    Entry {
        key: Key::aside(build, text).to_string(),
        text: Line::new().text("text", text).text("reason", reason).end(),
    }
}

/// The entry's text for what a good entry sets aside, with the journal's reason.
fn kept_aside(journal: &Journal, build: BuildId, good: &str) -> Option<String> {
    let (text, _) = read_aside(good)?;
    let (text, reason) = journal.set_aside().find(|(aside, _)| *aside == text)?;
    Some(aside(build, text, reason).text)
}

fn read_aside(json: &str) -> Option<(String, String)> {
    let value: serde_json::Value = serde_json::from_str(json).ok()?;
    let part = |name: &str| Some(value.get(name)?.as_str()?.to_owned());
    Some((part("text")?, part("reason")?))
}

/// Adds the asides that a copy does not have, before everything else.
fn lacking(asides: &[Entry], copy: &BTreeMap<&str, &str>, missing: &mut Vec<Entry>) {
    let mut all: Vec<Entry> = asides
        .iter()
        .filter(|entry| !copy.contains_key(entry.key.as_str()))
        .cloned()
        .collect();
    missing.retain(|entry| !all.iter().any(|aside| aside.key == entry.key));
    all.append(missing);
    *missing = all;
}
