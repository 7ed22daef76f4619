//! Typing with the app's own keypad, key by key, as a finger does.

use std::time::{Duration, Instant};

use fantoccini::elements::Element;
use serde_json::json;

use crate::page::Page;
use crate::wait::until;

/// The app takes two presses of one key that come closer than a tenth of a
/// second as one finger on a wet screen; a driver is faster than a finger.
const BETWEEN_SAME_KEYS: Duration = Duration::from_millis(130);
/// The same for two presses of Next.
const BETWEEN_NEXTS: Duration = Duration::from_millis(530);

const KEY: &str = "return [...document.querySelectorAll('[data-test=keypad] button')].find((key) =>
    (key.getAttribute('aria-label') || key.textContent.trim()) === arguments[0]) ?? null";

impl Page {
    /// Types a text into the field with the keypad, after what is there. The
    /// text is a number as it is said at the bench, with a unit of the keypad
    /// behind it or none: `2.4483`, `2 7/16 in`, `-3 tenths`.
    pub async fn enter(&self, field: &str, text: &str) {
        if !self.is_typed_into(field).await {
            self.touch(field).await;
        }
        let before = self.value_of(field).await;
        let unit_from = text.find(|sign: char| sign.is_alphabetic());
        let (number, unit) = text.split_at(unit_from.unwrap_or(text.len()));
        let mut last = None;
        for sign in number.trim_end().chars() {
            if last == Some(sign) {
                tokio::time::sleep(BETWEEN_SAME_KEYS).await;
            }
            let name = match sign {
                '.' => "point".to_owned(),
                '/' => "fraction bar".to_owned(),
                ' ' => "space".to_owned(),
                '-' => "plus or minus".to_owned(),
                digit => digit.to_string(),
            };
            self.press_key(&name).await;
            last = Some(sign);
        }
        if !unit.is_empty() {
            self.press_key(unit).await;
        }
        let wanted = format!("{before}{text}");
        until(&format!("{wanted:?} in {field}"), async || {
            (self.value_of(field).await == wanted).then_some(())
        })
        .await;
    }

    /// Presses one key of the keypad by its name.
    pub async fn press_key(&self, name: &str) {
        let key = self.key(name).await;
        key.click()
            .await
            .unwrap_or_else(|cause| panic!("the key {name:?} can't be pressed: {cause}"));
    }

    /// Presses the keypad's Next.
    pub async fn press_next(&self) {
        self.wait_between_nexts().await;
        self.press_test("keypad-next").await;
        self.last_next.set(Some(Instant::now()));
    }

    /// Presses Enter on a hardware keyboard, which means Next.
    pub async fn press_enter(&self, field: &Element) {
        self.wait_between_nexts().await;
        field.send_keys("\u{e007}").await.unwrap();
        self.last_next.set(Some(Instant::now()));
    }

    async fn wait_between_nexts(&self) {
        if let Some(last) = self.last_next.get() {
            tokio::time::sleep(BETWEEN_NEXTS.saturating_sub(last.elapsed())).await;
        }
    }

    /// Puts the keypad away, if it is out.
    pub async fn put_keypad_away(&self) {
        if self.has_test("keypad").await {
            self.press_test("keypad-hide").await;
            until("the keypad to be away", async || {
                (!self.has_test("keypad").await).then_some(())
            })
            .await;
        }
    }

    /// Whether the keypad types into this field already.
    async fn is_typed_into(&self, field: &str) -> bool {
        let script = "return document.activeElement?.dataset.test === arguments[0]
            && document.querySelector('[data-test=keypad]') !== null";
        let said = self
            .script(script, vec![json!(format!("field-{field}"))])
            .await;
        said == json!(true)
    }

    async fn key(&self, name: &str) -> Element {
        until(&format!("the key {name:?}"), async || {
            let found = self.client.execute(KEY, vec![json!(name)]).await.ok()?;
            self.element(found)
        })
        .await
    }

    /// Touches a field, so that the keypad types into it.
    pub async fn touch(&self, field: &str) {
        let name = format!("field-{field}");
        self.bring_into_view(&name).await;
        self.press_test(&name).await;
        self.wait_for_test("keypad").await;
        // The keypad covers the lower half of a phone.
        self.bring_into_view(&name).await;
    }

    /// Scrolls as a person does who wants to see a thing, and as long until it
    /// stands still: a touch is aimed at where it stands now, and what makes room
    /// for the keypad may still be going.
    pub async fn bring_into_view(&self, name: &str) {
        let script = "arguments[0].scrollIntoView({ block: 'center', inline: 'center' });
            const { x, y, width, height } = arguments[0].getBoundingClientRect();
            return [x, y, width, height];";
        let mut last = None;
        until(&format!("data-test {name:?} to stand still"), async || {
            let thing = self.by_test(name).await?;
            let thing = serde_json::to_value(&thing).ok()?;
            let place = self.client.execute(script, vec![thing]).await.ok()?;
            if last.as_ref() == Some(&place) {
                return Some(());
            }
            last = Some(place);
            None
        })
        .await;
    }

    /// What stands in the field.
    pub async fn value_of(&self, field: &str) -> String {
        let field = self.wait_for_test(&format!("field-{field}")).await;
        field.prop("value").await.ok().flatten().unwrap_or_default()
    }

    /// What a field says under itself.
    pub async fn says(&self, field: &str) -> String {
        self.text_of(&format!("says-{field}")).await
    }

    /// Puts any text into the field, as pasting or a hardware keyboard does,
    /// in place of what is there.
    pub async fn paste(&self, field: &str, text: &str) {
        let thing = self.wait_for_test(&format!("field-{field}")).await;
        let thing = serde_json::to_value(&thing).unwrap();
        self.script(
            "const [field, text] = arguments;
            field.focus();
            field.select();
            // What a paste ends in: the browser's own editing, or its events.
            if (!document.execCommand('insertText', false, text)) {
                field.value = text;
                field.dispatchEvent(new InputEvent('input', { bubbles: true }));
            }",
            vec![thing, json!(text)],
        )
        .await;
    }
}
