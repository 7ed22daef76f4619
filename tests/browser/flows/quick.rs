//! A running clearance in the hand, without a build.

use crate::engine::Device;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

async fn wait_for_verdict(page: &Page, wanted: &str) {
    let what = format!("the verdict {wanted:?}");
    until(&what, async || {
        (page.verdict().await.as_deref() == Some(wanted)).then_some(())
    })
    .await;
}

/// From the bench to a verdict, with nothing but touches.
async fn check_a_bearing(page: &Page) {
    page.press("Quick checks").await;
    page.press_test("check-running-clearance").await;
    page.enter("bore-1", "2.4504").await;
    page.enter("journal-1", "2.4483").await;
    page.enter("limit-low", "1").await;
    page.enter("limit-high", "3 thou").await;
    wait_for_verdict(page, "good").await;
    page.put_keypad_away().await;
    let answer = page.text_of("answer").await;
    assert!(answer.contains("2.1 ± "), "{answer}");
    assert!(answer.contains("give-or-take"), "{answer}");
}

each_engine!(a_running_clearance_is_checked_on_a_phone_without_a_build);
async fn a_running_clearance_is_checked_on_a_phone_without_a_build(rig: &mut Rig) {
    let page = rig.open().await;
    check_a_bearing(&page).await;
    page.assert_no_trouble().await;
}

each_engine!(a_running_clearance_is_checked_on_a_tablet_without_a_build);
async fn a_running_clearance_is_checked_on_a_tablet_without_a_build(rig: &mut Rig) {
    rig.device = Device::TABLET;
    let page = rig.open().await;
    check_a_bearing(&page).await;
    page.assert_no_trouble().await;
}

each_engine!(a_running_clearance_is_checked_without_a_signal);
async fn a_running_clearance_is_checked_without_a_signal(rig: &mut Rig) {
    let page = rig.open().await;
    page.wait_until_it_is_kept().await;
    rig.server.stop();
    page.reload().await;
    page.wait_until_it_stands().await;
    check_a_bearing(&page).await;
    // What was typed is there after one more loading, and means the same.
    page.reload().await;
    page.wait_until_it_stands().await;
    wait_for_verdict(&page, "good").await;
    assert_eq!(page.value_of("limit-high").await, "3 thou");
    page.assert_no_trouble().await;
}

each_engine!(each_verdict_says_what_it_rests_on);
async fn each_verdict_says_what_it_rests_on(rig: &mut Rig) {
    let page = rig.open_address("#/quick/running-clearance").await;
    page.paste("journal-1", "2.4483").await;
    page.paste("limit-low", "1 thou").await;
    page.paste("limit-high", "3 thou").await;
    for (bore, verdict, words) in [
        ("2.4504", "good", "2.1 ±"),
        ("2.4494", "close", "too close to call"),
        ("2.4486", "bad", "tight by 0.7"),
        ("2.4523", "bad", "loose by 1"),
        ("2.4400", "bad", "are the two swapped?"),
    ] {
        page.paste("bore-1", bore).await;
        wait_for_verdict(&page, verdict).await;
        let answer = page.text_of("answer").await;
        assert!(answer.contains(words), "bore {bore}: {answer}");
    }
    page.assert_no_trouble().await;
}
