//! All the quick checks: found by the words of the trade, each with its form,
//! and kept in a build.

use std::time::Duration;

use serde_json::json;

use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

async fn number_found(page: &Page) -> u64 {
    let script = "return document.querySelectorAll('[data-test^=found-]:not([data-test=found-count])').length";
    page.script(script, vec![]).await.as_u64().unwrap()
}

each_engine!(a_check_is_found_by_a_word_of_the_trade);
async fn a_check_is_found_by_a_word_of_the_trade(rig: &mut Rig) {
    let page = rig.open_address("#/quick").await;
    page.wait_for_test("found-count").await;
    let all = number_found(&page).await;
    let field = page.wait_for_test("field-find-check").await;
    field.send_keys("ring gap").await.unwrap();
    until("fewer checks", async || {
        (number_found(&page).await < all).then_some(())
    })
    .await;
    page.press_test("found-ring-gap-rule").await;
    page.wait_for_text("Ring end gap").await;
    page.go_to("#/quick").await;
    let field = page.wait_for_test("field-find-check").await;
    field.send_keys(" of the moon").await.unwrap();
    page.wait_for_text("No check answers to that").await;
    page.assert_no_trouble().await;
}

each_engine!(every_check_has_its_form);
async fn every_check_has_its_form(rig: &mut Rig) {
    let page = rig.open_address("#/quick").await;
    page.wait_for_test("found-count").await;
    let script = "return [...document.querySelectorAll('a[data-test^=found-]')]
        .map((link) => [link.getAttribute('href'), link.querySelector('strong').textContent])";
    let checks = page.script(script, vec![]).await;
    let checks = checks.as_array().unwrap();
    assert!(checks.len() > 100, "{} checks", checks.len());
    for check in checks {
        let (Some(address), Some(title)) = (check[0].as_str(), check[1].as_str()) else {
            panic!("{check} is no check");
        };
        page.go_to(address).await;
        until(title, async || {
            let heading = "return document.querySelector('main h1')?.textContent";
            (page.script(heading, vec![]).await == json!(title)).then_some(())
        })
        .await;
        assert!(page.has_test("answer").await, "{title} has no answer");
        let fields = "return document.querySelectorAll('main [data-field], main [role=radiogroup], main fieldset').length";
        assert_ne!(page.script(fields, vec![]).await, json!(0), "{title}");
    }
    page.assert_no_trouble().await;
}

each_engine!(a_check_with_limits_says_what_to_do);
async fn a_check_with_limits_says_what_to_do(rig: &mut Rig) {
    let page = rig.open_address("#/quick/crank-end-play-from-widths").await;
    page.wait_for_text("Crankshaft end play from the widths")
        .await;
    page.paste("cheeks-1", "1.2500 in").await;
    page.paste("flanges-1", "1.2440 in").await;
    // As large as no running clearance is, and still no question.
    page.paste("limit-low", "30 thou").await;
    page.paste("limit-high", "40 thou").await;
    page.wait_for_text("bad: ").await;
    assert!(!page.has_test("doubt-limit-low").await);
    page.wait_for_test("what-to-do").await;
    page.assert_no_trouble().await;
}

each_engine!(an_answer_is_kept_in_a_build);
async fn an_answer_is_kept_in_a_build(rig: &mut Rig) {
    let page = rig.open().await;
    page.describe_engine("Orchard sprayer", "4", "5").await;
    page.go_to("#/quick/ring-gap-rule").await;
    page.wait_for_text("Ring end gap").await;
    page.go_to("#/quick/running-clearance").await;
    page.paste("bore-1", "2.4504 in").await;
    page.paste("journal-1", "2.4483 in").await;
    page.put_keypad_away().await;
    page.bring_into_view("keep").await;
    until("the question where to keep it", async || {
        if page.has_test("keep-text").await {
            return Some(());
        }
        // A touch that comes while the page still scrolls is no press.
        page.by_test("keep").await?.click().await.ok();
        tokio::time::sleep(Duration::from_millis(300)).await;
        None
    })
    .await;
    let words = page.text_of("keep-text").await;
    assert!(words.contains("journal 2.4483 in"), "{words}");
    page.press_test("keep-here").await;
    page.wait_for_text("Kept in the book of Orchard sprayer")
        .await;
    page.to_the_bench().await;
    page.open_the_build().await;
    page.turn_to("book").await;
    page.wait_for_text("Quick check, Running clearance").await;
    page.wait_until_all_is_kept().await;
    page.assert_no_trouble().await;
}
