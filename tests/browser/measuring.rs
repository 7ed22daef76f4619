//! Measuring main bearings on the screens of a build.

use crate::page::Page;
use crate::wait::until;

impl Page {
    /// Goes to a main bearing of the open build from the list of all.
    pub async fn open_bearing(&self, number: u8) {
        self.press_test(&format!("bearing-{number}")).await;
        self.wait_for_text(&format!("Main {number}")).await;
        self.wait_for_test("where").await;
    }

    /// Writes one reading down with the keypad, at the place that is offered.
    pub async fn write_reading(&self, reading: &str) {
        let before = self.acknowledged().await;
        self.enter("reading", reading).await;
        self.press_next().await;
        self.wait_until_acknowledged(before + 1).await;
        until("the field to be ready for the next", async || {
            self.value_of("reading").await.is_empty().then_some(())
        })
        .await;
    }

    /// How many places there are for what is in hand.
    pub async fn number_of_places(&self) -> usize {
        let script = "return document.querySelectorAll('[data-test^=place-]').length";
        let count = self.script(script, vec![]).await;
        usize::try_from(count.as_u64().unwrap_or_default()).unwrap_or_default()
    }

    /// Measures every place of the open bearing: first the journal, then the
    /// bore, each with the same reading everywhere.
    pub async fn measure_bearing(&self, journal: &str, bore: &str) {
        for (in_hand, reading) in [
            ("in-hand-main-journal-diameter", journal),
            ("in-hand-main-bearing-bore", bore),
        ] {
            // After the last place of the journal the bore comes by itself.
            let what = format!("{in_hand} to be in hand");
            until(&what, async || {
                let mark = self.by_test(in_hand).await?;
                mark.is_selected().await.ok()?.then_some(())
            })
            .await;
            let places = self.number_of_places().await;
            assert!(places >= 2, "{in_hand}: {places} places");
            for _ in 0..places {
                self.write_reading(reading).await;
            }
        }
    }

    /// Says which tools are in use, on the first bearing.
    pub async fn take_tools(&self, micrometer: &str, gauge: &str) {
        self.put_keypad_away().await;
        self.pick("in-hand-main-journal-diameter").await;
        self.press_pick(&format!("tool-outside-{micrometer}")).await;
        self.pick("in-hand-main-bearing-bore").await;
        self.press_pick(&format!("tool-inside-{gauge}")).await;
        self.press_pick("set-on-micrometer").await;
        self.pick("in-hand-main-journal-diameter").await;
    }

    /// Types the limits and where they come from.
    pub async fn set_limits(&self, low: &str, high: &str, sheet: &str) {
        self.turn_to("Limits").await;
        self.enter("limits-low", low).await;
        self.enter("limits-high", high).await;
        self.put_keypad_away().await;
        self.pick("limits-origin-sheet").await;
        let note = self.wait_for_test("limits-note").await;
        note.send_keys(sheet).await.unwrap();
        let before = self.acknowledged().await;
        self.bring_into_view("limits-save").await;
        self.press_test("limits-save").await;
        self.wait_until_acknowledged(before + 1).await;
    }
}
