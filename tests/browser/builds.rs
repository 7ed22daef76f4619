//! What a person does with whole builds: begin one, bring in a file, export,
//! wipe.

use std::path::{Path, PathBuf};
use std::time::Duration;

use serde_json::{Value, json};

use crate::page::Page;
use crate::places;
use crate::rig::Rig;
use crate::wait::until;

/// The invented engine of all examples: a four with five mains, some of them
/// measured.
pub fn sprayer() -> PathBuf {
    places::root().join("crates/build-journal/fixtures/orchard-sprayer-1.json")
}

/// The same engine measured to the end, as the app exported it.
pub fn five_mains() -> PathBuf {
    places::fixture("five-mains.json")
}

/// What two devices wrote down apart: some of it settled, some of it open.
pub fn two_devices() -> PathBuf {
    places::root().join("crates/build-journal/fixtures/two-devices-1.json")
}

/// Pistons and half-shells that two devices placed apart: of the half-shells it was
/// decided, of the pistons not.
pub fn two_placings() -> PathBuf {
    places::root().join("crates/build-journal/fixtures/two-placings-1.json")
}

/// A single with two mains measured for a choice of shells, which lie on the
/// bench and were chosen.
pub fn what_goes_where() -> PathBuf {
    places::root().join("crates/build-journal/fixtures/what-goes-where-1.json")
}

/// A file with everything odd that a file may have and still be taken in.
pub fn oddities() -> PathBuf {
    places::root().join("crates/build-journal/fixtures/oddities-1.json")
}

impl Page {
    /// From the bench to a new build, with the keypad and the keyboard.
    pub async fn describe_engine(&self, name: &str, cylinders: &str, mains: &str) {
        // A touch while the bench still opens its book may hit nothing.
        let field = until("the form that describes an engine", async || {
            if let Some(field) = self.by_test("field-name").await {
                return Some(field);
            }
            self.by_test("new-build").await?.click().await.ok();
            tokio::time::sleep(Duration::from_millis(300)).await;
            self.by_test("field-name").await
        })
        .await;
        field.send_keys(name).await.unwrap();
        self.enter("cylinders", cylinders).await;
        self.enter("mains", mains).await;
        self.put_keypad_away().await;
        self.bring_into_view("describe-save").await;
        self.press_test("describe-save").await;
        self.to_the_mains().await;
    }

    /// From tonight, where a build opens, to its main bearings.
    async fn to_the_mains(&self) {
        self.wait_for_test("next-step").await;
        self.turn_to("Mains").await;
        self.wait_for_test("bearing-1").await;
    }

    /// Gives the bench a file, and says what it says about it.
    pub async fn bring_in(&self, file: &Path) -> String {
        let input = self.wait_for_test("import-file").await;
        input.send_keys(&file.display().to_string()).await.unwrap();
        until("a word about the file", async || {
            let said = self.by_test("import-says").await?.text().await.ok()?;
            (!said.is_empty()).then_some(said)
        })
        .await
    }

    /// Puts away what was said about a file.
    pub async fn close_the_file(&self) {
        self.press_test("import-close").await;
        until("the words about the file to go", async || {
            (!self.has_test("import-says").await).then_some(())
        })
        .await;
    }

    /// Opens the one build on the bench, at its main bearings.
    pub async fn open_the_build(&self) {
        self.press_test("build-link").await;
        self.to_the_mains().await;
    }

    /// Goes to a page of the open build by its name.
    pub async fn turn_to(&self, page: &str) {
        let tab = format!("tab-{}", page.to_lowercase());
        // Where things are measured, the tabs of that stand below the others, but
        // not where the room is needed for the keypad.
        let below =
            ["map", "all", "mains", "limits", "tools"].contains(&page.to_lowercase().as_str());
        until(&format!("the page {page:?}"), async || {
            if below && !self.has_test(&tab).await {
                self.bring_into_view("tab-measure").await;
                self.by_test("tab-measure").await?.click().await.ok();
                return None;
            }
            let thing = self.by_test(&tab).await?;
            let to = thing.attr("href").await.ok()??;
            let address = self.client.current_url().await.ok()?;
            let marked = thing.attr("aria-current").await.ok()?.is_some();
            // One bearing is marked as a page of the mains, too.
            if marked && address.as_str().ends_with(&to) {
                return Some(());
            }
            // Tabs above the screen are scrolled to first; one engine's driver
            // does not. A touch that comes while the page still scrolls is no press.
            self.bring_into_view(&tab).await;
            thing.click().await.ok();
            tokio::time::sleep(Duration::from_millis(300)).await;
            None
        })
        .await;
    }

    /// How many facts this page has seen safe since it was loaded.
    pub async fn acknowledged(&self) -> u64 {
        let script = "return Number(document.querySelector('[data-test=acknowledged]')?.dataset.count ?? -1)";
        self.script(script, vec![])
            .await
            .as_u64()
            .unwrap_or_default()
    }

    /// Waits until so many have been seen safe.
    pub async fn wait_until_acknowledged(&self, count: u64) {
        until(&format!("{count} facts to be safe"), async || {
            (self.acknowledged().await >= count).then_some(())
        })
        .await;
    }

    /// Goes to the bench from wherever this is.
    pub async fn to_the_bench(&self) {
        self.go_to("#/").await;
        self.wait_for_test("new-build").await;
    }

    /// Wipes the one build on the bench.
    pub async fn wipe(&self) {
        self.press_test("wipe").await;
        self.press_test("wipe-confirm").await;
        self.wait_for_test("no-builds").await;
    }

