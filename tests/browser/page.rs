//! What a person does with a page and reads from it. Things are found as a
//! person or a screen reader finds them: by what they are and what they are
//! called.

use std::cell::Cell;
use std::rc::Rc;
use std::time::{Duration, Instant};

use fantoccini::Client;
use fantoccini::elements::Element;
use serde_json::{Value, json};

use crate::wait::until;

/// Finds things by role and name; see the file.
const FIND: &str = include_str!("fixtures/find.js");

/// A page in a browser.
#[derive(Clone)]
pub struct Page {
    /// The way to the browser.
    pub client: Client,
    /// When the keypad's Next was pressed last.
    pub last_next: Rc<Cell<Option<Instant>>>,
}

impl Page {
    /// The page that the browser shows.
    pub fn of(client: Client) -> Self {
        Self {
            client,
            last_next: Rc::default(),
        }
    }

    /// Opens an address.
    pub async fn go(&self, address: &str) {
        self.client
            .goto(address)
            .await
            .unwrap_or_else(|cause| panic!("{address} can't be opened: {cause}"));
    }

    /// Goes to another screen, as a link does: the page stays.
    pub async fn go_to(&self, hash: &str) {
        self.script("location.hash = arguments[0]", vec![json!(hash)])
            .await;
    }

    /// Loads the page anew, as its own reload button does. (What WebDriver
    /// calls refresh is in Firefox the forced reload that goes past the
    /// service worker.)
    pub async fn reload(&self) {
        self.script("window.__old = true; location.reload()", vec![])
            .await;
        let script = "return !window.__old && document.readyState === 'complete'";
        self.wait_for_script("the page to load anew", script).await;
    }

    /// Waits until the app has shown its first screen.
    pub async fn wait_until_it_stands(&self) {
        let script = "return performance.getEntriesByName('thoubook-ready').length > 0";
        self.wait_for_script("the first screen", script).await;
    }

    /// Waits until the whole build is kept for opening without a signal.
    pub async fn wait_until_it_is_kept(&self) {
        let script = "return navigator.serviceWorker?.controller?.state === 'activated'";
        self.wait_for_script("the build to be kept", script).await;
    }

    /// Waits until the script says true.
    pub async fn wait_for_script(&self, what: &str, script: &str) {
        until(what, async || {
            let said = self.client.execute(script, vec![]).await;
            (said.ok()? == Value::Bool(true)).then_some(())
        })
        .await;
    }

    /// Runs a script in the page. A promise is waited for.
    pub async fn script(&self, script: &str, given: Vec<Value>) -> Value {
        self.client
            .execute(script, given)
            .await
            .unwrap_or_else(|cause| panic!("the script {script} failed: {cause}"))
    }

    /// All text that can be seen.
    pub async fn text(&self) -> String {
        let text = self.script("return document.body.innerText", vec![]).await;
        text.as_str().unwrap_or_default().to_owned()
    }

    /// The same when the page may not be there at all.
    pub async fn text_or_none(&self) -> String {
        match self
            .client
            .execute("return document.body.innerText", vec![])
            .await
        {
            Ok(text) => text.as_str().unwrap_or_default().to_owned(),
            Err(cause) => format!("({cause})"),
        }
    }

    /// What the watch has seen since the page was loaded.
    pub async fn trouble_or_none(&self) -> Vec<String> {
        let seen = self
            .client
            .execute("return window.__watch ?? ['nobody watches']", vec![]);
        serde_json::from_value(seen.await.unwrap_or_default()).unwrap_or_default()
    }

    /// Fails when anything went wrong inside the page since it was loaded: an
    /// error, a line on the error console, a broken rule of the policy.
    pub async fn assert_no_trouble(&self) {
        let seen = self.trouble_or_none().await;
        assert!(seen.is_empty(), "inside the page: {seen:?}");
    }

    /// Waits until the text can be seen.
    pub async fn wait_for_text(&self, wanted: &str) {
        until(&format!("the text {wanted:?}"), async || {
            self.text_or_none().await.contains(wanted).then_some(())
        })
        .await;
    }

    /// The thing of this role and name when it can be seen. A name matches
    /// whole, without regard to case.
    pub async fn find(&self, role: &str, name: &str) -> Option<Element> {
        let found = self
            .client
            .execute(FIND, vec![json!(role), json!(name)])
            .await
            .ok()?;
        self.element(found)
    }

    /// The element that a script gave back.
    pub fn element(&self, found: Value) -> Option<Element> {
        let id = found.as_object()?.values().next()?.as_str()?.to_owned();
        Some(Element::from_element_id(self.client.clone(), id.into()))
    }

