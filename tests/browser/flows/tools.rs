//! The diary of a tool: a bad zero puts its readings in doubt, and says which.

use super::seeing::assert_it_is_for_everyone;
use crate::builds::five_mains;
use crate::rig::Rig;

each_engine!(a_bad_zero_says_which_readings_are_in_doubt);
async fn a_bad_zero_says_which_readings_are_in_doubt(rig: &mut Rig) {
    let page = rig.open().await;
    page.bring_in(&five_mains()).await;
    page.close_the_file().await;
    page.open_the_build().await;
    page.turn_to("Tools").await;
    page.wait_for_test("tool").await;
    assert!(!page.has_test("in-doubt").await);
    page.open_all_folds().await;
    let before = page.acknowledged().await;
    let script = "const words = document.querySelector('[data-test^=field-zero-]');
        words.value = 'two tenths on the standard';
        words.dispatchEvent(new InputEvent('input', { bubbles: true }));";
    page.script(script, vec![]).await;
    page.bring_into_view("zero-bad").await;
    page.press_test("zero-bad").await;
    page.wait_until_acknowledged(before + 1).await;
    let said = page.text_of("in-doubt").await;
    assert!(said.contains("readings are in doubt"), "{said}");
    assert!(said.contains("main journal diameter"), "{said}");
    let seen = page.text_of("zero-seen").await;
    assert!(
        seen.contains("was off: two tenths on the standard"),
        "{seen}"
    );
    assert_it_is_for_everyone(&page).await;
    page.assert_no_trouble().await;
}