    /// The verdict of each main bearing, front to rear, on the open build.
    pub async fn bearings(&self) -> Vec<String> {
        self.wait_for_test("bearing-1").await;
        let script = "return [...document.querySelectorAll('[data-test^=bearing-][data-verdict]')]
            .map((bearing) => bearing.dataset.verdict)";
        serde_json::from_value(self.script(script, vec![]).await).unwrap()
    }

    /// What a bearing's line says, without line breaks.
    pub async fn bearing_words(&self, number: u8) -> String {
        let words = self.text_of(&format!("bearing-{number}")).await;
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// How many builds are on the bench.
    pub async fn number_of_builds(&self) -> usize {
        let script = "return document.querySelectorAll('[data-test=build]').length";
        let count = self.script(script, vec![]).await;
        usize::try_from(count.as_u64().unwrap_or_default()).unwrap_or_default()
    }

    /// Waits until everything written so far is safe.
    pub async fn wait_until_all_is_kept(&self) {
        let script = "return document.querySelector('[data-test=acknowledged]')
            ?.dataset.onTheWay === '0'";
        self.wait_for_script("all facts to be kept", script).await;
    }

    /// The facts in both copies, by key.
    pub async fn kept(&self) -> Kept {
        let found = self.script(KEPT, vec![json!("")]).await;
        let of = |copy: &str| -> Vec<(String, String)> {
            let Some(Value::Object(entries)) = found.get(copy) else {
                panic!("no {copy}: {found}");
            };
            entries
                .iter()
                .map(|(key, text)| (key.clone(), text.as_str().unwrap_or_default().to_owned()))
                .collect()
        };
        Kept {
            shelf: of("shelf"),
            vault: of("vault"),
        }
    }

    /// Takes every fact out of one of the two copies, `shelf` or `vault`.
    pub async fn empty(&self, copy: &str) {
        self.script(KEPT, vec![json!(copy)]).await;
    }
}

/// The two copies of the facts, sorted by key.
#[derive(Debug, PartialEq, Eq)]
pub struct Kept {
    /// In local storage.
    pub shelf: Vec<(String, String)>,
    /// In IndexedDB.
    pub vault: Vec<(String, String)>,
}

/// Reads both copies, after emptying the one that is named.
const KEPT: &str = "const [empty] = arguments;
return new Promise((done, failed) => {
    const open = indexedDB.open('thoubook');
    // The app makes the database with the first fact, so looking must not.
    let missing = false;
    open.onupgradeneeded = () => {
        missing = true;
        open.transaction.abort();
    };
    open.onerror = (event) => {
        event.preventDefault();
        if (!missing) return failed(open.error);
        done({ shelf: {}, vault: {} });
    };
    open.onsuccess = () => {
        const ours = (key) => key.startsWith('thoubook/');
        if (empty === 'shelf') {
            Object.keys(localStorage).filter(ours).forEach((key) => localStorage.removeItem(key));
        }
        const shelf = Object.fromEntries(Object.entries(localStorage).filter(([key]) => ours(key)));
        const transaction = open.result.transaction('facts', 'readwrite');
        const store = transaction.objectStore('facts');
        if (empty === 'vault') store.clear();
        const keys = store.getAllKeys();
        const texts = store.getAll();
        transaction.onerror = () => failed(transaction.error);
        transaction.oncomplete = () => {
            open.result.close();
            done({ shelf, vault: Object.fromEntries(keys.result.map((key, at) => [key, texts.result[at]])) });
        };
    };
})";

impl Rig {
    /// Exports the one build on the bench and reads the file that arrives.
    pub async fn export(&self, page: &Page) -> String {
        let downloads = self.profile().join("downloads");
        for old in std::fs::read_dir(&downloads).unwrap().flatten() {
            std::fs::remove_file(old.path()).unwrap();
        }
        page.press_test("export").await;
        let mut last = String::new();
        until("the exported file", async || {
            let files: Vec<_> = std::fs::read_dir(&downloads).unwrap().flatten().collect();
            let [file] = files.as_slice() else {
                return None;
            };
            let name = file.file_name().to_string_lossy().into_owned();
            let text = std::fs::read_to_string(file.path()).ok()?;
            // It may still be growing.
            let whole = name.ends_with(".json") && text.ends_with("}\n") && text == last;
            last.clone_from(&text);
            whole.then_some(text)
        })
        .await
    }

    /// Exports the one build on the bench with its photos and reads the file
    /// that arrives.
    pub async fn export_with_photos(&self, page: &Page) -> Vec<u8> {
        let downloads = self.profile().join("downloads");
        for old in std::fs::read_dir(&downloads).unwrap().flatten() {
            std::fs::remove_file(old.path()).unwrap();
        }
        page.press_test("export").await;
        until("the exported file", async || {
            let files: Vec<_> = std::fs::read_dir(&downloads).unwrap().flatten().collect();
            let [file] = files.as_slice() else {
                return None;
            };
            let bytes = std::fs::read(file.path()).ok()?;
            // The end of a zip file is 22 bytes that begin like this.
            let end = bytes.len().checked_sub(22)?;
            let whole = bytes.get(end..)?.starts_with(b"PK\x05\x06");
            let named = file.file_name().to_string_lossy().ends_with(".zip");
            (whole && named).then_some(bytes)
        })
        .await
    }

    /// A file of the test's own with this in it.
    pub fn write(&self, name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
        let file = self.file(name);
        std::fs::write(&file, bytes).unwrap();
        file
    }
}