    /// Presses the button or link of this name.
    pub async fn press(&self, name: &str) {
        let what = format!("{name:?} to be pressed");
        until(&what, async || {
            let button = match self.find("button", name).await {
                Some(button) => button,
                None => self.find("link", name).await?,
            };
            // It may be drawn anew between being found and being pressed.
            button.click().await.ok()
        })
        .await;
    }

    /// The verdict on the screen: good, close, bad or not-measured.
    pub async fn verdict(&self) -> Option<String> {
        let plate = self.by_test("verdict").await?;
        plate.attr("data-verdict").await.ok().flatten()
    }

    /// The names of all fields for quantities.
    pub async fn quantity_fields(&self) -> Vec<String> {
        let script = "return [...document.querySelectorAll('[data-field=quantity]')]
            .map((field) => field.dataset.test.replace(/^field-/, ''))";
        serde_json::from_value(self.script(script, vec![]).await).unwrap()
    }

    /// Opens everything that is folded away.
    pub async fn open_all_folds(&self) {
        let script = "document.querySelectorAll('details').forEach((fold) => fold.open = true)";
        self.script(script, vec![]).await;
    }

    /// Takes the finger to somewhere else.
    pub async fn leave_the_field(&self) {
        self.script("document.activeElement?.blur()", vec![]).await;
    }

    /// The thing that carries this `data-test` name, when it can be seen.
    pub async fn by_test(&self, name: &str) -> Option<Element> {
        let found = self.client.execute(BY_TEST, vec![json!(name)]).await.ok()?;
        self.element(found)
    }

    /// Whether it can be seen now.
    pub async fn has_test(&self, name: &str) -> bool {
        self.by_test(name).await.is_some()
    }

    /// The same, waiting for it.
    pub async fn wait_for_test(&self, name: &str) -> Element {
        until(&format!("data-test {name:?}"), async || {
            self.by_test(name).await
        })
        .await
    }

    /// Presses it.
    pub async fn press_test(&self, name: &str) {
        self.wait_while_it_moves(name).await;
        until(&format!("data-test {name:?} to be pressed"), async || {
            self.by_test(name).await?.click().await.ok()
        })
        .await;
    }

    /// A notice that comes or goes moves what stands below it, and a touch is
    /// aimed at where a thing stood. What never stands still is pressed all the same.
    async fn wait_while_it_moves(&self, name: &str) {
        const LOOKS: usize = 8;
        let script = "const { x, y } = arguments[0].getBoundingClientRect(); return [x, y];";
        let mut last = None;
        for _ in 0..LOOKS {
            let place = async {
                let thing = serde_json::to_value(&self.by_test(name).await?).ok()?;
                self.client.execute(script, vec![thing]).await.ok()
            };
            let place = place.await;
            if place.is_some() && place == last {
                return;
            }
            last = place;
            tokio::time::sleep(Duration::from_millis(30)).await;
        }
    }

    /// Presses one of some words that is gone once it is picked, and waits
    /// for the fact that follows from it.
    pub async fn press_pick(&self, name: &str) {
        let before = self.acknowledged().await;
        let mark = self.wait_for_test(name).await;
        let mark = serde_json::to_value(&mark).unwrap();
        let label = self
            .script("return arguments[0].closest('label')", vec![mark])
            .await;
        let label = self.element(label).expect("a word has a label");
        label.click().await.unwrap();
        self.wait_until_acknowledged(before + 1).await;
    }

    /// Picks one of some words. The round mark may be hidden under its word.
    pub async fn pick(&self, name: &str) {
        let what = format!("data-test {name:?} to be picked");
        until(&what, async || {
            let mark = self.by_test(name).await?;
            if mark.is_selected().await.ok()? {
                return Some(());
            }
            let mark = serde_json::to_value(&mark).ok()?;
            let label = self
                .client
                .execute("return arguments[0].closest('label')", vec![mark])
                .await
                .ok()?;
            self.element(label)?.click().await.ok();
            // Asked for once more, whether it is picked now.
            None::<()>
        })
        .await;
    }

    /// What it says.
    pub async fn text_of(&self, name: &str) -> String {
        // What goes by the clock is made anew every second: between finding and
        // reading it may be another one.
        until("a text that stands", async || {
            self.wait_for_test(name).await.text().await.ok()
        })
        .await
    }
}

const BY_TEST: &str = "return [...document.querySelectorAll('[data-test]')].find((thing) =>
    thing.dataset.test === arguments[0] &&
    (thing.type === 'file' || thing.checkVisibility({ visibilityProperty: true }))) ?? null";
