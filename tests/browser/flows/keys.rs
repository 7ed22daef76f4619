//! The keypad under fingers that slip and under tools that press for someone.

use std::time::Duration;

use serde_json::json;

use crate::page::Page;
use crate::rig::Rig;

/// A key by its name.
const KEY: &str = "const key = [...document.querySelectorAll('[data-test=keypad] button')]
    .find((key) => (key.getAttribute('aria-label') || key.textContent.trim()) === arguments[0]);
const finger = (what, on) => on.dispatchEvent(
    new PointerEvent(what, { bubbles: true, cancelable: true, pointerId: 7, pointerType: 'touch' }));";

async fn with_a_field(rig: &mut Rig) -> Page {
    let page = rig.open_address("#/quick/running-clearance").await;
    page.wait_until_it_stands().await;
    page.touch("bore-1").await;
    page
}

/// Somewhat longer than a browser takes from the lift of a finger to the press.
async fn a_moment_later() {
    tokio::time::sleep(Duration::from_millis(600)).await;
}

each_engine!(a_touch_that_slips_off_a_key_does_not_swallow_the_next_press);
async fn a_touch_that_slips_off_a_key_does_not_swallow_the_next_press(rig: &mut Rig) {
    let page = with_a_field(rig).await;
    for lift in ["pointerup", "pointercancel"] {
        page.paste("bore-1", "").await;
        page.script(
            &format!("{KEY} finger('pointerdown', key); finger(arguments[1], document.body);"),
            vec![json!("5"), json!(lift)],
        )
        .await;
        assert_eq!(page.value_of("bore-1").await, "5", "a touch types at once");
        a_moment_later().await;
        // A screen reader presses without a finger.
        page.script(&format!("{KEY} key.click();"), vec![json!("5")])
            .await;
        assert_eq!(page.value_of("bore-1").await, "55", "after {lift}");
        a_moment_later().await;
        page.script(&format!("{KEY} key.click();"), vec![json!("6")])
            .await;
        assert_eq!(page.value_of("bore-1").await, "556", "after {lift}");
    }
    page.assert_no_trouble().await;
}

each_engine!(a_touch_types_once_however_long_it_lasts);
async fn a_touch_types_once_however_long_it_lasts(rig: &mut Rig) {
    let page = with_a_field(rig).await;
    page.script(
        &format!("{KEY} finger('pointerdown', key);"),
        vec![json!("5")],
    )
    .await;
    a_moment_later().await;
    page.script(
        &format!("{KEY} finger('pointerup', key); key.click();"),
        vec![json!("5")],
    )
    .await;
    assert_eq!(page.value_of("bore-1").await, "5");
    page.assert_no_trouble().await;
}
