//! What stands still: a pull and a reading change what they are about, and leave
//! the rest of the page as it is. A phone has no time to make it anew.

use serde_json::json;

use super::mains::{strike_at, take_in_hand};
use super::tightening::{ORDER, TORQUES};
use crate::builds::five_mains;
use crate::measuring::With;
use crate::page::Page;
use crate::rig::Rig;
use crate::wait::until;

/// Notes which bolts are changed, and whether anything on the drawing is made
/// anew; the ring of the bolt that is next comes and goes by itself.
const WATCH_THE_BOLTS: &str = "
    window.changed = [];
    window.made = 0;
    new MutationObserver((all) => all.forEach((one) => {
        if (one.type === 'childList') window.made += 1;
        else window.changed.push(Number(one.target.dataset.bolt));
    })).observe(document.querySelector('[data-test=bolt-map]'),
        { subtree: true, childList: true, characterData: true, attributeFilter: ['data-look'] });";

each_engine!(a_pull_changes_two_bolts_on_the_drawing_and_leaves_the_others);
async fn a_pull_changes_two_bolts_on_the_drawing_and_leaves_the_others(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;
    page.pull().await;
    page.script(WATCH_THE_BOLTS, vec![]).await;
    page.pull().await;
    let changed = page.script("return window.changed", vec![]).await;
    let mut changed: Vec<u32> = serde_json::from_value(changed).unwrap();
    changed.sort_unstable();
    let mut wanted = [ORDER[1], ORDER[2]];
    wanted.sort_unstable();
    assert_eq!(changed, wanted, "the bolt that was pulled, and the next");
    assert_eq!(page.script("return window.made", vec![]).await, json!(0));
    assert_eq!(page.looks("done").await.len(), 2);
    assert_eq!(page.looks("next").await, [ORDER[2]]);
    page.assert_no_trouble().await;
}

each_engine!(the_ring_of_the_next_bolt_beats_without_an_animation_of_the_whole_page);
async fn the_ring_of_the_next_bolt_beats_without_an_animation_of_the_whole_page(rig: &mut Rig) {
    let page = Page::at_the_groups(rig).await;
    page.describe_head(&ORDER, &TORQUES).await;
    page.press_test("run-begin").await;
    let ring = "return getComputedStyle(document.querySelector(
        '[data-test=bolt-map] [data-look=next] circle')).stroke";
    page.wait_for_test("run-tap").await;
    let first = page.script(ring, vec![]).await;
    for what in ["the ring to change", "the ring to change back"] {
        let now = page.script(ring, vec![]).await;
        until(what, async || {
            (page.script(ring, vec![]).await != now).then_some(())
        })
        .await;
    }
    assert!(first.is_string());
    let running = "return document.getAnimations().length";
    assert_eq!(page.script(running, vec![]).await, json!(0));
    // It is the ring of the bolt that is next, and of no other.
    page.pulls(2).await;
    let beating = "return [...document.querySelectorAll('[data-test=bolt-map] .beat')]
        .every((bolt) => bolt.dataset.look === 'next')";
    assert_eq!(page.script(beating, vec![]).await, json!(true));
    page.assert_no_trouble().await;
}

each_engine!(a_reading_leaves_the_line_above_the_keys_and_the_field_where_they_are);
async fn a_reading_leaves_the_line_above_the_keys_and_the_field_where_they_are(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&five_mains()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.open_bearing(1).await;
    // A place is left to go on to, so that the keypad stays.
    strike_at(&page, "place-main-journal-diameter-rear-across").await;
    take_in_hand(&page, "place-main-journal-diameter-front-across").await;
    page.wait_for_test("keypad").await;
    let before = page.text_of("live").await;
    let hold = "window.held = ['live', 'field-reading', 'standing'].map((name) =>
        document.querySelector(`[data-test=${name}]`));";
    page.script(hold, vec![]).await;
    page.write_reading("2.4478", With::Keypad).await;
    until("another verdict above the keys", async || {
        (page.text_of("live").await != before).then_some(())
    })
    .await;
    let stands = "return window.held.every((one) => one.isConnected)";
    assert_eq!(page.script(stands, vec![]).await, json!(true));
    page.assert_no_trouble().await;
}
