//! A limit whose figures belong to another unit is asked about before it counts.

use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

async fn wait_for_verdict(page: &Page, wanted: &str) {
    until(&format!("the verdict {wanted:?}"), async || {
        (page.verdict().await.as_deref() == Some(wanted)).then_some(())
    })
    .await;
}

async fn wait_until_it_is_gone(page: &Page, name: &str) {
    until(&format!("{name} to go"), async || {
        (!page.has_test(name).await).then_some(())
    })
    .await;
}

each_engine!(a_limit_in_another_unit_gives_no_verdict_before_it_is_asked_about);
async fn a_limit_in_another_unit_gives_no_verdict_before_it_is_asked_about(rig: &mut Rig) {
    let page = rig.open_address("#/quick/running-clearance").await;
    page.wait_until_it_stands().await;
    for (field, text) in [
        ("bore-1", "2.4504"),
        ("journal-1", "2.4483"),
        // Thou where a lone number is thou: an inch figure from the sheet.
        ("limit-high", "3"),
        ("limit-low", "0.001"),
    ] {
        page.paste(field, text).await;
    }
    page.leave_the_field().await;
    page.put_keypad_away().await;
    let asked = page.text_of("doubt-limit-low").await;
    assert!(asked.contains("0.001 thou is smaller"), "{asked}");
    assert!(!page.has_test("doubt-limit-high").await);
    wait_for_verdict(&page, "not-measured").await;

    page.press_test("doubt-limit-low-in").await;
    wait_until_it_is_gone(&page, "doubt-limit-low").await;
    assert_eq!(page.value_of("limit-low").await, "0.001 in");
    wait_for_verdict(&page, "good").await;

    // What is meant as it stands, counts as it stands.
    page.paste("limit-low", "0.05").await;
    page.leave_the_field().await;
    page.put_keypad_away().await;
    page.wait_for_test("doubt-limit-low").await;
    wait_for_verdict(&page, "not-measured").await;
    page.press_test("doubt-limit-low-keep").await;
    wait_until_it_is_gone(&page, "doubt-limit-low").await;
    assert_eq!(page.value_of("limit-low").await, "0.05");
    wait_for_verdict(&page, "good").await;
    page.assert_no_trouble().await;
}

each_engine!(limits_in_another_unit_are_not_set_before_they_are_asked_about);
async fn limits_in_another_unit_are_not_set_before_they_are_asked_about(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&crate::builds::sprayer()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Limits").await;
    let before = page.kept().await.vault.len();
    for (field, text) in [
        ("limits-low", "0.0015"),
        ("limits-high", "0.0025"),
        ("limits-note", "page 12"),
    ] {
        page.paste(field, text).await;
    }
    page.put_keypad_away().await;
    page.bring_into_view("limits-save").await;
    page.press_test("limits-save").await;
    for field in ["limits-low", "limits-high"] {
        page.bring_into_view(&format!("doubt-{field}")).await;
        assert_eq!(page.kept().await.vault.len(), before, "nothing is set");
        page.press_test(&format!("doubt-{field}-in")).await;
        wait_until_it_is_gone(&page, &format!("doubt-{field}")).await;
    }
    let safe = page.acknowledged().await;
    page.bring_into_view("limits-save").await;
    page.press_test("limits-save").await;
    page.wait_until_acknowledged(safe + 1).await;
    page.wait_for_text("0.0015 in to 0.0025 in").await;
    assert_eq!(page.kept().await.vault.len(), before + 1);
    page.assert_no_trouble().await;
}
