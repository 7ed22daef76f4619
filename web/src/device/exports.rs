//! When each build was last exported from this device, and how much of it.

use std::collections::BTreeMap;

use build_journal::summary::LastExport;
use build_journal::{BuildId, Journal, bundle, export};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsValue;

use super::{chance, files, local, photos};
use crate::kit::toast::Toast;

const PREFIX: &str = "thoubook-setting/exported/";
const DAY_MS: i64 = 24 * 60 * 60 * 1000;
const DONE: &str = "Exported to your downloads.";
/// Letters of the engine's name that go into the file's name.
const NAME_AT_MOST: usize = 40;

/// One export.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
struct Export {
    at: i64,
    facts: usize,
}

/// The exports made on this device.
#[derive(Clone, Copy)]
pub struct Exports(RwSignal<BTreeMap<BuildId, Export>>);

impl Exports {
    /// The exports as they were noted.
    #[must_use]
    pub fn load() -> Self {
        let known = local::entries(PREFIX)
            .into_iter()
            .filter_map(|(key, text)| {
                let build = BuildId::parse(key.strip_prefix(PREFIX)?).ok()?;
                let (at, facts) = text.split_once(' ')?;
                let export = Export {
                    at: at.parse().ok()?,
                    facts: facts.parse().ok()?,
                };
                Some((build, export))
            });
        Self(RwSignal::new(known.collect()))
    }

    /// Hands a build over as a file and takes note of it.
    ///
    /// # Errors
    /// A sentence, when the browser would not take the file.
    pub fn export(self, journal: &Journal, name: &str) -> Result<(), String> {
        let text = export(journal);
        files::give(&file_name(name, "json"), &text).map_err(|error| refused(&error))?;
        self.note(journal);
        Ok(())
    }

    /// Hands a build over with the photos of it that are on this device, in one
    /// file, and says what came of it. Without photos it is the bare build.
    pub fn hand_over(self, journal: RwSignal<Journal>, name: String, toast: Toast) {
        let journal = journal.get_untracked();
        if bundle::photos(&journal).is_empty() {
            let done = self.export(&journal, &name);
            toast.say(done.err().unwrap_or_else(|| DONE.to_owned()));
            return;
        }
        spawn_local(async move {
            let done = self.export_with_photos(&journal, &name).await;
            toast.say(done.unwrap_or_else(|words| words));
        });
    }

    async fn export_with_photos(self, journal: &Journal, name: &str) -> Result<String, String> {
        let at_hand = photos::at_hand(journal).await;
        let (file, missing) = bundle::pack(journal, &at_hand).map_err(|error| error.to_string())?;
        files::give_bytes(&file_name(name, "zip"), "application/zip", &file)
            .map_err(|error| refused(&error))?;
        self.note(journal);
        Ok(match missing.len() {
            0 => format!("{DONE} The photos are in it."),
            1 => format!("{DONE} One photo is not on this device and not in it."),
            more => format!("{DONE} {more} photos are not on this device and not in it."),
        })
    }

    /// Takes note that a build was exported.
    fn note(self, journal: &Journal) {
        let made = Export {
            at: chance::now(),
            facts: journal.len(),
        };
        let key = format!("{PREFIX}{}", journal.build());
        // Not noted means told as not exported: the safe side.
        let _ = local::put(&key, &format!("{} {}", made.at, made.facts));
        self.0.update(|known| {
            known.insert(journal.build(), made);
        });
    }

    /// Forgets when a build was exported: it is taken off this device.
    pub fn forget(self, build: BuildId) {
        local::remove(&format!("{PREFIX}{build}"));
        self.0.update(|known| {
            known.remove(&build);
        });
    }

    /// The last export of a build from this device; followed.
    #[must_use]
    pub fn last(self, build: BuildId) -> Option<LastExport> {
        let found = self.0.with(|known| known.get(&build).copied())?;
        Some(LastExport {
            at: found.at,
            facts: found.facts,
        })
    }

    /// When a build was last exported, in words; followed.
    #[must_use]
    pub fn words(self, journal: &Journal) -> String {
        let found = self.0.with(|known| known.get(&journal.build()).copied());
        let Some(export) = found else {
            return "Never exported from this device.".to_owned();
        };
        let days = (chance::now() - export.at).max(0) / DAY_MS;
        let when = match days {
            0 => "today".to_owned(),
            1 => "yesterday".to_owned(),
            days => format!("{days} days ago"),
        };
        match journal.len().saturating_sub(export.facts) {
            0 => format!("Exported {when}, all of it."),
            1 => format!("Exported {when}; one line written since."),
            more => format!("Exported {when}; {more} lines written since."),
        }
    }
}

fn refused(error: &JsValue) -> String {
    format!("The browser would not take the file: {error:?}")
}

/// A file name that every system takes.
fn file_name(name: &str, ending: &str) -> String {
    let mut plain = String::new();
    for letter in name.chars().take(NAME_AT_MOST) {
        if letter.is_alphanumeric() {
            plain.extend(letter.to_lowercase());
        } else if !plain.is_empty() && !plain.ends_with('-') {
            plain.push('-');
        }
    }
    let plain = plain.trim_end_matches('-');
    let plain = if plain.is_empty() { "build" } else { plain };
    format!("{plain}.thoubook.{ending}")
}

/// The exports made on this device.
#[must_use]
pub fn exports() -> Exports {
    expect_context()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_name_holds_nothing_that_a_system_minds() {
        assert_eq!(
            file_name("Orchard sprayer: four", "json"),
            "orchard-sprayer-four.thoubook.json"
        );
        assert_eq!(file_name("../../<b>", "json"), "b.thoubook.json");
        assert_eq!(file_name("///", "zip"), "build.thoubook.zip");
        assert!(file_name(&"x".repeat(500), "json").len() < 60);
    }
}
