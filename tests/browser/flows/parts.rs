//! Parts and machine work: one tap moves a part on, and the shop's numbers
//! stand beside what was wanted.

use serde_json::json;

use super::seeing::assert_it_is_for_everyone;
use crate::builds::sprayer;
use crate::engine::Engine;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

async fn with_the_sprayer(rig: &mut Rig) -> Page {
    let page = rig.open().await;
    page.bring_in(&sprayer()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Parts").await;
    page
}

/// Presses something that writes a line down.
async fn press_and_keep(page: &Page, name: &str) {
    let before = page.acknowledged().await;
    page.bring_into_view(name).await;
    page.press_test(name).await;
    page.wait_until_acknowledged(before + 1).await;
}

/// The stages of all parts, in the order they are listed.
async fn stages(page: &Page) -> Vec<String> {
    let script = "return [...document.querySelectorAll('[data-test=part]')]
        .map((part) => part.dataset.stage)";
    serde_json::from_value(page.script(script, vec![]).await).unwrap()
}

async fn wait_for_stages(page: &Page, wanted: &[&str]) {
    until(&format!("parts that are {wanted:?}"), async || {
        (stages(page).await == wanted).then_some(())
    })
    .await;
}

each_engine!(a_part_goes_from_wanted_to_fitted_tap_by_tap);
async fn a_part_goes_from_wanted_to_fitted_tap_by_tap(rig: &mut Rig) {
    let page = with_the_sprayer(rig).await;
    page.wait_for_test("no-parts").await;
    press_and_keep(&page, "want-pistons").await;
    wait_for_stages(&page, &["wanted"]).await;
    press_and_keep(&page, "part-on").await;
    // An order asks at once when it comes.
    page.bring_into_view("part-promised-7").await;
    page.press_test("part-promised-7").await;
    press_and_keep(&page, "part-moved").await;
    wait_for_stages(&page, &["ordered"]).await;
    assert!(page.text_of("part-waits").await.contains("in 7 days"));
    for stage in ["here", "checked", "fitted"] {
        press_and_keep(&page, "part-on").await;
        wait_for_stages(&page, &[stage]).await;
    }
    let total = page.text_of("parts-total").await;
    assert!(total.contains("1 fitted"), "{total}");

    // A part of one's own, with its price, and late.
    page.open_all_folds().await;
    for (field, text) in [("name", "thrust washers"), ("price", "120,50 €")] {
        page.paste(&format!("new-part-{field}"), text).await;
    }
    press_and_keep(&page, "new-part-write").await;
    wait_for_stages(&page, &["wanted", "fitted"]).await;
    page.bring_into_view("change-part").await;
    page.press_test("change-part").await;
    page.script(
        "const day = document.querySelector('[data-test=field-part-promised]');
        day.value = '2020-01-31';
        day.dispatchEvent(new InputEvent('input', { bubbles: true }));",
        vec![],
    )
    .await;
    page.paste("part-words", "the second maker").await;
    press_and_keep(&page, "part-moved").await;
    page.reload().await;
    page.wait_until_it_stands().await;
    let waits = page.text_of("part-waits").await;
    assert!(waits.contains("the second maker"), "{waits}");
    assert!(waits.contains("days late"), "{waits}");
    let money = page.text_of("money-total").await;
    assert!(money.contains("120.50 €"), "{money}");
    assert_it_is_for_everyone(&page).await;
    page.assert_no_trouble().await;
}

/// How the shop's numbers are marked, from the top.
async fn received(page: &Page) -> Vec<String> {
    let script = "return [...document.querySelectorAll('[data-test=received]')]
        .map((number) => number.dataset.mark)";
    serde_json::from_value(page.script(script, vec![]).await).unwrap()
}

each_engine!(what_the_shop_gives_back_stands_beside_what_was_wanted);
async fn what_the_shop_gives_back_stands_beside_what_was_wanted(rig: &mut Rig) {
    let page = with_the_sprayer(rig).await;
    page.press_test("to-shop").await;
    page.wait_for_test("no-work").await;
    press_and_keep(&page, "order-line-hone").await;
    page.wait_for_test("no-wanted").await;
    page.bring_into_view("want-number").await;
    page.press_test("want-number").await;
    page.enter("wanted-low", "2.6410").await;
    page.enter("wanted-high", "2.6415").await;
    page.put_keypad_away().await;
    press_and_keep(&page, "wanted-write").await;
    page.wait_for_test("sheet").await;
    let rows = page
        .script(
            "return document.querySelectorAll('[data-test=sheet-row]').length",
            vec![],
        )
        .await;
    assert_eq!(rows, json!(5), "one for each main");

    press_and_keep(&page, "work-sent").await;
    page.bring_into_view("work-leave").await;
    page.press_test("work-leave").await;
    press_and_keep(&page, "work-back").await;
    // What came back is typed at once, one main after the other. No number begins
    // with the key that the last one ended on: that would be taken for a bounce.
    for (number, count) in [("2.6413", 1), ("2.6419", 2)] {
        let before = page.acknowledged().await;
        page.enter("received", number).await;
        page.press_next().await;
        page.wait_until_acknowledged(before + 1).await;
        until("the number to stand in the table", async || {
            (received(&page).await.len() == count).then_some(())
        })
        .await;
    }
    assert_eq!(received(&page).await, ["good", "bad"]);
    page.put_keypad_away().await;
    assert_it_is_for_everyone(&page).await;
    page.reload().await;
    page.wait_until_it_stands().await;
    page.wait_for_test("sheet").await;
    assert_eq!(received(&page).await, ["good", "bad"]);

    // On paper: the order and nothing else.
    page.script("window.print = () => { window.printed = true; }", vec![])
        .await;
    page.bring_into_view("print-order").await;
    page.press_test("print-order").await;
    let printed = page.script("return window.printed === true", vec![]).await;
    assert_eq!(printed, json!(true));
    if rig.engine == Engine::Chromium {
        rig.browser()
            .devtools("Emulation.setEmulatedMedia", json!({"media": "print"}))
            .await
            .unwrap();
        let text = page.text().await;
        for words in ["Line-hone", "Wanted", "2.6413 in, inside", "Handed back on"] {
            assert!(text.contains(words), "{words}: {text}");
        }
        for words in ["Ask for a number", "Print the order", "Bench", "Tools"] {
            assert!(!text.contains(words), "{words}: {text}");
        }
    }
    page.assert_no_trouble().await;
}
