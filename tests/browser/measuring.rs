//! Measuring main bearings on the screens of a build.

use fantoccini::Locator;

use crate::page::Page;
use crate::wait::until;

/// What readings are typed with.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum With {
    /// The app's own keypad, key by key.
    Keypad,
    /// A keyboard that is plugged in, with Enter behind each reading.
    Keyboard,
}

impl Page {
    /// Goes to a main bearing of the open build from the list of all.
    pub async fn open_bearing(&self, number: u8) {
        let bearing = format!("bearing-{number}");
        self.bring_into_view(&bearing).await;
        self.press_test(&bearing).await;
        self.wait_for_text(&format!("Main {number}")).await;
        self.wait_for_test("standing").await;
    }

    /// Writes one reading down at the place that is offered, and waits until the
    /// next place is.
    pub async fn write_reading(&self, reading: &str, with: With) {
        let before = self.acknowledged().await;
        match with {
            With::Keypad => {
                self.enter("reading", reading).await;
                self.press_next().await;
            }
            With::Keyboard => {
                let field = self.wait_for_test("field-reading").await;
                field.send_keys(reading).await.unwrap();
                assert_eq!(self.value_of("reading").await, reading);
                self.press_enter(&field).await;
            }
        }
        self.wait_until_acknowledged(before + 1).await;
        until("the next place", async || {
            let Some(field) = self.by_test("field-reading").await else {
                // A tool has to be picked or set first.
                return Some(());
            };
            field.prop("value").await.ok()??.is_empty().then_some(())
        })
        .await;
    }

    /// How many places of a main there are for a micrometer and a bore gauge.
    pub async fn number_of_places(&self) -> usize {
        let script = "return document.querySelectorAll(
            '[data-test^=place-main-journal], [data-test^=place-main-bearing-bore]').length";
        let count = self.script(script, vec![]).await;
        usize::try_from(count.as_u64().unwrap_or_default()).unwrap_or_default()
    }

    /// Measures the whole crank as the app leads through it, beginning on the
    /// open bearing: `sizes` has journal and bore of each main, front to rear.
    pub async fn measure_all(&self, sizes: &[(&str, &str)], with: With) {
        // The screen is there as soon as it says how the bearing stands.
        self.wait_for_test("standing").await;
        let places = self.number_of_places().await * sizes.len();
        assert!(places >= 4 * sizes.len(), "{places} places");
        for _ in 0..places {
            self.take_a_tool().await;
            let (journal, bore) = sizes[self.main_in_hand().await - 1];
            let reading = match self.text_of("entry").await.to_lowercase().contains("bore") {
                true => bore,
                false => journal,
            };
            self.write_reading(reading, with).await;
        }
    }

    /// Which main the address says, counted from 1.
    async fn main_in_hand(&self) -> usize {
        let address = self.client.current_url().await.unwrap();
        let last = address.fragment().and_then(|hash| hash.rsplit('/').next());
        last.and_then(|number| number.parse().ok())
            .unwrap_or_else(|| panic!("no main bearing at {address}"))
    }

    /// Answers what a first reading asks before it: which tool, and what a
    /// bore gauge was set on.
    async fn take_a_tool(&self) {
        until("the field of the reading", async || {
            for kind in [
                "list-main-journal-diameter-outside-micrometer-proved",
                "list-main-bearing-bore-bore-gauge-tenths",
            ] {
                if !self.has_test("field-reading").await && self.has_test(kind).await {
                    self.press_pick(kind).await;
                }
            }
            if !self.has_test("field-reading").await && self.has_test("zeroed").await {
                self.set_the_gauge().await;
            }
            self.has_test("field-reading").await.then_some(())
        })
        .await;
    }

    /// The gauge was set in the journals' own micrometer; whole sizes are read.
    pub async fn set_the_gauge(&self) {
        let whole = "[data-test^=reads-][data-test$=-whole]";
        let mark = self.client.find(Locator::Css(whole)).await.unwrap();
        let name = mark.attr("data-test").await.unwrap().unwrap();
        self.pick(&name).await;
        let before = self.acknowledged().await;
        self.bring_into_view("zeroed").await;
        self.press_test("zeroed").await;
        self.wait_until_acknowledged(before + 1).await;
    }

    /// Types the limits and where they come from.
    pub async fn set_limits(&self, low: &str, high: &str, sheet: &str) {
        self.turn_to("Limits").await;
        self.enter("limits-low", low).await;
        // The other field may lie behind the keypad, which Next knows.
        self.press_next().await;
        self.enter("limits-high", high).await;
        self.put_keypad_away().await;
        self.pick("limits-origin-sheet").await;
        let note = self.wait_for_test("field-limits-note").await;
        note.send_keys(sheet).await.unwrap();
        let before = self.acknowledged().await;
        self.bring_into_view("limits-save").await;
        self.press_test("limits-save").await;
        self.wait_until_acknowledged(before + 1).await;
    }

    /// Writes a note into the book of the open build.
    pub async fn write_note(&self, text: &str) {
        let note = self.wait_for_test("field-note").await;
        // After a crash an old draft may have come back.
        if !self.value_of("note").await.is_empty() {
            self.paste("note", "").await;
        }
        note.send_keys(text).await.unwrap();
        assert_eq!(self.value_of("note").await, text, "what was typed is there");
        let before = self.acknowledged().await;
        self.press_test("note-write").await;
        self.wait_until_acknowledged(before + 1).await;
    }
}
